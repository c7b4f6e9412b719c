package survey_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/optimize"

	"drawdown/geometry"
	"drawdown/geometry/survey"
)

func near(t *testing.T, what string, got, want geometry.Point, slack float64) {
	t.Helper()
	if got.Distance(want) > slack {
		t.Errorf("%s lies at %v, want %v", what, got, want)
	}
}

// The 3-4-5 triangle, and quadrilaterals with all sides and diagonals, in
// closed form (first principles).
func TestClosedForms(t *testing.T) {
	t.Parallel()
	for name, want := range map[string][]geometry.Point{
		"3-4-5 triangle":     {{}, {X: 40}, {Y: 30}},
		"upright isosceles":  {{}, {X: 60}, {X: 30, Y: 40}},
		"square":             {{}, {X: 50}, {X: 50, Y: 50}, {Y: 50}},
		"kite":               {{}, {X: 80}, {X: 40, Y: 90}, {X: 40, Y: -20}},
		"point inside three": {{}, {X: 90}, {X: 45, Y: 80}, {X: 45, Y: 30}},
	} {
		s := solve(t, survey.Network{Holes: len(want), Readings: measured(want, allPairs(len(want))), Level: [2]int{0, 1}, Above: []int{2}})
		for i := range want {
			near(t, name, s.Points[i], want[i], 1e-6)
		}
		if s.RMSMm > 1e-6 || len(s.Suspect) > 0 || len(s.Loose) > 0 || s.Mirrored {
			t.Errorf("%s: rms %g, suspect %v, loose %v, mirrored %v", name, s.RMSMm, s.Suspect, s.Loose, s.Mirrored)
		}
	}
}

// The named hole decides between the part and its mirror image.
func TestUpTellsTheMirrorImage(t *testing.T) {
	t.Parallel()
	at := []geometry.Point{{}, {X: 80}, {X: 30, Y: 40}, {X: 60, Y: -25}}
	readings := measured(at, allPairs(4))
	for _, n := range []survey.Network{
		{Above: []int{2}}, {Below: []int{3}}, {Above: []int{2}, Below: []int{3}},
	} {
		n.Holes, n.Readings, n.Level = 4, readings, [2]int{0, 1}
		near(t, "the part", solve(t, n).Points[2], at[2], 1e-6)
		n.Above, n.Below = n.Below, n.Above
		near(t, "its mirror image", solve(t, n).Points[2], geometry.Point{X: 30, Y: -40}, 1e-6)
	}
	s := solve(t, survey.Network{Holes: 4, Readings: readings, Level: [2]int{0, 1}})
	if !s.Mirrored {
		t.Error("nothing tells the mirror image, and nothing is said")
	}
}

// Edge measurements: two holes of 8 and 10 mm, 50 mm apart, are 59 mm over the
// far edges and 41 mm between the near ones (first principles).
func TestEdgeMeasures(t *testing.T) {
	t.Parallel()
	if got := 59 - survey.Outside.OverCentre(8, 10); got != 50 {
		t.Errorf("outside: %g, want 50", got)
	}
	if got := 41 - survey.Inside.OverCentre(8, 10); got != 50 {
		t.Errorf("inside: %g, want 50", got)
	}
}

// Least squares with a known closed form: one length measured four times is the
// mean, and its standard error is half that of one reading. Each end has half
// of the variance, because the frame is spread over both.
func TestRepeatedReading(t *testing.T) {
	t.Parallel()
	var readings []survey.Reading
	for _, d := range []float64{100.02, 99.99, 100.03, 100} {
		readings = append(readings, survey.Reading{From: 0, To: 1, Distance: d})
	}
	s := solve(t, survey.Network{Holes: 2, Readings: readings, Level: [2]int{0, 1}, AccuracyMm: 0.05})
	near(t, "the far end", s.Points[1], geometry.Point{X: 100.01}, 1e-9)
	if want := 0.05 / 4; math.Abs(s.ErrorsMm[0]-want) > 1e-9 || math.Abs(s.ErrorsMm[1]-want) > 1e-9 {
		t.Errorf("standard errors %v, want %g", s.ErrorsMm, want)
	}
}

