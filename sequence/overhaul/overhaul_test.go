package overhaul_test

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry/unit"
	"drawdown/patterns"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
)

// planOf plans a built-in pattern.
func planOf(t *testing.T, name string) *plan.Plan {
	t.Helper()
	text, ok := patterns.BuiltinText(name)
	if !ok {
		t.Fatalf("no pattern %s", name)
	}
	input, problems := patterns.Read(patterns.FromBytes(name, text))
	if problems.Stops() {
		t.Fatal(problems.Error())
	}
	p, err := plan.Build(input)
	if err != nil {
		t.Fatal(err)
	}
	return &p
}

// small is a machine of three joints with things between them.
func small(t *testing.T) overhaul.Overhaul {
	return overhaul.Overhaul{Tasks: []overhaul.Task{
		{Note: "drain", Side: plan.CautionLoosen},
		{Joint: planOf(t, "p4-cover"), Gaskets: []string{"cover gasket"}, Sealant: "None"},
		{Note: "pin", Warns: true},
		{Part: "camshaft", Tighten: "oil it"},
		{Joint: planOf(t, "p4-head"), Gaskets: []string{"head gasket"}, Sealant: "sealant"},
		{Part: "head"},
		{Joint: planOf(t, "p4-sump"), Gaskets: []string{"cover gasket"}, Again: "when warm"},
		{Note: "wash", Side: plan.CautionTighten},
	}}
}

// words names tasks for comparison.
func words(tasks []overhaul.Task) []string {
	var out []string
	for _, s := range tasks {
		title := ""
		if s.Joint != nil {
			title = s.Joint.Title
		}
		out = append(out, title+s.Part+s.Note)
	}
	return out
}

// Building goes exactly backwards, each side with its own notes.
func TestSides(t *testing.T) {
	o := small(t)
	for _, c := range []struct {
		side plan.CautionSide
		want []string
	}{
		{plan.CautionLoosen, []string{"drain", "Cylinder head cover", "pin", "camshaft", "Cylinder head", "head", "Oil sump"}},
		{plan.CautionTighten, []string{"wash", "Oil sump", "head", "Cylinder head", "camshaft", "pin", "Cylinder head cover"}},
	} {
		if diff := cmp.Diff(c.want, words(o.TasksOf(c.side))); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.side, diff)
		}
	}
}

// A joint's card shows what is done since the joint before, on that side.
func TestBefore(t *testing.T) {
	o := small(t)
	head := o.Tasks[4].Joint
	if diff := cmp.Diff([]string{"pin", "camshaft"}, words(o.Before(head, plan.CautionLoosen))); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]string{"head"}, words(o.Before(head, plan.CautionTighten))); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]string{"drain"}, words(o.Before(o.Tasks[1].Joint, plan.CautionLoosen))); diff != "" {
		t.Error(diff)
	}
}

// The counts are those of the pattern files: 14 + 18 M6 bolts of two lengths,
// 10 head bolts that are used once, 4 side bolts.
func TestFastenersAreCountedOverAllJoints(t *testing.T) {
	type line struct {
		count  int
		thread string
		length unit.Length
		reuse  plan.Reuse
		in     int
	}
	var got []line
	for _, f := range small(t).Fasteners() {
		got = append(got, line{f.Count, f.ThreadName(), f.Length, f.Reuse, len(f.In)})
	}
	want := []line{
		{10, "M10×1.5", 120, plan.ReuseOnce, 1},
		{14, "M6×1", 30, plan.ReuseYes, 1},
		{4, "M8×1.25", 45, plan.ReuseYes, 1},
		{18, "M6×1", 25, plan.ReuseYes, 1},
	}
	if diff := cmp.Diff(want, got, cmp.AllowUnexported(line{})); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// Like fasteners of two joints stand in one line.
func TestLikeFastenersAreCountedTogether(t *testing.T) {
	o := overhaul.Overhaul{Tasks: []overhaul.Task{{Joint: planOf(t, "p4-cover")}, {Joint: planOf(t, "p4-timing-cover")}}}
	for _, f := range o.Fasteners() {
		if f.ThreadName() == "M6×1" && (f.Count != 20 || len(f.In) != 2) {
			t.Errorf("%d M6 bolts in %d joints, want 14 + 6 in 2", f.Count, len(f.In))
		}
	}
}

// A nut makes a stud of what stands in a tapped hole, and is counted with a bolt
// that goes through. Like sizes of stud and bolt stay apart.
func TestStudsAndNuts(t *testing.T) {
	o := overhaul.Overhaul{Tasks: []overhaul.Task{{Joint: planOf(t, "p4-pump-flange")}, {Joint: planOf(t, "p4-manifold")}, {Joint: planOf(t, "p4-head")}}}
	type line struct {
		count int
		stud  bool
		nut   unit.Length
	}
	got := map[string]line{}
	for _, f := range o.Fasteners() {
		got[fmt.Sprintf("%s %v %v", f.ThreadName(), f.Length, f.Stud())] = line{f.Count, f.Stud(), f.NutAcross}
	}
	want := map[string]line{
		"M16×2 80 mm false": {16, false, 24}, "M8×1.25 45 mm true": {8, true, 13},
		"M8×1.25 45 mm false": {4, false, 0}, "M10×1.5 120 mm false": {10, false, 0},
	}
	if diff := cmp.Diff(want, got, cmp.AllowUnexported(line{})); diff != "" {
		t.Error(diff)
	}
}

// Each width is listed once, the smallest first, with its joints.
func TestSockets(t *testing.T) {
	o := overhaul.Overhaul{Tasks: []overhaul.Task{{Joint: planOf(t, "p4-head")}, {Joint: planOf(t, "p4-manifold")}, {Joint: planOf(t, "p4-cover")}}}
	var got []string
	for _, s := range o.Sockets() {
		words := s.Across.String()
		for _, j := range s.In {
			words += fmt.Sprint(" ", j.Number)
		}
		got = append(got, words)
	}
	if diff := cmp.Diff([]string{"10 mm 3", "13 mm 1 2", "16 mm 1"}, got); diff != "" {
		t.Error(diff)
	}
}

// What of the parts is new, and what goes by the manual, is listed with its
// part; the latter in the order of building.
func TestPartsByTheManual(t *testing.T) {
	o := overhaul.Overhaul{Tasks: []overhaul.Task{
		{Part: "pump", Manual: []string{"pump bolts"}, Figures: []string{"runout"}}, {Part: "rods", Figures: []string{"clearance"}}, {Note: "a"}, {Joint: planOf(t, "p4-head")},
		{Part: "pulley", Manual: []string{"pulley bolt"}, New: []string{"pulley bolt"}},
	}}
	if diff := cmp.Diff([]string{"pulley", "rods", "pump"}, words(o.ByManual())); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]overhaul.Supply{{What: "pulley bolt", Part: "pulley"}}, o.NewParts()); diff != "" {
		t.Error(diff)
	}
}

