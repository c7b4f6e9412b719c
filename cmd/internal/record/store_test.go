package record

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"drawdown/cmd/internal/record/servertest"
	"drawdown/geometry/finding"
	"drawdown/sequence/run"
)

var noon = time.Date(2026, 11, 30, 12, 0, 0, 0, time.UTC)

func opened(t testing.TB, at Place) *Store {
	t.Helper()
	s, err := Open(at)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if s.entries != nil {
			s.Close()
		}
	})
	return s
}

// closed closes a store before its test ends.
func closed(t testing.TB, s *Store) {
	t.Helper()
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	s.entries = nil
}

var headRun = NewRun{
	Of: "p4-head", Title: "Cylinder head", Work: run.Loosen, Number: "P4-0117", Order: "A-31", Who: "RA", Time: noon,
	Program: "test", Frozen: []byte(`{"of":"p4-head","work":"loosen","steps":[{"step":1,"stage":2,"ids":["M3"],"do":"slacken","state":"todo"}]}`),
	Files: map[string][]byte{"p4-head.yaml": []byte("drawdown: 1\n")},
}

func added(t testing.TB, s *Store, r NewRun) string {
	t.Helper()
	id, err := s.AddRun(r)
	if err != nil {
		t.Fatal(err)
	}
	return id
}

func done(id string, step int) run.Entry {
	return run.Entry{ID: id, Act: run.Done, Step: step, Who: "RA", Time: noon}
}

