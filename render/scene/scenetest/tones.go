package scenetest

import (
	"math"
	"slices"

	"drawdown/render/scene"
)

// tones finds what a page shows by tone alone. Two things of the same form,
// with the same kind of lines and the same content, must not differ only in
// inks that a copier makes equal: one tight and one loose fastener could not be
// told apart.
type tones struct {
	shapes []scene.Shape
	boxes  []scene.Box // of the shapes
	texts  []scene.Text
}

// leastThing is the width, in millimetres, below which a shape is a dot or a
// line end without meaning.
const leastThing = 0.5

func (c *checker) checkTones() {
	for _, text := range c.texts {
		if text.Ink == scene.Grey || text.Ink == scene.Shade || text.Ink == scene.Tint {
			c.fault("%q is in grey: its thin strokes go when it is copied", text.Content)
		}
	}
	t := tones{shapes: c.shapes, boxes: c.boxes, texts: c.texts}
	alike := map[[4]float64][]int{}
	for i, s := range t.shapes {
		b := t.boxes[i]
		if s.Fill == scene.None || s.Stroke == scene.None || b.Width() < leastThing || b.Height() < leastThing {
			continue
		}
		key := [4]float64{math.Round(b.Width()), math.Round(b.Height()), s.Width, s.Dash}
		for _, k := range alike[key] {
			if t.byToneAlone(i, k) {
				at := b.Centre()
				c.fault("a shape at %.1f,%.1f differs from one alike only in tone: %s, not %s", at.X, at.Y, s.Fill, t.shapes[k].Fill)
				return
			}
		}
		alike[key] = append(alike[key], i)
	}
}

func (t tones) byToneAlone(i, k int) bool {
	a, b := t.shapes[i], t.shapes[k]
	return a.Fill != b.Fill && dark(a.Fill) == dark(b.Fill) && dark(a.Stroke) == dark(b.Stroke) &&
		same(a, b) && t.sameWithin(i, k)
}

// sameWithin reports whether two things have the same content.
func (t tones) sameWithin(i, k int) bool {
	a, b := t.over(i), t.over(k)
	return t.worded(i) == t.worded(k) && slices.EqualFunc(a, b, func(m, n int) bool {
		return dark(t.shapes[m].Fill) == dark(t.shapes[n].Fill) && same(t.shapes[m], t.shapes[n])
	})
}

// over returns the shapes that are drawn over a thing and are inside it.
func (t tones) over(i int) (all []int) {
	box := t.boxes[i].Grown(touch)
	for k := i + 1; k < len(t.shapes); k++ {
		if box.Holds(t.boxes[k]) {
			all = append(all, k)
		}
	}
	return all
}

// worded reports whether a thing contains a word.
func (t tones) worded(i int) bool {
	box := t.boxes[i]
	return slices.ContainsFunc(t.texts, func(text scene.Text) bool { return box.Contains(text.Box().Centre()) })
}

// form is the outline of a thing relative to its top left.
func form(p scene.Path) (points []scene.Point) {
	b := p.Bounds()
	for _, run := range p.Flatten() {
		for _, q := range run {
			points = append(points, scene.Point{X: q.X - b.Left, Y: q.Y - b.Top})
		}
	}
	return points
}

func same(a, b scene.Shape) bool {
	return slices.EqualFunc(form(a.Path), form(b.Path), func(p, q scene.Point) bool { return p.Distance(q) < 0.1 })
}
