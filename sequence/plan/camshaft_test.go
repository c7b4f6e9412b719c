package plan

import (
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

// Common practice, no source: valve springs lift a camshaft, and nothing lifts
// the caps of a crankshaft or a cam cover. What a file leaves open is reported.
func TestCamshaftWithoutSpringsIsNamed(t *testing.T) {
	lost := func(in *Input) { in.Joint.Clusters = nil }
	none := func(in *Input) {
		for i := range in.Joint.Clusters {
			in.Joint.Clusters[i].Unloaded = true
		}
	}
	gradual := func(in *Input) {
		lost(in)
		in.Loosen = []StageInput{{Do: TurnBack, Angle: 90, Until: NoSpringPresses}, {Do: Remove}}
	}
	atOnce := func(in *Input) {
		lost(in)
		in.Loosen = []StageInput{{Do: TurnBack, Angle: 90}, {Do: Remove}}
	}
	spoken := func(in *Input) {
		lost(in)
		in.Cautions = []Caution{{Text: "Cam lobes of cylinder 1 away from the valves"}}
	}
	spokenCover := func(in *Input) {
		spoken(in)
		in.Kinds[0].Name = "bolt"
		for i := range in.Joint.Fasteners {
			in.Joint.Fasteners[i].Kind = "bolt"
		}
	}
	label := func(in *Input) {
		lost(in)
		in.Joint.Labels = []geometry.Label{{Text: "INTAKE CAMSHAFT"}}
	}
	const noSpring = finding.Code("")
	for _, c := range []struct {
		what, title   string
		change        func(*Input)
		warned, spoke finding.Code
	}{
		{"clusters lost", "Camshaft caps", lost, CapsUnstated, SpringsUnknown},
		{"in German", "Nockenwellenlagerdeckel", lost, CapsUnstated, SpringsUnknown},
		{"in French", "Chapeaux d’arbre à cames", lost, CapsUnstated, SpringsUnknown},
		{"all denied", "Cam caps", none, CapsAllUnloaded, SpringsAllDenied},
		{"out at once", "Cam caps", atOnce, CapsUnstated, SpringsUnknown},
		{"out evenly all the same", "Cam caps", gradual, CapsUnstated, SpringsUnknown},
		{"bearing caps and a caution", "Bearing caps", spoken, CapsUnstated, SpringsUnknown},
		{"a cover and a caution", "Timing cover", spokenCover, noSpring, noSpring},
		{"by a label", "Upper row", label, noSpring, SpringsUnknown},
		{"a cover", "Cam cover", lost, noSpring, noSpring},
		{"a sprocket", "Camshaft sprocket", lost, noSpring, noSpring},
		{"another word", "Camera mount", lost, noSpring, noSpring},
		{"a crankshaft", "Main bearing caps", none, noSpring, SpringsJudged},
		{"nothing stated", "Main bearing caps", func(*Input) {}, noSpring, SpringsTaken},
		{"as it should be", "Camshaft caps", func(*Input) {}, noSpring, SpringsJudged},
	} {
		in := camCaps(t, "M8")
		in.Title = c.title
		c.change(&in)
		if f, found := in.CapsUnjudged(); found != (c.warned != noSpring) || f.Code != c.warned {
			t.Errorf("%s: warned %q, want %q", c.what, f.Code, c.warned)
		}
		judged, open := build(t, in).Covered()
		for _, code := range []finding.Code{SpringsJudged, SpringsTaken, SpringsUnknown, SpringsAllDenied} {
			if got := finding.Has(append(judged, open...), code); got != (code == c.spoke) {
				t.Errorf("%s: %q is %v", c.what, code, got)
			}
		}
	}
}
