package strength

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/tensiontest"
)

// VDI 2230-1:2015, table A9, and for nuts ISO 898-2 with ISO 18265 (values from
// memory): modulus in GPa, tensile and shear strength and limiting pressure in
// MPa; brass, bronze, copper and washers are common practice.
func TestMaterialsRowByRow(t *testing.T) {
	t.Parallel()
	const table = `steel: 205 340 200 490; steel E295: 205 470 280 710; steel C45 hardened: 205 700 460 630; steel 34CrNiMo6: 205 1200 720 1080;
steel 16MnCr5: 205 1000 650 900; nut class 8: 205 640 384 630; nut class 10: 205 870 522 870; nut class 12: 205 950 570 950;
hardened washer: 205 900 580 900; stainless steel: 200 510 410 460; grey cast iron: 110 250 300 850; ductile iron: 169 400 360 600;
ductile iron GJS-600: 169 600 540 900; cast aluminium: 75 180 110 220; die-cast aluminium: 75 240 140 290; wrought aluminium: 70 260 150 230;
high-strength aluminium: 72 540 310 410; magnesium: 45 200 120 180; titanium: 110 890 600 890; brass: 100 340 200 300; bronze: 105 240 150 240; copper: 120 200 130 130`
	rows := strings.Split(table, ";")
	if len(rows) != len(Materials()) {
		t.Errorf("%d materials, want %d", len(Materials()), len(rows))
	}
	for _, row := range rows {
		name, figures, _ := strings.Cut(strings.TrimSpace(row), ": ")
		m, err := ParseMaterial(name)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		got := fmt.Sprintf("%g %g %g %g", float64(m.Elastic)/1000, float64(m.Tensile), float64(m.Shear), float64(m.LimitingPressure))
		if got != figures || m.Name != name || m.Source == "" {
			t.Errorf("%s is %s from %q, want %s", m.Name, got, m.Source, figures)
		}
	}
}

// The limits of the range of moduli are accepted (common practice, no source).
func TestEndsOfTheModuli(t *testing.T) {
	t.Parallel()
	for text, passes := range map[string]bool{"1 GPa": true, "0.99 GPa": false, "700 GPa": true, "701 GPa": false} {
		if _, err := ParseMaterial(text); (err == nil) != passes {
			t.Errorf("%s: %v", text, err)
		}
	}
	m10 := tensiontest.Thread(t, "M10")
	for text, passes := range map[string]bool{"100 MPa": true, "99 MPa": false, "2000 MPa": true, "2001 MPa": false} {
		if _, err := ParseClass(text, m10); (err == nil) != passes {
			t.Errorf("%s: %v", text, err)
		}
	}
}

// ISO 898-1:2013, table 3, SAE J429, table 1, ASTM A193, table 2 and ISO 3506-1
// (values from memory): elongation after fracture and, from VDI 2230-1:2015,
// table 7, the shear ratio, in percent. Half of the elongation is uniform; a
// quarter of the rest over five diameters remains for a bolt that is turned
// (common practice).
func TestStretchOfClasses(t *testing.T) {
	t.Parallel()
	for _, row := range strings.Split(`M10 4.6: 22 70; M10 4.8: 14 60; M10 5.6: 20 70; M10 5.8: 10 60; M10 6.8: 8 60; M10 8.8: 12 65; M10 9.8: 10 60; M10 10.9: 9 62;
M10 12.9: 8 60; 3/8-16 UNC grade 1: 18 60; 3/8-16 UNC grade 2: 18 60; 3/8-16 UNC grade 5: 14 60; 3/8-16 UNC grade 8: 12 60; M10 A2-50: 20 80; M10 A4-50: 20 80;
M10 A2-70: 16 72; M10 A4-70: 16 72; M10 A2-80: 12 68; M10 A4-80: 12 68; M10 B7: 16 60; M10 700 MPa: 8 60`, ";") {
		named, figures, _ := strings.Cut(strings.TrimSpace(row), ": ")
		threadName, class := "M10", strings.TrimPrefix(named, "M10 ")
		if rest, inch := strings.CutPrefix(named, "3/8-16 UNC "); inch {
			threadName, class = "3/8-16 UNC", rest
		}
		c := mustClass(t, class, tensiontest.Thread(t, threadName))
		if got := fmt.Sprintf("%.4g %.4g", 100*c.elongation(), 100*c.shearRatio()); got != figures {
			t.Errorf("%s: %s, want %s", named, got, figures)
		}
		tensiontest.Near(t, named+", even", c.UniformStrain(), c.elongation()/2, 1e-12)
		tensiontest.Near(t, named+", necking", c.NeckingDiameters(), c.elongation()/2*5*0.25, 1e-12)
		if c.UniformStrain() == 0 || c.NeckingDiameters() == 0 {
			t.Errorf("%s does not stretch", named)
		}
	}
}

