package plan

import (
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence"
	"drawdown/sequence/figures"
	"drawdown/sequence/tension/screw"
)

// A nut over a tapped hole belongs to a stud, one without to a through bolt.
// The wrench turns the nut of a stud, otherwise the head.
func TestWhatTheWrenchTurns(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		kind          Kind
		stud, through bool
		turned        unit.Length
	}{
		{Kind{HeadAcross: 16}, false, false, 16},
		{Kind{HeadAcross: 16, Into: "aluminium"}, false, false, 16},
		{Kind{HeadAcross: 16, NutAcross: 18}, false, true, 16},
		{Kind{HeadAcross: 16, NutAcross: 18, Into: "aluminium"}, true, false, 18},
	} {
		if k := c.kind; k.Stud() != c.stud || k.Through() != c.through || k.TurnedAcross() != c.turned {
			t.Errorf("%+v: stud %v, through %v, turned %v", k, k.Stud(), k.Through(), k.TurnedAcross())
		}
	}
}

// First principles, and ISO 273: a hole of 11 mm is for 10 mm.
func TestSizeOfAKind(t *testing.T) {
	t.Parallel()
	named, inch := Kind{Thread: threadOf(t, "M8"), Hole: 22}, Kind{Thread: threadOf(t, "3/8-16 UNC")}
	if named.ThreadName() != "M8×1.25" || named.MajorMm() != 8 || named.SizeMm() != 8 {
		t.Errorf("%q of %g, sized %g", named.ThreadName(), named.MajorMm(), named.SizeMm())
	}
	bare := Kind{Hole: 11}
	if got := bare.SizeMm(); got < 9.99 || got > 10.01 || bare.ThreadName() != "" || bare.MajorMm() != 0 {
		t.Errorf("a hole of 11 mm is for %g mm", got)
	}
	for _, c := range []struct {
		kind   Kind
		length unit.Length
		want   string
	}{{named, 0, ""}, {inch, 0, ""}, {named, 13, "13 mm"}, {bare, 13, "13 mm"}, {inch, 25.4, unit.Length(25.4).Inches()}} {
		if got := c.kind.Labelled(c.length); got != c.want {
			t.Errorf("%v of %q: %q, want %q", c.length, c.kind.ThreadName(), got, c.want)
		}
	}
	if got := (Plan{Kinds: []Kind{named}}).Kind("other"); got.Name != "other" || got.Thread != nil {
		t.Errorf("a kind that is not known: %+v", got)
	}
}

// A kind is judged with everything that the file states about it, in the parts
// it clamps, with the stages that change how tight it is.
func TestKindToBeJudged(t *testing.T) {
	t.Parallel()
	in := cylinderHead(t)
	in.Clamped.Part.Material = "grey iron"
	in.Kinds[1].Friction = &screw.Friction{}
	in.Kinds[1].Length, in.Kinds[1].Threaded, in.Kinds[1].Grip = 90, 30, 70
	in.Kinds[1].Into, in.Kinds[1].Engagement, in.Kinds[1].FullThread = "aluminium", 20, true
	in.Kinds[1].Reuse, in.Kinds[1].NutAcross, in.Kinds[1].Hole = ReuseOnce, 17, 11
	p := build(t, in)
	bolts := p.Bolts()
	if len(bolts) != 2 || bolts[0].Kind != "main" || bolts[1].Kind != "side" {
		t.Fatalf("bolts %+v", bolts)
	}
	b := bolts[0]
	if b.Grip.BoltLength != 90 || b.Grip.Thread != 30 || b.Grip.TappedIn != "aluminium" || b.Grip.Engagement != 20 || !b.Grip.FullThread {
		t.Errorf("grip %+v", b.Grip)
	}
	if len(b.Grip.Layers) != 1 || b.Grip.Layers[0].Thickness != 70 || b.Grip.Layers[0].Material != "grey iron" || b.Under != "grey iron" {
		t.Errorf("layers %+v under %q", b.Grip.Layers, b.Under)
	}
	if b.Reuse != "once" || b.Bolt.Class != "10.9" || b.Bolt.Lubricant != "engine oil" || b.Bolt.Friction == nil || b.Bolt.Hole != 11 || b.Bolt.HeadAcross != 17 || b.Bolt.Thread.Name != "M10×1.5" {
		t.Errorf("bolt %+v", b)
	}
	var do []figures.Action
	for _, s := range b.Stages {
		do = append(do, s.Do)
	}
	if len(b.Stages) != 4 || do[0] != figures.Tighten || do[1] != figures.BackOff || do[2] != figures.Advance || b.Stages[1].Angle != 180 || b.Stages[3].Number != 6 || b.Stages[3].Torque.Value != 24 {
		t.Errorf("stages %+v", b.Stages)
	}
	if got := bolts[1]; len(got.Stages) != 2 || got.Stages[0].Number != 5 || got.Grip.Layers != nil {
		t.Errorf("the side bolts: %+v", got)
	}
}

// The last action on a kind; "" if no stage covers it.
func TestLastAction(t *testing.T) {
	t.Parallel()
	in := cylinderHead(t)
	in.Tighten = append(in.Tighten[:4:4], StageInput{Do: Wait, Wait: 10})
	p := build(t, in)
	if main, side := p.LastAction("main"), p.LastAction("side"); main != Advance || side != "" {
		t.Errorf("last %q and %q", main, side)
	}
	if p.Count("main") != 6 || p.Count("side") != 3 || p.Count("none") != 0 {
		t.Errorf("%d main, %d side", p.Count("main"), p.Count("side"))
	}
	numbers := p.Tighten.Numbers()
	for k, i := range p.Tighten.Order {
		if numbers[i] != k+1 || p.KindOf(i).Name != p.Joint.Fasteners[i].Kind {
			t.Errorf("fastener %d has number %d and kind %q", i, numbers[i], p.KindOf(i).Name)
		}
	}
}

