package card

import (
	"fmt"
	"strings"

	"drawdown/sequence/plan"
	"drawdown/sequence/tension"
)

// assumption tells what a worked-out torque rests on.
func (c *card) assumption(a plan.Assumption) string {
	w := c.words.Card.Assumed
	preload, most := c.decimals(float64(a.Least)/1000, 1), c.decimals(float64(a.Most)/1000, 1)
	if preload != most {
		preload = fmt.Sprintf(w.Span, preload, most)
	}
	line := fmt.Sprintf(w.Torque, a.Kind, c.words.Figure(a.Torque.String()), preload)
	var taken []string
	for _, t := range a.Taken {
		taken = append(taken, c.taken(t))
	}
	if len(taken) > 0 {
		and := c.words.Card.Checks.And
		line += and + fmt.Sprintf(w.Taken, strings.Join(taken, and))
	}
	return line + "."
}

func (c *card) taken(a tension.Assumption) string {
	w := c.words.Card.Assumed
	low, high := c.decimals(a.Low, 2), c.decimals(a.High, 2)
	length, percent, standard := c.words.Figure(a.Length.String()), c.decimals(a.Percent, 0), standardName(a.Standard)
	switch a.What {
	case tension.AssumedYield:
		return fmt.Sprintf(w.Yield, c.decimals(float64(a.Stress), 0))
	case tension.AssumedProof:
		return fmt.Sprintf(w.Proof, standard, percent)
	case tension.AssumedYieldShare:
		return fmt.Sprintf(w.YieldShare, percent)
	case tension.AssumedFriction:
		return fmt.Sprintf(w.Friction, low, high, c.words.Lubricant(a.Lubricant), standard)
	case tension.AssumedAnyFriction:
		return fmt.Sprintf(w.AnyFriction, low, high)
	case tension.AssumedExact:
		return w.Exact
	case tension.AssumedFace:
		return fmt.Sprintf(w.Face, length, standard)
	case tension.AssumedFaceOfAcross:
		return fmt.Sprintf(w.FaceOfHead, length, c.words.Figure(a.Across.String()))
	case tension.AssumedHole:
		return fmt.Sprintf(w.Hole, length, standard)
	}
	return a.String()
}

// decimals prints a figure that was worked out.
func (c *card) decimals(v float64, n int) string { return c.words.Figure(fmt.Sprintf("%.*f", n, v)) }

// standardName is the body and the number of a standard: the card has no room
// for the table and the row.
func standardName(s string) string {
	parts := strings.Fields(s)
	return strings.TrimRight(strings.Join(parts[:min(2, len(parts))], " "), ",")
}
