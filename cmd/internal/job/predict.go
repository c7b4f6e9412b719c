package job

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction"
	"drawdown/sequence/plan"
)

// PredictRequest is what is stated about a joint and the passes over it.
type PredictRequest struct {
	interaction.Setup
	Shares []float64  // of the target in each pass over all fasteners; none: the stages of the plan
	Target unit.Force // that stands for 100 % on every fastener; 0: by the stages of the plan
	Cap    float64    // on targets that make up for the loss, over the target; 0: no such targets
}

// PredictAnswer is what tightening leaves in each fastener, and what that means.
type PredictAnswer struct {
	Plan plan.Plan
	interaction.Model
	interaction.Prediction
	Passes      []PredictedPass
	Class       interaction.Class
	Sensitivity interaction.Band // mean share of its load that a bolt loses in one pass; below 0 it gains
	OnePass     SpreadBand       // all to the target in a single pass, in the order of the plan
	Repeat      *SpreadBand      // one more pass like the last; nil where that is no torque on all, or made up for the loss
	Repeats     int              // of the last pass until the joint is even, at the soft end; -1: more than fifty, or not known
	Targets     []float64        // of the last pass that make up for the loss, in N; nil: not asked for
	Cap         float64          // of Targets over the target
	Notes       []string
	Assumptions []string
}

// PredictedPass is a pass and how the joint stands after it.
type PredictedPass struct {
	Stage  *plan.Stage // of the plan; nil for a share of the target
	Share  float64     // of the target; 0 where it is not one for all, and after an angle
	RunUp  []int       // fasteners that have been turned by then
	Spread SpreadBand  // of those, in percent of the target
	// What part and bolts bear on the way, at any step of the pass.
	WarpMm, UnevenMm, LargestN interaction.Band
}

// SpreadBand sums up fasteners in percent of their targets, over the gasket's
// band.
type SpreadBand struct{ Min, Mean, Max, SD interaction.Band }

// Predict works a plan's tightening out on a model of its joint. The error says
// what is missing or does not fit, and what is allowed.
func Predict(p plan.Plan, ask PredictRequest) (PredictAnswer, error) {
	if f := ask.Flange; f != nil {
		if !onCircle(p.Joint.Points()) {
			return PredictAnswer{}, fmt.Errorf("a gasket ring belongs to a round flange; these fasteners do not lie on a circle")
		}
		f.Pair = !slices.ContainsFunc(p.Kinds, func(k plan.Kind) bool { return k.Into != "" })
	}
	model, err := interaction.ModelOf(p, ask.Setup)
	if err != nil {
		return PredictAnswer{}, err
	}
	if _, plate := model.Kernel.(interaction.Plate); ask.Strip > 0 && !plate {
		return PredictAnswer{}, fmt.Errorf("a gasket along the edge belongs to a plate or a cover; this joint is worked out as a row, a ring or separate caps")
	}
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
	a.passes(work)
	a.sayLoose()
	a.sayYield()
	if err := a.judge(work); err != nil {
		return PredictAnswer{}, err
	}
	a.Assumptions = onceEach(a.Assumptions)
	return a, nil
}

// onCircle says whether fasteners lie round a circle, within a fiftieth of its
// radius.
func onCircle(at []geometry.Point) bool {
	disc := geometry.Enclose(at)
	return len(at) > 2 && !slices.ContainsFunc(at, func(p geometry.Point) bool {
		return math.Abs(p.Distance(disc.Centre)-disc.Radius) > 0.02*disc.Radius
	})
}

// work predicts the passes that are asked for, or those of the plan.
func (a *PredictAnswer) work(ask PredictRequest) (interaction.PlanWork, error) {
	var err error
	if len(ask.Shares) == 0 {
		var work interaction.PlanWork
		if a.Prediction, work, err = a.PredictPlan(a.Plan); err == nil {
			a.sayTargets(work)
		}
		return work, err
	}
	targets, err := a.targets(ask)
	if err != nil {
		return interaction.PlanWork{}, err
	}
	work := interaction.PlanWork{TargetsN: targets}
	for _, share := range ask.Shares {
		work.Passes = append(work.Passes, interaction.ToForces(a.Plan.Tighten.Order, targets, share))
	}
	a.Prediction, err = a.Predict(work.Passes, targets)
	return work, err
}

// targets gives the force that stands for 100 %, by fastener.
func (a *PredictAnswer) targets(ask PredictRequest) ([]float64, error) {
	if ask.Target > 0 {
		return slices.Repeat([]float64{float64(ask.Target)}, len(a.Plan.Joint.Fasteners)), nil
	}
	if len(a.Plan.Tighten.Stages) == 0 {
		return nil, fmt.Errorf("the plan has no stage that tightens, so the preload is not known; state it, such as 30 kN")
	}
	work, err := interaction.WorkOf(a.Plan, a.Plan.Tighten)
	if err != nil {
		return nil, err
	}
	a.sayFriction()
	if !slices.Contains(work.TargetsN, 0) {
		return work.TargetsN, nil
	}
	planned, _, err := a.PredictPlan(a.Plan)
	if err != nil {
		return nil, err
	}
	a.Assumptions = append(a.Assumptions, "where the plan ends on an angle, 100 % is the mean preload that it gives the kind, assumed")
	return a.yielding(planned.Nominal.TargetsN), nil
}

