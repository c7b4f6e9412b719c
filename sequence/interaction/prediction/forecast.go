package prediction

import (
	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/limits"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/plan"
)

// Forecast is the force that the tightening of a plan leaves in each bolt, with
// all derived figures: a sheet or a picture uses them as they are and
// calculates nothing. Lists by fastener have one entry for each of
// plan.Joint.Fasteners, in that order; indices refer to it too.
//
// A Band is low, nominal, high: the least, the middle and the most over the
// possible stiffness of the gasket. Low is not always the soft gasket: bolts of
// a stiff cover gain. Draw the band, or its low end; never the middle alone.
//
// Figures are calculated by drawdown and must be marked so. A Forecast is
// immutable, and the same plan and setup give the same one.
type Forecast struct {
	Passes  []ForecastPass // in working order, at least one; waits are not included
	OnePass bounds.Spreads // if all were tightened to the target in a single pass, in the order of the plan

	Class  advice.Class // of the joint: by the worst bolt after the last pass, at the low end
	Lowest []int        // fasteners that end below 99.5 % at the low end, lowest first

	// OneMore is the joint after one more pass like the last. It is nil if the
	// last pass is not a torque over all bolts, so that "one more" has no
	// meaning.
	OneMore *ForecastPass
	// Repeats is the number of such passes until the joint is even with the
	// softest gasket (no bolt below 95 %, scatter a third of that of friction);
	// 0: none. -1: more than fifty, or unknown.
	Repeats int

	TargetsN           []bounds.Band       // by fastener, the force that means 100 %
	Hundreds           []procedure.Hundred // origin of that force, by kind
	FrictionSD         float64             // percent: typical scatter of the preload at a torque
	FoundationMPaPerMm bounds.Band         // gasket and counterpart, from soft to stiff
	PerLength          bool                // FoundationMPaPerMm is in N/mm², per millimetre of a row
	Sensitivity        bounds.Band         // mean share of its load that a bolt loses in one pass; negative for a gain

	// Doubts say where the joint or the work is outside the range of the model.
	// Each must be shown; none can be fixed in the file.
	Doubts []finding.Finding
	// Stated and Assumed are the facts about the joint on which the forecast is
	// based.
	Stated, Assumed []finding.Finding
	// Falls are stages without effect, which are also among the doubts.
	Falls []finding.Finding
	// Taken says which fastener took load from the lowest bolt; nil if the loss
	// is negligible.
	Taken *Taken
}

// ForecastPass is a pass and the state of the joint after it.
type ForecastPass struct {
	Number int         // from 1
	Stage  *plan.Stage // of the plan; nil for a pass to a share of the target
	Share  float64     // of the target, 0 to 1.2; 0 if it is not the same for all, and after an angle

	Turned  []bool        // by fastener: its bolt is in by the end of the pass. Draw the others empty
	Percent []bounds.Band // by fastener, of its final target; 0 if not tightened yet
	OfAim   []bounds.Band // by fastener, of the aim of the last pass that turned it; after an angle, of the kind's mean

	Spread bounds.Spreads // of Percent over the tightened bolts
	Lowest int            // fastener with the least OfAim at the low end

	// The worst values of the pass, at any step. Closure is the compression of
	// the clamped parts at a bolt. Tilt is the difference in closure across the
	// part of the best-fit plane, Warp the largest distance from that plane,
	// Uneven the largest closure minus the smallest.
	TiltMm, WarpMm, UnevenMm bounds.Band
	LargestN                 bounds.Band // force in any bolt
	WorstFrame               int         // index in Frames of the largest nominal unevenness

	Frames []Frame // one per step, the joint just after it; nil in OneMore
}

// Frame is the joint after one step: one picture of an animation.
type Frame struct {
	Fastener int           // turned in this step
	Turned   []bool        // by fastener
	Percent  []bounds.Band // by fastener, of its final target

	TiltMm, WarpMm, UnevenMm bounds.Band
}

// OnAngle lists the kinds whose last step is an angle.
func (f Forecast) OnAngle() []string { return procedure.OnAngle(f.Hundreds) }

// RepeatIsFelt reports whether a further pass at the same torque would turn any
// nut noticeably.
func (f Forecast) RepeatIsFelt() bool { return f.Last().Spread.Min.Low <= 100-limits.FeltPercent }

// Case is the input of the advice as long as nothing else was tried.
func (f Forecast) Case() advice.Case {
	return advice.Case{Class: f.Class, Falls: len(f.Falls) > 0, FrictionSD: f.FrictionSD, Repeats: max(0, f.Repeats), Hundreds: f.Hundreds}
}

// Last is the joint after the work.
func (f Forecast) Last() ForecastPass { return f.Passes[len(f.Passes)-1] }

// WorstPass is the index of the pass in which the part is most uneven.
func (f Forecast) WorstPass() int {
	worst := 0
	for n, pass := range f.Passes {
		if pass.UnevenMm.Nominal > f.Passes[worst].UnevenMm.Nominal {
			worst = n
		}
	}
	return worst
}

// ForecastOf calculates the tightening of a plan on its joint as stated.
func ForecastOf(p plan.Plan, stated setup.Setup) (Forecast, error) {
	m, err := ModelOf(p, stated)
	if err != nil {
		return Forecast{}, err
	}
	return m.ForecastOf(p)
}

// ForecastOf calculates the tightening of the model's plan.
func (m Model) ForecastOf(p plan.Plan) (Forecast, error) {
	prediction, work, err := m.PredictPlan(p)
	if err != nil {
		return Forecast{}, err
	}
	return m.Forecast(p, prediction, work)
}