// A station measured from three control stations: observations and control of a
// worked example in Ghilani and Wolf, Adjustment Computations, chapter 14
// (values from memory; lengths in ft, taken as mm here). The control is held by
// readings repeated until they outweigh the others. The expected place is the
// least-squares solution of the three observations with the control fixed,
// calculated independently of this package.
func TestTrilaterationExample(t *testing.T) {
	t.Parallel()
	at := []geometry.Point{{X: 865.40, Y: 4527.15}, {X: 2432.55, Y: 2047.25}, {X: 2865.22, Y: 27.15}}
	var readings []survey.Reading
	for range 600 {
		readings = append(readings, measured(at, allPairs(3))...)
	}
	readings = append(readings, survey.Reading{From: 0, To: 3, Distance: 6049.00},
		survey.Reading{From: 1, To: 3, Distance: 4736.83}, survey.Reading{From: 2, To: 3, Distance: 5446.49})
	s := solve(t, survey.Network{Holes: 4, Readings: readings, Level: [2]int{0, 2}, Above: []int{3}, AccuracyMm: 0.1})
	station := geometry.Point{X: 6861.317, Y: 3727.819}
	for k, want := range []float64{0.037, -0.077, 0.047} {
		if got := s.Residuals[len(readings)-3+k]; math.Abs(got-want) > 0.002 {
			t.Errorf("residual %d is %.3f, want %.3f", k+1, got, want)
		}
		if got, want := s.Points[k].Distance(s.Points[3]), at[k].Distance(station); math.Abs(got-want) > 0.005 {
			t.Errorf("the station is %.3f from control %d, want %.3f", got, k+1, want)
		}
	}
}

// A general-purpose optimizer (BFGS) finds no better places for the same
// network.
func TestAgainstGeneralOptimiser(t *testing.T) {
	t.Parallel()
	readings := measured(cover, someWay(len(cover)))
	for i := range readings {
		readings[i].Distance += 0.07 * math.Sin(float64(7*i))
	}
	s := solve(t, survey.Network{Holes: len(cover), Readings: readings, Level: [2]int{0, 1}, Above: []int{9}})
	if len(s.Suspect) > 0 {
		t.Fatalf("suspect %v", s.Suspect)
	}
	cost := func(x []float64) float64 {
		sum := 0.0
		for _, r := range readings {
			v := r.Distance - math.Hypot(x[2*r.From]-x[2*r.To], x[2*r.From+1]-x[2*r.To+1])
			sum += v * v
		}
		return sum
	}
	slope := func(grad, x []float64) {
		clear(grad)
		for _, r := range readings {
			dx, dy := x[2*r.From]-x[2*r.To], x[2*r.From+1]-x[2*r.To+1]
			d := math.Hypot(dx, dy)
			f := -2 * (r.Distance - d) / d
			grad[2*r.From] += f * dx
			grad[2*r.From+1] += f * dy
			grad[2*r.To] -= f * dx
			grad[2*r.To+1] -= f * dy
		}
	}
	var start []float64
	for i, p := range cover {
		start = append(start, p.X+3*math.Sin(float64(i)), p.Y+3*math.Cos(float64(5*i)))
	}
	result, err := optimize.Minimize(optimize.Problem{Func: cost, Grad: slope}, start, &optimize.Settings{GradientThreshold: 1e-9}, &optimize.BFGS{})
	if result == nil {
		t.Fatal(err)
	}
	places := make([]geometry.Point, len(cover))
	for i := range places {
		places[i] = geometry.Point{X: result.X[2*i], Y: result.X[2*i+1]}
	}
	for i, off := range fitted(s.Points, places) {
		if off > 1e-5 {
			t.Errorf("hole %d lies %g mm off the optimiser's place", i, off)
		}
	}
	own := s.RMSMm * s.RMSMm * float64(len(readings))
	if math.Abs(own-result.F) > 1e-7*result.F {
		t.Errorf("sum of squares %.12g, the optimiser's %.12g", own, result.F)
	}
}

func TestRefusesWhatIsNoNetwork(t *testing.T) {
	t.Parallel()
	good := survey.Network{Holes: 2, Readings: []survey.Reading{{From: 0, To: 1, Distance: 5}}}
	for name, spoil := range map[string]func(*survey.Network){
		"no readings":   func(n *survey.Network) { n.Readings = nil },
		"one hole":      func(n *survey.Network) { n.Holes = 1 },
		"too many":      func(n *survey.Network) { n.Holes = 100_000 },
		"unknown hole":  func(n *survey.Network) { n.Readings = []survey.Reading{{From: 0, To: 2, Distance: 5}} },
		"itself":        func(n *survey.Network) { n.Readings = []survey.Reading{{From: 1, To: 1, Distance: 5}} },
		"zero":          func(n *survey.Network) { n.Readings = []survey.Reading{{From: 0, To: 1}} },
		"not a number":  func(n *survey.Network) { n.Readings = []survey.Reading{{From: 0, To: 1, Distance: math.NaN()}} },
		"bad level":     func(n *survey.Network) { n.Level = [2]int{0, 9} },
		"bad up":        func(n *survey.Network) { n.Above = []int{-1} },
		"bad accuracy":  func(n *survey.Network) { n.AccuracyMm = -1 },
		"tiny accuracy": func(n *survey.Network) { n.AccuracyMm = 1e-155 }, // its square is 0
		"few diameters": func(n *survey.Network) { n.Diameters = []float64{8} },
	} {
		n := good
		spoil(&n)
		if _, err := survey.Solve(n); err == nil {
			t.Errorf("%s: taken", name)
		}
	}
	if _, err := survey.Solve(good); err != nil {
		t.Error(err)
	}
}
