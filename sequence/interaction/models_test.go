package interaction

import (
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
	"drawdown/geometry/thread"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/stiffness"
)

func ring16(t testing.TB) *Joint {
	t.Helper()
	f := Flange{Part: Part{206000, 0.3, 42}, Outer: 515, Bore: 330, BoltCircle: 450, Pair: true}
	c, err := f.Compliance(circle16(450), 150)
	if err != nil {
		t.Fatal(err)
	}
	j, err := NewJoint(c, ownAlike(16, 1.03e-6))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// annulus is the flange pair of ring16 by finite elements.
func annulus() Plate {
	o := geometry.Point{}
	return Plate{
		RigidityNmm: Facing(Part{206000, 0.3, 42}.RigidityNmm(), Part{206000, 0.3, 42}.RigidityNmm()), Poisson: 0.3,
		Box:    geometry.Box{Min: geometry.Point{X: -257.5, Y: -257.5}, Max: geometry.Point{X: 257.5, Y: 257.5}},
		Part:   Circle(o, 515).Without(Circle(o, 330)),
		MeshMm: 10,
	}
}

// From the tables of the prototype behind testdata/checks.yaml: full-face
// flange, k 150, own 1.03e-6, C 0.696 and 0.210 µm/kN by finite elements; one
// pass round 80.2 / 90.5 / 100.0, SD 3.68, by the star 76.3 / 90.0 / 105.2, SD
// 12.58. They print one decimal of a point, and the bore of 330 mm is not stated
// there: 0.1 points.
func TestFullFaceFlange(t *testing.T) {
	m := must[*mat.SymDense](t)(annulus().Compliance(circle16(450), 150))
	if a, b := 1e6*m.At(0, 0), 1e6*m.At(0, 1); math.Abs(a-0.696) > 0.002 || math.Abs(b-0.210) > 0.002 {
		t.Errorf("C is %.4f and %.4f µm/kN, want 0.696 and 0.210", a, b)
	}
	j := must[*Joint](t)(NewJoint(m, ownAlike(16, 1.03e-6)))
	for _, c := range []struct {
		order []int
		want  Spread
	}{
		{identity(16), Spread{80.2, 90.5, 100, 3.68}},
		{[]int{0, 8, 4, 12, 2, 10, 6, 14, 1, 9, 5, 13, 3, 11, 7, 15}, Spread{76.3, 90.0, 105.2, 12.58}},
	} {
		forces, holds, err := j.onePass(c.order, alike(16, 100))
		if err != nil || !holds {
			t.Fatal(holds, err)
		}
		got := SpreadOf(forces)
		for _, pair := range [][2]float64{{got.Min, c.want.Min}, {got.Mean, c.want.Mean}, {got.Max, c.want.Max}, {got.SD, c.want.SD}} {
			if math.Abs(pair[0]-pair[1]) > 0.1 {
				t.Errorf("order %v: got %+v, want %+v", c.order, got, c.want)
			}
		}
	}
}

// First principles: a ring beam and an annular plate are two models of one
// flange. The ring cannot bend across its section. The prototype behind
// testdata/checks.yaml found it 6 to 12 % softer without a hub, which is stated
// to a percent; a wrong sign of an offset halves or doubles it.
func TestTheRingAgreesWithAnAnnularPlate(t *testing.T) {
	flange := raisedFace(t) // of case P06
	flange.PipeWall = 0
	plate, o := annulus(), geometry.Point{}
	plate.Part = Circle(o, float64(flange.Outer)).Without(Circle(o, float64(flange.Bore)))
	plate.Gasket = Circle(o, float64(flange.GasketOuter)).Without(Circle(o, float64(flange.GasketInner)))
	ring := must[*mat.SymDense](t)(flange.Compliance(circle16(450), 80))
	elements := must[*mat.SymDense](t)(plate.Compliance(circle16(450), 80))
	for i := range 2 {
		if ratio := ring.At(0, i) / elements.At(0, i); !(ratio > 1.055 && ratio < 1.125) {
			t.Errorf("C 0 %d of the ring is %.3f of the plate's, want 1.06 to 1.12", i, ratio)
		}
	}
}

// First principles: every neighbour is an order of the same bolts, n(n−1)/2
// swaps and n(n−1) moves.
func TestNeighboursAreOrders(t *testing.T) {
	order, trial, count := []int{3, 0, 4, 1, 2}, make([]int, 5), 0
	neighbours(order, trial, func() {
		count++
		if !slices.Equal(slices.Sorted(slices.Values(trial)), identity(5)) || slices.Equal(trial, order) {
			t.Errorf("%v is no other order", trial)
		}
	})
	if count != 10+20 {
		t.Errorf("%d neighbours, want 30", count)
	}
}

// First principles: compensation never slackens a nut.
func TestCompensationTurnsNoNutBack(t *testing.T) {
	nuts := fourBolts(t).Loose()
	for _, target := range []float64{2, 2} { // above what is wanted
		for i := range 4 {
			if err := nuts.Tighten(i, target); err != nil {
				t.Fatal(err)
			}
		}
	}
	before := nuts.travelsMm()
	must[[]float64](t)(nuts.Compensated(identity(4), alike(4, 1), math.Inf(1)))
	if !slices.Equal(before, nuts.travelsMm()) {
		t.Errorf("travels %v became %v", before, nuts.travelsMm())
	}
}

// First principles: turned on and back by the same angle, a bolt is where it
// was; the travel is the pitch for a full turn.
func TestPlanStages(t *testing.T) {
	m10 := plan.Kind{Name: "main", Thread: &thread.Thread{Name: "M10", MajorMm: 10, PitchMm: 1.5}}
	for do, want := range map[plan.Action]float64{plan.Advance: 0.375, plan.BackOff: -0.375, plan.TurnBack: -0.375} {
		step, err := stepOf(plan.Stage{Do: do, Angle: 90}, m10)
		if err != nil || step.Do != ByTravel || math.Abs(step.TravelMm-want) > 1e-12 {
			t.Errorf("%s: got %+v, %v, want %g mm", do, step, err, want)
		}
	}
	if _, err := stepOf(plan.Stage{Do: plan.Advance, Angle: 90}, plan.Kind{Name: "main"}); err == nil || !strings.Contains(err.Error(), "thread") {
		t.Errorf("an angle without a pitch: got %v", err)
	}
	if step, _ := stepOf(plan.Stage{Do: plan.Remove}, m10); step.Do != Out {
		t.Errorf("got %+v, want out", step)
	}
}

// First principles: the search only ever betters an order, keeps every bolt,
// and scatter by closed forms is that step by step.
func TestSearch(t *testing.T) {
	j := ring16(t)
	star := []int{0, 8, 4, 12, 2, 10, 6, 14, 1, 9, 5, 13, 3, 11, 7, 15}
	shares, targets := []float64{0.3, 0.7, 1}, alike(16, 100)
	work := inStages(targets, shares...)
	cost := j.Scatter(targets, work)
	after := must[[]AfterPass](t)(j.Loose().Work(work(star), circle16(450)))
	if got, want := cost(star), SpreadOf(after[2].ForcesN).SD; !(math.Abs(got-want) < 1e-9) {
		t.Errorf("scatter %g, step by step %g", got, want)
	}
	order, best := Search(star, cost, 100_000)
	if !(best < cost(star)) || math.Abs(best-cost(order)) > 1e-9 {
		t.Errorf("from %g to %g, which is %g", cost(star), best, cost(order))
	}
	sorted := slices.Sorted(slices.Values(order))
	if !slices.Equal(sorted, identity(16)) {
		t.Errorf("the order %v is none", order)
	}
	tilt := j.Tilt(circle16(450), work)
	most := 0.0
	for _, a := range after {
		most = math.Max(most, a.LargestUnevenMm)
	}
	if !(math.Abs(tilt(star)-most) < 1e-12) {
		t.Errorf("tilt %g, step by step %g", tilt(star), most)
	}
	// The closed forms do not hold for work that leaves bolts out or turns by
	// angle; then the steps are worked one by one.
	some := func(order []int) []Pass { return append(work(order)[:1], byTravels(order, 0.01), work(order)[2][:5]) }
	after = must[[]AfterPass](t)(j.Loose().Work(some(star), nil))
	if got, want := j.Scatter(targets, some)(star), SpreadOf(after[2].ForcesN).SD; !(math.Abs(got-want) < 1e-9) {
		t.Errorf("scatter of other work %g, step by step %g", got, want)
	}
	if both := Both(cost, tilt, star); math.Abs(both(star)-2) > 1e-12 {
		t.Errorf("both of the order that they are measured by is %g, want 2", both(star))
	}
	if !(tilt(star) < tilt(identity(16))) { // the prototype: 72 µm by the star, 88 round, at 200 kN
		t.Errorf("tilt by the star %g, round %g", tilt(star), tilt(identity(16)))
	}
}

// First principles: without friction scatter every draw is the elastic work;
// with it, a joint that hardly couples scatters as the friction does.
func TestFrictionScatter(t *testing.T) {
	j := infinitePlateHead(t)
	passes := stages(identity(10), alike(10, 100), 0.3, 1, 1)
	after := must[[]AfterPass](t)(j.Loose().Work(passes, nil))
	still := must[Scattered](t)(j.ScatterByFriction(passes, alike(10, 100), FrictionScatter{SDPercent: alike(10, 0), Draws: 3}))
	for i, b := range still.ByFastener {
		if want := after[2].ForcesN[i]; b.Low != b.High || math.Abs(b.Nominal-want) > 1e-9 {
			t.Errorf("fastener %d: got %v, want %v", i, b, want)
		}
	}
	f := FrictionScatter{SDPercent: alike(10, 10), Draws: 2000, Seed: 7}
	first := must[Scattered](t)(j.ScatterByFriction(passes, alike(10, 100), f))
	if math.Abs(first.SD-10) > 0.7 { // 3 standard errors of 10 SD from 20 000 draws are 0.15; the coupling adds some
		t.Errorf("SD %g %%, want about 10 %%", first.SD)
	}
	again := must[Scattered](t)(j.ScatterByFriction(passes, alike(10, 100), f))
	f.Seed++
	other := must[Scattered](t)(j.ScatterByFriction(passes, alike(10, 100), f))
	if again.SD != first.SD || other.SD == first.SD {
		t.Error("the same seed must give the same draws, another one others")
	}
}

// First principles, from F₁ = 1 − ρ^(2p−1): at ρ = 0.35 two passes leave 95.7 %,
// SD 2.1 %; three leave 99.5 %.
func TestRepeats(t *testing.T) {
	j := jointOf(t, [][]float64{{1, 0.35}, {0.35, 1}})
	for friction, want := range map[float64]int{10: 1, 0: 2} {
		count, enough, err := j.Repeats(stages([]int{0, 1}, alike(2, 1), 1), alike(2, 1), friction, 0)
		if err != nil || !enough || count != want {
			t.Errorf("friction %g %%: %d repeats (%v, %v), want %d", friction, count, enough, err, want)
		}
	}
}

func TestGasketNames(t *testing.T) {
	for _, g := range Gaskets() {
		if got, err := ParseGasket(strings.ToUpper(strings.ReplaceAll(string(g), "-", " "))); got != g || err != nil {
			t.Errorf("%s: got %q, %v", g, got, err)
		}
	}
	if _, err := ParseGasket("felt"); err == nil || !strings.Contains(err.Error(), "cork-rubber") {
		t.Errorf("got %v", err)
	}
	// First principles: k = p/(c·t): 34.5 MPa squeeze 1.5 mm by 10 %.
	if got := GasketMPaPerMm(34.5, 10, 1.5); math.Abs(got-230) > 1e-9 {
		t.Errorf("got %g MPa/mm, want 230", got)
	}
}

// First principles: a region cut out of a square leaves the rest of its area;
// pieces do not act on each other.
func TestRegionsAndPieces(t *testing.T) {
	square := [][]geometry.Point{{{X: 0, Y: 0}, {X: 8, Y: 0}, {X: 8, Y: 8}, {X: 0, Y: 8}}}
	box := geometry.Box{Max: geometry.Point{X: 8, Y: 8}}
	if part, gasket := cover(box, Inside(square), StripAlong(square, 2)); part != 1 || gasket != 0.75 {
		t.Errorf("got %g and %g, want 1 and 0.75", part, gasket)
	}
	if _, gasket := cover(box, nil, StripAlong(square, 3.5)); gasket != 1 {
		t.Errorf("got %g, want 1", gasket)
	}
	row := Row{BendingNmm2: 1e8, WidthMm: 20, LengthMm: 60, StartMm: 10}
	at := []geometry.Point{{X: 0}, {X: 100}, {X: 40}, {X: 140}}
	c := must[*mat.SymDense](t)(Separate{{[]int{0, 2}, row}, {[]int{1, 3}, row}}.Compliance(at, 100))
	if c.At(0, 1) != 0 || c.At(2, 3) != 0 || c.At(0, 2) == 0 || c.At(0, 2) != c.At(1, 3) {
		t.Errorf("got %v", mat.Formatted(c))
	}
}

func TestBadInputIsRefused(t *testing.T) {
	here := []geometry.Point{{X: 5, Y: 5}}
	nan := math.NaN()
	beside := Plate{RigidityNmm: 1e6, Box: geometry.Box{Max: geometry.Point{X: 100, Y: 50}}, Part: Circle(geometry.Point{X: 80, Y: 25}, 30)}
	afloat := Plate{RigidityNmm: 1e6, Box: geometry.Box{Max: geometry.Point{X: 100, Y: 50}}, Gasket: Circle(geometry.Point{X: -80}, 3)}
	for want, kernel := range map[string]Kernel{
		"off the part":     beside,
		"hangs on nothing": afloat,
		"plate rigidity":   InfinitePlate{nan},
		"Poisson":          Plate{RigidityNmm: 1, Poisson: 0.5, Box: geometry.Box{Max: geometry.Point{X: 10, Y: 10}}},
		"along a row":      Row{BendingNmm2: 1e6, WidthMm: 1, LengthMm: 10, StartMm: 11},
		"bolt circle":      Flange{Part: Part{2e5, 0.3, 10}, Outer: 100, Bore: 50, BoltCircle: 120},
	} {
		if _, err := kernel.Compliance(here, 10); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want an error on %q, got %v", want, err)
		}
		if _, err := kernel.Compliance(nil, 10); err == nil {
			t.Errorf("%T without a fastener must be refused", kernel)
		}
		if _, err := kernel.Compliance(here, nan); err == nil {
			t.Errorf("%T on a foundation that is no number must be refused", kernel)
		}
	}
	if _, err := NewJoint(mat.NewSymDense(2, []float64{1, 3, 3, 1}), make([]stiffness.Resilience, 2)); err == nil {
		t.Error("a joint that gives energy away must be refused")
	}
	j := fourBolts(t)
	for _, order := range [][]int{{0, 1, 2}, {0, 1, 2, 2}, {0, 1, 2, 4}} {
		if _, _, err := j.onePass(order, alike(4, 1)); err == nil {
			t.Errorf("the order %v must be refused", order)
		}
	}
	nuts := j.Loose()
	for _, err := range []error{nuts.Tighten(0, 0), nuts.Tighten(0, nan), nuts.Tighten(9, 1), nuts.Advance(0, nan), nuts.Remove(-1), nuts.Do(Step{Do: 77})} {
		if err == nil {
			t.Error("a step without sense must be refused")
		}
	}
}
