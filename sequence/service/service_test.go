package service_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/patterntest"
	"drawdown/sequence/figures"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/plan"
	"drawdown/sequence/service"
)

// flanged is a flange with eight bolts, a ring gasket and what is in joint.
func flanged(joint, stages string) string {
	return fmt.Sprintf(`drawdown: 1
title: Flange
kinds: {stud: {thread: M16, class: "8.8", length: 90 mm, thread length: full, grip: 64 mm, nut: 24 mm, head: 24 mm, hole: 18 mm, washer: 30 mm, friction: [0.10, 0.14]}}
fasteners: [{circle: {count: 8, diameter: 200, first: 90°, kind: stud, id: S}}]
features: [{bore: [0, 0], diameter: 100}]
joint: {%s}
tighten: {stages: [%s], source: test}
`, joint, stages)
}

func within(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if math.Abs(got-want) > share*math.Abs(want) {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

func of(t *testing.T, text string) service.Joint {
	t.Helper()
	return service.Of(patterntest.Plan(t, text))
}

// ASME PCC-1, appendix O (value from memory): NPS 3 class 300, a gasket of 5.17
// in² and 8 bolts of 3/4 in with 0.3019 in² each: 30 ksi on the gasket need 64
// ksi in the bolts.
func TestBoltsForTheGasket(t *testing.T) {
	t.Parallel()
	const text = `drawdown: 1
title: NPS 3 class 300
units: in
kinds: {stud: {thread: 3/4-10 UNC, class: B7, grip: 2.5 in, nut: 1.25 in, friction: [0.10, 0.14]}}
fasteners: [{circle: {count: 8, diameter: 6.62, first: 90°, kind: stud, id: S}}]
joint: {part: {material: steel, thickness: 1.12 in}, gasket: {kind: spiral-wound, inside: 4 in, outside: 4.7521 in, crush: 30 ksi}}
tighten: {stages: [{torque: 100 lbf·ft}], source: test}
`
	j := of(t, text)
	const in2, ksi = 25.4 * 25.4, 6.894757
	within(t, "area", j.Gasket.AreaMm2/in2, 5.17, 0.001)
	for _, l := range j.Kinds[0].Limits {
		if l.By == service.ByGasket {
			within(t, "stress in the bolts, ksi", float64(l.Force)/(0.3019*in2)/ksi, 64, 0.005)
			return
		}
	}
	t.Errorf("no limit by the gasket: %+v", j.Kinds[0].Limits)
}

// First principles: the stress is the sum of the preloads over the ring, and the
// compression that over its stiffness, but no more than its thickness allows.
func TestGasketStress(t *testing.T) {
	t.Parallel()
	j := of(t, flanged("part: {material: steel, thickness: 30 mm}, gasket: {kind: spiral-wound, inside: 120 mm, outside: 150 mm, thickness: 4.5 mm}", "{torque: 100 N·m}"))
	k := j.Kinds[0]
	area := math.Pi / 4 * (150*150 - 120*120)
	within(t, "area", j.Gasket.AreaMm2, area, 1e-12)
	within(t, "stress", float64(j.Gasket.Tightened.Nominal), 8*float64(k.States[0].Clamp.Nominal)/area, 1e-12)
	within(t, "compression", float64(j.Gasket.Compression.Nominal), float64(j.Gasket.Tightened.Nominal)/80, 1e-12) // 80 MPa/mm: compliance.SpiralWound
	thin := of(t, flanged("part: {material: steel, thickness: 30 mm}, gasket: {kind: cork-rubber, inside: 120 mm, outside: 150 mm, thickness: 3 mm}", "{torque: 100 N·m}"))
	if c := thin.Gasket.Compression; !(c.High < 3) || c.Low > c.High {
		t.Errorf("a gasket of 3 mm is compressed by %+v", c)
	}
}

// First principles: the face of a gasket over a rectangle, without its bores and
// the holes of its bolts.
func TestFaceWithoutBores(t *testing.T) {
	t.Parallel()
	j := of(t, `drawdown: 1
title: Cover
kinds: {bolt: {thread: M8, class: "8.8", grip: 20 mm, length: 40 mm, into: aluminium, engagement: 16 mm, hole: 9 mm, lubricant: engine oil}}
fasteners: [{id: A, at: [-90, -40]}, {id: B, at: [90, -40]}, {id: C, at: [-90, 40]}, {id: D, at: [90, 40]}]
outline: [[-100, -50], [100, -50], [100, 50], [-100, 50]]
features: [{bore: [-40, 0], diameter: 60}, {bore: [40, 0], diameter: 60}]
joint: {part: {material: aluminium, thickness: 20 mm}, gasket: {kind: graphite}}
tighten: {stages: [{torque: 20 N·m}], source: test}
`)
	want := 200*100 - 2*math.Pi/4*60*60 - 4*math.Pi/4*9*9
	within(t, "area", j.Gasket.AreaMm2, want, 0.003) // sampled
	if j.Gasket.Window.Crush != 140 || j.Gasket.Stated {
		t.Errorf("window %+v", j.Gasket.Window)
	}
}

// First principles: bolt and parts as springs, the parts and the gasket in
// series. The equilibrium of the two nodes is solved directly.
func TestResidualLoad(t *testing.T) {
	t.Parallel()
	j := of(t, flanged("part: {material: steel, thickness: 30 mm}, gasket: {kind: none}, pressure: 20 bar, sealed: 150 mm, load: 40 kN", "{torque: 150 N·m}"))
	p := patterntest.Plan(t, flanged("part: {material: steel, thickness: 30 mm}", "{torque: 150 N·m}"))
	bolt, parts := stiffnesses(t, p)
	load := (40e3 + 2*math.Pi/4*150*150) / 8
	states := j.Kinds[0].States
	settled, loaded := float64(states[1].Clamp.Nominal), float64(states[3].Clamp.Nominal)
	// The head moves by x: bolt·x more in the bolt, parts·x less on the parts, together the load.
	x := load / (bolt + parts)
	within(t, "clamp load under load", loaded, settled-parts*x, 1e-9)
	within(t, "low end", float64(states[3].Clamp.Low), float64(states[1].Clamp.Low)-load, 1e-9)
	if states[2].Clamp != states[1].Clamp {
		t.Errorf("without heat the hot state is %+v, the settled one %+v", states[2], states[1])
	}
}

// Closed form: an aluminium head 80 K warmer over M10 × 95 steel bolts adds 95
// mm × (23 − 11.5)·10⁻⁶ × 80 of travel, about 24 % of the preload at 90 % of
// yield, and takes them past yield.
func TestHotAluminiumHead(t *testing.T) {
	t.Parallel()
	text := func(joint string) string {
		return `drawdown: 1
title: Head
kinds: {main: {thread: M10, class: "10.9", length: 120 mm, grip: 95 mm, into: cast aluminium, engagement: 25 mm, washer: 20 mm, friction: [0.10, 0.12]}}
fasteners: [{grid: {columns: 5, rows: 2, pitch: [95, 90], kind: main, id: M}}]
joint: {part: {material: cast aluminium, thickness: 60 mm}, gasket: {kind: none}` + joint + `}
tighten: {stages: [{torque: 63 N·m}], source: test}
`
	}
	j := of(t, text(", temperature: {part: 100 °C}"))
	states := j.Kinds[0].States
	bolt, parts := stiffnesses(t, patterntest.Plan(t, text("")))
	adds := float64(states[2].Clamp.Nominal - states[1].Clamp.Nominal)
	within(t, "heat", adds, 95*11.5e-6*80/(1/bolt+1/parts), 1e-9)
	if share := adds / float64(states[0].Clamp.Nominal); share < 0.20 || share > 0.30 {
		t.Errorf("heat adds %.1f %% to the preload", 100*share)
	}
	if y := j.Kinds[0].Yield; y.Cold > 1 || y.High < 1 {
		t.Errorf("yield %+v", y)
	}
	if found := service.Judge(patterntest.Plan(t, text(", temperature: {part: 100 °C}"))); !finding.Has(found, service.YieldsHot) {
		t.Errorf("judged %v", found)
	}
	// Hot yield asks for a torque below that of the file.
	hot := service.Judge(patterntest.Plan(t, text(", temperature: {part: 100 °C}")))
	if y := hot[slices.IndexFunc(hot, func(f finding.Finding) bool { return f.Code == service.YieldsHot })]; y.Values["torque"].(unit.Torque) >= 63 || y.Values["torque"].(unit.Torque) < 40 {
		t.Errorf("%v", y)
	}
	// The washer face bears limit: cold the aim keeps to it, hot by what heat adds.
	found := service.Judge(patterntest.Plan(t, text(", temperature: {part: 100 °C}")))
	i := slices.IndexFunc(found, func(f finding.Finding) bool { return f.Code == service.LimitPassed })
	if i < 0 {
		t.Fatalf("no limit is passed hot: %v", found)
	}
	limit := j.Kinds[0].Limits[slices.IndexFunc(j.Kinds[0].Limits, func(l service.Limit) bool { return l.By == service.ByFace })]
	borne := float64(limit.Force) - float64(states[2].Clamp.High-states[1].Clamp.High)
	aim := j.Kinds[0].Aim
	within(t, "torque that keeps to the limit", float64(found[i].Values["torque"].(unit.Torque)), float64(aim.Torque)*min(1, borne/float64(aim.Preload.High)), 1e-9)
	if found[i].Values["limit"] != limit.Force || found[i].Values["hot"] != true {
		t.Errorf("%v", found[i])
	}
	even := of(t, text(", temperature: {part: 100 °C, bolt: 180 °C}")).Kinds[0].States // 23·80 = 11.5·160
	if d := even[2].Clamp.Nominal - even[1].Clamp.Nominal; math.Abs(float64(d)) > 1e-6 {
		t.Errorf("equal growth adds %v", d)
	}
}

// VDI 2230 Part 1, section 5.5.3 (value from memory): 0.85 (150/16 + 45) = 46
// MPa for M16.
func TestFatigueLimit(t *testing.T) {
	t.Parallel()
	j := of(t, flanged("gasket: {kind: none}, load: 400 kN", "{torque: 150 N·m}"))
	if f := j.Kinds[0].Fatigue; f == nil || math.Abs(float64(f.Limit)-46.2) > 0.05 {
		t.Errorf("%+v", f)
	}
}

func stiffnesses(t *testing.T, p plan.Plan) (bolt, parts float64) {
	t.Helper()
	a, err := figures.WorkOut(figures.Ask{Bolt: p.Bolts()[0]})
	if err != nil || a.Joint == nil {
		t.Fatalf("%+v, %v", a.Joint, err)
	}
	return float64(a.Joint.Bolt), float64(a.Joint.Members)
}

// First principles: a stated limit that the middle of the range breaks is a
// warning; one that only the kind suggests, or that only an end breaks, a note.
func TestJudge(t *testing.T) {
	t.Parallel()
	const ring = "part: {material: steel, thickness: 30 mm}, gasket: {kind: spiral-wound, inside: 120 mm, outside: 150 mm%s}%s"
	for _, test := range []struct {
		name, window, more, stages string
		want                       finding.Code
		severity                   finding.Severity
	}{
		{"sound", "", "", "{torque: 180 N·m}", "", ""},
		{"crushed", ", crush: 60 MPa", "", "{torque: 60 N·m}, {torque: 160 N·m}", service.Crushes, finding.Warning},
		{"crushed at the end of the range", ", crush: 80 MPa", "", "{torque: 160 N·m}", service.Crushes, finding.Note},
		{"not seated", ", seating: 90 MPa", "", "{torque: 100 N·m}", service.NotSeated, finding.Warning},
		{"not seated by its kind", "", ", pressure: 5 bar", "{torque: 40 N·m}", service.NotSeated, finding.Note},
		{"not seated by its kind, with nothing to seal", "", "", "{torque: 40 N·m}", "", ""},
		{"below its working stress", ", work: 60 MPa", ", pressure: 60 bar", "{torque: 150 N·m}", service.BelowWork, finding.Warning},
		{"apart", ", seating: 1 MPa, work: 0.1 MPa", ", load: 900 kN", "{torque: 150 N·m}", service.PartsOpen, finding.Warning},
	} {
		found := service.Judge(patterntest.Plan(t, flanged(fmt.Sprintf(ring, test.window, test.more), test.stages)))
		if test.want == "" {
			if len(found) > 0 {
				t.Errorf("%s: %v", test.name, found)
			}
			continue
		}
		ok := false
		for _, f := range found {
			ok = ok || f.Code == test.want && f.Severity == test.severity
			if f.Code == service.Crushes && strings.Contains(test.stages, ", ") && f.At.Stage != 2 {
				t.Errorf("%s: at stage %d", test.name, f.At.Stage)
			}
		}
		if !ok {
			t.Errorf("%s: %+v, want %s", test.name, found, test.want)
		}
	}
}

// First principles: the aim is the tightest limit, and its low end has to reach
// what the gasket needs.
func TestAimByTheTightestLimit(t *testing.T) {
	t.Parallel()
	j := of(t, flanged("gasket: {kind: graphite, inside: 120 mm, outside: 150 mm, seating: 20 MPa, crush: 60 MPa}", "{torque: 60 N·m}"))
	k := j.Kinds[0]
	if k.Aim.By != service.ByGasket || !k.Aim.Reaches() {
		t.Fatalf("%+v", k.Aim)
	}
	within(t, "greatest preload", float64(k.Aim.Preload.High), 60*j.Gasket.AreaMm2/8, 0.002) // the share of yield is rounded
	if j.Most("stud") != k.Aim.Preload.High {
		t.Errorf("%v, %v", j.Most("stud"), k.Aim.Preload.High)
	}
	if none := of(t, flanged("gasket: {kind: none}", "{torque: 60 N·m}")); none.Most("stud") != 0 {
		t.Errorf("bare faces limit the aim to %v", none.Most("stud"))
	}
}

// First principles: what is not stated is named.
func TestWhatIsMissing(t *testing.T) {
	t.Parallel()
	text := strings.Replace(flanged("gasket: {kind: composite}, load: 3 kN", "{torque: 60 N·m}"), "grip: 64 mm, ", "", 1)
	j := of(t, text)
	if !finding.Has(j.Open, service.NoGrip) || !finding.Has(j.Open, service.NoWindow) {
		t.Errorf("%v", j.Open)
	}
	if j.Gasket == nil || j.Gasket.Kind != compliance.Composite {
		t.Errorf("%+v", j.Gasket)
	}
	unknown := of(t, strings.Replace(text, `class: "8.8", `, "", 1))
	if len(unknown.Kinds) > 0 && unknown.Kinds[0].Aim != nil {
		t.Errorf("an aim without a class: %+v", unknown.Kinds[0].Aim)
	}
}
