package interaction

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/interaction/ways"
	"drawdown/sequence/plan"
)

// Question is what is stated about a joint, and the passes over it.
type Question struct {
	setup.Setup
	Shares []float64  // of the target in each pass over all fasteners; none: the stages of the plan
	Target unit.Force // 100 % on every fastener; 0: by the stages of the plan
	Cap    float64    // limit of compensating targets relative to the target; 0: no such targets

	Draws  int     // of friction, in addition to the elastic effects; 0: none
	Seed   uint64  // of the draws
	Search bool    // search better orders, besides comparing other ways to do the work
	Stick  float64 // share of its target that a bolt may lack without the wrench turning it
}

// Answer is the force that tightening leaves in each fastener, and what it
// means.
type Answer struct {
	Plan plan.Plan
	prediction.Model
	prediction.Prediction
	Forecast   prediction.Forecast
	Advice     advice.Advice
	Scatter    *Scatter          // nil: not requested
	Comparison *ways.Comparison  // nil: too many bolts and not requested, or compensating targets
	Targets    []float64         // of the last pass that compensate for the loss, in N; nil: not requested
	Cap        float64           // limit of Targets relative to the target
	Notes      []finding.Finding // other notes on the work
}

// WaitsLeftOut notes that the waits of a plan are ignored.
const WaitsLeftOut finding.Code = "forecast waits left out"

// mostCompared is the largest number of bolts for which a prediction also tries
// other ways by default.
const mostCompared = 60

// Predict calculates the tightening of a plan on a model of its joint. The
// error says what is missing or does not fit, and what is allowed.
func Predict(p plan.Plan, ask Question) (Answer, error) {
	model, err := prediction.ModelOf(p, ask.Setup)
	if err != nil {
		return Answer{}, err
	}
	model.Stick = ask.Stick
	a := Answer{Plan: p, Model: model, Cap: ask.Cap}
	work, err := a.work(ask)
	if err != nil {
		return Answer{}, err
	}
	if ask.Cap > 0 {
		if err := a.compensate(work); err != nil {
			return Answer{}, err
		}
	}
	work.Compensated = a.Targets != nil
	friction := procedure.FrictionOf(p)
	a.Assumed = append(slices.Clone(a.Assumed), finding.Noted(procedure.FrictionMiddle, nil), friction.Says())
	if a.Forecast, err = a.Model.Forecast(p, a.Prediction, work); err != nil {
		return Answer{}, err
	}
	if ask.Draws > 0 {
		if a.Scatter, err = a.scatter(work, friction, ask); err != nil {
			return Answer{}, err
		}
	}
	return a, a.advise(work, ask.Search)
}

// OnePass returns what each step of one pass in the order of the plan, by one
// newton, adds to each bolt, and the share of the elastic error that remains
// after a repeat in that order, both nominal. On large joints it takes as long
// as a pass.
func (a Answer) OnePass() (interaction [][]float64, leaves float64, err error) {
	order := a.Plan.Tighten.Order
	leaves, err = a.Nominal.Joint.Rate(order)
	return a.Nominal.Joint.Interaction(order), leaves, err
}

// advise compares other ways with the plan, if there are any, and decides.
func (a *Answer) advise(work procedure.Work, search bool) error {
	a.Advice = advice.Decide(a.Forecast.Case())
	if a.Targets != nil || !search && len(a.At) > mostCompared { // targets for one order say nothing about another
		return nil
	}
	c, err := ways.Compare(a.Model, a.Plan, a.Prediction, work, a.Forecast, search)
	if err != nil {
		return err
	}
	a.Comparison, a.Advice = &c, c.Advice
	return nil
}

// work predicts the requested passes, or those of the plan.
func (a *Answer) work(ask Question) (procedure.Work, error) {
	if len(ask.Shares) == 0 {
		runs, work, err := a.PredictPlan(a.Plan)
		if slices.ContainsFunc(a.Plan.Tighten.Stages, func(s plan.Stage) bool { return s.Do == plan.Wait }) {
			a.Notes = append(a.Notes, finding.Noted(WaitsLeftOut, nil))
		}
		a.Prediction = runs
		return work, err
	}
	work, err := a.hundred(ask.Target)
	if err != nil {
		return procedure.Work{}, err
	}
	for _, share := range ask.Shares {
		work.Passes = append(work.Passes, contact.ToForces(a.Plan.Tighten.Order, work.TargetsN, share))
	}
	a.Prediction, err = a.Predict(work.Passes, work.TargetsN)
	return work, err
}

// TargetUnknown reports a plan without a preload of which to take shares.
const TargetUnknown finding.Code = "forecast target unknown"

// hundred returns the force that means 100 %, by fastener, and its origin. If
// the plan ends with an angle it is the mean of the kind, at most its yield
// load.
func (a *Answer) hundred(target unit.Force) (procedure.Work, error) {
	if target > 0 {
		targets := slices.Repeat([]float64{float64(target)}, len(a.Plan.Joint.Fasteners))
		return procedure.Work{TargetsN: targets, Hundreds: []procedure.Hundred{{By: procedure.ByStatedForce}}}, nil
	}
	if len(a.Plan.Tighten.Stages) == 0 {
		return procedure.Work{}, finding.Failed(TargetUnknown, nil)
	}
	work, targets, err := ends(a.Plan, a.Model)
	if err != nil {
		return procedure.Work{}, err
	}
	made := procedure.Work{TargetsN: targets, Hundreds: work.Hundreds}
	if slices.Contains(work.TargetsN, 0) {
		made.TargetsN, made.Hundreds = procedure.AtMostYield(a.Plan, targets, work.Hundreds)
	}
	return made, nil
}

// ends returns the work of a plan and the forces that mean 100 %: by the last
// torque, or after an angle by the result of the plan.
func ends(p plan.Plan, model prediction.Model) (work procedure.Work, targets []float64, err error) {
	work, err = procedure.WorkOf(p)
	if err != nil || !slices.Contains(work.TargetsN, 0) {
		return work, work.TargetsN, err
	}
	planned, _, err := model.PredictPlan(p)
	return work, planned.Nominal.TargetsN, err
}
