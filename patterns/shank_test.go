package patterns

import (
	"strings"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/mechanics"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/strength"
)

const oneKind = "drawdown: 1\ntitle: T\nkinds: {main: {thread: M10, %}}\nfasteners: [{id: B1, at: [0, 0]}, {id: B2, at: [40, 0]}, {id: B3, at: [80, 0]}]\ntighten: {stages: [{torque: 20 N·m}], source: works manual}\n"

func TestShapeOfTheBolt(t *testing.T) {
	t.Parallel()
	in, problems := readText(strings.Replace(oneKind, "%", "into: steel, boss: 18 mm, length: 80 mm, sections: [{diameter: 8 mm, length: 20 mm}, {diameter: 7 mm, length: 15 mm}]", 1))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	k := in.Kinds[0]
	if k.Shank != 7 || k.Boss != 18 || len(k.Sections) != 2 || k.Sections[1] != (stiffness.Section{Diameter: 7, Length: 15}) {
		t.Errorf("%+v", k)
	}
	if b := k.Figures(); b.Bolt.Shank != 7 || b.Boss != 18 || len(b.Grip.Shank) != 2 {
		t.Errorf("%+v", b)
	}
	in, problems = readText(strings.Replace(oneKind, "%", "shank: 7.3 mm, thread length: 34 mm", 1))
	if len(problems) > 0 || in.Kinds[0].Shank != 7.3 || in.Kinds[0].Threaded != unit.Length(34) {
		t.Errorf("%v %+v", problems, in.Kinds[0])
	}
}

func TestShapeThatCannotBe(t *testing.T) {
	t.Parallel()
	for keys, want := range map[string]finding.Code{
		"shank: 3 mm":                      screw.ShankRange,
		"shank: 7 mm, thread length: full": stiffness.ShankOnFullThread,
		"into: steel, boss: 12 mm":         strength.BossTooThin,
		"shank: 7 mm, sections: [{diameter: 7 mm, length: 20 mm}]":   mechanics.ShankAndSections,
		"length: 30 mm, sections: [{diameter: 7 mm, length: 31 mm}]": mechanics.SectionsTooLong,
		"sections: [{diameter: 30 mm, length: 31 mm}]":               screw.ShankRange,
	} {
		_, problems := readText(strings.Replace(oneKind, "%", keys, 1))
		found := false
		for _, p := range problems {
			found = found || p.Found.Code == want
		}
		if !found {
			t.Errorf("%s: %v", keys, problems)
		}
	}
}
