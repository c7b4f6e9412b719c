package screw

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/tensiontest"
)

func oiled(t *testing.T) Bolt {
	t.Helper()
	return Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "engine oil"}
}

func codeOf(err error) finding.Code {
	f, _ := err.(finding.Finding)
	return f.Code
}

// VDI 2230 Part 1, table A5: classes A to E. B extends to half way between the
// middles of B and C, 0.155, and C to half way between those of C and D,
// 0.2325.
func TestClassOfAFriction(t *testing.T) {
	t.Parallel()
	for friction, want := range map[float64]string{
		0.04: "A 0.04 0.1", 0.079: "A 0.04 0.1", 0.08: "B 0.08 0.16", 0.154: "B 0.08 0.16", 0.156: "C 0.14 0.24",
		0.232: "C 0.14 0.24", 0.234: "D 0.2 0.35", 0.349: "D 0.2 0.35",
	} {
		letter, class := ClassOf(friction)
		if got := fmt.Sprint(letter, " ", class.Low, " ", class.High); got != want {
			t.Errorf("%g: %s, want %s", friction, got, want)
		}
	}
	for _, friction := range []float64{0.35, 0.36} {
		if letter, class := ClassOf(friction); letter != "E" || class.Low != 0.30 {
			t.Errorf("%g: %s %v", friction, letter, class)
		}
	}
}

// A single figure gets the range of its class, separately in the thread and
// under the head, and is within it; a stated range is not changed.
func TestSpreadOfAFriction(t *testing.T) {
	t.Parallel()
	got := Friction{Thread: Between(0.12, 0.12), Head: Between(0.1, 0.14)}.Spread()
	if want := (Friction{Range{0.08, 0.12, 0.16}, Between(0.1, 0.14)}); got != want {
		t.Errorf("%v, want %v", got, want)
	}
	if got := Same(Between(0.03, 0.03)).Spread().Head; got != (Range{0.03, 0.03, 0.10}) {
		t.Errorf("below every class: %v", got)
	}
}

// Stated values of the aim and the friction are rejected outside their limits,
// and accepted at them (first principles: a share is above 0 and at most 1).
func TestSpansOfABolt(t *testing.T) {
	t.Parallel()
	friction := func(low, nominal, high float64) func(*Bolt) {
		return func(b *Bolt) { b.Lubricant, b.Friction = "", &Friction{Range{low, nominal, high}, Between(0.1, 0.1)} }
	}
	least, most := unit.Sensible.Friction.Least, unit.Sensible.Friction.Most
	for _, c := range []struct {
		change func(b *Bolt)
		want   finding.Code
	}{
		{func(b *Bolt) { b.ProofShare = 1 }, ""},
		{func(b *Bolt) { b.ProofShare = 1.01 }, ProofShareRange},
		{func(b *Bolt) { b.ProofShare = -0.1 }, ProofShareRange},
		{func(b *Bolt) { b.YieldShare = 1 }, ""},
		{func(b *Bolt) { b.YieldShare = 1.01 }, YieldShareRange},
		{func(b *Bolt) { b.YieldShare = -0.1 }, YieldShareRange},
		{func(b *Bolt) { b.Preload = 1 }, ""},
		{func(b *Bolt) { b.Preload = -1 }, NoAim},
		{func(b *Bolt) { b.Preload = unit.Force(math.Inf(1)) }, NoAim},
		{func(b *Bolt) { b.Preload, b.ProofShare = 20000, 0.5 }, SeveralAims},
		{func(b *Bolt) { b.YieldShare, b.ProofShare = 0.5, 0.5 }, SeveralAims},
		{func(b *Bolt) { b.YieldShare, b.Preload = 0.5, 20000 }, SeveralAims},
		{friction(least, least, least), ""},
		{friction(least/1.1, least, least), FrictionRange},
		{friction(most, most, most), ""},
		{friction(0.1, 0.1, most*1.1), FrictionRange},
		{friction(0.1, 0.09, 0.12), FrictionFalls},
		{friction(0.1, 0.13, 0.12), FrictionFalls},
		{func(b *Bolt) { b.NutFactor = 0.2 }, FactorWithFriction},
		{func(b *Bolt) { b.Lubricant, b.NutFactor = "", 1 }, ""},
		{func(b *Bolt) { b.Lubricant, b.NutFactor = "", 1.01 }, FactorRange},
		{func(b *Bolt) { b.Lubricant, b.NutFactor = "", 0.01 }, FactorRange},
		{func(b *Bolt) { b.Equation = "none" }, NoSuchEquation},
		{func(b *Bolt) { b.Thread.PitchMm = 0 }, NoThread},
		{func(b *Bolt) { b.Thread.PitchMm = 5.1 }, NoThread},
		{func(b *Bolt) { b.Lubricant = "sand" }, NoSuchLubricant},
	} {
		b := oiled(t)
		c.change(&b)
		if _, err := Complete(b); codeOf(err) != c.want || (err == nil) != (c.want == "") {
			t.Errorf("%+v: %v, want %q", b, err, c.want)
		}
	}
}

