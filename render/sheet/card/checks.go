package card

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// beforeLines are the things to see to first, each to be ticked.
func (c *card) beforeLines() []string {
	if c.loosening {
		lines := append(c.plan.CautionsFor(plan.CautionLoosen), c.words.Card.Checks.BeforeLoosening...)
		return append(lines, c.sockets()...)
	}
	return append(c.plan.CautionsFor(plan.CautionTighten), c.beforeTightening()...)
}

func (c *card) beforeTightening() []string {
	w := c.words.Card.Checks
	lines := c.byKind(c.reuseLine)
	lines = append(lines, c.byKind(c.lubricantLine)...)
	if slices.ContainsFunc(c.plan.Kinds, func(k plan.Kind) bool { return k.Into != "" }) {
		lines = append(lines, w.TappedHoles)
	}
	if len(c.plan.Tighten.Stages) == 0 {
		lines = append(lines, w.ScrewedIn)
	} else {
		lines = append(lines, w.ScrewedInByHand)
	}
	lines = append(lines, c.sockets()...)
	if span := c.torqueSpan(); span != "" {
		lines = append(lines, span)
	}
	return append(lines, w.Last)
}

// sockets says which sockets fit the heads, in a line: 16 mm main, 13 mm side.
// There is none where the file does not state the heads.
func (c *card) sockets() []string {
	var sizes []string
	for _, k := range c.plan.Kinds {
		if k.TurnedAcross() == 0 {
			continue
		}
		size := c.words.Figure(k.Labelled(k.TurnedAcross()))
		if k.NutAcross > 0 && !k.Stud() {
			size += fmt.Sprintf(c.words.Card.Checks.HeldNut, c.words.Figure(k.Labelled(k.NutAcross)))
		}
		if len(c.plan.Kinds) > 1 {
			size += " " + k.Name
		}
		sizes = append(sizes, size)
	}
	if len(sizes) == 0 {
		return nil
	}
	return []string{fmt.Sprintf(c.words.Card.Checks.Sockets, strings.Join(sizes, ", "))}
}

// byKind says a thing for every kind: once where it holds for all of them,
// else with the kinds named.
func (c *card) byKind(say func(k plan.Kind) string) []string {
	var words []string
	names := map[string][]string{}
	for _, k := range c.plan.Kinds {
		w := say(k)
		if w == "" {
			continue
		}
		if names[w] == nil {
			words = append(words, w)
		}
		names[w] = append(names[w], k.Name)
	}
	var lines []string
	for _, w := range words {
		who := strings.Join(names[w], ", ")
		if len(names[w]) == len(c.plan.Kinds) {
			who = c.words.Card.Checks.AllFasteners
		}
		lines = append(lines, fmt.Sprintf(c.words.Card.Checks.ForKinds, capital(who), w))
	}
	return lines
}

func (c *card) reuseLine(k plan.Kind) string {
	w := c.words.Card.Checks
	switch k.Reuse {
	case plan.ReuseOnce:
		return w.UsedOnce
	case plan.ReuseInspect:
		if k.Stud() { // nobody measures one that stays in its hole
			return w.InspectStud
		}
		return w.InspectFirst
	case plan.ReuseYes:
		return w.MayGoBack
	}
	return ""
}

// dry lists the ways in which a file says that nothing goes on the threads.
var dry = []string{"dry", "none", "no lubricant", "unlubricated", "clean and dry", "degreased"}

func (c *card) lubricantLine(k plan.Kind) string {
	name, w := words.Plain(k.Lubricant), c.words.Card.Checks
	switch {
	case name == "":
		return ""
	case slices.Contains(dry, name):
		return w.Dry
	case w.States[name] != "":
		return fmt.Sprintf(w.InState, w.States[name])
	}
	return fmt.Sprintf(w.Lubricated, c.words.Lubricant(k.Lubricant))
}

// torqueSpan says what the wrench must cover, and whether an angle gauge is
// needed.
func (c *card) torqueSpan() string {
	var low, high *plan.Stage
	angle := false
	for i := range c.side.Stages {
		s := &c.side.Stages[i]
		angle = angle || s.Do == plan.Advance
		if s.Do != plan.Tighten {
			continue
		}
		if low == nil || s.Torque.Nm() < low.Torque.Nm() {
			low = s
		}
		if high == nil || s.Torque.Nm() > high.Torque.Nm() {
			high = s
		}
	}
	var parts []string
	if low != nil {
		parts = append(parts, fmt.Sprintf(c.words.Card.Checks.Wrench, sheet.TorqueSpan(c.words, low.Torque, high.Torque)))
	}
	if angle {
		parts = append(parts, c.words.Card.Checks.AngleGauge)
	}
	if len(parts) == 0 {
		return ""
	}
	return capital(strings.Join(parts, c.words.Card.Checks.And)) + "."
}

