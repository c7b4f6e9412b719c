package plan

import "drawdown/sequence/tension"

// Bolt describes a fastener of the kind to the mechanics, without an aim. What
// the kind leaves open is left open there too, the thread included.
func (k Kind) Bolt() tension.Bolt {
	b := tension.Bolt{
		Class: k.Class, Lubricant: k.Lubricant, Friction: k.friction(),
		HeadForm: k.HeadForm, HeadAcross: k.HeadAcross, WasherFace: k.WasherFace, Hole: k.Hole,
	}
	if k.Thread != nil {
		b.Thread = *k.Thread
	}
	return b
}

func (k Kind) friction() *tension.Friction {
	if k.Friction == nil {
		return nil
	}
	return &tension.Friction{
		Thread: tension.Between(k.Friction.Thread.Low, k.Friction.Thread.High),
		Head:   tension.Between(k.Friction.Head.Low, k.Friction.Head.High),
	}
}
