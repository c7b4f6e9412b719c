package holes_test

import (
	"fmt"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/unit"
)

// The rule as documented: both ends belong to a range, and the size decides the
// rest (common practice, no source: above 40 mm, or fewer than four holes above
// 2.5 times the most common size, are bores).
func TestUseOfASize(t *testing.T) {
	t.Parallel()
	alike := func(n int, d float64) (list []float64) {
		for range n {
			list = append(list, d)
		}
		return list
	}
	fasteners := holes.Range{FromMm: 8, ToMm: 12}
	for _, c := range []struct {
		name  string
		rule  holes.Rule
		holes []float64
		want  string
	}{
		{"one size", holes.Rule{}, alike(4, 10), "10 fastener"},
		{"at the limit of bores", holes.Rule{}, append(alike(5, 10), alike(4, 40)...), "10 fastener, 40 fastener"},
		{"above it", holes.Rule{}, append(alike(5, 10), alike(4, 40.1)...), "10 fastener, 40.1 bore"},
		{"few and 2.5 times", holes.Rule{}, append(alike(5, 10), alike(3, 25)...), "10 fastener, 25 fastener"},
		{"few and above", holes.Rule{}, append(alike(5, 10), alike(3, 25.1)...), "10 fastener, 25.1 bore"},
		{"many and above", holes.Rule{}, append(alike(5, 10), alike(4, 25.1)...), "10 fastener, 25.1 fastener"},
		{"in the range, both ends", holes.Rule{Fasteners: holes.Ranges{fasteners}}, []float64{8, 8, 12}, "8 fastener, 12 fastener"},
		{"beside the range", holes.Rule{Fasteners: holes.Ranges{fasteners}}, []float64{7.9, 7.9, 12.1}, "7.9 other, 12.1 bore"},
		{"a dowel's range", holes.Rule{Dowels: holes.Range{FromMm: 5, ToMm: 6}}, append(alike(5, 6), alike(4, 10)...), "6 dowel, 10 fastener"},
		{"a bore's range", holes.Rule{Bores: holes.Range{FromMm: 20, ToMm: 30}}, append(alike(5, 20), alike(4, 10)...), "20 bore, 10 fastener"},
		{"the most common is a dowel", holes.Rule{Dowels: holes.Range{FromMm: 5, ToMm: 6}}, append(alike(5, 6), append(alike(4, 10), 20)...), "6 dowel, 10 fastener, 20 fastener"},
		{"dowels before fasteners", holes.Rule{Fasteners: holes.Ranges{fasteners}, Dowels: fasteners}, alike(4, 10), "10 dowel"},
	} {
		got := ""
		for k, s := range c.rule.Sort(c.holes, 0.05) {
			if k > 0 {
				got += ", "
			}
			got += fmt.Sprintf("%g %s", s.DiameterMm, s.Use)
		}
		if got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
}

// Steps up to the tolerance belong to one size, whose diameter is the median.
func TestSizesByTheirSteps(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		holes []float64
		want  string
	}{
		{[]float64{10, 10.5, 11}, "[10.5: [0 1 2]]"}, {[]float64{11, 10, 10.25}, "[10.25: [1 2]] [11: [0]]"}, {[]float64{9, 12, 9}, "[9: [0 2]] [12: [1]]"}, {nil, ""},
	} {
		got := ""
		for k, s := range (holes.Rule{}).Sort(c.holes, 0.5) {
			if k > 0 {
				got += " "
			}
			got += fmt.Sprintf("[%g: %v]", s.DiameterMm, s.Of)
		}
		if got != c.want && len(c.holes) > 0 {
			t.Errorf("%v: %s, want %s", c.holes, got, c.want)
		}
	}
}

// Ranges are written in the form that is read.
func TestRangesAsWritten(t *testing.T) {
	t.Parallel()
	wide := unit.Sensible.BoltHole
	for text, want := range map[string]string{
		"6-14mm": "6-14 mm", " 6 - 14 mm ": "6-14 mm", "6–14": "6-14 mm", "30mm-": "30 mm-", "-5mm": "-5 mm", "8mm": "7.9-8.1 mm", "1/4-1/2in": "6.35-12.7 mm", "8-8mm": "8-8 mm",
	} {
		r, err := holes.ParseRange(text, wide)
		if err != nil || r.String() != want || !r.IsSet() {
			t.Errorf("%q: %s, %v; want %s", text, r, err, want)
		}
	}
	if got := (holes.Range{}).String(); got != "none" || (holes.Range{}).IsSet() {
		t.Errorf("no range is %q", got)
	}
	for text, code := range map[string]finding.Code{"": holes.NoRange, "-": holes.NoRange, "wide": holes.NoRange, "9-8mm": holes.FallingRange} {
		_, err := holes.ParseRange(text, wide)
		if f, ok := err.(finding.Finding); !ok || f.Code != code {
			t.Errorf("%q: %v, want %q", text, err, code)
		}
	}
}

