package contact

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
	"drawdown/sequence/tension/stiffness"
)

// coupled is a joint of n bolts in which each deflects by 1 under its own load
// and by rho under that of another.
func coupled(t *testing.T, n int, rho float64) *Joint {
	t.Helper()
	c := mat.NewSymDense(n, nil)
	for i := range n {
		for k := i; k < n; k++ {
			c.SetSym(i, k, rho)
		}
		c.SetSym(i, i, 0.75)
	}
	own := slices.Repeat([]stiffness.Resilience{0.25}, n)
	j, err := NewJoint(c, own)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// Passes are the same with the same bolts, the same action and the same force.
func TestSamePasses(t *testing.T) {
	t.Parallel()
	targets := []float64{100, 100, 100}
	all, other := ToForces([]int{0, 1, 2}, targets, 1), ToForces([]int{2, 0, 1}, targets, 1)
	turn := Pass{{Fastener: 0, Do: ByTravel}, {Fastener: 1, Do: ByTravel}, {Fastener: 2, Do: ByTravel}}
	for _, c := range []struct {
		name    string
		a, b    Pass
		bolts   bool
		figures bool
	}{
		{"another order", all, other, true, true}, {"a share", all, ToForces([]int{0, 1, 2}, targets, 0.99), true, false}, {"a hair", all, ToForces([]int{0, 1, 2}, targets, 1+0.9e-9), true, true}, {"two hairs", all, ToForces([]int{0, 1, 2}, targets, 1+2.1e-9), true, false},
		{"fewer bolts", all, all[:2], false, false}, {"an angle", all, turn, true, false}, {"two angles", turn, turn, true, true},
	} {
		if got := SameBolts(c.a, c.b); got != c.bolts {
			t.Errorf("%s: same bolts %v", c.name, got)
		}
		if got := SameFigures(c.a, c.b); got != c.figures {
			t.Errorf("%s: same figures %v", c.name, got)
		}
	}
	mixed := Pass{{Fastener: 0}, {Fastener: 1, Do: Out}}
	if !IsTorque(all) || IsTorque(turn) || IsTorque(mixed) {
		t.Error("what is a torque")
	}
	if got := ToForces([]int{1, 0}, []float64{100, 200}, 0.5); !slices.Equal(got, Pass{{Fastener: 1, ForceN: 100}, {Fastener: 0, ForceN: 50}}) {
		t.Errorf("%v", got)
	}
}

// Two bolts with a coupling ρ, by hand: the first loses ρ times the second's
// force; a repeat leaves ρ² of the error; each loses ρ/2 of its load in one
// pass on average.
func TestTwoBoltsByHand(t *testing.T) {
	t.Parallel()
	j := coupled(t, 2, 0.2)
	n := j.Loose()
	after, err := n.Work([]Pass{ToForces([]int{0, 1}, []float64{10, 10}, 1)}, []geometry.Point{{}, {X: 5}})
	if err != nil || math.Abs(after[0].ForcesN[0]-8) > 1e-12 || math.Abs(after[0].ForcesN[1]-10) > 1e-12 || after[0].LargestForceN != 10 || len(after[0].StepForcesN) != 2 || math.Abs(after[0].StepForcesN[0][0]-10) > 1e-12 {
		t.Errorf("%+v, %v", after, err)
	}
	// The part is compressed by 0.75 and 0.2 of 10 N first, a difference of
	// 5.5; then by 8 and 9.1.
	if math.Abs(after[0].LargestUnevenMm-5.5) > 1e-9 || math.Abs(after[0].LargestTiltMm-5.5) > 1e-9 || after[0].LargestWarpMm > 1e-9 {
		t.Errorf("uneven %g, tilt %g, warp %g", after[0].LargestUnevenMm, after[0].LargestTiltMm, after[0].LargestWarpMm)
	}
	if got, err := j.Rate([]int{0, 1}); err != nil || math.Abs(got-0.04) > 1e-12 {
		t.Errorf("rate %g, %v", got, err)
	}
	if got := j.Sensitivity(); math.Abs(got-0.1) > 1e-12 {
		t.Errorf("sensitivity %g", got)
	}
	if got := j.Interaction([]int{1, 0}); math.Abs(got[0][1]+0.2) > 1e-12 || got[0][0] != 1 || got[1][0] != 0 || got[1][1] != 1 {
		t.Errorf("interaction %v", got)
	}
	if got := j.ClosureMm([]float64{10, 20}); math.Abs(got[0]-11.5) > 1e-12 || math.Abs(got[1]-17) > 1e-12 {
		t.Errorf("closure %v", got)
	}
	if got := j.TravelMm([]float64{10, 20}); math.Abs(got[0]-14) > 1e-12 || math.Abs(got[1]-22) > 1e-12 {
		t.Errorf("travel %v", got)
	}
}

// Two bolts in contact, by hand: the inverse of 1 and 0.2 is 1/0.96 and
// -0.2/0.96. Turning a nut further adds that much; turning it back too far
// releases it.
func TestTurnsByHand(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		travel float64
		want   [2]float64
	}{{0.96, [2]float64{11, 9.8}}, {-0.96, [2]float64{9, 10.2}}, {0, [2]float64{10, 10}}, {-9.5, [2]float64{10 - 9.5/0.96, 10 + 1.9/0.96}}, {-12, [2]float64{0, 12}}, {47, [2]float64{10 + 47/0.96, 10 - 9.4/0.96}}, {60, [2]float64{72, 0}}} {
		n := coupled(t, 2, 0.2).Loose()
		for range 40 { // until both are equal
			for i := range 2 {
				if err := n.Tighten(i, 10); err != nil {
					t.Fatal(err)
				}
			}
		}
		if err := n.Advance(0, c.travel); err != nil || math.Abs(n.Forces()[0]-c.want[0]) > 1e-6 || math.Abs(n.Forces()[1]-c.want[1]) > 1e-6 {
			t.Errorf("turned by %g: %v, want %v, %v", c.travel, n.Forces(), c.want, err)
		}
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1)} {
		if j, err := NewJoint(mat.NewSymDense(1, []float64{bad}), []stiffness.Resilience{1}); err == nil || j != nil {
			t.Errorf("a compliance of %g is taken", bad)
		}
	}
}

