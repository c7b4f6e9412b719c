package drawing

import (
	"fmt"
	"math"

	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/tile"
	"drawdown/render/sheet/truesize"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

const (
	leastArm = 5.0 // of a cross-hair
	armOver  = 3.0 // how far it reaches out of the hole
)

// crossHairs draws every place as a cross-hair, with the hole where it is
// known, over as many sheets as the true size takes.
func crossHairs(p plan.Plan, ask sheet.Request) (pages []scene.Page, notes []string, err error) {
	w := ask.Words
	return truesize.Print(func(s tile.Seams) *truesize.Plate { return plate(p, ask, s) }, tile.Sheets{
		Request: ask, Name: pageName, Title: p.Title, Reduced: 1,
		Subtitle: words.Row(w.Drawing.Badge, p.Machine, sheet.Identity(p, w)),
	}, func(noRoom int) []string {
		legend := []string{w.Drawing.Actual + " " + w.Drawing.Marks}
		if len(p.Joint.Outline) == 0 {
			legend = append(legend, w.Tile.OwnEdge)
		}
		if noRoom > 0 {
			legend = append(legend, fmt.Sprintf(w.Drawing.NoRoom, noRoom))
		}
		return legend
	})
}

func plate(p plan.Plan, ask sheet.Request, seams tile.Seams) *truesize.Plate {
	plate := truesize.New(p.Joint, 1, ask.Words, seams)
	var spots []truesize.Spot
	for i, f := range p.Joint.Fasteners {
		c := plate.At(f.At)
		r := plate.Length(holeOf(p, i) / 2)
		path := scene.Cross(c.X, c.Y, math.Max(leastArm, r+armOver))
		if r > 0 {
			path = append(path, scene.Circle(c.X, c.Y, r)...)
		}
		spots = append(spots, truesize.Spot{Name: f.ID, At: c, Edge: scene.Shape{Path: path, Stroke: scene.Black, Width: 0.25}, Small: f.ID})
	}
	plate.Spots(spots)
	plate.Words()
	return plate
}