// Overlapping ranges are refused, touching ones are not.
func TestRangesThatShareADiameter(t *testing.T) {
	t.Parallel()
	a, meets, overlaps, inside := holes.Range{FromMm: 8, ToMm: 12}, holes.Range{FromMm: 12, ToMm: 14}, holes.Range{FromMm: 11.9, ToMm: 14}, holes.Range{FromMm: 9, ToMm: 10}
	for _, c := range []struct {
		rule holes.Rule
		want bool
	}{
		{holes.Rule{Fasteners: holes.Ranges{a}, Bores: meets}, true}, {holes.Rule{Fasteners: holes.Ranges{meets}, Dowels: a}, true}, {holes.Rule{Fasteners: holes.Ranges{a}}, true}, {holes.Rule{}, true}, {holes.Rule{Bores: a, Dowels: holes.Range{}}, true},
		{holes.Rule{Fasteners: holes.Ranges{a}, Bores: overlaps}, false}, {holes.Rule{Fasteners: holes.Ranges{overlaps}, Bores: a}, false}, {holes.Rule{Dowels: a, Bores: inside}, false},
	} {
		if err := c.rule.Check(); (err == nil) != c.want {
			t.Errorf("%+v: %v", c.rule, err)
		}
	}
}

// Several sizes that nobody named are doubtful; the largest is named first.
func TestUnsureSizes(t *testing.T) {
	t.Parallel()
	two := append([]float64{8, 8, 8, 8, 8}, 12, 12, 12, 12)
	f, unsure := holes.Rule{}.Unsure(holes.Rule{}.Sort(two, 0.1))
	if !unsure || f.Code != holes.BySizeAlone || fmt.Sprint(f.Values["sizes"]) != "[12 mm 8 mm]" {
		t.Errorf("two sizes: %v, %v", unsure, f)
	}
	if _, unsure := (holes.Rule{}).Unsure(holes.Rule{}.Sort(two[:5], 0.1)); unsure {
		t.Error("one size is doubtful")
	}
	named := holes.Rule{Fasteners: holes.Ranges{holes.Range{FromMm: 5, ToMm: 15}}}
	if _, unsure := named.Unsure(named.Sort(two, 0.1)); unsure {
		t.Error("a range that was named is doubtful")
	}
}

// Of concentric circles the innermost is the hole, one of the same size is a
// repetition, and a circle through three smaller holes is a construction line.
func TestMergedCircles(t *testing.T) {
	t.Parallel()
	hole := func(x, y, d float64) holes.Circle {
		return holes.Circle{Centre: geometry.Point{X: x, Y: y}, DiameterMm: d}
	}
	three := []holes.Circle{hole(50, 0, 9), hole(-50, 0, 9), hole(0, 50, 9)}
	for _, c := range []struct {
		name    string
		circles []holes.Circle
		want    []holes.Why
	}{
		{"alone", three[:1], []holes.Why{holes.Hole}},
		{"counterbored", []holes.Circle{hole(0, 0, 15), hole(0, 0, 9)}, []holes.Why{holes.RoundAnother, holes.Hole}},
		{"twice", []holes.Circle{hole(0, 0, 9), hole(0, 0, 9)}, []holes.Why{holes.Hole, holes.Repeated}},
		{"bolt circle", append([]holes.Circle{hole(0, 0, 100)}, three...), []holes.Why{holes.Construction, holes.Hole, holes.Hole, holes.Hole}},
		{"through two", append([]holes.Circle{hole(0, 0, 100)}, three[:2]...), []holes.Why{holes.Hole, holes.Hole, holes.Hole}},
		{"beside them", append([]holes.Circle{hole(0, 0, 110)}, three...), []holes.Why{holes.Hole, holes.Hole, holes.Hole, holes.Hole}},
		{"through larger ones", []holes.Circle{hole(0, 0, 100), hole(50, 0, 120), hole(-50, 0, 120), hole(0, 50, 120)}, []holes.Why{holes.Hole, holes.Hole, holes.Hole, holes.Hole}},
	} {
		got := holes.Merge(c.circles)
		if fmt.Sprint(got) != fmt.Sprint(c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}
