package patterns

import (
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry"
	"drawdown/geometry/unit"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/sequence"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
)

// mustRead reads a file without any problem.
func mustRead(t *testing.T, name string) plan.Input {
	t.Helper()
	from, err := Open(name, nil)
	if err != nil {
		t.Fatal(err)
	}
	from.Printable = lacksDragon
	input, problems := Read(from)
	if len(problems.WithoutNotes()) > 0 {
		t.Fatalf("%s", said(problems).Detail())
	}
	return input
}

func readText(text string) (plan.Input, problem.List) {
	return Read(FromBytes("text", []byte(text)))
}

func dust[T ~float64]() cmp.Option {
	return cmp.Comparer(func(a, b T) bool { return math.Abs(float64(a-b)) <= 1e-9*math.Max(1, math.Abs(float64(a))) })
}

// same compares values, allowing only for floating-point rounding.
func same(t *testing.T, what string, got, want any) {
	t.Helper()
	if diff := cmp.Diff(want, got, dust[float64](), dust[unit.Length](), dust[unit.Angle](), dust[unit.Duration]()); diff != "" {
		t.Errorf("%s (-want +got):\n%s", what, diff)
	}
}

// Every expected value is derived by hand from the file beside it (first
// principles: 1 in = 25.4 mm).
func TestEveryKeyIsRead(t *testing.T) {
	in := mustRead(t, "testdata/good/every-key.yaml")
	same(t, "head", []string{in.Name, in.Title, in.Machine, in.Revision, in.Date, in.View, in.Source},
		[]string{"every-key", "Zylinderkopf Größe 4", "Fernhollow P4 pump engine", "7b", "2026-02-28", "from above", "works manual 4.2"})
	same(t, "mirror", in.Mirror, geometry.AxisY)
	same(t, "cautions", in.Cautions, []plan.Caution{{Text: "first"},
		{Text: "only on: the way in", Side: plan.CautionTighten}, {Text: "only on the way out", Side: plan.CautionLoosen},
		{Text: "folded over two lines"}})

	if len(in.Kinds) != 2 || in.Kinds[0].Thread == nil || in.Kinds[1].Thread == nil {
		t.Fatalf("kinds: %+v", in.Kinds)
	}
	same(t, "threads", []string{in.Kinds[0].Thread.Name, in.Kinds[1].Thread.Name}, []string{"3/8-16 UNC", "M8×1.25"})
	in.Kinds[0].Thread, in.Kinds[1].Thread = nil, nil
	same(t, "kinds", in.Kinds, []plan.Kind{
		{Name: "main", Class: "grade 8", Length: 101.6, Grip: 88.9, Into: "cast iron", Engagement: 12, Lubricant: "soap",
			Friction:   &screw.Friction{Thread: screw.Between(0.10, 0.14), Head: screw.Between(0.12, 0.12)},
			HeadAcross: 14.2875, WasherFace: 19.05, Hole: 10, Reuse: plan.ReuseInspect, ReusedTo: 102.108},
		{Name: "side", Friction: &screw.Friction{Thread: screw.Between(0.2, 0.2), Head: screw.Between(0.2, 0.2)}},
	})

	inch := func(id, kind string, x, y float64, cast int) geometry.Fastener {
		return geometry.Fastener{ID: id, Kind: kind, At: geometry.Point{X: x * 25.4, Y: y * 25.4}, Cast: cast}
	}
	same(t, "fasteners", in.Joint.Fasteners, []geometry.Fastener{
		inch("7", "side", -1, 2, 3), inch("K-1.a_b", "side", 1, 2, 4),
		inch("M1", "main", 9.5, 0.5, 6), inch("M3", "main", 9.5, -0.5, 5), inch("M4", "main", 10.5, -0.5, 7),
		inch("R1", "main", 0, 20, 0), inch("R2", "main", 0, 22, 0), inch("R3", "main", 0, 24, 0),
		inch("L1", "main", 41, 1, 0), inch("L2", "main", 40, 2, 0), inch("L3", "main", 39, 1, 0), inch("L4", "main", 40, 0, 0),
		inch("D1", "main", 50, 2, 0), inch("D2", "main", 51, 1, 0), inch("D3", "main", 50, 0, 0), inch("D4", "main", 49, 1, 0),
		inch("Q1", "main", 58.5, 2, 0), inch("Q2", "main", 61.5, 2, 0), inch("Q3", "main", 61.5, 0, 0),
		inch("Q4", "main", 61.5, -2, 0), inch("Q5", "main", 58.5, -2, 0), inch("Q6", "main", 58.5, 0, 0),
	})
	same(t, "clusters", in.Joint.Clusters, []geometry.Cluster{
		{Name: "clamp", Of: []string{"M1", "M3"}}, {Name: "far clamp", Of: []string{"R1", "R2"}, Unloaded: true}})
	same(t, "unloaded", in.Joint.UnloadedFirstOff, true)
	same(t, "outlines", []int{len(in.Joint.Outline), len(in.Joint.Outline[0]), len(in.Joint.Outline[1])}, []int{2, 4, 3})
	same(t, "outline", in.Joint.Outline[0][1], geometry.Point{X: 1778, Y: -50.8})
	same(t, "bores", in.Joint.Bores, []geometry.Bore{{Centre: geometry.Point{X: 127, Y: 25.4}, Diameter: 76.2, Label: "cyl 1"}})
	same(t, "dowels", in.Joint.Dowels, []geometry.Dowel{{Centre: geometry.Point{Y: 127}, Diameter: 8}})
	same(t, "labels", in.Joint.Labels, []geometry.Label{{Text: "TOP → FLÄCHE", At: geometry.Point{X: 25.4, Y: 76.2}}})
	same(t, "stations", in.Joint.Stations, []geometry.Station{{ID: "T1", At: geometry.Point{X: 76.2, Y: 25.4}, Label: "in 1"}})
	same(t, "front", in.Joint.Front, geometry.FrontBottom)

	same(t, "groups", in.Groups, []sequence.Group{
		{Kinds: []string{"side"}, Way: sequence.Cast},
		{Kinds: []string{"main"}, Way: sequence.Cross, Turn: sequence.TurnRight}})
	main, side := []string{"main"}, []string{"side"}
	same(t, "tighten", in.Tighten, []plan.StageInput{
		{Of: side, Do: plan.Tighten, Torque: unit.GivenTorque{Value: 15, Unit: unit.PoundForceFoot}},
		{Of: main, Do: plan.Percent, Percent: 30, Note: "gently"},
		{Of: main, Do: plan.Percent, Percent: 100},
		{Of: main, Do: plan.BackOff, Angle: 180},
		{Do: plan.Wait, Wait: 120},
		{Of: main, Do: plan.Tighten, Torque: unit.GivenTorque{Value: 20}, Way: sequence.Circular, Turn: sequence.TurnLeft},
		{Of: main, Do: plan.Advance, Angle: 90},
	})
	same(t, "loosen", in.Loosen, []plan.StageInput{
		{Of: side, Do: plan.TurnBack, Angle: 45}, {Do: plan.TurnBack, Angle: 180, Until: plan.NoSpringPresses}, {Do: plan.Remove, Note: "by hand"}})
}

