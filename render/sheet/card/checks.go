package card

import (
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry/unit"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence/plan"
)

// beforeLines are the things to see to first, each to be ticked.
func (c *card) beforeLines() []string {
	if c.loosening {
		return append(c.plan.CautionsFor(plan.CautionLoosen), c.beforeLoosening()...)
	}
	return append(c.plan.CautionsFor(plan.CautionTighten), c.beforeTightening()...)
}

func (c *card) beforeLoosening() []string {
	return []string{
		"Part cold. Drained. No pressure left in it.",
		"Tray ready: every part to its own place, the same way round.",
		"Stage by stage: all of a stage before the next begins.",
		"Gloves and glasses on: edges cut, a bolt that breaks flies.",
	}
}

func (c *card) beforeTightening() []string {
	lines := c.byKind(reuseLine)
	lines = append(lines, c.byKind(lubricantLine)...)
	if slices.ContainsFunc(c.plan.Kinds, func(k plan.Kind) bool { return k.Into != "" }) {
		lines = append(lines, "Tapped holes clean and dry: trapped oil cracks the part.")
	}
	lines = append(lines, "All screwed in by hand before stage 1.")
	if span := c.torqueSpan(); span != "" {
		lines = append(lines, span)
	}
	return append(lines, "Part cold. Gloves on: machined edges cut.")
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
			who = "all fasteners"
		}
		lines = append(lines, capital(who)+": "+w+".")
	}
	return lines
}

func reuseLine(k plan.Kind) string {
	switch k.Reuse {
	case plan.ReuseOnce:
		return "NEW ones; never use them twice"
	case plan.ReuseInspect:
		return "measure the length, look at the threads before they go back"
	case plan.ReuseYes:
		return "may go back when clean and undamaged"
	}
	return ""
}

func lubricantLine(k plan.Kind) string {
	if k.Lubricant == "" {
		return ""
	}
	if strings.EqualFold(k.Lubricant, "dry") {
		return "threads and under the heads clean and dry"
	}
	return "clean threads and under the heads, then " + k.Lubricant
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
		parts = append(parts, "calibrated torque wrench for "+span(low.Torque, high.Torque))
	}
	if angle {
		parts = append(parts, "angle gauge")
	}
	if len(parts) == 0 {
		return ""
	}
	return capital(strings.Join(parts, "; ")) + "."
}

func span(low, high unit.GivenTorque) string {
	switch {
	case low == high:
		return low.String()
	case low.Unit == high.Unit:
		return number(low.Value) + "–" + high.String()
	}
	return low.String() + " to " + high.String()
}

func capital(s string) string {
	for i, r := range s {
		return strings.ToUpper(string(r)) + s[i+len(string(r)):]
	}
	return s
}

// checkColumns says how wide the two columns under the grid are.
func (c *card) checkColumns() (left, gap, right float64) {
	gap = 6
	right = min(86, (c.paper.Content()-gap)*0.48)
	return c.paper.Content() - gap - right, gap, right
}

const (
	tickIndent   = 6.0
	boxPadding   = 3.0
	numberedStep = 5.0 // from the number of a step to its words
)

func (c *card) trouble() trouble {
	if c.loosening {
		return troubleLoosen
	}
	return troubleTighten
}

// checksHeight is the height of both columns.
func (c *card) checksHeight() float64 {
	left, _, right := c.checkColumns()
	l := 8 + sheet.BreakAll(c.beforeLines(), left-tickIndent).Height()
	r := c.troubleHeight(right)
	return max(l, r) + 2
}

func (c *card) troubleTitle(width float64) []string {
	return font.Break(c.trouble().title, scene.Bold, sheet.HeadEm, width-2*boxPadding)
}

func (c *card) troubleHeight(width float64) float64 {
	steps := sheet.BreakAll(c.trouble().steps, width-2*boxPadding-numberedStep)
	return 3 + float64(len(c.troubleTitle(width)))*5 + steps.Height() + 8
}

// checks draws what to see to first, and the box for when it goes wrong.
func (c *card) checks(p *sheet.Pen, y float64) {
	left, gap, right := c.checkColumns()
	p.Head(p.Left(), y+4, wordBefore)
	at := y + 10
	for _, lines := range sheet.BreakAll(c.beforeLines(), left-tickIndent) {
		p.TickBox(p.Left(), at-3, 3.4)
		for _, words := range lines {
			p.Text(p.Left()+tickIndent, at, words)
			at += sheet.Line
		}
		at++
	}
	c.drawTrouble(p, p.Left()+left+gap, y, right)
}

func (c *card) drawTrouble(p *sheet.Pen, x, y, width float64) {
	p.Panel(x+0.3, y+0.3, width-0.6, c.troubleHeight(width)-0.6, 1.5, scene.White, 0.6)
	at := y + 6
	for _, words := range c.troubleTitle(width) {
		p.Head(x+boxPadding, at, words)
		at += 5
	}
	at++
	for k, lines := range sheet.BreakAll(c.trouble().steps, width-2*boxPadding-numberedStep) {
		p.Write(x+boxPadding, at, sheet.TextEm, scene.Bold, scene.Start, scene.Black, strconv.Itoa(k+1))
		for _, words := range lines {
			p.Text(x+boxPadding+numberedStep, at, words)
			at += sheet.Line
		}
		at++
	}
	p.Rule(x+boxPadding+numberedStep, at+2, x+width-boxPadding, at+2, 0.25)
}
