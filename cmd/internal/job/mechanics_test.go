package job_test

import (
	"strings"
	"testing"

	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
	"drawdown/sequence/figures"
	"drawdown/sequence/tension/screw"
)

func TestKindsOfAPattern(t *testing.T) {
	text := strings.Replace(lid, "title:", `kinds: {bolt: {thread: M8, class: "8.8", grip: 40 mm, length: 60 mm, into: cast iron, engagement: 15 mm, friction: {thread: [0.1, 0.2], head: 0.12}, hole: 9 mm, washer: 16 mm}}
title:`, 1)
	text = strings.Replace(text, "id: M}", "id: M, kind: bolt}", 1)
	made, kinds, problems, err := job.Kinds("-", strings.NewReader(text))
	if err != nil || problems.Stops() || len(kinds) != 1 || made.Title != "Lid, no. 4" {
		t.Fatalf("%q, %v, %v, %v", made.Title, kinds, problems, err)
	}
	k := kinds[0]
	if k.Kind != "bolt" || k.Bolt.Bolt.Thread.Name != "M8×1.25" || k.Bolt.Bolt.Class != "8.8" || k.Bolt.Bolt.Hole != 9 || k.Bolt.Bolt.WasherFace != 16 ||
		k.Grip.Layers[0].Thickness != 40 || k.Grip.BoltLength != 60 || k.Grip.TappedIn != "cast iron" || k.Grip.Engagement != 15 {
		t.Errorf("%+v", k)
	}
	if f := k.Bolt.Bolt.Friction; f == nil || f.Thread != screw.Between(0.1, 0.2) || f.Head != screw.Between(0.12, 0.12) {
		t.Errorf("friction %+v", f)
	}
}

// First principles: torque accepts what check accepts, including a thread for
// which no standard has a head; and a note names the line it is about.
func TestThreadWithoutStandardHead(t *testing.T) {
	text := "drawdown: 1\ntitle: Odd bolts\nkinds: {a: {thread: M11x1.5, class: \"8.8\", friction: 0.12}}\n" +
		"fasteners: [{id: A1, at: [0, 0]}, {id: A2, at: [60, 0]}]\ntighten:\n  stages:\n    - {torque: 60 N·m}\n"
	_, kinds, problems, err := job.Kinds("-", strings.NewReader(text))
	if err != nil || len(problems) > 0 || len(kinds) != 1 {
		t.Fatalf("%v, %v, %v", kinds, problems, err)
	}
	answer, err := figures.WorkOut(kinds[0])
	if err != nil || !finding.Has(answer.Assumptions, figures.FaceUsual) || answer.Bolt.Bolt.WasherFace != 16.5 { // 1.5 d, Shigley 9th ed., section 8-5
		t.Errorf("%v: %v", answer.Assumptions, err)
	}
	made, _, err := job.Load("-", strings.NewReader(text), "", "")
	if err != nil || len(made.Figures) == 0 || made.Figures[0].At.Line != 7 {
		t.Errorf("%+v: %v", made.Figures, err)
	}
}
