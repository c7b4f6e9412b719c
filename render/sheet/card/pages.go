package card

import (
	"slices"

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
	for from, checks := 0, true; ; f.Turn() {
		page, drawn, ok := f.c.fill(f.Y, f.Bottom, most, from, checks)
		switch {
		case ok && !(checks && !drawn.whole() && f.wholeAlone(from, most)):
			f.page(page, drawn)
			from, checks = page.to, false
			if from >= len(f.c.side.Stages) {
				return
			}
		case checks:
			f.before(most)
			checks = false
		default:
			f.apart(from, false)
			return
		}
	}
}

// wholeAlone says that the part has room for all its numbers and words on a page
// without what to see to first.
func (f *pages) wholeAlone(from int, most float64) bool {
	_, drawn, ok := f.c.fill(f.Y, f.Bottom, most, from, false)
	return ok && drawn.whole()
}

// page draws a page that is filled as chosen.
func (f *pages) page(w workPage, part drawnPart) {
	_, bottom := w.partBetween(f.Y, f.Bottom)
	top := f.Y + w.topHeight()
	switch w.checksAt {
	case overAll, overPart:
		w.checks.draw(f.Pen, f.Y)
	case overStages:
		w.checks.draw(f.Pen, top)
	}
	f.add(part)
	switch {
	case !w.beside:
		f.Y = bottom
	case w.checksAt == overStages:
		f.Y = top + w.checks.height()
	default:
		f.Y = top
	}
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
		if part := f.c.part(f.c.width(), f.Y, f.Bottom); part.whole() { // it stands on the next page too
			f.add(part)
		}
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
	part := f.c.part(whole.part, f.Y, f.Bottom)
	f.add(part)
	f.drawDetails(part.details)
	if whole.grid.height() > 0 {
		f.Turn()
		f.grid(whole.grid)
	}
}

// add puts the part on the page and notes what found no room.
func (f *pages) add(part drawnPart) {
	f.Pen.Add(part.Items...)
	f.notes = append(f.notes, f.c.left(part)...)
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
