package page

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"drawdown/render/words"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// StageBox is the box of a stage, as on the card.
type StageBox struct {
	Number int
	Cover  string // the fasteners it covers
	Figure string // in large type
	Unit   string // of a torque, after the figure
	Icon   Icon
	Below  string
}

// Icon is the icon beside a figure.
type Icon string

const (
	NoIcon    Icon = ""
	WedgeIcon Icon = "wedge" // an angle to turn further
	BackIcon  Icon = "back"  // an angle to turn back
	ClockIcon Icon = "clock"
	OutIcon   Icon = "out"
)

func stageBoxes(p plan.Plan, d run.Direction, c *words.Catalogue) []StageBox {
	side := sideOf(p, d)
	called := p.Called(side)
	var boxes []StageBox
	for i := range side.Stages {
		s := &side.Stages[i]
		box := StageBox{Number: s.Number, Cover: cover(p, called, s, c), Icon: iconOf(s.Do)}
		box.Figure, box.Unit = figure(s, c)
		box.Below = below(s, c)
		boxes = append(boxes, box)
	}
	return boxes
}

func iconOf(do plan.Action) Icon {
	return map[plan.Action]Icon{
		plan.Advance: WedgeIcon, plan.BackOff: BackIcon, plan.TurnBack: BackIcon, plan.Wait: ClockIcon, plan.Remove: OutIcon,
	}[do]
}

// cover says which fasteners a stage is for, as on the card.
func cover(p plan.Plan, called []int, s *plan.Stage, c *words.Catalogue) string {
	w, names := c.Card.Stage, strings.Join(s.Kinds, ", ")
	switch {
	case s.Do == plan.Wait:
		return ""
	case len(s.Fasteners) == len(p.Joint.Fasteners):
		return fmt.Sprintf(w.All, len(s.Fasteners))
	}
	low, high := math.MaxInt, 0
	for _, i := range s.Fasteners {
		low, high = min(low, called[i]), max(high, called[i])
	}
	switch {
	case high-low+1 != len(s.Fasteners):
		return fmt.Sprintf(w.AllOf, names)
	case low == high:
		return names + " " + strconv.Itoa(low)
	}
	return names + " " + fmt.Sprintf(w.FromTo, low, high)
}

// figure is the large figure of a stage, and its unit if separate.
func figure(s *plan.Stage, c *words.Catalogue) (figure, unit string) {
	approx := ""
	if s.WorkedOut {
		approx = "≈ "
	}
	switch s.Do {
	case plan.Tighten:
		value := strconv.FormatFloat(s.Torque.Value, 'f', -1, 64)
		return approx + c.Figure(value), s.Torque.Unit.String()
	case plan.Advance:
		return approx + "+" + c.Figure(s.Angle.String()), ""
	case plan.Lengthen:
		return approx + "+" + c.Figure(s.Stretch.String()), ""
	case plan.BackOff, plan.TurnBack:
		return "−" + c.Figure(s.Angle.String()), ""
	case plan.Remove:
		return c.Card.Stage.Out, ""
	}
	return c.Figure(s.Wait.String()), ""
}

// below is the text below the figure.
func below(s *plan.Stage, c *words.Catalogue) string {
	w := c.Card.Stage
	other := ""
	if s.Do == plan.Tighten {
		other = c.Figure(s.Other.String())
	}
	does := map[plan.Action]string{plan.BackOff: w.Slacken, plan.Lengthen: w.Longer, plan.TurnBack: w.BreakLoose, plan.Wait: w.Settle}
	return words.Row(other, does[s.Do], c.ByTurns(s.ByTurns), c.Until(s.Until), s.Note)
}
