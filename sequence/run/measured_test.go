package run_test

import (
	"encoding/json"
	"strings"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/render/words"
	"drawdown/sequence/measure"
	"drawdown/sequence/run"
)

func clearance(station, value, shim string) run.Entry {
	return run.Entry{Act: run.Measure, Measure: "valve clearance", Place: &run.Place{Station: station}, Value: run.Value(value), Unit: "mm", Shim: run.Value(shim)}
}

// A value is kept as it was entered, held against the limits of the file, and
// flagged where it is beyond them. First principles: 2.40 + 0.33 − 0.20 = 2.53, the
// nearest of 2.00 to 3.20 by 0.05 is 2.55, and 2.40 + 0.33 − 2.55 = 0.18.
func TestMeasuredAgainstTheFile(t *testing.T) {
	b := begin(t, run.New(builtin(t, "p4-cam-caps"), run.Loosen, nil))
	b.takes(clearance("T1", "0,33", "2.40"))
	b.takes(clearance("T2", "0.33", "2.40")) // an exhaust valve: 0.25 to 0.35 mm
	b.takes(run.Entry{Act: run.Measure, Measure: "camshaft end float", Value: "0.004", Unit: "in"})
	b.takes(run.Entry{Act: run.Measure, Measure: "depth of a dent", Value: "0.5", Place: &run.Place{Fastener: "C1"}})
	v := b.view()
	in, ex, float, dent := v.Readings[0], v.Readings[1], v.Readings[2], v.Readings[3]
	if in.Value != "0,33" || !in.Outside || in.Verdict != measure.Above || in.Limits != "0.15–0.25 mm" {
		t.Errorf("the inlet valve: %+v", in)
	}
	if s := in.New; s == nil || s.Size.String() != "2.55" || s.Clearance.String() != "0.18" || s.Advice != measure.Change {
		t.Errorf("its shim: %+v", in.New)
	}
	if ex.Outside || ex.New.Advice != measure.Keep {
		t.Errorf("the exhaust valve: %+v %+v", ex, ex.New)
	}
	if float.Verdict != measure.Within || float.Read.String() != "0.1016 mm" {
		t.Errorf("the end float: %+v", float)
	}
	if dent.Limits != "" || dent.Outside {
		t.Errorf("what the file does not have: %+v", dent)
	}
	if len(v.Flags) != 1 || v.Flags[0].Finding.Code != measure.Outside {
		t.Fatalf("%+v", v.Flags)
	}
	if said := words.English().Say(v.Flags[0].Finding); said != "valve clearance at T1: 0.33 mm is outside the limits, 0.15–0.25 mm" {
		t.Error(said)
	}
	same(t, v, b.work.Replay(b.taken).At(b.now))
}

// What cannot be held against the file is refused with what to enter instead.
func TestMeasuredWrongly(t *testing.T) {
	b := begin(t, run.New(builtin(t, "p4-cam-caps"), run.Loosen, nil))
	wrong := clearance("T1", "0.2", "")
	wrong.Unit = "bar"
	for want, e := range map[finding.Code]run.Entry{
		measure.WrongUnit:  wrong,
		measure.WrongPlace: {Act: run.Measure, Measure: "Valve clearance", Place: &run.Place{Fastener: "C1"}, Value: "0.2", Unit: "mm"},
		measure.NoShims:    {Act: run.Measure, Measure: "camshaft end float", Value: "0.1", Shim: "2.40"},
		measure.Unread:     clearance("T1", "2e-1", ""),
		run.NoSuchStation:  clearance("T9", "0.2", ""),
		run.NumberUnread:   clearance("T1", "0.2", "thick"),
		run.NoSuchLabel:    {Act: run.Find, Found: run.Crack, Place: &run.Place{Label: "cyl 9"}},
		run.FieldMissing:   {Act: run.Find, Place: &run.Place{Fastener: "C1"}},
		run.ValueUnknown:   {Act: run.Find, Found: "ugly"},
		run.OnePlace:       {Act: run.Find, Found: run.Crack, Place: &run.Place{Fastener: "C1", Label: "cyl 1"}},
	} {
		if r := b.refuses(e, want); !r.Malformed {
			t.Errorf("%s is no fault of the entry", want)
		}
	}
	b.takes(run.Entry{Act: run.Measure, Measure: "VALVE CLEARANCE", Place: &run.Place{Station: "T1"}, Value: "0.2"})
}

// A finding says what it is, at a bore, a fastener or a point, with no need of a note.
func TestFindingAtAPlace(t *testing.T) {
	b := begin(t, run.New(builtin(t, "p4-head"), run.Loosen, nil))
	b.takes(run.Entry{Act: run.Find, Found: run.BlownThrough, Place: &run.Place{At: &[2]float64{-95, 0}}})
	b.takes(run.Entry{Act: run.Find, Found: run.Scoring, Place: &run.Place{Label: "cyl 2"}, Note: "two lines"})
	v := b.view()
	if v.Findings[0].Found != run.BlownThrough || v.Findings[1].Place.Label != "cyl 2" || v.Findings[1].Found != run.Scoring {
		t.Errorf("%+v", v.Findings)
	}
}

// A run that was frozen before there were values to measure is read as it was.
func TestMeasuredInAnOldRun(t *testing.T) {
	w := run.New(builtin(t, "p4-cam-caps"), run.Loosen, nil)
	text, err := json.Marshal(w)
	if err != nil || !strings.Contains(string(text), `"from":0.15`) {
		t.Fatalf("%v in %.200s", err, text)
	}
	w.Measures, w.Labels = nil, nil
	b := begin(t, w)
	b.takes(clearance("T1", "0.33", ""))
	if r := b.view().Readings[0]; r.Outside || r.Limits != "" {
		t.Errorf("%+v", r)
	}
}
