package screw

import (
	"math"
	"strings"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence/tension/tensiontest"

	"pgregory.net/rapid"
)

// All expected values in this file follow from first principles.

// A stated preload results at nominal friction, and AtTorque converts the
// torque back to it.
func TestStatedPreloadComesOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBolt(t)
		b.YieldShare = 0
		most := PreloadAtYieldShare(1, mustClass(t, b.Class, b.Thread).Yield, b.Thread, unit.Length(b.Thread.StressDiameterMm()), b.Friction.Thread.Nominal, b.Equation)
		b.Preload = most * unit.Force(rapid.Float64Range(0.05, 0.999).Draw(t, "share"))
		r, err := Target(b)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(float64(r.Preload/b.Preload)-1) > 1e-9 || r.Preload != r.Nominal.Preload || math.Abs(r.Nominal.YieldShare-float64(b.Preload/most)) > 1e-9 {
			t.Fatalf("%v N and %v of yield; want %v N and %v", r.Preload, r.Nominal.YieldShare, b.Preload, b.Preload/most)
		}
		back, err := AtTorque(b, r.Torque)
		if err != nil || math.Abs(float64(back.Preload/b.Preload)-1) > 1e-9 || back.Low != r.Low || back.High != r.High {
			t.Fatalf("%+v, %v", back, err)
		}
		if sum := r.Nominal.Split.Stretch + r.Nominal.Split.Thread + r.Nominal.Split.Head; math.Abs(sum-1) > 1e-12 || math.Abs(r.Nominal.Split.Stretch-ThreadArmMm(b.Thread, 0, b.Equation)*float64(r.Preload)/1000/float64(r.Torque)) > 1e-9 {
			t.Fatalf("%+v", r.Nominal.Split)
		}
	})
}

// K and its friction convert into each other, and the short equation equals the
// long one at that friction.
func TestNutFactorAndFrictionUndoOneAnother(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBolt(t)
		friction := rapid.Float64Range(0.01, 0.6).Draw(t, "friction")
		effective := unit.Length(b.Thread.MajorMm * 1.3)
		k := NutFactor(b.Thread, effective, friction, friction, b.Equation)
		if got := FrictionOfNutFactor(k, b.Thread, effective, b.Equation); math.Abs(got-friction) > 1e-9 {
			t.Fatalf("%v came back as %v", friction, got)
		}
		long := Torque(10000, b.Thread, effective, friction, friction, b.Equation)
		short := unit.Torque(10000 * k * b.Thread.MajorMm / 1000) // Shigley 9th ed., Eq. (8-27): T = K F d
		if math.Abs(float64(short/long)-1) > 1e-9 {
			t.Fatalf("%v N·m; the long equation gives %v", short, long)
		}
	})
}

func TestAimErrorsSayWhatIsAllowed(t *testing.T) {
	good := Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "oil"}
	tensiontest.Refuses(t, words.English().Error, Target, good, map[string]func(*Bolt){
		"more than one aim is stated; allowed: one of":                                     func(b *Bolt) { b.ProofShare, b.Preload = 0.75, 3000 },
		"share 1.2 of the proof load; allowed: above 0 up to 1":                            func(b *Bolt) { b.ProofShare = 1.2 },
		"share NaN of the proof load":                                                      func(b *Bolt) { b.ProofShare = math.NaN() },
		"preload -3 N; allowed: above 0":                                                   func(b *Bolt) { b.Preload = -3 },
		"a preload of 60.0 kN is more than M10×1.5 of class 10.9 can take":                 func(b *Bolt) { b.Preload = 60e3 },
		"a nut factor K of 0.2 is given together with friction or a lubrican":              func(b *Bolt) { b.NutFactor = 0.2 },
		"nut factor K 0.01 is out of range for M10×1.5; allowed: above 0.024 (no friction": func(b *Bolt) { b.NutFactor, b.Lubricant = 0.01, "" },
		"nut factor K 2 is out of range":                                                   func(b *Bolt) { b.NutFactor, b.Lubricant = 2, "" },
		"nut factor K NaN is out of range":                                                 func(b *Bolt) { b.NutFactor, b.Lubricant = math.NaN(), "" },
	})
	for _, torque := range []unit.Torque{0, -1, unit.Torque(math.NaN()), unit.Torque(math.Inf(1))} {
		if _, err := AtTorque(good, torque); err == nil || !strings.Contains(words.English().Error(err), "allowed: above 0") {
			t.Errorf("%v N·m: %v", torque, err)
		}
	}
}

// First principles: the torque is proportional to the combined stress, so that
// the 53.4 N·m for 90 % of yield become 59.3 N·m at yield, and times Rm/Rp0.2
// of ISO 898-1, 1040/940, 65.6 N·m when the bolt breaks.
func TestTooMuchTorqueIsTold(t *testing.T) {
	r, err := AtTorque(Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "oil"}, 75)
	if err != nil {
		t.Fatal(err)
	}
	if r.Nominal.Yields() || !r.Low.Breaks() {
		t.Errorf("%+v", r)
	}
	tensiontest.Near(t, "at yield", float64(r.Low.YieldTorque), 59.3, 0.001)
	tensiontest.Near(t, "at breaking", float64(r.Low.BreakTorque), 65.6, 0.001)
	tensiontest.Near(t, "breaking over yielding", float64(r.Low.BreakTorque/r.Low.YieldTorque), 1040./940, 1e-9)
	tensiontest.Near(t, "breaking torque and greatest preload", float64(r.Low.BreakTorque/r.Torque), float64(r.Low.Greatest/r.Low.Preload), 1e-9)
}