// If the tensile strength of a class is not stated, 1.1 of the yield stress is
// assumed (common practice, no source) and reported.
func TestTensileThatIsNotStated(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ yield, tensile, want unit.Stress }{{700, 0, 770}, {700, 700, 770}, {700, 701, 701}, {940, 1040, 1040}} {
		class := Class{Yield: c.yield, Tensile: c.tensile}
		tensiontest.Near(t, "hardened", float64(class.Hardened()), float64(c.want), 1e-12)
		f := AssumedTensile(class)
		if f.Code != TensileAssumed || f.Values["tensile"] != class.Hardened() || f.Values["ratio"] != 1.1 {
			t.Errorf("%v", f)
		}
	}
}

// Alexander's polynomials at the limits of their ranges (values from memory of
// VDI 2230-1, section 5.5.5), and in between calculated from them.
func TestAlexandersFactors(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		of          string
		f           func(float64) float64
		ratio, want float64
	}{
		{"bolt", boltBending, 0.5, 0.897}, {"bolt", boltBending, 1, 0.897},
		{"bolt", boltBending, 1.5, 5.594 - 13.682*1.5 + 14.107*2.25 - 6.057*3.375 + 0.9353*5.0625},
		{"bolt", boltBending, 2.2, 5.594 - 13.682*2.2 + 14.107*4.84 - 6.057*10.648 + 0.9353*23.4256}, {"bolt", boltBending, 9, boltBending(2.2)},
		{"nut", nutBending, 2, 0.897}, {"nut", nutBending, 1, 0.897}, {"nut", nutBending, 0.999999, 0.728 + 1.769 - 2.896 + 1.296},
		{"nut", nutBending, 0.5, 0.728 + 1.769*0.5 - 2.896*0.25 + 1.296*0.125},
		{"nut", nutBending, 0.4, 0.728 + 1.769*0.4 - 2.896*0.16 + 1.296*0.064}, {"nut", nutBending, 0.1, nutBending(0.4)},
		{"dilation", dilation, 1.4, 0.75}, {"dilation", dilation, 1.6, 3.8*1.6 - 2.56 - 2.61}, {"dilation", dilation, 1.9, 1}, {"dilation", dilation, 3, 1},
	} {
		tensiontest.Near(t, fmt.Sprintf("%s at %g", c.of, c.ratio), c.f(c.ratio), c.want, 1e-5)
	}
}

// What an engagement leaves open is reported as an assumption, and nothing
// else.
func TestWhatAnEngagementAssumes(t *testing.T) {
	t.Parallel()
	m10 := tensiontest.Thread(t, "M10")
	full := func() Engagement {
		return Engagement{Thread: m10, Class: mustClass(t, "10.9", m10), Length: 20, Material: "steel", Boss: 30, Insert: &Insert{Outer: 14, PitchMm: 1.5}, Preload: 30000}
	}
	for _, c := range []struct {
		name   string
		change func(e *Engagement)
		want   []finding.Code
	}{
		{"nothing", func(*Engagement) {}, []finding.Code{ShearAssumed, IdleTurnsAssumed}},
		{"boss", func(e *Engagement) { e.Boss = 0 }, []finding.Code{ShearAssumed, IdleTurnsAssumed, BossAssumed}},
		{"pitch of the insert", func(e *Engagement) { e.Insert.PitchMm = 0 }, []finding.Code{ShearAssumed, InsertPitchAssumed, IdleTurnsAssumed}},
		{"tensile strength", func(e *Engagement) { e.Class.Tensile = 0 }, []finding.Code{TensileAssumed, ShearAssumed, IdleTurnsAssumed}},
	} {
		e := full()
		c.change(&e)
		r, err := Strip(e)
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		var got []finding.Code
		for _, f := range r.Assumptions {
			got = append(got, f.Code)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s not stated: %q, want %q", c.name, got, c.want)
		}
		// 0.8 of a turn of 1.5 mm carries no load.
		tensiontest.Near(t, "effective length", float64(r.Effective), 20-1.2, 1e-12)
	}
	fine := full()
	fine.Insert.PitchMm = 2 // the coarser of the two
	if r, err := Strip(fine); err != nil || r.Effective != 20-1.6 {
		t.Errorf("effective length %v, %v", r.Effective, err)
	}
}

