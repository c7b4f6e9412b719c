package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"drawdown/geometry/unit"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

const (
	stageGap      = 3.0
	leastBoxWidth = 33.0
)

// stageRows says how the stage boxes stand: so many in a row, in so many rows.
func (c *card) stageRows() (across, rows int) {
	n := len(c.side.Stages)
	if n == 0 {
		return 0, 0
	}
	most := int((c.paper.content() + stageGap) / (leastBoxWidth + stageGap))
	rows = (n + most - 1) / most
	return (n + rows - 1) / rows, rows
}

// boxWidth is the width of a stage box.
func (c *card) boxWidth() float64 {
	across, _ := c.stageRows()
	return math.Min((c.paper.content()-stageGap*float64(across-1))/float64(across), 60)
}

// boxHeight leaves room under the figure for the most lines of a stage.
func (c *card) boxHeight() float64 {
	most := 1
	for i := range c.side.Stages {
		most = max(most, len(c.below(&c.side.Stages[i])))
	}
	return 18 + float64(most)*line
}

// stagesHeight is the height of the stages with their heading.
func (c *card) stagesHeight() float64 {
	_, rows := c.stageRows()
	if rows == 0 {
		return 12
	}
	return 8 + float64(rows)*(c.boxHeight()+stageGap)
}

// stages draws the boxes side by side in the order in which they are done.
func (c *card) stages(p *pen, y float64) {
	p.head(p.left(), y+4, wordStages)
	across, _ := c.stageRows()
	if across == 0 {
		p.text(p.left(), y+10, font.Fit(wordNoFigures, scene.Regular, textEm, p.paper.content()))
		return
	}
	width := c.boxWidth()
	for i := range c.side.Stages {
		x := p.left() + float64(i%across)*(width+stageGap)
		c.stageBox(p, &c.side.Stages[i], x, y+7+float64(i/across)*(c.boxHeight()+stageGap), width)
	}
}

func (c *card) stageBox(p *pen, s *plan.Stage, x, y, w float64) {
	p.panel(x, y, w, c.boxHeight(), 1.5, scene.White, 0.5)
	number := strconv.Itoa(s.Number)
	p.head(x+2.2, y+5.6, number)
	from := x + 4 + font.Width(number, scene.Bold, headEm)
	p.write(x+w-2.2, y+5.6, textEm, scene.Regular, scene.End, scene.Black, font.Fit(c.covers(s), scene.Regular, textEm, x+w-2.2-from))
	c.figure(p, s, x, y, w)
	for k, words := range c.below(s) {
		p.write(x+w/2, y+19.6+float64(k)*line, textEm, scene.Regular, scene.Middle, scene.Black, words)
	}
}

// wayWords say how a stage goes that has a way of its own.
var wayWords = map[sequence.Way]string{
	sequence.Circular: "once round",
	sequence.Star:     "crosswise",
	sequence.Cross:    "crosswise",
	sequence.Spiral:   "in a spiral",
	sequence.RowWay:   "middle outwards",
	sequence.Auto:     "centre outwards",
}

// covers says which fasteners a stage is for: all, all main, side 11–14.
func (c *card) covers(s *plan.Stage) string {
	switch {
	case s.Do == plan.Wait:
		return ""
	case len(s.Fasteners) == len(c.plan.Joint.Fasteners):
		return "all " + strconv.Itoa(len(s.Fasteners))
	}
	low, high := math.MaxInt, 0
	for _, i := range s.Fasteners {
		low, high = min(low, c.numbers[i]), max(high, c.numbers[i])
	}
	names := strings.Join(s.Kinds, ", ")
	if high-low+1 == len(s.Fasteners) {
		return fmt.Sprintf("%s %d–%d", names, low, high)
	}
	return "all " + names
}

// mostBelow is how many lines a stage box has room for under its figure.
const mostBelow = 4

// below lists what stands under the figure, broken into lines.
func (c *card) below(s *plan.Stage) []string {
	width := c.boxWidth() - 3
	var lines []string
	add := func(words string) { lines = append(lines, font.Break(words, scene.Regular, textEm, width)...) }
	switch s.Do {
	case plan.Tighten:
		add(otherTorque(s))
	case plan.BackOff:
		add("slacken")
	case plan.TurnBack:
		add("break loose")
	case plan.Wait:
		add("let it settle")
	case plan.Remove:
		add("keep its place")
	}
	add(wayWords[s.Way])
	if s.Percent > 0 {
		add(fmt.Sprintf("%g %%, %s", s.Percent, wordWorkedOut))
	}
	add(s.Note)
	return atMost(lines, mostBelow, scene.Regular, textEm, width)
}

// figure draws what the stage is about.
func (c *card) figure(p *pen, s *plan.Stage, x, y, w float64) {
	mid := y + 14.6
	switch s.Do {
	case plan.Tighten:
		c.bigFigure(p, x+w/2, mid, approx(s)+number(s.Torque.Value), s.Torque.Unit.String())
	case plan.Advance:
		c.beside(p, x, mid, w, wedgeIcon(float64(s.Angle), true), approx(s)+"+"+s.Angle.String())
	case plan.BackOff, plan.TurnBack:
		c.beside(p, x, mid, w, wedgeIcon(-float64(s.Angle), false), "−"+s.Angle.String())
	case plan.Wait:
		c.beside(p, x, mid, w, clockIcon, s.Wait.String())
	case plan.Remove:
		c.beside(p, x, mid, w, outIcon, "out")
	}
}

// approx marks a figure that was worked out.
func approx(s *plan.Stage) string {
	if s.WorkedOut {
		return "≈ "
	}
	return ""
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// otherTorque is the torque on the other kind of wrench.
func otherTorque(s *plan.Stage) string {
	other := s.Torque.Other()
	if s.Torque.Value == other.Value && s.Torque.Unit == unit.NewtonMetre {
		return ""
	}
	return other.String()
}

// bigFigure sets a figure with its unit smaller behind it, centred on x.
func (c *card) bigFigure(p *pen, x, y float64, figure, unitSign string) {
	const gap = 1.2
	wide := font.Width(figure, scene.Bold, figureEm)
	behind := font.Width(unitSign, scene.Bold, headEm)
	start := x - (wide+gap+behind)/2
	p.write(start, y, figureEm, scene.Bold, scene.Start, scene.Black, figure)
	p.write(start+wide+gap, y, headEm, scene.Bold, scene.Start, scene.Black, unitSign)
}

// iconRadius is the size of the picture beside a figure.
const iconRadius = 4.2

// beside sets a picture and a figure next to each other, centred in the box.
func (c *card) beside(p *pen, x, y, w float64, icon func(p *pen, x, y float64), figure string) {
	const gap = 2.0
	wide := font.Width(figure, scene.Bold, figureEm)
	start := x + (w-2*iconRadius-gap-wide)/2
	icon(p, start+iconRadius, y-figureEm*font.CapHeight/2)
	p.write(start+2*iconRadius+gap, y, figureEm, scene.Bold, scene.Start, scene.Black, figure)
}
