package survey_test

import (
	"math"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
	"drawdown/geometry/unit"
)

// First principles: a rectangle of 90 by 60 mm with holes of 8 mm. One diagonal
// of 108.17 mm is stated as a centre distance but was taken over the outsides,
// which is 8 mm more.
func TestSuspects(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		more  float64
		way   string
		taken string
	}{{8, "long", "outside"}, {-8, "short", "inside"}, {3, "long", ""}} {
		n := survey.Network{Holes: 4, Diameters: []float64{8, 8, 8, 8}, Level: [2]int{0, 1}, Above: []int{2}, Readings: []survey.Reading{
			{From: 0, To: 1, Distance: 90.01}, {From: 1, To: 2, Distance: 59.98}, {From: 2, To: 3, Distance: 90}, {From: 3, To: 0, Distance: 60.02},
			{From: 0, To: 2, Distance: 108.17 + c.more}, {From: 1, To: 3, Distance: 108.18}, {From: 0, To: 1, Distance: 90},
			{From: 2, To: 3, Distance: 90.01}, {From: 0, To: 2, Distance: 108.16},
		}}
		r := report(t, n)
		for i := range r.Ways {
			r.Ways[i] = survey.Centre
		}
		all := r.Suspects()
		if len(all) != 1 || all[0].Code != survey.WrongReading {
			t.Fatalf("%+.0f mm: %v", c.more, all)
		}
		v := all[0].Values
		if off := float64(v["off"].(unit.Length)); math.Abs(off-math.Abs(c.more)) > 0.05 || v["way"] != c.way || v["taken"] != c.taken {
			t.Errorf("%+.0f mm: %v, want %s, taken %q", c.more, all[0], c.way, c.taken)
		}
		if at := all[0].At.IDs; len(at) != 2 || at[0] != "A" || at[1] != "C" {
			t.Errorf("%+.0f mm: about %q", c.more, at)
		}
	}
}

// A hole held by one reading can move; one held by two can be on either side of
// the line between their ends (first principles). A triangle has no spare
// reading, and without a named hole it has a mirror image.
func TestReportOfLooseHoles(t *testing.T) {
	t.Parallel()
	n := survey.Network{Holes: 5, Diameters: make([]float64, 5), Level: [2]int{0, 1}, Readings: []survey.Reading{
		{From: 0, To: 1, Distance: 100}, {From: 1, To: 2, Distance: 70}, {From: 0, To: 2, Distance: 122.07},
		{From: 0, To: 3, Distance: 80}, {From: 2, To: 3, Distance: 110}, {From: 4, To: 0, Distance: 50},
	}}
	r := report(t, n)
	codes := map[string]finding.Code{}
	for _, f := range r.LooseHoles() {
		codes[f.At.IDs[0]] = f.Code
		if f.Values["next"] == nil {
			t.Errorf("nothing to measure for %v", f)
		}
	}
	if codes["D"] != survey.TwoPlaces || codes["E"] != survey.Free || len(codes) != 2 {
		t.Errorf("loose: %v", codes)
	}
	if doubts := r.Doubts(); !finding.Has(doubts, survey.MirrorFits) || !finding.Has(doubts, survey.Unchecked) || finding.Has(doubts, survey.OneLine) {
		t.Errorf("doubts: %v", doubts)
	}
}
