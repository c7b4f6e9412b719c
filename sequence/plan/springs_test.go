package plan

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence"
)

// camCaps is three caps with two bolts each in a row, A1 and A2 on the first.
func camCaps(t *testing.T, thread string, unloaded ...string) Input {
	in := Input{
		Kinds:   []Kind{{Name: "cap"}},
		Tighten: []StageInput{{Do: Tighten, Torque: unit.GivenTorque{Value: 5}}, {Do: Tighten, Torque: unit.GivenTorque{Value: 10}}},
	}
	if thread != "" {
		in.Kinds[0].Thread = threadOf(t, thread)
	}
	for k, name := range []string{"A", "B", "C"} {
		at := geometry.Point{X: float64(95*k + k*k)}
		in.Joint.Fasteners = append(in.Joint.Fasteners,
			geometry.Fastener{ID: name + "1", Kind: "cap", At: at},
			geometry.Fastener{ID: name + "2", Kind: "cap", At: geometry.Point{X: at.X, Y: 44}})
		in.Joint.Clusters = append(in.Joint.Clusters, geometry.Cluster{
			Name: "cap " + name, Of: []string{name + "1", name + "2"}, Unloaded: strings.Contains(strings.Join(unloaded, ""), name)})
	}
	return in
}

// stages writes stages in short form: action, turn, number of fasteners.
func stages(p Plan, s Side) []string {
	var list []string
	for _, stage := range s.Stages {
		text := fmt.Sprintf("%s %v %s %d", stage.Do, float64(stage.Angle), strings.Join(stage.Kinds, "+"), len(stage.Fasteners))
		if stage.Until != "" {
			text += " until " + stage.Until
		}
		list = append(list, text)
	}
	return list
}

// Common practice, no source: under spring load all caps are turned back by
// small turns, in rounds, before any is removed. The turn follows from the
// pitch: half a millimetre at most (first principles: pitch × turn / 360°).
func TestSprungCapsComeOffInRounds(t *testing.T) {
	for thread, want := range map[string]struct {
		turn    float64
		release unit.Length
	}{
		"M6": {180, 0.5}, "M8": {90, 0.3125}, "M10": {90, 0.375}, "M12": {90, 0.4375}, "M24": {60, 0.5}, "M36": {45, 0.5}, "": {90, 0},
	} {
		p := build(t, camCaps(t, thread))
		round := fmt.Sprintf("turn %v cap 6", want.turn)
		if diff := cmp.Diff([]string{round, round, round + " until " + NoSpringPresses, "remove 0 cap 6"}, stages(p, p.Loosen)); diff != "" {
			t.Errorf("%q: %s", thread, diff)
		}
		if got := p.Loosen.Stages[0].Release; got != want.release {
			t.Errorf("%q: a round lets the part rise by %v, want %v", thread, got, want.release)
		}
		if !finding.Has(p.Loosen.Basis, SprungLoosen) || !finding.Has(p.Tighten.Basis, SprungTighten) {
			t.Errorf("%q: the plan does not say that springs press", thread)
		}
	}
}

// The maker's figures and the number of stages do not change; the first figure
// of each cap is approached by small turns (common practice, no source).
func TestSprungCapsGoDownByTurns(t *testing.T) {
	p := build(t, camCaps(t, "M8"))
	if len(p.Tighten.Stages) != 2 || p.Tighten.Stages[0].ByTurns != 90 || p.Tighten.Stages[1].ByTurns != 0 {
		t.Errorf("%+v", p.Tighten.Stages)
	}
}

// A cluster is under spring load unless the file says otherwise. If none of a
// group is, it is loosened as usual, and its caps are equal.
func TestUnsprungClusters(t *testing.T) {
	p := build(t, camCaps(t, "M12", "A", "B", "C"))
	if diff := cmp.Diff([]string{"turn 90 cap 6", "remove 0 cap 6"}, stages(p, p.Loosen)); diff != "" {
		t.Error(diff)
	}
	if p.Groups[0].Sprung || p.Unloaded(p.Joint.Clusters[0]) || len(p.Loosen.Basis)+len(p.Tighten.Basis) > 0 || p.Tighten.Stages[0].ByTurns != 0 {
		t.Errorf("springs are said to press: %+v", p.Groups)
	}
	if p = build(t, camCaps(t, "M12", "A")); !p.Unloaded(p.Joint.Clusters[0]) || p.Unloaded(p.Joint.Clusters[1]) {
		t.Error("the one cap without load is not told from the others")
	}
}

// What the file says overrides common practice, in both directions.
func TestUnloadedCapsFirstOrLastOff(t *testing.T) {
	for firstOff, want := range map[bool]string{false: "A", true: "B"} {
		in := camCaps(t, "M8", "A")
		in.Joint.UnloadedFirstOff = firstOff
		p := build(t, in)
		on, off := p.IDs(p.Tighten.Order)[0], p.IDs(p.Loosen.Order)[0]
		if on[:1] != want {
			t.Errorf("first off %v: %s goes on first, want cap %s", firstOff, on, want)
		}
		if (off[:1] == "A") != firstOff {
			t.Errorf("first off %v: %s comes off first", firstOff, off)
		}
	}
}

