package plan

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence"
)

func threadOf(t *testing.T, name string) *thread.Thread {
	t.Helper()
	th, err := thread.Parse(name)
	if err != nil {
		t.Fatal(err)
	}
	return &th
}

// cylinderHead is an uneven joint with two sizes: six main bolts in two rows and three
// side bolts below.
func cylinderHead(t *testing.T) Input {
	in := Input{
		Heading: Heading{Title: "Head"}, Source: "a manual",
		Kinds: []Kind{
			{Name: "side", Thread: threadOf(t, "M8"), Class: "8.8"},
			{Name: "main", Thread: threadOf(t, "M10"), Class: "10.9", Lubricant: "engine oil"},
		},
		Tighten: []StageInput{
			{Of: []string{"main"}, Do: Tighten, Torque: unit.GivenTorque{Value: 15, Unit: unit.PoundForceFoot}},
			{Do: Wait, Wait: 10},
			{Of: []string{"main"}, Do: BackOff, Angle: 180},
			{Of: []string{"main"}, Do: Advance, Angle: 90},
			{Of: []string{"side"}, Do: Tighten, Torque: unit.GivenTorque{Value: 24}},
			{Do: Tighten, Torque: unit.GivenTorque{Value: 24}, Way: sequence.Circular},
		},
	}
	for k, x := range []float64{-97, 0, 91} {
		number := string(rune('1' + k))
		in.Joint.Fasteners = append(in.Joint.Fasteners,
			geometry.Fastener{ID: "T" + number, Kind: "main", At: geometry.Point{X: x, Y: 44}},
			geometry.Fastener{ID: "B" + number, Kind: "main", At: geometry.Point{X: x, Y: -46}},
			geometry.Fastener{ID: "S" + number, Kind: "side", At: geometry.Point{X: x + 12, Y: -91}})
	}
	return in
}

