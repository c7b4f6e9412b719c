package unit_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawdown/geometry/unit"
)

// First principles: the conversion of NIST SP 811, rounded to the divisions of
// the scale (common practice, no source: tenths below 10, halves below 15, ones
// below 500, fives above). The exact figure is beside each.
func TestOtherWrench(t *testing.T) {
	tests := map[string]string{
		"20 N·m":      "15 lbf·ft",   // 14.751
		"40 N·m":      "30 lbf·ft",   // 29.502
		"24 N·m":      "18 lbf·ft",   // 17.701
		"19 N·m":      "14 lbf·ft",   // 14.014
		"18.98 N·m":   "168 lbf·in",  // 167.987; 13.999 lbf·ft
		"10 N·m":      "89 lbf·in",   // 88.507
		"1.5 N·m":     "13.5 lbf·in", // 13.276
		"1 N·m":       "8.9 lbf·in",  // 8.851
		"0.2 N·m":     "1.75 lbf·in", // 1.770
		"110 N·m":     "81 lbf·ft",   // 81.132
		"1000 N·m":    "740 lbf·ft",  // 737.562
		"-40 N·m":     "-30 lbf·ft",  // a figure below zero keeps its sign
		"-10 N·m":     "-89 lbf·in",  // and its unit
		"0 N·m":       "0 lbf·in",    //
		"30 lbf·ft":   "41 N·m",      // 40.675
		"100 lbf·ft":  "136 N·m",     // 135.582
		"65 lbf·ft":   "88 N·m",      // 88.128
		"10 lbf·ft":   "13.5 N·m",    // 13.558
		"7 lbf·ft":    "9.5 N·m",     // 9.491
		"400 lbf·ft":  "540 N·m",     // 542.327
		"1000 lbf·ft": "1355 N·m",    // 1355.818
		"120 lbf·in":  "13.5 N·m",    // 13.558
		"80 lbf·in":   "9 N·m",       // 9.039
		"10 lbf·in":   "1.15 N·m",    // 1.130
		"5 lbf·in":    "0.56 N·m",    // 0.565
		"1 lbf·in":    "0.113 N·m",   // 0.11298
		"2 kgf·m":     "20 N·m",      // 19.613
		"1 kgf·m":     "9.8 N·m",     // 9.807
		"5 kgf·m":     "49 N·m",      // 49.033
		"51 kgf·m":    "500 N·m",     // 500.139
		"0.05 kgf·m":  "0.49 N·m",    // 0.490
	}
	for given, want := range tests {
		g, err := unit.ParseTorque(given)
		if err != nil {
			t.Fatal(err)
		}
		if got := g.Other().String(); got != want {
			t.Errorf("%s on the other wrench: %s, want %s", given, got, want)
		}
	}
}

// First principles: as above; a kgf·m scale has divisions a tenth as large.
func TestOnScale(t *testing.T) {
	tests := []struct {
		torqueNm unit.Torque
		on       unit.TorqueUnit
		want     string
	}{
		{14.2, unit.NewtonMetre, "14 N·m"},
		{14.8, unit.NewtonMetre, "15 N·m"},
		{14.3, unit.NewtonMetre, "14.5 N·m"},
		{9.97, unit.NewtonMetre, "10 N·m"},
		{1.98, unit.NewtonMetre, "2 N·m"},
		{0.304, unit.NewtonMetre, "0.3 N·m"},
		{499.7, unit.NewtonMetre, "500 N·m"},
		{15.3, unit.NewtonMetre, "15 N·m"},
		{501, unit.NewtonMetre, "500 N·m"},
		{502.4, unit.NewtonMetre, "500 N·m"},
		{502.6, unit.NewtonMetre, "505 N·m"},
		{20, unit.KilogramForceMetre, "2 kgf·m"},        // 2.0394
		{40, unit.KilogramForceMetre, "4.1 kgf·m"},      // 4.0789
		{12, unit.KilogramForceMetre, "1.2 kgf·m"},      // 1.2237
		{13, unit.KilogramForceMetre, "1.35 kgf·m"},     // 1.3256
		{5, unit.KilogramForceMetre, "0.51 kgf·m"},      // 0.5099
		{600, unit.KilogramForceMetre, "61 kgf·m"},      // 61.183
		{0.15, unit.KilogramForceMetre, "0.0153 kgf·m"}, // 0.015296
	}
	for _, tt := range tests {
		if got := tt.torqueNm.OnScale(tt.on).String(); got != tt.want {
			t.Errorf("%v N·m on a scale in %s: %s, want %s", float64(tt.torqueNm), tt.on, got, tt.want)
		}
	}
}

var torqueUnits = []unit.TorqueUnit{
	unit.NewtonMetre, unit.PoundForceFoot, unit.PoundForceInch, unit.KilogramForceMetre,
}

