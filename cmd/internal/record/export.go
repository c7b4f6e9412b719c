package record

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"strconv"
	"strings"
	"time"

	"drawdown/geometry/finding"
	"drawdown/sequence/run"
)

// Export is the whole record of a run or a job, to be written as JSON.
type Export struct {
	Subject
	Files   map[string]string `json:"files"` // name → SHA-256
	Plan    json.RawMessage   `json:"plan"`  // as it was at the start
	Entries []Kept            `json:"entries"`
	Runs    []Export          `json:"runs,omitempty"`  // of a job
	Chain   *Head             `json:"chain,omitempty"` // of the whole store at the time of writing
}

// Export returns the whole record of a run, or of a job with its runs.
func (s *Store) Export(id string) (Export, error) {
	kind, err := KindOf(id)
	if err != nil {
		return Export{}, err
	}
	out, err := s.exported(id, kind)
	if err != nil {
		return Export{}, err
	}
	if kind == JobKind {
		runs, err := s.Runs(Filter{Job: id, Most: mostRuns})
		if err != nil {
			return Export{}, err
		}
		for i := len(runs) - 1; i >= 0; i-- { // in the order of their start
			one, err := s.exported(runs[i].ID, RunKind)
			if err != nil {
				return Export{}, err
			}
			out.Runs = append(out.Runs, one)
		}
	}
	head, err := s.Head()
	out.Chain = &head
	return out, err
}

// mostRuns is more than any job has.
const mostRuns = 100_000

func (s *Store) exported(id string, kind Kind) (Export, error) {
	started, err := s.started(id, kind)
	if err != nil {
		return Export{}, err
	}
	entries, err := s.Entries(id, 0)
	if err != nil {
		return Export{}, err
	}
	return Export{Subject: started.Subject, Files: started.Files, Plan: started.Frozen, Entries: entries}, nil
}

// columns lists the columns of the table. A step is looked up among those of
// its run.
var columns = []struct {
	head string
	cell func(k Kept, st run.Step) string
}{
	{"run", func(k Kept, _ run.Step) string { return k.On }},
	{"n", func(k Kept, _ run.Step) string { return fmt.Sprint(k.Place) }},
	{"time", func(k Kept, _ run.Step) string { return k.Time.Format(time.RFC3339) }},
	{"device_time", func(k Kept, _ run.Step) string { return k.DeviceTime }},
	{"who", func(k Kept, _ run.Step) string { return k.Who }},
	{"act", func(k Kept, _ run.Step) string { return string(k.Act) }},
	{"step", func(k Kept, _ run.Step) string { return number(k.Step) }},
	{"stage", func(_ Kept, st run.Step) string { return number(st.Stage) }},
	{"round", func(_ Kept, st run.Step) string { return number(st.Round) }},
	{"fasteners", func(_ Kept, st run.Step) string { return strings.Join(st.IDs, " ") }},
	{"do", func(_ Kept, st run.Step) string { return string(st.Do) }},
	{"figure", func(_ Kept, st run.Step) string { return st.Figure }},
	{"trouble", func(k Kept, _ run.Step) string { return string(k.Trouble) }},
	{"place", func(k Kept, _ run.Step) string { return placeText(k.Entry.Place) }},
	{"measure", func(k Kept, _ run.Step) string { return k.Measure }},
	{"value", func(k Kept, _ run.Step) string { return string(k.Value) }},
	{"unit", func(k Kept, _ run.Step) string { return k.Unit }},
	{"wrench", func(k Kept, _ run.Step) string { return k.Wrench }},
	{"kind", func(k Kept, _ run.Step) string { return k.Kind }},
	{"of", func(k Kept, _ run.Step) string { return k.Of }},
	{"to", func(k Kept, _ run.Step) string { return k.To }},
	{"second", func(k Kept, _ run.Step) string { return k.Second }},
	{"sheet", func(k Kept, _ run.Step) string { return k.Sheet }},
	{"fingerprint", func(k Kept, _ run.Step) string { return k.Fingerprint }},
	{"source", func(k Kept, _ run.Step) string { return string(k.Source) }},
	{"photo", func(k Kept, _ run.Step) string { return k.Photo }},
	{"note", func(k Kept, _ run.Step) string { return k.Note }},
	{"entry", func(k Kept, _ run.Step) string { return k.ID }},
	{"hash", func(k Kept, _ run.Step) string { return k.Hash }},
	{"shim", func(k Kept, _ run.Step) string { return string(k.Shim) }},
	{"found", func(k Kept, _ run.Step) string { return string(k.Found) }},
	{"decided", func(k Kept, _ run.Step) string { return string(k.Decided) }},
	{"decided_by", func(k Kept, _ run.Step) string { return k.DecidedBy }},
	{"day", func(k Kept, _ run.Step) string { return k.Day }},
	{"kept", func(k Kept, _ run.Step) string { return k.Entry.Kept }},
}

// CSV writes a line for every entry. It puts an apostrophe before text that a
// spreadsheet would take for a formula.
func (e Export) CSV() ([]byte, error) {
	var to bytes.Buffer
	w := csv.NewWriter(&to)
	var heads []string
	for _, c := range columns {
		heads = append(heads, c.head)
	}
	w.Write(heads) // writes to a buffer never fail
	for _, one := range append([]Export{e}, e.Runs...) {
		steps, err := one.steps()
		if err != nil {
			return nil, err
		}
		for _, k := range one.Entries {
			var cells []string
			for _, c := range columns {
				cells = append(cells, asText(c.cell(k, steps[k.Step])))
			}
			w.Write(cells)
		}
	}
	w.Flush()
	return to.Bytes(), nil
}

// steps returns the steps of a run by number, including added ones.
func (e Export) steps() (map[int]run.Step, error) {
	if e.Kind != RunKind {
		return nil, nil
	}
	state, err := e.Replay()
	if err != nil {
		return nil, err
	}
	steps := map[int]run.Step{}
	for _, st := range state.At(e.Last).Steps {
		steps[st.Number] = st
	}
	return steps, nil
}

// Replay returns the state of a run after its entries.
func (e Export) Replay() (*run.State, error) {
	var work run.Work
	if err := json.Unmarshal(e.Plan, &work); err != nil {
		return nil, finding.Failed(NotReadBack, finding.Values{"why": err})
	}
	entries := make([]run.Entry, len(e.Entries))
	for i, k := range e.Entries {
		entries[i] = k.Entry
	}
	return work.Replay(entries), nil
}

func number(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

func placeText(p *run.Place) string {
	if p == nil {
		return ""
	}
	if p.At != nil {
		return fmt.Sprintf("%g %g", p.At[0], p.At[1])
	}
	return cmp.Or(p.Fastener, p.Station, p.Label)
}

// asText keeps a spreadsheet from taking a text for a formula. Numbers stay
// unchanged.
func asText(cell string) string {
	if cell == "" || !strings.ContainsRune("=+-@\t\r", rune(cell[0])) {
		return cell
	}
	if _, err := strconv.ParseFloat(cell, 64); err == nil {
		return cell
	}
	return "'" + cell
}
