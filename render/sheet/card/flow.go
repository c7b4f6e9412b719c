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
	if c.onItsSide() {
		if s, ok := c.spreadFor(f.Bottom - f.Y); ok {
			return f.spread(s)
		}
	}
	first := c.choose(f.Bottom - f.Y)
	below := f.Bottom - c.height(first)
	drawn := c.part(f.Pen, f.Y, below)
	f.drawDetails()
	f.Y = below
	if !first.has(stagesBlock) {
		f.Turn()
		if f.checksFirst() {
			f.checks()
			f.Turn()
			f.stages()
			f.grid()
			return f.Pages(c.name()), c.left(drawn)
		}
	}
	f.stages()
	switch {
	case first.has(gridBlock | checksBlock):
		f.grid()
		c.checks(f.Pen, f.Bottom-c.checksHeight())
	case first.has(gridBlock):
		f.grid()
		f.checksOverleaf()
	default:
		f.checksThenGrid()
	}
	return f.Pages(c.name()), c.left(drawn)
}

// checksOverleaf puts what to see to first on the next page, so that the figures
// and the ticks stand beside the part, and says so on this one.
func (f *flow) checksOverleaf() {
	p, c := f.Pen, f.c
	p.Write(c.in.grid.left, f.Bottom-1, sheet.TextEm, scene.Bold, scene.Start, scene.Black, c.words.Card.BeforeOverleaf)
	c.in = stacked(c.paper)
	f.Turn()
	f.checks()
}

// overleafLine is the height of the line that says where the checks are.
const overleafLine = 6.0

// spread fills a page on its side from the left and from the right; what it
// does not hold follows on further pages, over the whole width.
func (f *flow) spread(s spread) ([]scene.Page, []string) {
	c := f.c
	c.in = s.places
	below := f.Bottom - c.height(s.left)
	drawn := c.part(f.Pen, f.Y, below)
	if s.left.has(checksBlock) {
		c.checks(f.Pen, below)
	}
	f.stages()
	if s.right.has(checksBlock) {
		c.checks(f.Pen, f.Bottom-c.checksHeight())
	}
	if s.right.has(gridBlock) {
		f.grid()
		if !(s.left | s.right).has(checksBlock) {
			f.checksOverleaf()
		}
		return f.Pages(c.name()), c.left(drawn)
	}
	c.in = stacked(c.paper)
	f.Turn()
	if (s.left | s.right).has(checksBlock) {
		f.grid()
	} else {
		f.checksThenGrid()
	}
	return f.Pages(c.name()), c.left(drawn)
}

// stages draws the boxes of the stages, over as many pages as they need.
func (f *flow) stages() {
	_, rows := f.c.stageRows()
	if rows == 0 {
		f.c.stages(f.Pen, f.Y, 0, 0)
		f.Y += f.c.stagesHeight()
	}
	for from := 0; from < rows; {
		n := rows - from
		for n > 1 && f.c.rowsHeight(n) > f.Bottom-f.Y {
			n--
		}
		f.Room(f.c.rowsHeight(n))
		f.c.stages(f.Pen, f.Y, from, from+n)
		f.Y += f.c.rowsHeight(n)
		from += n
	}
}

// checksThenGrid draws what to see to first, and after it the tick grid: on a
// page on its side beside it, where that saves a page.
func (f *flow) checksThenGrid() {
	c, height := f.c, f.Bottom-f.Y
	if c.onItsSide() && c.checksHeight()+gridHeight(c.bands())-bandGap > height {
		if in, ok := c.besideEachOther(height); ok {
			c.in = in
			c.checks(f.Pen, f.Y)
			f.grid()
			return
		}
	}
	f.checks()
	f.grid()
}

