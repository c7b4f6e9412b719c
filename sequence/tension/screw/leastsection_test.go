package screw

import (
	"errors"
	"math"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/tensiontest"
)

// A waisted bolt, from first principles: in a rod of 7.3 mm, σ = F/A and τ = 16
// M/(π d³) times 3/4 (the whole section yields), by von Mises. Minor figures
// from the arithmetic by hand: M10, 10.9, µ = 0.08, breaks at 46 N·m.
func TestWaistRulesTheAim(t *testing.T) {
	m10, oiled := tensiontest.Thread(t, "M10"), Same(Between(0.08, 0.08))
	r, err := Target(Bolt{Thread: m10, Class: "10.9", Friction: &oiled, Shank: 7.3})
	if err != nil {
		t.Fatal(err)
	}
	area, arm := math.Pi/4*7.3*7.3, ThreadArmMm(m10, 0.08, Exact)
	tau := 0.75 * 16 * arm / (math.Pi * math.Pow(7.3, 3))
	perNewton := math.Sqrt(1/(area*area) + 3*tau*tau)
	tensiontest.Near(t, "section", r.LeastSectionMm2, area, 1e-12)
	tensiontest.Near(t, "aim", float64(r.Preload), 0.9*940/perNewton, 1e-9)
	tensiontest.Near(t, "greatest", float64(r.Nominal.Greatest), 1040/perNewton, 1e-9)
	tensiontest.Near(t, "breaks", float64(r.Nominal.BreakTorque), 46.1, 0.005)
	tensiontest.Near(t, "proof load", float64(r.ProofLoad), 830*area, 1e-12)
	if !r.ShankRules() || r.Torque >= r.Nominal.BreakTorque*0.9 {
		t.Errorf("%+v", r)
	}
}

// A reduced shank, 9.03 mm as the pitch diameter, is thicker than the stress
// diameter of 8.59 mm: the thread still rules.
func TestThickShankChangesNothing(t *testing.T) {
	b := Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "engine oil"}
	plain, err := Target(b)
	if err != nil {
		t.Fatal(err)
	}
	for _, shank := range []unit.Length{9.03, 10, 11} {
		b.Shank = shank
		r, err := Target(b)
		if err != nil || r.Torque != plain.Torque || r.ShankRules() || r.LeastSectionMm2 != plain.LeastSectionMm2 {
			t.Errorf("%v: %v %+v", shank, err, r)
		}
	}
}

// The limits are half and twice the thread (common practice, no source).
func TestShankLimits(t *testing.T) {
	m10 := tensiontest.Thread(t, "M10")
	for shank, fits := range map[unit.Length]bool{5: true, 20: true, 4.99: false, 20.01: false, -1: false, unit.Length(math.NaN()): false} {
		err := CheckShank(m10, shank)
		if (err == nil) != fits || err != nil && !errors.Is(err, ShankRange) {
			t.Errorf("%v: %v", shank, err)
		}
	}
}

// VDI 2230-1, table A2: dT = 0.9 d3 (value from memory); d3 of ISO 724.
func TestUsualWaist(t *testing.T) {
	for name, want := range map[string]unit.Length{"M8": 5.8, "M10": 7.3, "M12": 8.9, "M16": 12.2} {
		if got := Waist(tensiontest.Thread(t, name)); math.Abs(float64(got-want)) > 1e-9 {
			t.Errorf("%s: %v; want %v", name, got, want)
		}
	}
}
