package service

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/figures"
	"drawdown/sequence/gasket"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/plan"
)

// face is the gasket and the area that it covers.
type face struct {
	kind     compliance.Gasket
	behaves  gasket.Kind
	areaMm2  float64
	mpaPerMm bounds.Band // on loading; 0: bare faces
	// perBolt is the resilience of the share of one bolt on unloading, of a
	// stiff, a nominal and a soft gasket, in mm/N.
	perBolt bounds.Band
}

// Gasket is the stress of a gasket.
type Gasket struct {
	Kind      compliance.Gasket
	Window    gasket.Window
	Stated    bool // the window is that of the file alone
	AreaMm2   float64
	Thickness unit.Length // 0: not stated

	Tightened   Stresses // after the work, a mean over the face
	Compression Lengths
	AtWork      []StateStress
}

// Stresses and Lengths are figures of a gasket, in order.
type (
	Stresses struct{ Low, Nominal, High unit.Stress }
	Lengths  struct{ Low, Nominal, High unit.Length }
)

// StateStress is the stress in a state of the joint.
type StateStress struct {
	State  Name
	Stress Stresses
}

// Lowest is the state with the least stress at the low end.
func (g Gasket) Lowest() (lowest StateStress) {
	for i, s := range g.AtWork {
		if i == 0 || s.Stress.Low < lowest.Stress.Low {
			lowest = s
		}
	}
	return lowest
}

// windowsOf returns the window that a file states, and that with the usual figures of
// the kind where it states none.
func windowsOf(g plan.Gasket) (own, window gasket.Window) {
	own = gasket.Window{Seating: g.Seating, Work: g.Work, Crush: g.Crush}
	return own, own.Over(gasket.Of(compliance.Gasket(g.Kind)).Window)
}

// settleGasket finds the face of the gasket, and its stress after tightening.
func (w *work) settleGasket() {
	stated := w.plan.Clamped.Gasket
	for _, k := range w.Kinds {
		w.bolts += k.Count
	}
	w.face.kind = compliance.Gasket(stated.Kind)
	w.face.behaves = gasket.Of(w.face.kind)
	own, window := windowsOf(stated)
	if w.bolts == 0 || stated.Kind == "" && !own.Known() && !stated.Stiffness.Stated() && !stated.Ring() {
		w.face.behaves = gasket.Of(compliance.NoGasket)
		return
	}
	if w.face.mpaPerMm = stiffnessOf(stated.Kind, bounds.Band{Low: float64(stated.Stiffness.Low), Nominal: float64(stated.Stiffness.Nominal), High: float64(stated.Stiffness.High)}); w.face.mpaPerMm == (bounds.Band{}) && gasket.Bare(w.face.kind) && !own.Known() {
		return
	}
	contact, known := setup.ContactOf(w.plan)
	if !known {
		w.open(NoFace, nil)
		return
	}
	w.face.areaMm2 = contact.AreaMm2
	w.Assumed = append(w.Assumed, contact.Assumed...)
	w.stresses(window, own)
}

// stiffnessOf is the stiffness on loading: as stated, or that of the kind.
func stiffnessOf(kind string, stated bounds.Band) bounds.Band {
	if stated.Nominal > 0 {
		return stated
	}
	band, err := compliance.Gasket(kind).StiffnessMPaPerMm()
	if err != nil {
		return bounds.Band{}
	}
	return band
}

// stresses fills in the gasket after tightening, if all bolts are known.
func (w *work) stresses(window, own gasket.Window) {
	g := &Gasket{Kind: w.face.kind, Window: window, Stated: own == window, AreaMm2: w.face.areaMm2, Thickness: w.plan.Clamped.Gasket.Thickness}
	if g.Tightened = w.stressOf(func(k Kind) Forces { return forcesOf(k.cold) }); len(w.Open) == 0 {
		w.Gasket = g
	}
	if !window.Known() {
		w.open(NoWindow, finding.Values{"gasket": finding.Term(g.Kind)})
	} else if own != window {
		w.assume(UsualWindow, finding.Values{"gasket": finding.Term(g.Kind)})
		w.rests(gasket.Source)
	}
	if w.face.mpaPerMm.Nominal == 0 {
		return
	}
	k := w.face.behaves.AtLeast(w.face.mpaPerMm, g.Tightened.Nominal, g.Thickness)
	g.Compression = Lengths{
		w.face.behaves.Compression(g.Tightened.Low, k.High, g.Thickness),
		w.face.behaves.Compression(g.Tightened.Nominal, k.Nominal, g.Thickness),
		w.face.behaves.Compression(g.Tightened.High, k.Low, g.Thickness),
	}
	recovers, share := w.face.behaves.Recovers, float64(w.bolts)/w.face.areaMm2
	w.face.perBolt = bounds.Band{
		Low: share / (k.High * recovers.High), Nominal: share / (k.Nominal * recovers.Nominal), High: share / (k.Low * recovers.Low),
	}
	w.assume(Creeps, finding.Values{"gasket": finding.Term(g.Kind), "low": w.face.behaves.Keeps.Low, "high": w.face.behaves.Keeps.High})
}

// stressOf spreads the forces of all bolts over the face.
func (w *work) stressOf(of func(Kind) Forces) (s Stresses) {
	for _, k := range w.Kinds {
		f, n := of(k), unit.Force(k.Count)
		s.Low += unit.Stress(float64(n*f.Low) / w.face.areaMm2)
		s.Nominal += unit.Stress(float64(n*f.Nominal) / w.face.areaMm2)
		s.High += unit.Stress(float64(n*f.High) / w.face.areaMm2)
	}
	return s
}

// gasketAtWork fills in the stress of every state that all kinds have.
func (w *work) gasketAtWork() {
	if w.Gasket == nil || len(w.Kinds) == 0 {
		return
	}
	for n, s := range w.Kinds[0].States {
		for _, k := range w.Kinds {
			if len(k.States) != len(w.Kinds[0].States) {
				return
			}
		}
		w.Gasket.AtWork = append(w.Gasket.AtWork, StateStress{s.Name, w.stressOf(func(k Kind) Forces { return k.States[n].Clamp })})
	}
}

// share is the force of one bolt that a stress on the whole face takes.
func (w *work) share(stress unit.Stress) unit.Force {
	if w.bolts == 0 {
		return 0
	}
	return unit.Force(float64(stress) * w.face.areaMm2 / float64(w.bolts))
}

func forcesOf(l figures.Left) Forces { return Forces{l.Low.Force, l.Nominal.Force, l.High.Force} }
