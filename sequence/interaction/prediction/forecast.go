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

// Forecast is what the tightening of a plan leaves in each bolt, worked out to
// the end: a sheet or a picture takes its figures as they stand and reckons
// nothing. Lists that are said to go by fastener have one entry for each of
// plan.Joint.Fasteners, in that order; indices point there too.
//
// A Band is low, nominal, high: the least, the middle and the most over what the
// gasket's stiffness may be. Low is not always the soft gasket: bolts of a stiff
// cover gain. Draw the band, or its low end; never the middle alone.
//
// It is worked out by drawdown and must be marked so. It does not change once
// made, and the same plan and setup give the same one.
type Forecast struct {
	Passes  []ForecastPass // in working order, at least one; a wait is none
	OnePass bounds.Spreads // were all brought to the target in a single pass, in the order of the plan

	Class  advice.Class // of the joint: the worst bolt after the last pass, at the low end
	Lowest []int        // fasteners that end below 99.5 % at the low end, the lowest first

	// OneMore is the joint after one more pass like the last. Nil where the last
	// pass is no torque over all bolts, so that nobody can say what that would be.
	OneMore *ForecastPass
	// Repeats is how many such passes it takes until the softest gasket is even
	// (no bolt below 95 %, scatter a third of that of friction); 0: none. -1: more
	// than fifty, or not known.
	Repeats int

	TargetsN           []bounds.Band       // by fastener, the force that stands for 100 %
	Hundreds           []procedure.Hundred // what that is, by kind
	FrictionSD         float64             // percent: the one figure for how the preload scatters at a torque
	FoundationMPaPerMm bounds.Band         // gasket and counterpart, from soft to stiff
	PerLength          bool                // FoundationMPaPerMm is in N/mm², for a millimetre of a row
	Sensitivity        bounds.Band         // mean share of its load that a bolt loses in one pass; below 0 it gains

	// Doubts say where the joint or the work leaves what the model can follow.
	// Each must be shown; none is for the file to mend.
	Doubts []finding.Finding
	// Stated and Assumed are the facts of the joint that it all rests on.
	Stated, Assumed []finding.Finding
	// Falls are stages that do nothing, each of which is among the doubts.
	Falls []finding.Finding
	// Taken is who took load from the lowest bolt; nil: nobody took what counts.
	Taken *Taken
}

// ForecastPass is a pass and how the joint stands after it.
type ForecastPass struct {
	Number int         // from 1
	Stage  *plan.Stage // of the plan; nil for a pass to a share of the target
	Share  float64     // of the target, 0 to 1.2; 0 where it is not one for all, and after an angle

	Turned  []bool        // by fastener: its bolt is in by the end of the pass. Draw the others empty
	Percent []bounds.Band // by fastener, of the target that it has in the end; 0 where not turned
	OfAim   []bounds.Band // by fastener, of what the last pass that turned it aimed at; after an angle, of the kind's mean

	Spread bounds.Spreads // of Percent over the bolts that are turned
	Lowest int            // fastener with the least OfAim at the low end

	// The worst of the pass, at any step. Closure is how far the clamped parts
	// come together at a bolt: Tilt is the difference of closure across the part
	// of the plane that fits best, Warp the largest distance from that plane, Uneven
	// the largest closure less the smallest.
	TiltMm, WarpMm, UnevenMm bounds.Band
	LargestN                 bounds.Band // force in any bolt
	WorstFrame               int         // of Frames: the one with the largest nominal unevenness

	Frames []Frame // one a step, the joint just after it; nil in OneMore
}

// Frame is the joint after one step: one picture of a film.
type Frame struct {
	Fastener int           // that was turned
	Turned   []bool        // by fastener
	Percent  []bounds.Band // by fastener, of the target that it has in the end

	TiltMm, WarpMm, UnevenMm bounds.Band
}

// OnAngle lists the kinds that an angle ends.
func (f Forecast) OnAngle() []string { return procedure.OnAngle(f.Hundreds) }

// RepeatIsFelt reports whether a further pass at the same torque would turn any
// nut, as far as a wrench tells.
func (f Forecast) RepeatIsFelt() bool { return f.Last().Spread.Min.Low <= 100-limits.FeltPercent }

// Case is what the advice is decided by as long as nothing else was tried.
func (f Forecast) Case() advice.Case {
	return advice.Case{Class: f.Class, Falls: len(f.Falls) > 0, FrictionSD: f.FrictionSD, Repeats: max(0, f.Repeats), Hundreds: f.Hundreds}
}

// Last is the joint as the work leaves it.
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

// ForecastOf works the tightening of a plan out on its joint as it is stated.
func ForecastOf(p plan.Plan, stated setup.Setup) (Forecast, error) {
	m, err := ModelOf(p, stated)
	if err != nil {
		return Forecast{}, err
	}
	return m.ForecastOf(p)
}

// ForecastOf works the tightening of the model's plan out.
func (m Model) ForecastOf(p plan.Plan) (Forecast, error) {
	prediction, work, err := m.PredictPlan(p)
	if err != nil {
		return Forecast{}, err
	}
	return m.Forecast(p, prediction, work)
}
