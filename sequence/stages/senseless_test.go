package stages

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence"
	"drawdown/sequence/figures"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
)

// build plans six main bolts in two rows and three smaller side bolts below,
// modified by change.
func build(t *testing.T, change func(*plan.Input)) plan.Plan {
	t.Helper()
	in := plan.Input{Kinds: []plan.Kind{
		{Name: "side", Thread: threadOf(t, "M8"), Class: "8.8"},
		{Name: "main", Thread: threadOf(t, "M10"), Class: "10.9", Lubricant: "engine oil"},
	}}
	for k, x := range []float64{-97, 0, 91} {
		number := string(rune('1' + k))
		in.Joint.Fasteners = append(in.Joint.Fasteners,
			geometry.Fastener{ID: "T" + number, Kind: "main", At: geometry.Point{X: x, Y: 44}},
			geometry.Fastener{ID: "B" + number, Kind: "main", At: geometry.Point{X: x, Y: -46}},
			geometry.Fastener{ID: "S" + number, Kind: "side", At: geometry.Point{X: x + 12, Y: -91}})
	}
	change(&in)
	p, err := plan.Build(in)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func threadOf(t *testing.T, name string) *thread.Thread {
	t.Helper()
	th, err := thread.Parse(name)
	if err != nil {
		t.Fatal(err)
	}
	return &th
}

// First principles: a wrench set below the torque of a bolt turns nothing, an
// angle starts from a torque, and what is slackened last stays loose. Common
// practice, no source: a repeat states its purpose, and a check pass has the
// last torque.
func TestStagesWithoutSense(t *testing.T) {
	t.Parallel()
	nm := func(v float64) plan.StageInput {
		return plan.StageInput{Do: plan.Tighten, Torque: unit.GivenTorque{Value: v}}
	}
	round := func(v float64) plan.StageInput { s := nm(v); s.Way = sequence.Circular; return s }
	main := func(s plan.StageInput) plan.StageInput { s.Of = []string{"main"}; return s }
	side := func(s plan.StageInput) plan.StageInput { s.Of = []string{"side"}; return s }
	on, back, wait := plan.StageInput{Do: plan.Advance, Angle: 90}, plan.StageInput{Do: plan.BackOff, Angle: 180}, plan.StageInput{Do: plan.Wait, Wait: 10}
	third := plan.StageInput{Do: plan.Percent, Percent: 30}
	feet := plan.StageInput{Do: plan.Tighten, Torque: unit.GivenTorque{Value: 20, Unit: unit.PoundForceFoot}}
	inches, aroundOn := plan.StageInput{Do: plan.Tighten, Torque: unit.GivenTorque{Value: 90, Unit: unit.PoundForceInch}}, on
	aroundOn.Way = sequence.Circular
	kilograms := plan.StageInput{Do: plan.Tighten, Torque: unit.GivenTorque{Value: 4, Unit: unit.KilogramForceMetre}} // 39 N·m
	more := plan.StageInput{Do: plan.Tighten, Torque: unit.GivenTorque{Value: 40, Unit: unit.PoundForceFoot}}
	noted := nm(20)
	noted.Note = "once more"
	for name, c := range map[string]struct {
		stages []plan.StageInput
		want   string // stage, kind and code of each finding
	}{
		"rising, then by angle":  {[]plan.StageInput{nm(20), nm(40), on, on}, ""},
		"the same in two units":  {[]plan.StageInput{nm(27.1163589659), feet}, ""}, // 1 lbf·ft = 1.3558179483 N·m
		"another unit":           {[]plan.StageInput{main(nm(20)), main(feet), main(nm(50))}, "2 main stage units mixed"},
		"each kind its own":      {[]plan.StageInput{main(nm(40)), side(feet)}, ""},
		"two of the inch system": {[]plan.StageInput{main(inches), main(feet)}, ""},
		"angle once round":       {[]plan.StageInput{main(nm(20)), main(on), main(aroundOn)}, "3 main stage check by angle"},
		"check pass":             {[]plan.StageInput{nm(20), nm(40), round(40), wait, round(40)}, ""},
		"all once round":         {[]plan.StageInput{round(20), round(40)}, ""},
		"once round first":       {[]plan.StageInput{round(20), nm(40)}, "1 main stage check first, 1 side stage check first"},
		"slackened and lower":    {[]plan.StageInput{nm(40), back, nm(20)}, ""},
		"noted repeat":           {[]plan.StageInput{nm(20), noted}, ""},
		"repeat after a wait":    {[]plan.StageInput{nm(20), wait, nm(20)}, ""},
		"slackened first":        {[]plan.StageInput{back, nm(20)}, "1 main stage slack first, 1 side stage slack first"},
		"torque after angle":     {[]plan.StageInput{nm(20), on, nm(40)}, "3 main stage after angle, 3 side stage after angle"},
		"once round after angle": {[]plan.StageInput{nm(20), on, round(20)}, ""},
		"slackened after angle":  {[]plan.StageInput{nm(20), on, back, nm(40)}, ""},
		"left loose":             {[]plan.StageInput{nm(40), back}, "2 main stage left loose, 2 side stage left loose"},
		"one kind left loose":    {[]plan.StageInput{nm(40), main(back)}, "2 main stage left loose"},
		"loose before a wait":    {[]plan.StageInput{nm(40), back, wait}, "2 main stage left loose, 2 side stage left loose, 3  stage waits last"},
		"falls":                  {[]plan.StageInput{main(nm(40)), side(nm(20)), main(nm(30))}, "3 main stage torque falls"},
		"falls after an angle":   {[]plan.StageInput{main(nm(40)), main(on), main(nm(30))}, "3 main stage torque falls"},
		"a share of less":        {[]plan.StageInput{main(nm(40)), main(third)}, "2 main stage torque falls"},
		"lower check":            {[]plan.StageInput{main(nm(40)), main(round(30))}, "2 main stage torque falls"},
		"a little lower check":   {[]plan.StageInput{main(nm(40)), main(round(39))}, "2 main stage torque falls"},
		"a little higher check":  {[]plan.StageInput{main(nm(40)), main(round(41))}, "2 main stage check differs"},
		"both metric":            {[]plan.StageInput{main(nm(20)), main(kilograms)}, ""},
		"metric, then inch":      {[]plan.StageInput{main(kilograms), main(more)}, "2 main stage units mixed"},
		"higher check":           {[]plan.StageInput{main(nm(40)), main(round(50))}, "2 main stage check differs"},
		"angle alone":            {[]plan.StageInput{main(on), side(nm(20))}, "1 main stage angle alone"},
		"angle after slackening": {[]plan.StageInput{main(nm(20)), main(back), main(on)}, "3 main stage angle alone"},
		"twice":                  {[]plan.StageInput{nm(20), nm(20)}, "2  stage twice"},
		"waits about":            {[]plan.StageInput{wait, nm(20), wait, wait}, "1  stage waits first, 4  stage waits on, 4  stage waits last"},
	} {
		var got []string
		for _, f := range Senseless(build(t, func(in *plan.Input) { in.Tighten = c.stages })) {
			got = append(got, fmt.Sprintf("%d %s %s", f.At.Stage, f.At.Kind, f.Code))
		}
		if said := strings.Join(got, ", "); said != c.want {
			t.Errorf("%s: %q, want %q", name, said, c.want)
		}
	}
}

// First principles: of two bolts that differ only in size the larger bears
// more.
func TestSmallerThreadWithMoreTorque(t *testing.T) {
	t.Parallel()
	nm := func(kind string, v float64) plan.StageInput {
		return plan.StageInput{Of: []string{kind}, Do: plan.Tighten, Torque: unit.GivenTorque{Value: v}}
	}
	on := plan.StageInput{Of: []string{"main"}, Do: plan.Advance, Angle: 90}
	equal := func(in *plan.Input) {
		for i := range in.Kinds {
			in.Kinds[i].Class, in.Kinds[i].Lubricant, in.Kinds[i].Friction, in.Kinds[i].Into = "8.8", "engine oil", nil, ""
		}
	}
	for _, c := range []struct {
		name   string
		stages []plan.StageInput
		change func(*plan.Input)
		want   bool
	}{
		{"exchanged", []plan.StageInput{nm("main", 20), nm("side", 24)}, func(*plan.Input) {}, true},
		{"as they should be", []plan.StageInput{nm("main", 40), nm("side", 24)}, func(*plan.Input) {}, false},
		{"the same", []plan.StageInput{nm("main", 24), nm("side", 24)}, func(*plan.Input) {}, false},
		{"the larger by an angle", []plan.StageInput{nm("main", 20), on, nm("side", 24)}, func(*plan.Input) {}, false},
		{"of another class", []plan.StageInput{nm("main", 20), nm("side", 24)}, func(in *plan.Input) { in.Kinds[0].Class = "5.6" }, false},
		{"of no class", []plan.StageInput{nm("main", 20), nm("side", 24)}, func(in *plan.Input) { in.Kinds[0].Class, in.Kinds[1].Class = "", "" }, false},
		{"into another part", []plan.StageInput{nm("main", 20), nm("side", 24)}, func(in *plan.Input) { in.Kinds[0].Into = "aluminium" }, false},
	} {
		got := Senseless(build(t, func(in *plan.Input) {
			equal(in)
			c.change(in)
			in.Tighten = c.stages
		}))
		if finding.Has(got, SmallerMore) != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// A share of the torque below 100 % ends too low, unless an angle follows.
func TestEndsShort(t *testing.T) {
	t.Parallel()
	share := func(percent float64) plan.Stage {
		return plan.Stage{Number: 1, Do: plan.Tighten, Percent: percent, Torque: unit.GivenTorque{Value: percent}, Kinds: []string{"main"}}
	}
	on := plan.Stage{Number: 2, Do: plan.Advance, Angle: 90, Kinds: []string{"main"}}
	for _, c := range []struct {
		name   string
		stages []plan.Stage
		want   bool
	}{
		{"half", []plan.Stage{share(50)}, true}, {"whole", []plan.Stage{share(100)}, false}, {"more", []plan.Stage{share(110)}, false}, {"no share", []plan.Stage{share(0)}, false},
		{"half and an angle", []plan.Stage{share(50), on}, false}, {"an angle of another kind", []plan.Stage{share(50), {Number: 2, Do: plan.Advance, Angle: 90, Kinds: []string{"side"}}}, true},
	} {
		p := plan.Plan{Kinds: []plan.Kind{{Name: "main"}}, Tighten: plan.Side{Stages: c.stages}}
		if got := finding.Has(Senseless(p), EndsShort); got != c.want {
			t.Errorf("%s: %v", c.name, Senseless(p))
		}
	}
}

// First principles: a bolt that an angle takes past yield stays longer; the
// same angle stretches it by as much again.
func TestStretchedTwice(t *testing.T) {
	t.Parallel()
	nm, on, back := plan.StageInput{Do: plan.Tighten, Torque: unit.GivenTorque{Value: 40}}, plan.StageInput{Do: plan.Advance, Angle: 90}, plan.StageInput{Do: plan.BackOff, Angle: 180}
	check := nm
	check.Way = sequence.Circular
	for name, c := range map[string]struct {
		stages []plan.StageInput
		once   bool
		want   bool
	}{
		"used once":               {[]plan.StageInput{nm, on, back, nm, on}, true, true},
		"used again":              {[]plan.StageInput{nm, on, back, nm, on}, false, false},
		"a torque, then slack":    {[]plan.StageInput{nm, back, nm, on, on}, true, false},
		"slackened twice between": {[]plan.StageInput{nm, on, back, back, nm, on}, true, true},
		"checked before":          {[]plan.StageInput{nm, on, check, back, nm, on}, true, true},
		"checked between":         {[]plan.StageInput{nm, on, check, on}, true, false},
	} {
		p := build(t, func(in *plan.Input) {
			in.Tighten = c.stages
			for i := range in.Kinds {
				in.Kinds[i].Reuse = plan.ReuseYes
				if c.once {
					in.Kinds[i].Reuse = plan.ReuseOnce
				}
			}
		})
		if got := finding.Has(Senseless(p), StretchesAgain); got != c.want {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
}

// What a finding names: the stage before, the slackening in between, the stage
// with the higher torque.
func TestWhatAStageIsHeldAgainst(t *testing.T) {
	t.Parallel()
	nm := func(v float64) plan.StageInput {
		return plan.StageInput{Of: []string{"main"}, Do: plan.Tighten, Torque: unit.GivenTorque{Value: v}}
	}
	on, back := plan.StageInput{Of: []string{"main"}, Do: plan.Advance, Angle: 90}, plan.StageInput{Of: []string{"main"}, Do: plan.BackOff, Angle: 180}
	wait := plan.StageInput{Do: plan.Wait, Wait: 10}
	for name, c := range map[string]struct {
		stages []plan.StageInput
		code   finding.Code
		want   finding.Values
	}{
		"alone":                  {[]plan.StageInput{on, nm(40)}, AngleAlone, finding.Values{"stage": 1, "slackened": false}},
		"alone after slackening": {[]plan.StageInput{nm(20), back, on}, AngleAlone, finding.Values{"stage": 3, "slackened": true}},
		"stretched again":        {[]plan.StageInput{nm(20), on, nm(20), back, nm(20), on}, StretchesAgain, finding.Values{"stage": 6, "before": 2, "slackened": 4}},
		"waits on":               {[]plan.StageInput{nm(20), wait, wait, nm(40)}, WaitsOn, finding.Values{"stage": 3, "before": 2}},
		"twice":                  {[]plan.StageInput{nm(20), nm(40), nm(40)}, StageTwice, finding.Values{"stage": 3, "before": 2}},
		"falls":                  {[]plan.StageInput{nm(20), nm(40), nm(30)}, TorqueFalls, finding.Values{"stage": 3, "before": 2, "torque": nm(30).Torque, "beforeTorque": nm(40).Torque}},
		"after an angle":         {[]plan.StageInput{nm(20), on, nm(40)}, AfterAngle, finding.Values{"stage": 3, "before": 2}},
		"left loose":             {[]plan.StageInput{nm(20), back}, LeftLoose, finding.Values{"stage": 2, "angle": unit.Angle(180)}},
	} {
		p := build(t, func(in *plan.Input) {
			in.Tighten = c.stages
			in.Kinds[1].Reuse = plan.ReuseOnce
		})
		all := Senseless(p)
		i := slices.IndexFunc(all, func(f finding.Finding) bool { return f.Code == c.code })
		if i < 0 {
			t.Errorf("%s: %v", name, all)
			continue
		}
		for key, want := range c.want {
			if got := all[i].Values[key]; got != want {
				t.Errorf("%s: %s is %v, want %v", name, key, got, want)
			}
		}
	}
}

// Among the stages that make no sense, those with a lower torque than before.
func TestTorquesFall(t *testing.T) {
	t.Parallel()
	nm := func(v float64) plan.StageInput {
		return plan.StageInput{Do: plan.Tighten, Torque: unit.GivenTorque{Value: v}}
	}
	p := build(t, func(in *plan.Input) {
		in.Tighten = []plan.StageInput{nm(20), nm(20), nm(10), {Do: plan.Wait, Wait: 5}}
	})
	if got := TorquesFall(p); len(got) != 2 || got[0].Code != TorqueFalls || got[0].At.Stage != 3 || got[1].At.Stage != 3 || got[0].At.Kind == got[1].At.Kind {
		t.Errorf("%v", got)
	}
}

// A bolt that an angle takes past yield may be stretched only once, whatever
// the file says about reuse; this applies to the kind found past yield.
func TestPastYieldStretchesOnce(t *testing.T) {
	t.Parallel()
	on, back := plan.Stage{Do: plan.Advance, Angle: 90, Kinds: []string{"main"}}, plan.Stage{Do: plan.BackOff, Angle: 180, Kinds: []string{"main"}}
	torque := plan.Stage{Do: plan.Tighten, Torque: unit.GivenTorque{Value: 20}, Kinds: []string{"main"}}
	p := plan.Plan{Kinds: []plan.Kind{{Name: "main"}}, Tighten: plan.Side{Stages: []plan.Stage{torque, on, back, torque, on}}}
	for i := range p.Tighten.Stages {
		p.Tighten.Stages[i].Number = i + 1
	}
	for _, c := range []struct {
		code finding.Code
		kind string
		want bool
	}{
		{figures.TurnUsedAgain, "main", true}, {figures.TurnUsedOnce, "main", true}, {figures.TurnUsesUp, "main", true}, {figures.TurnNecks, "main", true},
		{figures.TurnNecks, "side", false}, {figures.TorqueOver, "main", false},
	} {
		p.Figures = []finding.Finding{finding.Warned(c.code, nil).About(finding.Place{Kind: c.kind})}
		if got := finding.Has(Senseless(p), StretchesAgain); got != c.want {
			t.Errorf("%s of %s: %v", c.code, c.kind, got)
		}
	}
}

// Two torques count as swapped only for kinds that are otherwise equal, and
// without warnings of their own.
func TestWhenTorquesAreExchanged(t *testing.T) {
	t.Parallel()
	friction := func(v float64) *screw.Friction {
		return &screw.Friction{Thread: screw.Between(v, v), Head: screw.Between(v, v)}
	}
	warned := func(kind string, severity finding.Severity) func(p *plan.Plan) {
		return func(p *plan.Plan) {
			f := finding.Warned(figures.TorqueOver, nil).About(finding.Place{Kind: kind})
			f.Severity = severity
			p.Figures = []finding.Finding{f}
		}
	}
	for name, c := range map[string]struct {
		change func(p *plan.Plan)
		want   bool
	}{
		"alike":                      {func(*plan.Plan) {}, true},
		"the same friction":          {func(p *plan.Plan) { p.Kinds[0].Friction, p.Kinds[1].Friction = friction(0.12), friction(0.12) }, true},
		"other friction":             {func(p *plan.Plan) { p.Kinds[0].Friction, p.Kinds[1].Friction = friction(0.12), friction(0.14) }, false},
		"friction of one":            {func(p *plan.Plan) { p.Kinds[0].Friction = friction(0.12) }, false},
		"another lubricant":          {func(p *plan.Plan) { p.Kinds[0].Lubricant = "engine oil" }, false},
		"the smaller is warned of":   {warned("side", finding.Warning), false},
		"the larger is warned of":    {warned("main", finding.Warning), false},
		"another kind is warned of":  {warned("stud", finding.Warning), true},
		"noted of the smaller":       {warned("side", finding.Note), true},
		"no thread of the smaller":   {func(p *plan.Plan) { p.Kinds[0].Thread = nil }, false},
		"slackened after the torque": {func(p *plan.Plan) { p.Tighten.Stages[2].Do = plan.BackOff }, false},
	} {
		p := plan.Plan{
			Kinds: []plan.Kind{{Name: "side", Thread: threadOf(t, "M8"), Class: "8.8"}, {Name: "main", Thread: threadOf(t, "M10"), Class: "8.8"}},
			Tighten: plan.Side{Stages: []plan.Stage{
				{Number: 1, Do: plan.Tighten, Torque: unit.GivenTorque{Value: 20}, Kinds: []string{"main"}},
				{Number: 2, Do: plan.Tighten, Torque: unit.GivenTorque{Value: 30}, Kinds: []string{"side"}},
				{Number: 3, Do: plan.Wait, Kinds: []string{"side"}},
			}},
		}
		c.change(&p)
		if got := finding.Has(Senseless(p), SmallerMore); got != c.want {
			t.Errorf("%s: %v", name, Senseless(p))
		}
	}
}

// Two units of one torque may differ by the rounding in a manual: 3 % (common
// practice, no source).
func TestRoundedInAnotherUnit(t *testing.T) {
	t.Parallel()
	for feet, want := range map[float64]bool{29: false, 30.3: false, 30.5: true, 28.5: true} { // 40 N·m is 29.50 lbf·ft
		p := plan.Plan{Kinds: []plan.Kind{{Name: "main"}}, Tighten: plan.Side{Stages: []plan.Stage{
			{Number: 1, Do: plan.Tighten, Torque: unit.GivenTorque{Value: 40}, Kinds: []string{"main"}},
			{Number: 2, Do: plan.Tighten, Torque: unit.GivenTorque{Value: feet, Unit: unit.PoundForceFoot}, Kinds: []string{"main"}},
		}}}
		if got := finding.Has(Senseless(p), UnitsMixed); got != want {
			t.Errorf("40 N·m, then %g lbf·ft: %v", feet, Senseless(p))
		}
	}
}

// Common practice, no source: a figure that does not fit those beside it is an
// error, or a stage is missing. Each limit from both sides.
func TestFiguresBesideOthers(t *testing.T) {
	t.Parallel()
	nm := func(v float64) plan.StageInput {
		return plan.StageInput{Of: []string{"main"}, Do: plan.Tighten, Torque: unit.GivenTorque{Value: v}}
	}
	side := func(v float64) plan.StageInput { s := nm(v); s.Of = []string{"side"}; return s }
	round := func(v float64) plan.StageInput { s := nm(v); s.Way = sequence.Circular; return s }
	wait := func(minutes unit.Duration) plan.StageInput { return plan.StageInput{Do: plan.Wait, Wait: minutes} }
	on := plan.StageInput{Of: []string{"main"}, Do: plan.Advance, Angle: 90}
	as := func(kinds ...func(*plan.Kind)) func(*plan.Input) {
		return func(in *plan.Input) {
			for i := range in.Kinds {
				for _, change := range kinds {
					change(&in.Kinds[i])
				}
			}
		}
	}
	equal := func(k *plan.Kind) {
		*k = plan.Kind{Name: k.Name, Thread: threadOf(t, "M10"), Class: "8.8", Lubricant: "engine oil"}
	}
	more := func(count int) func(*plan.Input) {
		return func(in *plan.Input) {
			for k := range count - 6 {
				in.Joint.Fasteners = append(in.Joint.Fasteners, geometry.Fastener{ID: fmt.Sprint("X", k), Kind: "main", At: geometry.Point{X: 150 + 30*float64(k), Y: 44}})
			}
		}
	}
	twelve := func(count int) func(*plan.Input) {
		return func(in *plan.Input) { more(count)(in); in.Kinds[1].Thread = threadOf(t, "M12") }
	}
	same := func(*plan.Input) {}
	for name, c := range map[string]struct {
		stages []plan.StageInput
		change func(*plan.Input)
		want   string
	}{
		"eight times":              {[]plan.StageInput{nm(5), nm(40)}, same, ""},
		"more than eight times":    {[]plan.StageInput{nm(4.9), nm(40)}, same, "1 main stage step large"},
		"a check pass between":     {[]plan.StageInput{nm(4.9), round(4.9), nm(40)}, same, "1 main stage step large"},
		"of another kind":          {[]plan.StageInput{side(4), nm(40)}, same, ""},
		"an angle between":         {[]plan.StageInput{nm(4), on, nm(40)}, same, "3 main stage after angle"},
		"a minute":                 {[]plan.StageInput{nm(20), wait(1), nm(40)}, same, ""},
		"less than a minute":       {[]plan.StageInput{nm(20), wait(0.99), nm(40)}, same, "2  stage waits short"},
		"seven at once":            {[]plan.StageInput{nm(40)}, twelve(7), ""},
		"eight at once":            {[]plan.StageInput{nm(40)}, twelve(8), "1 main stage all at once"},
		"at once, then checked":    {[]plan.StageInput{nm(40), round(40)}, twelve(8), "1 main stage all at once"},
		"at once, then an angle":   {[]plan.StageInput{nm(40), on}, twelve(8), ""},
		"eight smaller ones":       {[]plan.StageInput{nm(40)}, more(8), ""},
		"eight in two stages":      {[]plan.StageInput{nm(20), nm(40)}, twelve(8), ""},
		"equal bolts, 60 %":        {[]plan.StageInput{nm(40), side(24)}, as(equal), ""},
		"equal bolts, less":        {[]plan.StageInput{nm(40), side(23.9)}, as(equal), "2 side stage equals apart"},
		"equal bolts, an angle":    {[]plan.StageInput{nm(40), on, side(20)}, as(equal), ""},
		"other bolts":              {[]plan.StageInput{nm(40), side(20)}, as(equal, func(k *plan.Kind) { k.Class = map[string]string{"main": "10.9", "side": "8.8"}[k.Name] }), ""},
		"equal bolts, no class":    {[]plan.StageInput{nm(40), side(20)}, as(equal, func(k *plan.Kind) { k.Class = "" }), ""},
		"equal but for the thread": {[]plan.StageInput{nm(40), side(20)}, as(equal, func(k *plan.Kind) { k.Thread = threadOf(t, map[string]string{"main": "M10", "side": "M10×1"}[k.Name]) }), ""},
	} {
		var got []string
		for _, f := range Senseless(build(t, func(in *plan.Input) { in.Tighten = c.stages; c.change(in) })) {
			got = append(got, fmt.Sprintf("%d %s %s", f.At.Stage, f.At.Kind, f.Code))
		}
		if said := strings.Join(got, ", "); said != c.want {
			t.Errorf("%s: %q, want %q", name, said, c.want)
		}
	}
}
