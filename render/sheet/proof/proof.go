// Package proof lays out the sheet that shows what a trace found, drawn over
// the picture itself, so that a person can check it. It returns a scene and the
// picture under it; the backend paints them. It may import places, traces,
// scenes, type, words and what sheets share.
package proof

import (
	"fmt"
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/trace"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
)

// Traced is what the sheet shows.
type Traced struct {
	Title string
	Found trace.Found
}

// Overlay is a page and where the picture lies on it.
type Overlay struct {
	Page  scene.Page
	view  trace.View
	part  geometry.Box // that is shown, in millimetres of the part
	frame scene.Box    // of the picture on the page
	scale float64      // millimetres of paper to one of the part
}

const (
	titleEm     = 6.0
	headRoom    = 22.0 // title and two lines
	footRoom    = 38.0 // scale bar, legend and some doubts
	besidePart  = 4.0  // of the picture shown round the part, in its millimetres
	shortestBar = 15.0
)

// scales are those that a sheet is drawn at, the largest first.
var scales = []float64{1, 1 / 1.25, 1 / 1.5, 0.5, 1 / 2.5, 1 / 3.0, 0.25, 0.2, 0.1, 0.05}

type layout struct {
	Overlay
	*sheet.Pen
	Traced
	taken []scene.Box // where no label may lie
	lost  int         // labels without room
	lastY float64     // foot of the picture with its bar
}

// Lay lays the sheet out: full size where the paper has room for the part,
// upright or on its side.
func Lay(t Traced, ask sheet.Request) Overlay {
	upright, across := fitted(t, ask), fitted(t, sheet.Request{Paper: ask.Paper.Landscape(), Words: ask.Words})
	l := upright
	if across.scale > upright.scale {
		l = across
	}
	l.header()
	l.Add(scene.Shape{Path: l.frame.Path(), Stroke: scene.Grey, Width: 0.2})
	if len(l.Found.Outline) > 2 {
		l.stroke(scene.Traced(l.Found.Outline, l.at), scene.Accent, thin, 0, scene.Tag{})
	}
	for _, p := range l.Found.SeenSpecks {
		l.drawSpeck(p)
	}
	marked := slices.Concat(t.Found.Shapes, t.Found.Dropped)
	for _, s := range marked {
		l.drawShape(s)
	}
	for _, s := range marked {
		l.label(s)
	}
	l.bar()
	l.foot()
	l.Page.Items = l.Items
	return l.Overlay
}

func shown(found trace.Found) geometry.Box {
	points := append([]geometry.Point{}, found.Outline...)
	for _, s := range slices.Concat(found.Shapes, found.Dropped) {
		points = append(points, s.At)
	}
	return geometry.Bounds(points).Grown(besidePart)
}

func fitted(t Traced, ask sheet.Request) *layout {
	p := ask.Paper
	l := &layout{Pen: &sheet.Pen{Paper: p, Words: ask.Words}, Traced: t}
	l.Page = scene.Page{Name: "proof", Width: p.Width, Height: p.Height, Margin: p.Margin}
	l.view, l.part = t.Found.View, shown(t.Found)
	fits := func(scale float64) bool {
		l.scale = scale
		w, h := l.room()
		return l.part.Width()*scale <= w && l.part.Height()*scale <= h
	}
	if !slices.ContainsFunc(scales, fits) {
		w, h := l.room()
		l.scale = min(w/l.part.Width(), h/l.part.Height())
	}
	w, h := l.part.Width()*l.scale, l.part.Height()*l.scale
	left, top := (p.Width-w)/2, p.Margin+l.headHeight()
	l.frame = scene.Box{Left: left, Top: top, Right: left + w, Bottom: top + h}
	return l
}

func (l *layout) room() (width, height float64) {
	foot := footRoom
	if l.Paper.Narrow() {
		foot += 3 * l.Paper.Line // lines that need two
	}
	return l.Paper.Content(), l.Paper.Height - 2*l.Paper.Margin - l.headHeight() - foot
}

func (l *layout) headHeight() float64 {
	counts, size := l.headLines()
	return headRoom + float64(len(counts)+len(size)-2)*l.Paper.Line
}

func (l *layout) at(p geometry.Point) scene.Point {
	return scene.Point{X: l.frame.Left + (p.X-l.part.Min.X)*l.scale, Y: l.frame.Top + (l.part.Max.Y-p.Y)*l.scale}
}

func (l *layout) words() *words.Proof { return &l.Words.Proof }

func (l *layout) figure(form string, v float64) string {
	return l.Words.Figure(fmt.Sprintf(form, v))
}

func (l *layout) headLines() (counts, size []string) {
	found := fmt.Sprintf(l.words().Scale, Counts(l.Words, l.Found), l.Words.Say(l.Found.Scale))
	drawn := l.words().FullSize
	if l.scale != 1 {
		drawn = fmt.Sprintf(l.words().Reduced, l.figure("%.3g", 1/l.scale))
	}
	width := l.Paper.Content()
	return l.Paper.Plain().Lines(found, width), l.Paper.Bold().Lines(drawn, width)
}

func (l *layout) header() {
	title := fmt.Sprintf(l.words().Title, l.Title)
	y := l.Paper.Margin + 5
	l.Write(l.Left(), y, titleEm, scene.Bold, scene.Start, scene.Black, font.Fit(title, scene.Bold, titleEm, l.Paper.Content()))
	y += 6
	counts, size := l.headLines()
	y = l.Paper.Bold().Set(l.Pen, l.Left(), l.Paper.Plain().Set(l.Pen, l.Left(), y, counts), size) + 1.8 - l.Paper.Line
	l.Rule(l.Left(), y, l.Right(), y, 0.5)
}

// Counts says how many of each were found: 6 bolt holes, 1 bore.
func Counts(w *words.Catalogue, found trace.Found) string {
	var parts []string
	for _, role := range []trace.Role{trace.Fastener, trace.Dowel, trace.Bore, trace.Hole, trace.Port, trace.Spot, trace.Candidate} {
		n := 0
		for _, s := range found.Shapes {
			if s.Role == role {
				n++
			}
		}
		if n > 0 {
			parts = append(parts, w.Proof.Counts[string(role)].Of(n))
		}
	}
	if len(parts) == 0 {
		return w.Proof.Nothing
	}
	return strings.Join(parts, ", ")
}
