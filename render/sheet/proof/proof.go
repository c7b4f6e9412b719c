// Package proof lays out the sheet that shows what a trace found, drawn over
// the picture itself, so that an eye can judge it. It gives a scene and the
// picture under it; painting is left to the backend.
package proof

import (
	"fmt"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/trace"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/words"
)

// Input is what the sheet shows.
type Input struct {
	Title string
	Found trace.Found
	Words *words.Catalogue
}

// Sheet is a page and where the picture lies on it.
type Sheet struct {
	Page  scene.Page
	view  trace.View
	part  geometry.Box // that is shown, in millimetres of the part
	frame scene.Box    // of the picture on the page
	scale float64      // millimetres of paper to one of the part
}

// Paper is A4 (ISO 216), upright.
const (
	paperWidth  = 210.0
	paperHeight = 297.0
	margin      = 12.0
)

// Sizes of type as ems; capitals of the smallest are 2.17 mm high.
const (
	titleEm = 6.0
	textEm  = 3.0
	line    = 4.4
)

const (
	headRoom    = 22.0 // title and two lines
	footRoom    = 38.0 // scale bar, legend and some doubts
	besidePart  = 4.0  // of the picture shown round the part, in its millimetres
	shortestBar = 15.0
)

// scales are those that a sheet is drawn at, the largest first.
var scales = []float64{1, 1 / 1.25, 1 / 1.5, 0.5, 1 / 2.5, 1 / 3.0, 0.25, 0.2, 0.1, 0.05}

// layout is a sheet in the making.
type layout struct {
	Sheet
	in    Input
	taken []scene.Box // where no label may lie
	lost  int         // labels without room
	lastY float64     // foot of the picture with its bar
}

// Lay lays the sheet out: full size where A4 has room for the part.
func Lay(in Input) Sheet {
	l := &layout{in: in}
	l.view, l.part = in.Found.View, shown(in.Found)
	l.choose()
	l.header()
	l.drawFrame()
	l.drawOutline()
	for _, s := range in.Found.Shapes {
		l.drawShape(s)
	}
	for _, s := range in.Found.Shapes {
		l.label(s)
	}
	l.bar()
	l.foot()
	return l.Sheet
}

// shown is the part with a rim of its surroundings.
func shown(found trace.Found) geometry.Box {
	points := append([]geometry.Point{}, found.Outline...)
	for _, s := range found.Shapes {
		points = append(points, s.At)
	}
	return geometry.Bounds(points).Grown(besidePart)
}

// choose takes the way of the paper that shows the part larger.
func (l *layout) choose() {
	fits := func(width, height float64) float64 {
		for _, s := range scales {
			if l.part.Width()*s <= width-2*margin && l.part.Height()*s <= height-2*margin-headRoom-footRoom {
				return s
			}
		}
		return min((width-2*margin)/l.part.Width(), (height-2*margin-headRoom-footRoom)/l.part.Height())
	}
	upright, across := fits(paperWidth, paperHeight), fits(paperHeight, paperWidth)
	l.Page = scene.Page{Name: "proof", Width: paperWidth, Height: paperHeight, Margin: margin}
	l.scale = upright
	if across > upright {
		l.Page.Width, l.Page.Height, l.scale = paperHeight, paperWidth, across
	}
	w, h := l.part.Width()*l.scale, l.part.Height()*l.scale
	left, top := (l.Page.Width-w)/2, margin+headRoom
	l.frame = scene.Box{Left: left, Top: top, Right: left + w, Bottom: top + h}
}

// at gives the place on the page of a place of the part.
func (l *layout) at(p geometry.Point) scene.Point {
	return scene.Point{X: l.frame.Left + (p.X-l.part.Min.X)*l.scale, Y: l.frame.Top + (l.part.Max.Y-p.Y)*l.scale}
}

func (l *layout) add(items ...scene.Item) { l.Page.Items = append(l.Page.Items, items...) }

func (l *layout) write(x, y, em float64, w scene.Weight, a scene.Anchor, words string) scene.Text {
	t := font.Set(scene.Text{At: scene.Point{X: x, Y: y}, Size: em, Weight: w, Anchor: a, Ink: scene.Black, Content: words})
	l.add(t)
	return t
}

func (l *layout) words() *words.Proof { return &l.in.Words.Proof }

// figure prints a number as the language does.
func (l *layout) figure(form string, v float64) string {
	return l.in.Words.Figure(fmt.Sprintf(form, v))
}

func (l *layout) width() float64 { return l.Page.Width - 2*margin }

func (l *layout) header() {
	y := margin + 5.0
	l.write(margin, y, titleEm, scene.Bold, scene.Start, font.Fit(fmt.Sprintf(l.words().Title, l.in.Title), scene.Bold, titleEm, l.width()))
	y += 6
	l.write(margin, y, textEm, scene.Regular, scene.Start, font.Fit(fmt.Sprintf(l.words().Scale, Counts(l.in.Words, l.in.Found), l.in.Words.Say(l.in.Found.Scale)), scene.Regular, textEm, l.width()))
	y += line
	l.write(margin, y, textEm, scene.Bold, scene.Start, font.Fit(l.sizeWords(), scene.Bold, textEm, l.width()))
	y += 1.8
	l.add(scene.Shape{Path: scene.Polyline([]scene.Point{{X: margin, Y: y}, {X: l.Page.Width - margin, Y: y}}, false), Stroke: scene.Black, Width: 0.5})
}

func (l *layout) sizeWords() string {
	if l.scale == 1 {
		return l.words().FullSize
	}
	return fmt.Sprintf(l.words().Reduced, l.figure("%.3g", 1/l.scale))
}

// Counts says how many of each were found: 6 bolt holes, 1 bore.
func Counts(w *words.Catalogue, found trace.Found) string {
	var parts []string
	for _, role := range []trace.Role{trace.Fastener, trace.Dowel, trace.Bore, trace.Port, trace.Spot} {
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
