package screw

import (
	"math"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence/tension"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/tensiontest"

	"pgregory.net/rapid"
)

// All expected values in this file follow from first principles.

// Independent arithmetic from the formulas of ISO 16047, to 3 decimals.
func TestTorqueAgainstIndependentArithmetic(t *testing.T) {
	for _, row := range tensiontest.Published(t, "formula_comparison.csv") {
		s := tensiontest.Thread(t, row[0])
		v := func(i int) float64 { return testkit.Number(t, row[i]) }
		for e, want := range map[Equation]float64{Exact: v(5), Linear: v(6)} {
			got := Torque(unit.Force(v(1)*1000), s, unit.Length(v(4)), v(2), v(3), e)
			if math.Abs(float64(got)-want) > 0.00051 {
				t.Errorf("%s %s: %.4f N·m; want %v", row[0], e, float64(got), want)
			}
		}
	}
}

var (
	someThreads = []string{"M5", "M6", "M8", "M8x1", "M10", "M10x1.25", "M12x1.25", "M16", "M20x1.5", "M24", "M36", "1/4-20", "3/8-16", "1/2-20", "1-8", "1 1/8-8 UN"}
	classesOf   = map[bool][]string{false: {"4.6", "8.8", "10.9", "12.9", "A193 B7", "700 MPa"}, true: {"grade 1", "grade 5", "grade 8", "A193 B7", "100 ksi"}}
)

func drawRange(t *rapid.T, name string) Range {
	low := rapid.Float64Range(0.02, 0.5).Draw(t, name+" low")
	return Between(low, low+rapid.Float64Range(0, 0.5).Draw(t, name+" span"))
}

func drawBolt(t *rapid.T) Bolt {
	s, err := thread.Parse(rapid.SampledFrom(someThreads).Draw(t, "thread"))
	if err != nil {
		t.Fatal(err)
	}
	return Bolt{
		Thread:     s,
		Class:      rapid.SampledFrom(classesOf[s.Unified()]).Draw(t, "class"),
		Friction:   &Friction{drawRange(t, "thread"), drawRange(t, "head")},
		YieldShare: rapid.Float64Range(0.1, 1).Draw(t, "share"),
		Equation:   rapid.SampledFrom(Equations).Draw(t, "equation"),
	}
}

// At any friction of the range, the set torque does not exceed the bolt's
// share; at one friction it reaches the share.
func TestSetTorqueIsSafeEverywhereInTheSpan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBolt(t)
		r, err := Target(b)
		if err != nil {
			t.Fatal(err)
		}
		inside := func(g Range, name string) float64 {
			return g.Low + (g.High-g.Low)*rapid.Float64Range(0, 1).Draw(t, name)
		}
		used := func(threadFriction, headFriction float64) float64 {
			preload := Preload(r.Torque, b.Thread, r.Effective, threadFriction, headFriction, r.Equation)
			// von Mises from the parts: tension, and torsion over π/12 dS³.
			ds := b.Thread.StressDiameterMm()
			tensile := float64(preload) / (math.Pi / 4 * ds * ds)
			torsion := float64(preload) * ThreadArmMm(b.Thread, threadFriction, r.Equation) / (math.Pi / 12 * ds * ds * ds)
			return math.Sqrt(tensile*tensile+3*torsion*torsion) / float64(r.Strength.Yield)
		}
		if share := used(inside(b.Friction.Thread, "thread friction"), inside(b.Friction.Head, "head friction")); share > b.YieldShare*(1+1e-9) {
			t.Fatalf("share %v over the allowed %v", share, b.YieldShare)
		}
		worst := math.Max(used(b.Friction.Thread.Low, b.Friction.Head.Low), used(b.Friction.Thread.High, b.Friction.Head.Low))
		if math.Abs(worst-b.YieldShare) > 1e-9 {
			t.Fatalf("the worst share is %v; want %v", worst, b.YieldShare)
		}
		if math.Abs(r.Low.YieldShare-used(r.Low.Thread, r.Low.Head)) > 1e-9 {
			t.Fatalf("the result says %v of yield at the low friction; the parts give %v", r.Low.YieldShare, used(r.Low.Thread, r.Low.Head))
		}
	})
}

// At the same torque, more friction leaves less preload; the set torque never
// exceeds the full torque at low friction.
func TestPreloadFallsWithFriction(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, err := Target(drawBolt(t))
		if err != nil {
			t.Fatal(err)
		}
		if !(r.Low.Preload >= r.Nominal.Preload && r.Nominal.Preload >= r.High.Preload && r.High.Preload > 0) {
			t.Fatalf("preloads %v, %v, %v do not fall", r.Low.Preload, r.Nominal.Preload, r.High.Preload)
		}
		if r.Preload != r.Low.Preload || r.Torque > r.Low.FullTorque {
			t.Fatalf("%+v", r)
		}
	})
}

