package sheet

import (
	"strconv"

	"drawdown/render/diagram"
	"drawdown/render/scene"
)

// name is the name of a page in file names: tighten, tighten-2.
func (c *card) name(page int) string {
	name := string(TightenSide)
	if c.loosening {
		name = string(LoosenSide)
	}
	if page > 1 {
		name += "-" + strconv.Itoa(page)
	}
	return name
}

// flow is the run of a side's pages while they fill: the present page, and what
// of it is free.
type flow struct {
	c         *card
	leaves    []*pen
	p         *pen
	y, bottom float64
}

// turn begins a new page with the header.
func (f *flow) turn() {
	f.p = &pen{paper: f.c.paper}
	f.leaves = append(f.leaves, f.p)
	f.y = f.c.header(f.p) + 2
	f.bottom = f.c.paper.Height - f.c.paper.Margin - f.c.footHeight() - 2
}

// room begins a new page where a height does not fit.
func (f *flow) room(height float64) {
	if f.bottom-f.y < height {
		f.turn()
	}
}

// pages lays the side out. The part stands on the first page; stages, tick
// grid and checks follow there as far as the part keeps enough room, else on
// further pages with the same header and foot.
func (c *card) pages() ([]scene.Page, []string) {
	f := &flow{c: c}
	f.turn()
	first := c.choose(f.bottom - f.y)
	below := f.bottom - c.height(first)
	drawn := c.part(f.p, f.y, below)
	f.y = below
	if !first.has(stagesBlock) {
		f.turn()
	}
	c.stages(f.p, f.y)
	f.y += c.stagesHeight()
	if first.has(gridBlock) {
		f.grid()
		c.checks(f.p, f.bottom-c.checksHeight())
	} else {
		// What to see to first stands before the grid.
		f.room(c.checksHeight())
		c.checks(f.p, f.y)
		f.y += c.checksHeight()
		f.grid()
	}
	return c.finish(f.leaves), c.left(drawn)
}

// grid draws the tick grid over as many pages as it needs.
func (f *flow) grid() {
	for bands := f.c.bands(); len(bands) > 0; {
		n := fitting(bands, f.bottom-f.y-gridHead)
		if n == 0 {
			f.turn()
			n = max(1, fitting(bands, f.bottom-f.y-gridHead))
		}
		f.c.grid(f.p, f.y, bands[:n])
		f.y += gridHeight(bands[:n])
		bands = bands[n:]
	}
}

func (c *card) finish(leaves []*pen) []scene.Page {
	var pages []scene.Page
	for k, p := range leaves {
		c.foot(p, k+1, len(leaves))
		pages = append(pages, scene.Page{
			Name: c.name(k + 1), Width: c.paper.Width, Height: c.paper.Height, Margin: c.paper.Margin, Items: p.items,
		})
	}
	return pages
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
	if len(c.side.Order) > 20 || c.paper.narrow() {
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
