package record

import (
	"bytes"
	"crypto/sha256"
	"slices"
	"testing"
	"time"

	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// Each column of the table has the field named in its heading.
func TestColumns(t *testing.T) {
	t.Parallel()
	k := Kept{On: "R7", Place: 12, Hash: "h", Entry: run.Entry{
		ID: "id", Time: noon, DeviceTime: "11:59", Who: "RA", Act: run.Measure, Step: 3, Trouble: run.Seized, Place: &run.Place{Station: "T1"},
		Measure: "length", Value: "94.5", Unit: "mm", Wrench: "W7", Kind: "main", Of: "of", To: "KB", Second: "MB",
		Sheet: "card", Fingerprint: "7c1e", Source: "paper", Photo: "p", Note: "n", Day: "2026-03-14", Kept: "bag 7",
		Shim: "2.40", Found: "crack", Decided: run.TurnOn, DecidedBy: "LM",
	}}
	st := run.Step{Stage: 2, Round: 4, IDs: []string{"M1", "M2"}, Do: plan.Advance, Figure: unit.Angle(90).String()}
	want := map[string]string{
		"run": "R7", "n": "12", "time": "2026-11-30T12:00:00Z", "device_time": "11:59", "who": "RA", "act": "measure", "step": "3", "stage": "2", "round": "4",
		"fasteners": "M1 M2", "do": string(plan.Advance), "figure": "90°", "trouble": "seized", "place": "T1", "measure": "length", "value": "94.5", "unit": "mm",
		"wrench": "W7", "kind": "main", "of": "of", "to": "KB", "second": "MB", "sheet": "card", "fingerprint": "7c1e", "source": "paper", "photo": "p",
		"note": "n", "entry": "id", "hash": "h", "shim": "2.40", "found": "crack", "decided": "turn on", "decided_by": "LM", "day": "2026-03-14", "kept": "bag 7",
	}
	for _, c := range columns {
		if got := c.cell(k, st); got != want[c.head] {
			t.Errorf("%s: %q, want %q", c.head, got, want[c.head])
		}
	}
	if len(columns) != len(want) {
		t.Errorf("%d columns, want %d", len(columns), len(want))
	}
	for want, place := range map[string]*run.Place{"": nil, "M3": {Fastener: "M3"}, "T1": {Station: "T1"}, "cyl 1": {Label: "cyl 1"}, "1.5 -20": {At: &[2]float64{1.5, -20}}} {
		if got := placeText(place); got != want {
			t.Errorf("%+v: %q", place, got)
		}
	}
}

// A body is either a start or an entry; each has the values of its columns.
func TestBodies(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]bool{
		`{"n":1,"start":{"kind":"run"}}`:               false,
		`{"n":1,"entry":{"act":"done"}}`:               false,
		`{"n":1}`:                                      true,
		`{"start":{"kind":"run"},"entry":{"act":"x"}}`: true,
		`{"n":"1","entry":{"act":"done"}}`:             true,
		`{"n":1,"entry":{"act":"done"}`:                true,
	} {
		if _, err := readBody([]byte(text)); (err != nil) != want {
			t.Errorf("%s: %v", text, err)
		}
	}
	begun := body{Start: &start{Who: "RA", Time: noon, Frozen: "f", Files: map[string]string{"a.yaml": "s"}}}
	done := body{Entry: &run.Entry{ID: "e", Act: run.HandOver, Who: "RA", To: "KB", Second: "MB", DecidedBy: "LM", Wrench: "W7", Photo: "p", Time: noon.Add(time.Hour)}}
	names := func(b body) (list []string) {
		for _, name := range b.names() {
			list = append(list, *name)
		}
		return list
	}
	if begun.id() != "" || begun.act() != startAct || begun.wrench() != "" || !begun.time().Equal(noon) || !slices.Equal(names(begun), []string{"RA"}) {
		t.Errorf("a start: %q, %q, %q, %v, %q", begun.id(), begun.act(), begun.wrench(), begun.time(), names(begun))
	}
	if done.id() != "e" || done.act() != "hand over" || done.wrench() != "W7" || !done.time().Equal(noon.Add(time.Hour)) || !slices.Equal(names(done), []string{"RA", "KB", "MB", "LM"}) {
		t.Errorf("an entry: %q, %q, %q, %v, %q", done.id(), done.act(), done.wrench(), done.time(), names(done))
	}
	if got := slices.Sorted(slices.Values(begun.sums())); !slices.Equal(got, []string{"f", "s"}) {
		t.Errorf("files of a start: %q", got)
	}
	if got := done.sums(); !slices.Equal(got, []string{"p"}) {
		t.Errorf("photos of an entry: %q", got)
	}
	if got := append((body{Start: &start{}}).sums(), (body{Entry: &run.Entry{}}).sums()...); len(got) != 0 {
		t.Errorf("of nothing: %q", got)
	}
	sent, err := done.content()
	again := done
	later := *done.Entry
	later.Time, later.WrenchFacts = noon, &run.WrenchFacts{}
	again.Entry = &later
	resent, errAgain := again.content()
	if err != nil || errAgain != nil || string(sent) != string(resent) {
		t.Errorf("what the server adds counts as content: %s, %s", sent, resent)
	}
}

// A link of the chain covers everything before it: SHA-256 of the previous link
// and the body.
func TestLink(t *testing.T) {
	t.Parallel()
	want := sha256.Sum256([]byte("beforetext"))
	if got := link([]byte("before"), []byte("text")); !bytes.Equal(got, want[:]) {
		t.Errorf("%x", got)
	}
}

// A day ends a millisecond before the next one: the resolution of the record.
func TestEndOfDay(t *testing.T) {
	t.Parallel()
	day := time.Date(2026, 2, 28, 0, 0, 0, 0, time.UTC)
	if got := EndOfDay(day); !got.Equal(time.Date(2026, 2, 28, 23, 59, 59, 999_000_000, time.UTC)) {
		t.Errorf("%v", got)
	}
	if got := EndOfDay(time.Time{}); !got.IsZero() {
		t.Errorf("of no day: %v", got)
	}
}

// The kind of a record follows from the letter before its number.
func TestKindOf(t *testing.T) {
	t.Parallel()
	for id, want := range map[string]Kind{"R12": RunKind, "J3": JobKind, "X1": "", "": "", "12": ""} {
		kind, err := KindOf(id)
		if kind != want || (err != nil) != (want == "") {
			t.Errorf("%q: %q, %v", id, kind, err)
		}
	}
}
