package strength

import (
	"math"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/render/words"

	"drawdown/sequence/tension/tensiontest"

	"pgregory.net/rapid"
)

// An insert with a larger outer thread holds more in soft metal, in proportion
// to the areas.
func TestInsertHelpsInSoftMetal(t *testing.T) {
	e := Engagement{Thread: tensiontest.Thread(t, "M8"), Class: mustClass(t, "10.9", tensiontest.Thread(t, "M8")), Length: 12, Material: "cast aluminium", Preload: 25000}
	plain, err := Strip(e)
	if err != nil {
		t.Fatal(err)
	}
	e.Insert = &Insert{Outer: 10, PitchMm: 1.25}
	held, err := Strip(e)
	if err != nil {
		t.Fatal(err)
	}
	m10 := tensiontest.Thread(t, "M10x1.25")
	m8 := tensiontest.Thread(t, "M8")
	want := NutShearAreaMm2(m10, m10.Limits(), 11) / NutShearAreaMm2(m8, m8.Limits(), 11)
	// The strength ratio increases with the area, which changes Alexander's
	// factor by a few per cent.
	tensiontest.Near(t, "gain", float64(held.PartStrips/plain.PartStrips), want, 0.06)
	if held.BoltBreaks != plain.BoltBreaks || held.ForBolt >= plain.ForBolt {
		t.Errorf("%+v; %+v", plain, held)
	}
}

// A thin boss dilates: at 1.4 diameters both threads keep 0.75 of their load
// (Alexander's C1), at 1.9 all of it.
func TestThinBossWidens(t *testing.T) {
	e := Engagement{Thread: tensiontest.Thread(t, "M10"), Class: mustClass(t, "10.9", tensiontest.Thread(t, "M10")), Length: 10, Material: "cast aluminium"}
	whole, err := Strip(e)
	if err != nil {
		t.Fatal(err)
	}
	for boss, keeps := range map[unit.Length]float64{14: 0.75, 19: 1, 40: 1} {
		e.Boss = boss
		r, err := Strip(e)
		if err != nil {
			t.Fatal(err)
		}
		tensiontest.Near(t, "part", float64(r.PartStrips/whole.PartStrips), keeps, 1e-9)
		tensiontest.Near(t, "bolt", float64(r.BoltStrips/whole.BoltStrips), keeps, 1e-9)
	}
}

func TestSoftMetalStrips(t *testing.T) {
	r, err := Strip(Engagement{Thread: tensiontest.Thread(t, "M10"), Class: mustClass(t, "10.9", tensiontest.Thread(t, "M10")), Length: 8, Material: "cast aluminium", Preload: 40000})
	if err != nil {
		t.Fatal(err)
	}
	if r.First != PartStrips || r.Margin >= 1 || r.Holds {
		t.Errorf("%+v", r)
	}
	r, err = Strip(Engagement{Thread: tensiontest.Thread(t, "M10"), Class: mustClass(t, "8.8", tensiontest.Thread(t, "M10")), Length: 15, Material: "C45"})
	if err != nil || r.First != BoltBreaks {
		t.Errorf("%+v, %v", r, err)
	}
}

// Less than 0.8 P carries no load, and the weaker thread is still named.
func TestTooShortToCarryAnything(t *testing.T) {
	r, err := Strip(Engagement{Thread: tensiontest.Thread(t, "M10"), Class: mustClass(t, "10.9", tensiontest.Thread(t, "M10")), Length: 1, Material: "cast aluminium", Preload: 100})
	if err != nil || r.Effective != 0 || r.PartStrips != 0 || r.First != PartStrips || r.Holds {
		t.Errorf("%+v, %v", r, err)
	}
}

func TestStripErrorsSayWhatIsAllowed(t *testing.T) {
	good := Engagement{Thread: tensiontest.Thread(t, "M10"), Class: mustClass(t, "10.9", tensiontest.Thread(t, "M10")), Length: 15, Material: "steel"}
	tensiontest.Refuses(t, words.English().Error, Strip, good, map[string]func(*Engagement){
		"an engagement of 0 mm is out of range for M10×1.5; allowed: above 0 up to 100 mm": func(e *Engagement) { e.Length = 0 },
		"an engagement of NaN mm":                                                      func(e *Engagement) { e.Length = unit.Length(math.NaN()) },
		"the material of the tapped part is missing; allowed: steel":                   func(e *Engagement) { e.Material = "" },
		`material "cheese" is not known; allowed: steel, steel E295`:                   func(e *Engagement) { e.Material = "cheese" },
		"the shear strength of 70 GPa is unknown; allowed":                             func(e *Engagement) { e.Material = "70 GPa" },
		"a tapped part of 12 mm around M10×1.5 is too thin to be assessed; allowed: ":  func(e *Engagement) { e.Boss = 12 },
		"an insert of 9 mm is out of range for M10×1.5; allowed: above 10 mm up to 30": func(e *Engagement) { e.Insert = &Insert{Outer: 9} },
		"a pitch of -1 mm does not go with an insert of 12 mm; allowed: above 0":       func(e *Engagement) { e.Insert = &Insert{Outer: 12, PitchMm: -1} },
		"preload -5 N; allowed: 0 or more":                                             func(e *Engagement) { e.Preload = -5 },
	})
}

