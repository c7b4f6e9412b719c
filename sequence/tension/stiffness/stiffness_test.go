package stiffness

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/strength"
	"drawdown/sequence/tension/tensiontest"

	"pgregory.net/rapid"
)

// All expected values in this file follow from first principles.

// wide is an infinite width.
var wide = unit.Length(math.Inf(1))

func drawBody(t *rapid.T) pressedBody {
	hole := rapid.Float64Range(5, 30).Draw(t, "hole")
	face := hole * rapid.Float64Range(1.1, 2.5).Draw(t, "face")
	return pressedBody{
		face: unit.Length(face), hole: unit.Length(hole),
		outer:   unit.Length(face * rapid.Float64Range(0.9, 5).Draw(t, "reach")),
		tangent: rapid.Float64Range(0.3, 0.7).Draw(t, "tangent"), oneCone: rapid.Bool().Draw(t, "one cone"),
	}
}

// The resilience of the body is the sum of its rings of a hundredth of a
// millimetre.
func TestPressedBodyIsTheSumOfItsRings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawBody(t)
		p.outer = max(p.outer, p.hole*1.05)
		soft := unit.Length(rapid.Float64Range(1, 40).Draw(t, "soft"))
		layers := []layer{{soft, metal(70e3)}, {unit.Length(rapid.Float64Range(1, 40).Draw(t, "hard")), metal(205e3)}}
		grip := float64(thicknessOf(layers))
		const rings = 4000
		var want float64
		for i := range rings {
			depth := grip * (float64(i) + 0.5) / rings
			from := depth
			if !p.oneCone {
				from = math.Min(depth, grip-depth)
			}
			across := math.Min(float64(p.face)+2*from*p.tangent, float64(p.outer))
			elastic := 205e3
			if depth < float64(soft) {
				elastic = 70e3
			}
			want += grip / rings / (elastic * math.Pi / 4 * (across*across - float64(p.hole*p.hole)))
		}
		if got := float64(p.resilience(layers)); math.Abs(got/want-1) > 0.002 { // the rings are that coarse
			t.Fatalf("%v; the rings give %v", got, want)
		}
	})
}

// VDI 2230-1, section 5.1.2.1: the closed formulas of the standard for members
// of one material, wide (w = 1 bolted, 2 tapped) and narrower than the cone.
func TestPressedBodyIsTheClosedFormula(t *testing.T) {
	const face, hole, grip, elastic = 16.0, 11.0, 30.0, 205e3
	tangent := 0.55
	layers := []layer{{grip, metal(elastic)}}
	for w, oneCone := range map[float64]bool{1: false, 2: true} {
		cone := func(limit float64) float64 {
			return 2 * math.Log((face+hole)*(limit-hole)/((face-hole)*(limit+hole))) / (w * elastic * math.Pi * hole * tangent)
		}
		got := pressedBody{face, hole, wide, tangent, oneCone}.resilience(layers)
		tensiontest.Near(t, "wide", float64(got), cone(face+w*grip*tangent), 1e-9)
		const outer = 20.0
		sleeve := 4 / (outer*outer - hole*hole) * (grip - (outer-face)/(w*tangent)) / (elastic * math.Pi)
		got = pressedBody{face, hole, outer, tangent, oneCone}.resilience(layers)
		tensiontest.Near(t, "narrow", float64(got), cone(outer)+sleeve, 1e-9)
	}
}

// The closed form of Shigley equals the body of two cones.
func TestFrustaAreTheBody(t *testing.T) {
	for _, grip := range []unit.Length{5, 20, 80, 300} {
		got := pressedBody{face: 18, hole: 12, outer: wide, tangent: math.Tan(math.Pi / 6)}.resilience([]layer{{grip, metal(207e3)}})
		tensiontest.Near(t, "members", float64(got.Stiffness()), tensiontest.Frusta(207e3, 12, float64(grip)), 2e-4) // the book rounds tan 30° to 0.5774
	}
}

// The finite elements and the cones of 30° agree within a tenth over grips of one
// to four diameters (Shigley 9th ed., section 8-5, figure 8-15); longer grips
// are stiffer by finite elements.
func TestConesAgreeWithFiniteElements(t *testing.T) {
	for _, grip := range []float64{12, 24, 48} {
		tensiontest.Near(t, "cones", tensiontest.Frusta(207e3, 12, grip), tensiontest.Exponential("steel", 207e3, 12, grip), 0.10)
	}
}

