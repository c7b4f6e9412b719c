package job

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/patterns/meaning"
	"drawdown/patterns/problem"
	"drawdown/render/words"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

const flange = `drawdown: 1
title: Flange
kinds:
  main: {thread: M10, class: "10.9", lubricant: engine oil, grip: 40 mm, length: 30 mm}
fasteners: [{row: {count: 4, pitch: 60, from: [7, 3], kind: main, id: C}}]
tighten:
  stages:
    - {torque: 30 N·m}
    - {torque: 300 N·m}
  source: works manual 4.2
`

// placesOf returns the place of each problem: line:column severity.
func placesOf(problems problem.List) []string {
	var at []string
	for _, p := range problems {
		at = append(at, fmt.Sprintf("%d:%d %s", p.Line, p.Column, p.Severity))
	}
	return at
}

// The places are counted by hand in the text above: 300 N·m breaks an M10, and
// 30 mm do not reach through 40 mm. The reader's warning about an unused kind
// comes between them.
func TestDoubtsStandAtTheirPlacesInReadingOrder(t *testing.T) {
	text := strings.Replace(flange, "fasteners", "  spare: {thread: M8}\nfasteners", 1)
	text = strings.Replace(text, "torque: 30 N·m", "of: main, torque: 60 N·m", 1) // not far below the next
	text = strings.Replace(text, "torque: 300 N·m", "of: main, torque: 300 N·m", 1)
	_, problems, err := Load("-", strings.NewReader(text), "", "")
	want := []string{"4:3 warning", "5:3 warning", "10:7 warning"}
	if got := placesOf(problems); err != nil || !slices.Equal(got, want) {
		t.Fatalf("%q, %v; want %q", got, err, want)
	}
	if last := problems.Worded(words.English().What, words.English().Allowed)[2]; last.Snippet != "    - {of: main, torque: 300 N·m}" || !strings.Contains(last.What, "stage 2") {
		t.Errorf("%+v", last)
	}
}

// A way from a flag has no place in the file.
func TestAWayThatDoesNotFitIsOfTheWholeFile(t *testing.T) {
	p, problems, err := Load("-", strings.NewReader(flange), sequence.Cast, "")
	if got := placesOf(problems); err != nil || !slices.Equal(got, []string{"0:0 error"}) || p.Title != "" {
		t.Errorf("%q, %v, plan %q", got, err, p.Title)
	}
}

func TestWhatStopsAStageStandsThere(t *testing.T) {
	_, at, problems := meaning.Read(patterns.FromBytes("flange.yaml", []byte(flange)))
	if problems.Stops() {
		t.Fatal(problems)
	}
	cause := errors.New("no thread")
	stage := finding.Failed(plan.StageFails, finding.Values{"side": "tighten", "stage": 2, "why": cause}).About(finding.Place{Stage: 2})
	got := stopped(fmt.Errorf("planned: %w", stage), at)
	if got.Found == nil || got.Found.Code != plan.StageFails {
		t.Fatalf("%+v", got)
	}
	got.Found = nil
	want := problem.Problem{File: "flange.yaml", Line: 9, Column: 7, Severity: problem.Error, Snippet: "    - {torque: 300 N·m}"}
	if got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	whole := stopped(cause, at).Worded(words.English().What, words.English().Allowed)
	if whole != (problem.Problem{File: "flange.yaml", Severity: problem.Error, Code: plan.Fails, What: "the work cannot be planned: no thread"}) {
		t.Errorf("%+v", whole)
	}
}
