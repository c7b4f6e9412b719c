package plan

import (
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
)

// Bolt describes a fastener of the kind to the mechanics, without an aim. What
// the kind leaves open is left open there too, the thread included.
func (k Kind) Bolt() screw.Bolt {
	b := screw.Bolt{
		Class: k.Class, Lubricant: k.Lubricant, Friction: k.friction(),
		HeadForm: k.HeadForm, HeadAcross: k.TurnedAcross(), WasherFace: k.WasherFace, Hole: k.Hole,
	}
	if k.Thread != nil {
		b.Thread = *k.Thread
	}
	return b
}

func (k Kind) friction() *screw.Friction {
	if k.Friction == nil {
		return nil
	}
	return &screw.Friction{
		Thread: screw.Between(k.Friction.Thread.Low, k.Friction.Thread.High),
		Head:   screw.Between(k.Friction.Head.Low, k.Friction.Head.High),
	}
}

// Stud says that the fastener stays in its tapped hole and its nut is turned. A
// nut without a tapped hole is that of a bolt that goes through.
func (k Kind) Stud() bool { return k.NutAcross > 0 && k.Into != "" }

// TurnedAcross is the width across flats of what the wrench turns: the nut of a
// stud, else the head; 0 where the file does not state it.
func (k Kind) TurnedAcross() unit.Length {
	if k.Stud() {
		return k.NutAcross
	}
	return k.HeadAcross
}
