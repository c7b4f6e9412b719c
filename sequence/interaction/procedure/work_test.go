package procedure

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/plan"
	"drawdown/sequence/stages"
	"drawdown/sequence/tension/screw"
)

func kindOf(t *testing.T, name, size, class string, friction screw.Range) plan.Kind {
	t.Helper()
	th, err := thread.Parse(size)
	if err != nil {
		t.Fatal(err)
	}
	f := screw.Same(friction)
	return plan.Kind{Name: name, Thread: &th, Class: class, Friction: &f}
}

// twoKinds has two main bolts M10 and one side bolt M8, in the order main, side, main.
func twoKinds(t *testing.T, stages ...plan.Stage) plan.Plan {
	p := plan.Plan{Kinds: []plan.Kind{
		kindOf(t, "main", "M10", "10.9", screw.Between(0.12, 0.12)), kindOf(t, "side", "M8", "8.8", screw.Between(0.10, 0.14)), {Name: "unused"},
	}}
	for i, kind := range []string{"main", "side", "main"} {
		p.Joint.Fasteners = append(p.Joint.Fasteners, geometry.Fastener{ID: string(rune('A' + i)), Kind: kind})
	}
	for k, s := range stages {
		s.Number = k + 1
		for _, i := range []int{2, 1, 0} {
			if slices.Contains(s.Kinds, p.Joint.Fasteners[i].Kind) {
				s.Fasteners = append(s.Fasteners, i)
			}
		}
		p.Tighten.Stages = append(p.Tighten.Stages, s)
	}
	return p
}

func torque(v float64, kinds ...string) plan.Stage {
	return plan.Stage{Do: plan.Tighten, Torque: unit.GivenTorque{Value: v}, Kinds: kinds}
}

func turn(do plan.Action, deg unit.Angle, kinds ...string) plan.Stage {
	return plan.Stage{Do: do, Angle: deg, Kinds: kinds}
}

// A plan as passes: torques as preloads at nominal friction, angles as travels
// of the nut by the pitch (first principles: 1.5 mm for M10, a quarter of it
// for 90°), waits left out. 100 % is the greatest torque, or undefined after an
// angle.
func TestWorkOfAPlan(t *testing.T) {
	t.Parallel()
	p := twoKinds(t, torque(20, "main", "side"), plan.Stage{Do: plan.Wait}, torque(40, "main"), torque(30, "main"), turn(plan.BackOff, 180, "side"), torque(10, "side"), turn(plan.Advance, 90, "main"))
	w, err := WorkOf(p)
	if err != nil {
		t.Fatal(err)
	}
	if !slices.Equal(w.Stages, []int{0, 2, 3, 4, 5, 6}) || len(w.Passes) != 6 {
		t.Fatalf("passes of stages %v", w.Stages)
	}
	preload := func(kind int, nm float64) float64 {
		r, err := screw.AtTorque(p.Kinds[kind].Bolt(), unit.Torque(nm))
		if err != nil {
			t.Fatal(err)
		}
		return float64(r.Nominal.Preload)
	}
	want := []contact.Pass{
		{{Fastener: 2, Do: contact.ToForce, ForceN: preload(0, 20)}, {Fastener: 1, Do: contact.ToForce, ForceN: preload(1, 20)}, {Fastener: 0, Do: contact.ToForce, ForceN: preload(0, 20)}},
		{{Fastener: 2, Do: contact.ToForce, ForceN: preload(0, 40)}, {Fastener: 0, Do: contact.ToForce, ForceN: preload(0, 40)}},
		{{Fastener: 2, Do: contact.ToForce, ForceN: preload(0, 30)}, {Fastener: 0, Do: contact.ToForce, ForceN: preload(0, 30)}},
		{{Fastener: 1, Do: contact.ByTravel, TravelMm: -1.25 / 2}},
		{{Fastener: 1, Do: contact.ToForce, ForceN: preload(1, 10)}},
		{{Fastener: 2, Do: contact.ByTravel, TravelMm: 1.5 / 4}, {Fastener: 0, Do: contact.ByTravel, TravelMm: 1.5 / 4}},
	}
	for k := range want {
		if !slices.Equal(w.Passes[k], want[k]) {
			t.Errorf("pass %d: %+v, want %+v", k+1, w.Passes[k], want[k])
		}
	}
	if !slices.Equal(w.TargetsN, []float64{0, preload(1, 10), 0}) {
		t.Errorf("targets %v", w.TargetsN)
	}
	if len(w.Hundreds) != 2 || w.Hundreds[0] != (Hundred{Kind: "main", By: ByMeanAtAngle}) || w.Hundreds[1] != (Hundred{Kind: "side", By: ByLastTorque, Torque: unit.GivenTorque{Value: 10}}) {
		t.Errorf("hundreds %+v", w.Hundreds)
	}
	if !slices.Equal(OnAngle(w.Hundreds), []string{"main"}) || len(Taken(ByLastTorque, w.Hundreds)) != 1 || Taken(ByYieldLoad, w.Hundreds) != nil {
		t.Errorf("on an angle: %v", OnAngle(w.Hundreds))
	}
	w.Hundreds[1].ForceN = bounds.Band{Nominal: 7000}
	said := Say(w.Hundreds)
	if len(said) != 2 || said[1].Code != ByLastTorque || said[1].At.Kind != "side" || said[1].Values["force"] != unit.Force(7000) || said[1].Values["kind"] != "side" {
		t.Errorf("said %v", said)
	}
	if len(w.Falls) != 1 { // 30 after 40 N·m
		t.Errorf("falls %v", w.Falls)
	}
	// The lower torque is not 100 %.
	falls, err := WorkOf(twoKinds(t, torque(40, "main", "side"), torque(30, "main")))
	if err != nil || !slices.Equal(falls.TargetsN, []float64{preload(0, 40), preload(1, 40), preload(0, 40)}) {
		t.Errorf("after a fall: %v, %v", falls.TargetsN, err)
	}
	out, err := WorkOf(twoKinds(t, torque(40, "main", "side"), turn(plan.Remove, 0, "side"), turn(plan.TurnBack, 36, "main")))
	if err != nil || out.Passes[1][0] != (contact.Action{Fastener: 1, Do: contact.Out}) || math.Abs(out.Passes[2][0].TravelMm+0.15) > 1e-12 || !slices.Equal(out.TargetsN, []float64{0, 0, 0}) {
		t.Errorf("out and back: %+v, %v", out, err)
	}
}