func capital(s string) string {
	for i, r := range s {
		return strings.ToUpper(string(r)) + s[i+len(string(r)):]
	}
	return s
}

// checkColumns parts the width between what to see to first and the box for
// when it goes wrong. Where it is too little for both, one stands below the
// other.
func (c *card) checkColumns() (first, trouble column) {
	all := c.in.checks
	if c.oneBelowOther() {
		return all, all
	}
	right := min(86, (all.width-columnGap)*0.48)
	return column{all.left, all.width - columnGap - right}, column{all.right() - right, right}
}

// oneBelowOther says that the checks are too narrow for two columns.
func (c *card) oneBelowOther() bool { return c.in.checks.width < 116 }

const (
	checksHead   = 8.0 // from the top to the list
	troubleGap   = 3.0 // between the list and the box below it
	tickIndent   = 6.0
	boxPadding   = 3.0
	numberedStep = 5.0 // from the number of a step to its words
)

func (c *card) trouble() words.Trouble {
	if c.loosening {
		return c.words.Card.LooseningTrouble
	}
	return c.words.Card.TighteningTrouble
}

// checksHeight is the height of both columns.
func (c *card) checksHeight() float64 { return c.heightParted(c.partedAt()) + 2 }

// heightParted is the height of both columns with so many lines in the first.
func (c *card) heightParted(n int) float64 {
	first, trouble := c.checkColumns()
	l := checksHead + c.listHeight(c.before[:n], first)
	r := c.troubleHeight(trouble.width)
	if c.oneBelowOther() {
		return l + troubleGap + r
	}
	if n < len(c.before) {
		r += checksHead + c.listHeight(c.before[n:], trouble)
	}
	return max(l, r)
}

// partedAt is how many lines stand in the first column: all, or where room is
// short so many that both columns are about as high.
func (c *card) partedAt() int {
	best := len(c.before)
	if !c.balanced || c.oneBelowOther() {
		return best
	}
	for n := best - 1; n > 0; n-- {
		if c.heightParted(n) < c.heightParted(best) {
			best = n
		}
	}
	return best
}

func (c *card) listHeight(lines []string, in column) float64 {
	return sheet.BreakAll(lines, in.width-tickIndent).Height()
}

func (c *card) troubleTitle(width float64) []string {
	return font.Break(c.trouble().Title, scene.Bold, sheet.HeadEm, width-2*boxPadding)
}

// troubleHeight is the height of the box for when it goes wrong; 0 where it
// stands on an earlier page.
func (c *card) troubleHeight(width float64) float64 {
	if c.troubleDone {
		return 0
	}
	steps := sheet.BreakAll(c.trouble().Steps, width-2*boxPadding-numberedStep)
	return 3 + float64(len(c.troubleTitle(width)))*5 + steps.Height() + 8
}

// checks draws what to see to first, and the box for when it goes wrong.
func (c *card) checks(p *sheet.Pen, y float64) {
	first, trouble := c.checkColumns()
	n := c.partedAt()
	p.Head(first.left, y+4, c.words.Card.Before)
	c.ticks(p, c.before[:n], first, y)
	switch {
	case c.oneBelowOther():
		y += checksHead + c.listHeight(c.before, first) + troubleGap
	case n < len(c.before):
		c.ticks(p, c.before[n:], trouble, y)
		y += checksHead + c.listHeight(c.before[n:], trouble)
	}
	if !c.troubleDone {
		c.drawTrouble(p, trouble.left, y, trouble.width)
	}
}

// ticks draws lines with a box each below the height of the heading.
func (c *card) ticks(p *sheet.Pen, lines []string, in column, y float64) {
	at := y + checksHead + 2
	for _, broken := range sheet.BreakAll(lines, in.width-tickIndent) {
		p.TickBox(in.left, at-3, 3.4)
		for _, words := range broken {
			p.Text(in.left+tickIndent, at, words)
			at += sheet.Line
		}
		at++
	}
}

func (c *card) drawTrouble(p *sheet.Pen, x, y, width float64) {
	p.Panel(x+0.3, y+0.3, width-0.6, c.troubleHeight(width)-0.6, 1.5, scene.White, 0.6)
	at := y + 6
	for _, words := range c.troubleTitle(width) {
		p.Head(x+boxPadding, at, words)
		at += 5
	}
	at++
	for k, lines := range sheet.BreakAll(c.trouble().Steps, width-2*boxPadding-numberedStep) {
		p.Write(x+boxPadding, at, sheet.TextEm, scene.Bold, scene.Start, scene.Black, strconv.Itoa(k+1))
		for _, words := range lines {
			p.Text(x+boxPadding+numberedStep, at, words)
			at += sheet.Line
		}
		at++
	}
	p.Rule(x+boxPadding+numberedStep, at+2, x+width-boxPadding, at+2, 0.25)
}
