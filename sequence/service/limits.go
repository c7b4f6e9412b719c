package service

import (
	"cmp"
	"math"
	"slices"

	"drawdown/geometry/unit"
	"drawdown/sequence/gasket"
	"drawdown/sequence/tension/screw"
)

// By is what limits the preload of a bolt.
type By string

const (
	ByBolt   By = "bolt"
	ByThread By = "thread"
	ByFace   By = "bearing face"
	ByGasket By = "gasket"
)

// Limit is the greatest preload of one fastener that something bears.
type Limit struct {
	By    By
	Force unit.Force
}

// Aim is the greatest torque that no limit forbids at any friction, and the
// preload that it gives (ASME PCC-1, appendix O: the target is as high as the
// tightest limit allows, and must reach what the gasket needs).
type Aim struct {
	By      By
	Torque  unit.Torque
	Preload Forces
	Needed  unit.Force // least preload that the joint needs; 0: unknown
}

// Reaches reports whether the least preload of the aim is all that the joint
// needs.
func (a Aim) Reaches() bool { return a.Preload.Low >= a.Needed }

func (w *work) windowed() gasket.Window {
	if w.Gasket == nil {
		return gasket.Window{}
	}
	return w.Gasket.Window
}

// limits fills in the limits of a kind and the aim that follows from them.
func (w *work) limits(k *Kind) {
	a := k.answer
	bolt := a.Bolt.Bolt
	bolt.ProofShare, bolt.Preload = 0, 0
	r, err := screw.Target(bolt)
	if err != nil {
		return
	}
	ofBolt := max(r.Low.Borne, r.Nominal.Borne, r.High.Borne)
	k.Limits = []Limit{{ByBolt, ofBolt}}
	if s := a.Stripping; s != nil && a.Engaged > 0 {
		k.Limits = append(k.Limits, Limit{ByThread, min(s.BoltStrips, s.PartStrips)})
	}
	if p := a.Pressure; p.Limit > 0 && p.Pressure > 0 {
		k.Limits = append(k.Limits, Limit{ByFace, a.Greatest * unit.Force(p.Limit/p.Pressure)})
	}
	if crush := w.windowed().Crush; crush > 0 {
		k.Limits = append(k.Limits, Limit{ByGasket, w.share(crush)})
	}
	slices.SortStableFunc(k.Limits, func(a, b Limit) int { return cmp.Compare(a.Force, b.Force) })
	share := 1.0
	if k.Limits[0].By != ByBolt {
		const figures = 1e3 // down to tenths of a percent of the yield stress
		share = math.Floor(figures*r.YieldShare*float64(k.Limits[0].Force/ofBolt)) / figures / r.YieldShare
	}
	of := func(f unit.Force) unit.Force { return f * unit.Force(share) }
	k.Aim = &Aim{
		By: k.Limits[0].By, Torque: r.Torque * unit.Torque(share), Needed: k.States[0].Needed,
		Preload: Forces{of(min(r.Low.Borne, r.High.Borne)), of(r.Nominal.Borne), of(ofBolt)},
	}
	if w.Gasket != nil {
		w.rests("ASME PCC-1, appendix O (aim by the tightest limit, value from memory)")
		w.assume(FlangeAside, nil)
	}
}

// Most is the greatest preload of a kind that the gasket bears; 0 if it is not
// the tightest limit. What else limits the aim is judged, and does not change
// the torque of the bolt.
func (j Joint) Most(kind string) unit.Force {
	k := j.Kind(kind)
	if k == nil || k.Aim == nil || k.Aim.By != ByGasket {
		return 0
	}
	return k.Aim.Preload.High
}
