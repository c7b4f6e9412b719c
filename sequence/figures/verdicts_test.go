package figures

import (
	"errors"
	"math"
	"slices"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/strength"
)

// codes lists the findings of a judge, and whether each is a warning.
func codes(found []finding.Finding) (list []string) {
	for _, f := range found {
		code := string(f.Code)
		if f.Severity == finding.Warning {
			code += "!"
		}
		list = append(list, code)
	}
	return list
}

func nm(v float64) unit.GivenTorque { return unit.GivenTorque{Value: v} }

// Angles add up until a torque or a slackening. Stages that do not end in an
// angle are not a turn.
func TestTurns(t *testing.T) {
	t.Parallel()
	j := judge{Bolt: Bolt{Stages: []Stage{
		{1, Tighten, nm(20), 0, 0}, {2, Advance, nm(0), 60, 0}, {3, Advance, nm(0), 30, 0}, {4, BackOff, nm(0), 90, 0}, {5, Advance, nm(0), 45, 0}, {6, Tighten, nm(30), 0, 0}, {7, Tighten, nm(50), 0, 0}, {8, Advance, nm(0), 70, 0},
	}}}
	want := []turn{{nm(20), 90, 3}, {nm(0), 45, 5}, {nm(50), 70, 8}}
	if got := j.turns(); !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// Above one turn, the finding asks for what is missing to calculate it.
func TestMoreThanATurn(t *testing.T) {
	t.Parallel()
	for angle, want := range map[unit.Angle]bool{360: false, 361: true, 390: true} {
		j := judge{Bolt: Bolt{Stages: []Stage{{1, Tighten, nm(20), 0, 0}, {2, Advance, nm(0), angle, 0}}}}
		j.judgeTurns()
		if finding.Has(j.found, TurnWhole) != want {
			t.Errorf("%v: %v", angle, codes(j.found))
		}
		if want && j.found[0].Values["lacks"] != true {
			t.Errorf("%v: %v", angle, j.found[0])
		}
	}
	full := judge{Bolt: Bolt{Bolt: screw.Bolt{Thread: thread.Thread{Name: "M10"}}, Grip: stiffness.Simple(50)}}
	full.wholeTurn(turn{nm(0), 400, 2})
	if full.found[0].Values["lacks"] != false || full.found[0].At.Stage != 2 {
		t.Errorf("nothing lacks: %v", full.found)
	}
	for name, spoil := range map[string]func(*judge, *turn){
		"nothing": func(*judge, *turn) {}, "thread": func(j *judge, _ *turn) { j.Bolt.Bolt.Thread.Name = "" }, "class": func(j *judge, _ *turn) { j.strongest = true },
		"grip": func(j *judge, _ *turn) { j.Grip.Layers = nil }, "snug": func(_ *judge, t *turn) { t.snug = nm(0) }, "over": func(j *judge, _ *turn) { j.over = []unit.Torque{20} },
	} {
		j, run := full, turn{nm(20), 90, 2}
		spoil(&j, &run)
		if got := j.canTurn(run); got != (name == "nothing") {
			t.Errorf("without %s it can be worked out: %v", name, got)
		}
	}
}

// A torque before the angle that breaks the bolt, at one friction of the range
// or at all. One over the aim is a note.
func TestSnugTorque(t *testing.T) {
	t.Parallel()
	holds := stiffness.AfterAngle{Thread: 0.1, Head: 0.12, Snug: 100}
	breaks := stiffness.AfterAngle{Thread: 0.08, Head: 0.09, Breaks: true}
	later := stiffness.AfterAngle{Breaks: true, AngleToBreak: 40, Snug: 100}
	for _, c := range []struct {
		name string
		r    stiffness.Turned
		ends bool
		want []string
		head any
	}{
		{"it holds", stiffness.Turned{Low: holds, Nominal: holds, High: holds, Aim: 100}, false, nil, nil},
		{"over the aim", stiffness.Turned{Low: holds, Nominal: holds, High: holds, Aim: 99}, false, []string{"snug over aim"}, nil},
		{"it breaks at low friction", stiffness.Turned{Low: breaks, Nominal: holds, High: holds, Aim: 100}, true, []string{"snug breaks!"}, 0.09},
		{"at low and nominal", stiffness.Turned{Low: breaks, Nominal: breaks, High: holds, Aim: 100}, true, []string{"snug breaks!"}, 0.09},
		{"at nominal and high", stiffness.Turned{Low: holds, Nominal: breaks, High: breaks, Aim: 100}, true, []string{"snug breaks!"}, 0.09},
		{"at any", stiffness.Turned{Low: breaks, Nominal: breaks, High: breaks, Aim: 100}, true, []string{"snug breaks!"}, 0.},
		{"in the turn", stiffness.Turned{Low: later, Nominal: later, High: later, Aim: 100}, false, nil, nil},
	} {
		var j judge
		if got := j.snug(turn{nm(20), 90, 3}, c.r); got != c.ends || !slices.Equal(codes(j.found), c.want) {
			t.Errorf("%s: %v, %v", c.name, got, codes(j.found))
		}
		if c.head != nil && (j.found[0].Values["head"] != c.head || j.found[0].At.Stage != 3) {
			t.Errorf("%s: %v", c.name, j.found[0])
		}
	}
}

// A turn breaks the bolt, necks it, or uses up more than half of its uniform
// elongation, the worst first. In a bolt as its standard makes it, this is a
// warning if the length is stated and the bolt breaks or necks.
func TestFailingTurns(t *testing.T) {
	t.Parallel()
	m10, _ := thread.Parse("M10")
	class, err := strength.ParseClass("10.9", m10)
	if err != nil {
		t.Fatal(err)
	}
	even := class.UniformStrain()
	for _, c := range []struct {
		name string
		at   stiffness.AfterAngle
		want string
		made string // finding for a bolt as it is made
	}{
		{"breaks", stiffness.AfterAngle{Breaks: true, Necks: true, LastingStrain: even, AngleToBreak: 112}, "turn breaks", "turn breaks!"},
		{"necks", stiffness.AfterAngle{Necks: true, LastingStrain: even, AngleToGreatest: 112}, "turn necks", "turn necks"},
		{"uses up", stiffness.AfterAngle{LastingStrain: 0.501 * even, AngleToGreatest: 112}, "turn uses up", "turn uses up"},
		{"half", stiffness.AfterAngle{LastingStrain: 0.5 * even}, "", ""},
	} {
		r := stiffness.Turned{Low: c.at, Nominal: c.at, High: c.at, Strength: class}
		var want []string
		if c.want != "" {
			want = []string{c.want}
		}
		var j judge
		if got := j.fails(turn{nm(20), 90, 3}, r, asStated, j.note); got != (c.want != "") || !slices.Equal(codes(j.found), want) {
			t.Errorf("%s: %v, %v", c.name, got, codes(j.found))
		}
		if c.want != "" && j.found[0].Values["most"] != unit.Angle(110) {
			t.Errorf("%s: %v", c.name, j.found[0].Values)
		}
		if c.made != "" {
			want = []string{c.made}
		}
		j = judge{Bolt: Bolt{Grip: stiffness.Grip{BoltLength: 60}}}
		if got := j.failsAsMade(turn{nm(20), 90, 3}, r, asMade); got != (c.made == c.want+"!" && c.want != "") || !slices.Equal(codes(j.found), want) {
			t.Errorf("%s as made: %v, %v", c.name, got, codes(j.found))
		}
		for open, length := range map[string]unit.Length{asMade: 0, ofSteel: 60} {
			j = judge{Bolt: Bolt{Grip: stiffness.Grip{BoltLength: length}}}
			if got := j.failsAsMade(turn{nm(20), 90, 3}, r, open); got || len(j.found) > 0 && j.found[0].Severity == finding.Warning {
				t.Errorf("%s, %s, %v long: %v, %v", c.name, open, length, got, codes(j.found))
			}
		}
	}
	for open, want := range map[string]string{openAll: asMade, openShank: asMade, openParts: ofSteel, asStated: ofSteel} {
		if got := ofMade(open); got != want {
			t.Errorf("made, where %s is open: %s", open, got)
		}
	}
}

// The range of an angle is given in steps of 5°, and as one figure if both ends
// are equal.
func TestSpanOfAnAngle(t *testing.T) {
	t.Parallel()
	for _, c := range []struct{ low, nominal, high, least, most unit.Angle }{
		{102, 111, 123, 100, 125}, {123, 111, 102, 100, 125}, {111, 102, 123, 100, 125}, {99, 100, 102, 0, 100}, {97.4, 100, 102.6, 95, 105},
	} {
		r := stiffness.Turned{Low: stiffness.AfterAngle{AngleToYield: c.low}, Nominal: stiffness.AfterAngle{AngleToYield: c.nominal}, High: stiffness.AfterAngle{AngleToYield: c.high}}
		v := (&judge{}).turned(turn{nm(20), 90, 3}, r, openShank, angleToYield, finding.Values{})
		if v["least"] != c.least || v["most"] != c.most || v["angle"] != unit.Angle(90) || v["snug"] != nm(20) || v["rests"].(finding.Finding).Values["open"] != openShank {
			t.Errorf("%+v: %v", c, v)
		}
	}
	at := stiffness.AfterAngle{AngleToYield: 1, AngleToGreatest: 2, AngleToBreak: 3}
	if angleToYield(at) != 1 || angleToGreatest(at) != 2 || angleToBreak(at) != 3 {
		t.Error("another angle")
	}
}

// Permanent stretch, depending on whether the bolt is used again.
func TestWhatStaysLonger(t *testing.T) {
	t.Parallel()
	little, much := stiffness.AfterAngle{Lasting: 0.02, Reusable: true}, stiffness.AfterAngle{Lasting: 0.5}
	for _, c := range []struct {
		reuse    string
		at       stiffness.AfterAngle
		outlasts bool
		lasts    string
	}{
		{"once", much, false, "turn used once"}, {"once", little, false, "turn used once"}, {"once", stiffness.AfterAngle{Reusable: true}, false, ""},
		{"inspect", much, true, "turn used once"}, {"inspect", little, false, "turn measured"},
		{"yes", much, true, "turn used once"}, {"yes", little, true, "turn measured"}, {"yes", stiffness.AfterAngle{Reusable: true}, false, ""},
		{"", little, true, "turn measured"},
		{"", stiffness.AfterAngle{Lasting: 0.5, Necks: true}, true, ""}, {"", stiffness.AfterAngle{Lasting: 0.5, Breaks: true}, true, ""},
	} {
		j := judge{Bolt: Bolt{Reuse: c.reuse}}
		if got := j.outlasts(c.at); got != c.outlasts {
			t.Errorf("%q, %+v: outlasts %v", c.reuse, c.at, got)
		}
		j.lasts(turn{nm(20), 90, 3}, c.at)
		var want []string
		if c.lasts != "" {
			want = []string{c.lasts}
		}
		if !slices.Equal(codes(j.found), want) {
			t.Errorf("%q, %+v: %v", c.reuse, c.at, codes(j.found))
		}
		j.found = nil
		if j.lasts(turn{nm(20), 0, 3}, c.at); len(j.found) > 0 {
			t.Errorf("%q, no angle: %v", c.reuse, codes(j.found))
		}
	}
}

// A torque past yield gives a warning if it is at the middle of the range, or
// if it breaks the bolt anywhere; otherwise a note. The finding gives the
// highest friction at which it does.
func TestPastYield(t *testing.T) {
	t.Parallel()
	end := func(friction, share float64, breaks bool) screw.AtFriction {
		at := screw.AtFriction{Thread: friction, YieldShare: share, Preload: 1, Greatest: 2}
		if breaks {
			at.Preload = 3
		}
		return at
	}
	for _, c := range []struct {
		name           string
		low, mid, high screw.AtFriction
		want           string
		at             float64
	}{
		{"at the lowest alone", end(1, 1.1, false), end(2, 0.9, false), end(3, 0.8, false), "torque past yield", 1},
		{"and breaks there", end(1, 1.1, true), end(2, 0.9, false), end(3, 0.8, false), "torque past yield!", 1},
		{"in the middle", end(1, 1.2, false), end(2, 1.05, false), end(3, 0.8, false), "torque past yield!", 2},
		{"and breaks at the lowest", end(1, 1.2, true), end(2, 1.05, false), end(3, 0.8, false), "torque past yield!", 2},
		{"at the highest", end(1, 0.9, false), end(2, 0.95, false), end(3, 1.01, false), "torque past yield", 3},
	} {
		var j judge
		j.pastYield(Stage{Number: 4, Torque: nm(50)}, screw.Result{Low: c.low, Nominal: c.mid, High: c.high})
		if got := codes(j.found); !slices.Equal(got, []string{c.want}) || j.found[0].Values["thread"] != c.at {
			t.Errorf("%s: %v, %v", c.name, got, j.found[0].Values)
		}
	}
	for name, c := range map[string]struct {
		shares      [3]float64
		least, most float64
	}{"rising": {[3]float64{1, 2, 3}, 1, 3}, "falling": {[3]float64{3, 2, 1}, 1, 3}, "peak": {[3]float64{2, 3, 1}, 1, 3}, "dip": {[3]float64{2, 1, 3}, 1, 3}} {
		r := screw.Result{Low: end(0, c.shares[0], false), Nominal: end(0, c.shares[1], false), High: end(0, c.shares[2], false)}
		if least, most := shares(r); least != c.least || most != c.most {
			t.Errorf("%s: %g to %g", name, least, most)
		}
	}
	for _, c := range []struct {
		tensile, yield unit.Stress
		want           float64
	}{{1000, 900, 1000. / 900}, {1100, 1100, 1220. / 1100}, {0, 900, 1220. / 1100}} {
		j := judge{class: strength.Class{Tensile: c.tensile, Yield: c.yield}}
		if got := j.breakingShare(); got != c.want {
			t.Errorf("%+v: %g, want %g", c, got, c.want)
		}
	}
	for v, want := range map[float64]float64{12.345678: 12.35, 100: 100, 123456: 123500, 0.0123456: 0.01235} {
		if got := written(unit.GivenTorque{Value: v, Unit: unit.PoundForceFoot}); got.Value != want || got.Unit != unit.PoundForceFoot {
			t.Errorf("%g is written %v", v, got)
		}
	}
}

// Only the last torque is final, unless an angle or a larger torque follows, or
// the bolt is slackened again.
func TestFinalTorque(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		stages []Stage
		at     int
		want   bool
	}{
		"alone":             {[]Stage{{1, Tighten, nm(5), 0, 0}}, 0, true},
		"a larger follows":  {[]Stage{{1, Tighten, nm(5), 0, 0}, {2, Tighten, nm(6), 0, 0}}, 0, false},
		"a smaller follows": {[]Stage{{1, Tighten, nm(6), 0, 0}, {2, Tighten, nm(5), 0, 0}}, 0, true},
		"the same follows":  {[]Stage{{1, Tighten, nm(5), 0, 0}, {2, Tighten, nm(5), 0, 0}}, 0, true},
		"an angle follows":  {[]Stage{{1, Tighten, nm(5), 0, 0}, {2, Advance, nm(0), 90, 0}}, 0, false},
		"an angle before":   {[]Stage{{1, Advance, nm(0), 90, 0}, {2, Tighten, nm(5), 0, 0}}, 1, true},
		"slackened before":  {[]Stage{{1, BackOff, nm(0), 90, 0}, {2, Tighten, nm(5), 0, 0}}, 1, false},
	} {
		j := judge{Bolt: Bolt{Stages: c.stages}}
		if got := j.isFinal(c.at); got != c.want {
			t.Errorf("%s: %v", name, got)
		}
	}
}

