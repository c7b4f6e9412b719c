package interaction

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"drawdown/geometry"
	"drawdown/sequence/tension/stiffness"
)

// drawnJoint is a random joint: M = A·Aᵀ + diag, which any real one is.
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
	return rapid.Permutation(identity(n)).Draw(t, "order")
}

func near(a, b, tolerance float64) bool {
	return math.Abs(a-b) <= tolerance*math.Max(1, math.Max(math.Abs(a), math.Abs(b)))
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
				if want := math.Max(before, target); !near(nuts.force[i], want, 1e-9) {
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
		case nuts.runUp[i] && f > 0 && !near(gap, 0, 1e-8):
			t.Fatalf("bolt %d holds %g and stands %g off", i, f, gap)
		case nuts.runUp[i] && gap < -1e-8*math.Max(1, math.Abs(u)):
			t.Fatalf("nut %d stands %g inside the part", i, -gap)
		}
	}
}

// First principles: the forces that belong to travels are the same however the
// nuts came there (the problem has one answer).
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
			if !near(ends[0].force[i], ends[1].force[i], 1e-8) {
				t.Fatalf("bolt %d holds %g or %g", i, ends[0].force[i], ends[1].force[i])
			}
		}
	})
}

// First principles: while no bolt goes slack, L⁻ᵀT is the work step by step,
// Lᵀ its inverse, the wrench's work is the energy stored, and doubled targets
// double all.
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
		for _, i := range order {
			if err := nuts.Tighten(i, targets[i]); err != nil {
				t.Fatal(err)
			}
		}
		doubled, _, _ := j.onePass(order, twice)
		back, _ := j.onePassTargets(order, forces)
		for i := range forces {
			if !near(nuts.force[i], forces[i], 1e-12) || !near(doubled[i], 2*forces[i], 1e-12) || !near(back[i], targets[i], 1e-12) {
				t.Fatalf("bolt %d: step by step %g, closed %g, doubled %g, back %g", i, nuts.force[i], forces[i], doubled[i], back[i])
			}
		}
		checkRepeat(t, j, order, targets, nuts)
		if work, energy := nuts.workNmm(), j.energyNmm(nuts.force); !near(work, energy, 1e-12) {
			t.Fatalf("the wrench did %g, the joint holds %g", work, energy)
		}
	})
	if held == 0 {
		t.Error("no drawn joint kept all bolts in contact: nothing was checked")
	}
}

// checkRepeat works a further pass by the closed form and step by step.
func checkRepeat(t *rapid.T, j *Joint, order []int, targets []float64, nuts *Nuts) {
	p := newPasser(j)
	p.first(order, targets)
	again := p.again(order, targets)
	for _, i := range order {
		if err := nuts.Tighten(i, targets[i]); err != nil {
			t.Fatal(err)
		}
	}
	for i, f := range p.force {
		if again && !near(f, nuts.force[i], 1e-11) {
			t.Fatalf("repeat, bolt %d: closed %g, step by step %g", i, f, nuts.force[i])
		}
	}
}

// First principles: passes at 100 % go to the even joint, since each is a
// Gauss–Seidel sweep on a positive definite system; bolts that gained stay.
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
		if least := SpreadOf(nuts.force).Min; least < 1-1e-6 {
			t.Fatalf("after 3000 passes a bolt has %g", least)
		}
	})
}

func drawnPlate(t *rapid.T) (Plate, []geometry.Point, float64) {
	box := geometry.Box{Max: geometry.Point{X: rapid.Float64Range(80, 200).Draw(t, "width"), Y: rapid.Float64Range(40, 120).Draw(t, "height")}}
	part := Part{70000, rapid.Float64Range(0, 0.4).Draw(t, "poisson"), mm(rapid.Float64Range(6, 30).Draw(t, "thickness"))}
	hole := geometry.Bore{Centre: geometry.Point{X: box.Max.X * 0.4, Y: box.Max.Y * 0.55}, Diameter: 25}
	var at []geometry.Point
	for range 4 {
		at = append(at, geometry.Point{X: box.Max.X * rapid.Float64Range(0, 1).Draw(t, "x"), Y: box.Max.Y * rapid.Float64Range(0, 1).Draw(t, "y")})
	}
	plate := Plate{RigidityNmm: part.RigidityNmm(), Poisson: part.Poisson, Box: box, Gasket: Bores([]geometry.Bore{hole}).not(), MeshMm: 12}
	return plate, at, rapid.Float64Range(20, 300).Draw(t, "foundation")
}

