package bench

import (
	"fmt"
	"net/http"
	"sync"
	"testing"
	"time"

	"drawdown/cmd/internal/record"
	"drawdown/cmd/internal/record/servertest"
	"drawdown/geometry/testkit"
)

// together serves the page by count processes that share one record, each with
// its own keys and sessions.
func together(t testing.TB, address string, count int) (all []*shopfloor) {
	t.Helper()
	for k := range count {
		all = append(all, served(t, func(o *Options) {
			o.Store = address
			if k > 0 {
				o.Folder = all[0].shop
			}
		}))
	}
	return all
}

// byTurns is a shop floor on which each request goes to the next process.
func byTurns(all []*shopfloor) *shopfloor {
	s := *all[0]
	next := 0
	s.before = func() {
		next = (next + 1) % len(all)
		s.base, s.key = all[next].base, all[next].key
	}
	return &s
}

// One record, shared by several processes.
func TestSharedRecord(t *testing.T) {
	t.Parallel()
	server := servertest.Start(t)
	t.Run("", func(t *testing.T) { // it ends when all have, before the server does
		for name, test := range map[string]func(t *testing.T, address string){
			"rules": func(t *testing.T, address string) { answersOfRules(t, byTurns(together(t, address, 2))) },
			"job":   func(t *testing.T, address string) { jobOnAMachine(t, byTurns(together(t, address, 2))) },
			"condemned": func(t *testing.T, address string) {
				s := byTurns(together(t, address, 3))
				id, tighten := condemnedMustBeReady(t, s)
				condemnedAgain(s, id, tighten)
			},
			"one step":   oneStepAtManyProcesses,
			"live":       liveAcrossProcesses,
			"sent twice": sentToTwoProcesses,
		} {
			t.Run(name, func(t *testing.T) {
				t.Parallel()
				test(t, server.Database(t))
			})
		}
	})
}

// Tablets at three processes tap the same steps at the same time: each step is
// done once, and every process shows the same.
func oneStepAtManyProcesses(t *testing.T, address string) {
	all := together(t, address, 3)
	id := all[0].accepted()
	for step := 1; step <= 4; step++ {
		statuses := make([]int, 6)
		var tablets sync.WaitGroup
		for k := range statuses {
			tablets.Go(func() {
				statuses[k] = all[k%3].enter(id, fmt.Sprintf(`{"entry":"t%d-%d","act":"done","step":%d,"who":"W%d"}`, step, k, step, k)).status
			})
		}
		tablets.Wait()
		if taken := countTaken(t, statuses); taken != 1 {
			t.Errorf("step %d was taken %d times", step, taken)
		}
	}
	for _, s := range all {
		if v := s.state(id); v.Version != 5 || v.Steps[3].State != "done" {
			t.Errorf("%+v", v)
		}
	}
}

// An entry made at one process appears in the events of another, which a reader
// resumes after the last one it has.
func liveAcrossProcesses(t *testing.T, address string) {
	all := together(t, address, 2)
	id := all[0].accepted()
	path := "/api/runs/" + id + "/events"
	all[1].state(id)
	there := all[1].events(path, "1")
	for step := 1; step <= 3; step++ {
		all[0].done(id, step)
		if at, e := there.read(t); at != fmt.Sprint(step+1) || e.ID != fmt.Sprint("d", step) {
			t.Errorf("event %s %s", at, e.ID)
		}
	}
	again := all[1].events(path, "2")
	for _, want := range []string{"3", "4"} {
		if at, _ := again.read(t); at != want {
			t.Errorf("event %s, want %s", at, want)
		}
	}
}

// A tablet that lost the answer of one process sends its entry to another: it
// counts once, with one answer.
func sentToTwoProcesses(t *testing.T, address string) {
	all := together(t, address, 2)
	id := all[0].accepted()
	for step := 1; step <= 4; step++ {
		replies := make([]reply, 4)
		var both sync.WaitGroup
		for k := range replies {
			both.Go(func() {
				replies[k] = all[k%2].enter(id, fmt.Sprintf(`{"entry":"d%d","act":"done","step":%d,"who":"RA"}`, step, step))
			})
		}
		both.Wait()
		for _, r := range replies {
			if r.status != http.StatusOK || string(r.body) != string(replies[0].body) {
				t.Errorf("answered %s, and %s", r, replies[0])
			}
		}
	}
	if v := all[1].state(id); v.Version != 5 {
		t.Errorf("version %d", v.Version)
	}
}

// The database is killed and stopped while tablets tap, and started again:
// entries that cannot be kept are answered as not kept, and sent again. No
// confirmed tap is lost or duplicated, and pages and events continue by
// themselves.
func TestDatabaseGoesAway(t *testing.T) {
	t.Parallel()
	server := servertest.Start(t)
	address := server.Address("postgres")
	all := together(t, address, 2)
	const tablets = 4
	var runs []string
	for range tablets {
		runs = append(runs, all[0].accepted())
	}
	seen := all[1].events("/api/runs/"+runs[0]+"/events", "1")
	stop := make(chan bool)
	confirmed := make([]int, tablets)
	var tapping sync.WaitGroup
	for k, id := range runs {
		tapping.Go(func() { confirmed[k] = tapUntil(all[k%2], id, stop) })
	}
	for n := range testkit.Samples(2, 20) {
		time.Sleep(200 * time.Millisecond)
		if n%2 == 0 {
			server.Kill()
		} else {
			server.Stop()
		}
		for k, path := range []string{"/", "/api/runs", timePath, "/runs/" + runs[0], "/api/runs/" + runs[0]} {
			r := all[k%2].want(http.StatusServiceUnavailable, all[k%2].ask("GET", path, ""))
			if !contains(r.body, "the database of the record cannot be reached") || contains(r.body, "127.0.0.1") || contains(r.body, servertest.Password) {
				t.Errorf("%s", r)
			}
		}
		server.Again(t)
	}
	time.Sleep(200 * time.Millisecond)
	close(stop)
	tapping.Wait()
	for k, id := range runs {
		for _, s := range all {
			if v := s.state(id); v.Version != confirmed[k]+1 { // and what was accepted
				t.Errorf("%s has %d entries, %d confirmed", id, v.Version, confirmed[k]+1)
			}
		}
	}
	for n := range confirmed[0] {
		if _, e := seen.read(t); e.ID != fmt.Sprint("n", n) {
			t.Fatalf("event %s, want n%d", e.ID, n)
		}
	}
	s, err := record.OpenToRead(record.Place{Address: address})
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	if v, err := s.Verify(""); err != nil || len(v.Faults) > 0 {
		t.Error(v, err)
	}
}

// tapUntil makes entries on a run like a tablet: it keeps entries that were not
// accepted and sends them again. It returns how many were confirmed.
func tapUntil(s *shopfloor, id string, stop <-chan bool) (confirmed int) {
	for n := 0; ; n++ {
		for {
			r := s.enter(id, fmt.Sprintf(`{"entry":"n%d","act":"note","note":"seen","who":"RA"}`, n))
			if r.status == http.StatusOK {
				break
			}
			if r.status != http.StatusServiceUnavailable {
				s.t.Errorf("answered %s", r)
			}
			time.Sleep(20 * time.Millisecond)
		}
		select {
		case <-stop:
			return n + 1
		default:
		}
	}
}
