package scenetest

import (
	"math"
	"slices"

	"drawdown/render/scene"
)

// rule is a straight horizontal line.
type rule struct{ left, right, y float64 }

const (
	leastRule = 20.0 // mm: anything shorter is a tick or an axis, not a line of the grid
	nearEdge  = 12.0 // mm: a line that ends closer to the margin was meant to reach it
	besideOf  = 3.0  // mm above and below a line, within which something may continue it
	doubled   = 5.0  // mm between two lines with nothing between them: they look like one
	mostOf    = 0.6  // of the width, from which a line belongs to the page
)

// checkGrid checks that lines and rows of boxes end at the margins, and that no
// two lines across the page are close together with nothing between them.
func (c *checker) checkGrid() {
	rules := c.rules()
	for i, r := range rules {
		if short := c.inside.Right - r.right; short > touch && short < nearEdge && !c.continues(r) {
			c.fault("a line ends %.1f mm short of the margin at %.1f,%.1f", short, r.right, r.y)
		}
		for _, other := range rules[:i] {
			if c.double(r, other) {
				c.fault("a double line at %.1f and %.1f", min(r.y, other.y), max(r.y, other.y))
			}
		}
	}
	c.checkRows()
}

func (c *checker) rules() (all []rule) {
	for _, s := range c.shapes {
		if s.Tag.Role != scene.Furniture || s.Stroke == scene.None || len(s.Path) != 2 || s.Path[1].Verb != scene.Line {
			continue
		}
		a, b := s.Path[0].P[0], s.Path[1].P[0]
		if a.Y == b.Y && math.Abs(a.X-b.X) >= leastRule {
			all = append(all, rule{min(a.X, b.X), max(a.X, b.X), a.Y})
		}
	}
	return all
}

// continues reports whether something follows the end of a line.
func (c *checker) continues(r rule) bool {
	behind := scene.Box{Left: r.right + touch, Right: c.page.Width, Top: r.y - besideOf, Bottom: r.y + besideOf}
	return slices.ContainsFunc(c.texts, func(t scene.Text) bool { return behind.Meets(t.Box()) }) ||
		slices.ContainsFunc(c.shapes, func(s scene.Shape) bool { return behind.Meets(s.Path.Bounds()) })
}

func (c *checker) double(a, b rule) bool {
	apart, least := math.Abs(a.y-b.y), mostOf*c.inside.Width()
	between := scene.Box{Left: max(a.left, b.left), Right: min(a.right, b.right), Top: min(a.y, b.y), Bottom: max(a.y, b.y)}
	if apart < touch || apart > doubled || between.Width() < least {
		return false
	}
	if between.Left > c.inside.Left+touch {
		return false // lines of a chart
	}
	return !slices.ContainsFunc(c.texts, func(t scene.Text) bool { return between.Meets(t.Box()) })
}

// leastBoxes is the smallest number of boxes side by side that are a row.
const leastBoxes = 3

// checkRows checks that the longest row of each size of boxes ends at the right
// margin, if it begins at the left one and takes most of the width.
func (c *checker) checkRows() {
	longest := map[[2]float64]scene.Box{}
	for _, row := range c.rows() {
		size := [2]float64{scene.Rounded(row.cell), scene.Rounded(row.Height())}
		if row.Width() > longest[size].Width() {
			longest[size] = row.Box
		}
	}
	for _, row := range longest {
		short := c.inside.Right - row.Right
		if row.Left-c.inside.Left < touch && row.Width() >= mostOf*c.inside.Width() && short > touch {
			c.fault("a row of boxes ends %.1f mm short of the margin at %.1f,%.1f", short, row.Right, row.Top)
		}
	}
}

// boxRow is a row of boxes of one size.
type boxRow struct {
	scene.Box
	cell float64
}

func (c *checker) rows() []boxRow {
	var open, whole []boxRow
	for _, s := range c.shapes {
		b := s.Path.Bounds()
		if s.Tag.Role != scene.Furniture || s.Stroke == scene.None || b.Width() < 2 || b.Height() < 2 {
			continue
		}
		k := slices.IndexFunc(open, func(r boxRow) bool {
			return math.Abs(r.Right-b.Left) < touch && math.Abs(r.Top-b.Top) < touch && math.Abs(r.Bottom-b.Bottom) < touch && math.Abs(r.cell-b.Width()) < touch
		})
		if k < 0 {
			open = append(open, boxRow{b, b.Width()})
			continue
		}
		open[k].Right = b.Right
	}
	for _, r := range open {
		if r.Width() > (leastBoxes-0.5)*r.cell {
			whole = append(whole, r)
		}
	}
	return whole
}
