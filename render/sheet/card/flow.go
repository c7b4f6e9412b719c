package card

import (
	"drawdown/render/diagram"
	"drawdown/render/scene"
	"drawdown/render/sheet"
)

// name is the name of the side's first page in file names.
func (c *card) name() string {
	if c.loosening {
		return string(LoosenSide)
	}
	return string(TightenSide)
}

// flow is the run of a side's pages while they fill.
type flow struct {
	*sheet.Run
	c *card
}

// pages lays the side out. The part stands on the first page; stages, tick
// grid and checks follow there as far as the part keeps enough room, else on
// further pages with the same header and foot.
func (c *card) pages() ([]scene.Page, []string) {
	f := &flow{sheet.NewRun(c.paper, c.words, c.heading(), c.foot()), c}
	first := c.choose(f.Bottom - f.Y)
	below := f.Bottom - c.height(first)
	drawn := c.part(f.Pen, f.Y, below)
	f.Y = below
	if !first.has(stagesBlock) {
		f.Turn()
	}
	c.stages(f.Pen, f.Y)
	f.Y += c.stagesHeight()
	if first.has(gridBlock) {
		f.grid()
		c.checks(f.Pen, f.Bottom-c.checksHeight())
	} else {
		// What to see to first stands before the grid.
		f.Room(c.checksHeight())
		c.checks(f.Pen, f.Y)
		f.Y += c.checksHeight()
		f.grid()
	}
	return f.Pages(c.name()), c.left(drawn)
}

// grid draws the tick grid over as many pages as it needs.
func (f *flow) grid() {
	for bands := f.c.bands(); len(bands) > 0; {
		n := fitting(bands, f.Bottom-f.Y-gridHead)
		if n == 0 {
			f.Turn()
			n = max(1, fitting(bands, f.Bottom-f.Y-gridHead))
		}
		f.c.grid(f.Pen, f.Y, bands[:n])
		f.Y += gridHeight(bands[:n])
		bands = bands[n:]
	}
}

// blocks is a set of the things that stand under the part.
type blocks uint8

const (
	stagesBlock blocks = 1 << iota
	checksBlock
	gridBlock
)

func (b blocks) has(one blocks) bool { return b&one != 0 }

// height is the height that the blocks need.
func (c *card) height(b blocks) float64 {
	h := 0.0
	if b.has(stagesBlock) {
		h += c.stagesHeight()
	}
	if b.has(checksBlock) {
		h += c.checksHeight()
	}
	if b.has(gridBlock) {
		h += gridHeight(c.bands())
	}
	return h
}

// choose keeps as many blocks as possible on the first page while the part has
// room for numbers of full size, or of the size that it would have alone. A
// part so crowded that its numbers stand on leader lines has the page alone.
func (c *card) choose(room float64) blocks {
	most := c.numberCap(room)
	if c.crowded = most == 0; c.crowded {
		return 0
	}
	for _, b := range []blocks{stagesBlock | checksBlock | gridBlock, stagesBlock | checksBlock, stagesBlock} {
		if height := room - c.height(b); height >= leastPart && c.numberCap(height) >= most {
			return b
		}
	}
	return 0
}

// leastPart is the least height of the drawing of the part.
const leastPart = 46

// numberCap is the height of the numbers that the part would get, up to what a
// card needs; 0 where they would stand outside their marks.
func (c *card) numberCap(height float64) float64 {
	if height < leastPart {
		return -1
	}
	enough := 5.0
	if len(c.side.Order) > 20 || c.paper.Narrow() {
		enough = 3.0 // the figures beside the part are worth more on small paper
	}
	capMm, led := diagram.NumberCap(c.request(scene.Box{
		Left: c.paper.Margin, Top: 0, Right: c.paper.Width - c.paper.Margin, Bottom: height - c.captionHeight(),
	}))
	if led {
		return 0
	}
	return min(capMm, enough)
}
