package run_test

import (
	"encoding/json"
	"strings"
	"testing"
	"time"

	"drawdown/geometry/finding"
	"drawdown/sequence/run"
)

func TestReadEntry(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		text string
		want run.Entry
	}{
		{`{"entry":"a1","act":"done","step":12,"who":"RA","device_time":"2026-03-14T08:00:00Z"}`,
			run.Entry{ID: "a1", Act: run.Done, Step: 12, Who: "RA", DeviceTime: "2026-03-14T08:00:00Z"}},
		{`{"entry":"a1","do":"done","step":12,"who":"RA"}`, run.Entry{ID: "a1", Act: run.Done, Step: 12, Who: "RA"}},
		{`{"entry":"a1","act":"measure","who":"RA","measure":"length","value":20.50,"unit":"mm"}`,
			run.Entry{ID: "a1", Act: run.Measure, Who: "RA", Measure: "length", Value: "20.50", Unit: "mm"}},
		{`{"entry":"a1","act":"measure","who":"RA","step":1,"value":"20,5"}`,
			run.Entry{ID: "a1", Act: run.Measure, Who: "RA", Step: 1, Value: "20,5"}},
		{`{"entry":"a1","act":"finding","who":"RA","note":"crack","place":{"at":[1.5,-2]}}`,
			run.Entry{ID: "a1", Act: run.Find, Who: "RA", Note: "crack", Place: &run.Place{At: &[2]float64{1.5, -2}}}},
	} {
		e, r := run.ReadEntry([]byte(c.text))
		if r != nil {
			t.Errorf("%s: %s", c.text, r)
		}
		same(t, c.want, e)
	}
}

func TestUnreadableEntries(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]finding.Code{
		``:                                    run.EntryUnreadable,
		`null`:                                run.EntryUnreadable,
		`[]`:                                  run.EntryUnreadable,
		`{"entry":"a"`:                        run.EntryUnreadable,
		`{"steps":1}`:                         run.FieldUnknown,
		`{"time":"2026-03-14T08:00:00Z"}`:     run.FieldUnknown, // the server's own
		`{"wrench_facts":{"listed":true}}`:    run.FieldUnknown,
		`{"act":"done","do":"undo"}`:          run.ValueUnknown,
		`{"step":"1"}`:                        run.FieldType,
		`{"step":1.5}`:                        run.FieldType,
		`{"who":1}`:                           run.FieldType,
		`{"place":"B1"}`:                      run.FieldType,
		`{"place":{"fastener":"B1","row":1}}`: run.FieldUnknown,
		`{"place":{"at":[1]}}`:                run.FieldType,
		`{"place":{"at":[1,2,3]}}`:            run.FieldType,
		`{"value":true}`:                      run.FieldType,
		`{"value":{"n":1}}`:                   run.FieldType,
	} {
		e, r := run.ReadEntry([]byte(text))
		if r == nil || r.Finding.Code != want || !r.Malformed {
			t.Errorf("%s: %v, %+v, want %q", text, r, e, want)
		}
	}
}

