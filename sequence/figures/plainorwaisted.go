package figures

import (
	"drawdown/geometry/finding"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
)

// shape reports that an unknown bolt counts as plain, and what a waist would
// change.
func (a *Answer) shape() error {
	if a.ShapeStated() {
		return nil
	}
	waisted := a.Bolt.Bolt
	waisted.Shank = screw.Waist(waisted.Thread)
	s, err := screw.Complete(waisted)
	if err != nil {
		return err
	}
	at := s.At(a.Result.Torque, s.Friction.Thread.Low, s.Friction.Head.Low)
	a.Assumptions = append(a.Assumptions, finding.Noted(PlainAssumed, finding.Values{
		"waist": waisted.Shank, "yield": at.YieldTorque, "break": at.BreakTorque, "friction": at.Thread,
	}))
	return nil
}

// ShapeStated reports that the smallest section of the bolt is known.
func (b Bolt) ShapeStated() bool {
	return b.Bolt.Shank > 0 || b.Grip.FullThread || len(b.Grip.Shank) > 0
}

// waisted returns the grip with the stated waist over all of it: there it
// stretches most before it breaks.
func (b Bolt) waisted(g stiffness.Grip) (stiffness.Grip, bool) {
	least := screw.LeastDiameter(b.Bolt.Thread, b.Bolt.Shank)
	if b.Bolt.Shank == 0 || b.Bolt.Shank > least {
		return g, false
	}
	g.FullThread, g.BoltLength = false, 0
	g.Shank = []stiffness.Section{{Length: clamped(g), Diameter: b.Bolt.Shank}}
	return g, true
}
