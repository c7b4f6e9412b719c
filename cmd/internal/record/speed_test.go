package record

import (
	"database/sql"
	"encoding/hex"
	"fmt"
	"slices"
	"sync"
	"testing"
	"time"

	"drawdown/sequence/run"
)

// million makes a store with a million entries in 20,000 runs, without waiting
// for the disk after each.
func million(b *testing.B, folder string) {
	b.Helper()
	s := opened(b, Place{Folder: folder})
	const runs, each, atOnce = 20_000, 49, 1000
	for n := 0; n < runs; n += atOnce {
		err := s.written(func(tx *sql.Tx, end *Head) error {
			for i := n; i < n+atOnce; i++ {
				if err := oneRun(tx, end, i, each); err != nil {
					return err
				}
			}
			return nil
		})
		if err != nil {
			b.Fatal(err)
		}
	}
	closed(b, s)
}

func oneRun(tx *sql.Tx, end *Head, i, each int) error {
	id := fmt.Sprint("R", i+1)
	at := noon.Add(time.Duration(i) * time.Hour)
	if err := begin(tx, end, id, start{Kind: RunKind, Of: fmt.Sprint("joint-", i%40), Title: "Joint", Number: fmt.Sprint("M", i%700), Who: fmt.Sprint("P", i%60), Time: at}); err != nil {
		return err
	}
	subject := end.Place
	_, hash, err := personOf(tx, fmt.Sprint("P", i%60))
	if err != nil {
		return err
	}
	insertion, err := tx.Prepare("INSERT INTO entry (n, subject, version, id, act, wrench, body, hash) VALUES ($1, $2, $3, $4, $5, $6, $7, $8)")
	if err != nil {
		return err
	}
	defer insertion.Close()
	for k := range each { // as insert does, with a prepared statement
		e := run.Entry{ID: fmt.Sprint("e", k), Act: run.Done, Step: k + 1, Who: hash, Time: at}
		if k == each-1 {
			e.Act, e.Wrench = run.Seal, fmt.Sprint("W", i%9)
		}
		next := body{Place: end.Place + 1, On: id, Version: k + 1, Entry: &e}
		text, err := next.bytes()
		if err != nil {
			return err
		}
		before, _ := hex.DecodeString(end.Hash)
		sum := link(before, text)
		if _, err := insertion.Exec(next.Place, subject, next.Version, next.id(), next.act(), next.wrench(), text, sum); err != nil {
			return err
		}
		*end = Head{Place: next.Place, Hash: hex.EncodeToString(sum)}
	}
	return nil
}

// A store with a million entries: opened, searched, appended to.
func BenchmarkMillion(b *testing.B) {
	folder := b.TempDir()
	million(b, folder)
	b.Run("open", func(b *testing.B) {
		for b.Loop() {
			closed(b, opened(b, Place{Folder: folder}))
		}
	})
	s := opened(b, Place{Folder: folder})
	for name, f := range map[string]Filter{
		"latest": {}, "machine": {Machine: "m123"}, "joint": {Joint: "joint-7"}, "person": {Person: "P7"}, "wrench": {Wrench: "W3"},
		"date": {From: noon.Add(9000 * time.Hour), To: noon.Add(9100 * time.Hour)}, "open": {Open: true}, "nothing": {Machine: "none"},
		"page": {Person: "P7", Most: 20},
	} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := s.Runs(f); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	b.Run("append", func(b *testing.B) {
		id := added(b, s, headRun)
		for n := 0; b.Loop(); n++ {
			appended(b, s, id, run.Entry{ID: fmt.Sprint(n), Act: run.Remark, Who: "P7", Time: noon})
		}
	})
	b.Run("verify", func(b *testing.B) {
		for b.Loop() {
			sound(b, s)
		}
	})
}

// Fifty tablets tap as fast as they get an answer: how long each waits.
func BenchmarkFiftyTablets(b *testing.B) {
	s := opened(b, Place{Folder: b.TempDir()})
	var runs []string
	for range 50 {
		runs = append(runs, added(b, s, headRun))
	}
	var mu sync.Mutex
	var waits []time.Duration
	for n := 0; b.Loop(); n++ {
		var tablets sync.WaitGroup
		for tablet, id := range runs {
			tablets.Go(func() {
				from := time.Now()
				if _, err := s.Append(id, run.Entry{ID: fmt.Sprint(n), Act: run.Remark, Who: fmt.Sprint("P", tablet), Time: noon}, nil); err != nil {
					b.Error(err)
				}
				mu.Lock()
				waits = append(waits, time.Since(from))
				mu.Unlock()
			})
		}
		tablets.Wait()
	}
	slices.Sort(waits)
	b.ReportMetric(float64(waits[len(waits)/2].Microseconds())/1000, "ms-median")
	b.ReportMetric(float64(waits[len(waits)*99/100].Microseconds())/1000, "ms-99th")
}
