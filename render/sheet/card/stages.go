package card

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry/unit"
	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

const (
	stageGap      = 3.0
	leastBoxWidth = 28.0
)

// stageRows says how the stage boxes stand: so many in a row, in so many rows.
func (c *card) stageRows() (across, rows int) {
	n := len(c.side.Stages)
	if n == 0 {
		return 0, 0
	}
	most := max(1, int((c.in.stages.width+stageGap)/(c.leastBox()+stageGap)))
	rows = (n + most - 1) / most
	return (n + rows - 1) / rows, rows
}

// boxWidth is the width of a stage box.
func (c *card) boxWidth() float64 {
	across, _ := c.stageRows()
	return math.Min((c.in.stages.width-stageGap*float64(across-1))/float64(across), 60)
}

// boxHeight leaves room under the figure for the most lines of a stage.
func (c *card) boxHeight() float64 {
	most := 1
	for i := range c.side.Stages {
		most = max(most, len(c.below(&c.side.Stages[i])))
	}
	return 18 + float64(most)*sheet.Line
}

// leastBox is the least width of a box that holds every stage's figure.
func (c *card) leastBox() float64 {
	least := leastBoxWidth
	for i := range c.side.Stages {
		s := &c.side.Stages[i]
		wide := font.Width(c.figureWords(s), scene.Bold, c.figureEm(s))
		if s.Do == plan.Tighten {
			wide += unitGap + font.Width(s.Torque.Unit.String(), scene.Bold, sheet.HeadEm)
		} else {
			wide += 2*iconRadius + iconGap
		}
		least = max(least, wide+boxAir)
	}
	return least
}

// boxAir is what a box has beside its figure.
const boxAir = 5.0

// figureEm is the size of a stage's figure. A word needs not be as large as a
// figure: one that is long in its language is set smaller, so that it takes no
// room from the drawing.
func (c *card) figureEm(s *plan.Stage) float64 {
	if s.Do != plan.Remove {
		return sheet.FigureEm
	}
	const room = leastBoxWidth - boxAir - 2*iconRadius - iconGap
	return math.Min(sheet.FigureEm, sheet.FigureEm*room/font.Width(c.figureWords(s), scene.Bold, sheet.FigureEm))
}

// stagesHeight is the height of the stages with their heading.
func (c *card) stagesHeight() float64 {
	_, rows := c.stageRows()
	if rows == 0 {
		return 8 + float64(len(c.noStages()))*sheet.Line
	}
	return c.rowsHeight(rows)
}

// rowsHeight is the height of some rows of boxes with their heading.
func (c *card) rowsHeight(rows int) float64 {
	return 8 + float64(rows)*(c.boxHeight()+stageGap)
}

// stages draws some rows of boxes, side by side in the order in which they are
// done.
func (c *card) stages(p *sheet.Pen, y float64, from, to int) {
	left := c.in.stages.left
	p.Head(left, y+4, c.words.Card.Stages)
	across, _ := c.stageRows()
	if across == 0 {
		for k, words := range c.noStages() {
			p.Text(left, y+10+float64(k)*sheet.Line, words)
		}
		return
	}
	width := c.boxWidth()
	for i := from * across; i < min(to*across, len(c.side.Stages)); i++ {
		x := left + float64(i%across)*(width+stageGap)
		c.stageBox(p, &c.side.Stages[i], x, y+7+float64(i/across-from)*(c.boxHeight()+stageGap), width)
	}
}

// noStages says that the file gives none.
func (c *card) noStages() []string {
	return font.Break(c.words.Card.Stage.None, scene.Regular, sheet.TextEm, c.in.stages.width)
}

func (c *card) stageBox(p *sheet.Pen, s *plan.Stage, x, y, w float64) {
	p.Panel(x, y, w, c.boxHeight(), 1.5, scene.White, 0.5)
	number := strconv.Itoa(s.Number)
	p.Head(x+2.2, y+5.6, number)
	from := x + 4 + font.Width(number, scene.Bold, sheet.HeadEm)
	c.cover(p, s, from, x+w-2.2, y+5.6)
	c.figure(p, s, x, y, w)
	for k, words := range c.below(s) {
		p.Write(x+w/2, y+19.6+float64(k)*sheet.Line, sheet.TextEm, scene.Regular, scene.Middle, scene.Black, words)
	}
}

