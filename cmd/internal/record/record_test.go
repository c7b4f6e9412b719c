package record

import (
	"testing"
	"time"

	"drawdown/sequence/run"
)

var noon = time.Date(2026, 11, 30, 12, 0, 0, 0, time.UTC)

func opened(t testing.TB, folder string) *Store {
	t.Helper()
	s, err := Open(folder)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

func newRun(t testing.TB, s *Store) string {
	t.Helper()
	id, err := s.AddRun(NewRun{Of: "p4-head", Title: "Cylinder head", Work: "loosen", Who: "RA", Number: "P4-0117", Time: noon, Frozen: []byte("{}"), Files: map[string][]byte{"p4-head.yaml": []byte("drawdown: 1\n")}})
	if err != nil {
		t.Fatal(err)
	}
	return id
}

func TestAppend(t *testing.T) {
	s := opened(t, t.TempDir())
	id := newRun(t, s)
	a, err := s.Append(id, run.Entry{ID: "e1", Act: "done", Step: 1, Who: "RA", Time: noon}, nil)
	if err != nil || a.Version != 1 {
		t.Fatal(a, err)
	}
	kept, err := s.Entries(id, 0)
	if err != nil || len(kept) != 1 || kept[0].Who != "RA" || kept[0].Hash != a.Head {
		t.Fatal(kept, err)
	}
	runs, err := s.Runs(Filter{Person: "RA", Machine: "0117", Joint: "HEAD", From: noon, To: noon})
	if err != nil || len(runs) != 1 || runs[0].Version != 1 {
		t.Fatal(runs, err)
	}
}
