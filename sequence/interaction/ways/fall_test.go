package ways_test

import (
	"slices"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/interaction/setup"
	"drawdown/sequence/plan"
	"drawdown/sequence/stages"
)

// First principles: a wrench set below the torque of a bolt clicks and turns
// nothing, so a lower last stage changes no force, no percentage and not the
// meaning of 100 %.
func TestATorqueThatFallsChangesNothing(t *testing.T) {
	p := builtin(t, "p4-manifold")
	own := forecast(t, p, setup.Setup{})
	fallen := p
	last := p.Tighten.Stages[len(p.Tighten.Stages)-1]
	last.Number++
	last.Torque = torque(t, "12 N·m")
	fallen.Tighten.Stages = append(slices.Clone(p.Tighten.Stages), last)
	f := forecast(t, fallen, setup.Setup{})
	for i, percent := range f.Last().Percent {
		if percent != own.Last().Percent[i] {
			t.Errorf("bolt %d: %v %%, without the stage %v %%", i, percent, own.Last().Percent[i])
		}
	}
	if f.OneMore != nil {
		t.Error("one more pass of a stage that does nothing is told of")
	}
	if len(own.Doubts) > 0 || len(f.Doubts) != 1 || f.Doubts[0].Code != stages.TorqueFalls || f.Doubts[0].Values["torque"] != last.Torque {
		t.Errorf("doubts %v, without the stage %v", f.Doubts, own.Doubts)
	}
	c := compared(t, fallen, setup.Setup{})
	if c.Advice.Branch != advice.MendFile || c.Advice.Best != 0 {
		t.Errorf("advice %+v", c.Advice)
	}
}

// After bolts are slackened a smaller torque turns them again; after an angle
// it does not, and the mean of the kind remains 100 %.
func TestWhereATorqueMayFall(t *testing.T) {
	p := builtin(t, "p4-manifold")
	high := p.Tighten.Stages[len(p.Tighten.Stages)-1]
	low, slack, angle := high, high, high
	low.Torque = torque(t, "12 N·m")
	slack.Do, slack.Angle = plan.BackOff, 360
	angle.Do, angle.Angle = plan.Advance, 30
	for name, one := range map[string]struct {
		stages []plan.Stage
		by     finding.Code
		falls  int
	}{
		"slackened":   {[]plan.Stage{high, slack, low}, procedure.ByLastTorque, 0},
		"turned on":   {[]plan.Stage{high, angle, low}, procedure.ByMeanAtAngle, 1},
		"told before": {[]plan.Stage{high, angle, high}, procedure.ByMeanAtAngle, 0},
		"repeated":    {[]plan.Stage{low, high, high}, procedure.ByLastTorque, 0},
	} {
		q := p
		q.Tighten.Stages = one.stages
		work, err := procedure.WorkOf(q)
		if err != nil {
			t.Fatal(err)
		}
		if len(work.Falls) != one.falls || work.Hundreds[0].By != one.by || (work.TargetsN[0] == 0) != (one.by == procedure.ByMeanAtAngle) {
			t.Errorf("%s: falls %v, 100 %% is %v, target %g", name, work.Falls, work.Hundreds, work.TargetsN[0])
		}
	}
}

func torque(t testing.TB, text string) unit.GivenTorque {
	t.Helper()
	v, err := unit.ParseTorque(text)
	if err != nil {
		t.Fatal(err)
	}
	return v
}