// A wrench does not turn a nut that has its force, or that lacks no more than
// Stick.
func TestClicks(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		stick, target, want float64
	}{{0, 8, 8}, {0, 7.9, 8}, {0, 8.1, 8.1}, {0.05, 8.4, 8}, {0.05, 8.43, 8.43}, {0.05, 5, 8}} {
		n := coupled(t, 2, 0.2).Loose()
		n.Stick = c.stick
		if err := n.Do(Action{Fastener: 0, ForceN: 8}); err != nil {
			t.Fatal(err)
		}
		if err := n.Do(Action{Fastener: 0, ForceN: c.target}); err != nil || math.Abs(n.Forces()[0]-c.want) > 1e-9 {
			t.Errorf("%+v: %v, %v", c, n.Forces(), err)
		}
	}
	n := coupled(t, 2, 0.2).Loose()
	for name, step := range map[string]Action{"no target": {}, "endless": {ForceN: math.Inf(1)}, "no fastener": {Fastener: 2, ForceN: 1}, "before the first": {Fastener: -1, ForceN: 1}, "endless travel": {Do: ByTravel, TravelMm: math.Inf(-1)}, "no travel": {Do: ByTravel, TravelMm: math.NaN()}, "no deed": {Do: Out + 1}} {
		if err := n.Do(step); err == nil {
			t.Errorf("%s is done", name)
		}
	}
	for name, own := range map[string]stiffness.Resilience{"below 0": -1, "endless": stiffness.Resilience(math.Inf(1)), "no number": stiffness.Resilience(math.NaN())} {
		if _, err := NewJoint(mat.NewSymDense(1, []float64{1}), []stiffness.Resilience{own}); err == nil {
			t.Errorf("a bolt that gives way by %s is taken", name)
		}
	}
	if err := coupled(t, 2, 0.2).CheckTargets([]float64{1}); err == nil {
		t.Error("a target is missing")
	}
	for _, target := range []float64{0, -1, math.Inf(1), math.NaN()} {
		if err := coupled(t, 2, 0.2).CheckTargets([]float64{1, target}); err == nil {
			t.Errorf("a target of %g", target)
		}
	}
}

