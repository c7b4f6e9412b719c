package contact

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/checktest"
	"drawdown/sequence/tension/stiffness"
)

// drawnJoint is a random joint: M = A·Aᵀ + diag, as for any real one.
func drawnJoint(t *rapid.T, coupled float64) *Joint {
	n := rapid.IntRange(2, 7).Draw(t, "bolts")
	a := mat.NewDense(n, n, nil)
	own := make([]stiffness.Resilience, n)
	for i := range n {
		own[i] = stiffness.Resilience(rapid.Float64Range(0.5, 2).Draw(t, "own"))
		for k := range n {
			a.Set(i, k, coupled*rapid.Float64Range(-0.5, 1).Draw(t, "a"))
		}
	}
	var c mat.SymDense
	c.SymOuterK(1, a)
	j, err := NewJoint(&c, own)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func drawnOrder(t *rapid.T, n int) []int {
	return rapid.Permutation(checktest.InTurn(n)).Draw(t, "order")
}

// First principles: F ≥ 0, g = M·F − u ≥ 0, F·g = 0 after every step.
func TestContactHoldsAfterEveryStep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawnJoint(t, 2) // strongly coupled: bolts go slack
		nuts := j.Loose()
		for range rapid.IntRange(1, 25).Draw(t, "steps") {
			i := rapid.IntRange(0, j.Len()-1).Draw(t, "bolt")
			err := error(nil)
			switch rapid.IntRange(0, 5).Draw(t, "action") {
			case 0:
				err = nuts.Advance(i, rapid.Float64Range(-2, 3).Draw(t, "travel"))
			case 1:
				err = nuts.Remove(i)
			default:
				target := rapid.Float64Range(0.2, 2).Draw(t, "target")
				before := nuts.force[i]
				err = nuts.Tighten(i, target)
				if want := math.Max(before, target); !checktest.Near(nuts.force[i], want, 1e-9) {
					t.Fatalf("tightened to %g, has %g", want, nuts.force[i])
				}
			}
			if err != nil {
				t.Fatal(err)
			}
			checkContact(t, j, nuts)
		}
	})
}

func checkContact(t *rapid.T, j *Joint, nuts *Nuts) {
	for i, u := range j.TravelMm(nuts.force) {
		f, gap := nuts.force[i], u-nuts.travel[i]
		switch {
		case f < 0:
			t.Fatalf("bolt %d pushes: %g", i, f)
		case !nuts.runUp[i] && f != 0:
			t.Fatalf("bolt %d holds %g without its nut", i, f)
		case nuts.runUp[i] && f > 0 && !checktest.Near(gap, 0, 1e-8):
			t.Fatalf("bolt %d holds %g and stands %g off", i, f, gap)
		case nuts.runUp[i] && gap < -1e-8*math.Max(1, math.Abs(u)):
			t.Fatalf("nut %d stands %g inside the part", i, -gap)
		}
	}
}

// First principles: the forces for given travels do not depend on how the nuts
// got there (the problem has a unique solution).
func TestTravelsAloneDecideTheForces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawnJoint(t, 2)
		travel := make([]float64, j.Len())
		for i := range travel {
			travel[i] = rapid.Float64Range(0, 3).Draw(t, "travel")
		}
		var ends [2]*Nuts
		for e := range ends {
			ends[e] = j.Loose()
			for _, i := range drawnOrder(t, j.Len()) {
				if err := ends[e].turnTo(i, travel[i]); err != nil {
					t.Fatal(err)
				}
			}
		}
		for i := range travel {
			if !checktest.Near(ends[0].force[i], ends[1].force[i], 1e-8) {
				t.Fatalf("bolt %d holds %g or %g", i, ends[0].force[i], ends[1].force[i])
			}
		}
	})
}

// First principles: as long as no bolt goes slack, L⁻ᵀT equals the work step by
// step, Lᵀ is its inverse, the work of the wrench is the stored energy, and
// doubling the targets doubles everything.
func TestClosedFormsWhereNoBoltGoesSlack(t *testing.T) {
	held := 0
	rapid.Check(t, func(t *rapid.T) {
		j := drawnJoint(t, 0.4)
		order := drawnOrder(t, j.Len())
		targets, twice := make([]float64, j.Len()), make([]float64, j.Len())
		for i := range targets {
			targets[i] = rapid.Float64Range(0.9, 1.1).Draw(t, "target")
			twice[i] = 2 * targets[i]
		}
		forces, holds, err := j.onePass(order, targets)
		if err != nil {
			t.Fatal(err)
		}
		if !holds {
			return
		}
		held++
		nuts := j.Loose()
		work, err := nuts.tightened(stages(order, targets, 1))
		if err != nil {
			t.Fatal(err)
		}
		if energy := j.energyNmm(nuts.force); !checktest.Near(work, energy, 1e-12) {
			t.Fatalf("the wrench did %g, the joint holds %g", work, energy)
		}
		doubled, _, _ := j.onePass(order, twice)
		back, _ := j.onePassTargets(order, forces)
		for i := range forces {
			if !checktest.Near(nuts.force[i], forces[i], 1e-12) || !checktest.Near(doubled[i], 2*forces[i], 1e-12) || !checktest.Near(back[i], targets[i], 1e-12) {
				t.Fatalf("bolt %d: step by step %g, closed %g, doubled %g, back %g", i, nuts.force[i], forces[i], doubled[i], back[i])
			}
		}
		checkRepeat(t, j, order, targets, nuts)
	})
	if held == 0 {
		t.Error("no drawn joint kept all bolts in contact: nothing was checked")
	}
}

// checkRepeat performs a further pass by the closed form and step by step.
func checkRepeat(t *rapid.T, j *Joint, order []int, targets []float64, nuts *Nuts) {
	p := NewPasser(j)
	p.first(order, targets)
	again := p.again(order, targets)
	for _, i := range order {
		if err := nuts.Tighten(i, targets[i]); err != nil {
			t.Fatal(err)
		}
	}
	for i, f := range p.force {
		if again && !checktest.Near(f, nuts.force[i], 1e-11) {
			t.Fatalf("repeat, bolt %d: closed %g, step by step %g", i, f, nuts.force[i])
		}
	}
}

// First principles: passes at 100 % converge to the even joint, since each is a
// Gauss–Seidel sweep on a positive definite system; bolts that gained are not
// changed.
func TestRepeatsNeverLeaveABoltLow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawnJoint(t, 1)
		nuts := j.Loose()
		order := drawnOrder(t, j.Len())
		for range 3000 {
			for _, i := range order {
				if err := nuts.Tighten(i, 1); err != nil {
					t.Fatal(err)
				}
			}
		}
		if least := bounds.SpreadOf(nuts.force).Min; least < 1-1e-6 {
			t.Fatalf("after 3000 passes a bolt has %g", least)
		}
	})
}
