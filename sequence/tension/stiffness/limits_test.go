package stiffness

import (
	"math"
	"slices"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/strength"
	"drawdown/sequence/tension/tensiontest"
)

func m10(t *testing.T) screw.Bolt {
	return screw.Bolt{Thread: tensiontest.Thread(t, "M10"), Class: "10.9", Lubricant: "oil"}
}

// ISO 4014, ISO 888 and ASME B18.2.1 (values from memory): the steps of lengths
// and of thread lengths change just past their limits.
func TestEndsOfTheStepsOfLengths(t *testing.T) {
	t.Parallel()
	metric, inch := tensiontest.Thread(t, "M10"), tensiontest.Thread(t, "1/2-13")
	for length, want := range map[unit.Length]unit.Length{125: 26, 126: 32, 200: 32, 201: 45} {
		tensiontest.Near(t, "thread", float64(ThreadLength(metric, length)), float64(want), 1e-12)
	}
	for length, want := range map[unit.Length]unit.Length{6 * in: 1.25 * in, 6.01 * in: 1.5 * in} {
		tensiontest.Near(t, "inch thread", float64(ThreadLength(inch, length)), float64(want), 1e-12)
	}
	for least, want := range map[unit.Length]unit.Length{66: 70, 70: 70, 70.1: 80, 151: 160, 160: 160, 160.1: 180, 181: 200, 55: 55, 55.1: 60} {
		tensiontest.Near(t, "length", float64(StandardLength(metric, least)), float64(want), 1e-12)
	}
	tensiontest.Near(t, "nut", float64(nutHeight(metric)), 0.9*10+2*1.5, 1e-12)
	if a, b := lengthStandard(inch), lengthStandard(metric); a != "ASME B18.2.1" || b != "ISO 4014" {
		t.Errorf("lengths by %q and %q", a, b)
	}
}

// First principles: the plain part of a bolt is in the grip, and the rest of
// the grip is thread. A standard bolt whose thread starts beyond the grip is
// assumed to have more thread; one whose thread is stated is rejected.
func TestThreadInTheGrip(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name  string
		grip  Grip
		free  unit.Length
		code  finding.Code // of the error
		notes []finding.Code
	}{
		{"nothing stated", Grip{}, 60 - (80 - 26), "", []finding.Code{BoltAssumed}},          // 60 mm and a nut of 12 mm: 80 mm long
		{"tapped", Grip{TappedIn: "steel"}, 60 - (80 - 26), "", []finding.Code{BoltAssumed}}, // 12.5 mm in the part
		{"tapped, engagement stated", Grip{TappedIn: "steel", Engagement: 9}, 60 - (70 - 26), "", []finding.Code{BoltAssumed}},
		{"full thread", Grip{FullThread: true}, 60, "", nil},
		{"length", Grip{BoltLength: 80}, 60 - (80 - 26), "", []finding.Code{BoltAssumed}},
		{"length and thread", Grip{BoltLength: 80, Thread: 30}, 10, "", nil},
		{"thread as long as the bolt", Grip{BoltLength: 80, Thread: 90}, 60, "", nil},
		{"plain to the end of the grip", Grip{BoltLength: 80, Thread: 20}, 0, "", nil},
		{"plain beyond the grip", Grip{BoltLength: 80, Thread: 19}, 0, ThreadFromTooFar, nil},
		{"a standard bolt beyond the grip", Grip{BoltLength: 90}, 60, "", []finding.Code{FullThreadAssumed}},
		{"as long as the grip", Grip{BoltLength: 60}, 0, BoltTooShort, nil},
		{"just longer", Grip{BoltLength: 60.1}, 60 - (60.1 - 26), "", []finding.Code{BoltAssumed}},
		{"without end", Grip{BoltLength: unit.Length(math.Inf(1))}, 0, BoltTooShort, nil},
		{"thread stated alone", Grip{Thread: 40}, 60 - (80 - 40), "", []finding.Code{BoltAssumed}},
		{"a thread that begins at the nut", Grip{Thread: 10}, 1.5, "", []finding.Code{BoltAssumed}},
		{"shank", Grip{Shank: []Section{{20, 9}, {15, 10}}}, 25, "", nil},
		{"shank as long as the grip", Grip{Shank: []Section{{60, 9}}}, 0, "", nil},
		{"shank too long", Grip{Shank: []Section{{60, 9}, {0.1, 9}}}, 0, ShankTooLong, nil},
		{"shank of no length", Grip{Shank: []Section{{0, 9}}}, 0, ShankLength, nil},
		{"thinnest shank", Grip{Shank: []Section{{10, 5}}}, 50, "", nil},
		{"shank too thin", Grip{Shank: []Section{{10, 4.9}}}, 0, ShankDiameter, nil},
		{"thickest shank", Grip{Shank: []Section{{10, 20}}}, 50, "", nil},
		{"shank too thick", Grip{Shank: []Section{{10, 20.1}}}, 0, ShankDiameter, nil},
	} {
		c.grip.Layers, c.grip.Reach = []Layer{{Thickness: 60, Material: "steel"}}, 40
		j, err := Of(m10(t), c.grip)
		if c.code != "" {
			if f, ok := err.(finding.Finding); !ok || f.Code != c.code {
				t.Errorf("%s: %v, want %q", c.name, err, c.code)
			}
			continue
		}
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		tensiontest.Near(t, c.name, float64(j.FreeThread), float64(c.free), 1e-9)
		var notes []finding.Code
		for _, f := range j.Assumptions {
			if f.Code == BoltAssumed || f.Code == FullThreadAssumed {
				notes = append(notes, f.Code)
			}
		}
		if !slices.Equal(notes, c.notes) {
			t.Errorf("%s: says %q, want %q", c.name, notes, c.notes)
		}
	}
}