// A finding is placed by its stage, or by its kind if it has no stage.
func TestPlaced(t *testing.T) {
	t.Parallel()
	f := finding.Warned(TurnBreaks, nil).About(finding.Place{Kind: "main", Stage: 3})
	if p := Placed(f); p.Code != AtStage || p.Severity != finding.Warning || p.Values["stage"] != 3 || p.Values["kind"] != "main" || p.At.Stage != 3 {
		t.Errorf("%v", p)
	}
	f.At.Stage = 0
	if p := Placed(f); p.Code != AtKind || p.Severity != finding.Warning || p.Values["stage"] != nil || p.Values["kind"] != "main" || p.At.Kind != "main" {
		t.Errorf("%v", p)
	}
}

// Substitutes for what is open: thread over the whole grip, parts of aluminium.
func TestLenient(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name     string
		grip     stiffness.Grip
		open     string
		full     bool
		material string
		into     string
	}{
		{"all open", stiffness.Grip{Layers: []stiffness.Layer{{Thickness: 20}}, BoltLength: 60}, openAll, true, "cast aluminium", ""},
		{"parts open", stiffness.Grip{Layers: []stiffness.Layer{{Thickness: 20}}, Thread: 30}, openParts, false, "cast aluminium", ""},
		{"shank open", stiffness.Grip{Layers: []stiffness.Layer{{Thickness: 20, Material: "steel"}}, BoltLength: 60}, openShank, true, "steel", ""},
		{"stated", stiffness.Grip{Layers: []stiffness.Layer{{Thickness: 20, Material: "steel"}}, FullThread: true}, asStated, true, "steel", ""},
		{"a tapped part", stiffness.Grip{Layers: []stiffness.Layer{{Thickness: 20, Material: "steel"}}, Thread: 30, TappedIn: "aluminium", Engagement: 20}, asStated, false, "steel", "aluminium"},
		{"one that is not known", stiffness.Grip{Layers: []stiffness.Layer{{Thickness: 20, Material: "steel"}}, Thread: 30, TappedIn: "cheese", Engagement: 20}, asStated, false, "steel", ""},
	} {
		j := judge{Bolt: Bolt{Grip: c.grip}}
		got, open := j.lenient()
		if open != c.open || got.FullThread != c.full || got.Layers[0].Material != c.material || got.TappedIn != c.into || (got.Engagement > 0) != (c.into != "") || c.full && c.grip.BoltLength > 0 && got.BoltLength != 0 {
			t.Errorf("%s: %+v, %s", c.name, got, open)
		}
		if j.Grip.Layers[0].Material != c.grip.Layers[0].Material {
			t.Errorf("%s: the bolt itself is changed", c.name)
		}
	}
}

