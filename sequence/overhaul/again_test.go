package overhaul

import (
	"errors"
	"slices"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

func stage(number int, do plan.Action, nm float64, kinds ...string) plan.Stage {
	return plan.Stage{Number: number, Do: do, Torque: unit.GivenTorque{Value: nm}, Kinds: kinds}
}

// A joint is tightened once more unless an angle ended it, or its bolts are used once
// (common practice, no source).
func TestCheckAgain(t *testing.T) {
	t.Parallel()
	torque, angle := stage(1, plan.Tighten, 20, "main", "side"), stage(2, plan.Advance, 0, "main")
	for _, c := range []struct {
		name   string
		stages []plan.Stage
		reuse  plan.Reuse // of the side bolts
		want   error
		kinds  []string
	}{
		{"torques", []plan.Stage{torque}, "", nil, nil}, {"an angle at the end", []plan.Stage{torque, angle}, "", AgainAfterAngle, []string{"main"}}, {"a torque after the angle", []plan.Stage{angle, torque}, "", nil, nil},
		{"used once", []plan.Stage{torque}, plan.ReuseOnce, AgainUsedOnce, []string{"side"}}, {"both", []plan.Stage{torque, angle}, plan.ReuseOnce, AgainAfterAngle, []string{"main"}}, {"to be inspected", []plan.Stage{torque}, "inspect", nil, nil},
	} {
		p := plan.Plan{Kinds: []plan.Kind{{Name: "main"}, {Name: "side", Reuse: c.reuse}}, Tighten: plan.Side{Stages: c.stages}}
		err := CheckAgain(p)
		var f finding.Finding
		if !errors.Is(err, c.want) && (c.want != nil || err != nil) {
			t.Errorf("%s: %v", c.name, err)
		} else if c.want != nil && (!errors.As(err, &f) || !slices.Equal(f.Values["kinds"].([]string), c.kinds)) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// A check pass goes once round at a torque that is reached already.
func TestCheckPasses(t *testing.T) {
	t.Parallel()
	round := func(nm float64) plan.Stage {
		s := stage(2, plan.Tighten, nm, "main")
		s.Way = sequence.Circular
		return s
	}
	twenty := []plan.Stage{stage(1, plan.Tighten, 20, "main")}
	for _, c := range []struct {
		name    string
		earlier []plan.Stage
		s       plan.Stage
		want    bool
	}{
		{"the same torque", twenty, round(20), true}, {"less", twenty, round(19), true}, {"more", twenty, round(21), false}, {"the first", nil, round(20), false},
		{"crosswise", twenty, stage(2, plan.Tighten, 20, "main"), false}, {"an angle before", []plan.Stage{stage(1, plan.Advance, 90, "main")}, round(20), false},
	} {
		if got := isCheckPass(c.earlier, &c.s); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
	last := Task{Joint: &plan.Plan{Tighten: plan.Side{Stages: append(slices.Clone(twenty), round(20))}}, Again: "when warm"}
	first := Task{Joint: &plan.Plan{Tighten: plan.Side{Stages: []plan.Stage{{Number: 1, Do: plan.Wait}}}}}
	var got []string
	for _, c := range (Overhaul{Tasks: []Task{last, first}}).Checks() {
		switch {
		case c.Stage == nil:
			got = append(got, c.Again)
		default:
			got = append(got, string(c.Stage.Do))
		}
	}
	if !slices.Equal(got, []string{"wait", "torque", "when warm"}) { // built from the last to the first
		t.Errorf("checks %q", got)
	}
}

// What a task says of one side.
func TestRemark(t *testing.T) {
	t.Parallel()
	task := Task{Loosen: "mark it", Tighten: "oil it"}
	if task.Remark(plan.CautionLoosen) != "mark it" || task.Remark(plan.CautionTighten) != "oil it" {
		t.Errorf("%q, %q", task.Remark(plan.CautionLoosen), task.Remark(plan.CautionTighten))
	}
}

// A wrench has the least and the greatest torque of its kind, whatever their order.
func TestSpanOfAWrench(t *testing.T) {
	t.Parallel()
	j := Joint{Task: Task{Joint: &plan.Plan{Tighten: plan.Side{Stages: []plan.Stage{
		stage(1, plan.Tighten, 30, "main"), stage(2, plan.Tighten, 5, "side"), stage(3, plan.Tighten, 20, "main"), stage(4, plan.Tighten, 40, "main"), stage(5, plan.Advance, 0, "main"), stage(6, plan.BackOff, 1, "side"),
	}}}}}
	j.Plan = j.Task.Joint
	for kind, want := range map[string][2]float64{"main": {20, 40}, "side": {5, 5}, "none": {0, 0}} {
		w := Wrench{Joint: j, Kind: plan.Kind{Name: kind}}
		if w.settleTorque(); w.Low.Value != want[0] || w.High.Value != want[1] || w.Angle != (kind == "main") || w.Torque != (kind != "none") {
			t.Errorf("%s: %v to %v, angle %v", kind, w.Low, w.High, w.Angle)
		}
	}
}