func TestMalformedEntries(t *testing.T) {
	t.Parallel()
	long := strings.Repeat("x", 2001)
	for name, c := range map[string]struct {
		entry run.Entry
		want  finding.Code
	}{
		"no act":           {run.Entry{Who: "RA"}, run.FieldMissing},
		"unknown act":      {run.Entry{Act: "did"}, run.ValueUnknown},
		"act of a job":     {run.Entry{Act: run.Adopt}, run.OfAJob},
		"nobody":           {run.Entry{Act: run.Done, Step: 1, Who: "  "}, run.FieldMissing},
		"no step":          {run.Entry{Act: run.Done}, run.FieldMissing},
		"step 0 below":     {run.Entry{Act: run.Done, Step: -1}, run.NoSuchStep},
		"step 99":          {run.Entry{Act: run.Done, Step: 99}, run.NoSuchStep},
		"undo what":        {run.Entry{Act: run.Undo}, run.FieldMissing},
		"trouble nowhere":  {run.Entry{Act: run.Report, Trouble: run.Broken}, run.FieldMissing},
		"which trouble":    {run.Entry{Act: run.Report, Step: 1}, run.FieldMissing},
		"unknown trouble":  {run.Entry{Act: run.Report, Step: 1, Trouble: "bent"}, run.ValueUnknown},
		"settled how":      {run.Entry{Act: run.Settle, Of: "e1"}, run.FieldMissing},
		"left out why":     {run.Entry{Act: run.LeaveOut, Step: 1, Note: "\n"}, run.FieldMissing},
		"void why":         {run.Entry{Act: run.Void}, run.FieldMissing},
		"corrected how":    {run.Entry{Act: run.Correct, Of: "e1"}, run.FieldMissing},
		"empty note":       {run.Entry{Act: run.Remark}, run.FieldMissing},
		"empty finding":    {run.Entry{Act: run.Find, Place: &run.Place{Fastener: "B1"}}, run.FieldMissing},
		"nothing read":     {run.Entry{Act: run.Measure, Measure: "length"}, run.FieldMissing},
		"read of what":     {run.Entry{Act: run.Measure, Value: "2"}, run.FieldMissing},
		"no number":        {run.Entry{Act: run.Measure, Measure: "length", Value: "long"}, run.NumberUnread},
		"infinite":         {run.Entry{Act: run.Measure, Measure: "length", Value: "Inf"}, run.NumberUnread},
		"printed what":     {run.Entry{Act: run.Printed, Fingerprint: "f"}, run.FieldMissing},
		"replace what":     {run.Entry{Act: run.Replace, Place: &run.Place{Station: "T1"}}, run.FieldMissing},
		"replace a wait":   {run.Entry{Act: run.Replace, Step: 13}, run.StepNeedsName},
		"another fastener": {run.Entry{Act: run.Report, Trouble: run.Broken, Step: 1, Place: &run.Place{Fastener: "B2"}}, run.StepNeedsName},
		"unknown fastener": {run.Entry{Act: run.Replace, Place: &run.Place{Fastener: "M9"}}, run.NoSuchFastener},
		"unknown station":  {run.Entry{Act: run.Find, Note: "n", Place: &run.Place{Station: "T9"}}, run.NoSuchStation},
		"unknown kind":     {run.Entry{Act: run.Ready, Kind: "cap"}, run.NoSuchKind},
		"no place":         {run.Entry{Act: run.Find, Note: "n", Place: &run.Place{}}, run.OnePlace},
		"two places":       {run.Entry{Act: run.Find, Note: "n", Place: &run.Place{Fastener: "B1", Station: "T1"}}, run.OnePlace},
		"other source":     {run.Entry{Act: run.Done, Step: 1, Source: "memory"}, run.ValueUnknown},
		"long note":        {run.Entry{Act: run.Remark, Note: long}, run.TextTooLong},
		"long name":        {run.Entry{Act: run.Done, Step: 1, Who: long[:61]}, run.TextTooLong},
		"long id":          {run.Entry{ID: long[:101], Act: run.Done, Step: 1}, run.TextTooLong},
		"control in name":  {run.Entry{Act: run.Done, Step: 1, Who: "R\x00A"}, run.FieldType},
		"no text":          {run.Entry{Act: run.Remark, Note: "\xff"}, run.FieldType},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			b := tightening(t)
			e := c.entry
			e.ID = map[bool]string{true: "x", false: e.ID}[e.ID == ""]
			if e.Who == "" {
				e.Who = "RA"
			}
			if r := b.refuses(e, c.want); !r.Malformed {
				t.Errorf("%s counts as refused by a rule", r)
			}
		})
	}
	b := tightening(t)
	if r := b.state.Take(run.Entry{Act: run.Done, Step: 1, Who: "RA"}); r == nil || r.Finding.Code != run.FieldMissing {
		t.Errorf("without an id: %v", r)
	}
}

// Each text of an entry has the room that it is given, and no more: a name of 60
// signs, a note of 2,000 (design of the entries).
func TestRoomOfTexts(t *testing.T) {
	t.Parallel()
	long := func(n int) string { return strings.Repeat("ä", n) }
	for name, c := range map[string]struct {
		most int
		fill func(e *run.Entry, text string)
	}{
		"entry":       {100, func(e *run.Entry, text string) { e.ID = text }},
		"who":         {60, func(e *run.Entry, text string) { e.Who = text }},
		"to":          {60, func(e *run.Entry, text string) { e.To = text }},
		"second":      {60, func(e *run.Entry, text string) { e.Second = text }},
		"decided by":  {60, func(e *run.Entry, text string) { e.DecidedBy = text }},
		"note":        {2000, func(e *run.Entry, text string) { e.Note = text }},
		"of":          {100, func(e *run.Entry, text string) { e.Of = text }},
		"device time": {60, func(e *run.Entry, text string) { e.DeviceTime = text }},
		"measure":     {200, func(e *run.Entry, text string) { e.Measure = text }},
		"unit":        {60, func(e *run.Entry, text string) { e.Unit = text }},
		"photo":       {200, func(e *run.Entry, text string) { e.Photo = text }},
		"wrench":      {60, func(e *run.Entry, text string) { e.Wrench = text }},
		"sheet":       {60, func(e *run.Entry, text string) { e.Sheet = text }},
		"fingerprint": {60, func(e *run.Entry, text string) { e.Fingerprint = text }},
	} {
		for more, want := range map[int]bool{0: false, 1: true} {
			e := run.Entry{ID: "x", Act: run.Remark, Who: "RA", Note: "n"}
			c.fill(&e, long(c.most+more))
			r := tightening(t).try(e)
			if tooLong := r != nil && r.Finding.Code == run.TextTooLong; tooLong != want {
				t.Errorf("%s of %d signs: %v", name, c.most+more, r)
			}
		}
	}
}

