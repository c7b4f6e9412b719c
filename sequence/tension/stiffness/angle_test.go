package stiffness

import (
	"math"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/tensiontest"

	"pgregory.net/rapid"
)

// All expected values in this file follow from first principles.

func drawTurn(t *rapid.T) TorqueAngle {
	b := drawBolt(t)
	full, err := screw.Target(screw.Bolt{Thread: b.Thread, Class: b.Class, Friction: b.Friction, YieldShare: 0.9, Equation: b.Equation})
	if err != nil {
		t.Fatal(err)
	}
	return TorqueAngle{Bolt: b, Grip: drawGrip(t, b.Thread.MajorMm), Snug: full.Torque * unit.Torque(rapid.Float64Range(0.05, 0.8).Draw(t, "snug")),
		Angle: unit.Angle(rapid.Float64Range(0, 360).Draw(t, "angle"))}
}

func mustTurn(t rapid.TB, a TorqueAngle) Turned {
	t.Helper()
	r, err := TurnOn(a)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// Below yield the preload follows the straight line; beyond it, it is below the
// line and never above the tensile strength. There is no permanent stretch
// below yield.
func TestPreloadBendsOffAtYield(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawTurn(t)
		r := mustTurn(t, a)
		for _, at := range []AfterAngle{r.Low, r.Nominal, r.High} {
			line := at.Snug + preloadOfAngle(a.Angle, a.Bolt.Thread.PitchMm, r.Joint.Bolt, r.Joint.Members)
			switch {
			case a.Angle <= at.AngleToYield:
				if math.Abs(float64(at.Preload/line)-1) > 1e-9 || at.Lasting != 0 || !at.Reusable || at.Breaks || at.Necks {
					t.Fatalf("below yield: %+v; the line gives %v", at, line)
				}
			case at.Preload >= line || at.Lasting <= 0:
				t.Fatalf("beyond yield: %+v; the line gives %v", at, line)
			}
			if at.YieldUsed > float64(r.Strength.Hardened()/r.Strength.Yield)*(1+1e-9) {
				t.Fatalf("%v of yield", at.YieldUsed)
			}
			if !(at.AngleToYield <= at.AngleToGreatest && at.AngleToGreatest <= at.AngleToBreak) {
				t.Fatalf("angles %v, %v, %v", at.AngleToYield, at.AngleToGreatest, at.AngleToBreak)
			}
			if at.Breaks != (a.Angle > at.AngleToBreak) && math.Abs(float64(a.Angle-at.AngleToBreak)) > 1e-6 {
				t.Fatalf("breaks %v at %v of %v", at.Breaks, a.Angle, at.AngleToBreak)
			}
			if at.Necks != (a.Angle > at.AngleToGreatest) && math.Abs(float64(a.Angle-at.AngleToGreatest)) > 1e-6 {
				t.Fatalf("necks %v at %v of %v", at.Necks, a.Angle, at.AngleToGreatest)
			}
			if r.Joint.Bolt <= 0 || at.Reusable && at.LastingStrain > MostLastingStrain {
				t.Fatalf("%+v", at)
			}
		}
	})
}

// The advance of the nut equals the stretch of the bolt, its shift in the thread
// of the nut, and the compression of the members.
func TestTheNutAdvancesByWhatGivesWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawTurn(t)
		r := mustTurn(t, a)
		at := r.Nominal
		if at.Breaks {
			return
		}
		advance := float64(a.Angle) / 360 * a.Bolt.Thread.PitchMm
		elastic := r.Joint.Members.Resilience() + r.Joint.Bolt.Resilience() - r.Joint.Elongation
		if gives := float64(at.Stretch) + float64(at.Preload-at.Snug)*float64(elastic); math.Abs(gives-advance) > 1e-6 {
			t.Fatalf("gives way by %v mm; the nut advances %v mm", gives, advance)
		}
	})
}

// After the angle to the aim, the preload equals the aim.
func TestAngleToAimReachesTheAim(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawTurn(t)
		a.Snug /= 4
		aim := mustTurn(t, a)
		if aim.Nominal.Snug > aim.Aim {
			return
		}
		a.Angle = aim.Nominal.AngleToAim
		r := mustTurn(t, a)
		tensiontest.Near(t, "preload", float64(r.Nominal.Preload), float64(r.Aim), 1e-9)
	})
}

// A larger angle never reduces the permanent stretch, and the preload increases
// up to its maximum.
func TestMoreAngleStretchesMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawTurn(t)
		less := mustTurn(t, a).Nominal
		a.Angle += unit.Angle(rapid.Float64Range(0.1, 90).Draw(t, "more"))
		more := mustTurn(t, a).Nominal
		if more.Lasting < less.Lasting-1e-9 || !more.Necks && more.Preload < less.Preload*(1-1e-12) {
			t.Fatalf("%+v after %+v", more, less)
		}
	})
}

// A stretch bolt with a long free thread: a second quarter turn beyond yield
// adds almost no preload, but most of the turn becomes permanent stretch.
func TestSecondQuarterTurnOfAStretchBolt(t *testing.T) {
	known := screw.Same(screw.Between(0.12, 0.12))
	a := TorqueAngle{Bolt: screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Friction: &known}, Snug: 40, Angle: 90,
		Grip: Grip{Layers: []Layer{{95, "cast aluminium"}}, TappedIn: "grey cast iron", Shank: []Section{{45, 10}}}}
	first := mustTurn(t, a).Nominal
	a.Angle = 180
	second := mustTurn(t, a)
	gain := float64(second.Nominal.Preload/first.Preload) - 1
	line := float64(preloadOfAngle(90, 1.5, second.Joint.Bolt, second.Joint.Members)) / float64(first.Preload)
	if gain < 0 || gain > 0.05 || line < 0.4 {
		t.Errorf("gains %.1f %%; the straight line %.1f %%", gain*100, line*100)
	}
	advance := 90.0 / 360 * 1.5
	if on := float64(second.Nominal.Lasting - first.Lasting); on < 0.85*advance || on > advance {
		t.Errorf("stretches on by %.3f mm of %.3f mm", on, advance)
	}
	if second.Nominal.Reusable || second.Nominal.Breaks {
		t.Errorf("%+v", second.Nominal)
	}
}