// sayTargets tells what the targets rest on.
func (a *PredictAnswer) sayTargets(work interaction.PlanWork) {
	a.sayFriction()
	if slices.Contains(work.TargetsN, 0) {
		a.Notes = append(a.Notes, "after an angle 100 % is the mean of the kind at the end of the plan: how even the bolts are, not whether the angle is right")
	}
	if slices.ContainsFunc(a.Plan.Tighten.Stages, func(s plan.Stage) bool { return s.Do == plan.Wait }) {
		a.Notes = append(a.Notes, "waits change nothing here: how a gasket creeps is not in the model")
	}
}

// snugShare is the most that the first pass over a loose part should take
// (engineering judgement; 10 % is usual).
const snugShare = 0.5

// sayLoose warns where nothing brings the faces together before the bolts pull.
func (a *PredictAnswer) sayLoose() {
	if a.Passes[0].Share > snugShare {
		a.Notes = append(a.Notes, "no snug pass: bring all bolts to about 10 % first, or a loose part may see-saw, most of all from one end on")
	}
}

func (a *PredictAnswer) sayFriction() {
	a.Assumptions = append(a.Assumptions, "a torque gives the preload of the middle of its friction, in every pass, assumed")
}

// passes sums up the joint after each pass.
func (a *PredictAnswer) passes(work interaction.PlanWork) {
	turned := make([]bool, len(a.At))
	for n, pass := range work.Passes {
		made := PredictedPass{}
		if a.Targets == nil || n < len(work.Passes)-1 {
			made.Share = shareOf(pass, a.Nominal.TargetsN)
		}
		if n < len(work.Stages) {
			made.Stage = &a.Plan.Tighten.Stages[work.Stages[n]]
		}
		for _, step := range pass {
			turned[step.Fastener] = step.Do != interaction.Out
		}
		for i, is := range turned {
			if is {
				made.RunUp = append(made.RunUp, i)
			}
		}
		made.Spread = spreadOver(func(r interaction.Run) interaction.Spread { return spreadOf(r.Percent(n), made.RunUp) }, a.Prediction)
		made.WarpMm = a.over(func(r interaction.Run) float64 { return r.Passes[n].LargestWarpMm })
		made.UnevenMm = a.over(func(r interaction.Run) float64 { return r.Passes[n].LargestUnevenMm })
		made.LargestN = a.over(func(r interaction.Run) float64 { return r.Passes[n].LargestForceN })
		a.Passes = append(a.Passes, made)
	}
}

// over gives a figure over the gasket's band.
func (a *PredictAnswer) over(of func(interaction.Run) float64) interaction.Band {
	return over(of(a.Soft), of(a.Nominal), of(a.Stiff))
}

func over(soft, nominal, stiff float64) interaction.Band {
	return interaction.Band{Low: min(soft, nominal, stiff), Nominal: nominal, High: max(soft, nominal, stiff)}
}

func spreadOver(of func(interaction.Run) interaction.Spread, p interaction.Prediction) SpreadBand {
	s, n, t := of(p.Soft), of(p.Nominal), of(p.Stiff)
	return SpreadBand{over(s.Min, n.Min, t.Min), over(s.Mean, n.Mean, t.Mean), over(s.Max, n.Max, t.Max), over(s.SD, n.SD, t.SD)}
}

func spreadOf(percent []float64, fasteners []int) interaction.Spread {
	some := make([]float64, len(fasteners))
	for k, i := range fasteners {
		some[k] = percent[i]
	}
	return interaction.SpreadOf(some)
}

// shareOf is the share of the target that a pass takes, where it is one for all.
func shareOf(pass interaction.Pass, targets []float64) float64 {
	share := 0.0
	for k, step := range pass {
		one := step.ForceN / targets[step.Fastener]
		if step.Do != interaction.ToForce || k > 0 && math.Abs(one-share) > 1e-9 {
			return 0
		}
		share = one
	}
	return share
}

// Lowest lists the fasteners that end lowest, at most so many, and only those
// that end below so many percent of the target somewhere in the band.
func (a PredictAnswer) Lowest(most int, belowPercent float64) []int {
	last := len(a.Passes) - 1
	at := func(i int) interaction.Band { return a.Percent(last, i) }
	numbers := a.Plan.Tighten.Numbers()
	list := slices.DeleteFunc(slices.Clone(a.Passes[last].RunUp), func(i int) bool { return at(i).Low >= belowPercent })
	tied := func(i int) float64 { return math.Round(1e4 * at(i).Low) } // mirror images tie but for round-off
	slices.SortFunc(list, func(i, k int) int {
		return cmp.Or(cmp.Compare(tied(i), tied(k)), cmp.Compare(numbers[i], numbers[k]))
	})
	return list[:min(most, len(list))]
}
