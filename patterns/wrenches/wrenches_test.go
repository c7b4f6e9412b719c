package wrenches

import (
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry/unit"
	"drawdown/patterns/patterntest"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/sequence/tension/wrench"
)

func readWrenches(text string) ([]wrench.Wrench, problem.List) {
	return Read(source.Source{File: "text", Data: []byte(text)}, time.Time{})
}

// First principles: the text says what the figures are; 1 in = 25.4 mm.
func TestWrenchesAreRead(t *testing.T) {
	list, problems := readWrenches(`drawdown: 1
wrenches:
  - {name: small, from: 5 N·m, to: 60 N·m, division: 0.5 N·m}
  - {name: long, from: 60 lbf·ft, to: 250 lbf·ft, length: 25 in}
  - {name: plain, to: "12,5 Nm", number: 7, calibrated: 2026-03-01}
`)
	want := []wrench.Wrench{
		{Name: "small", Min: 5, Max: 60, Division: 0.5},
		{Name: "long", Min: 60, Max: 250, Unit: unit.PoundForceFoot, Length: 635},
		{Name: "plain", Max: 12.5, Number: "7", Calibrated: "2026-03-01"},
	}
	if diff := cmp.Diff(want, list); len(problems) > 0 || diff != "" {
		t.Errorf("%s\n%s", said(problems).Detail(), diff)
	}
}

func TestWrenchesThatAreNone(t *testing.T) {
	for text, want := range map[string]string{
		"":                "text:1:1: error: the file is empty; write for example wrenches: [",
		"wrenches: []":    "text:1:11: error: wrenches is an empty list",
		"wrenches: small": "text:1:11: error: wrenches is a list",
		"wrenchs: []":     "text:1:1: error: unknown key \"wrenchs\" in the list of wrenches (did you mean wrenches?)",
		"[{name: a}]":     "text:1:1: error: the list of wrenches is a map of keys",
		"a: b: c":         "text:1:",
		"wrenches: [a]":   "text:1:12: error: a wrench is a map of keys",
		"drawdown: 2\nwrenches: [{name: a, to: 5 N·m}]":                                "text:1:11: error: drawdown: \"2\" is a version",
		"wrenches: [{to: 5 N·m}]":                                                      "text:1:12: error: a wrench needs name",
		"wrenches: [{name: a}]":                                                        "text:1:12: error: a wrench needs to, for example to: 60 N·m",
		"wrenches: [{name: a, to: 60}]":                                                "text:1:26: error: to: \"60\": the unit is missing",
		"wrenches: [{name: a, to: -5 N·m}]":                                            "text:1:26: error: to: \"-5 N·m\" is too small; allowed: 0.0001 N·m",
		"wrenches: [{name: a, from: 70 N·m, to: 60 N·m}]":                              "text:1:28: error: from: \"70 N·m\" cannot be the start of the scale; allowed: below the end of the scale, 60 N·m",
		"wrenches: [{name: a, from: -1 N·m, to: 60 N·m}]":                              "text:1:28: error: from: \"-1 N·m\" is below 0; allowed: 0 or more",
		"wrenches: [{name: a, from: 5 lbf·ft, to: 60 N·m}]":                            "text:1:28: error: from: \"5 lbf·ft\" is in another unit than the end of the scale; allowed: figures in N·m",
		"wrenches: [{name: a, to: 60 N·m, division: 0 N·m}]":                           "text:1:44: error: division: \"0 N·m\" does not divide the scale",
		"wrenches: [{name: a, to: 60 N·m, division: 40 N·m}]":                          "half of the end",
		"wrenches: [{name: a, to: 60 N·m, length: 0 mm}]":                              "text:1:42: error: length: \"0 mm\" is too small",
		"wrenches: [{name: a, to: 60 N·m}, {name: a, to: 9 N·m}]":                      "text:1:35: error: there are two wrenches \"a\"",
		"wrenches: [{name: a, to: 6 N·m, number: 7}, {name: b, to: 9 N·m, number: 7}]": "text:1:45: error: there are two wrenches with the number \"7\"",
		"wrenches: [{name: a, to: 60 N·m, calibrated: March}]":                         "\"March\" is not a date",
		"wrenches: [{name: a, to: 60 N·m, calibrated: 1800-01-01}]":                    "allowed: from 1900-01-01",
		"wrenches: [{name: a, to: 60 N·m, from: }]":                                    "from has no value",
		"wrenches: [{name: a, to: 60 N·m}]\n---\nwrenches: []":                         "a second document starts here",
		"wrenches: [{name: a, to: 60 N·m}]\x00":                                        "NUL",
		"wrenches: [" + strings.Repeat("{name: a, to: 6 N·m},", 1001) + "]":            "the limit of 1000",
		"wrenches: &a [*a]":                                                            "is inside",
		"wrenches: [{name: a, to: 1e308 kgf·m}]":                                       "too large",
		"wrenches: [{name: " + strings.Repeat("a", 100) + ", to: 60 N·m}]":             "at most 60",
	} {
		list, problems := readWrenches(text)
		if !problems.Stops() || list != nil || !strings.Contains(said(problems).Error(), want) {
			t.Errorf("%.80q: %v, problems\n%.400s\nwant %q", text, list, said(problems).Error(), want)
		}
		patterntest.Within(t, text, problems)
	}
}

func FuzzReadWrenches(f *testing.F) {
	f.Add([]byte("wrenches: [{name: small, from: 5 N·m, to: 60 N·m, division: 0.5 N·m, length: 300 mm}]"))
	f.Add([]byte("wrenches: [{name: a, from: , to: &a 60 lbf·ft, division: *a}]"))
	f.Fuzz(func(t *testing.T, data []byte) {
		list, problems := Read(source.Source{File: "text", Data: data}, time.Time{})
		patterntest.Within(t, string(data), problems)
		if problems.Stops() {
			return
		}
		if len(list) == 0 {
			t.Error("no problem, and yet no wrench")
		}
		for _, w := range list {
			if !(w.Name != "" && w.Min >= 0 && w.Max > w.Min && w.Division >= 0 && w.Division <= w.Max/2 && w.Length >= 0) {
				t.Errorf("no problem, and yet %+v", w)
			}
		}
	})
}