// Two kinds of bolts over one camshaft are released together, whether the
// stages are the plan's or the file's; only then is one group removed after the
// other.
func TestSprungGroupsAreReleasedTogether(t *testing.T) {
	in := camCaps(t, "M8")
	in.Kinds = append(in.Kinds, Kind{Name: "long", Thread: threadOf(t, "M6")}, Kind{Name: "cover", Thread: threadOf(t, "M5")})
	in.Joint.Fasteners[4].Kind, in.Joint.Fasteners[5].Kind = "long", "long"
	in.Joint.Fasteners = append(in.Joint.Fasteners, geometry.Fastener{ID: "X", Kind: "cover", At: geometry.Point{Y: 90}})
	in.Tighten = nil
	p := build(t, in)
	round := "turn 90 long+cap 6"
	want := []string{"turn 90 cover 1", "remove 0 cover 1", round, round, round + " until " + NoSpringPresses, "remove 0 long 2", "remove 0 cap 4"}
	if diff := cmp.Diff(want, stages(p, p.Loosen)); diff != "" {
		t.Error(diff)
	}
	in.Loosen = []StageInput{{Do: TurnBack, Angle: 45}, {Do: Remove}}
	p = build(t, in)
	want = []string{"turn 45 cover 1", "remove 0 cover 1", "turn 45 long+cap 6", "remove 0 long 2", "remove 0 cap 4"}
	if diff := cmp.Diff(want, stages(p, p.Loosen)); diff != "" {
		t.Error(diff)
	}
}

func TestStagesThatLiftAtOneEnd(t *testing.T) {
	turn := func(deg unit.Angle) StageInput { return StageInput{Do: TurnBack, Angle: deg} }
	out := StageInput{Do: Remove}
	until := StageInput{Do: TurnBack, Angle: 90, Until: NoSpringPresses}
	for name, c := range map[string]struct {
		unloaded string
		loosen   []StageInput
		want     map[int]finding.Code
	}{
		"a quarter turn and out":       {"", []StageInput{turn(90), out}, map[int]finding.Code{1: SprungOut}},
		"out at once":                  {"A", []StageInput{out}, map[int]finding.Code{0: SprungOut}},
		"a whole turn":                 {"", []StageInput{turn(360), turn(90), turn(90), out}, map[int]finding.Code{0: SprungTurn}},
		"three rounds":                 {"", []StageInput{turn(90), turn(180), turn(90), out}, map[int]finding.Code{}},
		"until no spring presses":      {"A", []StageInput{until, out}, map[int]finding.Code{}},
		"no spring":                    {"ABC", []StageInput{turn(360), out}, map[int]finding.Code{}},
		"the plan's own":               {"", nil, map[int]finding.Code{}},
		"out again after every spring": {"", []StageInput{turn(90), turn(90), out, turn(90)}, map[int]finding.Code{2: SprungOut}},
	} {
		in := camCaps(t, "M8", c.unloaded)
		in.Loosen = c.loosen
		got := map[int]finding.Code{}
		for i, f := range in.LiftsSprung() {
			got[i] = f.Code
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

// The largest come first, by thread, otherwise by hole: 11 mm is for M10, 6.6
// mm for M6 (ISO 273, medium series). It is reported if the hole decides.
func TestHolesStandInForThreads(t *testing.T) {
	in := Input{Kinds: []Kind{{Name: "water", Hole: 6.6}, {Name: "main", Hole: 11}, {Name: "side", Thread: threadOf(t, "M8")}}}
	for k, kind := range []string{"water", "main", "side"} { // the smallest are in the middle
		x := float64(10 + 50*k)
		for _, sign := range []float64{-1, 1} {
			in.Joint.Fasteners = append(in.Joint.Fasteners, geometry.Fastener{ID: fmt.Sprint(kind, sign), Kind: kind, At: geometry.Point{X: sign * x}})
		}
	}
	p := build(t, in)
	var got []string
	for _, g := range p.Groups {
		got = append(got, g.Kinds...)
	}
	if diff := cmp.Diff([]string{"main", "side", "water"}, got); diff != "" {
		t.Error(diff)
	}
	if !finding.Has(p.Tighten.Basis, SizeByHole) || !finding.Has(p.Loosen.Basis, SizeByHole) {
		t.Error("nothing says that the holes decide")
	}
	in.Groups = []sequence.Group{{Kinds: []string{"water"}}, {Kinds: []string{"main"}}, {Kinds: []string{"side"}}}
	if found := in.SmallBeforeLarge(); len(found) != 1 || !strings.Contains(words.English().Say(found[0]), "water (hole 6.6 mm) is finished before the kind main (hole 11 mm)") {
		t.Errorf("the small hole first: %v", found)
	}
	in.Groups = nil
	in.Kinds[0].Thread, in.Kinds[1].Thread = threadOf(t, "M6"), threadOf(t, "M10")
	if _, found := in.SizeByHole(); found {
		t.Error("threads are known, and still the holes are said to decide")
	}
	in.Kinds = in.Kinds[:2]
	in.Kinds[0].Thread, in.Kinds[1].Thread, in.Kinds[1].Hole = nil, nil, 6.6
	if _, found := in.SizeByHole(); found {
		t.Error("holes of one size are said to decide")
	}
}