// goingWords say how a stage goes that has a way of its own.
func (c *card) goingWords(s *plan.Stage) string {
	w := c.words.Card.Stage
	switch s.Way {
	case sequence.Star, sequence.Cross:
		return w.Crosswise
	case sequence.Spiral:
		return w.InASpiral
	case sequence.RowWay:
		return w.MiddleOutwards
	case sequence.Auto:
		return w.CentreOutwards
	case sequence.Circular:
		if s.Turn == sequence.TurnLeft {
			return w.RoundAnticlockwise
		}
		return w.RoundClockwise
	}
	return ""
}

// whereTo says what happens to what comes out.
func (c *card) whereTo(s *plan.Stage) string {
	scrap := 0
	for _, k := range c.plan.Kinds {
		if slices.Contains(s.Kinds, k.Name) && k.Reuse == plan.ReuseOnce {
			scrap++
		}
	}
	switch scrap {
	case 0:
		return c.words.Card.Stage.ToItsPlace
	case len(s.Kinds):
		return c.words.Card.Stage.Scrap
	}
	return c.words.Card.Stage.SomeToTheirPlace
}

// cover draws which fasteners a stage is for, up to a right edge: all, all main,
// side 11–14. Where the names of the kinds are too long, the shapes of their
// marks take their place: cut names may be the same.
func (c *card) cover(p *sheet.Pen, s *plan.Stage, left, right, y float64) {
	words, numbers := c.coverWords(s)
	write := func(words string) {
		p.Write(right, y, sheet.TextEm, scene.Regular, scene.End, scene.Black, words)
	}
	if font.Width(words, scene.Regular, sheet.TextEm) <= right-left {
		write(words)
		return
	}
	shapes := c.kindsOf(s)
	room := right - left - font.Width(numbers, scene.Regular, sheet.TextEm) - coverSample*float64(len(shapes))
	if numbers == "" || room < 0 {
		write(strings.TrimSpace(font.Fit(words, scene.Regular, sheet.TextEm, right-left)))
		return
	}
	write(numbers)
	for k, kind := range shapes {
		x := right - font.Width(numbers, scene.Regular, sheet.TextEm) - coverSample*float64(len(shapes)-k)
		p.Add(diagram.Sample(kind, scene.Point{X: x + 2, Y: y - 1.1}, 1.7))
	}
}

// coverSample is the width of the shape of a kind in a stage box. Alone, it is
// larger than beside its name.
const coverSample = 5.0

// kindsOf lists the kinds that a stage is for, by their place in the plan.
func (c *card) kindsOf(s *plan.Stage) []int {
	var kinds []int
	for i, k := range c.plan.Kinds {
		if slices.Contains(s.Kinds, k.Name) {
			kinds = append(kinds, i)
		}
	}
	return kinds
}

// coverWords says which fasteners a stage is for, and their numbers alone where
// they are a run.
func (c *card) coverWords(s *plan.Stage) (words, numbers string) {
	w, names := c.words.Card.Stage, strings.Join(s.Kinds, ", ")
	switch {
	case s.Do == plan.Wait:
		return "", ""
	case len(s.Fasteners) == len(c.plan.Joint.Fasteners):
		return fmt.Sprintf(w.All, len(s.Fasteners)), ""
	}
	low, high := math.MaxInt, 0
	for _, i := range s.Fasteners {
		low, high = min(low, c.numbers[i]), max(high, c.numbers[i])
	}
	switch {
	case high-low+1 != len(s.Fasteners):
		return fmt.Sprintf(w.AllOf, names), ""
	case low == high:
		numbers = strconv.Itoa(low)
	default:
		numbers = fmt.Sprintf(w.FromTo, low, high)
	}
	return names + " " + numbers, numbers
}

// mostBelow is how many lines a stage box has room for under its figure.
const mostBelow = 4

// below lists what stands under the figure, broken into lines.
func (c *card) below(s *plan.Stage) []string {
	width, w := c.boxWidth()-3, c.words.Card.Stage
	var lines []string
	add := func(words string) { lines = append(lines, font.Break(words, scene.Regular, sheet.TextEm, width)...) }
	switch s.Do {
	case plan.Tighten:
		add(c.otherTorque(s))
	case plan.BackOff:
		add(w.Slacken)
	case plan.TurnBack:
		if !c.loosenedBefore(s) {
			add(w.BreakLoose)
		}
	case plan.Wait:
		add(w.Settle)
	case plan.Remove:
		add(c.whereTo(s))
	}
	add(c.goingWords(s))
	if s.Percent > 0 {
		add(fmt.Sprintf(w.Share, c.words.Figure(number(s.Percent))))
	}
	add(s.Note)
	return sheet.AtMost(lines, mostBelow, scene.Regular, sheet.TextEm, width)
}

