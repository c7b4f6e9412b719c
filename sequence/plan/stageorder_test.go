package plan

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence"
)

// The maker's list and the cast numbers decide which kind is finished first, as
// groups do; kinds that they mix have no order (first principles).
func TestStagesAgainstAListOverAllKinds(t *testing.T) {
	t.Parallel()
	in := cylinderHead(t)
	kind := func(name string) (ids []string) {
		for _, f := range in.Joint.Fasteners {
			if f.Kind == name {
				ids = append(ids, f.ID)
			}
		}
		return ids
	}
	main, side := kind("main"), kind("side")
	in.Tighten = []StageInput{
		{Do: Tighten, Torque: unit.GivenTorque{Value: 40}, Of: []string{"main"}},
		{Do: Tighten, Torque: unit.GivenTorque{Value: 24}, Of: []string{"side"}},
	}
	for name, c := range map[string]struct {
		list []string
		want int
	}{
		"main first": {slices.Concat(main, side), 0},
		"side first": {slices.Concat(side, main), 1},
		"mixed":      {slices.Concat(side[:1], main, side[1:]), 0},
	} {
		in.Groups = []sequence.Group{{Way: sequence.List, List: c.list}}
		if found := in.FinishedOutOfTurn(); len(found) != c.want {
			t.Errorf("%s, by a list: %v", name, found)
		}
		cast := in
		cast.Groups = nil
		cast.Joint.Fasteners = slices.Clone(in.Joint.Fasteners)
		for i, f := range cast.Joint.Fasteners {
			cast.Joint.Fasteners[i].Cast = slices.Index(c.list, f.ID) + 1
		}
		if found := cast.FinishedOutOfTurn(); len(found) != c.want {
			t.Errorf("%s, by cast numbers: %v", name, found)
		}
	}
}

// Common practice, no source: the kinds are tightened in the order of the
// groups, the large before the small, loosened in reverse, and broken loose
// before they are removed.
func TestStagesOutOfOrder(t *testing.T) {
	t.Parallel()
	nm := func(v float64, of ...string) StageInput {
		return StageInput{Do: Tighten, Torque: unit.GivenTorque{Value: v}, Of: of}
	}
	round := func(v float64, of ...string) StageInput { s := nm(v, of...); s.Way = sequence.Circular; return s }
	on := StageInput{Do: Advance, Angle: 90, Of: []string{"main"}}
	turn := func(of ...string) StageInput { return StageInput{Do: TurnBack, Angle: 90, Of: of} }
	out := func(of ...string) StageInput { return StageInput{Do: Remove, Of: of} }
	usual := []StageInput{nm(40, "main"), nm(24, "side")}
	for name, c := range map[string]struct {
		tighten, loosen []StageInput
		want            string // stage and code of each finding
	}{
		"as usual":              {usual, []StageInput{turn("side"), out("side"), turn("main"), out("main")}, ""},
		"without kinds":         {usual, []StageInput{turn(), out()}, ""},
		"all turned at once":    {usual, []StageInput{turn(), out("main"), out("side")}, ""},
		"side first":            {[]StageInput{nm(24, "side"), nm(40, "main")}, nil, "1 stage finished early"},
		"snug together":         {[]StageInput{nm(10), nm(40, "main"), nm(24, "side"), on}, nil, ""},
		"a check pass after":    {[]StageInput{nm(40, "main"), nm(24, "side"), round(40, "main")}, nil, ""},
		"both in one stage":     {[]StageInput{nm(24), nm(40, "main")}, nil, ""},
		"main loosened first":   {usual, []StageInput{turn("main"), out("main"), turn("side"), out("side")}, "1 stage loosened early"},
		"main out at full load": {usual, []StageInput{turn("side"), out()}, "2 stage out unturned"},
		"all out at full load":  {usual, []StageInput{out()}, "1 stage out unturned"},
		"order only":            {nil, []StageInput{out()}, "1 stage out unturned"},
	} {
		for _, stated := range []bool{true, false} {
			in := cylinderHead(t)
			in.Tighten, in.Loosen = c.tighten, c.loosen
			if !stated {
				in.Groups = nil // so by size
			}
			var got []string
			for _, found := range []map[int]finding.Finding{in.FinishedOutOfTurn(), in.LoosenedOutOfTurn(), in.OutUnturned()} {
				for _, i := range slices.Sorted(maps.Keys(found)) {
					got = append(got, fmt.Sprintf("%d %s", i+1, found[i].Code))
				}
			}
			if said := strings.Join(got, ", "); said != c.want {
				t.Errorf("%s, order stated %v: %q, want %q", name, stated, said, c.want)
			}
		}
	}
}

// Maker's numbers on one kind leave the order of the kinds to the file: stages
// against it are reported. Without them, only SmallBeforeLarge judges the
// smaller kind first (common practice, no source).
func TestStagesAgainstGroups(t *testing.T) {
	t.Parallel()
	for way, want := range map[sequence.Way]int{sequence.Cast: 1, sequence.Spiral: 0} {
		in := cylinderHead(t)
		in.Groups = []sequence.Group{{Kinds: []string{"side"}}, {Kinds: []string{"main"}, Way: way}}
		in.Tighten = []StageInput{
			{Do: Tighten, Torque: unit.GivenTorque{Value: 40}, Of: []string{"main"}},
			{Do: Tighten, Torque: unit.GivenTorque{Value: 24}, Of: []string{"side"}},
		}
		found := in.FinishedOutOfTurn()
		if len(found) != want || want > 0 && found[0].Values["other"] != "side" {
			t.Errorf("main %s: %v", way, found)
		}
		if small := in.SmallBeforeLarge(); len(small) != 1-want {
			t.Errorf("main %s: %v", way, small)
		}
	}
}

// Common practice, no source: a bolt is broken loose by about a quarter turn; a
// wrench twists by a few degrees, and a whole turn releases at once.
func TestTurnsOfLoosening(t *testing.T) {
	t.Parallel()
	turn := func(by unit.Angle) StageInput { return StageInput{Do: TurnBack, Angle: by} }
	for name, c := range map[string]struct {
		loosen []StageInput
		want   string
	}{
		"a quarter":            {[]StageInput{turn(90)}, ""},
		"least and most":       {[]StageInput{turn(15), turn(360)}, ""},
		"little":               {[]StageInput{turn(14)}, "1 stage turn little"},
		"much":                 {[]StageInput{turn(361)}, "1 stage turn much"},
		"much, and loose then": {[]StageInput{turn(90), turn(720)}, ""},
	} {
		in := cylinderHead(t)
		in.Loosen = append(c.loosen, StageInput{Do: Remove})
		var got []string
		found := in.OddTurns()
		for _, i := range slices.Sorted(maps.Keys(found)) {
			got = append(got, fmt.Sprintf("%d %s", i+1, found[i].Code))
		}
		if said := strings.Join(got, ", "); said != c.want {
			t.Errorf("%s: %q, want %q", name, said, c.want)
		}
	}
}
