package job

import (
	"fmt"
	"slices"

	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/interaction/ways"
	"drawdown/sequence/plan"
)

// PredictRequest is what is stated about a joint and the passes over it.
type PredictRequest struct {
	setup.Setup
	Shares []float64  // of the target in each pass over all fasteners; none: the stages of the plan
	Target unit.Force // that stands for 100 % on every fastener; 0: by the stages of the plan
	Cap    float64    // on targets that make up for the loss, over the target; 0: no such targets

	Draws  int     // of friction, on top of the elastic work; 0: none
	Seed   uint64  // of the draws
	Search bool    // for better orders, beside the other ways to do the work
	Stick  float64 // share of its target that a bolt may lack and the wrench still does not turn it
}

// PredictAnswer is what tightening leaves in each fastener, and what that means.
type PredictAnswer struct {
	Plan plan.Plan
	prediction.Model
	prediction.Prediction
	Forecast    prediction.Forecast
	Leaves      float64          // share of the elastic error that a repeat in the order of the plan leaves, nominal
	OneNewton   [][]float64      // what each step of one pass in that order, by a newton, adds to each bolt; both in that order
	Scatter     *Scatter         // nil: not asked for
	Comparison  *ways.Comparison // nil: too many bolts, and not asked for; or targets against the loss
	Targets     []float64        // of the last pass that make up for the loss, in N; nil: not asked for
	Cap         float64          // of Targets over the target
	Notes       []string
	Assumptions []string
}

// Predict works a plan's tightening out on a model of its joint. The error says
// what is missing or does not fit, and what is allowed.
func Predict(p plan.Plan, ask PredictRequest) (PredictAnswer, error) {
	if ask.Flange != nil {
		ask.Flange.Pair = setup.ThroughBolted(p) && !(p.Clamped.Flange != nil && p.Clamped.Flange.Single)
	}
	model, err := prediction.ModelOf(p, ask.Setup)
	if err != nil {
		return PredictAnswer{}, err
	}
	model.Stick = ask.Stick
	a := PredictAnswer{Plan: p, Model: model, Cap: ask.Cap, Assumptions: slices.Clone(model.Assumptions)}
	work, err := a.work(ask)
	if err != nil {
		return PredictAnswer{}, err
	}
	if ask.Cap > 0 {
		if err := a.compensate(work); err != nil {
			return PredictAnswer{}, err
		}
	}
	work.Compensated = a.Targets != nil
	if a.Forecast, err = model.Forecast(p, a.Prediction, work); err != nil {
		return PredictAnswer{}, err
	}
	if err := a.linear(); err != nil {
		return PredictAnswer{}, err
	}
	if ask.Draws > 0 {
		if err := a.scatter(work, ask); err != nil {
			return PredictAnswer{}, err
		}
	}
	if a.Targets == nil && (ask.Search || len(a.At) <= mostCompared) { // targets of one order say nothing of another
		c, err := ways.Compare(model, p, a.Prediction, work, ask.Search)
		if err != nil {
			return PredictAnswer{}, err
		}
		a.Comparison = &c
	}
	a.Assumptions = onceEach(append(a.Assumptions, procedure.FrictionOf(p).String()))
	return a, nil
}

// linear works out what holds as long as no bolt goes slack.
func (a *PredictAnswer) linear() error {
	joint, order := a.Nominal.Joint, a.Plan.Tighten.Order
	matrix, err := joint.Interaction(order)
	if err != nil {
		return err
	}
	for i := range order {
		row := make([]float64, len(order))
		for k := i; k < len(order); k++ {
			row[k] = matrix.At(i, k)
		}
		a.OneNewton = append(a.OneNewton, row)
	}
	a.Leaves, err = joint.Rate(order)
	return err
}

// mostCompared is the count of bolts up to which a prediction also tries other
// ways at once.
const mostCompared = 60