// Every act but those that need nothing names what it lacks, and acts of a run
// are all known.
func TestEveryActIsKnown(t *testing.T) {
	t.Parallel()
	for _, act := range run.Acts {
		b := tightening(t)
		e := run.Entry{
			Act: act, Step: 1, Of: "none", Note: "n", Trouble: run.Seized, Value: "1", Sheet: "card", Fingerprint: "f",
		}
		if r := b.try(e); r != nil && r.Malformed {
			t.Errorf("%s: %s", act, r)
		}
	}
}

// Entries survive JSON, the server's own fields too.
func TestEntryRoundTrip(t *testing.T) {
	t.Parallel()
	e := run.Entry{
		ID: "a1", Act: run.Done, Step: 12, Who: "RA", Time: start, DeviceTime: "08:00", Of: "a0", Trouble: run.Broken,
		Place: &run.Place{At: &[2]float64{1, 2}}, Measure: "m", Value: "20.50", Unit: "N·m", Photo: "p", Wrench: "W7", Note: "n",
		Source: run.OnPaper, Kind: "bolt", To: "KB", Second: "LM", Decided: run.TurnOn, DecidedBy: "LM", Sheet: "card", Fingerprint: "f",
		WrenchFacts: &run.WrenchFacts{Listed: true, FromNm: 8, ToNm: 60, Tolerance: 0.04, Calibrated: "2026-01-02"},
	}
	for _, value := range []run.Value{"20.50", "20,5", "+3", "007", ".5", "1e3", "-0"} {
		e.Value = value
		text, err := json.Marshal(e)
		if err != nil {
			t.Fatal(err)
		}
		var back run.Entry
		if err := json.Unmarshal(text, &back); err != nil {
			t.Fatal(err)
		}
		same(t, e, back)
	}
}

func TestWrenches(t *testing.T) {
	t.Parallel()
	facts := func(calibrated string) *run.WrenchFacts {
		return &run.WrenchFacts{Listed: true, FromNm: 20, ToNm: 60, Calibrated: calibrated}
	}
	for name, c := range map[string]struct {
		facts *run.WrenchFacts
		want  finding.Code
	}{
		"in date":     {facts("2025-03-14"), ""}, // 12 months to the day
		"out of date": {facts("2025-03-13"), run.WrenchOutOfDate},
		"no date":     {facts(""), ""},
		"not listed":  {&run.WrenchFacts{}, run.WrenchUnknown},
		"no list":     {nil, run.WrenchUnknown},
	} {
		b := tightening(t)
		b.takes(run.Entry{Act: run.Ready})
		for step := 1; step <= 3; step++ {
			b.takes(run.Entry{Act: run.Done, Step: step, Wrench: "W7", WrenchFacts: c.facts})
		}
		flags := b.view().Flags
		if want := map[bool]int{true: 0, false: 1}[c.want == ""]; len(flags) != want {
			t.Errorf("%s: flagged %+v, want %d", name, flags, want)
		} else if want == 1 && (flags[0].Finding.Code != c.want || flags[0].Step != 1) {
			t.Errorf("%s: flagged %+v, want %q", name, flags[0], c.want)
		}
	}
	small := &run.WrenchFacts{Listed: true, FromNm: 2, ToNm: 19.9}
	large := &run.WrenchFacts{Listed: true, FromNm: 20.1, ToNm: 100}
	fits := &run.WrenchFacts{Listed: true, FromNm: 20, ToNm: 20}
	b := tightening(t)
	for _, f := range []*run.WrenchFacts{small, large} {
		b.refuses(run.Entry{Act: run.Done, Step: 1, Wrench: "W7", WrenchFacts: f}, run.OutOfRange)
	}
	b.takes(run.Entry{Act: run.Done, Step: 1, Wrench: "W7", WrenchFacts: fits})
}