func appended(t testing.TB, s *Store, on string, e run.Entry) Answer {
	t.Helper()
	a, err := s.Append(on, e, nil)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// sound checks that a store has no fault, and returns the end of its chain.
func sound(t testing.TB, s *Store) Head {
	t.Helper()
	v, err := s.Verify("")
	if err != nil || len(v.Faults) > 0 {
		t.Fatal(v.Faults, err)
	}
	return v.Head
}

func TestEntriesAreKeptInOrder(t *testing.T) { onEach(t, testEntriesAreKeptInOrder) }

func testEntriesAreKeptInOrder(t *testing.T, at Place) {
	s := opened(t, at)
	a, b := added(t, s, headRun), added(t, s, headRun)
	if a != "R1" || b != "R2" {
		t.Fatal(a, b)
	}
	var last Answer
	for i := range 5 {
		appended(t, s, a, done(fmt.Sprint("a", i), i+1))
		last = appended(t, s, b, run.Entry{ID: fmt.Sprint("b", i), Act: run.Remark, Who: "JK", Note: "<ok> & ü", Time: noon.Add(time.Minute)})
	}
	if head := sound(t, s); last.Version != 5 || head.Hash != last.Head || head.Place != 13 { // shop, two starts, ten entries
		t.Error(last, head)
	}
	closed(t, s)
	s = opened(t, at) // what was kept is still there after a restart
	kept, err := s.Entries(a, 3)
	if err != nil || len(kept) != 2 || kept[0].ID != "a3" || kept[0].Version != 4 || kept[0].Who != "RA" || !kept[1].Time.Equal(noon) {
		t.Error(kept, err)
	}
	r, err := s.Run(b)
	if err != nil || r.Version != 5 || r.Number != "P4-0117" || !r.Last.Equal(noon.Add(time.Minute)) || string(r.Frozen) != string(headRun.Frozen) || r.Ended != "" {
		t.Error(r, err)
	}
	file, err := s.File(r.Files["p4-head.yaml"])
	if err != nil || string(file) != "drawdown: 1\n" {
		t.Error(file, err)
	}
	if _, err := s.Entries("R3", 0); !errors.Is(err, NoSubject) {
		t.Error(err)
	}
	if _, err := s.Job(a); !errors.Is(err, NoSubject) { // a run is no job
		t.Error(err)
	}
}

// An entry sent twice counts once and gets the same answer both times, accepted
// or refused; judge is called once.
func TestSameEntrySameAnswer(t *testing.T) { onEach(t, testSameEntrySameAnswer) }

func testSameEntrySameAnswer(t *testing.T, at Place) {
	s := opened(t, at)
	id := added(t, s, headRun)
	asked := 0
	judge := func(answer *run.Refusal) Judge {
		return func(Before) (*run.Refusal, error) { asked++; return answer, nil }
	}
	no := &run.Refusal{Finding: finding.Failed("run step done", finding.Values{"step": 2, "ids": []string{"M3"}}), By: "JK", At: noon}
	send := func(e run.Entry, r *run.Refusal) Answer {
		e.Time = noon.Add(time.Duration(asked) * time.Second) // the server's clock has advanced
		a, err := s.Append(id, e, judge(r))
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	first, refused := send(done("e1", 1), nil), send(done("e2", 2), no)
	send(done("e3", 3), nil)
	closed(t, s)
	s = opened(t, at)
	for _, again := range []struct{ before, now Answer }{{first, send(done("e1", 1), no)}, {refused, send(done("e2", 2), nil)}} {
		again.before.Again = true
		if diff := cmp.Diff(again.before, again.now); diff != "" {
			t.Error(diff)
		}
	}
	if asked != 3 {
		t.Error("judge was asked", asked, "times")
	}
	if kept, _ := s.Entries(id, 0); len(kept) != 2 {
		t.Error(kept)
	}
	for _, e := range []run.Entry{done("e1", 2), done("e2", 1), {ID: "e1", Act: run.Done, Step: 1, Who: "JK"}} {
		if _, err := s.Append(id, e, judge(nil)); !errors.Is(err, OtherContent) {
			t.Errorf("%+v: %v", e, err)
		}
	}
	other := added(t, s, headRun) // an id belongs to its run
	appended(t, s, other, done("e1", 9))
	malformed := &run.Refusal{Malformed: true}
	send(done("e4", 4), malformed)
	if a := send(done("e4", 4), nil); a.Refusal != nil || a.Again {
		t.Error("a malformed entry was remembered", a)
	}
	sound(t, s)
}

func TestEntriesNeedAnID(t *testing.T) { onEach(t, testEntriesNeedAnID) }

func testEntriesNeedAnID(t *testing.T, at Place) {
	s := opened(t, at)
	id := added(t, s, headRun)
	for text, want := range map[string]error{"": NoEntryID, strings.Repeat("x", 101): LongEntryID, strings.Repeat("x", 100): nil} {
		if _, err := s.Append(id, done(text, 1), nil); !errors.Is(err, want) {
			t.Error(len(text), err)
		}
	}
	if _, err := s.Append("R9", done("a", 1), nil); !errors.Is(err, NoSubject) {
		t.Error(err)
	}
}

// A panic while judging an entry ends that entry alone.
func TestFaultOfAJudge(t *testing.T) { onEach(t, testFaultOfAJudge) }

func testFaultOfAJudge(t *testing.T, at Place) {
	s := opened(t, at)
	id := added(t, s, headRun)
	if _, err := s.Append(id, done("a", 1), func(Before) (*run.Refusal, error) { panic("fault") }); !errors.Is(err, NotKept) {
		t.Error(err)
	}
	if a := appended(t, s, id, done("a", 1)); a.Again || a.Version != 1 {
		t.Error(a)
	}
	sound(t, s)
}

// Fifty tablets at once: each entry is there once, with its own version.
func TestManyAtOnce(t *testing.T) { onEach(t, testManyAtOnce) }

func testManyAtOnce(t *testing.T, at Place) {
	s := opened(t, at)
	var runs []string
	for range 5 {
		runs = append(runs, added(t, s, headRun))
	}
	var tablets sync.WaitGroup
	for tablet := range 50 {
		tablets.Go(func() {
			for i := range 4 {
				if _, err := s.Append(runs[tablet%5], run.Entry{ID: fmt.Sprint(tablet, "-", i), Act: run.Remark, Who: fmt.Sprint("W", tablet), Time: noon}, nil); err != nil {
					t.Error(err)
				}
			}
		})
	}
	tablets.Wait()
	for _, id := range runs {
		kept, err := s.Entries(id, 0)
		if err != nil || len(kept) != 40 || kept[39].Version != 40 {
			t.Error(len(kept), err)
		}
	}
	if head := sound(t, s); head.Place != 206 { // shop, 5 starts, 200 entries
		t.Error(head)
	}
}

// No body contains a name, and erased names are removed from the files; the
// chain remains valid, and the entries of one person still show that they
// belong together.
func TestErase(t *testing.T) {
	t.Parallel()
	t.Run("file", func(t *testing.T) {
		at := inTempFolder(t)
		testErase(t, at, func(text string) bool { return holds(t, at.Folder, text) })
	})
	t.Run("database", func(t *testing.T) {
		server := servertest.Start(t) // it has few files to search
		testErase(t, Place{Address: server.Address("postgres")}, func(text string) bool { return server.Holds(t, text) })
	})
}

func testErase(t *testing.T, at Place, holds func(text string) bool) {
	s := opened(t, at)
	const name = "Ruth-Anders-1234567"
	id := added(t, s, headRun)
	appended(t, s, id, run.Entry{ID: "a", Act: run.HandOver, Who: name, To: "JK", Time: noon})
	appended(t, s, id, run.Entry{ID: "b", Act: run.Seal, Who: "JK", Second: name, DecidedBy: name, Time: noon})
	s.Append(id, run.Entry{ID: "c", Act: run.Remark, Who: name, Time: noon}, func(Before) (*run.Refusal, error) {
		return &run.Refusal{Finding: finding.Failed("run sealed", nil), By: name}, nil
	})
	if !holds(name) {
		t.Fatal("the name is nowhere: this test finds nothing")
	}
	people, err := s.People()
	if diff := cmp.Diff([]Person{{"JK", 1}, {"RA", 1}, {name, 1}}, people); err != nil || diff != "" {
		t.Error(err, diff)
	}
	before := sound(t, s)
	if err := s.Erase(name); err != nil {
		t.Fatal(err)
	}
	if holds(name) {
		t.Error("the name is still there")
	}
	if after := sound(t, s); after != before {
		t.Error(before, after)
	}
	kept, err := s.Entries(id, 0)
	if err != nil || kept[0].Who == name || !strings.HasPrefix(kept[0].Who, "#") || kept[0].Who != kept[1].Second || kept[0].Who != kept[1].DecidedBy || kept[0].To != "JK" {
		t.Error(kept, err)
	}
	if err := s.Erase(name); !errors.Is(err, NoPerson) {
		t.Error(err)
	}
	if list, err := s.Runs(Filter{Person: name}); len(list) > 0 || err != nil {
		t.Error(list, err)
	}
}

// holds reports whether a file of a folder contains a text.
func holds(t *testing.T, folder, text string) bool {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	return slices.ContainsFunc(entries, func(e os.DirEntry) bool {
		data, err := os.ReadFile(filepath.Join(folder, e.Name()))
		return err == nil && strings.Contains(string(data), text)
	})
}

func TestPhotos(t *testing.T) { onEach(t, testPhotos) }

func testPhotos(t *testing.T, at Place) {
	s := opened(t, at)
	id := added(t, s, headRun)
	sum, err := s.PutPhoto([]byte("picture"))
	if err != nil || sum != "2cea274d0bedc39ec4ab6ba9e59ec889e3ed6fb56a1cf088a64d9b383378dc97" {
		t.Error(sum, err) // SHA-256 by the program sha256sum
	}
	if again, err := s.PutPhoto([]byte("picture")); again != sum || err != nil {
		t.Error(again, err)
	}
	data, err := s.Photo(sum)
	if string(data) != "picture" || err != nil {
		t.Error(data, err)
	}
	if _, err := s.Photo(strings.Repeat("0", 64)); !errors.Is(err, NoPhoto) {
		t.Error(err)
	}
	if _, err := s.File(sum); !errors.Is(err, NoPhoto) { // a photo is no file
		t.Error(err)
	}
	if _, err := s.Append(id, run.Entry{ID: "a", Act: run.Find, Who: "RA", Photo: strings.Repeat("0", 64), Time: noon}, nil); !errors.Is(err, NoPhoto) {
		t.Error(err)
	}
	appended(t, s, id, run.Entry{ID: "a", Act: run.Find, Who: "RA", Photo: sum, Time: noon})
	sound(t, s)
}

func TestSearch(t *testing.T) { onEach(t, testSearch) }

func testSearch(t *testing.T, at Place) {
	s := opened(t, at)
	job, err := s.AddJob(NewJob{Of: "fernhollow-p4", Title: "Fernhollow P4 pump engine", Number: "P4-0117", Who: "JK", Time: noon, Frozen: []byte("{}")})
	if err != nil {
		t.Fatal(err)
	}
	inJob := headRun
	inJob.Job, inJob.Number, inJob.Time = job, "", noon.Add(24*time.Hour)
	cover := headRun
	cover.Of, cover.Title, cover.Number = "lid", "Zylinderkopfdeckel Ölseite", "X9"
	R1, R2 := added(t, s, inJob), added(t, s, cover)
	appended(t, s, R1, run.Entry{ID: "a", Act: run.Done, Who: "MB", Wrench: "W7", Time: noon.Add(48 * time.Hour)})
	appended(t, s, R2, run.Entry{ID: "a", Act: run.Seal, Who: "MB", Time: noon})
	for name, c := range map[string]struct {
		filter Filter
		want   []string
	}{
		"all":                    {Filter{}, []string{R2, R1}},
		"machine of the job":     {Filter{Machine: "0117"}, []string{R1}},
		"machine by its file":    {Filter{Machine: "fernhollow"}, []string{R1}},
		"machine of the run":     {Filter{Machine: "x9"}, []string{R2}},
		"joint by file":          {Filter{Joint: "P4-HEAD"}, []string{R1}},
		"joint by title":         {Filter{Joint: "ÖLSEITE"}, []string{R2}},
		"starter":                {Filter{Person: "RA"}, []string{R2, R1}},
		"person":                 {Filter{Person: " MB "}, []string{R2, R1}},
		"part of a name":         {Filter{Person: "M"}, nil},
		"wrench":                 {Filter{Wrench: "W7"}, []string{R1}},
		"job":                    {Filter{Job: job}, []string{R1}},
		"open":                   {Filter{Open: true}, []string{R1}},
		"from":                   {Filter{From: noon.Add(47 * time.Hour)}, []string{R1}},
		"to":                     {Filter{To: noon}, []string{R2}},
		"between start and last": {Filter{From: noon.Add(30 * time.Hour), To: noon.Add(31 * time.Hour)}, []string{R1}},
		"latest":                 {Filter{Most: 1}, []string{R2}},
		"none":                   {Filter{Machine: "x9", Joint: "head"}, nil},
		"no pattern":             {Filter{Joint: "%"}, nil},
	} {
		list, err := s.Runs(c.filter)
		var got []string
		for _, one := range list {
			got = append(got, one.ID)
		}
		if diff := cmp.Diff(c.want, got); err != nil || diff != "" {
			t.Errorf("%s: %v\n%s", name, err, diff)
		}
	}
	jobs, err := s.Jobs(Filter{Machine: "pump"})
	if err != nil || len(jobs) != 1 || jobs[0].ID != job || jobs[0].Who != "JK" {
		t.Error(jobs, err)
	}
	sealed, err := s.Run(R2)
	if err != nil || sealed.Ended != run.Seal || sealed.EndedAt.IsZero() || sealed.EndedBy == "" {
		t.Error(sealed, err)
	}
}

func TestPrints(t *testing.T) { onEach(t, testPrints) }

func testPrints(t *testing.T, at Place) {
	s := opened(t, at)
	id := added(t, s, headRun)
	appended(t, s, ShopID, run.Entry{ID: "a", Act: run.Printed, Who: "RA", Sheet: "card", Fingerprint: "7c1e 90b4", Time: noon})
	appended(t, s, id, run.Entry{ID: "a", Act: run.Printed, Who: "RA", Sheet: "tray", Fingerprint: "7c1e 90b4", Time: noon})
	appended(t, s, id, done("b", 1))
	list, err := s.Prints(10)
	if err != nil || len(list) != 2 || list[0].Sheet != "tray" || list[0].On != id || list[1].On != ShopID {
		t.Error(list, err)
	}
}

// The clock is set back between two entries: both are kept, in the order of
// arrival, and the chain is valid.
func TestClockSetBack(t *testing.T) { onEach(t, testClockSetBack) }

func testClockSetBack(t *testing.T, at Place) {
	s := opened(t, at)
	id := added(t, s, headRun)
	for k, at := range []time.Time{noon, noon.Add(-30 * time.Hour), noon.Add(time.Minute)} {
		appended(t, s, id, run.Entry{ID: fmt.Sprint("e", k), Act: run.Remark, Who: "RA", Time: at})
	}
	sound(t, s)
	closed(t, s)
	s = opened(t, at)
	kept, err := s.Entries(id, 0)
	if err != nil || len(kept) != 3 {
		t.Fatal(len(kept), err)
	}
	for k, e := range kept {
		if want := fmt.Sprint("e", k); e.ID != want || e.Version != k+1 {
			t.Errorf("entry %s of version %d stands at %d", e.ID, e.Version, k)
		}
	}
}