// figures draws readings from the smallest for which OnScale makes a promise,
// evenly over the decades, with many near whole and half figures.
func figures() *rapid.Generator[float64] {
	spread := rapid.Map(rapid.Float64Range(math.Log(0.015), math.Log(5000)), math.Exp)
	round := rapid.Map(rapid.IntRange(2, 40000), func(k int) float64 { return float64(k) / 20 })
	return rapid.OneOf(spread, round)
}

// largestStep repeats the documentation of divisions independently: the step
// below each limit.
func largestStep(v float64, u unit.TorqueUnit) float64 {
	if u == unit.KilogramForceMetre {
		return largestStep(v*10, unit.NewtonMetre) / 10
	}
	switch {
	case v < 0.02:
		return 0.0001
	case v < 0.2:
		return 0.001
	case v < 1:
		return 0.01
	case v < 2:
		return 0.05
	case v < 10:
		return 0.1
	case v < 15:
		return 0.5
	case v < 500:
		return 1
	}
	return 5
}

// First principles: rounding moves a figure by at most half a division, and by
// a share well below the scatter of a wrench (ISO 6789: ±4 %).
func TestRoundingIsSmall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(torqueUnits).Draw(t, "unit")
		v := figures().Draw(t, "figure")
		exact := unit.GivenTorque{Value: v, Unit: u}.Nm()
		got := exact.OnScale(u)
		moved := math.Abs(got.Value - v)
		if half := largestStep(v, u) / 2; moved > half*(1+1e-9) {
			t.Errorf("%v %s → %v: off by %v, half a division is %v", v, u, got.Value, moved, half)
		}
		if moved > 0.034*v {
			t.Errorf("%v %s → %v: off by %.2f %%", v, u, got.Value, 100*moved/v)
		}
		if steps := got.Value / largestStep(v, u); math.Abs(steps-math.Round(steps)) > 1e-9*steps+1e-9 {
			t.Errorf("%v %s → %v lies on no division", v, u, got.Value)
		}
	})
}

// First principles: the same bound holds for the figure on the other wrench.
func TestOtherIsTheSameTorque(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := unit.GivenTorque{Value: figures().Draw(t, "figure"), Unit: rapid.SampledFrom(torqueUnits).Draw(t, "unit")}
		if g.Nm() < 0.015 {
			t.Skip("below what OnScale makes a promise for")
		}
		other := g.Other()
		if (g.Unit == unit.NewtonMetre) == (other.Unit == unit.NewtonMetre) {
			t.Errorf("%s and %s are for the same wrench", g, other)
		}
		if off := math.Abs(float64(other.Nm()/g.Nm()) - 1); off > 0.034 {
			t.Errorf("%s → %s: off by %.2f %%", g, other, 100*off)
		}
		down := unit.GivenTorque{Value: -g.Value, Unit: g.Unit}.Other()
		if down.Value != -other.Value || down.Unit != other.Unit {
			t.Errorf("%s → %s, but −%s → %s", g, other, g, down)
		}
	})
}

// First principles: a higher torque never gets a lower figure.
func TestRoundingIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(torqueUnits).Draw(t, "unit")
		low := figures().Draw(t, "figure")
		high := low * (1 + rapid.Float64Range(0, 0.05).Draw(t, "more"))
		from, to := unit.GivenTorque{Value: low, Unit: u}, unit.GivenTorque{Value: high, Unit: u}
		if a, b := from.Nm().OnScale(u), to.Nm().OnScale(u); a.Value > b.Value {
			t.Errorf("%s → %s but %s → %s", from, a, to, b)
		}
		// On the other wrench the unit may change between the two.
		if a, b := from.Other(), to.Other(); a.Nm() > b.Nm()*(1+1e-12) {
			t.Errorf("%s → %s but %s → %s", from, a, to, b)
		}
	})
}

// First principles: no division needs more than three decimals, or four in
// kgf·m and below 0.02, and trailing zeros are not printed.
func TestRoundedFigureHasNoDust(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := rapid.SampledFrom(torqueUnits).Draw(t, "unit")
		v := figures().Draw(t, "figure")
		figure, _, _ := strings.Cut(unit.GivenTorque{Value: v, Unit: u}.Nm().OnScale(u).String(), " ")
		whole, decimals, pointed := strings.Cut(figure, ".")
		allowed := 3
		if u == unit.KilogramForceMetre || v < 0.02 {
			allowed = 4
		}
		if len(decimals) > allowed || (pointed && strings.TrimRight(decimals, "0") != decimals) || whole == "" {
			t.Errorf("%v %s prints %s", v, u, figure)
		}
		if v >= 2 && len(decimals) > 1 && u != unit.KilogramForceMetre {
			t.Errorf("%v %s prints %s, finer than a tenth", v, u, figure)
		}
		if _, err := strconv.ParseFloat(figure, 64); err != nil {
			t.Error(err)
		}
	})
}