// A waisted bolt yields in its waist, at the load of the waist's area.
func TestWaistedBoltYieldsInItsWaist(t *testing.T) {
	known := screw.Same(screw.Between(0.12, 0.12))
	grip := Simple(60)
	grip.Shank = []Section{{40, 7}}
	r := mustTurn(t, TorqueAngle{Bolt: screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Friction: &known}, Grip: grip, Snug: 20, Angle: 120})
	arm := screw.ThreadArmMm(tensiontest.Thread(t, "M10"), 0.12, screw.Exact)
	// √(σ² + 3 τ²) with σ = F/A and τ = 12 F arm/(π d³).
	area := math.Pi / 4 * 49
	per := math.Hypot(1/area, math.Sqrt(3)*12*arm/(math.Pi*343))
	yields := 940 / per
	rise := preloadOfAngle(r.Nominal.AngleToYield, 1.5, r.Joint.Bolt, r.Joint.Members)
	tensiontest.Near(t, "yields at", float64(r.Nominal.Snug+rise), yields, 1e-9)
	if got := float64(r.Nominal.Preload); got <= yields || got > yields*1040/940 {
		t.Errorf("%v N; yields at %v N", got, yields)
	}
	// The waist is 40 mm with one strain; the thread stays elastic.
	tensiontest.Near(t, "stays longer", float64(r.Nominal.Lasting), 40*r.Nominal.LastingStrain, 1e-9)
}

// Just before it breaks, the bolt has lost 0.15 of its greatest preload, which
// is the tensile strength reduced by the torsion.
func TestPreloadFallsUntilTheBoltBreaks(t *testing.T) {
	known := screw.Same(screw.Between(0.12, 0.12))
	a := TorqueAngle{Bolt: screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Friction: &known}, Snug: 40, Grip: Simple(60)}
	ends := mustTurn(t, a).Nominal
	greatest := float64(screw.PreloadAtYieldShare(1, 1040, a.Bolt.Thread, unit.Length(a.Bolt.Thread.StressDiameterMm()), 0.12, screw.Exact))
	for angle, share := range map[unit.Angle]float64{ends.AngleToGreatest - 1e-6: 1, ends.AngleToBreak - 1e-6: 0.85} {
		a.Angle = angle
		r := mustTurn(t, a).Nominal
		tensiontest.Near(t, "preload", float64(r.Preload), share*greatest, 1e-6)
		tensiontest.Near(t, "peak", float64(r.Peak), greatest, 1e-6)
	}
}

// First principles: a torque above that of the greatest preload breaks the
// bolt, so no angle is left.
func TestSnugTorqueAloneCanBreakTheBolt(t *testing.T) {
	known := screw.Same(screw.Between(0.12, 0.12))
	a := TorqueAngle{Bolt: screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Friction: &known}, Snug: 200, Angle: 10, Grip: Simple(60)}
	r := mustTurn(t, a)
	if !r.Nominal.Breaks || r.Nominal.AngleToBreak != 0 {
		t.Errorf("breaks %v, at %v; want at once", r.Nominal.Breaks, r.Nominal.AngleToBreak)
	}
}

func TestTurnOnErrorsSayWhatIsAllowed(t *testing.T) {
	good := TorqueAngle{Bolt: screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "oil"}, Grip: Simple(95), Snug: 40, Angle: 90}
	tensiontest.Refuses(t, words.English().Error, TurnOn, good, map[string]func(*TorqueAngle){
		"snug torque -1 N·m; allowed: 0 or more":            func(a *TorqueAngle) { a.Snug = -1 },
		"snug torque NaN N·m":                               func(a *TorqueAngle) { a.Snug = unit.Torque(math.NaN()) },
		"angle -90°; allowed: 0° to 3600°":                  func(a *TorqueAngle) { a.Angle = -90 },
		"angle NaN°":                                        func(a *TorqueAngle) { a.Angle = unit.Angle(math.NaN()) },
		"a preload of 90.0 kN is more than M10×1.5 of clas": func(a *TorqueAngle) { a.Bolt.Preload = 90e3 },
		"the class is missing":                              func(a *TorqueAngle) { a.Bolt.Class = "" },
	})
}

// A torque past yield gives the same state as TurnOn after the same snug
// torque.
func TestATorquePastYieldIsOnTheCurveOfTurnOn(t *testing.T) {
	b := screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "oil"}
	for _, torque := range []unit.Torque{40, 62, 75, 85, 200} {
		r, err := screw.AtTorque(b, torque)
		if err != nil {
			t.Fatal(err)
		}
		turned, err := TurnOn(TorqueAngle{Bolt: b, Grip: Simple(60), Snug: torque})
		if err != nil {
			t.Fatal(err)
		}
		for i, at := range []screw.AtFriction{r.Low, r.Nominal, r.High} {
			after := []AfterAngle{turned.Low, turned.Nominal, turned.High}[i]
			tensiontest.Near(t, "preload", float64(at.Borne), float64(after.Snug), 1e-9)
			if at.Breaks() != after.Breaks || at.Yields() != (after.Lasting > 0) {
				t.Errorf("%v N·m, friction %v: %+v; %+v", torque, at.Thread, at, after)
			}
		}
	}
}
