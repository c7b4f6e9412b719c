package plan

import (
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/unit"
	"drawdown/sequence"
)

// A kind comes before another in the order of the file, unless that puts the
// smaller thread first; without an order, by size (common practice, no source).
func TestWhichKindGoesFirst(t *testing.T) {
	t.Parallel()
	kind := func(name string, hole float64) Kind { return Kind{Name: name, Hole: unit.Length(hole)} }
	stated := []sequence.Group{{Kinds: []string{"a"}}, {Kinds: []string{"b"}}}
	for _, c := range []struct {
		name   string
		groups []sequence.Group
		a, b   float64 // holes; 0: unknown size
		want   [2]bool // a before b, b before a
	}{
		{"no order, larger", nil, 12, 8, [2]bool{true, false}}, {"no order, alike", nil, 8, 8, [2]bool{false, false}},
		{"no order, one not known", nil, 12, 0, [2]bool{false, false}}, {"no order, the other not known", nil, 0, 12, [2]bool{false, false}},
		{"as stated", stated, 12, 8, [2]bool{true, false}}, {"as stated, alike", stated, 8, 8, [2]bool{true, false}},
		{"stated, but the smaller", stated, 8, 12, [2]bool{false, false}}, {"stated, one not known", stated, 0, 12, [2]bool{true, false}}, {"stated, the other not known", stated, 12, 0, [2]bool{true, false}},
		{"only one is stated", stated[1:], 12, 8, [2]bool{false, false}},
	} {
		in := Input{Groups: c.groups, Kinds: []Kind{kind("a", c.a), kind("b", c.b)}}
		a, b := in.Kinds[0], in.Kinds[1]
		if got := [2]bool{in.goesBefore(a, b), in.goesBefore(b, a)}; got != c.want {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// sprung is two groups of caps, each with its own kind: the first M8, the
// second M6.
func sprung(t *testing.T) Input {
	in := Input{
		Kinds:  []Kind{{Name: "inlet", Thread: threadOf(t, "M8")}, {Name: "outlet", Thread: threadOf(t, "M6")}},
		Groups: []sequence.Group{{Kinds: []string{"inlet"}}, {Kinds: []string{"outlet"}}},
		Tighten: []StageInput{
			{Do: Tighten, Torque: unit.GivenTorque{Value: 10}, Of: []string{"inlet"}}, {Do: Tighten, Torque: unit.GivenTorque{Value: 5}, Of: []string{"outlet"}},
		},
	}
	for k, kind := range []string{"inlet", "outlet"} {
		for n, name := range []string{"1", "2", "3"} {
			id := kind[:1] + name
			in.Joint.Fasteners = append(in.Joint.Fasteners, geometry.Fastener{ID: id, Kind: kind, At: geometry.Point{X: float64(80*n + n*n), Y: float64(120 * k)}})
			in.Joint.Clusters = append(in.Joint.Clusters, geometry.Cluster{Name: id, Of: []string{id}})
		}
	}
	return in
}

// A turn lets a part rise by the coarsest of the threads, in any order of the
// kinds (first principles: M8 has a pitch of 1.25 mm, M6 of 1 mm).
func TestReleaseOfTheCoarsest(t *testing.T) {
	t.Parallel()
	p := Plan{Kinds: append(sprung(t).Kinds, Kind{Name: "plain"})}
	for _, kinds := range [][]string{{"inlet", "outlet"}, {"outlet", "inlet"}, {"inlet", "plain"}, {"inlet"}} {
		if got := p.release(90, kinds); got != 0.3125 {
			t.Errorf("%v: %v", kinds, got)
		}
	}
	if got := p.release(90, []string{"plain"}); got != 0 {
		t.Errorf("no thread is known: %v", got)
	}
}

// A part is turned back as a whole, once, before the first of its groups is
// removed; a group without spring load goes separately.
func TestSprungGroupsAreTurnedBackOnce(t *testing.T) {
	t.Parallel()
	p := build(t, sprung(t))
	var done []string
	for _, s := range p.Loosen.Stages {
		done = append(done, string(s.Do)+" "+slices.Sorted(slices.Values(s.Kinds))[0]+" "+string(rune('0'+len(s.Kinds))))
	}
	want := []string{"turn inlet 2", "turn inlet 2", "turn inlet 2", "remove outlet 1", "remove inlet 1"}
	if !slices.Equal(done, want) {
		t.Errorf("%v, want %v", done, want)
	}
	mixed := Plan{Kinds: p.Kinds, Groups: slices.Clone(p.Groups)}
	mixed.Groups = append(mixed.Groups, Group{Kinds: []string{"plain"}})
	mixed.Groups = []Group{mixed.Groups[0], mixed.Groups[2], mixed.Groups[1]}
	turned := 0
	for _, s := range mixed.loosening(nil) {
		if s.Do == TurnBack {
			turned++
		}
	}
	if turned != plannedRounds+1 { // the rounds once, and the other group's own turn
		t.Errorf("turned back %d times: %+v", turned, mixed.loosening(nil))
	}
}

// Bolts come out only when no spring presses on any of the kinds, not only on
// their own.
func TestOutWhileOthersArePressed(t *testing.T) {
	t.Parallel()
	in := sprung(t)
	back := func(of ...string) StageInput { return StageInput{Do: TurnBack, Angle: 90, Of: of} }
	out := func(of ...string) StageInput { return StageInput{Do: Remove, Of: of} }
	until := back("inlet", "outlet")
	until.Until = NoSpringPresses
	for _, c := range []struct {
		name   string
		stages []StageInput
		want   []int // indices of stages that lift the part
	}{
		{"both, three times", []StageInput{back(), back(), back(), out()}, nil},
		{"both, until no spring presses", []StageInput{until, out()}, nil},
		{"both, twice", []StageInput{back(), back(), out()}, []int{2}},
		{"one alone", []StageInput{back("inlet"), back("inlet"), back("inlet"), out("inlet"), back("outlet"), back("outlet"), back("outlet"), out("outlet")}, []int{3}},
	} {
		in.Loosen = c.stages
		var got []int
		for i := range c.stages {
			if _, lifts := in.LiftsSprung()[i]; lifts {
				got = append(got, i)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

// A part under spring load is lowered by small turns before the first figure of
// each kind, once. The rise per turn follows from the pitch of the kinds that
// the stage covers.
func TestSmallTurnsBeforeTheFirstFigure(t *testing.T) {
	t.Parallel()
	in := sprung(t)
	torque := func(v float64, of ...string) StageInput {
		return StageInput{Do: Tighten, Torque: unit.GivenTorque{Value: v}, Of: of}
	}
	in.Tighten = []StageInput{torque(3, "outlet"), {Do: Wait, Wait: 5}, torque(5, "inlet", "outlet"), {Do: Advance, Angle: 90, Of: []string{"inlet"}}}
	p := build(t, in)
	type round struct {
		turn    unit.Angle
		release unit.Length
	}
	var got []round
	for _, s := range p.Tighten.Stages {
		got = append(got, round{s.ByTurns, s.Release})
	}
	// M6 has a pitch of 1 mm, M8 of 1.25 mm.
	turn := got[0].turn
	want := []round{{turn, unit.Length(1 * float64(turn) / 360)}, {}, {turn, unit.Length(1.25 * float64(turn) / 360)}, {}}
	if turn == 0 || !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	for _, s := range p.Loosen.Stages {
		if (s.Do == TurnBack) != (s.Release > 0) {
			t.Errorf("%s: released by %v", s.Do, s.Release)
		}
	}
	in.Tighten = []StageInput{{Do: BackOff, Angle: 90}, {Do: Advance, Angle: 90}}
	if p := build(t, in); p.Tighten.Stages[0].ByTurns != 0 || p.Tighten.Stages[1].ByTurns == 0 {
		t.Errorf("%+v", p.Tighten.Stages)
	}
}
