package thread

import (
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawdown/geometry/testkit"
)

// Published: ISO 261, ISO 724, DIN 13-1, ISO 898-1 (testdata/iso_metric.csv).
func TestMetricDimensionsAsPublished(t *testing.T) {
	const printedToMm = 0.0006 // three decimals, and the constants to six digits
	for _, row := range testkit.Published(t, os.DirFS("testdata"), "iso_metric.csv") {
		got, err := Parse(row[0])
		if err != nil {
			t.Error(err)
			continue
		}
		for i, v := range []float64{got.MajorMm, got.PitchMm, got.PitchDiameterMm(), got.InternalMinorDiameterMm(), got.MinorDiameterMm()} {
			if want := testkit.Number(t, row[i+1]); math.Abs(v-want) > printedToMm {
				t.Errorf("%s column %d: %.4f mm; published %v", row[0], i+1, v, want)
			}
		}
		three := testkit.Number(t, strconv.FormatFloat(got.StressAreaMm2(), 'g', 3, 64))
		if want := testkit.Number(t, row[6]); three != want {
			t.Errorf("%s: stress area %v mm²; published %v", row[0], three, want)
		}
	}
}

// Value from memory: Shigley 9th ed., Table 8-1, tensile stress areas of the
// smallest and the largest coarse threads.
func TestStressAreasOfTheSmallestAndLargest(t *testing.T) {
	for name, want := range map[string]float64{
		"M1.6": 1.27, "M2": 2.07, "M2.5": 3.39, "M72x6": 3460, "M80x6": 4340, "M90x6": 5590, "M100x6": 6990,
	} {
		got, err := Parse(name)
		if err != nil {
			t.Error(err)
			continue
		}
		if area := got.StressAreaMm2(); math.Abs(area/want-1) > 0.0035 {
			t.Errorf("%s: stress area %.4g mm²; published %v", name, area, want)
		}
	}
}

// Published: Shigley 9th ed., Table 8-2 (testdata/unified.csv).
func TestUnifiedStressAreasAsPublished(t *testing.T) {
	for _, row := range testkit.Published(t, os.DirFS("testdata"), "unified.csv") {
		got, err := Parse(row[0])
		if err != nil {
			t.Error(err)
			continue
		}
		diameterMm := testkit.Number(t, row[1]) * 25.4
		if got.Name != row[0] || math.Abs(got.MajorMm-diameterMm) > 1e-12 || got.ThreadsPerInch != testkit.Number(t, row[2]) {
			t.Errorf("%s reads as %v", row[0], got)
		}
		areaIn2 := got.StressAreaMm2() / (25.4 * 25.4)
		if want := testkit.Number(t, row[3]); math.Abs(areaIn2-want) > 0.0006 {
			t.Errorf("%s: stress area %.5f in²; published %v", row[0], areaIn2, want)
		}
	}
}

// Value from memory: ASME B1.1, UNR external minor diameter of 1/2-13 UNC-2A
// 0.4069 in with its allowance of 0.0015 in, so 0.4084 in basic.
func TestUnifiedMinorDiameter(t *testing.T) {
	half, err := Parse("1/2-13 UNC")
	if err != nil {
		t.Fatal(err)
	}
	if got := half.MinorDiameterMm() / 25.4; math.Abs(got-0.4084) > 0.00005 {
		t.Errorf("minor diameter %.5f in; want 0.4084", got)
	}
}

// First principles: on the 60° profile the diameters are in order, and the
// stress area is between the core and the nominal circle.
func TestDiametersFollowEachOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(every()).Draw(t, "thread")
		falling := []float64{s.MajorMm, s.PitchDiameterMm(), s.StressDiameterMm(), s.MinorDiameterMm(), 0}
		for i := 1; i < len(falling); i++ {
			if falling[i] >= falling[i-1] {
				t.Fatalf("%s: diameters %v do not fall", s.Name, falling)
			}
		}
		if s.InternalMinorDiameterMm() >= s.PitchDiameterMm() || s.InternalMinorDiameterMm() <= s.MinorDiameterMm() {
			t.Fatalf("%s: nut minor diameter %v", s.Name, s.InternalMinorDiameterMm())
		}
		if core, nominal := area(s.MinorDiameterMm()), area(s.MajorMm); s.StressAreaMm2() <= core || s.StressAreaMm2() >= nominal {
			t.Fatalf("%s: stress area %v outside %v to %v", s.Name, s.StressAreaMm2(), core, nominal)
		}
	})
}

func area(diameter float64) float64 { return math.Pi / 4 * diameter * diameter }

// First principles: a table typed by hand is in order. Diameters ascend, the
// coarse pitch never decreases with the diameter, the pitches of a size
// descend, and no name is repeated.
func TestTablesKeepTheirOrder(t *testing.T) {
	finePitches := []float64{0.2, 0.25, 0.35, 0.5, 0.75, 1, 1.25, 1.5, 2, 3, 4} // value from memory: ISO 261, the columns of fine pitches except 6 mm
	for i, size := range metricSizes {
		for k := 1; k < len(size.pitchesMm); k++ {
			if !slices.Contains(finePitches, size.pitchesMm[k]) {
				t.Errorf("M%v: %v is no fine pitch of ISO 261", size.diameterMm, size.pitchesMm[k])
			}
			if size.pitchesMm[k] >= size.pitchesMm[k-1] {
				t.Errorf("M%v: pitches %v do not fall", size.diameterMm, size.pitchesMm)
			}
		}
		if i > 0 && (size.diameterMm <= metricSizes[i-1].diameterMm || size.pitchesMm[0] < metricSizes[i-1].pitchesMm[0]) {
			t.Errorf("M%v %v stands after M%v %v", size.diameterMm, size.pitchesMm[0], metricSizes[i-1].diameterMm, metricSizes[i-1].pitchesMm[0])
		}
	}
	perInch := map[Series]float64{UNC: 99, UNF: 99, UN: 8}
	diameter := 0.0
	for _, size := range unifiedSizes {
		if size.diameterIn <= diameter {
			t.Errorf("%s stands after %v in", size.name, diameter)
		}
		diameter = size.diameterIn
		for _, s := range size.threads() {
			if s.ThreadsPerInch > perInch[s.Series] {
				t.Errorf("%s is finer than the size before it", s.Name)
			}
			perInch[s.Series] = s.ThreadsPerInch
		}
		if size.unf > 0 && size.unf <= size.unc {
			t.Errorf("%s: fine %v, coarse %v", size.name, size.unf, size.unc)
		}
	}
	seen := map[string]bool{}
	for _, s := range every() {
		if seen[s.Name] {
			t.Errorf("%s stands twice", s.Name)
		}
		seen[s.Name] = true
	}
}

// First principles: a numbered size is 0.060 in plus 0.013 in per number, and
// the others are the fraction in their name (ASME B1.1).
func TestUnifiedDiametersFollowTheirNames(t *testing.T) {
	for _, size := range unifiedSizes {
		want, err := parseInches(size.name)
		if numbered, found := strings.CutPrefix(size.name, "No. "); found {
			want, err = 0.060+0.013*testkit.Number(t, numbered), nil
		}
		if err != nil {
			t.Error(err)
		}
		if math.Abs(size.diameterIn-want) > 1e-12 {
			t.Errorf("%s: %v in; want %v", size.name, size.diameterIn, want)
		}
	}
}
