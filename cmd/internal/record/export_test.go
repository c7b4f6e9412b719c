package record

import (
	"encoding/json"
	"strings"
	"testing"
	"time"

	"drawdown/sequence/run"
)

// The table describes each step; a spreadsheet sees no formulas.
func TestCSV(t *testing.T) { onEach(t, testCSV) }

func testCSV(t *testing.T, at Place) {
	s := opened(t, at)
	id := added(t, s, headRun)
	appended(t, s, id, run.Entry{ID: "a", Act: run.Done, Step: 1, Who: "RA", Time: noon})
	appended(t, s, id, run.Entry{ID: "b", Act: run.Measure, Who: "RA", Measure: "gap", Value: "-0.05", Unit: "mm", Note: "=1+1, \"x\"", Place: &run.Place{Fastener: "M3"}, Time: noon.Add(time.Second)})
	made, err := s.Export(id)
	if err != nil {
		t.Fatal(err)
	}
	table, err := made.CSV()
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(table)), "\n")
	want := []string{ // the hash differs from store to store
		"run,n,time,device_time,who,act,step,stage,round,fasteners,do,figure,trouble,place,measure,value,unit,wrench,kind,of,to,second,sheet,fingerprint,source,photo,note,entry,hash,shim,found,decided,decided_by,day,kept",
		"R1,3,2026-11-30T12:00:00Z,,RA,done,1,2,,M3,slacken,,,,,,,,,,,,,,,,,a," + made.Entries[0].Hash + ",,,,,,",
		"R1,4,2026-11-30T12:00:01Z,,RA,measure,,,,,,,,M3,gap,-0.05,mm,,,,,,,,,,\"'=1+1, \"\"x\"\"\",b," + made.Entries[1].Hash + ",,,,,,",
	}
	if len(lines) != len(want) {
		t.Errorf("%d lines, want %d", len(lines), len(want))
	}
	for i, line := range lines {
		if i >= len(want) || line != want[i] {
			t.Errorf("line %d: %s", i, line)
		}
	}
	for cell, want := range map[string]string{"=1": "'=1", "+cmd": "'+cmd", "-x": "'-x", "@x": "'@x", "\tx": "'\tx", "-0.5": "-0.5", "+3": "+3", "a=1": "a=1", "": ""} {
		if got := asText(cell); got != want {
			t.Errorf("%q: %q", cell, got)
		}
	}
}

// The export of a job includes its runs, and the end of the chain of the whole
// store.
func TestExportOfAJob(t *testing.T) { onEach(t, testExportOfAJob) }

func testExportOfAJob(t *testing.T, at Place) {
	s := small(t, at)
	made, err := s.Export("J1")
	if err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(made)
	if err != nil {
		t.Fatal(err)
	}
	var out struct {
		ID, Number string
		Entries    []map[string]any
		Runs       []struct {
			ID, Job string
			Plan    map[string]any
			Entries []map[string]any
		}
		Chain struct {
			Entries int
			Head    string
		}
	}
	if err := json.Unmarshal(text, &out); err != nil {
		t.Fatal(err)
	}
	head := sound(t, s)
	if out.ID != "J1" || out.Number != "P4-0117" || len(out.Runs) != 1 || out.Chain.Head != head.Hash || out.Chain.Entries != int(head.Place) {
		t.Errorf("%+v", out)
	}
	one := out.Runs[0]
	if one.ID != "R1" || one.Job != "J1" || one.Plan["work"] != "loosen" || len(one.Entries) != 2 ||
		one.Entries[1]["act"] != "hand over" || one.Entries[1]["to"] != "MB" || one.Entries[1]["version"] != 2.0 || len(one.Entries[1]["hash"].(string)) != 64 {
		t.Errorf("%+v", one)
	}
}

// A run belongs to the machine and order of its job, unless it names its own.
func TestRunTakesNumberAndOrderOfItsJob(t *testing.T) { onEach(t, testRunTakesNumberAndOrder) }

func testRunTakesNumberAndOrder(t *testing.T, at Place) {
	s := opened(t, at)
	job, err := s.AddJob(NewJob{Of: "p4-engine", Title: "Engine", Number: "P4-0117", Order: "A-40", Who: "JK", Time: noon, Frozen: []byte("{}")})
	if err != nil {
		t.Fatal(err)
	}
	inJob := headRun
	inJob.Job, inJob.Number, inJob.Order = job, "", ""
	if of, err := s.Run(added(t, s, inJob)); err != nil || of.Number != "P4-0117" || of.Order != "A-40" {
		t.Errorf("number %q, order %q, %v", of.Number, of.Order, err)
	}
	inJob.Order = "A-31"
	if of, err := s.Run(added(t, s, inJob)); err != nil || of.Order != "A-31" {
		t.Errorf("order %q, %v", of.Order, err)
	}
}