// The words on the part are removed; the part and the original plan are not
// changed.
func TestBare(t *testing.T) {
	t.Parallel()
	in := cylinderHead(t)
	in.Joint.Front, in.Joint.Bores = "belt", []geometry.Bore{{Label: "1"}}
	in.Joint.Labels = []geometry.Label{{}}
	p := build(t, in)
	bare := p.Bare()
	if bare.Joint.Front != "" || bare.Joint.Labels != nil || len(bare.Joint.Bores) != 1 || bare.Joint.Bores[0].Label != "" {
		t.Errorf("%+v", bare.Joint)
	}
	if p.Joint.Front != "belt" || p.Joint.Bores[0].Label != "1" || len(p.Joint.Labels) != 1 {
		t.Error("the plan itself was stripped")
	}
}

// A ring counts as a bolt circle from three holes on, with at most a fifth of
// its places empty (first principles: even angles).
func TestBoltCircleWithGaps(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		of, gone int
		want     bool
	}{{2, 0, false}, {3, 0, true}, {10, 2, true}, {10, 3, false}, {12, 2, true}} {
		var in Input
		ring := []int{}
		for k, at := range geometry.Circle(c.of, 200, geometry.Point{X: 7}, 20, true) {
			if k%3 == 1 && k/3 < c.gone {
				continue
			}
			ring = append(ring, len(in.Joint.Fasteners))
			in.Joint.Fasteners = append(in.Joint.Fasteners, geometry.Fastener{At: at})
		}
		if got := in.isBoltCircle(ring, geometry.Point{X: 7}); got != c.want {
			t.Errorf("%d places, %d of them empty: %v", c.of, c.gone, got)
		}
	}
}

// Small before large gives a warning only for kinds with fasteners and a known
// size, and only if it is smaller.
func TestSmallBeforeLargeOfWhatIsThere(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		change func(in *Input)
		want   int
	}{
		"smaller first":         {func(*Input) {}, 1},
		"of one size":           {func(in *Input) { in.Kinds[0].Thread = threadOf(t, "M10") }, 0},
		"of a size not known":   {func(in *Input) { in.Kinds[0].Thread = nil }, 0},
		"large not known":       {func(in *Input) { in.Kinds[1].Thread = nil }, 0},
		"that no fastener has":  {func(in *Input) { in.Joint.Fasteners = in.Joint.Fasteners[:2] }, 0},
		"the later is a list":   {func(in *Input) { in.Groups[1].Way = sequence.List }, 0},
		"the earlier is a list": {func(in *Input) { in.Groups[0].Way = sequence.List }, 0},
	} {
		in := cylinderHead(t)
		in.Groups = []sequence.Group{{Kinds: []string{"side"}}, {Kinds: []string{"main"}}}
		c.change(&in)
		if found := in.SmallBeforeLarge(); len(found) != c.want {
			t.Errorf("%s: %v", name, found)
		}
	}
}

// A share of the torque of an unknown kind fails.
func TestShareOfUnknownKind(t *testing.T) {
	t.Parallel()
	p := Plan{}
	err := p.figure(Input{}, &Stage{Do: Percent, Percent: 50, Kinds: []string{"main"}})
	if f, ok := err.(finding.Finding); !ok || f.Code != ShareOfUnknown || f.Values["kind"] != "main" {
		t.Errorf("%v", err)
	}
}

// The preload at 100 % is given over the range of friction, in kilonewtons, the
// least first; as one figure if both are equal.
func TestWhatSharesRestOn(t *testing.T) {
	t.Parallel()
	in := cylinderHead(t)
	in.Tighten = []StageInput{{Of: []string{"main"}, Do: Percent, Percent: 100}}
	r, err := in.Kinds[1].target()
	if err != nil {
		t.Fatal(err)
	}
	list := assumptions(in)
	if len(list) != 1 || list[0].Values["kind"] != "main" || list[0].At.Kind != "main" {
		t.Fatalf("%v", list)
	}
	least, most := list[0].Values["least"].(float64), float64(list[0].Values["most"].(unit.Force))
	if want := float64(r.High.Preload) / 1000; least != want || most != float64(r.Low.Preload) || least*1000 >= most {
		t.Errorf("least %g kN, most %g N; the span is %v to %v", least, most, r.High.Preload, r.Low.Preload)
	}
	if in.Tighten[0].Of = nil; len(assumptions(in)) != 2 {
		t.Errorf("a share of all kinds rests on %v", assumptions(in))
	}
	in.Tighten[0].Do = Tighten
	if list := assumptions(in); len(list) > 0 {
		t.Errorf("stated figures rest on %v", list)
	}
	in.Tighten[0].Do = Percent
	one := screw.Friction{}
	one.Thread.Low, one.Thread.Nominal, one.Thread.High = 0.12, 0.12, 0.12
	one.Head = one.Thread
	in.Kinds, in.Tighten[0].Of = in.Kinds[1:], []string{"main"}
	in.Kinds[0].Friction, in.Kinds[0].Lubricant = &one, ""
	if list = assumptions(in); len(list) != 1 || list[0].Values["least"] != 0.0 {
		t.Errorf("one figure of friction: %v", list)
	}
}