// The marks of an angle: where it starts, where it ends, what is turned so far.
func TestMarksOfAngles(t *testing.T) {
	t.Parallel()
	b := begin(t, run.New(builtin(t, "p4-head"), run.Tighten, nil))
	var of []run.Step
	for _, s := range b.view().Steps {
		if s.ID == "M3" {
			of = append(of, s)
		}
	}
	// 20 N·m, 40 N·m, 90°, 90°: works manual of the invented P4 head
	if of[2].FromDeg != 0 || of[2].ToDeg != 90 || of[3].FromDeg != 90 || of[3].ToDeg != 180 || of[2].Turn != run.Clockwise {
		t.Fatalf("marks %+v", of)
	}
	for b.next() != of[3].Number {
		b.doNext()
	}
	if got := b.step(of[3].Number); got.TotalDeg != 90 {
		t.Errorf("turned so far %g°, want 90°", got.TotalDeg)
	}
	b.doNext()
	if got := b.step(of[3].Number); got.TotalDeg != 180 {
		t.Errorf("turned so far %g°, want 180°", got.TotalDeg)
	}
	loose := loosening(t).view().Steps[0]
	if loose.Turn != run.Anticlockwise || loose.ToDeg != 90 {
		t.Errorf("loosening: %+v", loose)
	}
}

// A torque between two angles starts the marks anew.
func TestMarksAfterATorque(t *testing.T) {
	t.Parallel()
	text := strings.Replace(made, "{wait: 10 min}", "{of: [bolt], torque: 60 N·m}\n    - {of: [bolt], angle: 30°}", 1)
	b := begin(t, run.New(planText(t, text), run.Tighten, nil))
	first, torque, second := b.step(9), b.step(13), b.step(17)
	if first.FromDeg != 0 || first.ToDeg != 90 || torque.FromDeg != 0 || torque.ToDeg != 0 || second.FromDeg != 0 || second.ToDeg != 30 {
		t.Errorf("90°, a torque, 30°: %+v, %+v, %+v", first, torque, second)
	}
}

// A back off turns the other way and starts the marks anew.
func TestMarksOfBackingOff(t *testing.T) {
	t.Parallel()
	text := strings.Replace(made, "{of: [bolt], torque: 40 N·m}", "{of: [bolt], back off: 180°}", 1)
	b := begin(t, run.New(planText(t, text), run.Tighten, nil))
	back, angle := b.step(5), b.step(9)
	if back.Turn != run.Anticlockwise || back.ToDeg != 180 || angle.FromDeg != 0 || angle.ToDeg != 90 || angle.Turn != run.Clockwise {
		t.Errorf("back off %+v, then %+v", back, angle)
	}
	b.doneUpTo(9)
	if got := b.step(9).TotalDeg; got != 90 {
		t.Errorf("turned so far %g°, want 90°", got)
	}
}

func TestHandOver(t *testing.T) {
	t.Parallel()
	b := tightening(t, finding.Warned(run.ReadinessOpen, nil))
	b.takes(run.Entry{Act: run.Accept})
	b.doneUpTo(6)
	broken := b.takes(trouble(7, run.Broken))
	b.takes(run.Entry{Act: run.HandOver, To: "KB", Note: "M10 is ordered"})
	v := b.view()
	if len(v.HandOvers) != 1 {
		t.Fatalf("%d hand overs", len(v.HandOvers))
	}
	h := v.HandOvers[0]
	if h.By != "RA" || h.Next != "KB" || h.Note != "M10 is ordered" {
		t.Errorf("%+v", h.Mark)
	}
	same(t, run.Progress{Steps: 6, Stages: []int{1}}, h.Done)
	same(t, run.Progress{Steps: 9, Fasteners: 6, Stages: []int{2, 3, 4, 5}}, h.Open)
	if len(h.Found) != 1 || h.Found[0].Trouble != run.Broken {
		t.Errorf("found %+v", h.Found)
	}
	waiting := map[string]bool{}
	for _, w := range h.Waiting {
		switch {
		case w.Need != nil:
			waiting[w.Need.Kind+w.Need.ID] = true
		case w.Settle != "":
			waiting[w.Settle] = true
		default:
			t.Errorf("waiting for %+v", w)
		}
	}
	same(t, map[string]bool{"bolt": true, "boltB2": true, broken: true}, waiting)

	b.takes(run.Entry{Act: run.Settle, Of: broken, Note: "new one fitted"})
	b.takes(run.Entry{Act: run.Ready})
	for b.next() != 13 {
		b.doNext()
	}
	b.takes(run.Entry{Act: run.Begin, Step: 13})
	if w := b.view().Now.Waiting; len(w) != 1 || w[0].Step != 13 || !w[0].Ends.Equal(b.now.Add(10*time.Minute)) {
		t.Errorf("waiting for %+v", w)
	}
	same(t, h, b.view().HandOvers[0]) // as it was
	b.now = b.now.Add(10 * time.Minute)
	b.takes(done(14))
	b.takes(run.Entry{Act: run.HandOver, To: "LM"})
	last := b.view().HandOvers[1]
	same(t, run.Progress{Steps: 14, Fasteners: 5, Stages: []int{1, 2, 3, 4}}, last.Done)
	same(t, run.Progress{Steps: 1, Fasteners: 1, Stages: []int{5}}, last.Open)
}

