// Package tray lays out full-size sheets on which fasteners and parts are
// placed during a teardown, each in its place and the right way round. It may
// import geometry, plan, sizes of heads, truesize, scene, font, words and what
// sheets share.
package tray

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/tile"
	"drawdown/render/sheet/truesize"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// Style says how to draw a tray.
type Style struct {
	Underside bool // seen from the joint face: left and right are swapped
	OnePage   bool // reduced to one page instead of true size
}

// Document lays out a plan's tray with page numbers, on landscape paper if that
// takes fewer sheets. The notes say what did not fit and which sheets are
// empty.
func Document(p plan.Plan, style Style, ask sheet.Request) (scene.Document, []string, error) {
	pages, notes, err := Pages(p, style, ask)
	return sheet.Document(p, ask, pages), notes, err
}

// Pages lays out the sheets. They do not have their count yet. The error
// reports that the part needs too many sheets.
func Pages(p plan.Plan, style Style, ask sheet.Request) (pages []scene.Page, notes []string, err error) {
	t := &tray{plan: p, joint: named(p.Joint), words: ask.Words}
	if style.Underside {
		t.joint = t.joint.Mirrored(geometry.AxisX)
	}
	tiles := t.sheets(style, ask)
	if style.OnePage {
		tiles.Reduced = tile.Fit(func(reduced float64) tile.Contents { return t.draw(reduced, tile.Seams{}).Drawing }, tiles)
	}
	return truesize.Print(func(s tile.Seams) *truesize.Plate { return t.draw(tiles.Reduced, s) }, tiles,
		func(noRoom int) []string { return t.legend(noRoom, tiles.Reduced) })
}

// named returns the joint without the labels of bores that have the name of a
// cluster: one of two words for the same thing could be taken for a
// neighbour's.
func named(j geometry.Joint) geometry.Joint {
	j.Bores = slices.Clone(j.Bores)
	for i, b := range j.Bores {
		if slices.ContainsFunc(j.Clusters, func(c geometry.Cluster) bool { return c.Name == b.Label }) {
			j.Bores[i].Label = ""
		}
	}
	return j
}

type tray struct {
	plan  plan.Plan
	joint geometry.Joint
	words *words.Catalogue
}

// sheets returns what is around the drawing, with every line of the legend that
// may be needed.
func (t *tray) sheets(style Style, ask sheet.Request) tile.Sheets {
	seen := ""
	if style.Underside {
		seen = t.words.Tile.Underside
	}
	return tile.Sheets{
		Request: ask, Name: "tray", Title: t.plan.Title, Kind: t.words.Tray.Name,
		Subtitle: words.Row(t.words.Tray.Name, seen, t.plan.Machine, sheet.Identity(t.plan, t.words)),
		Legend:   t.legend(1, 1), Reduced: 1,
	}
}

func (t *tray) legend(noRoom int, reduced float64) []string {
	w := t.words
	first := w.Tray.Lay
	if reduced > 1 {
		first = ""
	}
	first = words.Text(first, t.largeSays(), w.Tray.Beside)
	if len(t.joint.Stations) > 0 {
		first += " " + w.Tray.Stations
	}
	if len(t.joint.Clusters) > 0 {
		first += " " + w.Tray.Clusters
	}
	var sizes []string
	for _, k := range t.plan.Kinds {
		sizes = append(sizes, fmt.Sprintf(w.Sheet.Named, k.Name, headOf(k).words(w)))
	}
	second := strings.Join(sizes, w.Card.Checks.And) + "."
	if len(t.joint.Outline) == 0 {
		second += " " + w.Tile.OwnEdge
	}
	if noRoom > 0 {
		second += " " + fmt.Sprintf(w.Tray.NoRoom, noRoom)
	}
	legend := []string{strings.TrimSpace(first), second}
	if slices.ContainsFunc(t.plan.Kinds, usedOnce) {
		once := fmt.Sprintf(w.Sheet.Named, w.Condition.New, w.Tray.Once)
		if reduced > 1 { // nothing is placed on it
			once = w.Condition.NewMeans
		}
		legend = append([]string{once}, legend...)
	}
	return legend
}

// largeSays says what the large numbers are, and in which direction they run.
func (t *tray) largeSays() string {
	cast := sheet.CastNumbersOf(t.plan, t.plan.Loosen, t.words)
	if !cast.There() {
		return t.words.Tray.Numbers
	}
	return words.Text(cast.Large(), cast.Loosened())
}

func usedOnce(k plan.Kind) bool { return k.Reuse == plan.ReuseOnce }

func (t *tray) draw(reduced float64, seams tile.Seams) *truesize.Plate {
	plate := truesize.New(t.joint, reduced, t.words, seams)
	groups := t.groups()
	for _, g := range groups {
		plate.Outline(g)
	}
	called, tighten := t.plan.Called(t.plan.Loosen), t.plan.Tighten.Numbers()
	digits := strings.Repeat("0", len(strconv.Itoa(slices.Max(called))))
	var spots []truesize.Spot
	reach := make([]float64, len(t.joint.Fasteners))
	for i, f := range t.joint.Fasteners {
		h := headOf(t.plan.KindOf(i))
		reach[i] = h.across / 2
		c := plate.At(f.At)
		note := ""
		if usedOnce(t.plan.KindOf(i)) {
			note = t.words.Condition.New
		}
		spots = append(spots, truesize.Spot{
			Name: f.ID, Note: note, At: c, Inner: plate.Length(h.across / 2), Widest: digits,
			Edge:  scene.Shape{Path: h.path(c, reduced), Stroke: scene.Black, Width: 0.4},
			Large: strconv.Itoa(called[i]), Small: fmt.Sprintf("%s (%d)", f.ID, tighten[i]),
		})
	}
	for _, s := range t.joint.Stations {
		spots = append(spots, t.station(plate, s, reach))
	}
	plate.Spots(spots)
	plate.Words()
	for _, g := range groups {
		plate.Name(g)
	}
	return plate
}

func (t *tray) groups() []truesize.Group {
	var groups []truesize.Group
	for _, c := range t.joint.Clusters {
		g := truesize.Group{Name: c.Name}
		for i, f := range t.joint.Fasteners {
			if slices.Contains(c.Of, f.ID) {
				g.Members = append(g.Members, f.At)
				g.Reach = math.Max(g.Reach, headOf(t.plan.KindOf(i)).across/2+aroundGroup)
			}
		}
		groups = append(groups, g)
	}
	return groups
}

// Sizes of the ring for a part of unknown size, in millimetres of the part.
const (
	usualRing   = 10.0 // radius
	leastRing   = 3.0
	aroundGroup = 3.5 // distance from the heads to the line around a group
)

// station is the ring for a part that goes back to its place, as large as its
// neighbours allow.
func (t *tray) station(plate *truesize.Plate, s geometry.Station, reach []float64) truesize.Spot {
	r := usualRing
	for i, f := range t.joint.Fasteners {
		r = math.Min(r, f.At.Distance(s.At)-reach[i]-2)
	}
	for _, other := range t.joint.Stations {
		if other.ID != s.ID {
			r = math.Min(r, other.At.Distance(s.At)/2-1)
		}
	}
	r = plate.Length(math.Max(leastRing, r))
	c := plate.At(s.At)
	return truesize.Spot{
		Name: "station " + s.ID, At: c, Edge: scene.Shape{Path: scene.Circle(c.X, c.Y, r), Stroke: scene.Black, Width: 0.3, Dash: 1.2},
		Small: font.Fit(cmp.Or(s.Label, s.ID), scene.Regular, truesize.SmallEm, 40),
	}
}