// The ranges of stated values, from both sides.
func TestSpansOfAnEngagement(t *testing.T) {
	t.Parallel()
	m10 := tensiontest.Thread(t, "M10")
	for _, c := range []struct {
		change func(e *Engagement)
		code   finding.Code // "": it is accepted
	}{
		{func(e *Engagement) { e.Length = 100 }, ""},
		{func(e *Engagement) { e.Length = 100.1 }, EngagementRange},
		{func(e *Engagement) { e.Length = 0 }, EngagementRange},
		{func(e *Engagement) { e.Boss = 14 }, ""},
		{func(e *Engagement) { e.Boss = 13.9 }, BossTooThin},
		{func(e *Engagement) { e.Insert = &Insert{Outer: 10.1} }, ""},
		{func(e *Engagement) { e.Insert = &Insert{Outer: 10} }, InsertRange},
		{func(e *Engagement) { e.Insert = &Insert{Outer: 30} }, ""},
		{func(e *Engagement) { e.Insert = &Insert{Outer: 30.1} }, InsertRange},
		{func(e *Engagement) { e.Insert = &Insert{Outer: 16, PitchMm: 4} }, ""},
		{func(e *Engagement) { e.Insert = &Insert{Outer: 16, PitchMm: 4.1} }, InsertPitchRange},
		{func(e *Engagement) { e.Insert = &Insert{Outer: 16, PitchMm: -1} }, InsertPitchRange},
		{func(e *Engagement) { e.Preload = -1 }, NoPreload},
		{func(e *Engagement) { e.Material = "" }, NoTappedPart},
		{func(e *Engagement) { e.Material = "100 GPa" }, ShearUnknown},
		{func(e *Engagement) { e.Material = "cheese" }, NoSuchMaterial},
	} {
		e := Engagement{Thread: m10, Class: mustClass(t, "10.9", m10), Length: 20, Material: "steel"}
		c.change(&e)
		_, err := Strip(e)
		if f, ok := err.(finding.Finding); c.code == "" && err != nil || c.code != "" && (!ok || f.Code != c.code) {
			t.Errorf("%+v: %v, want %q", e, err, c.code)
		}
	}
	if f, ok := Missing(m10).(finding.Finding); !ok || f.Code != NoClass || f.Values["thread"] != m10.Name {
		t.Errorf("%v", Missing(m10))
	}
}

// The margin is the least load divided by the preload; lengths are rounded up.
func TestMarginAndRounding(t *testing.T) {
	t.Parallel()
	m10 := tensiontest.Thread(t, "M10")
	e := Engagement{Thread: m10, Class: mustClass(t, "10.9", m10), Length: 12, Material: "cast aluminium"}
	r, err := Strip(e)
	if err != nil || r.Margin != 0 || r.ForPreload != 0 || r.Holds {
		t.Errorf("no preload: %+v, %v", r, err)
	}
	e.Preload = r.PartStrips
	held, err := Strip(e)
	if err != nil || !held.Holds || held.First != PartStrips {
		t.Errorf("just as much as strips: %+v, %v", held, err)
	}
	tensiontest.Near(t, "margin", held.Margin, 1, 1e-12)
	tensiontest.Near(t, "length for the preload", float64(held.ForPreload), 12, 1e-9)
	e.Preload *= 1.001
	if over, err := Strip(e); err != nil || over.Holds {
		t.Errorf("more than strips: %+v, %v", over, err)
	}
	for from, want := range map[unit.Length]unit.Length{12: 12, 12.01: 12.1, 12.1: 12.1, 0.04: 0.1} {
		tensiontest.Near(t, "up to a tenth", float64(UpTo(from)), float64(want), 1e-12)
	}
	inch := tensiontest.Thread(t, "3/8-16 UNC")
	for _, c := range []struct {
		e    Engagement
		want string
	}{{e, "ISO 965-1, 6g in 6H (limits of the thread)"}, {Engagement{Thread: inch, Class: mustClass(t, "grade 8", inch), Length: 12, Material: "steel"}, "ASME B1.1, 2A in 2B (limits of the thread)"}} {
		if r, err := Strip(c.e); err != nil || !slices.Contains(r.Sources, c.want) {
			t.Errorf("sources %q, %v; want %q", r.Sources, err, c.want)
		}
	}
}
