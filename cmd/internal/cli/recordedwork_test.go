package cli_test

import (
	"encoding/json"
	"fmt"
	"time"

	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/record"
	work "drawdown/sequence/run"
)

// recordedWork creates a record with a job and two runs: the P4 head, loosened
// and sealed, and its tightening started.
func recordedWork(folder string) error {
	s, err := record.Open(record.Place{Folder: folder})
	if err != nil {
		return err
	}
	defer s.Close()
	now := time.Date(2026, 11, 30, 7, 30, 0, 0, time.UTC)
	made, err := job.FreezeBuiltin("p4-head")
	if err != nil {
		return err
	}
	id, err := s.AddJob(record.NewJob{Of: "p4-head", Title: made.Plan.Title, Number: "P4-0117", Order: "A-31", Who: "JK", Time: now, Frozen: []byte("{}"), Files: made.Files})
	if err != nil {
		return err
	}
	for _, d := range []work.Direction{work.Loosen, work.Tighten} {
		if err := recordRun(s, made, d, id, now); err != nil {
			return err
		}
	}
	return nil
}

func recordRun(s *record.Store, made job.Frozen, d work.Direction, of string, now time.Time) error {
	frozenWork := work.New(made.Plan, d, made.ToAccept())
	frozenWork.Of = made.Name
	frozen, err := json.Marshal(frozenWork)
	if err != nil {
		return err
	}
	id, err := s.AddRun(record.NewRun{Job: of, Of: made.Name, Title: made.Plan.Title, Work: d, Who: "RA", Time: now, Program: "test", Frozen: frozen, Files: made.Files})
	if err != nil {
		return err
	}
	state := frozenWork.Start()
	n := 0
	take := func(e work.Entry) error {
		n++
		now = now.Add(time.Minute)
		e.ID, e.Time = fmt.Sprint("e", n), now
		_, err := s.Append(id, e, func(record.Before) (*work.Refusal, error) { return state.Take(e), nil })
		return err
	}
	if d == work.Tighten {
		return take(work.Entry{Act: work.Remark, Who: "MB", Note: "=waits for the gasket"})
	}
	for next := state.Next(now); next > 0; next = state.Next(now) {
		if err := take(work.Entry{Act: work.Done, Who: "RA", Step: next}); err != nil {
			return err
		}
	}
	return take(work.Entry{Act: work.Seal, Who: "RA", Second: "JK", Wrench: "W7"})
}
