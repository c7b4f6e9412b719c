package card

import (
	"math"

	"drawdown/geometry"
	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
)

// span is a column of the page.
type span struct{ left, width float64 }

func (s span) right() float64 { return s.left + s.width }

// workPage is one way to fill a page of a side: the part, some stages and their
// tick boxes, and on the first page the checks before the work. Everything is
// measured for its column.
type workPage struct {
	from, to int // its stages
	part     span
	stages   stageBoxes
	grid     tickGrid
	beside   bool // stages and ticks are beside the part, on a landscape page

	checks   checkList // before the work
	checksAt placeOfChecks
	box      troubleBox // troubleshooting box, if it is below the ticks
	boxBelow bool
}

// placeOfChecks is where the checks are on a page, always above the work.
type placeOfChecks int

const (
	nowhere placeOfChecks = iota
	overAll               // over the full width
	overPart
	overStages // in the column beside the part
)

const (
	columnGap = 6.0 // white space between two columns
	leastPart = 46  // least height of the drawing of the part
)

// topHeight is the height of what is above both columns.
func (w workPage) topHeight() float64 {
	if w.checksAt == overAll {
		return w.checks.height()
	}
	return 0
}

// leftHeight is the height of the part's column, without the part.
func (w workPage) leftHeight() float64 {
	h := 0.0
	if w.checksAt == overPart {
		h += w.checks.height()
	}
	if !w.beside {
		h += w.workHeight()
	}
	return h
}

// rightHeight is the height of the column beside the part.
func (w workPage) rightHeight() float64 {
	if !w.beside {
		return 0
	}
	h := w.workHeight()
	if w.checksAt == overStages {
		h += w.checks.height()
	}
	if w.boxBelow {
		h += w.box.height()
	}
	return h
}

func (w workPage) workHeight() float64 { return w.stages.height() + w.grid.height() }

// stacked measures everything in one column of full width.
func (c *card) stacked(from, to int, checks bool) workPage {
	whole := c.width()
	w := workPage{from: from, to: to, part: whole, stages: c.stageBoxes(whole, from, to), grid: c.tickGrid(whole, from, to)}
	if checks {
		w.checks, w.checksAt = c.checkList(whole), overAll
	}
	return w
}

// width is the full width of a page.
func (c *card) width() span { return span{c.paper.Margin, c.paper.Content()} }

// shares are the fractions of the width to try for the drawing.
var shares = []float64{0.7, 0.66, 0.62, 0.58, 0.54, 0.5, 0.46, 0.42, 0.38, 0.34}

// spreads measures a page with two columns in every way, with the checks in
// every place. In portrait, only a part higher than wide benefits.
func (c *card) spreads(from, to int, checks bool) []workPage {
	extent := geometry.Bounds(c.plan.Joint.Points())
	if !c.paper.Wide() && extent.Height() < 1.2*extent.Width() {
		return nil
	}
	var all []workPage
	for _, share := range shares {
		width := c.paper.Content() - columnGap
		left := span{c.paper.Margin, math.Round(width*share/2) * 2}
		right := span{left.right() + columnGap, width - left.width}
		if right.width < c.leastBeside() {
			continue
		}
		page := workPage{from: from, to: to, part: left, stages: c.stageBoxes(right, from, to), grid: c.tickGrid(right, from, to), beside: true}
		if !checks {
			all = append(all, page)
			continue
		}
		all = append(all, c.withChecks(page, right)...)
	}
	return all
}

// leastBeside is the least width of the column beside the part: for its
// headings, a stage, and the ticks of a few fasteners.
func (c *card) leastBeside() float64 {
	least := max(c.leastBox(), c.labelWidth(span{})+3*tickColumn)
	for _, head := range []string{c.words.Card.Stages, c.words.Card.TickAsYouGo} {
		least = max(least, font.Width(head, scene.Bold, c.paper.HeadEm))
	}
	return least
}

// withChecks returns a two-column page with the checks in every possible place.
func (c *card) withChecks(page workPage, right span) []workPage {
	top := page
	top.checks, top.checksAt = c.checkList(c.width()), overAll
	if !c.paper.Wide() {
		return []workPage{top}
	}
	above, apart, beside := page, page, page
	above.checks, above.checksAt = c.checkList(page.part), overPart
	apart.checks, apart.checksAt = above.checks.unboxed(), overPart
	apart.box, apart.boxBelow = c.troubleBox(right), true
	beside.checks, beside.checksAt = c.checkList(right), overStages
	return []workPage{above, apart, beside, top}
}

