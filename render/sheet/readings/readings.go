// Package readings lays out the sheet for the distances measured on a part: a
// drawing with the names of the holes, or room for one, and boxes for the
// figures. It may import geometry, plans, diagrams, scenes, words and what
// sheets share.
package readings

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/render/diagram"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence/plan"
)

// Part is what is measured.
type Part struct {
	Title, Machine string
	File           string   // that the figures are entered in
	IDs            []string // of the holes
	DiametersMm    []float64
	// At are the places as far as they are known; nil: nothing was measured yet.
	At    []geometry.Point
	Pairs [][2]int // of the holes, in the order of measuring
}

const pageName = "readings"

// Document lays out the sheet. The notes say what did not fit.
func Document(p Part, ask sheet.Request) (doc scene.Document, notes []string) {
	w := ask.Words.Readings
	heading := sheet.Heading{Title: p.Title, Badge: w.Badge, Subtitle: p.Machine, Identity: fmt.Sprintf(w.About, len(p.IDs), len(p.Pairs))}
	foot := sheet.Foot{Lines: ask.Paper.BreakText(fmt.Sprintf(w.Enter, p.File), ask.Paper.Content()), Sign: []string{w.By, w.Caliper, ask.Words.Sheet.Date}}
	run := sheet.NewRun(ask.Paper, ask.Words, heading, foot)
	run.Sentence(w.Measure)
	run.Y += 2
	if p.At == nil {
		p.room(run, ask)
	} else {
		notes = p.draw(run, ask)
	}
	p.diameters(run, ask)
	p.distances(run, ask)
	pages := run.Pages(pageName)
	sheet.Count(pages)
	return scene.Document{Title: p.Title, Subject: p.Machine, Language: ask.Words.Language, Pages: pages}, notes
}

// share is the height of the drawing, of that of the page.
const share = 0.32

// room draws an empty frame for a drawing by hand, with a line below it that
// says what to draw.
func (p Part) room(run *sheet.Run, ask sheet.Request) {
	height := share * run.Pen.Paper.Height
	run.Sentence(fmt.Sprintf(ask.Words.Readings.Draw, strings.Join(p.IDs, ", ")))
	run.Y += 1.5
	run.Room(height)
	run.Pen.Panel(run.Pen.Left(), run.Y, run.Pen.Paper.Content(), height, 0, scene.White, 0.3)
	run.Y += height + 3
}

// draw draws the holes with their names.
func (p Part) draw(run *sheet.Run, ask sheet.Request) (notes []string) {
	var joint geometry.Joint
	for i, id := range p.IDs {
		joint.Fasteners = append(joint.Fasteners, geometry.Fastener{ID: id, Kind: "hole", At: p.At[i]})
	}
	extent := geometry.Bounds(p.At)
	height := min(share*run.Pen.Paper.Height, run.Pen.Paper.Content()*extent.Height()/max(extent.Width(), 1)+8*run.Pen.Paper.Line)
	run.Room(height)
	d := diagram.Draw(diagram.Part{
		Plan: plan.Plan{Joint: joint, Kinds: []plan.Kind{{Name: "hole"}}}, Show: diagram.Words, Words: p.IDs, NoArrows: true, SmallEm: run.Pen.Paper.TextEm,
		Box: scene.Box{Left: run.Pen.Left(), Top: run.Y, Right: run.Pen.Right(), Bottom: run.Y + height},
	})
	run.Pen.Add(d.Items...)
	run.Y += height + 2
	run.Sentence(ask.Words.Readings.Rough)
	run.Y += 2
	ask.Missing.Note(len(d.Unplaced), len(p.IDs))
	return left(d, len(p.IDs), ask)
}

// left reports what found no room.
func left(d diagram.Drawing, holes int, ask sheet.Request) (notes []string) {
	if n := len(d.Unplaced); n > 0 {
		notes = append(notes, ask.Words.Say(finding.Warned(sheet.NumbersNoRoom, finding.Values{"left": n, "of": holes, "where": "drawing", "paper": ask.Paper.Name})))
	}
	return notes
}

// abreast is the number of holes in a row of the table of diameters.
const abreast = 3

// diameters draws a table with a box for each hole; a stated diameter is printed
// in it, to be checked.
func (p Part) diameters(run *sheet.Run, ask sheet.Request) {
	w := ask.Words.Readings
	var t sheet.Table
	t.Ruled = true
	across := min(abreast, len(p.IDs))
	for range across {
		t.Columns = append(t.Columns, sheet.Column{Head: w.Hole, Share: 1, Bold: true}, sheet.Column{Head: w.Diameter, Share: 2})
	}
	for i := 0; i < len(p.IDs); i += across {
		row := make([]string, 2*across)
		for k := range min(across, len(p.IDs)-i) {
			row[2*k] = p.IDs[i+k]
			if d := p.DiametersMm[i+k]; d > 0 {
				row[2*k+1] = ask.Words.Figure(strconv.FormatFloat(d, 'f', -1, 64)) + " ?"
			}
		}
		t.Rows = append(t.Rows, sheet.Row{Words: row})
	}
	title := w.Diameters
	if slices.Max(p.DiametersMm) > 0 {
		title = w.DiametersStated
	}
	section(run, title, t)
}

// distances draws a table with the pairs in the order of measuring.
func (p Part) distances(run *sheet.Run, ask sheet.Request) {
	w := ask.Words.Readings
	t := sheet.Table{Ruled: true, Columns: []sheet.Column{
		{Head: w.Number, Share: 0.8}, {Head: w.Holes, Share: 1.5, Bold: true}, {Head: w.Outside, Share: 2.4}, {Head: w.Inside, Share: 2.4}, {Head: w.Centres, Share: 2},
	}}
	for i, pair := range p.Pairs {
		holes := p.IDs[pair[0]] + " – " + p.IDs[pair[1]]
		t.Rows = append(t.Rows, sheet.Row{Words: []string{strconv.Itoa(i + 1), holes, "", "", ""}})
	}
	section(run, w.Distances, t)
}

// section draws a table under its heading, which does not stand alone.
func section(run *sheet.Run, title string, t sheet.Table) {
	strong := run.Pen.Paper.Strong()
	run.Room(strong.Step + 1 + t.Lead(run))
	run.Set(strong, title)
	run.Y++
	t.Draw(run)
}