// What a kind lacks is reported with its name.
func TestWhatWorkLacks(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		stage plan.Stage
		spoil func(*plan.Kind)
		want  error
	}{
		"thread for a torque": {torque(20, "main"), func(k *plan.Kind) { k.Thread = nil }, ThreadUnknown},
		"thread for an angle": {turn(plan.Advance, 90, "main"), func(k *plan.Kind) { k.Thread = nil }, PitchUnknown},
		"friction":            {torque(20, "main"), func(k *plan.Kind) { f := screw.Same(screw.Between(-1, -1)); k.Friction = &f }, PreloadUnknown},
	} {
		p := twoKinds(t, c.stage)
		c.spoil(&p.Kinds[0])
		w, err := WorkOf(p)
		if !errors.Is(err, c.want) || w.Passes != nil {
			t.Errorf("%s: %v, want %v", name, err, c.want)
		}
	}
	p := twoKinds(t, torque(20, "main"))
	p.Kinds[0].Class = "" // it does not affect torque and preload
	unknown, err := WorkOf(p)
	known, _ := WorkOf(twoKinds(t, torque(20, "main")))
	if err != nil || math.Abs(unknown.TargetsN[0]-known.TargetsN[0]) > 1e-9 || known.TargetsN[0] == 0 {
		t.Errorf("without a class %v, with one %v, %v", unknown.TargetsN, known.TargetsN, err)
	}
	if b, err := BoltOf(p.Kinds[0]); err != nil || b.Class != anyStrength || b.Thread.MajorMm != 10 {
		t.Errorf("%+v, %v", b, err)
	}
	if b, err := BoltOf(p.Kinds[1]); err != nil || b.Class != "8.8" {
		t.Errorf("%+v, %v", b, err)
	}
	if _, err := stepOf(plan.Stage{Do: plan.Wait}, p.Kinds[0]); err == nil {
		t.Error("a wait is a step")
	}
}