// A pressure above the limit of the material under the head gives a warning; if
// that is unknown, the limit of the strongest usual one applies.
func TestPressureUnderTheHead(t *testing.T) {
	t.Parallel()
	m10, _ := thread.Parse("M10")
	f := screw.Same(screw.Between(0.12, 0.12))
	for under, want := range map[string]finding.Code{"cast aluminium": PressureTooHigh, "": PressureAnywhere} {
		for used, over := range map[float64]bool{0.99: false, 1.01: true, 1.09: true} {
			j := judge{Bolt: Bolt{Bolt: screw.Bolt{Thread: m10, Class: "10.9", Friction: &f, HeadAcross: 16}, Under: under}}
			j.complete()
			bolt, err := screw.Complete(j.Bolt.Bolt)
			if err != nil {
				t.Fatal(err)
			}
			material, _ := j.underHead()
			r, err := head.UnderHead(bolt.Bearing, 1000, material.Name)
			if err != nil {
				t.Fatal(err)
			}
			j.preload = unit.Force(used / r.Used * 1000)
			if j.judgePressure(); finding.Has(j.found, want) != over || len(j.found) > 1 {
				t.Errorf("%q, %g of the limit: %v", under, used, codes(j.found))
			}
			if over && want == PressureAnywhere {
				if p := float64(j.found[0].Values["pressure"].(unit.Stress)); math.Mod(p, 50) != 0 || math.Abs(p-used*float64(r.Limit)) > 25 {
					t.Errorf("a pressure of %g MPa, in fifties of %g", p, used*float64(r.Limit))
				}
			}
		}
	}
	if m := hardestMaterial(); m.LimitingPressure <= 0 {
		t.Errorf("the hardest material bears %v", m.LimitingPressure)
	}
}