// loosenedBefore says that an earlier stage has broken loose all that this one
// turns back.
func (c *card) loosenedBefore(s *plan.Stage) bool {
	loose := map[string]bool{}
	for i := range c.side.Stages {
		earlier := &c.side.Stages[i]
		if earlier.Number >= s.Number {
			break
		}
		if earlier.Do == plan.TurnBack {
			for _, k := range earlier.Kinds {
				loose[k] = true
			}
		}
	}
	return len(s.Kinds) > 0 && !slices.ContainsFunc(s.Kinds, func(k string) bool { return !loose[k] })
}

// figure draws what the stage is about.
func (c *card) figure(p *sheet.Pen, s *plan.Stage, x, y, w float64) {
	mid, words := y+14.6, c.figureWords(s)
	switch s.Do {
	case plan.Tighten:
		c.bigFigure(p, x+w/2, mid, words, s.Torque.Unit.String())
	case plan.Advance:
		c.beside(p, x, mid, w, wedgeIcon(float64(s.Angle), true), words, sheet.FigureEm)
	case plan.BackOff, plan.TurnBack:
		c.beside(p, x, mid, w, wedgeIcon(-float64(s.Angle), false), words, sheet.FigureEm)
	case plan.Wait:
		c.beside(p, x, mid, w, clockIcon, words, sheet.FigureEm)
	case plan.Remove:
		c.beside(p, x, mid, w, outIcon, words, c.figureEm(s))
	}
}

// figureWords is the large figure of a stage, without the unit of a torque.
func (c *card) figureWords(s *plan.Stage) string {
	switch s.Do {
	case plan.Tighten:
		return approx(s) + c.words.Figure(number(s.Torque.Value))
	case plan.Advance:
		return approx(s) + "+" + c.words.Figure(s.Angle.String())
	case plan.BackOff, plan.TurnBack:
		return "−" + c.words.Figure(s.Angle.String())
	case plan.Remove:
		return c.words.Card.Stage.Out
	}
	return c.words.Figure(s.Wait.String())
}

// approx marks a figure that was worked out, or that nobody is named for.
func approx(s *plan.Stage) string {
	if s.WorkedOut {
		return "≈ "
	}
	return ""
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// otherTorque is the torque on the other kind of wrench, in the unit that suits
// the highest torque of the kind: two units on one bolt are misread.
func (c *card) otherTorque(s *plan.Stage) string {
	other := s.Torque.Nm().OnScale(c.highest(s).Other().Unit)
	if s.Torque.Value == other.Value && s.Torque.Unit == unit.NewtonMetre {
		return ""
	}
	return c.words.Figure(other.String())
}

// highest is the highest torque that is given in the same unit to a kind that
// the stage covers.
func (c *card) highest(s *plan.Stage) unit.GivenTorque {
	most := s.Torque
	for _, other := range c.side.Stages {
		shared := slices.ContainsFunc(other.Kinds, func(k string) bool { return slices.Contains(s.Kinds, k) })
		if other.Do == plan.Tighten && shared && other.Torque.Unit == s.Torque.Unit && other.Torque.Value > most.Value {
			most = other.Torque
		}
	}
	return most
}

// bigFigure sets a figure with its unit smaller behind it, centred on x.
func (c *card) bigFigure(p *sheet.Pen, x, y float64, figure, unitSign string) {
	const gap = unitGap
	wide := font.Width(figure, scene.Bold, sheet.FigureEm)
	behind := font.Width(unitSign, scene.Bold, sheet.HeadEm)
	start := x - (wide+gap+behind)/2
	p.Write(start, y, sheet.FigureEm, scene.Bold, scene.Start, scene.Black, figure)
	p.Write(start+wide+gap, y, sheet.HeadEm, scene.Bold, scene.Start, scene.Black, unitSign)
}

const (
	iconRadius = 3.6 // of the picture beside a figure
	iconGap    = 1.6 // between the two
	unitGap    = 1.2 // between a torque and its unit
)

// beside sets a picture and a figure next to each other, centred in the box.
func (c *card) beside(p *sheet.Pen, x, y, w float64, icon func(p *sheet.Pen, x, y float64), figure string, em float64) {
	const gap = iconGap
	wide := font.Width(figure, scene.Bold, em)
	start := x + (w-2*iconRadius-gap-wide)/2
	icon(p, start+iconRadius, y-sheet.FigureEm*font.CapHeight/2)
	p.Write(start+2*iconRadius+gap, y, em, scene.Bold, scene.Start, scene.Black, figure)
}