// A torque turns a nut if it is greater than any before; slackened bolts start
// again.
func TestReached(t *testing.T) {
	t.Parallel()
	so := reached{}
	for k, c := range []struct {
		kind  string
		stage plan.Stage
		want  bool
	}{
		{"main", torque(20), true}, {"main", torque(20), false}, {"main", torque(20 * (1 + 1e-10)), false}, {"main", torque(20 * (1 + 1e-8)), true}, {"side", torque(10), true}, {"main", torque(19), false},
		{"main", turn(plan.Advance, 90), false}, {"main", torque(19), false}, {"main", turn(plan.BackOff, 90), false}, {"main", torque(19), true}, {"main", turn(plan.TurnBack, 90), false}, {"main", torque(5), true},
		{"main", turn(plan.Remove, 0), false}, {"main", torque(4), true}, {"side", torque(9), false},
	} {
		if got := so.take(c.kind, c.stage); got != c.want {
			t.Errorf("step %d: %v", k, got)
		}
	}
}

// A target left open by an angle is the final mean of its kind.
func TestSettledTargets(t *testing.T) {
	t.Parallel()
	p := twoKinds(t)
	got, err := Work{TargetsN: []float64{0, 50, 0}}.SettleTargets(p, []float64{10, 7, 30})
	if err != nil || !slices.Equal(got, []float64{20, 50, 20}) {
		t.Errorf("%v, %v", got, err)
	}
	if got, err := (Work{TargetsN: []float64{0, 50, 0}}).SettleTargets(p, []float64{0, 7, 0}); !errors.Is(err, NothingHolds) || got != nil {
		t.Errorf("nothing is left: %v, %v", got, err)
	}
}

// The last pass can be repeated if it is a torque over all, as in the plan.
func TestCanRepeat(t *testing.T) {
	t.Parallel()
	all := contact.ToForces([]int{1, 0, 2}, []float64{1, 1, 1}, 1)
	falls := twoKinds(t, torque(40, "main", "side"), torque(30, "main"))
	for name, c := range map[string]struct {
		w    Work
		want bool
	}{
		"a torque over all": {Work{Passes: []contact.Pass{all}, TargetsN: []float64{1, 1, 1}}, true},
		"nothing":           {Work{TargetsN: []float64{1, 1, 1}}, false},
		"compensated":       {Work{Passes: []contact.Pass{all}, TargetsN: []float64{1, 1, 1}, Compensated: true}, false},
		"over some":         {Work{Passes: []contact.Pass{all, all[:2]}, TargetsN: []float64{1, 1, 1}}, false},
		"over all last":     {Work{Passes: []contact.Pass{all[:2], all}, TargetsN: []float64{1, 1, 1}}, true},
		"an angle":          {Work{Passes: []contact.Pass{byTravels([]int{0, 1, 2}, 1)}, TargetsN: []float64{1, 1, 1}}, false},
		"a stage falls":     {Work{Passes: []contact.Pass{all}, TargetsN: []float64{1, 1, 1}, Falls: stages.TorquesFall(falls)}, false},
	} {
		if got := c.w.CanRepeat(); got != c.want {
			t.Errorf("%s: %v", name, got)
		}
	}
}

// The yield force is the yield stress times the stress area: ISO 898-1 has 940 MPa for
// class 10.9 and 58.0 mm² for M10.
func TestYieldForce(t *testing.T) {
	t.Parallel()
	p := twoKinds(t)
	yield := YieldN(p.Kinds[0])
	if math.Abs(yield/(940*57.99)-1) > 0.001 {
		t.Errorf("yield force %g N", yield)
	}
	for name, spoil := range map[string]func(*plan.Kind){"class": func(k *plan.Kind) { k.Class = "" }, "thread": func(k *plan.Kind) { k.Thread = nil }, "a known class": func(k *plan.Kind) { k.Class = "7.3" }} {
		k := p.Kinds[0]
		if spoil(&k); YieldN(k) != 0 {
			t.Errorf("without %s: %g N", name, YieldN(k))
		}
	}
	side := YieldN(p.Kinds[1])
	for _, c := range []struct {
		forces []float64
		want   []string
	}{
		{[]float64{yield, side, yield}, nil}, {[]float64{yield, side, yield + 1}, []string{"main"}}, {[]float64{side + 1, side + 1, 0}, []string{"side"}}, {[]float64{yield + 1, side + 1, yield + 1}, []string{"main", "side"}},
	} {
		var got []string
		for _, k := range BeyondYield(p, c.forces) {
			got = append(got, k.Name)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%v: beyond yield %v, want %v", c.forces, got, c.want)
		}
	}
	own, list := []float64{yield + 5, side - 1, yield - 5}, []Hundred{{Kind: "main", By: ByMeanAtAngle}, {Kind: "side", By: ByLastTorque}}
	targets, hundreds := AtMostYield(p, own, list)
	if !slices.Equal(targets, []float64{yield, side - 1, yield}) || hundreds[0].By != ByYieldLoad || hundreds[1].By != ByLastTorque || own[0] != yield+5 || list[0].By != ByMeanAtAngle {
		t.Errorf("%v, %+v", targets, hundreds)
	}
}