func build(t *testing.T, in Input) Plan {
	t.Helper()
	p, err := Build(in)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Common practice, no source: the small bolts go on last and come off first.
func TestSmallBoltsGoOnLast(t *testing.T) {
	p := build(t, cylinderHead(t))
	var kinds []string
	for _, i := range p.Tighten.Order {
		kinds = append(kinds, p.Joint.Fasteners[i].Kind)
	}
	if got := strings.Join(slices.Compact(kinds), " "); got != "main side" {
		t.Errorf("tightening goes %q", got)
	}
}

// Published workshop text (see the README): loosen in the exact reverse.
func TestLooseningIsTheReverse(t *testing.T) {
	p := build(t, cylinderHead(t))
	back := slices.Clone(p.Loosen.Order)
	slices.Reverse(back)
	if diff := cmp.Diff(p.Tighten.Order, back); diff != "" {
		t.Error(diff)
	}
	// Group by group: the side bolts are out before a main bolt is touched.
	var said []string
	for _, s := range p.Steps(p.Loosen) {
		said = append(said, string(s.Stage.Do)+" "+s.Fastener.Kind)
	}
	if diff := cmp.Diff([]string{"turn side", "remove side", "turn main", "remove main"}, slices.Compact(said)); diff != "" {
		t.Error(diff)
	}
}

func TestStagesCoverTheirKinds(t *testing.T) {
	p := build(t, cylinderHead(t))
	var counts []int
	for k, s := range p.Tighten.Stages {
		counts = append(counts, len(s.Fasteners))
		if s.Number != k+1 {
			t.Errorf("stage %d is numbered %d", k+1, s.Number)
		}
	}
	if diff := cmp.Diff([]int{6, 0, 6, 6, 3, 9}, counts); diff != "" {
		t.Error(diff)
	}
	if steps := p.Steps(p.Tighten); len(steps) != 6+1+6+6+3+9 {
		t.Errorf("%d steps", len(steps))
	}
}

// Slackening goes from the outside in, so a back-off stage runs in reverse.
func TestBackOffGoesOutsideIn(t *testing.T) {
	p := build(t, cylinderHead(t))
	back := slices.Clone(p.Tighten.Stages[2].Fasteners)
	slices.Reverse(back)
	if diff := cmp.Diff(p.Tighten.Stages[0].Fasteners, back); diff != "" {
		t.Error(diff)
	}
}

func TestGivenFiguresStandUnchanged(t *testing.T) {
	p := build(t, cylinderHead(t))
	if got := p.Tighten.Stages[0].Torque.String(); got != "15 lbf·ft" {
		t.Errorf("the figure came out as %s", got)
	}
	if p.WorkedOut() || p.Tighten.Stages[0].Source != "a manual" {
		t.Error("a sourced figure is marked as worked out")
	}
	in := cylinderHead(t)
	in.Source = ""
	if !build(t, in).WorkedOut() {
		t.Error("a figure without a source is not marked")
	}
}

// First principles: half of the calculated torque, and the figure is marked as
// calculated.
func TestPercentOfTheWorkedOutTorque(t *testing.T) {
	in := cylinderHead(t)
	in.Tighten = []StageInput{
		{Of: []string{"main"}, Do: Percent, Percent: 50},
		{Of: []string{"main"}, Do: Percent, Percent: 100},
	}
	p := build(t, in)
	half, full := p.Tighten.Stages[0], p.Tighten.Stages[1]
	if half.Do != Tighten || !half.WorkedOut || half.Percent != 50 {
		t.Errorf("the stage came out as %+v", half)
	}
	if off := float64(full.Torque.Nm()) - 2*float64(half.Torque.Nm()); off > 1.5 || off < -1.5 {
		t.Errorf("half is %s, full is %s", half.Torque, full.Torque)
	}
	if len(p.Assumptions) != 1 || !strings.HasPrefix(words.English().Say(p.Assumptions[0]), "main: 100 % is "+full.Torque.String()) {
		t.Errorf("assumptions: %q", p.Assumptions)
	}
}

func TestPercentSaysWhatIsMissing(t *testing.T) {
	tests := []struct {
		name  string
		spoil func(in *Input)
		want  string
	}{
		{"no thread", func(in *Input) { in.Kinds[1].Thread = nil }, "needs the thread of kind main"},
		{"no class", func(in *Input) { in.Kinds[1].Class = "" }, "class is missing"},
		{"two kinds that differ", func(in *Input) { in.Tighten[0].Of = nil }, "a stage of its own"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			in := cylinderHead(t)
			in.Tighten = []StageInput{{Of: []string{"main"}, Do: Percent, Percent: 50}}
			tt.spoil(&in)
			_, err := Build(in)
			var found finding.Finding
			if !errors.As(err, &found) || found.Code != StageFails || found.At.Stage != 1 {
				t.Errorf("error %v does not name its stage", err)
			}
			if err == nil || !strings.Contains(words.English().Error(err), tt.want) {
				t.Errorf("got %v, want it to say %q", err, tt.want)
			}
		})
	}
}

// Without loosening stages each group is broken loose by a quarter turn and
// removed, the last finished first (contract of the pattern file).
func TestDefaultLoosening(t *testing.T) {
	in := cylinderHead(t)
	in.Loosen = nil
	p, err := Build(in)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, s := range p.Loosen.Stages {
		got = append(got, fmt.Sprint(s.Do, " ", s.Angle, " ", s.Kinds))
	}
	if diff := cmp.Diff([]string{"turn 90° [side]", "remove 0° [side]", "turn 90° [main]", "remove 0° [main]"}, got); diff != "" {
		t.Error(diff)
	}
}

// The plan of the second bank is the exact mirror image of the first.
func TestMirroredPlan(t *testing.T) {
	in := cylinderHead(t)
	first := build(t, in)
	for _, axis := range []geometry.Axis{geometry.AxisX, geometry.AxisY} {
		in.Mirror = axis
		second := build(t, in)
		if diff := cmp.Diff(first.Tighten.Order, second.Tighten.Order); diff != "" {
			t.Errorf("mirror %s changes the order:\n%s", axis, diff)
		}
		if first.Groups[0].Turn != second.Groups[0].Turn.Opposite() {
			t.Errorf("mirror %s keeps the turn", axis)
		}
		if diff := cmp.Diff(first.Joint.Mirrored(axis), second.Joint); diff != "" {
			t.Errorf("mirror %s:\n%s", axis, diff)
		}
	}
}

