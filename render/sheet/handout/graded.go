package handout

import (
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/exercise"
	"drawdown/sequence/judge"
)

// Graded is a student's answer with its grade.
type Graded struct {
	Student string
	Sheet   Sheet
	Line    int // in the table
	exercise.Grade
}

// Feedback lays out half a page for each student who answered: the part with
// the student's own numbers, and what to check again.
func Feedback(graded []Graded, ask Request) scene.Document {
	doc := scene.Document{Title: ask.Words.Handout.Graded.Badge, Language: ask.Words.Language}
	given := slices.DeleteFunc(slices.Clone(graded), func(g Graded) bool { return !g.Outcome.Given() })
	for pair := range slices.Chunk(given, 2) {
		f := feedback{Request: ask, pen: &sheet.Pen{Paper: ask.Paper, Words: ask.Words}}
		var marks []scene.Bookmark
		for k, g := range pair {
			marks = append(marks, scene.Bookmark{Title: font.Clean(g.Student)})
			f.half = [2]string{"", " below"}[k]
			f.answer(g, f.halfPage(k))
		}
		f.cutLine()
		doc.Pages = append(doc.Pages, scene.Page{
			Name:  strconv.Itoa(len(doc.Pages) + 1),
			Width: ask.Paper.Width, Height: ask.Paper.Height, Margin: ask.Paper.Margin, Items: f.pen.Items,
			Bookmarks: marks,
		})
	}
	return doc
}

type feedback struct {
	Request
	pen  *sheet.Pen
	half string // of the page: distinguishes bolts with the same ids
}

// halfPage returns the first or the second half of the page: one above the
// other, or side by side on landscape paper.
func (f *feedback) halfPage(k int) scene.Box {
	p := f.Paper
	box := scene.Box{Left: p.Margin, Top: p.Margin, Right: p.Width - p.Margin, Bottom: p.Height - p.Margin}
	switch wide := p.Wide(); {
	case wide && k == 0:
		box.Right = p.Width/2 - p.Margin
	case wide:
		box.Left = p.Width/2 + p.Margin
	case k == 0:
		box.Bottom = p.Height/2 - p.Margin/2
	default:
		box.Top = p.Height/2 + p.Margin/2
	}
	return box
}

func (f *feedback) cutLine() {
	p := f.Paper
	line := []scene.Point{{X: p.Margin, Y: p.Height / 2}, {X: p.Width - p.Margin, Y: p.Height / 2}}
	if p.Wide() {
		line = []scene.Point{{X: p.Width / 2, Y: p.Margin}, {X: p.Width / 2, Y: p.Height - p.Margin}}
	}
	f.pen.Add(scene.Shape{Path: scene.Polyline(line, false), Stroke: scene.Grey, Width: 0.25, Dash: 2})
}

func (f *feedback) answer(g Graded, box scene.Box) {
	p, y := f.pen, box.Top+6.4
	outcome := f.Words.Handout.Graded.Outcomes[string(g.Outcome)]
	width := font.Width(outcome, scene.Bold, f.pen.Paper.HeadEm)
	p.Write(box.Left, y, f.pen.Paper.TitleEm, scene.Bold, scene.Start, scene.Black, font.Fit(font.Clean(g.Student), scene.Bold, f.pen.Paper.TitleEm, box.Width()-width-6))
	p.Write(box.Right, y, f.pen.Paper.HeadEm, scene.Bold, scene.End, scene.Black, outcome)
	about := words.Row(g.Sheet.Plan.Title, g.Sheet.numbered(f.Words), g.Sheet.Plan.Machine)
	p.Write(box.Left, y+5.5, f.pen.Paper.TextEm, scene.Regular, scene.Start, scene.Black, font.Fit(about, scene.Regular, f.pen.Paper.TextEm, box.Width()))
	p.Rule(box.Left, y+7.5, box.Right, y+7.5, 0.5)
	told, drawing := box, box
	told.Top, drawing.Top = y+9.5, y+9.5
	// The part goes beside the words or above them, wherever it is larger.
	beside := scene.Box{Right: 0.56 * told.Width(), Bottom: told.Height()}
	above := scene.Box{Right: told.Width(), Bottom: 0.45 * told.Height()}
	if scale(g.Sheet.Plan.Joint, beside) >= scale(g.Sheet.Plan.Joint, above) {
		told.Right = box.Left + 0.42*box.Width()
		drawing.Left = told.Right + 4
	} else {
		drawing.Bottom = drawing.Top + above.Height()
		told.Top = drawing.Bottom + 1
	}
	f.findings(g.ToMend(), told)
	f.drawing(g, drawing)
}

func scale(j geometry.Joint, box scene.Box) float64 {
	points := j.Points()
	for _, path := range j.Outline {
		points = append(points, path...)
	}
	part := geometry.Bounds(points)
	return min(box.Width()/max(part.Width(), 1), box.Height()/max(part.Height(), 1))
}

// findings lists what to check again, with dots for what does not fit.
func (f *feedback) findings(all []judge.Finding, box scene.Box) {
	w := f.Words.Handout.Graded
	p, y := f.pen, box.Top+4
	if len(all) == 0 {
		p.Paper.Strong().Set(p, box.Left, y, p.Paper.Strong().Lines(w.Keeps, box.Width()))
		return
	}
	p.Head(box.Left, y, w.Look)
	y += 6.5
	for k, finding := range all {
		lines := f.pen.Paper.BreakText(words.Capital(f.Words.Say(finding.Found())), box.Width()-ruleIndent)
		last := y + float64(len(lines)-1)*f.pen.Paper.Line
		if k < len(all)-1 {
			last += f.pen.Paper.Line + 1 // for the dots, if the next one does not fit
		}
		if last > box.Bottom-1 {
			p.Text(box.Left+ruleIndent, y, "…")
			return
		}
		p.TickBox(box.Left, y-2.6, 2.6)
		y = p.Lines(box.Left+ruleIndent, y, lines) + 1
	}
}

func (f *feedback) drawing(g Graded, box scene.Box) {
	p, w := g.Sheet.Plan, f.Words.Handout.Graded
	p.Joint.Labels, p.Joint.Stations = nil, nil
	looks := map[string]diagram.Look{}
	for _, finding := range g.ToMend() {
		for _, id := range finding.IDs {
			looks[id] = diagram.Look{Fill: scene.Black, Ink: scene.White}
		}
	}
	caption := w.DrawnAll
	if len(looks) > 0 {
		caption = w.Drawn
	}
	box.Bottom -= f.pen.Paper.Line + 1
	d := diagram.Draw(diagram.Part{Plan: p, Show: diagram.Words, Words: numbersOf(p.Joint, g.Order), Front: f.pen.Words.Sheet.Front, Box: box, SmallEm: f.pen.Paper.TextEm})
	f.pen.Add(scene.Renamed(diagram.Relook(d.Items, looks), f.half)...)
	f.pen.Text(box.Left, box.Bottom+f.pen.Paper.Line, font.Fit(caption, scene.Regular, f.pen.Paper.TextEm, box.Width()))
}

// numbersOf returns each bolt's number in an answer, or a dash if it is left
// out.
func numbersOf(j geometry.Joint, order []string) []string {
	numbers := make([]string, len(j.Fasteners))
	for i, f := range j.Fasteners {
		var at []string
		for k, id := range order {
			if id == f.ID {
				at = append(at, strconv.Itoa(k+1))
			}
		}
		numbers[i] = strings.Join(at, "/")
		if numbers[i] == "" {
			numbers[i] = "–"
		}
	}
	return numbers
}
