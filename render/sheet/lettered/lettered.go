// Package lettered draws a part with a letter at each place where something was
// seen. It may import plans, diagrams, scenes, words and what sheets share.
package lettered

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/nearby"
	"drawdown/render/diagram"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// Spot is a place with its letter. It has ids, a point, or neither: then it is the
// whole part.
type Spot struct {
	Letter string
	IDs    []string    // of fasteners, a station or a bore
	Point  *[2]float64 // mm, as in the pattern file
}

// At is the spot of a place.
func At(letter string, p *run.Place) Spot {
	s := Spot{Letter: letter}
	if p == nil {
		return s
	}
	s.Point = p.At
	if id := p.Measured().Name(); id != "" {
		s.IDs = []string{id}
	}
	return s
}

// Where names the place in words; empty for the whole part. A point is named by what is
// near, with its place in the file to the millimetre.
func (s Spot) Where(joint geometry.Joint, c *words.Catalogue) string {
	switch {
	case len(s.IDs) > 0:
		return strings.Join(s.IDs, ", ")
	case s.Point != nil:
		at := fmt.Sprintf("x %d, y %d mm", int(math.Round(s.Point[0])), int(math.Round(s.Point[1])))
		near := nearby.To(joint, geometry.Point{X: s.Point[0], Y: s.Point[1]})
		return words.Row(c.Between(near.Between, near.Near), c.Figure(at))
	}
	return ""
}

// Near names the place as Where does, without the figures of a point.
func (s Spot) Near(joint geometry.Joint, c *words.Catalogue) string {
	if len(s.IDs) > 0 || s.Point == nil {
		return s.Where(joint, c)
	}
	near := nearby.To(joint, geometry.Point{X: s.Point[0], Y: s.Point[1]})
	return c.Between(near.Between, near.Near)
}

// Letter counts A to Z, then AA.
func Letter(i int) string {
	text := string(rune('A' + i%26))
	if i >= 26 {
		return Letter(i/26-1) + text
	}
	return text
}

// Flag is before the letters in the drawing.
const Flag = "▲"

const (
	partShare = 0.34 // of the page's height that the drawing may have
	leastPart = 42.0

	stillLarge = 0.65 // of its height: to that it is made smaller, rather than begin a page
)

// Draw draws the part under a heading at the present place of the run, and says how
// to read the letters. The heading may be empty. The notes tell what found no room. A plan without fasteners is of a file
// that cannot be read any more: nothing is drawn.
func Draw(r *sheet.Run, title string, p plan.Plan, spots []Spot, ask sheet.Request) (notes []string) {
	if len(p.Joint.Fasteners) == 0 {
		return nil
	}
	paper := r.Pen.Paper
	read := paper.BreakText(ask.Words.Record.Drawing, paper.Content())
	height := heightOf(p, paper)
	strong := paper.Strong()
	head := strong.Lines(title, paper.Content())
	if title == "" {
		head = nil
	}
	shown := p
	shown.Joint = flagged(p.Joint, spots)
	draw := func(top, height float64) diagram.Drawing {
		return diagram.Draw(diagram.Part{
			Plan: shown, Show: diagram.Words, Words: diagram.IDs(p.Joint), Beside: besides(p.Joint, spots),
			Front: ask.Words.Sheet.Front, Box: scene.Box{Left: r.Pen.Left(), Top: top, Right: r.Pen.Right(), Bottom: top + height}, SmallEm: paper.TextEm, NoArrows: true,
		})
	}
	above := float64(len(head)) * strong.Step
	if room := r.Bottom - r.Y - above - float64(len(read))*paper.Line - 6; room < height && room >= stillLarge*height && whole(draw(r.Y, room)) {
		height = room
	}
	r.Room(above + height + float64(len(read))*paper.Line + 6)
	if title != "" {
		r.Set(strong, title)
		r.Y += 2
	}
	d := draw(r.Y, height)
	r.Pen.Add(d.Items...)
	r.Y += height + 3.5
	r.Y = r.Pen.Lines(r.Pen.Left(), r.Y, read)
	ask.Missing.Note(len(d.Unplaced), len(p.Joint.Fasteners))
	notes = left(d, len(p.Joint.Fasteners), ask)
	for _, note := range notes {
		r.Sentence(note)
	}
	r.Y += 1.5
	return notes
}

// whole reports whether everything found its room.
func whole(d diagram.Drawing) bool { return len(d.Unplaced)+len(d.Dropped)+d.BesideLeftOut == 0 }

// heightOf is what the part takes of the width, with room for words above and below,
// up to its share of the page.
func heightOf(p plan.Plan, paper sheet.Paper) float64 {
	points := p.Joint.Points()
	for _, path := range p.Joint.Outline {
		points = append(points, path...)
	}
	extent := geometry.Bounds(points)
	return min(paper.Content()*extent.Height()/max(extent.Width(), 1)+6*paper.Line, max(leastPart, partShare*paper.Height))
}

// flagged is the joint with a label at each place that is no fastener.
func flagged(joint geometry.Joint, spots []Spot) geometry.Joint {
	joint.Labels = slices.Clone(joint.Labels)
	for _, s := range spots {
		at := s.Point
		for _, station := range joint.Stations {
			if slices.Contains(s.IDs, station.ID) {
				at = &[2]float64{station.At.X, station.At.Y}
			}
		}
		for _, bore := range joint.Bores {
			if bore.Label != "" && slices.Contains(s.IDs, bore.Label) {
				at = &[2]float64{bore.Centre.X, bore.Centre.Y}
			}
		}
		if at != nil {
			joint.Labels = append(joint.Labels, geometry.Label{Text: Flag + s.Letter, At: geometry.Point{X: at[0], Y: at[1]}})
		}
	}
	return joint
}

// besides are the letters at each fastener; nil where there are none.
func besides(joint geometry.Joint, spots []Spot) []string {
	letters := make([]string, len(joint.Fasteners))
	for i, f := range joint.Fasteners {
		for _, s := range spots {
			if slices.Contains(s.IDs, f.ID) {
				letters[i] += s.Letter
			}
		}
		if letters[i] != "" {
			letters[i] = Flag + letters[i]
		}
	}
	if strings.Join(letters, "") == "" {
		return nil
	}
	return letters
}

// left tells what found no room.
func left(d diagram.Drawing, fasteners int, ask sheet.Request) (notes []string) {
	say := func(code finding.Code, values finding.Values) {
		values["where"], values["paper"] = "drawing", ask.Paper.Name
		notes = append(notes, ask.Words.Say(finding.Warned(code, values)))
	}
	if n := len(d.Unplaced); n > 0 {
		say(sheet.NumbersNoRoom, finding.Values{"left": n, "of": fasteners})
	}
	if d.BesideLeftOut > 0 {
		say(sheet.SmallNoRoom, finding.Values{"left": d.BesideLeftOut})
	}
	for _, word := range d.Dropped {
		say(sheet.LabelNoRoom, finding.Values{"label": word})
	}
	return notes
}