// Scatter is the work done again and again, each time with a friction of its own
// for each bolt, on the nominal gasket.
type Scatter struct {
	Draws      int
	Seed       uint64
	SDPercent  []float64           // that friction brings, by fastener
	FrictionSD float64             // the same of all
	Elastic    procedure.Scattered // without it: what the bolts do to each other alone
	Together   procedure.Scattered
}

func (a *PredictAnswer) scatter(work procedure.Work, ask PredictRequest) error {
	s := Scatter{Draws: ask.Draws, Seed: ask.Seed}
	friction := procedure.FrictionOf(a.Plan)
	s.SDPercent, s.FrictionSD = friction.ByFastener, friction.SDPercent
	joint, targets := a.Nominal.Joint, a.Nominal.TargetsN
	still := procedure.FrictionScatter{SDPercent: make([]float64, joint.Len()), Draws: 1, Stick: ask.Stick}
	var err error
	if s.Elastic, err = procedure.ScatterByFriction(joint, work.Passes, targets, still); err != nil {
		return err
	}
	s.Together, err = procedure.ScatterByFriction(joint, work.Passes, targets, procedure.FrictionScatter{SDPercent: s.SDPercent, Draws: s.Draws, Seed: s.Seed, Stick: ask.Stick})
	a.Scatter = &s
	return err
}

// work predicts the passes that are asked for, or those of the plan.
func (a *PredictAnswer) work(ask PredictRequest) (procedure.Work, error) {
	var err error
	if len(ask.Shares) == 0 {
		var work procedure.Work
		if a.Prediction, work, err = a.PredictPlan(a.Plan); err == nil {
			a.sayTargets()
		}
		return work, err
	}
	work, err := a.hundred(ask)
	if err != nil {
		return procedure.Work{}, err
	}
	targets := work.TargetsN
	for _, share := range ask.Shares {
		work.Passes = append(work.Passes, contact.ToForces(a.Plan.Tighten.Order, targets, share))
	}
	a.Prediction, err = a.Predict(work.Passes, targets)
	return work, err
}

// hundred gives the force that stands for 100 %, by fastener, and what it is. An
// angle that ends the plan gives the kind's mean, at most its yield load.
func (a *PredictAnswer) hundred(ask PredictRequest) (procedure.Work, error) {
	if ask.Target > 0 {
		targets := slices.Repeat([]float64{float64(ask.Target)}, len(a.Plan.Joint.Fasteners))
		return procedure.Work{TargetsN: targets, Hundreds: []procedure.Hundred{{By: procedure.ByStatedForce}}}, nil
	}
	if len(a.Plan.Tighten.Stages) == 0 {
		return procedure.Work{}, fmt.Errorf("the plan has no stage that tightens, so the preload is not known; state it, such as 30 kN")
	}
	work, err := procedure.WorkOf(a.Plan, a.Plan.Tighten)
	if err != nil {
		return procedure.Work{}, err
	}
	a.sayFriction()
	made := procedure.Work{TargetsN: work.TargetsN, Hundreds: work.Hundreds}
	if slices.Contains(work.TargetsN, 0) {
		planned, _, err := a.PredictPlan(a.Plan)
		if err != nil {
			return procedure.Work{}, err
		}
		made = a.yielding(planned.Nominal.TargetsN, work.Hundreds)
	}
	return made, nil
}

// sayTargets tells what the targets rest on.
func (a *PredictAnswer) sayTargets() {
	a.sayFriction()
	if slices.ContainsFunc(a.Plan.Tighten.Stages, func(s plan.Stage) bool { return s.Do == plan.Wait }) {
		a.Notes = append(a.Notes, "Waits change no figure here, as how a gasket creeps is not in the model: they stay in the plan.")
	}
}

func (a *PredictAnswer) sayFriction() {
	a.Assumptions = append(a.Assumptions, "a torque gives the preload of the middle of its friction, in every pass, assumed")
}

func onceEach(lines []string) []string {
	var kept []string
	for _, line := range lines {
		if !slices.Contains(kept, line) {
			kept = append(kept, line)
		}
	}
	return kept
}
