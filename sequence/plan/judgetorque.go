package plan

import (
	"fmt"
	"math"
	"slices"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
)

// leastShare is the share of its yield stress below which a bolt is hardly
// tightened at all, so that the unit is probably another one (common practice,
// no source: cover bolts in plastic take about a tenth).
const leastShare = 0.02

// judgeTorques doubts torques that take the bolt past yield. A figure that
// stands in several stages is doubted once.
func (j *judge) judgeTorques() {
	var judged []unit.Torque
	for i, s := range j.stages {
		if s.Do != Tighten || slices.Contains(judged, s.Torque.Nm()) {
			continue
		}
		judged = append(judged, s.Torque.Nm())
		r, err := screw.AtTorque(j.bolt, s.Torque.Nm())
		if err != nil {
			continue
		}
		least, most := shares(r)
		switch {
		case least > 1:
			j.overYield(s, r, least)
			j.tooMuch = append(j.tooMuch, s.Torque.Nm())
		case r.Nominal.YieldShare > 1 && !j.strong:
			j.nearYield(s, r)
		case most < leastShare && j.isFinal(i) && !j.strong:
			j.hardlyAny(s, r)
		}
		// A torque over yield brings no more preload than the yield stress does.
		j.bears(r.Nominal.Preload / unit.Force(max(r.Nominal.YieldShare, 1)))
	}
}

// bears records the preload that the bolt reaches, where its class is known.
func (j *judge) bears(preload unit.Force) {
	if !j.strong {
		j.preload = max(j.preload, preload)
	}
}

// shares gives the least and the most of the yield stress used over the span of
// friction.
func shares(r screw.Result) (least, most float64) {
	least = min(r.Low.YieldShare, r.Nominal.YieldShare, r.High.YieldShare)
	most = max(r.Low.YieldShare, r.Nominal.YieldShare, r.High.YieldShare)
	return least, most
}

// isFinal says whether nothing but this torque tightens the kind in the end.
// After a slackening a small torque may be meant: bearings are set so.
func (j *judge) isFinal(stage int) bool {
	torque := j.stages[stage].Torque.Nm()
	return !slices.ContainsFunc(j.stages, func(s Stage) bool { return s.Do == BackOff }) &&
		!slices.ContainsFunc(j.stages[stage+1:], func(s Stage) bool { return s.Do == Advance || s.Torque.Nm() > torque })
}

func (j *judge) overYield(s Stage, r screw.Result, least float64) {
	says := fmt.Sprintf("is %s what brings %s to yield (%s)", times(s, r), j.name(), j.yieldTorques(s, r))
	if least > j.breakingShare() {
		says += ": the bolt or its thread fails before that"
	}
	j.doubt(s.Number, AboutTorque, s.Torque.String(), says, "the figure and its unit")
}

func (j *judge) nearYield(s Stage, r screw.Result) {
	j.doubt(s.Number, AboutTorque, s.Torque.String(), fmt.Sprintf("may well take %s past yield (%s)",
		j.name(), j.yieldTorques(s, r)), "the figure, the class and the lubricant")
}

func (j *judge) hardlyAny(s Stage, r screw.Result) {
	j.doubt(s.Number, AboutTorque, s.Torque.String(), fmt.Sprintf("is under %.0f %% of what brings %s to yield (%s): the joint stays all but loose",
		leastShare*100, j.name(), j.yieldTorques(s, r)), "the figure and its unit")
}

// breakingShare is the share of the yield stress at which the bolt breaks;
// where only one stress is stated, that of class 12.9 over its yield stress.
func (j *judge) breakingShare() float64 {
	if j.strength.Tensile <= j.strength.Yield {
		return 1220. / 1100. // ISO 898-1, table 3
	}
	return float64(j.strength.Tensile / j.strength.Yield)
}

// times compares a torque with the one that brings the bolt to yield.
func times(s Stage, r screw.Result) string {
	ratio := float64(s.Torque.Nm() / r.Nominal.FullTorque)
	switch {
	case ratio < 1.5:
		return "more than"
	case ratio < 9.5:
		return fmt.Sprintf("about %g times", math.Round(ratio*2)/2)
	}
	return fmt.Sprintf("some %.0f times", ratio)
}

// yieldTorques gives the span of torques that bring the bolt to yield, in the
// unit of the stage, and what it rests on.
func (j *judge) yieldTorques(s Stage, r screw.Result) string {
	low := min(r.Low.FullTorque, r.Nominal.FullTorque, r.High.FullTorque).OnScale(s.Torque.Unit)
	high := max(r.Low.FullTorque, r.Nominal.FullTorque, r.High.FullTorque).OnScale(s.Torque.Unit)
	span := high.String()
	if low != high {
		span = fmt.Sprintf("%g to %s", low.Value, high)
	}
	return fmt.Sprintf("%s, %s, worked out", span, j.friction())
}

// friction says what the bolt turns against.
func (j *judge) friction() string {
	switch {
	case j.bolt.Friction != nil:
		return "friction as stated"
	case j.bolt.Lubricant != "":
		return "lubricant " + j.bolt.Lubricant
	}
	return "oiled to dry"
}