// Four standard deviations are the range of the preload over that of friction;
// a single figure has the usual 10 %; kinds that end on an angle do not affect
// the reported figure.
func TestFrictionOfAPlan(t *testing.T) {
	t.Parallel()
	p := twoKinds(t, torque(20, "main", "side"))
	r, err := screw.AtTorque(p.Kinds[1].Bolt(), 1)
	if err != nil {
		t.Fatal(err)
	}
	sd := 100 * float64(r.Low.Preload-r.High.Preload) / float64(r.Nominal.Preload) / 4
	f := FrictionOf(p)
	if f.Usual || !slices.EqualFunc(f.ByFastener, []float64{10, sd, 10}, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }) || math.Abs(f.SDPercent-(20+sd)/3) > 1e-9 || sd < 1 {
		t.Errorf("%+v, side %g", f, sd)
	}
	if said := f.Says(); said.Code != FrictionSpans || said.Values["sd"] != f.SDPercent {
		t.Errorf("%v", said)
	}
	if f := FrictionOf(twoKinds(t, torque(20, "main", "side"), turn(plan.Advance, 90, "main"))); math.Abs(f.SDPercent-sd) > 1e-9 {
		t.Errorf("main ends on an angle: %+v", f)
	}
	if f := FrictionOf(twoKinds(t, torque(20, "main", "side"), turn(plan.Advance, 90, "main", "side"))); math.Abs(f.SDPercent-(20+sd)/3) > 1e-9 {
		t.Errorf("all end on an angle: %+v", f)
	}
	p.Joint.Fasteners = p.Joint.Fasteners[:1] // the kind with a range has none
	if f := FrictionOf(p); !f.Usual || f.SDPercent != 10 || f.Says().Code != FrictionUsual {
		t.Errorf("one figure alone: %+v", f)
	}
	wild := p.Kinds[1]
	span := screw.Same(screw.Between(0.02, 0.6))
	wild.Friction = &span
	if got := frictionSD(wild); got != 50 {
		t.Errorf("without any friction at one end: %g", got)
	}
	if got := frictionSD(plan.Kind{Name: "none"}); got != 0 {
		t.Errorf("no thread: %g", got)
	}
}

// Draws of friction, as shares of the nominal: the mean is one, the deviation
// as requested, none below a tenth. Percentiles by hand.
func TestDraws(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(3, 3))
	list := drawn(random, slices.Repeat([]float64{20}, 4000))
	spread := bounds.SpreadOf(list)
	if math.Abs(spread.Mean-1) > 0.01 || math.Abs(spread.SD-0.2) > 0.01 {
		t.Errorf("%+v", spread)
	}
	if wild := bounds.SpreadOf(drawn(random, slices.Repeat([]float64{200}, 400))); wild.Min != 0.1 {
		t.Errorf("the least is %g", wild.Min)
	}
	if still := drawn(random, []float64{0, 0}); !slices.Equal(still, []float64{1, 1}) {
		t.Errorf("no scatter: %v", still)
	}
	var hundred []float64
	for k := range 100 {
		hundred = append(hundred, float64((k*37)%100+1))
	}
	if got := usualSpan(hundred); got != (bounds.Band{Low: 5, Nominal: 50, High: 95}) {
		t.Errorf("%+v", got)
	}
}

