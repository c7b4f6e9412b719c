package card

import (
	"drawdown/render/scene"
	"drawdown/render/sheet"
)

func (c *card) name() string {
	if c.loosening {
		return string(LoosenSide)
	}
	return string(TightenSide)
}

// pages is the run of a side's pages while they fill.
type pages struct {
	*sheet.Run
	c *card

	whole   firstPage // everything over the whole width, as on further pages
	spreads []spread
}

// pages lays the side out. The part stands on the first page; stages, tick
// grid and checks follow there as far as the part keeps enough room, else on
// further pages with the same header and foot.
func (c *card) pages() ([]scene.Page, []string) {
	run := sheet.NewRun(c.paper, c.words, c.heading(), c.foot())
	room := run.Bottom - run.Y
	c.settleNumbers(room)
	f := &pages{Run: run, c: c, whole: c.stacked(), spreads: c.spreads()}
	first := c.choose(room, f.whole, f.spreads)
	below := f.Bottom - first.height(first.under)
	drawn := c.part(f.Pen, first.part, f.Y, below)
	f.drawDetails(drawn.details)
	if first.beside != 0 {
		f.spread(first, below)
	} else {
		f.upright(first, below)
	}
	return f.Pages(c.name()), c.left(drawn)
}

func (f *pages) upright(first firstPage, below float64) {
	f.Y = below
	if !first.under.has(stagesBlock) {
		f.Turn()
		if f.checksFirst() {
			f.checks(first.checks)
			f.Turn()
			f.stages(first.stages)
			f.grid(first.grid)
			return
		}
	}
	f.stages(first.stages)
	switch {
	case first.under.has(gridBlock | checksBlock):
		f.grid(first.grid)
		first.checks.draw(f.Pen, f.Bottom-first.checks.height())
	case first.under.has(gridBlock):
		f.grid(first.grid)
		f.checksOverleaf(first)
	default:
		f.checksThenGrid(first.checks)
	}
}

// checksOverleaf puts what to see to first on the next page, so that the figures
// and the ticks stand beside the part, and says so on this one.
func (f *pages) checksOverleaf(first firstPage) {
	f.Pen.Write(first.grid.in.left, f.Bottom-1, f.c.paper.TextEm, scene.Bold, scene.Start, scene.Black, f.c.words.Card.BeforeOverleaf)
	f.Turn()
	f.checks(f.whole.checks)
}

// spread fills a page on its side from the left and from the right; what it
// does not hold follows on further pages, over the whole width.
func (f *pages) spread(first firstPage, below float64) {
	if first.under.has(checksBlock) {
		first.checks.draw(f.Pen, below)
	}
	f.stages(first.stages)
	if first.beside.has(checksBlock) {
		first.checks.draw(f.Pen, f.Bottom-first.checks.height())
	}
	checked := (first.under | first.beside).has(checksBlock)
	if first.beside.has(gridBlock) {
		f.grid(first.grid)
		if !checked {
			f.checksOverleaf(first)
		}
		return
	}
	f.Turn()
	if checked {
		f.grid(f.whole.grid)
	} else {
		f.checksThenGrid(f.whole.checks)
	}
}

func (f *pages) stages(b stageBoxes) {
	if b.rows == 0 {
		f.c.drawStages(f.Pen, b, f.Y, 0, 0)
		f.Y += b.height()
	}
	for from := 0; from < b.rows; {
		n := b.rows - from
		for n > 1 && b.rowsHeight(n) > f.Bottom-f.Y {
			n--
		}
		f.Room(b.rowsHeight(n))
		f.c.drawStages(f.Pen, b, f.Y, from, from+n)
		f.Y += b.rowsHeight(n)
		from += n
	}
}

// checksThenGrid draws what to see to first, and after it the tick grid: on a
// page on its side beside it, where that saves a page.
func (f *pages) checksThenGrid(checks checkList) {
	grid, height := f.whole.grid, f.Bottom-f.Y
	if checks.height()+grid.height()-stripGap > height {
		for _, s := range f.spreads {
			if s.checksLeft.checks.height() <= height && s.checksLeft.grid.height() <= height {
				s.checksLeft.checks.draw(f.Pen, f.Y)
				f.grid(s.checksLeft.grid)
				return
			}
		}
	}
	f.checks(checks)
	f.grid(grid)
}

// checksFirst says whether what to see to first takes a page before the stages,
// on a page that is still empty: the tick grid then begins below the stages,
// which saves a page.
func (f *pages) checksFirst() bool {
	height := f.Bottom - f.Y
	stages, checks, grid := f.whole.stages.height(), f.whole.checks.height(), f.whole.grid
	if stages+checks <= height || checks > height || stages > height {
		return false
	}
	return grid.pages(height-stages, height) < grid.pages(height-checks, height)
}

// checks draws what to see to first: over both columns where only so it fits.
// What is too much for a page goes on on the next.
func (f *pages) checks(l checkList) {
	if l.height() > f.Bottom-f.Y {
		l.balanced = true
	}
	if l.height() > f.Bottom-f.Y && !f.Fresh() {
		f.Turn()
		l.balanced = false
	}
	for l.height() > f.Bottom-f.Y && len(l.lines) > 1 {
		here := l
		for here.height() > f.Bottom-f.Y && len(here.lines) > 1 {
			here = here.before(len(here.lines) - 1)
		}
		here.draw(f.Pen, f.Y)
		l = l.after(len(here.lines))
		f.Turn()
	}
	l.draw(f.Pen, f.Y)
	f.Y += l.height()
}

func (f *pages) grid(g tickGrid) {
	for strips := g.strips; len(strips) > 0; {
		n := fitting(strips, f.Bottom-f.Y-gridHead)
		if n == 0 {
			f.Turn()
			n = fitting(strips, f.Bottom-f.Y-gridHead)
		}
		if n == 0 {
			strips = append(strips[0].parted(f.Bottom-f.Y-gridHead), strips[1:]...)
			n = 1
		}
		here := g
		here.strips = strips[:n]
		f.c.drawGrid(f.Pen, here, f.Y)
		f.Y += here.height()
		strips = strips[n:]
	}
}