func TestPreloadUndoesTorque(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBolt(t)
		force := unit.Force(rapid.Float64Range(1, 1e6).Draw(t, "preload"))
		effective := unit.Length(rapid.Float64Range(5, 100).Draw(t, "effective"))
		torque := Torque(force, b.Thread, effective, b.Friction.Thread.Low, b.Friction.Head.Low, b.Equation)
		back := Preload(torque, b.Thread, effective, b.Friction.Thread.Low, b.Friction.Head.Low, b.Equation)
		if math.Abs(float64(back-force)) > 1e-9*float64(force) {
			t.Fatalf("%v N came back as %v N", force, back)
		}
	})
}

// tan(φ + ρ′) = (tan φ + tan ρ′)/(1 − tan φ tan ρ′), so the linear form is
// below the exact one by the factor in the thread.
func TestLinearFormIsBelowTheExactOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBolt(t)
		friction := b.Friction.Thread.Low
		lead := b.Thread.PitchMm / (math.Pi * b.Thread.PitchDiameterMm())
		want := 1 - lead*friction/math.Cos(math.Pi/6)
		if got := ThreadArmMm(b.Thread, friction, Linear) / ThreadArmMm(b.Thread, friction, Exact); math.Abs(got-want) > 1e-9 {
			t.Fatalf("linear over exact %v; want %v", got, want)
		}
	})
}

// The torque increases with the class and with the share; it does not depend on
// how the class is written.
func TestTorqueGrowsWithTheClass(t *testing.T) {
	torque := func(class string, share float64) float64 {
		r, err := Target(Bolt{Thread: tensiontest.Thread(t, "M10"), Class: class, Lubricant: "engine oil", YieldShare: share})
		if err != nil {
			t.Fatal(err)
		}
		return float64(r.Torque)
	}
	tensiontest.Near(t, "10.9 over 8.8", torque("10.9", 0.9)/torque("8.8", 0.9), 940.0/640, 1e-12)
	tensiontest.Near(t, "0.45 over 0.9", torque("8.8", 0.45)/torque("8.8", 0.9), 0.5, 1e-12)
	tensiontest.Near(t, "the usual share", torque("8.8", 0), torque("8.8", 0.9), 1e-12)
}

func TestAssumptionsNameWhatWasNotStated(t *testing.T) {
	m10 := tensiontest.Thread(t, "M10")
	for _, c := range []struct {
		bolt Bolt
		want []string
	}{
		{Bolt{Thread: m10, Class: "10.9", Lubricant: "oiled"}, []string{
			"friction 0.08–0.16 for engine oil (VDI 2230)",
			"face under the head 14.63 mm (ISO 4014)",
			"hole 11 mm (ISO 273)",
			"90 % of the yield stress (VDI 2230)",
		}},
		{Bolt{Thread: m10, Class: "700 MPa", HeadAcross: 16, Hole: 10.5, YieldShare: 0.8}, []string{
			"yield stress 700 MPa, as the proof stress",
			"lubricant not stated: friction 0.08–0.24",
			"face under the head 14.63 mm (head of 16 mm)",
		}},
		{Bolt{Thread: m10, Class: "10.9", Friction: &Friction{Between(0.1, 0.14), Between(0.12, 0.12)}, WasherFace: 20, Hole: 11, YieldShare: 0.9}, nil},
		{Bolt{Thread: m10, Class: "10.9", Friction: &Friction{Between(0.12, 0.12), Between(0.1, 0.14)}, WasherFace: 20, Hole: 11, YieldShare: 0.9}, nil},
		{Bolt{Thread: tensiontest.Thread(t, "M11"), Class: "10.9", Lubricant: "dry", WasherFace: 18, YieldShare: 0.9}, []string{
			"friction 0.14–0.24 for dry (VDI 2230)",
			"hole 12 mm",
		}},
		{Bolt{Thread: tensiontest.Thread(t, "3/8-16"), Class: "grade 8", Lubricant: "thread locker", YieldShare: 0.9}, []string{
			"friction 0.08–0.16 for thread locker (VDI 2230)",
			"face under the head 12.86 mm (ASME B18.2.1)",
			"hole 10.32 mm (ASME B18.2.8)",
		}},
		{Bolt{Thread: m10, Class: "A2-70", Friction: &Friction{Between(0.1, 0.1), Between(0.12, 0.12)}, WasherFace: 20, Hole: 11, YieldShare: 0.9}, []string{
			"no proof load in ISO 3506-1: 85 % of Rp0.2",
			"friction without scatter",
		}},
	} {
		r, err := Target(c.bolt)
		if err != nil {
			t.Error(err)
		}
		if !slices.Equal(words.English().SayAll(r.Assumptions), c.want) {
			t.Errorf("%s %s assumes\n%s\nwant\n%s", c.bolt.Thread.Name, c.bolt.Class, strings.Join(words.English().SayAll(r.Assumptions), "\n"), strings.Join(c.want, "\n"))
		}
	}
}