// A wrench that turns nothing leaves the first pass unchanged, in every draw.
func TestScatterOfAWrenchThatSticks(t *testing.T) {
	t.Parallel()
	j := jointOf(t, [][]float64{{1, 0.3}, {0.3, 1}})
	pass := contact.ToForces([]int{0, 1}, []float64{1, 1}, 1)
	friction := FrictionScatter{SDPercent: []float64{5, 5}, Draws: 30, Seed: 2, Stick: 0.99}
	once, err := ScatterByFriction(j, []contact.Pass{pass}, []float64{1, 1}, friction)
	if err != nil {
		t.Fatal(err)
	}
	if twice, err := ScatterByFriction(j, []contact.Pass{pass, pass}, []float64{1, 1}, friction); err != nil || twice.SD != once.SD {
		t.Errorf("SD %g, then %g, %v", once.SD, twice.SD, err)
	}
	friction.Stick = 0
	if twice, _ := ScatterByFriction(j, []contact.Pass{pass, pass}, []float64{1, 1}, friction); twice.SD == once.SD {
		t.Error("a wrench that turns leaves the first pass as it is")
	}
}

// Both costs are relative to those of the usual order, with a minimum to avoid
// division by zero.
func TestBothCosts(t *testing.T) {
	t.Parallel()
	scatter := func(order []int) float64 { return []float64{2, 3, 0}[order[0]] }
	tilt := func(order []int) float64 { return []float64{0.5, 0.2, 0}[order[0]] }
	if got := Both(scatter, tilt, []int{0})([]int{1}); math.Abs(got-(1.5+0.4)) > 1e-12 {
		t.Errorf("%g", got)
	}
	if got := Both(scatter, tilt, []int{2})([]int{1}); math.Abs(got-(30+0.2e6)) > 1e-6 {
		t.Errorf("too even: %g", got)
	}
	if got, cost := Search([]int{2, 0, 1}, func(order []int) float64 { return float64(order[0]*10 + order[1]) }, 100); !slices.Equal(got, []int{0, 1, 2}) || cost != 1 {
		t.Errorf("%v, %g", got, cost)
	}
	tried := 0
	Search([]int{3, 2, 1, 0}, func([]int) float64 { tried++; return -float64(tried) }, 7)
	if tried != 8 { // the start, and seven more
		t.Errorf("%d orders were tried", tried)
	}
	trial := make([]int, 4)
	for _, c := range []struct {
		i, k int
		want []int
	}{{0, 3, []int{1, 2, 3, 0}}, {3, 0, []int{3, 0, 1, 2}}, {1, 2, []int{0, 2, 1, 3}}, {2, 2, []int{0, 1, 2, 3}}} {
		if move([]int{0, 1, 2, 3}, trial, c.i, c.k); !slices.Equal(trial, c.want) {
			t.Errorf("from %d to %d: %v", c.i, c.k, trial)
		}
	}
	count := 0
	neighbours(geometry.Count(4), trial, func() { count++ })
	if count != 4*3+4*3/2 {
		t.Errorf("%d neighbours", count)
	}
}

// A joint of two bolts with a coupling ρ: after one pass 1 - ρ of the first is
// left, which requires a repeat at each limit (first principles). For a joint
// that never becomes even, Repeats returns false.
func TestRepeatLimits(t *testing.T) {
	t.Parallel()
	one := []contact.Pass{contact.ToForces([]int{0, 1}, []float64{1, 1}, 1)}
	for _, c := range []struct {
		rho, friction float64
		want          int
	}{{0.049, 10, 0}, {0.051, 10, 1}, {0.045, 6.8, 0}, {0.045, 6.7, 1}, {0.0199, 0, 0}, {0.0201, 0, 1}} {
		j := jointOf(t, [][]float64{{1, c.rho}, {c.rho, 1}})
		count, enough, err := Repeats(j, one, []float64{1, 1}, c.friction, 0)
		if err != nil || !enough || count != c.want {
			t.Errorf("%+v: %d, %v, %v", c, count, enough, err)
		}
	}
	j := jointOf(t, [][]float64{{1, 0.999}, {0.999, 1}})
	if count, enough, err := Repeats(j, one, []float64{1, 1}, 0, 0); err != nil || enough || count != 50 {
		t.Errorf("never even: %d, %v, %v", count, enough, err)
	}
}
