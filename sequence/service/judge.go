package service

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/figures"
	"drawdown/sequence/gasket"
	"drawdown/sequence/plan"
)

// Judge compares the tightening of a plan with what its gasket needs and bears,
// and with what is left at work. It is a warning if the middle of the range
// fails and the file states the limit; otherwise a note.
func Judge(p plan.Plan) []finding.Finding {
	if _, window := windowsOf(p.Clamped.Gasket); len(p.Tighten.Stages) == 0 || !window.Known() && !p.Clamped.Service.Stated() {
		return nil // nothing to compare with: the face of the gasket need not be measured
	}
	j := judge{Joint: Of(p), plan: p}
	if j.Gasket != nil {
		j.crushed()
		j.seated()
		j.working()
	}
	if j.Stated {
		for _, k := range j.Kinds {
			j.strained(k)
		}
	}
	return j.found
}

type judge struct {
	Joint
	plan  plan.Plan
	found []finding.Finding
}

func (j *judge) add(fails bool, code finding.Code, at finding.Place, values finding.Values) {
	f := finding.Noted(code, values)
	if fails {
		f = finding.Warned(code, values)
	}
	j.found = append(j.found, f.About(at))
}

// stated reports whether the file itself has a figure of the window.
func (j *judge) stated(of func(gasket.Window) unit.Stress) bool {
	own, _ := windowsOf(j.plan.Clamped.Gasket)
	return of(own) > 0
}

func stressValues(s Stresses, values finding.Values) finding.Values {
	values["low"], values["stress"], values["high"] = s.Low, s.Nominal, s.High
	return values
}

// crushed reports the first stage that crushes the gasket.
func (j *judge) crushed() {
	crush := j.Gasket.Window.Crush
	if crush == 0 || j.Gasket.Tightened.High <= crush {
		return
	}
	stage, stress := j.firstOver(crush)
	fails := stress.Nominal > crush && j.stated(func(w gasket.Window) unit.Stress { return w.Crush })
	j.add(fails, Crushes, finding.Place{Stage: stage}, stressValues(stress, finding.Values{
		"stage": stage, "crush": crush, "area": j.Gasket.AreaMm2, "assumed": !j.stated(func(w gasket.Window) unit.Stress { return w.Crush }),
	}))
}

// firstOver finds the stage that first brings the gasket over a stress: at the
// middle of the range, or else at its high end.
func (j *judge) firstOver(crush unit.Stress) (int, Stresses) {
	of := func(s Stresses) unit.Stress { return s.Nominal }
	if j.Gasket.Tightened.Nominal <= crush {
		of = func(s Stresses) unit.Stress { return s.High }
	}
	stages := j.plan.Tighten.Stages
	for _, stage := range stages {
		if s := j.after(stage.Number); of(s) > crush {
			return stage.Number, s
		}
	}
	return stages[len(stages)-1].Number, j.Gasket.Tightened
}

// after is the stress after a stage of the plan.
func (j *judge) after(stage int) (s Stresses) {
	for _, k := range j.Kinds {
		left, known := k.answer.LeftBy(stage)
		if !known {
			continue
		}
		f, share := forcesOf(left), float64(k.Count)/j.Gasket.AreaMm2
		s.Low += unit.Stress(float64(f.Low) * share)
		s.Nominal += unit.Stress(float64(f.Nominal) * share)
		s.High += unit.Stress(float64(f.High) * share)
	}
	return s
}

func (j *judge) seated() {
	seating, s := j.Gasket.Window.Seating, j.Gasket.Tightened
	if s.Low >= seating {
		return
	}
	own := j.stated(func(w gasket.Window) unit.Stress { return w.Seating })
	if !own && j.plan.Clamped.Service.Pressure == 0 {
		return // a usual figure says nothing of a cover without pressure
	}
	j.add(s.Nominal < seating && own, NotSeated, finding.Place{}, stressValues(s, finding.Values{
		"seating": seating, "area": j.Gasket.AreaMm2, "assumed": !own,
	}))
}

func (j *judge) working() {
	work := j.Gasket.Window.Work
	lowest := j.Gasket.Lowest()
	if len(j.Gasket.AtWork) == 0 || lowest.Stress.Low >= work {
		return
	}
	own := j.stated(func(w gasket.Window) unit.Stress { return w.Work })
	if !own && j.plan.Clamped.Service.Pressure == 0 {
		return
	}
	j.add(lowest.Stress.Nominal < work && own, BelowWork, finding.Place{}, stressValues(lowest.Stress, finding.Values{
		"state": string(lowest.State), "work": work, "assumed": !own,
	}))
}

// strained reports a kind that yields when it is hot, lets the parts come
// apart, or breaks under a load that comes and goes.
func (j *judge) strained(k Kind) {
	at := finding.Place{Kind: k.Name}
	if y := k.Yield; y != nil && y.High > 1 && y.High > y.Cold && y.Cold <= 1 {
		values := finding.Values{"kind": k.Name, "cold": y.Cold, "hot": y.Nominal, "high": y.High}
		if k.byTorque() && k.Aim != nil && y.most > 0 {
			values["torque"] = k.Aim.Torque * unit.Torque(y.most/k.Aim.Preload.High)
		}
		j.add(y.Nominal > 1, YieldsHot, at, values)
	}
	if f := k.Fatigue; f != nil && f.Amplitude > f.Limit {
		j.add(true, Fatigues, at, finding.Values{"kind": k.Name, "amplitude": f.Amplitude, "limit": f.Limit})
	}
	if last := k.States[len(k.States)-1]; last.Name == HotUnderLoad && last.Clamp.Low <= 0 {
		j.add(last.Clamp.Nominal <= 0, PartsOpen, at, finding.Values{"kind": k.Name, "low": last.Clamp.Low, "clamp": last.Clamp.Nominal})
	}
	j.passed(k)
	if a := k.Aim; a != nil && a.Needed > 0 && k.States[0].Clamp.Low < a.Needed && !a.Reaches() {
		j.add(false, NothingFits, at, finding.Values{"kind": k.Name, "least": a.Preload.Low, "needed": a.Needed, "most": a.Preload.High, "by": string(a.By)})
	}
}

// passed reports the thread or face of a kind that its tightening, or the heat
// after it, takes over what it bears. The gasket has findings of its own.
func (j *judge) passed(k Kind) {
	most, adds, hot := k.States[0].Clamp.High, unit.Force(0), false
	for i, s := range k.States {
		if s.Name == Hot && s.Clamp.High > most {
			most, adds, hot = s.Clamp.High, s.Clamp.High-k.States[i-1].Clamp.High, true
		}
	}
	for _, limit := range k.Limits {
		if limit.By != ByThread && limit.By != ByFace || most <= limit.Force {
			continue
		}
		values := finding.Values{"kind": k.Name, "hot": hot, "high": most, "by": string(limit.By), "limit": limit.Force}
		if borne := limit.Force - adds; k.byTorque() && borne > 0 {
			values["torque"] = k.Aim.Torque * unit.Torque(min(1, borne/k.Aim.Preload.High)) // heat adds as much to a smaller preload
		}
		j.add(false, LimitPassed, finding.Place{Kind: k.Name}, values)
		return
	}
}

// byTorque reports whether all stages of a kind tighten it to a torque.
func (k Kind) byTorque() bool {
	return !slices.ContainsFunc(k.answer.Bolt.Stages, func(s figures.Stage) bool { return s.Do != figures.Tighten && s.Do != figures.BackOff })
}
