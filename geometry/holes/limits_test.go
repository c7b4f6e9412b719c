package holes

import (
	"errors"
	"slices"
	"testing"

	"drawdown/geometry"
)

// Lines round one hole have centres within a tenth of a millimetre; a line
// counts as repeated if it is less than a hundredth larger; a construction
// circle passes the centres of three smaller holes within a tenth (limits of
// the design: common practice, no source).
func TestLimitsOfMerging(t *testing.T) {
	t.Parallel()
	at := func(x float64) geometry.Point { return geometry.Point{X: x} }
	for off, want := range map[float64]Why{0: RoundAnother, 0.099: RoundAnother, 0.104: Hole} {
		if got := Merge([]Circle{{at(0), 8}, {at(off), 12}}); got[0] != Hole || got[1] != want {
			t.Errorf("%g mm apart: %q", off, got)
		}
	}
	for larger, want := range map[float64]Why{0: Repeated, 0.0099: Repeated, 0.0105: RoundAnother} {
		if got := Merge([]Circle{{at(0), 8}, {at(0), 8 + larger}}); got[1] != want {
			t.Errorf("%g mm larger: %q", larger, got)
		}
	}
	ring := func(n int, off, diameter float64) []Circle {
		circles := []Circle{{geometry.Point{}, 100}}
		for _, p := range geometry.Circle(n, 100+2*off, geometry.Point{}, 0, true) {
			circles = append(circles, Circle{p, diameter})
		}
		return circles
	}
	for _, c := range []struct {
		circles []Circle
		want    Why
	}{
		{ring(3, 0, 8), Construction}, {ring(2, 0, 8), Hole}, {ring(3, 0.099, 8), Construction}, {ring(3, -0.099, 8), Construction}, {ring(3, 0.104, 8), Hole}, {ring(3, 0, 101), Hole}, {ring(3, 0, 100), Hole},
	} {
		if got := Merge(c.circles); got[0] != c.want {
			t.Errorf("%v: %q, want %q", c.circles, got[0], c.want)
		}
	}
}

// Both ends belong to a range, within the rounding of other units; ranges may
// touch but not overlap.
func TestLimitsOfRanges(t *testing.T) {
	t.Parallel()
	r := Range{FromMm: 8, ToMm: 9}
	for d, want := range map[float64]bool{8 - 0.98e-6: true, 8 - 1.05e-6: false, 8.5: true, 9 + 0.98e-6: true, 9 + 1.05e-6: false} {
		if got := r.holds(d); got != want {
			t.Errorf("%.9f: %v", d, got)
		}
	}
	if (Range{FromMm: -1}).holds(-0.5) || (Range{}).IsSet() || !r.IsSet() {
		t.Error("an empty range holds nothing")
	}
	for _, c := range []struct {
		rule Rule
		want bool
	}{
		{Rule{Fasteners: Ranges{r}}, true}, {Rule{Fasteners: Ranges{r}, Dowels: Range{9, 10}}, true}, {Rule{Fasteners: Ranges{r}, Dowels: Range{7, 8}}, true}, {Rule{Fasteners: Ranges{r}, Dowels: Range{8.9, 10}}, false}, {Rule{Fasteners: Ranges{r}, Bores: Range{7, 8.1}}, false},
		{Rule{Dowels: Range{1, 5}, Bores: Range{4, 6}}, false}, {Rule{Fasteners: Ranges{Range{FromMm: 3, ToMm: 0}}, Dowels: Range{1, 5}}, true}, {Rule{Fasteners: Ranges{Range{1, 5}}, Dowels: Range{FromMm: 3, ToMm: 0}}, true},
	} {
		if err := c.rule.Check(); (err == nil) != c.want || err != nil && !errors.Is(err, SharedRange) {
			t.Errorf("%+v: %v", c.rule, err)
		}
	}
}

// Steps wider than the tolerance separate sizes; the holes of a size are listed
// in ascending order; diameters at a limit are included.
func TestLimitsOfSizes(t *testing.T) {
	t.Parallel()
	sizes := Rule{}.Sort([]float64{8.6, 12, 8.4, 8.2, 12.4, 12.2, 8.8}, 0.25)
	if len(sizes) != 2 || !slices.Equal(sizes[0].Of, []int{0, 2, 3, 6}) || !slices.Equal(sizes[1].Of, []int{1, 4, 5}) || sizes[0].DiameterMm != 8.6 || sizes[1].DiameterMm != 12.2 {
		t.Errorf("%+v", sizes)
	}
	if sizes := (Rule{}).Sort([]float64{8, 8.5, 9.125}, 0.5); len(sizes) != 2 {
		t.Errorf("%+v", sizes)
	}
	for _, c := range []struct {
		d      float64
		count  int
		common float64
		rule   Rule
		want   Use
	}{
		{40, 4, 8, Rule{}, Fastener}, {40.1, 9, 8, Rule{}, Bore}, {20, 3, 8, Rule{}, Fastener}, {20.1, 3, 8, Rule{}, Bore}, {20.1, 4, 8, Rule{}, Fastener}, {44, 1, 8, Rule{}, Bore},
		{9, 1, 8, Rule{Fasteners: Ranges{Range{8, 9}}}, Fastener}, {9.1, 1, 8, Rule{Fasteners: Ranges{Range{8, 9}}}, Bore}, {7.9, 9, 8, Rule{Fasteners: Ranges{Range{8, 9}}}, Other},
	} {
		if got := c.rule.use(Size{DiameterMm: c.d, Of: make([]int, c.count)}, c.common); got != c.want {
			t.Errorf("%+v: %q", c, got)
		}
	}
	if got := (Rule{}).common([]Size{{DiameterMm: 50}, {DiameterMm: 40}, {DiameterMm: 8}}); got != 40 {
		t.Errorf("common %g", got)
	}
	if got := (Rule{}).common([]Size{{DiameterMm: 40.1}}); got != 0 {
		t.Errorf("bores alone: common %g", got)
	}
	if f, unsure := (Rule{Fasteners: Ranges{Range{8, 9}}}).Unsure([]Size{{DiameterMm: 8, Use: Fastener}, {DiameterMm: 9, Use: Fastener}}); unsure || f.Code != "" {
		t.Errorf("named: %v", f)
	}
}
