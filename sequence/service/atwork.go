package service

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/bounds"
)

// Name is the name of a state, as in the JSON output.
type Name string

// States of a joint, in order.
const (
	Cold         Name = "cold" // just tightened
	Settled      Name = "settled"
	Hot          Name = "hot"
	HotUnderLoad Name = "hot under load"
)

// State is the clamp load of one fastener in a state of the joint.
type State struct {
	Name   Name
	Clamp  Forces
	Needed unit.Force // so that the low end still seals at last; 0: unknown
}

// springs are the resiliences at one fastener in mm/N.
type springs struct {
	bolt, parts float64
	gasket      bounds.Band // from stiff to soft
}

func (s springs) all(gasket float64) float64 { return s.bolt + s.parts + gasket }

// share is the share of a load that the bolt takes: Φ of VDI 2230.
func (s springs) share(n, gasket float64) float64 {
	return n * (s.parts + gasket) / s.all(gasket) // VDI 2230-1, section 5.3.2: Φn = n δP/(δS + δP)
}

// atWork calculates the states of a kind.
func (w *work) atWork(k *Kind) {
	k.States = []State{{Name: Cold, Clamp: forcesOf(k.cold)}}
	a := k.answer
	if a.Joint == nil || a.Settlement == nil {
		w.open(NoGrip, finding.Values{"kind": k.Name})
		return
	}
	s := springs{float64(a.Joint.Bolt.Resilience()), float64(a.Joint.Members.Resilience()), w.face.perBolt}
	settled := w.settled(k.States[0].Clamp, s, a.Settlement.Micrometres/1000)
	k.States = append(k.States, State{Name: Settled, Clamp: settled})
	w.rests("VDI 2230 Part 1, table 5 (settlement)")
	if w.bolts > 1 {
		w.assume(TightenedAlone, nil)
	}
	load, known := w.load()
	adds, hot := w.heat(*k, s)
	if !known || !hot {
		return
	}
	if w.Stated {
		heated := plus(settled, adds)
		k.States = append(k.States, State{Name: Hot, Clamp: heated}, State{Name: HotUnderLoad, Clamp: w.relieved(heated, s, load)})
		w.rests("VDI 2230 Part 1, sections 5.3 and 5.4.2 (working load, heat)")
		w.yields(k, adds, load, s)
		w.fatigue(k, load, s)
	}
	w.needs(k, s, adds, load)
}

// settled subtracts what flattens and creeps. A stiff gasket loses most.
func (w *work) settled(cold Forces, s springs, flattensMm float64) Forces {
	left := func(f unit.Force, gasket, keeps float64) unit.Force {
		return max(0, f-unit.Force(flattensMm/s.all(gasket))) * unit.Force(keeps) // VDI 2230-1, section 5.4.2.1: FZ = fZ/(δS + δP)
	}
	keeps := w.face.behaves.Keeps
	return Forces{
		left(cold.Low, s.gasket.Low, keeps.Low), left(cold.Nominal, s.gasket.Nominal, keeps.Nominal), left(cold.High, s.gasket.High, keeps.High),
	}
}

func plus(f, more Forces) Forces {
	return Forces{max(0, f.Low+more.Low), max(0, f.Nominal+more.Nominal), max(0, f.High+more.High)}
}

// usualIntroduction is n of VDI 2230 for a load at head and nut, where the bolt
// takes most.
const usualIntroduction = 1

func (w *work) introduced() float64 {
	if n := w.plan.Clamped.Service.Introduced; n > 0 {
		return n
	}
	return usualIntroduction
}

// load is the share of one bolt of pressure and load.
func (w *work) load() (load unit.Force, known bool) {
	s := w.plan.Clamped.Service
	sealed := s.Sealed
	if s.Pressure > 0 && sealed == 0 {
		sealed = w.plan.Clamped.Gasket.Inside
		w.assume(SealedInside, finding.Values{"sealed": sealed})
	}
	total := s.Load + unit.Force(float64(s.Pressure)*math.Pi/4*float64(sealed*sealed))
	if total == 0 {
		return 0, true
	}
	n := w.introduced()
	w.assume(Introduced, finding.Values{"n": n, "assumed": s.Introduced == 0})
	w.assume(EqualShares, finding.Values{"bolts": w.bolts})
	return total / unit.Force(w.bolts), w.bolts > 0
}

// relieved is what clamps the parts under a load: FKR of VDI 2230. At the low
// end the whole load relieves them, as ASME PCC-1, appendix O, counts.
func (w *work) relieved(f Forces, s springs, load unit.Force) Forces {
	n := w.introduced()
	// VDI 2230-1, section 5.3: FKR = FV − (1 − Φn) FA
	relief := func(gasket float64) unit.Force { return load * unit.Force(1-s.share(n, gasket)) }
	return plus(f, Forces{-load, -relief(s.gasket.Nominal), -relief(s.gasket.High)})
}

// needs fills in what each state needs, from the last to the first, by the low
// end: the gasket needs its working stress under load, and its seating stress
// once.
func (w *work) needs(k *Kind, s springs, adds Forces, load unit.Force) {
	window := w.windowed()
	working, seating := w.share(window.Work), w.share(window.Seating)
	settled := working + load + max(0, -adds.Low)
	flattens := unit.Force(k.answer.Settlement.Micrometres / 1000 / s.all(s.gasket.Low))
	cold := max(seating, settled/unit.Force(w.face.behaves.Keeps.Low)+flattens)
	if working+seating+load == 0 {
		return
	}
	for i, of := range []unit.Force{cold, settled, working + load, working} {
		if i < len(k.States) {
			k.States[i].Needed = of
		}
	}
}
