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

// pages collects the pages of a side.
type pages struct {
	*sheet.Run
	c     *card
	notes []string // what did not fit
}

// pages lays out the side: the checks, then the part with stages and ticks. If
// one page does not hold all of it, the stages are divided, and each of their
// pages shows the part.
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

// wholeAlone reports whether all numbers and words of the part fit on a page
// without the checks.
func (f *pages) wholeAlone(from int, most float64) bool {
	_, drawn, ok := f.c.fill(f.Y, f.Bottom, most, from, false)
	return ok && drawn.whole()
}

// page draws a page that was chosen.
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

// before puts the checks on pages of their own, with the part below if it fits.
func (f *pages) before(most float64) {
	f.checks(f.c.checkList(f.c.width()))
	if height := f.Bottom - f.Y; height >= leastPart && f.c.numberCap(f.c.width(), height) >= most {
		if part := f.c.part(f.c.width(), f.Y, f.Bottom); part.whole() { // the next page shows it again
			f.add(part)
		}
	}
}

// apart puts stages and ticks on separate pages from a part that needs a whole
// page. The stages come before it, the ticks after it.
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

// add draws the part on the page and notes what did not fit.
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

// checks draws the checks, over both columns if they fit only that way. What
// does not fit on a page continues on the next.
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