func (r Region) not() Region { return Region(nil).Without(r) }

// First principles: mirrored or turned by a quarter, a plate is the same one.
func TestMirroredPlate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plate, at, k := drawnPlate(t)
		w, h := plate.Box.Max.X, plate.Box.Max.Y
		straight, err := plate.Compliance(at, k)
		if err != nil {
			t.Fatal(err)
		}
		for name, turn := range map[string]func(geometry.Point) geometry.Point{
			"mirrored": func(p geometry.Point) geometry.Point { return geometry.Point{X: w - p.X, Y: p.Y} },
			"swapped":  func(p geometry.Point) geometry.Point { return geometry.Point{X: p.Y, Y: p.X} },
		} {
			other, gasket := plate, plate.Gasket
			other.Gasket = func(p geometry.Point) bool { return gasket(turn(p)) } // its own inverse
			if name == "swapped" {
				other.Box.Max = geometry.Point{X: h, Y: w}
			}
			var moved []geometry.Point
			for _, p := range at {
				q := turn(p) // round-off must not push a bolt over the edge
				moved = append(moved, geometry.Point{X: math.Max(0, math.Min(other.Box.Max.X, q.X)), Y: math.Max(0, math.Min(other.Box.Max.Y, q.Y))})
			}
			c, err := other.Compliance(moved, k)
			if err != nil {
				t.Fatal(err)
			}
			for i := range at {
				for n := range at {
					if math.Abs(c.At(i, n)-straight.At(i, n)) > 1e-8*straight.At(i, i) {
						t.Fatalf("%s: C %d %d is %g, straight %g", name, i, n, c.At(i, n), straight.At(i, n))
					}
				}
			}
		}
	})
}

// First principles: C(s·D, s·k) = C/s; and a plate in balance: an even load
// sinks evenly, so k ∫C dA = 1 for a plate on a full gasket.
func TestScaledPlate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plate, at, k := drawnPlate(t)
		s := rapid.Float64Range(0.1, 10).Draw(t, "scale")
		c, err := plate.Compliance(at, k)
		if err != nil {
			t.Fatal(err)
		}
		plate.RigidityNmm *= s
		scaled, err := plate.Compliance(at, s*k)
		if err != nil {
			t.Fatal(err)
		}
		for i := range at {
			for n := range at {
				if math.Abs(scaled.At(i, n)*s-c.At(i, n)) > 1e-9*c.At(i, i) {
					t.Fatalf("C %d %d: %g, scaled back %g", i, n, c.At(i, n), scaled.At(i, n)*s)
				}
			}
		}
	})
}

// First principles: bounds that say that every bolt keeps a force on the way are
// right, and the short way to the forces ends where the steps end.
func TestTheShortWayEndsWhereTheStepsEnd(t *testing.T) {
	short := 0
	rapid.Check(t, func(t *rapid.T) {
		j := drawnJoint(t, rapid.SampledFrom([]float64{0.5, 1, 2}).Draw(t, "coupled"))
		order, targets := drawnOrder(t, j.Len()), make([]float64, j.Len())
		for i := range targets {
			targets[i] = rapid.Float64Range(0.2, 2).Draw(t, "target")
		}
		p, steps := newPasser(j), newPasser(j)
		steps.watch = true
		holds, held := p.first(order, targets), steps.first(order, targets)
		if holds != held {
			t.Fatalf("every bolt keeps a force: %v; by the steps %v", holds, held)
		}
		for i := range targets {
			if holds && !near(p.force[i], steps.force[i], 1e-9) {
				t.Fatalf("bolt %d: %g, by the steps %g", i, p.force[i], steps.force[i])
			}
		}
		if j.factorInto(&p.factor, order); p.staysAbove(order, targets) {
			short++
		}
	})
	if short == 0 {
		t.Error("the bounds never told: the short way was not tried")
	}
}
