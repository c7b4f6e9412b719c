package card

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry/unit"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

func (c *card) goingWords(s *plan.Stage) string {
	w := c.words.Card.Stage
	if s.Way == sequence.Circular && s.Turn == sequence.TurnLeft {
		return w.RoundAnticlockwise
	}
	return map[sequence.Way]string{
		sequence.Star: w.Crosswise, sequence.Cross: w.Crosswise, sequence.Spiral: w.InASpiral,
		sequence.RowWay: w.MiddleOutwards, sequence.Auto: w.CentreOutwards, sequence.Circular: w.RoundClockwise,
	}[s.Way]
}

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

func (c *card) kindsOf(s *plan.Stage) []int {
	var kinds []int
	for i, k := range c.plan.Kinds {
		if slices.Contains(s.Kinds, k.Name) {
			kinds = append(kinds, i)
		}
	}
	return kinds
}

// coverWords says which fasteners a stage is for, and gives their numbers
// separately if they are consecutive.
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
		low, high = min(low, c.called[i]), max(high, c.called[i])
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

// mostBelow is the largest number of lines under the figure of a stage box.
const mostBelow = 8

func (c *card) below(s *plan.Stage, width float64) []string {
	w := c.words.Card.Stage
	var lines []string
	add := func(words string) { lines = append(lines, c.paper.BreakText(words, width)...) }
	switch s.Do {
	case plan.Tighten:
		add(c.otherTorque(s))
		add(c.words.ByTurns(s.ByTurns))
		add(c.words.AtOnce(s.AtOnce))
		add(c.words.Until(s.Until))
	case plan.Advance:
		add(c.words.ByTurns(s.ByTurns))
	case plan.Lengthen:
		add(w.Longer)
	case plan.BackOff:
		add(w.Slacken)
	case plan.TurnBack:
		if !c.loosenedBefore(s) {
			add(w.BreakLoose)
		}
		add(c.words.Until(s.Until))
		if s.Release > 0 {
			add(fmt.Sprintf(w.Rises, c.words.Value(s.Release, ".1 mm")))
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
	return sheet.AtMost(lines, mostBelow, scene.Regular, c.paper.TextEm, width)
}

// loosenedBefore reports whether an earlier stage has broken loose everything
// that this one turns back.
func (c *card) loosenedBefore(s *plan.Stage) bool {
	for _, kind := range s.Kinds {
		if !slices.ContainsFunc(c.side.Stages, func(earlier plan.Stage) bool {
			return earlier.Number < s.Number && earlier.Do == plan.TurnBack && slices.Contains(earlier.Kinds, kind)
		}) {
			return false
		}
	}
	return len(s.Kinds) > 0
}

// figureWords is the large figure of a stage, without the unit of a torque.
func (c *card) figureWords(s *plan.Stage) string {
	switch s.Do {
	case plan.Tighten:
		return approx(s) + c.words.Figure(number(s.Torque.Value))
	case plan.Advance:
		return approx(s) + "+" + c.words.Figure(s.Angle.String())
	case plan.Lengthen:
		return approx(s) + "+" + c.words.Figure(s.Stretch.String())
	case plan.BackOff, plan.TurnBack:
		return "−" + c.words.Figure(s.Angle.String())
	case plan.Remove:
		return c.words.Card.Stage.Out
	}
	return c.words.Figure(s.Wait.String())
}

// approx marks a figure that was calculated, or whose source is not known.
func approx(s *plan.Stage) string {
	if s.WorkedOut {
		return "≈ "
	}
	return ""
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// otherTorque is the torque on the other kind of wrench.
func (c *card) otherTorque(s *plan.Stage) string {
	if s.Torque.Value == s.Other.Value && s.Torque.Unit == unit.NewtonMetre {
		return ""
	}
	return c.words.Figure(s.Other.String())
}