func TestUserWayGoesBeforeTheFile(t *testing.T) {
	in := cylinderHead(t)
	in.Groups = []sequence.Group{{Kinds: []string{"main"}, Way: sequence.RowWay}, {Kinds: []string{"side"}, Way: sequence.RowWay}}
	in.Way, in.Turn = sequence.Spiral, sequence.TurnRight
	p := build(t, in)
	if g := p.Groups[0]; g.Way != sequence.Spiral || g.Turn != sequence.TurnRight {
		t.Errorf("the group goes %s %s", g.Way, g.Turn)
	}
	if p.Asked != (Asked{sequence.Spiral, sequence.TurnRight}) {
		t.Errorf("the plan says that %v was asked for", p.Asked)
	}
	// The user names the turn as the card shows it, also on a mirrored bank.
	in.Mirror = geometry.AxisX
	if g := build(t, in).Groups[0]; g.Turn != sequence.TurnRight {
		t.Errorf("the mirrored group turns %s", g.Turn)
	}
}

func TestLoosenStagesThatSayWhatTheyCover(t *testing.T) {
	in := cylinderHead(t)
	in.Loosen = []StageInput{{Do: TurnBack, Angle: 60}, {Of: []string{"main", "side"}, Do: Remove}}
	p := build(t, in)
	if len(p.Loosen.Stages) != 2 || len(p.Loosen.Stages[0].Fasteners) != 9 {
		t.Errorf("the file's own stages were not kept: %+v", p.Loosen.Stages)
	}
}

// The listing order of a file's kinds and fasteners does not matter.
func TestListingHasNoSay(t *testing.T) {
	in := cylinderHead(t)
	first := build(t, in)
	want := first.IDs(first.Tighten.Order)
	slices.Reverse(in.Kinds)
	slices.Reverse(in.Joint.Fasteners)
	got := build(t, in)
	if diff := cmp.Diff(want, got.IDs(got.Tighten.Order)); diff != "" {
		t.Error(diff)
	}
}

// A check pass starts at number one, wherever that is, and goes around from
// there; on a row it goes from end to end.
func TestCheckPassBeginsAtNumberOne(t *testing.T) {
	var cover, row Input
	for k, p := range geometry.Circle(10, 200, geometry.Point{X: 3}, 90, true) {
		p.X += float64(k%3) * 4 // not an even circle
		cover.Joint.Fasteners = append(cover.Joint.Fasteners, geometry.Fastener{ID: string(rune('A' + k)), Kind: "b", At: p, Cast: (k*7+3)%10 + 1})
	}
	for k, p := range geometry.Row(5, 60, geometry.Point{}, 0) {
		row.Joint.Fasteners = append(row.Joint.Fasteners, geometry.Fastener{ID: string(rune('A' + k)), Kind: "b", At: p, Cast: (k*2)%5 + 1})
	}
	for _, in := range []*Input{&cover, &row} {
		in.Kinds, in.Groups = []Kind{{Name: "b"}}, []sequence.Group{{Way: sequence.Cast}}
		in.Tighten = []StageInput{{Do: Tighten, Torque: unit.GivenTorque{Value: 9}, Way: sequence.Circular}}
	}
	p := build(t, cover)
	if got, want := p.Tighten.Stages[0].Fasteners[0], p.Tighten.Order[0]; got != want {
		t.Errorf("the pass begins at %v, number one is %v", p.IDs([]int{got}), p.IDs([]int{want}))
	}
	if p.Tighten.Stages[0].Turn != sequence.TurnRight {
		t.Errorf("the pass turns %s", p.Tighten.Stages[0].Turn)
	}
	q := build(t, row)
	if diff := cmp.Diff([]string{"A", "B", "C", "D", "E"}, q.IDs(q.Tighten.Stages[0].Fasteners)); diff != "" {
		t.Errorf("along a row:\n%s", diff)
	}
}
