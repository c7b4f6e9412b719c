package cli

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/record"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/render"
	"drawdown/render/words"
	"drawdown/sequence/run"
)

func (p *Program) listRecords(r *recordsCall, _ string) Status {
	f, err := r.filter()
	if err != nil {
		return p.misuse(err)
	}
	return p.reading(r, func(s *record.Store) Status {
		list, err := listed(s, f)
		if err != nil {
			return p.recordFailed(err)
		}
		if *r.print.AsJSON {
			head, err := s.Head()
			if err != nil {
				return p.recordFailed(err)
			}
			return p.printJSON(struct {
				Records []record.Subject `json:"records"`
				Chain   record.Head      `json:"chain"`
			}{append([]record.Subject{}, list...), head})
		}
		for _, one := range list {
			fmt.Fprintln(p.Stdout, p.recordLine(one))
		}
		if len(list) == 0 {
			p.fail(Done, finding.Noted(RecordsNone, nil))
		}
		return Done
	})
}

// listed returns runs and jobs together, latest start first.
func listed(s *record.Store, f record.Filter) ([]record.Subject, error) {
	runs, err := s.Runs(f)
	if err != nil {
		return nil, err
	}
	jobs, err := s.Jobs(f)
	list := slices.Concat(runs, jobs)
	slices.SortStableFunc(list, func(a, b record.Subject) int { return b.Started.Compare(a.Started) })
	return list[:min(len(list), mostListed)], err
}

// recordLine describes a run or a job in one line.
func (p *Program) recordLine(one record.Subject) string {
	return fmt.Sprintf("%-6s %s  %-10s %-8s %s", one.ID, localTime(one.Started), p.words.Record.Work[string(one.Work)], p.stateOf(one),
		words.Row(one.Number, one.Of, one.Title, one.Order, one.Job, one.Who))
}

// stateOf describes whether a record is open.
func (p *Program) stateOf(one record.Subject) string {
	state := map[run.Act]run.Status{run.Seal: run.Sealed, run.Close: run.Sealed, run.Void: run.Voided}[one.Ended]
	return p.words.Page.Home.States[string(cmp.Or(state, run.Open))]
}

func localTime(t time.Time) string { return t.Local().Format("2006-01-02 15:04") }

func (p *Program) showRecord(r *recordsCall, id string) Status {
	return p.reading(r, func(s *record.Store) Status {
		e, err := s.Export(strings.ToUpper(id))
		if err != nil {
			return p.recordFailed(err)
		}
		if *r.print.AsJSON {
			return p.printJSON(e)
		}
		for _, one := range append([]record.Export{e}, e.Runs...) {
			fmt.Fprintln(p.Stdout, p.recordLine(one.Subject))
			for _, k := range one.Entries {
				fmt.Fprintln(p.Stdout, p.entryLine(k))
			}
		}
		fmt.Fprintf(p.Stdout, p.words.Page.Records.Head+"\n", e.Chain.Hash)
		return Done
	})
}

// entryLine describes an entry in one line.
func (p *Program) entryLine(k record.Kept) string {
	w := p.words.Page
	step := ""
	if k.Step > 0 {
		step = w.Records.Columns["step"] + " " + strconv.Itoa(k.Step)
	}
	place := ""
	if at := k.Entry.Place; at != nil {
		place = cmp.Or(at.Fastener, at.Station)
		if at.At != nil {
			place = p.words.Figure(fmt.Sprintf("%.0f, %.0f mm", at.At[0], at.At[1]))
		}
	}
	value := strings.TrimSpace(p.words.Figure(string(k.Value) + " " + k.Unit))
	return fmt.Sprintf("%6d  %s  %-6s %s", k.Place, localTime(k.Time), k.Who,
		words.Row(cmp.Or(w.Records.Acts[string(k.Act)], string(k.Act)), step, w.Trouble.Names[string(k.Trouble)], place, k.Measure, value, k.Wrench, k.To, k.Second, w.Run.Decided[string(k.Decided)], k.DecidedBy, k.Note))
}

func (p *Program) exportRecord(r *recordsCall, id string) Status {
	ask, err := r.print.Chosen(r.flags)
	if err != nil {
		return p.misuse(err)
	}
	return p.reading(r, func(s *record.Store) Status {
		e, err := s.Export(strings.ToUpper(id))
		if err != nil {
			return p.recordFailed(err)
		}
		var made []render.File
		var notes []string
		for _, format := range *r.print.Formats {
			files, more, err := p.exported(s, e, format, ask)
			if err != nil {
				return p.recordFailed(err)
			}
			made, notes = append(made, files...), append(notes, more...)
		}
		return p.deliver(made, notes, flag.Print{Folder: r.print.Folder, AsJSON: r.print.AsJSON})
	})
}

func (p *Program) exported(s *record.Store, e record.Export, format flag.RecordFormat, ask job.Printing) ([]render.File, []string, error) {
	switch format {
	case flag.RecordJSON:
		text, err := report.JSON(e)
		return []render.File{{Name: e.ID + ".json", Data: text}}, nil, err
	case flag.RecordCSV:
		text, err := e.CSV()
		return []render.File{{Name: e.ID + ".csv", Data: text}}, nil, err
	}
	return job.RecordSheet(e, s, time.Local, ask)
}
