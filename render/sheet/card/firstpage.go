package card

import (
	"math"

	"drawdown/geometry"
	"drawdown/render/diagram"
	"drawdown/render/scene"
)

// span is a width of the page in which things stand below each other.
type span struct{ left, width float64 }

func (s span) right() float64 { return s.left + s.width }

// blocks is a set of the things that stand under the part or beside it.
type blocks uint8

const (
	stagesBlock blocks = 1 << iota
	checksBlock
	gridBlock
)

func (b blocks) has(all blocks) bool { return b&all == all }

// firstPage is one way to fill the first page of a side: everything measured in
// the column where it would stand, and what of it the page holds. The rest
// follows on further pages.
type firstPage struct {
	part   span
	stages stageBoxes
	checks checkList
	grid   tickGrid

	under  blocks // below the part
	beside blocks // in the column beside the part, on a page on its side
}

func (f firstPage) height(b blocks) float64 {
	h := 0.0
	if b.has(stagesBlock) {
		h += f.stages.height()
	}
	if b.has(checksBlock) {
		h += f.checks.height()
	}
	if b.has(gridBlock) {
		h += f.grid.height()
	}
	if b.has(stagesBlock|gridBlock) && !b.has(checksBlock) {
		h += overleafLine
	}
	return h
}

const (
	overleafLine = 6.0 // the height of the line that says where the checks are
	columnGap    = 6.0 // the white between two columns
	leastPart    = 46  // the least height of the drawing of the part
)

// stacked measures everything below each other, over the whole width. It holds
// nothing but the part yet.
func (c *card) stacked() firstPage {
	whole := span{c.paper.Margin, c.paper.Content()}
	return firstPage{part: whole, stages: c.stageBoxes(whole), checks: c.checkList(whole), grid: c.tickGrid(whole)}
}

// shares are the shares of the width that the drawing may have on a page on its
// side.
var shares = []float64{0.7, 0.66, 0.62, 0.58, 0.54, 0.5, 0.46, 0.42, 0.38, 0.34}

// spread is a page on its side parted into two columns. What to see to first may
// stand in either.
type spread struct {
	checksLeft, checksRight firstPage
}

// spreads measures a page on its side parted in every way; an upright page has
// none.
func (c *card) spreads() []spread {
	if !c.paper.Wide() {
		return nil
	}
	all := make([]spread, len(shares))
	for k, share := range shares {
		width := c.paper.Content() - columnGap
		left := span{c.paper.Margin, math.Round(width*share/2) * 2}
		right := span{left.right() + columnGap, width - left.width}
		page := firstPage{part: left, stages: c.stageBoxes(right), checks: c.checkList(right), grid: c.tickGrid(right)}
		all[k].checksRight = page
		page.checks = c.checkList(left)
		all[k].checksLeft = page
	}
	return all
}

// choose picks how the first page is filled, given the height that is free on
// it. A part so crowded that its numbers stand on leader lines has the page
// alone.
func (c *card) choose(room float64, whole firstPage, spreads []spread) firstPage {
	most := c.numberCap(whole.part, room)
	if most == 0 {
		return whole
	}
	if page, ok := c.largestSpread(room, most, spreads); ok {
		return page
	}
	return c.fullest(room, most, whole)
}

// fullest keeps as many blocks as possible under the part while it has room for
// numbers of full size, or of the size that it would have alone: rather the
// ticks, which go with the figures, than what is seen to once.
func (c *card) fullest(room, most float64, whole firstPage) firstPage {
	for _, under := range []blocks{stagesBlock | checksBlock | gridBlock, stagesBlock | gridBlock, stagesBlock | checksBlock, stagesBlock} {
		for _, balanced := range []bool{false, true} {
			page := whole
			page.under, page.checks.balanced = under, balanced
			if height := room - page.height(under); height >= leastPart && c.numberCap(page.part, height) >= most {
				return page
			}
		}
	}
	return whole
}

// held is what stands in each column of a spread beside the part.
type held struct{ left, right blocks }

// fullestFirst lists what a spread may hold: the most of the card first, what
// is as much side by side.
var fullestFirst = [][]held{
	{{checksBlock, stagesBlock | gridBlock}, {0, stagesBlock | gridBlock | checksBlock}},
	{{0, stagesBlock | gridBlock}},
	{{checksBlock, stagesBlock}, {0, stagesBlock | checksBlock}},
	{{0, stagesBlock}},
}

// largestSpread picks the spread in which the part is drawn the largest, among
// those that hold the most of the card. None fits where the part needs the
// whole width for numbers of full size.
func (c *card) largestSpread(room, most float64, spreads []spread) (best firstPage, ok bool) {
	if most < 0 {
		return firstPage{}, false
	}
	for _, choice := range fullestFirst {
		largest := 0.0
		for _, balanced := range []bool{false, true} {
			for _, h := range choice {
				for _, s := range spreads {
					page := s.holding(h)
					page.checks.balanced = balanced
					height := room - page.height(h.left)
					if page.height(h.right) > room || height < leastPart || c.numberCap(page.part, height) < most {
						continue
					}
					if scale := c.scale(page.part, height); scale > largest {
						best, ok, largest = page, true, scale
					}
				}
			}
			if ok {
				return best, true
			}
		}
	}
	return firstPage{}, false
}

func (s spread) holding(h held) firstPage {
	page := s.checksRight
	if h.left.has(checksBlock) {
		page = s.checksLeft
	}
	page.under, page.beside = h.left, h.right
	return page
}

// numberCap is the height of the numbers that the part would get, up to what a
// card needs; 0 where they would stand outside their marks, below 0 where there
// is no room for the part.
func (c *card) numberCap(in span, height float64) float64 {
	if height < leastPart {
		return -1
	}
	enough := 5.0
	if len(c.side.Order) > 20 || c.paper.Narrow() || c.paper.Low() {
		enough = 3.0 // the figures beside the part are worth more on small paper
	}
	capMm, led := diagram.NumberCap(c.request(scene.Box{
		Left: in.left, Top: 0, Right: in.right(), Bottom: height - c.captionHeight(captionLines(in)),
	}))
	if led {
		return 0
	}
	return min(capMm, enough)
}

// scale is how large the part is drawn in a column: paper mm for a mm of the
// spread of the fasteners.
func (c *card) scale(in span, height float64) float64 {
	extent := geometry.Bounds(c.plan.Joint.Points())
	return math.Min(in.width/math.Max(extent.Width(), 1), (height-c.captionHeight(captionLines(in)))/math.Max(extent.Height(), 1))
}

// captionLines is how many lines are kept for the caption under the part. One
// that needs more takes them from the part.
func captionLines(in span) int {
	switch {
	case in.width < 100:
		return 3
	case in.width < 150:
		return 2
	}
	return 1
}

func (c *card) captionHeight(lines int) float64 { return 3 + float64(lines)*c.paper.Line }
