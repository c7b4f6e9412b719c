package places

import (
	"drawdown/geometry"
	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/problem"
)

// What labels say of the sides of a part, in the languages of the sheets.
var (
	intakeSide  = expression.Lazily(`(?i)\b(?:intake|inlet|einlass|ansaug\w*|admission|admisión)\b`)
	exhaustSide = expression.Lazily(`(?i)\b(?:exhaust|auslass|auspuff\w*|échappement|escape)\b`)
	ofFlywheel  = expression.Lazily(`(?i)\b(?:flywheel|schwungrad\w*|volant moteur|volante de inercia)\b`)
	atFront     = expression.Lazily(`(?i)^(?:front|front end|front side|pulley(?: end| side)?|vorn|vorne|vorderseite|avant|delante|frente)$`)
	atTop       = expression.Lazily(`(?i)^(?:top|oben|haut|arriba)$`)
	atBottom    = expression.Lazily(`(?i)^(?:bottom|unten|bas|abajo)$`)
)

// sideLabels warns of labels that cannot be where they are: intake and exhaust on one side,
// the flywheel at the front, the top at the bottom; two at one place.
func (c check) sideLabels() {
	box, known := c.partBox()
	if !known {
		return
	}
	middle := box.Min.Add(box.Max).Scale(0.5)
	near := max(box.Width(), box.Height()) / 20
	for i, l := range c.Joint.Labels {
		off := l.At.Sub(middle)
		for _, other := range c.Joint.Labels[:i] {
			of := other.At.Sub(middle)
			switch {
			case l.At.Distance(other.At) < toleranceMm:
				c.Warn(c.Labels[i], LabelsTogether, finding.Values{"label": problem.Quoted(l.Text), "other": problem.Quoted(other.Text)})
			case (intakeSide.MatchString(l.Text) && exhaustSide.MatchString(other.Text) || exhaustSide.MatchString(l.Text) && intakeSide.MatchString(other.Text)) && sameSide(off, of, near):
				c.Warn(c.Labels[i], SidesTogether, finding.Values{"label": problem.Quoted(l.Text), "other": problem.Quoted(other.Text)})
			}
		}
		front, known := directions[c.Joint.Front]
		if known && ofFlywheel.MatchString(l.Text) && off.Dot(front) > near {
			c.Warn(c.Labels[i], FlywheelAtFront, finding.Values{"label": problem.Quoted(l.Text), "front": string(c.Joint.Front)})
		}
		if known && atFront.MatchString(l.Text) && off.Dot(front) < -near {
			c.Warn(c.Labels[i], FrontLabelAtRear, finding.Values{"label": problem.Quoted(l.Text), "front": string(c.Joint.Front)})
		}
		if atTop.MatchString(l.Text) && off.Y < -near || atBottom.MatchString(l.Text) && off.Y > near {
			c.Warn(c.Labels[i], LabelUpsideDown, finding.Values{"label": problem.Quoted(l.Text)})
		}
	}
}

// sameSide reports whether two labels are on the same side of the middle, above, below or
// beside it, and on no opposite ones.
func sameSide(a, b geometry.Point, near float64) bool {
	opposite := func(x, y float64) bool { return x > near && y < -near || x < -near && y > near }
	beside := func(x, y float64) bool { return x > near && y > near || x < -near && y < -near }
	return !opposite(a.X, b.X) && !opposite(a.Y, b.Y) && (beside(a.X, b.X) || beside(a.Y, b.Y))
}

// dowelsTogether warns of two dowels that overlap.
func (c check) dowelsTogether() {
	for i, d := range c.Joint.Dowels {
		for k, other := range c.Joint.Dowels[:i] {
			apart, least := d.Centre.Distance(other.Centre), (d.Diameter+other.Diameter)/2
			if apart < least-toleranceMm {
				c.Warn(c.Dowels[i], DowelsTogether, finding.Values{"first": c.Dowels[k].Stood(c.Dowels[i]), "apart": unit.Length(apart), "need": unit.Length(least)})
				break
			}
		}
	}
}

// directions are those of the front.
var directions = map[geometry.Front]geometry.Point{
	geometry.FrontLeft: {X: -1}, geometry.FrontRight: {X: 1}, geometry.FrontTop: {Y: 1}, geometry.FrontBottom: {Y: -1},
}
