// Package drawing lays out the plain drawing for checking a pattern against the
// part: every place with its id and a table of places; or every hole at true
// size, to lay on the part. It may import plan, diagram, truesize, scene, font,
// words and what sheets share.
package drawing

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/render/diagram"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/tile"
	"drawdown/render/sheet/truesize"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// Document lays out a plan's check drawing with page numbers: on a page with
// the table of places, or at true size over as many sheets as needed. The notes
// say what did not fit; the error reports too many sheets.
func Document(p plan.Plan, trueSize bool, ask sheet.Request) (doc scene.Document, notes []string, err error) {
	var pages []scene.Page
	if trueSize {
		pages, notes, err = crossHairs(p, ask)
	} else {
		pages, notes = reduced(p, ask)
	}
	return sheet.Document(p, ask, pages), notes, err
}

// pageName is the name of the pages in file names.
const pageName = "check"

const (
	tableShare = 0.45 // of the height of a page: a higher table begins on the next one
	captionGap = 2.0
)

func reduced(p plan.Plan, ask sheet.Request) (pages []scene.Page, notes []string) {
	w := ask.Words
	width := ask.Paper.Content()
	foot := sheet.Foot{Lines: ask.Paper.BreakText(w.Drawing.Reduced+" "+w.Drawing.Hold, width), Sign: []string{w.Sheet.CheckedBy, w.Sheet.Date}}
	run := sheet.NewRun(ask.Paper, w, sheet.PlanHeading(p, w, w.Drawing.Badge, func(k plan.Kind) string { return k.Name }), foot)
	t := newTable(p, w, run.Pen)
	room := run.Bottom - run.Y
	below := t.height(len(t.rows)) + captionGap
	if below > tableShare*room {
		below = 0
	}
	d, more := part(run.Pen, p, w, scene.Box{Left: run.Pen.Left(), Top: run.Y, Right: run.Pen.Right(), Bottom: run.Bottom - below})
	notes = append(notes, more...)
	ask.Missing.Note(len(d.Unplaced), len(p.Joint.Fasteners))
	run.Pen.Add(d.Items...)
	run.Y = run.Bottom - below + captionGap
	t.draw(run)
	return run.Pages(pageName), notes
}

// part draws the part above its caption, which takes the space for its lines
// from the part, and reports what did not fit.
func part(pen *sheet.Pen, p plan.Plan, w *words.Catalogue, box scene.Box) (d diagram.Drawing, notes []string) {
	ask := diagram.Part{Plan: p, Show: diagram.Words, Words: diagram.IDs(p.Joint), Beside: casts(p.Joint), Front: w.Sheet.Front, Box: box, SmallEm: pen.Paper.TextEm}
	for lines := 1; ; {
		ask.Box.Bottom = box.Bottom - float64(lines)*pen.Paper.Line - captionGap
		d = diagram.Draw(ask)
		caption := diagram.NewLegend(ask.KindNames(), reading(p, d, w), pen.Paper.TextEm, pen.Paper.Line, box.Left, box.Right)
		if caption.Lines > lines {
			lines = caption.Lines
			continue
		}
		pen.Add(caption.Below(d, box.Bottom)...)
		return d, left(p, d, w, pen.Paper)
	}
}

// reading explains a drawing, and says what did not fit.
func reading(p plan.Plan, d diagram.Drawing, w *words.Catalogue) string {
	lacking, small := "", ""
	if n := len(d.Unplaced); n > 0 {
		lacking = fmt.Sprintf(w.Drawing.NoRoom, n)
	}
	if slices.ContainsFunc(p.Joint.Fasteners, numbered) {
		small = fmt.Sprintf(w.Card.Part.SmallNumber, w.Card.Part.Cast)
	}
	return words.Text(lacking, w.NoRoomFor(d.Dropped), small)
}

// left reports at the terminal what did not fit.
func left(p plan.Plan, d diagram.Drawing, w *words.Catalogue, paper sheet.Paper) (notes []string) {
	note := func(code finding.Code, values finding.Values) {
		values["where"], values["paper"] = "drawing", paper.Name
		notes = append(notes, w.Say(finding.Warned(code, values)))
	}
	if n := d.BesideLeftOut; n > 0 {
		note(sheet.SmallNoRoom, finding.Values{"left": n})
	}
	if n := len(d.Unplaced); n > 0 {
		note(sheet.NumbersNoRoom, finding.Values{"left": n, "of": len(p.Joint.Fasteners)})
	}
	for _, word := range d.Dropped {
		note(sheet.LabelNoRoom, finding.Values{"label": word})
	}
	return notes
}

func numbered(f geometry.Fastener) bool { return f.Cast > 0 }

// casts returns the numbers cast on the part, to be drawn small beside the ids.
func casts(j geometry.Joint) []string {
	return geometry.Mapped(j.Fasteners, func(f geometry.Fastener) string {
		if !numbered(f) {
			return ""
		}
		return strconv.Itoa(f.Cast)
	})
}

// named returns the id, followed by the number cast on the part.
func named(f geometry.Fastener) string {
	if !numbered(f) {
		return f.ID
	}
	return fmt.Sprintf("%s (%d)", f.ID, f.Cast)
}

// holeOf is the diameter of a fastener's hole; 0 if the file gives none.
func holeOf(p plan.Plan, fastener int) float64 { return float64(p.KindOf(fastener).Hole) }

// place formats a coordinate to a hundredth, without trailing zeros.
func place(mm float64) string {
	s := strings.TrimRight(strings.TrimRight(fmt.Sprintf("%.2f", mm), "0"), ".")
	if s == "-0" {
		return "0"
	}
	return strings.Replace(s, "-", "−", 1)
}

const (
	leastArm = 5.0 // of a cross-hair
	armOver  = 3.0 // how far it extends out of the hole
)

// crossHairs draws every place as a cross-hair, with the hole if known, at true
// size over as many sheets as needed.
func crossHairs(p plan.Plan, ask sheet.Request) (pages []scene.Page, notes []string, err error) {
	w := ask.Words
	return truesize.Print(func(s tile.Seams) *truesize.Plate { return plate(p, ask, s) }, tile.Sheets{
		Request: ask, Name: pageName, Title: p.Title, Kind: w.Drawing.Badge, Reduced: 1,
		Subtitle: words.Row(w.Drawing.Badge, p.Machine, sheet.Identity(p, w)),
	}, func(noRoom int) []string {
		legend := []string{w.Drawing.Actual + " " + w.Drawing.Marks}
		if len(p.Joint.Outline) == 0 {
			legend = append(legend, w.Tile.OwnEdge)
		}
		if noRoom > 0 {
			legend = append(legend, fmt.Sprintf(w.Drawing.NoRoom, noRoom))
		}
		if slices.ContainsFunc(p.Joint.Fasteners, numbered) {
			legend = append(legend, w.Drawing.InBrackets)
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
		spots = append(spots, truesize.Spot{Name: f.ID, At: c, Edge: scene.Shape{Path: path, Stroke: scene.Black, Width: 0.25}, Small: named(f)})
	}
	plate.Spots(spots)
	plate.Words()
	return plate
}
