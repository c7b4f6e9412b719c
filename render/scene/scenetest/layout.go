package scenetest

import (
	"fmt"
	"math"
	"slices"

	"drawdown/render/scene"
)

// CheckLayout returns every fault in the layout of a page: type that overlaps
// other type, a mark, a trail or the margin; a number that is neither in nor
// beside its own mark, nor on a leader from it; the name of a spot that is far
// from it, or closer to another; a trail through another mark, or a leader
// across another trail; anything beyond the margin or the page. A sound page
// has none.
func CheckLayout(page scene.Page) []string {
	c := checker{page: page, inside: scene.Box{Right: page.Width, Bottom: page.Height}.Grown(-page.Margin)}
	for _, it := range page.Items {
		switch it := it.(type) {
		case scene.Text:
			c.texts = append(c.texts, it)
		case scene.Shape:
			c.shapes, c.boxes = append(c.shapes, it), append(c.boxes, it.Path.Bounds())
		}
	}
	c.checkMargins()
	c.checkTexts()
	c.checkShapes()
	c.checkTrails()
	c.checkNumbers()
	c.checkTones()
	c.checkLabels()
	c.checkGrid()
	c.checkEdges()
	return c.faults
}

type checker struct {
	page   scene.Page
	inside scene.Box
	texts  []scene.Text
	shapes []scene.Shape
	boxes  []scene.Box // of the shapes
	faults []string
}

func (c *checker) fault(format string, args ...any) {
	c.faults = append(c.faults, "page "+c.page.Name+": "+fmt.Sprintf(format, args...))
}

// touch is the overlap, in millimetres, that is tolerated, because coordinates
// are rounded to a hundredth.
const touch = 0.02

func (c *checker) checkMargins() {
	room := c.inside.Grown(touch)
	for _, t := range c.texts {
		if !room.Holds(t.Box()) {
			c.fault("%q reaches into the margin", t.Content)
		}
	}
	for k, s := range c.shapes {
		if b := c.boxes[k]; !room.Holds(b) {
			c.fault("a shape %s reaches into the margin at %.1f,%.1f–%.1f,%.1f", s.Tag.Name, b.Left, b.Top, b.Right, b.Bottom)
		}
	}
}

func (c *checker) checkTexts() {
	boxes := make([]scene.Box, len(c.texts))
	for i, t := range c.texts {
		boxes[i] = t.Box().Grown(-touch)
	}
	c.pairs(boxes, func(i, k int) {
		if boxes[i].Meets(boxes[k]) {
			c.fault("%q meets %q at %.1f,%.1f", c.texts[i].Content, c.texts[k].Content, boxes[i].Left, boxes[i].Top)
		}
	})
}

// pairs calls f for the pairs of boxes that share a cell of a coarse grid.
func (c *checker) pairs(boxes []scene.Box, f func(i, k int)) {
	const cell = 10
	cells := map[[2]int][]int{}
	seen := map[[2]int]bool{}
	for i, b := range boxes {
		for x := int(math.Floor(b.Left / cell)); x <= int(math.Floor(b.Right/cell)); x++ {
			for y := int(math.Floor(b.Top / cell)); y <= int(math.Floor(b.Bottom/cell)); y++ {
				for _, k := range cells[[2]int{x, y}] {
					if pair := [2]int{k, i}; !seen[pair] {
						seen[pair] = true
						f(k, i)
					}
				}
				cells[[2]int{x, y}] = append(cells[[2]int{x, y}], i)
			}
		}
	}
}

func (c *checker) checkShapes() {
	for k, s := range c.shapes {
		if s.Tag.Role != scene.Mark && s.Tag.Role != scene.Trail {
			continue
		}
		around, runs := c.boxes[k], s.Path.Flatten()
		for _, t := range c.texts {
			box := t.Box().Grown(-touch)
			if t.Tag.Name != "" && t.Tag.Name == s.Tag.Name || !box.Meets(around.Grown(touch)) {
				continue
			}
			if crosses(runs, box) || (s.Tag.Role == scene.Mark && encloses(runs, box.Centre())) {
				c.fault("%q meets the %s %s at %.1f,%.1f", t.Content, s.Tag.Role, s.Tag.Name, box.Left, box.Top)
			}
		}
	}
}

func crosses(runs [][]scene.Point, box scene.Box) bool {
	for _, run := range runs {
		for k := 1; k < len(run); k++ {
			if box.Cut(run[k-1], run[k]) {
				return true
			}
		}
	}
	return false
}

// encloses reports whether the point is inside the outline (even–odd rule). An
// open polyline is closed by a straight line, as in a fill.
func encloses(runs [][]scene.Point, p scene.Point) bool {
	inside := false
	for _, run := range runs {
		inside = inside != scene.Inside(p, run)
	}
	return inside
}

// checkNumbers checks that each number is in its own mark, or beside it and
// closer to it than to any other, or connected to it by a leader.
func (c *checker) checkNumbers() {
	marks, trails := map[string]*outline{}, map[string][][][]scene.Point{}
	var all []*outline
	for k, s := range c.shapes {
		switch s.Tag.Role {
		case scene.Mark:
			if _, twice := marks[s.Tag.Name]; !twice {
				all = append(all, &outline{s.Tag.Name, c.boxes[k], s.Path.Flatten(), s.Width})
				marks[s.Tag.Name] = all[len(all)-1]
			}
		case scene.Trail:
			trails[s.Tag.Name] = append(trails[s.Tag.Name], s.Path.Flatten())
		}
	}
	for _, t := range c.texts {
		if t.Tag.Role != scene.Number {
			continue
		}
		box, mark := t.Box(), marks[t.Tag.Name]
		switch {
		case mark == nil:
			c.fault("number %q has no mark", t.Content)
		case mark.bounds.Grown(touch).Holds(box):
		case slices.ContainsFunc(trails[t.Tag.Name], func(trail [][]scene.Point) bool { return leads(trail, mark.runs, box) }):
		case !mark.bounds.Grown(besideMark + mark.width/2).Meets(box):
			c.fault("number %q lies away from its mark %s", t.Content, t.Tag.Name)
		case scene.RunsToBox(mark.runs, box) < mark.width/2-touch:
			c.fault("number %q runs into the edge of its mark %s", t.Content, t.Tag.Name)
		default:
			c.checkNearest(t, mark, all)
			c.checkHoles(t, mark)
		}
	}
}

type outline struct {
	name   string
	bounds scene.Box
	runs   [][]scene.Point
	width  float64 // of the line
}

// checkNearest checks that no other mark is as close to a number as its own.
func (c *checker) checkNearest(number scene.Text, own *outline, marks []*outline) {
	box := number.Box()
	distance := scene.RunsToBox(own.runs, box)
	for _, m := range marks {
		if m != own && m.bounds.Grown(distance).Meets(box) && scene.RunsToBox(m.runs, box) < distance {
			c.fault("number %q of %s lies nearer to %s", number.Content, own.name, m.name)
		}
	}
}

// besideMark is how close to the line of its mark, in millimetres, a number
// without a leader must be.
const besideMark = 1.25
