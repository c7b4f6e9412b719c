package plan

import (
	"fmt"
	"strings"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence"
)

// First principles: a wrench set below what a bolt has turns nothing, an angle
// counts from a torque, and what is slackened last stays loose. Common practice,
// no source: a repeat says what it is for, and a check pass has the last torque.
func TestStagesWithoutSense(t *testing.T) {
	t.Parallel()
	nm := func(v float64) StageInput { return StageInput{Do: Tighten, Torque: unit.GivenTorque{Value: v}} }
	round := func(v float64) StageInput { s := nm(v); s.Way = sequence.Circular; return s }
	main := func(s StageInput) StageInput { s.Of = []string{"main"}; return s }
	side := func(s StageInput) StageInput { s.Of = []string{"side"}; return s }
	on, back, wait := StageInput{Do: Advance, Angle: 90}, StageInput{Do: BackOff, Angle: 180}, StageInput{Do: Wait, Wait: 10}
	third := StageInput{Do: Percent, Percent: 30}
	feet := StageInput{Do: Tighten, Torque: unit.GivenTorque{Value: 20, Unit: unit.PoundForceFoot}}
	inches, aroundOn := StageInput{Do: Tighten, Torque: unit.GivenTorque{Value: 90, Unit: unit.PoundForceInch}}, on
	aroundOn.Way = sequence.Circular
	noted := nm(20)
	noted.Note = "once more"
	for name, c := range map[string]struct {
		stages []StageInput
		want   string // stage, kind and code of each
	}{
		"rising, then by angle":  {[]StageInput{nm(20), nm(40), on, on}, ""},
		"the same in two units":  {[]StageInput{nm(27.1163589659), feet}, ""}, // 1 lbf·ft = 1.3558179483 N·m
		"another unit":           {[]StageInput{main(nm(20)), main(feet), main(nm(50))}, "2 main stage units mixed"},
		"each kind its own":      {[]StageInput{main(nm(40)), side(feet)}, ""},
		"two of the inch system": {[]StageInput{main(inches), main(feet)}, ""},
		"angle once round":       {[]StageInput{main(nm(20)), main(on), main(aroundOn)}, "3 main stage check by angle"},
		"check pass":             {[]StageInput{nm(20), nm(40), round(40), wait, round(40)}, ""},
		"all once round":         {[]StageInput{round(20), round(40)}, ""},
		"once round first":       {[]StageInput{round(20), nm(40)}, "1 main stage check first, 1 side stage check first"},
		"slackened and lower":    {[]StageInput{nm(40), back, nm(20)}, ""},
		"noted repeat":           {[]StageInput{nm(20), noted}, ""},
		"repeat after a wait":    {[]StageInput{nm(20), wait, nm(20)}, ""},
		"slackened first":        {[]StageInput{back, nm(20)}, "1 main stage slack first, 1 side stage slack first"},
		"torque after angle":     {[]StageInput{nm(20), on, nm(40)}, "3 main stage after angle, 3 side stage after angle"},
		"once round after angle": {[]StageInput{nm(20), on, round(20)}, ""},
		"slackened after angle":  {[]StageInput{nm(20), on, back, nm(40)}, ""},
		"left loose":             {[]StageInput{nm(40), back}, "2 main stage left loose, 2 side stage left loose"},
		"one kind left loose":    {[]StageInput{nm(40), main(back)}, "2 main stage left loose"},
		"loose before a wait":    {[]StageInput{nm(40), back, wait}, "2 main stage left loose, 2 side stage left loose, 3  stage waits last"},
		"falls":                  {[]StageInput{main(nm(40)), side(nm(20)), main(nm(30))}, "3 main stage torque falls"},
		"falls after an angle":   {[]StageInput{main(nm(40)), main(on), main(nm(30))}, "3 main stage torque falls"},
		"a share of less":        {[]StageInput{main(nm(40)), main(third)}, "2 main stage torque falls"},
		"lower check":            {[]StageInput{main(nm(40)), main(round(30))}, "2 main stage torque falls"},
		"higher check":           {[]StageInput{main(nm(40)), main(round(50))}, "2 main stage check differs"},
		"angle alone":            {[]StageInput{main(on), side(nm(20))}, "1 main stage angle alone"},
		"angle after slackening": {[]StageInput{main(nm(20)), main(back), main(on)}, "3 main stage angle alone"},
		"twice":                  {[]StageInput{nm(20), nm(20)}, "2  stage twice"},
		"waits about":            {[]StageInput{wait, nm(20), wait, wait}, "1  stage waits first, 4  stage waits on, 4  stage waits last"},
	} {
		in := cylinderHead(t)
		in.Tighten = c.stages
		var got []string
		for _, f := range build(t, in).Senseless() {
			got = append(got, fmt.Sprintf("%d %s %s", f.At.Stage, f.At.Kind, f.Code))
		}
		if said := strings.Join(got, ", "); said != c.want {
			t.Errorf("%s: %q, want %q", name, said, c.want)
		}
	}
}

// First principles: of two bolts that differ in size alone the larger bears more.
func TestSmallerThreadWithMoreTorque(t *testing.T) {
	t.Parallel()
	nm := func(kind string, v float64) StageInput {
		return StageInput{Of: []string{kind}, Do: Tighten, Torque: unit.GivenTorque{Value: v}}
	}
	on := StageInput{Of: []string{"main"}, Do: Advance, Angle: 90}
	equal := func(in *Input) {
		for i := range in.Kinds {
			in.Kinds[i].Class, in.Kinds[i].Lubricant, in.Kinds[i].Friction, in.Kinds[i].Into = "8.8", "engine oil", nil, ""
		}
	}
	for _, c := range []struct {
		name   string
		stages []StageInput
		change func(*Input)
		want   bool
	}{
		{"exchanged", []StageInput{nm("main", 20), nm("side", 24)}, func(*Input) {}, true},
		{"as they should be", []StageInput{nm("main", 40), nm("side", 24)}, func(*Input) {}, false},
		{"the same", []StageInput{nm("main", 24), nm("side", 24)}, func(*Input) {}, false},
		{"the larger by an angle", []StageInput{nm("main", 20), on, nm("side", 24)}, func(*Input) {}, false},
		{"of another class", []StageInput{nm("main", 20), nm("side", 24)}, func(in *Input) { in.Kinds[0].Class = "5.6" }, false},
		{"of no class", []StageInput{nm("main", 20), nm("side", 24)}, func(in *Input) { in.Kinds[0].Class, in.Kinds[1].Class = "", "" }, false},
		{"into another part", []StageInput{nm("main", 20), nm("side", 24)}, func(in *Input) { in.Kinds[0].Into = "aluminium" }, false},
	} {
		in := cylinderHead(t)
		equal(&in)
		c.change(&in)
		in.Tighten = c.stages
		got := build(t, in).Senseless()
		if finding.Has(got, SmallerMore) != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}