// The aim is compared with the preload at which the bolt yields, which is
// reported rounded down to whole hundreds of newtons.
func TestAimAgainstYield(t *testing.T) {
	t.Parallel()
	b := oiled(t)
	s, err := Complete(b)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := s.AimAt(0.12), PreloadAtYieldShare(UsualYieldShare, s.Strength.Yield, s.Thread, s.Least(), 0.12, s.Equation); got != want || want == 0 {
		t.Errorf("the aim is %v, want %v", got, want)
	}
	most := PreloadAtYieldShare(1, s.Strength.Yield, s.Thread, s.Least(), s.Friction.Thread.Nominal, s.Equation)
	for share, passes := range map[unit.Force]bool{0.999: true, 1: true, 1.001: false} {
		b.Preload = share * most
		if s, err = Complete(b); err != nil {
			t.Fatal(err)
		}
		if s.AimAt(0.12) != b.Preload {
			t.Errorf("the aim is %v, want %v", s.AimAt(0.12), b.Preload)
		}
		err := s.CheckAim()
		if (err == nil) != passes {
			t.Errorf("%v of what brings it to yield: %v", share, err)
		}
		if f, ok := err.(finding.Finding); ok {
			if told := f.Values["most"].(unit.Force); told > most || told < most-100 || math.Mod(float64(told), 100) != 0 {
				t.Errorf("at most %v is told as %v", most, told)
			}
		}
	}
}

// Stainless steel has class B with a solid lubricant, and up to 0.35 with any
// other, or if none is stated (VDI 2230 Part 1, table A5, value from memory).
func TestFrictionOfStainless(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ class, lubricant, want string }{
		{"A2-70", "moly paste", "0.08 0.16"}, {"A2-70", "anti-seize", "0.08 0.16"}, {"A2-70", "engine oil", "0.08 0.35"}, {"A2-70", "dry", "0.14 0.35"}, {"A2-70", "", "0.08 0.35"},
		{"10.9", "moly paste", "0.04 0.1"}, {"10.9", "engine oil", "0.08 0.16"}, {"10.9", "dry", "0.14 0.24"}, {"10.9", "", "0.08 0.24"},
	} {
		b := oiled(t)
		b.Class, b.Lubricant = c.class, c.lubricant
		s, err := Complete(b)
		if got := fmt.Sprint(s.Friction.Thread.Low, " ", s.Friction.Thread.High); err != nil || got != c.want || s.Friction.Thread != s.Friction.Head {
			t.Errorf("%s with %q: %s, %v; want %s", c.class, c.lubricant, got, err, c.want)
		}
	}
	for word, want := range map[string]bool{"dry": true, "engine oil": false, "": false} {
		if NothingOn(word) != want {
			t.Errorf("%q: nothing on it %v", word, !want)
		}
	}
}

// First principles: a factor and its friction convert into each other, also
// above a friction of 1; below the factor without friction it is negative.
func TestNutFactorThereAndBack(t *testing.T) {
	t.Parallel()
	m10 := tensiontest.Thread(t, "M10")
	for _, friction := range []float64{0.05, 0.2, 0.9, 1.5, 7} {
		k := NutFactor(m10, 13, friction, friction, Exact)
		tensiontest.Near(t, "friction", FrictionOfNutFactor(k, m10, 13, Exact), friction, 1e-9)
	}
	none := NutFactor(m10, 13, 0, 0, Exact)
	tensiontest.Near(t, "below all friction", FrictionOfNutFactor(none-0.01, m10, 13, Exact), -0.01, 1e-9)
	for text, passes := range map[string]bool{"1": true, "1.01": false, "0.2": true, "0": false, "K": false} {
		v, err := ParseNutFactor(text)
		if (err == nil) != passes || passes && fmt.Sprint(v) != text {
			t.Errorf("%q: %g, %v", text, v, err)
		}
		if f, ok := err.(finding.Finding); ok && (f.Values["most"] != 1 && f.Values["most"] != 1. || f.Values["usual"] != 0.2) {
			t.Errorf("%q: %v", text, f.Values)
		}
	}
}

// A result lists its sources: the standard of the thread, the class, the
// equation.
func TestSourcesOfATarget(t *testing.T) {
	t.Parallel()
	inch := Bolt{Thread: tensiontest.Thread(t, "3/8-16 UNC"), Class: "grade 8", Lubricant: "engine oil"}
	linear, factor := oiled(t), oiled(t)
	linear.Equation = Linear
	factor.Lubricant, factor.NutFactor = "", 0.2
	for name, c := range map[string]struct {
		b    Bolt
		want string
	}{
		"linear": {linear, "ISO 16047 (linear equation)"},
		"inch":   {inch, "ASME B1.1 (thread)"}, "factor": {factor, "Shigley 9th ed., Eq. (8-27) (nut factor)"},
	} {
		r, err := Target(c.b)
		if err != nil || !slices.Contains(r.Sources, c.want) || !slices.Contains(r.Sources, r.Strength.Standard+" (strength)") {
			t.Errorf("%s: %q, %v", name, r.Sources, err)
		}
		plain, err := Target(oiled(t))
		if err != nil || slices.Contains(plain.Sources, c.want) {
			t.Errorf("a plain bolt: %q, %v", plain.Sources, err)
		}
	}
}