// The following expected values follow from first principles.

// The required length is the limit: there the weakest thread just holds the
// breaking load of the bolt, or the preload, and slightly below it does not.
func TestEngagementForTheBoltJustHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := tensiontest.Thread(t, rapid.SampledFrom(someThreads).Draw(t, "thread"))
		e := Engagement{
			Thread: size, Class: mustClass(t, rapid.SampledFrom(classesOf[size.Unified()]).Draw(t, "class"), size), Material: rapid.SampledFrom(Materials()).Draw(t, "material"),
			Length:  unit.Length(rapid.Float64Range(0.5, 3).Draw(t, "length") * size.MajorMm),
			Preload: unit.Force(rapid.Float64Range(100, 1e5).Draw(t, "preload")),
		}
		if rapid.Bool().Draw(t, "boss") {
			e.Boss = unit.Length(rapid.Float64Range(1.4, 3).Draw(t, "boss across") * size.MajorMm)
		}
		r, err := Strip(e)
		if err != nil {
			t.Fatal(err)
		}
		tensiontest.Near(t, "effective", float64(r.Effective), float64(e.Length)-0.8*size.PitchMm, 1e-9)
		if (r.First == BoltBreaks) != (e.Length >= r.ForBolt) || (min(r.BoltStrips, r.PartStrips) >= e.Preload) != (e.Length >= r.ForPreload) {
			t.Fatalf("%s with %v of %v; margin %v with %v", r.First, e.Length, r.ForBolt, r.Margin, r.ForPreload)
		}
		at := func(length unit.Length) (Stripping, bool) {
			e := e
			e.Length = length
			r, err := Strip(e)
			return r, err == nil // very hard or very soft parts need lengths that are rejected
		}
		if r, ok := at(r.ForBolt); ok {
			tensiontest.Near(t, "the length for the bolt bears", float64(min(r.BoltStrips, r.PartStrips)), float64(r.BoltBreaks), 1e-9)
			if r.First != BoltBreaks {
				t.Fatalf("%s at the length needed", r.First)
			}
		}
		if r, ok := at(r.ForBolt * (1 - 1e-6)); ok && r.First == BoltBreaks {
			t.Fatal("the bolt breaks first below the length needed")
		}
		if r, ok := at(r.ForPreload); ok && e.Preload < r.BoltBreaks && !r.Holds {
			t.Fatal("the length needed does not hold the preload")
		}
		if r, ok := at(r.ForPreload * (1 - 1e-6)); ok && r.Holds {
			t.Fatal("less than the length needed holds the preload")
		}
	})
}

var (
	someThreads = []string{"M5", "M6", "M8", "M8x1", "M10", "M10x1.25", "M12x1.25", "M16", "M20x1.5", "M24", "M36", "1/4-20", "3/8-16", "1/2-20", "1-8", "1 1/8-8 UN"}
	classesOf   = map[bool][]string{false: {"4.6", "8.8", "10.9", "12.9", "A193 B7", "700 MPa"}, true: {"grade 1", "grade 5", "grade 8", "A193 B7", "100 ksi"}}
)

// A waisted bolt breaks at its waist, π/4 7.3² of 1040 MPa, so that less thread
// is needed for it to break first, in proportion to the areas (first
// principles; 0.8 P of the engagement carries nothing).
func TestWaistNeedsLessThread(t *testing.T) {
	m10 := tensiontest.Thread(t, "M10")
	e := Engagement{Thread: m10, Class: mustClass(t, "10.9", m10), Length: 12, Material: "cast aluminium"}
	plain, err := Strip(e)
	if err != nil {
		t.Fatal(err)
	}
	e.Least = 7.3
	waisted, err := Strip(e)
	if err != nil {
		t.Fatal(err)
	}
	area := math.Pi / 4 * 7.3 * 7.3
	tensiontest.Near(t, "breaks", float64(waisted.BoltBreaks), 1040*area, 1e-12)
	idle := unit.Length(0.8 * m10.PitchMm)
	tensiontest.Near(t, "needed", float64((waisted.ForBolt-idle)/(plain.ForBolt-idle)), area/m10.StressAreaMm2(), 1e-9)
	if waisted.PartStrips != plain.PartStrips || waisted.BoltStrips != plain.BoltStrips {
		t.Errorf("%+v; %+v", plain, waisted)
	}
}
