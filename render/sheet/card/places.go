package card

import (
	"math"

	"drawdown/geometry"
	"drawdown/render/sheet"
)

// column is a strip of the page in which things stand below each other.
type column struct{ left, width float64 }

func (c column) right() float64 { return c.left + c.width }

// places says in which column each part of the card stands.
type places struct{ part, stages, grid, checks column }

// stacked places everything below each other, over the whole width.
func stacked(paper sheet.Paper) places {
	whole := column{paper.Margin, paper.Content()}
	return places{whole, whole, whole, whole}
}

// onItsSide says that the page is wider than high.
func (c *card) onItsSide() bool { return c.paper.Width > c.paper.Height }

// low says that the page is a small one on its side, as A5.
func (c *card) low() bool { return c.paper.Height < 160 }

// columnGap is the white between two columns.
const columnGap = 6.0

// beside gives the two columns of a page on its side: so much of the width for
// the drawing, the rest for what is done.
func beside(paper sheet.Paper, share float64) (left, right column) {
	width := paper.Content() - columnGap
	left = column{paper.Margin, math.Round(width*share/2) * 2}
	return left, column{left.right() + columnGap, width - left.width}
}

// spread is a way to fill the first page of a card on its side: the part on
// the left, and below it perhaps what to see to first; on the right what is
// done.
type spread struct {
	places
	held
	balanced bool // what to see to first is parted over both columns
}

// held is what stands in each column of a spread beside the part.
type held struct{ left, right blocks }

// shares are the shares of the width that the drawing may have.
var shares = []float64{0.7, 0.66, 0.62, 0.58, 0.54, 0.5, 0.46, 0.42, 0.38, 0.34}

// spreadFor picks the spread in which the part is drawn the largest, among
// those that hold the most of the card. None fits where the part needs the
// whole width for numbers of full size.
func (c *card) spreadFor(room float64) (best spread, ok bool) {
	upright := c.in
	defer func() { c.in = upright }()
	most := c.numberCap(room)
	if most <= 0 {
		return spread{}, false
	}
	defer func() { c.balanced = ok && best.balanced }()
	for _, choice := range [][]held{
		{{checksBlock, stagesBlock | gridBlock}, {0, stagesBlock | gridBlock | checksBlock}},
		{{0, stagesBlock | gridBlock}},
		{{checksBlock, stagesBlock}, {0, stagesBlock | checksBlock}},
		{{0, stagesBlock}},
	} {
		largest := 0.0
		for _, c.balanced = range []bool{false, true} {
			for _, h := range choice {
				for _, share := range shares {
					s := c.spread(h, share)
					c.in = s.places
					height := room - c.height(s.left)
					if c.height(s.right) > room || height < leastPart || c.numberCap(height) < most {
						continue
					}
					if scale := c.scale(height); scale > largest {
						best, ok, largest = s, true, scale
					}
				}
			}
			if ok {
				return best, true
			}
		}
	}
	return spread{}, false
}

// spread lays out the columns for what is held by each.
func (c *card) spread(h held, share float64) spread {
	left, right := beside(c.paper, share)
	s := spread{places{left, right, right, right}, h, c.balanced}
	if h.left.has(checksBlock) {
		s.checks = left
	}
	return s
}

// scale is how large the part is drawn in its column: paper mm for a mm of the
// spread of the fasteners.
func (c *card) scale(height float64) float64 {
	extent := geometry.Bounds(c.plan.Joint.Points())
	return math.Min(c.in.part.width/math.Max(extent.Width(), 1), (height-c.captionHeight())/math.Max(extent.Height(), 1))
}
