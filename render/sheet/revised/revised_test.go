package revised_test

import (
	"strings"
	"testing"

	"drawdown/patterns/patterntest"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet/revised"
	"drawdown/render/sheet/sheettest"
	"drawdown/sequence/plan"
)

// newer is a plan with a fastener that moved and one that is gone.
func newer(t *testing.T) (before, after plan.Plan) {
	before, after = patterntest.Plan(t, "p4-head"), patterntest.Plan(t, `drawdown: 1
extends: p4-head
title: Cylinder head
revision: 4
omit: [F4]
change: {M7: {at: [-95, -46.2]}}
`)
	return before, after
}

// On every paper and in every language the sheet has no fault, and a letter for
// each difference that has a place.
func TestLayouts(t *testing.T) {
	t.Parallel()
	before, after := newer(t)
	for turn := range 4 {
		for _, ask := range sheettest.Requests(turn) {
			document, notes := revised.Document(before, after, ask)
			sheettest.Check(t, "differences", ask, document.Pages)
			var text strings.Builder
			scenetest.Dump(&text, document)
			for _, want := range []string{"▲A", "▲B", "M7", "F4"} {
				if !strings.Contains(text.String(), want) && len(notes) == 0 { // a letter without room is in the notes
					t.Errorf("on %s in %s: no %q", ask.Paper.Name, ask.Words.Language, want)
				}
			}
		}
	}
}