func TestTargetErrorsSayWhatIsAllowed(t *testing.T) {
	good := Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "engine oil"}
	tensiontest.Refuses(t, words.English().Error, Target, good, map[string]func(*Bolt){
		"the thread is missing; write for example M10":                                                  func(b *Bolt) { b.Thread = thread.Thread{} },
		"the class is missing; allowed: 4.6, 4.8":                                                       func(b *Bolt) { b.Class = " " },
		`class "11" is not known; allowed`:                                                              func(b *Bolt) { b.Class = "11" },
		`lubricant "butter" is not known; allowed: engine oil, grease, molybdenum`:                      func(b *Bolt) { b.Lubricant = "butter" },
		"friction 0 to 0.2 (thread); allowed: coefficients from 0.01 to 1":                              func(b *Bolt) { b.Friction = &Friction{Between(0, 0.2), Between(0.1, 0.2)} },
		"friction 0.1 to 12 (head); allowed":                                                            func(b *Bolt) { b.Friction = &Friction{Between(0.1, 0.2), Between(0.1, 12)} },
		"friction 0.2, 0.15, 0.1 (thread); allowed: figures that rise":                                  func(b *Bolt) { b.Friction = &Friction{Between(0.2, 0.1), Between(0.1, 0.2)} },
		"friction NaN (thread)":                                                                         func(b *Bolt) { b.Friction = &Friction{Thread: Between(math.NaN(), math.NaN())} },
		"width across flats 160 mm is out of range for M10×1.5; allowed: 10 mm to 40 mm":                func(b *Bolt) { b.HeadAcross = 160 },
		"bearing face -1 mm is out of range for M10×1.5":                                                func(b *Bolt) { b.WasherFace = -1 },
		`head "round" is not known; allowed: hexagon, socket, flange`:                                   func(b *Bolt) { b.HeadForm = "round" },
		`washer "spring" is not known; allowed: none, normal`:                                           func(b *Bolt) { b.Washer = "spring" },
		"M18×2.5 has no socket head of ISO 4762; allowed: M3, M4, M5, M6, M8, M10, M12, M14, M16, M20,": func(b *Bolt) { b.Thread, b.HeadForm = tensiontest.Thread(t, "M18"), head.Socket },
		"M20×2.5 has no flange head of ISO 4162; allowed: M5, M6, M8, M10, M12, M14, M16, or state":     func(b *Bolt) { b.Thread, b.HeadForm = tensiontest.Thread(t, "M20"), head.Flange },
		"3/8-16 UNC has no socket head of ISO 4762":                                                     func(b *Bolt) { b.Thread, b.HeadForm, b.Class = tensiontest.Thread(t, "3/8-16"), head.Socket, "grade 8" },
		"3/8-16 UNC has no washer of ISO 7089; allowed: M1.6 to M64": func(b *Bolt) {
			b.Thread, b.Washer, b.Class = tensiontest.Thread(t, "3/8-16"), head.NormalWasher, "grade 8"
		},
		"width across flats of 16 mm does not give the bearing face of a socket head; allowed: the diameter": func(b *Bolt) { b.HeadForm, b.HeadAcross = head.Socket, 16 },
		"hole 6 mm is out of range for M10×1.5":                                       func(b *Bolt) { b.Hole = 6 },
		"hole NaN mm is out of range for M10×1.5":                                     func(b *Bolt) { b.Hole = unit.Length(math.NaN()) },
		"bearing face of 14.63 mm under the head of M10×1.5 is not wider than its ho": func(b *Bolt) { b.Hole = 15 },
		"M11×1.5 has no standard hexagon head; state the width across flats":          func(b *Bolt) { b.Thread = tensiontest.Thread(t, "M11") },
		"yield share 1.2; allowed: above 0 up to 1":                                   func(b *Bolt) { b.YieldShare = 1.2 },
		"yield share NaN; allowed":                                                    func(b *Bolt) { b.YieldShare = math.NaN() },
		`equation "short" is not known; allowed: exact, linear`:                       func(b *Bolt) { b.Equation = "short" },
	})
}

// Every listed lubricant is recognized, no spelling is repeated, and the ranges
// are valid.
func TestLubricants(t *testing.T) {
	seen := map[string]bool{}
	for _, l := range lubricants {
		for _, name := range l.names {
			if seen[tension.PlainWords(name)] {
				continue // spellings that differ only in punctuation
			}
			seen[tension.PlainWords(name)] = true
			found, err := findLubricant(strings.ToUpper(name))
			if err != nil || found.names[0] != l.names[0] {
				t.Errorf("%q finds %v, %v; want %s", name, found.names, err, l.names[0])
			}
		}
		if err := Same(l.class).check(); err != nil {
			t.Errorf("%s: %v", l.names[0], err)
		}
		if on := l.onAustenitic(); Same(on).check() != nil || on.Low < l.class.Low {
			t.Errorf("%s on austenitic steel: %v", l.names[0], on)
		}
	}
	for _, name := range Lubricants() {
		if _, err := FrictionOf(name); err != nil {
			t.Error(err)
		}
	}
}
