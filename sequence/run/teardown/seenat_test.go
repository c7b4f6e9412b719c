package teardown

import (
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/measure"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/run"
)

func figure(s string) *unit.Decimal {
	d, err := unit.ParseDecimal(s)
	if err != nil {
		panic(err)
	}
	return &d
}

// valves is a machine with two joints: both have a fastener A1, one has
// stations with shims, both measure their warp.
func valves() Work {
	lid, caps := lid(), lid()
	caps.Name = "caps"
	caps.Joint.Stations = []geometry.Station{{ID: "T1"}}
	shims := &measure.Shims{From: *figure("2.00"), To: *figure("3.20"), Step: *figure("0.05")}
	warp := measure.Value{What: "warp", Unit: "mm", To: figure("0.05")}
	caps.Measures = []measure.Value{{What: "clearance", Unit: "mm", From: figure("0.15"), To: figure("0.25"), At: []measure.Place{{Station: "T1"}}, Shims: shims}, warp}
	lid.Measures = []measure.Value{warp}
	o := overhaul.Overhaul{
		Tasks:    []overhaul.Task{{Joint: &lid}, {Joint: &caps}},
		Measures: []measure.Value{{What: "compression", Unit: "bar", From: figure("11.0"), At: []measure.Place{{Label: "cyl 1"}}}},
	}
	return OfMachine("pump", o, nil)
}

func reading(what, value string, at *run.Place) run.Entry {
	e := entry(what+value, run.Measure, 0, "")
	e.Measure, e.Value, e.Place = what, run.Value(value), at
	return e
}

// Values on a job are compared with the limits of the machine or the joint.
// First principles: 2.40 + 0.10 − 0.20 = 2.30.
func TestMeasuredOnAJob(t *testing.T) {
	s := valves().Start()
	low := reading("clearance", "0.10", &run.Place{Station: "T1"})
	low.Shim = "2.40"
	warped := reading("warp", "0.08", nil)
	warped.Joint = "lid"
	for _, e := range []run.Entry{low, reading("compression", "10.9", &run.Place{Label: "cyl 1"}), warped, reading("weight", "24", nil)} {
		if r := s.Take(e, nil); r != nil {
			t.Fatalf("%s: %v", e.Measure, r)
		}
	}
	v := s.View(nil, nil)
	if m := v.Measured[0]; m.Verdict != measure.Below || m.New.Size.String() != "2.30" || m.Reading().Fitted != "2.40" {
		t.Errorf("%+v %+v", m, m.New)
	}
	if m := v.Measured[1]; m.Verdict != measure.Below || m.Limits != "≥ 11.0 bar" {
		t.Errorf("%+v", m)
	}
	if m := v.Measured[2]; m.Verdict != measure.Above || m.Joint != "lid" {
		t.Errorf("%+v", m)
	}
	if m := v.Measured[3]; m.Limits != "" {
		t.Errorf("%+v", m)
	}
}

// A place that two joints have needs the name of the joint; a place that none
// has is refused.
func TestWhereOnAJob(t *testing.T) {
	for name, tt := range map[string]struct {
		e    run.Entry
		want finding.Code
	}{
		"two joints have the fastener": {run.Entry{Act: run.Find, Found: run.Crack, Place: &run.Place{Fastener: "A1"}}, WhichJoint},
		"a point of which joint":       {run.Entry{Act: run.Find, Found: run.Crack, Place: &run.Place{At: &[2]float64{1, 2}}}, WhichJoint},
		"one joint has the station":    {run.Entry{Act: run.Find, Found: run.Crack, Place: &run.Place{Station: "T1"}}, ""},
		"the joint is named":           {run.Entry{Act: run.Find, Found: run.Crack, Joint: "lid", Place: &run.Place{Fastener: "A1"}}, ""},
		"no place":                     {run.Entry{Act: run.Find, Found: run.Crack}, ""},
		"no joint has it":              {run.Entry{Act: run.Find, Found: run.Crack, Place: &run.Place{Station: "T9"}}, NoSuchPlace},
		"the other joint has it":       {run.Entry{Act: run.Find, Found: run.Crack, Joint: "lid", Place: &run.Place{Station: "T1"}}, NoSuchPlace},
		"no such joint":                {run.Entry{Act: run.Find, Found: run.Crack, Joint: "sump"}, NoSuchJoint},
		"two joints measure it":        {reading("warp", "0.01", nil), WhichJoint},
		"wrong place":                  {reading("compression", "12", &run.Place{Label: "cyl 7"}), measure.WrongPlace},
		"wrong unit":                   {run.Entry{Act: run.Measure, Measure: "clearance", Value: "1", Unit: "bar", Place: &run.Place{Station: "T1"}}, measure.WrongUnit},
	} {
		tt.e.ID, tt.e.Who = name, "RA"
		r := valves().Start().Take(tt.e, nil)
		switch {
		case tt.want == "" && r != nil:
			t.Errorf("%s: %v", name, r)
		case tt.want != "" && (r == nil || r.Finding.Code != tt.want || !r.Malformed):
			t.Errorf("%s: %v, want %s", name, r, tt.want)
		}
	}
}
