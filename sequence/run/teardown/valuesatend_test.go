package teardown

import (
	"testing"
	"time"

	"drawdown/geometry/unit"
	"drawdown/sequence/measure"
	"drawdown/sequence/run"
)

// A value that was taken before its joint was opened, or before its part went to the
// machine shop, says nothing of the end. From first principles.
func TestValuesAtTheEnd(t *testing.T) {
	limit := unit.Decimal{Millionths: 50000}
	w := rebuild()
	w.Joints[0].Measures = []measure.Value{{What: "warp", Unit: "mm", To: &limit}}
	w.Joints[1].Measures = []measure.Value{{What: "end float", Unit: "mm", To: &limit}}
	warp := func(id, value string, after time.Duration) run.Entry {
		return run.Entry{ID: id, Act: run.Measure, Joint: "lid", Measure: "warp", Value: run.Value(value), Unit: "mm", Who: "RA", Time: began.Add(after)}
	}
	step := run.Step{State: run.IsDone, At: began.Add(time.Hour)}
	opened := map[string]run.View{"R1": {Of: "lid", Direction: run.Loosen, Steps: []run.Step{step}}}
	sent := run.Entry{ID: "s", Act: run.SendOut, Step: 3, Joint: "lid", To: "M", Note: "face it", Who: "RA", Time: began.Add(3 * time.Hour)}
	back := run.Entry{ID: "k", Act: run.Back, Of: "s", Note: "faced", Who: "RA", Time: began.Add(5 * time.Hour)}
	for name, test := range map[string]struct {
		entries []run.Entry
		want    AtEnd
	}{
		"before it was opened": {[]run.Entry{warp("a", "0.02", 0)}, AtEnd{Limited: 1, Outdated: 1, Missing: 1}},
		"while it is open":     {[]run.Entry{warp("a", "0.02", 2*time.Hour)}, AtEnd{Limited: 1, Within: 1, Missing: 1}},
		"before the shop":      {[]run.Entry{warp("a", "0.02", 2*time.Hour), sent, back}, AtEnd{Limited: 1, Outdated: 1, Missing: 1}},
		"by the shop":          {[]run.Entry{warp("a", "0.08", 2*time.Hour), sent, warp("b", "0.02", 4*time.Hour), back}, AtEnd{Limited: 1, Within: 1, Missing: 1}},
		"nothing":              {nil, AtEnd{Missing: 2}},
	} {
		if got := shown(w.Replay(test.entries), nil, opened).AtEnd(); got != test.want {
			t.Errorf("%s: %+v, want %+v", name, got, test.want)
		}
	}
}

// A gasket that a run confirmed is there, and in once the run is sealed.
func TestGasketOfARun(t *testing.T) {
	w := rebuild()
	s := w.Start()
	need := run.Need{Kind: run.GasketKind, Gasket: "fibre sheet", Count: 1, Ready: 1}
	on := run.View{Of: "lid", Direction: run.Tighten, Needs: []run.Need{need}}
	if g := shown(s, nil, map[string]run.View{"R1": on}).Supplies[0]; g.Ready != 1 || g.Fitted != nil {
		t.Errorf("confirmed: %+v", g)
	}
	on.Signed = &run.Signature{Mark: run.Mark{By: "KM"}}
	if g := shown(s, nil, map[string]run.View{"R1": on}).Supplies[0]; g.Fitted == nil || g.Fitted.By != "KM" {
		t.Errorf("sealed: %+v", g)
	}
	on.Needs[0].Ready = 0
	if g := shown(s, nil, map[string]run.View{"R1": on}).Supplies[0]; g.Ready != 0 || g.Fitted != nil {
		t.Errorf("not confirmed: %+v", g)
	}
}