// fill chooses how to fill a page between two heights. It takes as many stages
// as fit beside a part whose numbers are large enough and whose small numbers
// and words all fit. To make room it reduces white space first, then the part.
func (c *card) fill(top, bottom, most float64, from int, checks bool) (page workPage, drawn drawnPart, ok bool) {
	for to := len(c.side.Stages); ; {
		next, fits := c.fitting(bottom-top, most, from, to, checks)
		if !fits {
			return page, drawn, ok
		}
		left, right := next.partBetween(top, bottom)
		here := c.part(next.part, left, right)
		if whole := here.whole(); whole || !ok {
			page, drawn, ok = next, here, true
			if whole {
				return page, drawn, true
			}
		}
		if to = next.to - 1; to <= from {
			return page, drawn, true
		}
	}
}

// partBetween returns the top and bottom limits of the part.
func (w workPage) partBetween(top, bottom float64) (from, to float64) {
	top += w.topHeight()
	if w.checksAt == overPart {
		top += w.checks.height()
	}
	if !w.beside {
		bottom -= w.workHeight()
	}
	return top, bottom
}

func (c *card) fitting(room, most float64, from, to int, checks bool) (page workPage, ok bool) {
	for to := max(from+1, to); to > from; to-- {
		end := min(to, len(c.side.Stages))
		for _, ways := range [][]workPage{c.spreads(from, end, checks), {c.stacked(from, end, checks)}} {
			if page, ok := c.largest(room, most, ways); ok {
				return page, true
			}
		}
	}
	return workPage{}, false
}

// largest returns the page that draws the part largest.
func (c *card) largest(room, most float64, ways []workPage) (best workPage, ok bool) {
	for _, close := range []bool{false, true} {
		scale := 0.0
		for _, page := range ways {
			if close {
				page.checks.balanced, page.grid = true, page.grid.close()
			}
			height := room - page.topHeight() - page.leftHeight()
			if page.topHeight()+page.rightHeight() > room || height < leastPart {
				continue
			}
			if here := c.scale(page.part, height); here > scale && c.numberCap(page.part, height) >= most {
				best, ok, scale = page, true, here
			}
		}
		if ok {
			return best, true
		}
	}
	return workPage{}, false
}

// numberCap is the height that numbers on the part would have, up to what a
// card needs. It is 0 if they would be outside their marks, and negative if the
// part does not fit.
func (c *card) numberCap(in span, height float64) float64 {
	if height < leastPart {
		return -1
	}
	enough := 5.0
	if len(c.side.Order) > 20 || c.paper.Narrow() || c.paper.Low() {
		enough = 3.0 // on small paper the figures beside the part matter more
	}
	capMm, led := diagram.NumberCap(c.request(scene.Box{
		Left: in.left, Top: 0, Right: in.right(), Bottom: height - c.captionHeight(in),
	}))
	if led {
		return 0
	}
	return min(capMm, enough)
}

// scale is the scale of the part in a column: mm on paper per mm of the extent
// of the fasteners.
func (c *card) scale(in span, height float64) float64 {
	extent := geometry.Bounds(c.plan.Joint.Points())
	return math.Min(in.width/math.Max(extent.Width(), 1), (height-c.captionHeight(in))/math.Max(extent.Height(), 1))
}

// captionHeight is the most that the caption under the part can take. What it
// says about arrows, and about numbers that did not fit, is known only after
// drawing.
func (c *card) captionHeight(in span) float64 { return c.captionOf(c.captionLines(in)) }

func (c *card) captionLines(in span) int {
	says := drawnPart{small: !c.crowded && c.second != nil}
	lines := c.caption(in, says).Lines
	says.Path = true
	lines = max(lines, c.caption(in, says).Lines)
	if c.crowded {
		says.Path, says.Unplaced = false, c.side.Order
		lines = max(lines, c.caption(in, says).Lines)
		says.details = make([]diagram.Detail, 1)
		lines = max(lines, c.caption(in, says).Lines)
	}
	return lines
}

func (c *card) captionOf(lines int) float64 { return captionAir + float64(lines)*c.paper.Line }

const captionAir = 3.0 // above and below the caption