// Only a known class reaches a preload.
func TestReaches(t *testing.T) {
	t.Parallel()
	var j judge
	j.reaches(50)
	j.reaches(30)
	if j.preload != 50 {
		t.Errorf("%v", j.preload)
	}
	j.strongest = true
	if j.reaches(90); j.preload != 50 {
		t.Errorf("class not known: %v", j.preload)
	}
}

// A torque at a single friction leaves no more than a torque wrench achieves:
// VDI 2230 Part 1, table A8. One past yield, or with a range, is not judged
// this way.
func TestLeastLeft(t *testing.T) {
	t.Parallel()
	ask := func(low, high float64, torque unit.Torque) Ask {
		f := screw.Same(screw.Between(low, high))
		th, err := thread.Parse("M10")
		if err != nil {
			t.Fatal(err)
		}
		return Ask{Bolt: Bolt{Bolt: screw.Bolt{Thread: th, Class: "10.9", Friction: &f}}, Torque: torque}
	}
	for name, c := range map[string]struct {
		ask  Ask
		want bool
	}{"one figure": {ask(0.12, 0.12, 40), true}, "a span": {ask(0.1, 0.14, 40), false}, "past yield": {ask(0.12, 0.12, 82), false}} {
		a, err := WorkOut(c.ask)
		if err != nil {
			t.Fatal(name, err)
		}
		if (a.Least > 0) != c.want || slices.ContainsFunc(a.Sources, func(s string) bool { return s == "VDI 2230 Part 1, table A8 (scatter of a torque wrench)" }) != c.want {
			t.Errorf("%s: %v, sources %q", name, a.Least, a.Sources)
		}
		if c.want && (a.Alpha <= 1 || a.Least >= a.Greatest) {
			t.Errorf("%s: alpha %g, least %v of %v", name, a.Alpha, a.Least, a.Greatest)
		}
		if len(a.Assumptions) == 0 || len(a.Sources) == 0 {
			t.Errorf("%s rests on nothing", name)
		}
	}
	_, err := WorkOut(ask(0.12, 0.12, 500))
	var f finding.Finding
	if !errors.Is(err, TorqueBreaks) || !errors.As(err, &f) || f.Values["bolt"].(finding.Finding).Values["thread"] != "M10×1.5" {
		t.Errorf("a torque that breaks it: %v", err)
	}
	broken := ask(0.12, 0.12, 40)
	broken.Snug, broken.Grip = 500, stiffness.Simple(40)
	a, err := WorkOut(broken)
	if err == nil && !a.Broken() {
		t.Errorf("a snug torque of 500 N·m leaves %+v", a.Turned)
	}
	for _, c := range []struct {
		a       Answer
		byAngle bool
	}{{Answer{}, false}, {Answer{Ask: Ask{Angle: 90}}, false}, {Answer{Turned: &stiffness.Turned{}}, false}, {Answer{Ask: Ask{Angle: 90}, Turned: &stiffness.Turned{}}, true}} {
		if got := c.a.ByAngle(); got != c.byAngle {
			t.Errorf("%+v: by angle %v", c.a, got)
		}
	}
	of := func(spoil func(*Ask)) bool {
		asked := Ask{Bolt: Bolt{Stages: []Stage{{1, Tighten, nm(5), 0, 0}}}}
		spoil(&asked)
		return Answer{Ask: asked}.OfStages()
	}
	for name, c := range map[string]struct {
		spoil func(*Ask)
		want  bool
	}{
		"nothing": {func(*Ask) {}, true}, "no stages": {func(a *Ask) { a.Stages = nil }, false}, "a torque": {func(a *Ask) { a.Torque = 5 }, false}, "a snug torque": {func(a *Ask) { a.Snug = 5 }, false},
		"a share of yield": {func(a *Ask) { a.Bolt.Bolt.YieldShare = 0.5 }, false}, "a share of proof": {func(a *Ask) { a.Bolt.Bolt.ProofShare = 0.5 }, false}, "a preload": {func(a *Ask) { a.Bolt.Bolt.Preload = 5 }, false},
	} {
		if got := of(c.spoil); got != c.want {
			t.Errorf("with %s the stages are judged: %v", name, got)
		}
	}
	asked := (&Answer{Result: screw.Result{Torque: 30}}).askedStages()
	if !slices.Equal(asked, []Stage{{1, Tighten, nm(30), 0, 0}}) {
		t.Errorf("asked: %v", asked)
	}
	asked = (&Answer{Ask: Ask{Snug: 20, Angle: 90}, Result: screw.Result{Torque: 30}}).askedStages()
	if !slices.Equal(asked, []Stage{{1, Tighten, nm(20), 0, 0}, {2, Advance, unit.GivenTorque{}, 90, 0}}) {
		t.Errorf("asked: %v", asked)
	}
}