func TestDefaults(t *testing.T) {
	in := mustRead(t, "testdata/good/smallest.yaml")
	same(t, "kinds", in.Kinds, []plan.Kind{{Name: "bolt", Implied: true}})
	same(t, "kind of a fastener", in.Joint.Fasteners[2], geometry.Fastener{ID: "C", Kind: "bolt", At: geometry.Point{X: 12, Y: 40}})
	same(t, "groups", in.Groups, []sequence.Group(nil))
	same(t, "loosen", in.Loosen, []plan.StageInput(nil)) // the plan uses the usual stages
}

func TestMakersOrderIsOneGroupOfAll(t *testing.T) {
	in := mustRead(t, "testdata/good/makers-order.yaml")
	same(t, "groups", in.Groups, []sequence.Group{{Way: sequence.List, List: []string{"3", "1", "2"}}})
	same(t, "alias", in.Joint.Labels[0].At, geometry.Point{X: 30, Y: 1})
}

func TestExtendsJoinsMapsAndReplacesLists(t *testing.T) {
	base, in := mustRead(t, "testdata/good/every-key.yaml"), mustRead(t, "testdata/good/other-bank.yaml")
	same(t, "title", in.Title, "Other bank")
	same(t, "name", in.Name, "other-bank")
	same(t, "machine of the base", in.Machine, base.Machine)
	same(t, "mirror", in.Mirror, geometry.AxisX)
	same(t, "cautions", in.Cautions, []plan.Caution{{Text: "only this"}})
	same(t, "kind's new key", in.Kinds[1].Reuse, plan.ReuseOnce)
	same(t, "kind's old key", in.Kinds[1].Friction, base.Kinds[1].Friction)
	same(t, "the joint is not mirrored yet", in.Joint, base.Joint)
	if in.Fingerprint == base.Fingerprint {
		t.Error("the fingerprint does not cover the extending file")
	}
}