// checksFirst says whether what to see to first takes a page before the stages,
// on a page that is still empty: the tick grid then begins below the stages,
// which saves a page.
func (f *flow) checksFirst() bool {
	c, height := f.c, f.Bottom-f.Y
	if c.stagesHeight()+c.checksHeight() <= height || c.checksHeight() > height || c.stagesHeight() > height {
		return false
	}
	bands := c.bands()
	return gridPages(bands, height-c.stagesHeight(), height) < gridPages(bands, height-c.checksHeight(), height)
}

// gridPages counts the pages that the tick grid adds to one that has so much
// room left.
func gridPages(bands []band, left, height float64) int {
	n := fitting(bands, left-gridHead)
	pages := 0
	for bands = bands[n:]; len(bands) > 0; bands = bands[n:] {
		n = max(1, fitting(bands, height-gridHead))
		pages++
	}
	return pages
}

// besideEachOther finds columns in which both fit a height.
func (c *card) besideEachOther(height float64) (in places, ok bool) {
	whole := c.in
	defer func() { c.in = whole }()
	for _, share := range shares {
		c.in.checks, c.in.grid = beside(c.paper, share)
		if c.checksHeight() <= height && gridHeight(c.bands()) <= height {
			return c.in, true
		}
	}
	return whole, false
}

// checks draws what to see to first: over both columns where only so it fits.
// What is too much for a page goes on on the next.
func (f *flow) checks() {
	c := f.c
	c.balanced = c.checksHeight() > f.Bottom-f.Y
	if c.checksHeight() > f.Bottom-f.Y && !f.Fresh() {
		f.Turn()
		c.balanced = false
	}
	all := c.before
	defer func() { c.before, c.balanced, c.troubleDone = all, false, false }()
	for c.checksHeight() > f.Bottom-f.Y && len(c.before) > 1 {
		rest := c.before
		for c.checksHeight() > f.Bottom-f.Y && len(c.before) > 1 {
			c.before = c.before[:len(c.before)-1]
		}
		c.checks(f.Pen, f.Y)
		c.before, c.troubleDone = rest[len(c.before):], true
		f.Turn()
	}
	c.checks(f.Pen, f.Y)
	f.Y += c.checksHeight()
}

// grid draws the tick grid over as many pages as it needs.
func (f *flow) grid() {
	for bands := f.c.bands(); len(bands) > 0; {
		n := fitting(bands, f.Bottom-f.Y-gridHead)
		if n == 0 {
			f.Turn()
			n = fitting(bands, f.Bottom-f.Y-gridHead)
		}
		if n == 0 {
			bands = append(bands[0].parted(f.Bottom-f.Y-gridHead), bands[1:]...)
			n = 1
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

func (b blocks) has(all blocks) bool { return b&all == all }

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
	if b.has(stagesBlock|gridBlock) && !b.has(checksBlock) {
		h += overleafLine
	}
	return h
}

// choose keeps as many blocks as possible on the first page while the part has
// room for numbers of full size, or of the size that it would have alone: rather
// the ticks, which go with the figures, than what is seen to once. A
// part so crowded that its numbers stand on leader lines has the page alone.
func (c *card) choose(room float64) blocks {
	most := c.numberCap(room)
	if c.crowded = most == 0; c.crowded {
		if c.named() {
			c.second = nil // the tick grid has room for numbers only
		}
		return 0
	}
	for _, b := range []blocks{stagesBlock | checksBlock | gridBlock, stagesBlock | gridBlock, stagesBlock | checksBlock, stagesBlock} {
		for _, c.balanced = range []bool{false, true} {
			if height := room - c.height(b); height >= leastPart && c.numberCap(height) >= most {
				return b
			}
		}
	}
	c.balanced = false
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
	if len(c.side.Order) > 20 || c.paper.Narrow() || c.low() {
		enough = 3.0 // the figures beside the part are worth more on small paper
	}
	capMm, led := diagram.NumberCap(c.request(scene.Box{
		Left: c.in.part.left, Top: 0, Right: c.in.part.right(), Bottom: height - c.captionHeight(),
	}))
	if led {
		return 0
	}
	return min(capMm, enough)
}