// The longest grip is accepted; a longer one, or one without thickness, is not.
func TestSpansOfAGrip(t *testing.T) {
	t.Parallel()
	for thickness, code := range map[unit.Length]finding.Code{
		10 * mostGrip: "", 10*mostGrip + 0.1: GripTooLong, 0: LayerRange, -1: LayerRange, unit.Length(math.Inf(1)): LayerRange,
	} {
		_, err := Of(m10(t), Simple(thickness))
		if f, ok := err.(finding.Finding); (err == nil) != (code == "") || ok && f.Code != code {
			t.Errorf("%v: %v, want %q", thickness, err, code)
		}
	}
	if _, err := Of(screw.Bolt{}, Simple(60)); err == nil {
		t.Error("a bolt without a thread passes")
	}
	for _, preload := range []unit.Force{0, -1, unit.Force(math.Inf(1))} {
		if _, err := Settle(m10(t), Simple(60), preload); err == nil {
			t.Errorf("a preload of %v settles", preload)
		}
	}
	if _, err := Settle(m10(t), Simple(0), 30000); err == nil {
		t.Error("no grip settles")
	}
}

// VDI 2230 Part 1, table 5: each interface counts once; a washer adds one; a
// tapped part has one face less, and its own joint more.
func TestInterfacesThatSettle(t *testing.T) {
	t.Parallel()
	two := Grip{Layers: []Layer{{20, "steel"}, {30, "steel"}}}
	tapped, washer := two, m10(t)
	tapped.TappedIn = "steel"
	washer.Washer = head.NormalWasher
	for name, c := range map[string]struct {
		bolt          screw.Bolt
		grip          Grip
		faces, joints int
	}{"through": {m10(t), two, 2, 1}, "tapped": {m10(t), tapped, 1, 2}, "washer": {washer, two, 2, 2}} {
		s, err := Settle(c.bolt, c.grip, 30000)
		if err != nil {
			t.Fatal(err)
		}
		tensiontest.Near(t, name, s.Micrometres, embedding(c.faces, c.joints), 1e-12)
		if !slices.Contains(s.Sources, "VDI 2230 Part 1, table 5 (settlement)") || len(s.Assumptions) != len(s.Joint.Assumptions)+2 {
			t.Errorf("%s: %q, %v", name, s.Sources, s.Assumptions)
		}
		tensiontest.Near(t, name+" share", s.LossShare, float64(s.Loss)/30000, 1e-12)
	}
	if s, err := Settle(m10(t), two, 1); err != nil || s.Loss != 1 || s.LossShare != 1 {
		t.Errorf("more is lost than there was: %+v, %v", s, err)
	}
}

// The worst case of the range is the one that breaks, otherwise the one with
// the most permanent stretch.
func TestWorstOfATurn(t *testing.T) {
	t.Parallel()
	at := func(breaks bool, lasting unit.Length) AfterAngle { return AfterAngle{Breaks: breaks, Lasting: lasting} }
	for _, c := range []struct{ low, nominal, high, want AfterAngle }{
		{at(false, 1), at(false, 2), at(false, 3), at(false, 3)}, {at(false, 3), at(false, 2), at(false, 1), at(false, 3)},
		{at(true, 1), at(false, 2), at(false, 3), at(true, 1)}, {at(false, 9), at(true, 2), at(false, 9), at(true, 2)},
		{at(true, 1), at(true, 2), at(true, 3), at(true, 3)}, {at(false, 2), at(false, 2), at(false, 2), at(false, 2)},
	} {
		if got := (Turned{Low: c.low, Nominal: c.nominal, High: c.high}).Worst(); got != c.want {
			t.Errorf("%+v: %+v", c, got)
		}
	}
	for _, c := range []struct {
		breaks bool
		toIt   unit.Angle
		want   bool
	}{{true, 0, true}, {true, 10, false}, {false, 0, false}} {
		if got := (AfterAngle{Breaks: c.breaks, AngleToBreak: c.toIt}).BreaksBySnug(); got != c.want {
			t.Errorf("%+v: %v", c, got)
		}
	}
	none := assumedBeyondYield(screw.Completed{}, Turned{Nominal: at(false, 0)})
	some := assumedBeyondYield(screw.Completed{Strength: strength.Class{Yield: 940, Tensile: 1040}}, Turned{Nominal: at(false, 1)})
	if none != nil || len(some) != 1 || some[0].Code != EvenStretchAssumed {
		t.Errorf("below yield %v, beyond %v", none, some)
	}
}
