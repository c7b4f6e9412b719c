package card

import (
	"slices"

	"drawdown/render/diagram"
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
	c     *card
	notes []string // what found no room
}

// pages lays the side out: what to see to first, then the part with stages and
// ticks. Where a page does not hold all of it, the stages are parted and the part
// stands on each of their pages.
func (c *card) pages() ([]scene.Page, []string) {
	f := &pages{Run: sheet.NewRun(c.paper, c.words, c.heading(), c.foot()), c: c}
	c.settleNumbers(f.Bottom - f.Y)
	if most := c.numberCap(f.c.width(), f.Bottom-f.Y); most > 0 {
		f.work(most)
	} else {
		f.apart(0, true)
	}
	return f.Pages(c.name()), slices.Compact(f.notes)
}

func (f *pages) work(most float64) {
	for from, checks := 0, true; checks || from < len(f.c.side.Stages); {
		page, ok := f.c.fill(f.Bottom-f.Y, most, from, checks)
		switch {
		case ok:
			f.page(page)
			from, checks = page.to, false
		case checks:
			f.before(most)
			checks = false
			if len(f.c.side.Stages) == 0 {
				return
			}
		default:
			f.apart(from, false)
			return
		}
		if from < len(f.c.side.Stages) {
			f.Turn()
		}
	}
}

// page draws a page that is filled as chosen.
func (f *pages) page(w workPage) {
	f.Y += w.topHeight()
	left, right, bottom := f.Y, f.Y, f.Bottom
	switch w.checksAt {
	case overAll:
		w.checks.draw(f.Pen, f.Y-w.checks.height())
	case overPart:
		w.checks.draw(f.Pen, left)
		left += w.checks.height()
	case overStages:
		w.checks.draw(f.Pen, right)
		right += w.checks.height()
	}
	if !w.beside {
		bottom -= w.workHeight()
		right = bottom
	}
	f.part(w.part, left, bottom)
	f.Y = right
	f.stages(w.stages)
	f.grid(w.grid)
	if w.boxBelow {
		w.box.draw(f.Pen, f.Bottom-w.box.height())
	}
}

// before puts what to see to first on pages of its own, with the part below it
// where there is room.
func (f *pages) before(most float64) {
	f.checks(f.c.checkList(f.c.width()))
	if height := f.Bottom - f.Y; height >= leastPart && f.c.numberCap(f.c.width(), height) >= most {
		f.part(f.c.width(), f.Y, f.Bottom)
	}
}

// apart lays out stages and ticks on other pages than a part that has to have one
// alone. The stages stand before it, the ticks behind.
func (f *pages) apart(from int, checks bool) {
	whole := f.c.stacked(from, len(f.c.side.Stages), checks)
	if checks {
		f.checks(whole.checks)
	}
	f.stages(whole.stages)
	if !f.Fresh() {
		f.Turn()
	}
	f.drawDetails(f.part(whole.part, f.Y, f.Bottom))
	if whole.grid.height() > 0 {
		f.Turn()
		f.grid(whole.grid)
	}
}

// part draws the part between two heights and notes what found no room.
func (f *pages) part(in span, top, bottom float64) []diagram.Detail {
	drawn := f.c.part(f.Pen, in, top, bottom)
	f.notes = append(f.notes, f.c.left(drawn)...)
	return drawn.details
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