func TestSupplies(t *testing.T) {
	o := small(t)
	gaskets := o.Gaskets()
	if len(gaskets) != 2 || gaskets[0].Count != 2 || gaskets[0].In[1].Number != 3 || gaskets[1].Count != 1 {
		t.Errorf("gaskets %+v", gaskets)
	}
	if s := o.Sealants(); len(s) != 1 || s[0].In[0].Number != 2 {
		t.Errorf("sealants %+v", s)
	}
	// The cover and the sump go together dry.
	if l := o.Lubricants(); len(l) != 1 || l[0].What != "engine oil" || len(l[0].In) != 1 {
		t.Errorf("lubricants %+v", l)
	}
}

// Nothing has to lie ready for threads that a file leaves without a lubricant, in
// whatever words; first principles.
func TestNothingOnTheThreadIsNoSupply(t *testing.T) {
	for lubricant, want := range map[string]int{"none": 0, "Dry": 0, "degreased": 0, "no lubricant": 0, "graphite": 1, "our own mix": 1} {
		p := *planOf(t, "p4-head")
		p.Kinds = []plan.Kind{{Name: "main", Lubricant: lubricant}}
		if got := (overhaul.Overhaul{Tasks: []overhaul.Task{{Joint: &p}}}).Lubricants(); len(got) != want {
			t.Errorf("%s: %+v", lubricant, got)
		}
	}
}

// Widths and torques as the files state them.
func TestWrenches(t *testing.T) {
	all := small(t).Wrenches()
	if len(all) != 4 {
		t.Fatalf("%d wrenches, want one for each of 4 kinds", len(all))
	}
	head := all[1]
	if head.Across != 16 || head.Standard != "" || head.Low.Nm() != 20 || head.High.Nm() != 40 || !head.Angle {
		t.Errorf("head bolts: %+v", head)
	}
	if side := all[2]; side.Angle || side.Low != side.High {
		t.Errorf("side bolts: %+v", side)
	}
}

// A width that the file leaves open is the standard's: ISO 4014, M10: 16 mm;
// ISO 4762, M10: 8 mm (value from memory).
func TestWidthsFromTheStandard(t *testing.T) {
	for form, want := range map[string]unit.Length{"hexagon": 16, "socket": 8} {
		text := "drawdown: 1\ntitle: T\nkinds: {b: {thread: M10, head: " + form + "}}\nfasteners: [{id: A, at: [0, 0]}, {id: B, at: [50, 0]}]\n"
		input, problems := patterns.Read(patterns.FromBytes("t.yaml", []byte(text)))
		if problems.Stops() {
			t.Fatal(problems.Error())
		}
		p, err := plan.Build(input)
		if err != nil {
			t.Fatal(err)
		}
		w := overhaul.Overhaul{Tasks: []overhaul.Task{{Joint: &p}}}.Wrenches()[0]
		if w.Across != want || w.Standard == "" || w.Key != (form == "socket") || w.Torque {
			t.Errorf("%s: %+v", form, w)
		}
	}
}

// Check passes and waits in the order of building: the pump flange has a check
// pass, a wait and a second check pass; the head has none.
func TestChecks(t *testing.T) {
	o := overhaul.Overhaul{Tasks: []overhaul.Task{
		{Joint: planOf(t, "p4-pump-flange"), Again: "after an hour"}, {Joint: planOf(t, "p4-manifold")}, {Joint: planOf(t, "p4-head")},
	}}
	var got []string
	for _, c := range o.Checks() {
		what := c.Again
		if c.Stage != nil {
			what = string(c.Stage.Do)
		}
		got = append(got, c.Joint.Title+": "+what)
	}
	want := []string{"Exhaust manifold: torque", "Pump flange: torque", "Pump flange: wait", "Pump flange: torque", "Pump flange: after an hour"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}