// The factor gives the same solution as the library, extended and cut again,
// short and long.
func TestFactorBesideTheLibrary(t *testing.T) {
	t.Parallel()
	const n = 20
	j := coupled(t, n, 0.1)
	for i := range n { // different rows
		for k := range n {
			j.whole[i][k] *= 1 + 0.02*math.Sin(float64(i*k))
			j.whole[k][i] = j.whole[i][k]
		}
	}
	for _, order := range [][]int{{3}, {3, 1, 7}, {19, 0, 4, 8, 2, 6, 10, 12, 14, 16, 18, 1}, identity(n)} {
		x, dense, right := make([]float64, len(order)), mat.NewDense(len(order), len(order), nil), mat.NewVecDense(len(order), nil)
		for a, i := range order {
			x[a] = float64(a%5) - 1.5
			right.SetVec(a, x[a])
			for b, k := range order {
				dense.Set(a, b, j.whole[i][k])
			}
		}
		var want mat.VecDense
		if err := want.SolveVec(dense, right); err != nil {
			t.Fatal(err)
		}
		f := j.factorIn(order)
		f.solve(x)
		for a := range x {
			if math.Abs(x[a]-want.AtVec(a)) > 1e-9 {
				t.Errorf("%v: %v, want %v", order, x, want.RawVector().Data)
				break
			}
		}
	}
}

// The closed forms are for torques over all bolts that keep a force; otherwise
// the step-by-step work gives the result.
func TestOutcomeByBothWays(t *testing.T) {
	t.Parallel()
	at := geometry.Circle(4, 100, geometry.Point{}, 0, true)
	alike := []float64{10, 10, 10, 10}
	once := ToForces([]int{0, 2, 1, 3}, alike, 1)
	for _, c := range []struct {
		name   string
		rho    float64
		passes []Pass
		closed bool
	}{
		{"one pass", 0.2, []Pass{once}, true}, {"two", 0.2, []Pass{ToForces([]int{0, 2, 1, 3}, alike, 0.5), once}, true}, {"a repeat", 0.2, []Pass{once, once}, true}, {"over some", 0.2, []Pass{once, once[:2]}, false},
		{"an angle", 0.2, []Pass{once, {{Fastener: 0, Do: ByTravel, TravelMm: 0.1}, {Fastener: 1, Do: ByTravel, TravelMm: 0.1}, {Fastener: 2, Do: ByTravel, TravelMm: 0.1}, {Fastener: 3, Do: ByTravel, TravelMm: 0.1}}}, false},
		{"a bolt goes slack", 0.6, []Pass{ToForces([]int{0, 2, 1, 3}, []float64{1, 10, 10, 10}, 1)}, false},
	} {
		j := coupled(t, 4, c.rho)
		p := NewPasser(j)
		p.watch = true
		if got := p.passes(c.passes); got != c.closed {
			t.Errorf("%s: closed forms %v", c.name, got)
		}
		forces, uneven, ok := p.Outcome(c.passes, at)
		after, err := j.Loose().Work(c.passes, at)
		if err != nil || !ok {
			t.Fatal(c.name, err)
		}
		want, most := after[len(after)-1].ForcesN, 0.0
		for _, a := range after {
			most = max(most, a.LargestUnevenMm)
		}
		if !slices.EqualFunc(forces, want, func(a, b float64) bool { return math.Abs(a-b) < 1e-9 }) || math.Abs(uneven-most) > 1e-9 {
			t.Errorf("%s: %v, uneven %g; step by step %v, %g", c.name, forces, uneven, want, most)
		}
	}
	if _, _, ok := NewPasser(coupled(t, 4, 0.2)).Outcome([]Pass{{{Fastener: 9, ForceN: 1}}}, at); ok {
		t.Error("a bolt that is not there is tightened")
	}
	if _, _, ok := NewPasser(coupled(t, 4, 0.2)).Outcome(nil, at); ok {
		t.Error("no pass leaves something")
	}
}