func drawGrip(t *rapid.T, d float64) Grip {
	g := Grip{}
	for range rapid.IntRange(1, 3).Draw(t, "layers") {
		g.Layers = append(g.Layers, Layer{unit.Length(rapid.Float64Range(0.3, 6).Draw(t, "thickness") * d), rapid.SampledFrom(strength.Materials()).Draw(t, "layer of")})
	}
	if rapid.Bool().Draw(t, "tapped") {
		g.TappedIn = rapid.SampledFrom(strength.Materials()).Draw(t, "tapped in")
	}
	g.FullThread = rapid.Bool().Draw(t, "full thread")
	return g
}

// drawHead gives the bolt a form of head and a washer, if they exist.
func drawHead(t *rapid.T, b *screw.Bolt) {
	form := rapid.SampledFrom(head.Forms).Draw(t, "head form")
	if _, _, err := head.Face(b.Thread, form); err == nil {
		b.HeadForm = form
	}
	if _, _, err := head.NormalWasherSize(b.Thread); err == nil {
		b.Washer = rapid.SampledFrom(head.Washers).Draw(t, "washer")
	}
}

// Stiffness is positive and finite, and a softer or thicker layer makes the
// members softer.
func TestStiffnessIsSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBolt(t)
		drawHead(t, &b)
		g := drawGrip(t, b.Thread.MajorMm)
		j, err := Of(b, g)
		if err != nil {
			t.Fatal(err)
		}
		if !(j.Bolt > 0 && j.Members > 0 && j.LoadShare > 0 && j.LoadShare < 1) || math.IsInf(float64(j.Bolt+j.Members), 0) {
			t.Fatalf("%+v", j)
		}
		if j.FreeThread < 0 || j.FreeThread > j.Grip {
			t.Fatalf("%v of thread in a grip of %v", j.FreeThread, j.Grip)
		}
		// The bolt is softer than a rod of its shank over the grip.
		if rod := RodResilience(j.Grip, unit.Length(b.Thread.MajorMm), steelBolt).Stiffness(); j.Bolt > rod*(1+1e-9) {
			t.Fatalf("bolt %v; its shank alone %v", j.Bolt, rod)
		}
		soft := g
		soft.Layers = slices.Clone(g.Layers)
		soft.Layers[0].Material = "40 GPa"
		s, err := Of(b, soft)
		if err != nil || s.Members >= j.Members {
			t.Fatalf("softer: %v after %v, %v", s.Members, j.Members, err)
		}
	})
}

func TestGripErrorsSayWhatIsAllowed(t *testing.T) {
	b := screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "oil"}
	for says, spoil := range map[string]func(*Grip){
		"the grip is missing; state the thickness":                                        func(g *Grip) { g.Layers = nil },
		"layer 1 is 0 mm thick; allowed: above 0":                                         func(g *Grip) { g.Layers[0].Thickness = 0 },
		"layer 1 is NaN mm thick":                                                         func(g *Grip) { g.Layers[0].Thickness = unit.Length(math.NaN()) },
		`layer 1: material "cheese" is not known; allowed: steel`:                         func(g *Grip) { g.Layers[0].Material = "cheese" },
		`tapped part: material "wood" is not known`:                                       func(g *Grip) { g.TappedIn = "wood" },
		"a grip of 3000 mm is out of range for M10×1.5; allowed: up to 2000 mm":           func(g *Grip) { g.Layers[0].Thickness = 3000 },
		"an engagement of 12 mm is stated without the part that is tapped":                func(g *Grip) { g.Engagement = 12 },
		"engagement -1 mm; allowed: above 0":                                              func(g *Grip) { g.TappedIn = "steel"; g.Engagement = -1 },
		"a bolt of 80 mm does not reach through a grip of 95 mm":                          func(g *Grip) { g.BoltLength = 80 },
		"a bolt of 180 mm is threaded from 148 mm on, but clamps only 95 mm":              func(g *Grip) { g.BoltLength, g.Thread = 180, 32 },
		"a shank of 100 mm is longer than the grip of 95 mm; allowed: up to the grip":     func(g *Grip) { g.Shank = []Section{{100, 10}} },
		"shank section 1 is 1 mm in diameter, which is out of range for M10×1.5; allowed": func(g *Grip) { g.Shank = []Section{{50, 1}} },
		"shank section 2 is 0 mm long; allowed: above 0":                                  func(g *Grip) { g.Shank = []Section{{50, 8}, {0, 8}} },
		"clamped parts 10 mm across are too narrow for the hole of 11 mm":                 func(g *Grip) { g.Reach = 10 },
	} {
		bad := Simple(95)
		spoil(&bad)
		r, err := Of(b, bad)
		if err == nil || !strings.Contains(words.English().Error(err), says) {
			t.Errorf("error %v; want it to say %q", err, says)
		}
		if !reflect.DeepEqual(r, Joint{}) {
			t.Errorf("%q: a result beside the error", says)
		}
		if r, err := TurnOn(TorqueAngle{Bolt: b, Grip: bad, Snug: 40}); err == nil || !reflect.DeepEqual(r, Turned{}) {
			t.Errorf("%q: TurnOn gives %v, %v", says, r, err)
		}
	}
}

