package holes_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/holes"
	"drawdown/geometry/unit"
	"drawdown/render/words"
)

// By the rule documented in the package.
func TestSort(t *testing.T) {
	eight, far := []float64{8.4, 8.4, 8.41, 8.4, 8.4, 8.4, 8.4, 8.4}, math.Inf(1)
	for name, c := range map[string]struct {
		rule      holes.Rule
		diameters []float64
		want      string // uses of the sizes, the most common first
	}{
		"one size":            {holes.Rule{}, eight, "fastener"},
		"one bore":            {holes.Rule{}, append(eight, 76), "fastener bore"},
		"a bore below 40 mm":  {holes.Rule{}, append(eight, 25), "fastener bore"},
		"a second size":       {holes.Rule{}, append(eight, 13.5, 13.5), "fastener fastener"},
		"many of a wide size": {holes.Rule{}, append(eight, 22, 22, 22, 22), "fastener fastener"},
		"bores alone":         {holes.Rule{}, []float64{60, 60}, "bore"},
		"dowels are named":    {holes.Rule{Dowels: holes.Range{FromMm: 7.9, ToMm: 8.1}}, append(eight, 8, 8), "fastener dowel"},
		"bolts are named":     {holes.Rule{Fasteners: holes.Ranges{holes.Range{FromMm: 8, ToMm: 9}}}, append(eight, 13, 4), "fastener other bore"},
		"bores are named":     {holes.Rule{Bores: holes.Range{FromMm: 13, ToMm: far}}, append(eight, 13.5, 13.5, 13.5, 13.5, 13.5), "fastener bore"},
		"a huge bolt named":   {holes.Rule{Fasteners: holes.Ranges{holes.Range{FromMm: 50, ToMm: 60}}}, []float64{52, 52}, "fastener"},
		"no hole":             {holes.Rule{}, nil, ""},
	} {
		var uses []string
		for _, s := range c.rule.Sort(c.diameters, 0.05) {
			uses = append(uses, string(s.Use))
		}
		if got := strings.Join(uses, " "); got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
}

// Water holes look like bolt holes: several sizes are only certain if somebody
// named the bolts (first principles: a size proves nothing).
func TestSeveralSizesAreUnsure(t *testing.T) {
	two := []float64{6.6, 6.6, 6.6, 6.6, 11, 11, 11, 11, 76}
	for name, c := range map[string]struct {
		rule      holes.Rule
		diameters []float64
		want      bool
	}{
		"two sizes":       {holes.Rule{}, two, true},
		"one size":        {holes.Rule{}, []float64{11, 11, 11, 76}, false},
		"bolts are named": {holes.Rule{Fasteners: holes.Ranges{holes.Range{FromMm: 6, ToMm: 12}}}, two, false},
		"the other named": {holes.Rule{Bores: holes.Range{FromMm: 10, ToMm: 80}}, two, false},
	} {
		f, unsure := c.rule.Unsure(c.rule.Sort(c.diameters, 0.05))
		if unsure != c.want || unsure && f.Code != holes.BySizeAlone {
			t.Errorf("%s: %v %v", name, unsure, f)
		}
	}
}

func TestParseRange(t *testing.T) {
	for text, want := range map[string]holes.Range{
		"6-14mm": {FromMm: 6, ToMm: 14}, "30mm-": {FromMm: 30, ToMm: math.Inf(1)}, "-5": {ToMm: 5},
		"1-2in": {FromMm: 25.4, ToMm: 50.8}, "6 mm – 14 mm": {FromMm: 6, ToMm: 14}, "8": {FromMm: 7.9, ToMm: 8.1},
	} {
		got, err := holes.ParseRange(text, unit.Sensible.Bore)
		if err != nil || math.Abs(got.FromMm-want.FromMm) > 1e-9 || !(got.ToMm == want.ToMm || math.Abs(got.ToMm-want.ToMm) < 1e-9) {
			t.Errorf("%q: %v %v, want %v", text, got, err, want)
		}
	}
	// The limits are those of the table of sensible quantities: a bore of 90 m
	// is refused.
	for _, text := range []string{"90m-", "-90 m", "6-1e9", "0.1"} {
		if got, err := holes.ParseRange(text, unit.Sensible.Bore); !errors.Is(err, unit.NotSensible) {
			t.Errorf("%q is read as %v, %v", text, got, err)
		}
	}
	for _, text := range []string{"", "-", "14-6", "x", "6-y", "0", "-0", "5 furlong", "1-2-3"} {
		if got, err := holes.ParseRange(text, unit.Sensible.Bore); err == nil {
			t.Errorf("%q is read as %v", text, got)
		}
	}
}

// A diameter given alone makes limits that print as a person writes them, though
// 6.7 less 0.1 is not 6.6 in binary.
func TestLimitsOfADiameterAlone(t *testing.T) {
	if r, err := holes.ParseRange("6.7mm", unit.Sensible.Bore); err != nil || r.String() != "6.6-6.8 mm" {
		t.Errorf("%v, %v", r, err)
	}
}

func TestRangesThatOverlap(t *testing.T) {
	apart := holes.Rule{Fasteners: holes.Ranges{holes.Range{FromMm: 6, ToMm: 14}}, Bores: holes.Range{FromMm: 14, ToMm: math.Inf(1)}}
	if err := apart.Check(); err != nil {
		t.Error(err)
	}
	apart.Dowels = holes.Range{FromMm: 8, ToMm: 9}
	if err := apart.Check(); !errors.Is(err, holes.SharedRange) || !strings.Contains(words.English().Error(err), "bolts (6-14 mm) and the dowels (8-9 mm)") {
		t.Error(err)
	}
}

// The inner of two concentric lines is the hole; a circle through three holes
// is none (first principles: the edge of a hole leaves no room for another).
func TestMerge(t *testing.T) {
	at := func(x, y, d float64) holes.Circle {
		return holes.Circle{Centre: geometry.Point{X: x, Y: y}, DiameterMm: d}
	}
	circles := []holes.Circle{
		at(100, 0, 15), at(100, 0, 8.4), at(100.00001, 0, 8.4), // counterbore, hole, the hole again
		at(-100, 0, 8.4), at(0, 100, 8.4), at(0, 0, 200), at(300, 0, 200),
	}
	want := []holes.Why{holes.RoundAnother, holes.Hole, holes.Repeated, holes.Hole, holes.Hole, holes.Construction, holes.Hole}
	for i, why := range holes.Merge(circles) {
		if why != want[i] {
			t.Errorf("circle %d: %q, want %q", i, why, want[i])
		}
	}
}