func TestProblemsStopTheInput(t *testing.T) {
	in, problems := readText("drawdown: 1\ntitle: Lid\nfasteners: [{id: A, at: [0, 0]}]\ntighten: {stages: [{torque: 20}]}\n")
	if !problems.Stops() {
		t.Fatal("a torque without a unit must stop")
	}
	same(t, "input", in, plan.Input{})
	in, problems = readText("drawdown: 1\ntitle: Lid\nfasteners: [{id: A, at: [0, 0]}]\n")
	if problems.Stops() || len(problems) != 1 || in.Title != "Lid" {
		t.Errorf("a file without tighten is worth a warning: %v", problems)
	}
}

func TestProblemsAreSortedAndBounded(t *testing.T) {
	text := "drawdown: 1\ntitle: Lid\nfasteners:\n" + strings.Repeat("- {x: 1}\n", 30_000)
	_, problems := readText(text)
	if len(problems) != 1_000+1 {
		t.Fatalf("%d problems", len(problems))
	}
	for i := 1; i < 1_000; i++ {
		if a, b := problems[i-1], problems[i]; a.Line > b.Line || a.Line == b.Line && a.Column > b.Column {
			t.Fatalf("%v stands before %v", a, b)
		}
	}
	if want := "too many problems; fix these first"; said(problems)[1_000].What != want {
		t.Errorf("%q, want %q", said(problems)[1_000].What, want)
	}
}

func TestTooLarge(t *testing.T) {
	data := make([]byte, source.MostBytes+1)
	for i := range data {
		data[i] = '\n'
	}
	if _, problems := Read(FromBytes("text", data[:source.MostBytes])); len(problems) != 1 || problems[0].Line != 1 {
		t.Errorf("%v", problems)
	}
	if _, problems := Read(FromBytes("text", data)); len(problems) != 1 || said(problems)[0].What != "the file is larger than 8 MB" {
		t.Errorf("%v", problems)
	}
}

// alongTheEngine reports whether the view has no front: it looks at it or away
// from it.
func alongTheEngine(view string) bool {
	return view == "from the front" || strings.HasPrefix(view, "from the pump")
}

func TestBuiltinsReadCleanly(t *testing.T) {
	files, err := filepath.Glob("*.yaml")
	if err != nil || len(files) != len(Builtin()) {
		t.Errorf("%d files, %d built in", len(files), len(Builtin()))
	}
	for _, name := range Builtin() {
		in := mustRead(t, name)
		if in.Name != name || in.Machine == "" || in.Date == "" || in.View == "" || in.Revision == "" ||
			in.Joint.Front == "" && !alongTheEngine(in.View) || len(in.Cautions) == 0 || in.Source != "invented for teaching, from no manual" {
			t.Errorf("%s lacks a part of its header: %+v", name, in)
		}
		for _, k := range in.Kinds {
			// A bolt reaches as deep as its engagement (first principles).
			if k.Thread == nil || k.Length < k.Grip+k.Engagement {
				t.Errorf("%s: the %s bolt of %v is too short for %v and %v", name, k.Name, k.Length, k.Grip, k.Engagement)
			}
		}
	}
}

// The counts are those of the scenario.
func TestBuiltinFasteners(t *testing.T) {
	for name, want := range map[string]int{"p4-head": 14, "p4-v-head-right": 14, "p4-cam-caps": 10, "p4-cover": 14,
		"p4-manifold": 8, "p4-pump-flange": 16, "p4-sump": 18} {
		if got := len(mustRead(t, name).Joint.Fasteners); got != want {
			t.Errorf("%s has %d fasteners, want %d", name, got, want)
		}
	}
}
