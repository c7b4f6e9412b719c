package stiffness

import (
	"errors"
	"math"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/tensiontest"
)

func mustStretch(t *testing.T, b screw.Bolt, g Grip) Stretching {
	t.Helper()
	s, err := Stretch(b, g)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Hooke's law, section by section, from first principles: a stud of M10 with
// thread over 95 mm, half a diameter of head and of engaged thread (VDI 2230-1,
// section 5.1.1.1), and E = 205 GPa.
func TestStretchByHooke(t *testing.T) {
	known := screw.Same(screw.Between(0.12, 0.12))
	b := screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Friction: &known}
	g := Simple(95)
	g.FullThread = true
	s := mustStretch(t, b, g)
	core, nominal := math.Pi/4*8.1597*8.1597, math.Pi/4*100.
	perNewton := (95/core + 5/core + 5/nominal) / 205e3
	tensiontest.Near(t, "elongation", float64(s.Joint.Elongation), perNewton, 1e-4)
	least, force, most, err := s.Preload(0.28)
	if err != nil {
		t.Fatal(err)
	}
	tensiontest.Near(t, "preload", float64(force), 0.28/perNewton, 1e-4)
	// 2.5 % of the modulus, 30 % of the ends.
	ends, between := (5/core+5/nominal)/205e3, 95/core/205e3
	tensiontest.Near(t, "least", float64(least), 0.28/((1.3*ends+between)/0.975), 1e-4)
	tensiontest.Near(t, "most", float64(most), 0.28/((0.7*ends+between)/1.025), 1e-4)
}

// A waist of 7.3 mm over 60 of 95 mm: springs in series, from first principles.
func TestStretchOfAWaist(t *testing.T) {
	known := screw.Same(screw.Between(0.12, 0.12))
	b := screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Friction: &known, Shank: 7.3}
	g := Simple(95)
	g.Shank = []Section{{60, 7.3}}
	s := mustStretch(t, b, g)
	core := math.Pi / 4 * 8.1597 * 8.1597
	want := 20000 * (60/(math.Pi/4*7.3*7.3) + 40/core + 5/(math.Pi/4*100)) / 205e3
	_, got, _ := s.OfPreload(20000, 0.12)
	tensiontest.Near(t, "stretch", float64(got), want, 1e-4)
}

// There and back, also past yield; the stretch grows with the preload.
func TestPreloadAndStretchAgree(t *testing.T) {
	b := screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "engine oil"}
	s := mustStretch(t, b, Simple(95))
	before := unit.Length(0)
	for force := unit.Force(5000); force < s.greatest(); force += 2500 {
		_, stretch, _ := s.OfPreload(force, s.friction())
		if stretch <= before {
			t.Errorf("%v at %v", stretch, force)
		}
		before = stretch
		least, back, most, err := s.Preload(stretch)
		if err != nil {
			t.Fatal(err)
		}
		tensiontest.Near(t, "back", float64(back), float64(force), 1e-9)
		if least > back || most < back {
			t.Errorf("%v %v %v", least, back, most)
		}
	}
	if !(s.AtYield() < s.Longest()) {
		t.Errorf("%v %v", s.AtYield(), s.Longest())
	}
	_, yields, _ := s.OfPreload(s.Yields(), s.friction())
	tensiontest.Near(t, "yield", float64(yields), float64(s.Yields())*float64(s.Joint.Elongation), 1e-9)
}

// Without the length of the thread the range reaches to a bolt that is threaded
// up to its head.
func TestUnknownThreadWidensTheRange(t *testing.T) {
	b := screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "engine oil"}
	full, known := Simple(95), Simple(95)
	full.FullThread = true
	known.Thread = 26
	open, _, _, err := mustStretch(t, b, Simple(95)).Preload(0.2)
	if err != nil {
		t.Fatal(err)
	}
	threaded, _, _, _ := mustStretch(t, b, full).Preload(0.2)
	plain, _, _, _ := mustStretch(t, b, known).Preload(0.2)
	tensiontest.Near(t, "least", float64(open), float64(threaded), 1e-9)
	if plain <= open {
		t.Errorf("%v %v", plain, open)
	}
}

// Steel grows by 11.5 µm/(m·K) (VDI 2230-1, table A9, value from memory): 115
// mm by 13.2 µm for 10 K.
func TestWarmBoltReadsLong(t *testing.T) {
	b := screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "engine oil"}
	tensiontest.Near(t, "grown", float64(mustStretch(t, b, Simple(95)).Grown(10)), 0.013225, 1e-9)
	b.Class = "A2-70"
	tensiontest.Near(t, "stainless", float64(mustStretch(t, b, Simple(95)).Grown(10)), 0.0184, 1e-9)
}

func TestStretchOutOfRange(t *testing.T) {
	b := screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "engine oil"}
	s := mustStretch(t, b, Simple(95))
	for _, stretch := range []unit.Length{0, -1, s.Longest() + 0.01, unit.Length(math.NaN()), unit.Length(math.Inf(1))} {
		if _, _, _, err := s.Preload(stretch); !errors.Is(err, StretchRange) {
			t.Errorf("%v: %v", stretch, err)
		}
	}
	if _, err := Stretch(b, Grip{}); !errors.Is(err, NoGrip) {
		t.Error(err)
	}
	if _, err := Stretch(screw.Bolt{}, Simple(95)); !errors.Is(err, screw.NoThread) {
		t.Error(err)
	}
}
