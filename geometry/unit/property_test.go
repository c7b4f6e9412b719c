package unit_test

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawdown/geometry/unit"
)

func printed(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// First principles: a quantity printed in full is read back as the same, with a
// point or, if it cannot be a thousands sign, with a comma.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		for _, name := range slices.Sorted(maps.Keys(parsers)) {
			p := parsers[name]
			size := rapid.SampledFrom(p.sizes).Draw(t, name)
			spelling := rapid.SampledFrom(size.spellings).Draw(t, "spelling")
			v := float64(rapid.IntRange(-1e7, 1e7).Draw(t, "ten thousandths")) / 1e4
			text := printed(v) + " " + spelling
			if got, err := p.parse(text); err != nil || !near(got, v*size.size) {
				t.Fatalf("%q: %v, %v; want %v", text, got, err, v*size.size)
			}
			comma := strings.Replace(printed(v), ".", ",", 1) + " " + spelling
			got, err := p.parse(comma)
			if err == nil && !near(got, v*size.size) {
				t.Fatalf("%q: read as %v, want %v", comma, got, v*size.size)
			}
			_, decimals, _ := strings.Cut(printed(v), ".")
			if err != nil && len(decimals) != 3 {
				t.Fatalf("%q: %v", comma, err)
			}
		}
	})
}

// First principles: our own printed form of a torque can be read.
func TestTorqueRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		given := unit.GivenTorque{
			Value: rapid.Float64Range(-1e6, 1e6).Draw(t, "figure"),
			Unit:  rapid.SampledFrom(torqueUnits).Draw(t, "unit"),
		}
		got, err := unit.ParseTorque(given.String())
		if err != nil || got != given {
			t.Fatalf("%s: %v, %v", given, got, err)
		}
		if back := given.Nm().In(given.Unit); math.Abs(back-given.Value) > 1e-15*math.Abs(given.Value)+1e-300 {
			t.Fatalf("%s comes back as %v", given, back)
		}
	})
}

// First principles: printing rounds by at most half of its last digit.
func TestPrintedRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(-20000, 20000).Draw(t, "value")
		length, errL := unit.ParseLength(unit.Length(v).String(), "")
		angle, errA := unit.ParseAngle(unit.Angle(v).String())
		if errL != nil || errA != nil || math.Abs(float64(length)-v) > 0.005001 || math.Abs(float64(angle)-v) > 0.05001 {
			t.Fatalf("%v: %v %v, %v %v", v, length, errL, angle, errA)
		}
		wait, err := unit.ParseDuration(unit.Duration(math.Abs(v)).String())
		if err != nil || math.Abs(float64(wait)-math.Abs(v)) > 0.05001 {
			t.Fatalf("%v min: %v, %v", math.Abs(v), wait, err)
		}
	})
}

// First principles: a mixed number is the sum of its integer and its fraction.
func TestMixedNumbers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		whole := rapid.IntRange(0, 99).Draw(t, "whole")
		bottom := rapid.SampledFrom([]int{2, 3, 4, 5, 8, 10, 16, 32, 64}).Draw(t, "bottom")
		top := rapid.IntRange(0, bottom-1).Draw(t, "top")
		sign := rapid.SampledFrom([]string{"", "+", "-", "−"}).Draw(t, "sign")
		gap := rapid.SampledFrom([]string{" ", "-", "\u00a0", "  "}).Draw(t, "gap")
		text := fmt.Sprintf("%s%d%s%d/%d in", sign, whole, gap, top, bottom)
		want := 25.4 * (float64(whole) + float64(top)/float64(bottom))
		if sign == "-" || sign == "−" {
			want = -want
		}
		if got, err := unit.ParseLength(text, ""); err != nil || !near(float64(got), want) {
			t.Fatalf("%q: %v, %v; want %v", text, float64(got), err, want)
		}
	})
}

// A number written with thousands commas is never read as a smaller one.
func TestThousandsAreNeverDecimals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		groups := rapid.SliceOfN(rapid.IntRange(0, 999), 1, 3).Draw(t, "groups")
		text := strconv.Itoa(rapid.IntRange(1, 999).Draw(t, "first"))
		for _, g := range groups {
			text += fmt.Sprintf(",%03d", g)
		}
		text += rapid.SampledFrom([]string{"", ".5", ".25"}).Draw(t, "decimals")
		for name, p := range parsers {
			if got, err := p.parse(text + " " + p.sizes[0].spellings[0]); !errors.Is(err, unit.DoubtfulComma) && !errors.Is(err, unit.ThousandsSigns) {
				t.Fatalf("%s %s: read as %v, %v", name, text, got, err)
			}
		}
	})
}