func TestPrintsAndNotes(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	b.takes(run.Entry{Act: run.Printed, Sheet: "card", Fingerprint: b.work.Fingerprint})
	b.takes(run.Entry{Act: run.Printed, Sheet: "tray", Fingerprint: "0000 0000"})
	found := b.takes(run.Entry{Act: run.Find, Note: "scored", Place: &run.Place{Station: "T1"}, Photo: "ab"})
	b.takes(run.Entry{Act: run.Remark, Note: "the lead knows", Step: 3})
	v := b.view()
	if v.Prints[0].OutOfDate || !v.Prints[1].OutOfDate || v.Prints[1].Sheet != "tray" {
		t.Errorf("prints %+v", v.Prints)
	}
	if v.Findings[0].Place.Station != "T1" || v.Findings[0].Photo != "ab" || v.Notes[0].Step != 3 {
		t.Errorf("findings %+v, notes %+v", v.Findings, v.Notes)
	}
	b.takes(run.Entry{Act: run.Undo, Of: found})
	if got := b.view().Findings; len(got) != 0 {
		t.Errorf("findings %+v after the undo", got)
	}
}

// Whatever a client sends, it is read or refused as malformed, and judged without
// a panic.
func FuzzEntry(f *testing.F) {
	for _, text := range []string{
		`{"entry":"a","act":"done","step":1,"who":"RA"}`, `{"entry":"a","do":"trouble","step":1,"who":"RA","trouble":"broken","place":{"fastener":"B1"}}`,
		`{"entry":"a","act":"measure","step":1,"who":"RA","value":1e999}`, `{"entry":"a","act":"replace","who":"RA","place":{"fastener":"B1","at":[1,2]}}`,
		`{"place":{"at":null},"value":null,"act":null}`, `{"entry":"a","act":"finding","who":"RA","note":"n","place":{"at":[1,2]}}`,
	} {
		f.Add([]byte(text))
	}
	w := run.New(planText(f, made), run.Tighten, nil)
	f.Fuzz(func(t *testing.T, text []byte) {
		e, r := run.ReadEntry(text)
		if r != nil {
			if !r.Malformed {
				t.Errorf("%s", r)
			}
			return
		}
		state := w.Start()
		before := state.At(start)
		if r := state.Take(e); r != nil {
			same(t, before, state.At(start))
		} else if state.Version() != 1 {
			t.Errorf("taken, version %d", state.Version())
		}
		state.At(start)
	})
}

// A value stays a number in JSON where it was one.
func TestValueInJSON(t *testing.T) {
	t.Parallel()
	for value, want := range map[run.Value]string{"20.50": `20.50`, "-1e3": `-1e3`, "20,5": `"20,5"`, "007": `"007"`, "null": `"null"`, "true": `"true"`} {
		got, err := json.Marshal(value)
		if err != nil || string(got) != want {
			t.Errorf("%q: %s, %v, want %s", string(value), got, err, want)
		}
	}
}

// Lists go by the time of their entries, also where the clock was set back.
func TestListsGoByTime(t *testing.T) {
	t.Parallel()
	b := tightening(t)
	b.takes(run.Entry{Act: run.Remark, Note: "second"})
	b.now = start.Add(-time.Hour)
	b.takes(run.Entry{Act: run.Remark, Note: "first"})
	if got := b.view().Notes; got[0].Note != "first" || got[1].Note != "second" {
		t.Errorf("%+v", got)
	}
}
