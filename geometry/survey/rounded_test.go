package survey_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
	"drawdown/geometry/testkit"
	"drawdown/geometry/unit"
)

// Readings that are wrong only by rounding are good, however fine the stated
// accuracy (first principles). A larger error is still found.
func TestRoundingAccusesNobody(t *testing.T) {
	t.Parallel()
	random := rand.New(rand.NewPCG(7, 9))
	for _, c := range []struct{ digit, accuracy float64 }{{0.01, 0.001}, {0.1, 0.001}, {1, 0}, {25.4 / 64, 0.05}} {
		for range testkit.Samples(8, 25) {
			n := roundedNetwork(random, c.digit, c.accuracy)
			s, err := survey.Solve(n)
			if err != nil || len(s.Suspect) > 0 {
				t.Errorf("readings to %g mm, ± %g mm: %v %v accused, %.3f mm over", c.digit, c.accuracy, err, s.Suspect, s.RMSMm)
			}
			n.Readings[3].Distance += 20 * c.digit
			if s, err = survey.Solve(n); err != nil || len(s.Suspect) == 0 || s.Suspect[0] != 3 {
				t.Errorf("readings to %g mm, ± %g mm: %v, a reading %g mm out is not found: %v", c.digit, c.accuracy, err, 20*c.digit, s.Suspect)
			}
		}
	}
}

// roundedNetwork has six holes around a part and all distances between them.
func roundedNetwork(random *rand.Rand, digit, accuracy float64) survey.Network {
	n := survey.Network{Holes: 6, AccuracyMm: accuracy, RoundedToMm: digit}
	var at []geometry.Point
	for k := range n.Holes {
		sin, cos := math.Sincos((float64(k) + 0.6*random.Float64()) * math.Pi / 3)
		at = append(at, geometry.Point{X: 150 * cos, Y: 90 * sin})
	}
	for a := range at {
		for b := range a {
			n.Readings = append(n.Readings, survey.Reading{From: b, To: a, Distance: digit * math.Round(at[a].Distance(at[b])/digit)})
		}
	}
	return n
}

// Good caliper readings, which differ by a few hundredths, are not blamed if
// the stated accuracy is that of a micrometer.
func TestFineAccuracyKeepsThePlaces(t *testing.T) {
	t.Parallel()
	n := survey.Network{Holes: 4, AccuracyMm: 0.001, RoundedToMm: 0.01, Readings: []survey.Reading{
		{From: 0, To: 1, Distance: 95.02}, {From: 2, To: 3, Distance: 94.98}, {From: 0, To: 3, Distance: 60.03},
		{From: 1, To: 2, Distance: 60}, {From: 0, To: 2, Distance: 112.44}, {From: 1, To: 3, Distance: 112.4},
	}}
	if s, err := survey.Solve(n); err != nil || len(s.Suspect) > 0 || s.RMSMm > 0.05 {
		t.Errorf("%v: %v accused, %.3f mm over", err, s.Suspect, s.RMSMm)
	}
}

// What Agreement says about the weight of a reading: nothing if the printed
// figures are equal, and the reason if they differ.
func TestAgreementSaysWhatDiffers(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		stated, rounded, scatter float64
		fine, differs            bool
		why                      any
	}{
		{0.05, 0.01, 0.0501, false, false, nil},
		{0.05, 0.01, 0.0549, false, false, nil}, // both print as 0.05
		{0.05, 0.01, 0.0551, false, true, nil},
		{0.001, 0.01, 0.0031, true, true, unit.Length(0.01)},
		{0.001, 0.01, 0.02, true, true, nil},
		{0, 1, 0.293, false, true, unit.Length(1)},
	} {
		r := survey.Report{Network: survey.Network{AccuracyMm: c.stated, RoundedToMm: c.rounded}, Solution: survey.Solution{ScatterMm: c.scatter}}
		said := r.Agreement().Values
		_, differs := said["expected"]
		_, fine := said["fine"]
		if differs != c.differs || fine != c.fine || said["rounded"] != c.why {
			t.Errorf("stated %g, to %g, %g comes out: %v", c.stated, c.rounded, c.scatter, finding.Values(said))
		}
	}
}