// A standard bolt that would be plain beyond its grip is assumed to be threaded
// up to the head, as in ISO 4017; a stated thread length is not changed.
func TestThreadOfABolt(t *testing.T) {
	b := screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "oil"}
	at := func(spoil func(*Grip)) Stiffness {
		g := Simple(95)
		spoil(&g)
		j, err := Of(b, g)
		if err != nil {
			t.Fatal(err)
		}
		return j.Bolt
	}
	full := at(func(g *Grip) { g.FullThread = true })
	for name, spoil := range map[string]func(*Grip){
		"plain beyond the grip": func(g *Grip) { g.BoltLength = 180 },
		"thread as long":        func(g *Grip) { g.BoltLength, g.Thread = 120, 120 },
	} {
		if got := at(spoil); math.Abs(float64(got/full)-1) > 1e-9 {
			t.Errorf("%s: %v N/mm, want %v", name, got, full)
		}
	}
	standard, stated := at(func(g *Grip) { g.BoltLength = 120 }), at(func(g *Grip) { g.BoltLength, g.Thread = 120, 26 })
	longer := at(func(g *Grip) { g.BoltLength, g.Thread = 120, 60 })
	if standard != stated || !(full < longer && longer < standard) {
		t.Errorf("standard %v, 26 mm of thread %v, 60 mm %v, full %v", standard, stated, longer, full)
	}
}

func TestGripAssumptions(t *testing.T) {
	j, err := Of(screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "oil"}, Simple(95))
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"layer 1 of steel",
		"bolt modulus of elasticity 205 GPa",
		"bolt 110 mm long with 26 mm of thread, 11 mm of it in the grip (ISO 4014)",
		"clamped parts wide around the bolt",
	}
	if !slices.Equal(words.English().SayAll(j.Assumptions), want) {
		t.Errorf("%s\nwant\n%s", strings.Join(words.English().SayAll(j.Assumptions), "\n"), strings.Join(want, "\n"))
	}
}

// ISO 4014 and ASME B18.2.1 (values from memory): thread lengths and the next
// length that is made.
func TestBoltLengths(t *testing.T) {
	for _, c := range []struct {
		thread                string
		least, made, threaded unit.Length
	}{
		{"M10", 107, 110, 26}, {"M10", 61, 65, 26}, {"M12", 125.1, 130, 36}, {"M12", 201, 220, 49}, {"M8", 70, 70, 22},
		{"1/2-13", 2.2 * in, 2.25 * in, 1.25 * in}, {"1/2-13", 6.1 * in, 6.25 * in, 1.5 * in},
	} {
		s := tensiontest.Thread(t, c.thread)
		made := StandardLength(s, c.least)
		tensiontest.Near(t, c.thread+" length", float64(made), float64(c.made), 1e-9)
		tensiontest.Near(t, c.thread+" thread", float64(ThreadLength(s, made)), float64(c.threaded), 1e-9)
	}
}

var (
	someThreads = []string{"M5", "M6", "M8", "M8x1", "M10", "M10x1.25", "M12x1.25", "M16", "M20x1.5", "M24", "M36", "1/4-20", "3/8-16", "1/2-20", "1-8", "1 1/8-8 UN"}
	classesOf   = map[bool][]string{false: {"4.6", "8.8", "10.9", "12.9", "A193 B7", "700 MPa"}, true: {"grade 1", "grade 5", "grade 8", "A193 B7", "100 ksi"}}
)

func drawRange(t *rapid.T, name string) screw.Range {
	low := rapid.Float64Range(0.02, 0.5).Draw(t, name+" low")
	return screw.Between(low, low+rapid.Float64Range(0, 0.5).Draw(t, name+" span"))
}

func drawBolt(t *rapid.T) screw.Bolt {
	s, err := thread.Parse(rapid.SampledFrom(someThreads).Draw(t, "thread"))
	if err != nil {
		t.Fatal(err)
	}
	return screw.Bolt{
		Thread:     s,
		Class:      rapid.SampledFrom(classesOf[s.Unified()]).Draw(t, "class"),
		Friction:   &screw.Friction{Thread: drawRange(t, "thread"), Head: drawRange(t, "head")},
		YieldShare: rapid.Float64Range(0.1, 1).Draw(t, "share"),
		Equation:   rapid.SampledFrom(screw.Equations).Draw(t, "equation"),
	}
}
