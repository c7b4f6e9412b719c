package card

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence/plan"
)

func (c *card) request(box scene.Box) diagram.Request {
	return diagram.Request{Plan: c.plan, Order: c.side.Order, Front: c.words.Sheet.Front, Box: box}
}

// secondNumbers gives the second numbers: on the loosening side the tightening
// numbers, or the cast numbers where the part has them; on the tightening side
// the cast numbers. Nil where there are none.
func secondNumbers(p plan.Plan, loosening bool) []string {
	small := make([]string, len(p.Joint.Fasteners))
	tighten := p.Tighten.Numbers()
	some := false
	for i, f := range p.Joint.Fasteners {
		switch {
		case f.Cast > 0 && (loosening || f.Cast != tighten[i]):
			small[i] = strconv.Itoa(f.Cast)
		case loosening:
			small[i] = strconv.Itoa(tighten[i])
		}
		some = some || small[i] != ""
	}
	if !some {
		return nil
	}
	return small
}

// captionLines is how many lines the caption under the part may take.
func (c *card) captionLines() int {
	switch width := c.in.part.width; {
	case width < 100:
		return 3
	case width < 150:
		return 2
	}
	return 1
}

func (c *card) captionHeight() float64 { return 3 + float64(c.captionLines())*sheet.Line }

// part draws the part and its caption between two heights.
func (c *card) part(p *sheet.Pen, top, bottom float64) diagram.Drawing {
	req := c.request(scene.Box{Left: c.in.part.left, Top: top, Right: c.in.part.right(), Bottom: bottom - c.captionHeight()})
	if !c.crowded {
		req.Beside = c.second
	}
	d := diagram.Draw(req)
	p.Add(d.Items...)
	c.caption(p, d, bottom-c.captionHeight()+sheet.Line+0.6)
	return d
}

// caption says how to read the drawing, with a sample of each kind's mark.
func (c *card) caption(p *sheet.Pen, d diagram.Drawing, y float64) {
	x := c.in.part.left
	if len(c.plan.Kinds) > 1 {
		for i, k := range c.plan.Kinds {
			p.Add(diagram.Sample(i, scene.Point{X: x + 1.6, Y: y - 1.1}, 1.4))
			p.Text(x+4.4, y, k.Name)
			x += 4.4 + font.Width(k.Name, scene.Regular, sheet.TextEm) + 3
		}
	}
	reading, most, right := c.reading(d), c.captionLines(), c.in.part.right()
	words := font.Break(reading, scene.Regular, sheet.TextEm, right-x)
	if most == 1 || len(words) == 1 {
		p.Text(x, y, font.Fit(reading, scene.Regular, sheet.TextEm, right-x))
		return
	}
	// Further lines may begin under the samples.
	p.Text(x, y, words[0])
	rest := font.Break(strings.Join(words[1:], " "), scene.Regular, sheet.TextEm, c.in.part.width)
	for _, line := range sheet.AtMost(rest, most-1, scene.Regular, sheet.TextEm, c.in.part.width) {
		y += sheet.Line
		p.Text(c.in.part.left, y, line)
	}
}

func (c *card) reading(d diagram.Drawing) string {
	w := c.words.Card.Part
	var parts []string
	if n := len(d.Unplaced); n > 0 {
		parts = append(parts, w.Unplaced.Of(n))
	}
	if !c.crowded && c.second != nil {
		parts = append(parts, fmt.Sprintf(w.SmallNumber, c.smallMeans()))
	}
	switch {
	case d.WholePath:
		parts = append(parts, w.Arrows)
	case d.Path:
		parts = append(parts, w.ArrowsThenNumbers)
	default:
		parts = append(parts, w.Numbers)
	}
	if slices.ContainsFunc(c.plan.Joint.Clusters, func(cl geometry.Cluster) bool { return cl.Unloaded }) {
		parts = append(parts, w.NoSpringLoad)
	}
	if d.Rings {
		parts = append(parts, w.Rings)
	}
	return strings.Join(parts, " ")
}

func (c *card) smallMeans() string {
	for _, f := range c.plan.Joint.Fasteners {
		if f.Cast > 0 {
			return c.words.Card.Part.Cast
		}
	}
	return c.words.Card.Part.Tightening
}

// left tells what found no room.
func (c *card) left(d diagram.Drawing) []string {
	var notes []string
	side := c.name()
	if n := len(d.Unplaced); n > 0 {
		notes = append(notes, fmt.Sprintf("%s side: %d of %d numbers found no room on %s; print it on larger paper", side, n, len(c.numbers), c.paper.Name))
	}
	for _, word := range d.Dropped {
		notes = append(notes, fmt.Sprintf("%s side: the label %q found no room on %s", side, word, c.paper.Name))
	}
	if d.BesideLeftOut > 0 {
		notes = append(notes, fmt.Sprintf("%s side: %d small numbers found no room on %s", side, d.BesideLeftOut, c.paper.Name))
	}
	return notes
}
