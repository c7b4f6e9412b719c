package bench

import (
	"fmt"
	"math/rand/v2"
	"net/http"
	"runtime"
	"slices"
	"sync"
	"testing"
	"time"
)

// perTap is how often each tablet taps: far more often than a bolt is turned.
const perTap = 250 * time.Millisecond

// BenchmarkFiftyTablets measures how long a tap takes until it is on the disk, with
// 50 tablets, each on a run of its own:
//
//	go test ./cmd/internal/bench -run XXX -bench FiftyTablets -benchtime 4000x
//
// Wanted are a median of 30 ms and a 99th percentile of 100 ms.
func BenchmarkFiftyTablets(b *testing.B) {
	const tablets = 50
	s := served(b)
	taps := tapped(b, tablets, perTap, func(int) *shopfloor { return s }, func(*shopfloor, string) {})
	b.ReportMetric(float64(taps[len(taps)/2].Microseconds())/1000, "median-ms")
	b.ReportMetric(float64(taps[len(taps)*99/100].Microseconds())/1000, "p99-ms")
	b.ReportMetric(0, "ns/op")
}

// tapped has tablets tap so often, each at its bench and on a run of its own, and
// returns how long their taps took, the shortest first. Each follows its first run.
func tapped(b *testing.B, tablets int, every time.Duration, at func(tablet int) *shopfloor, follow func(s *shopfloor, run string)) []time.Duration {
	times := make([][]time.Duration, tablets)
	var ready, all sync.WaitGroup
	ready.Add(tablets)
	begin := make(chan struct{})
	for k := range tablets {
		s := at(k)
		all.Go(func() {
			id, step := s.run(`{"of":"p4-head","work":"loosen"}`), 0
			follow(s, id)
			ready.Done()
			<-begin
			time.Sleep(rand.N(every))
			for n := range b.N/tablets + 1 {
				if step++; step > 28 { // the steps of the pattern
					id, step = s.run(`{"of":"p4-head","work":"loosen"}`), 1
				}
				from := time.Now()
				s.want(http.StatusOK, s.enter(id, fmt.Sprintf(`{"entry":"t%d-%d","act":"done","step":%d,"who":"W%d"}`, k, n, step, k)))
				times[k] = append(times[k], time.Since(from))
				time.Sleep(every)
			}
		})
	}
	ready.Wait()
	b.ResetTimer()
	close(begin)
	all.Wait()
	return slices.Sorted(slices.Values(slices.Concat(times...)))
}

// Fifty runs that are looked at take little memory: what the heap holds of each,
// with its picture. The limit is a quarter of the 80 MB that the whole program may
// take with them.
func TestMemoryOfFiftyRuns(t *testing.T) {
	s := served(t)
	s.bench.shop.all() // what every page needs
	s.want(http.StatusOK, s.ask("GET", "/runs/"+s.run(`{"of":"p4-head","work":"tighten"}`), ""))
	before := heap()
	for range 50 {
		id := s.run(`{"of":"p4-head","work":"tighten"}`)
		s.want(http.StatusOK, s.enter(id, `{"entry":"ok","act":"accept","who":"RA"}`))
		s.want(http.StatusOK, s.ask("GET", "/runs/"+id, ""))
	}
	const most = 20 << 20
	if grown := heap() - before; grown > most {
		t.Errorf("50 open runs hold %.1f MB", float64(grown)/(1<<20))
	} else {
		t.Logf("50 open runs hold %.1f MB", float64(grown)/(1<<20))
	}
}

func heap() int64 {
	var m runtime.MemStats
	runtime.GC()
	runtime.GC()
	runtime.ReadMemStats(&m)
	return int64(m.HeapAlloc)
}

// A run that gave its place in memory to others is the same when it is asked for.
func TestRunsMakeRoom(t *testing.T) {
	t.Parallel()
	s := served(t)
	first := s.run(`{"of":"lid","work":"loosen"}`)
	s.done(first, 1)
	before := s.ask("GET", "/api/runs/"+first, "")
	for range mostOpen + 1 {
		s.clock.pass(time.Second)
		s.state(s.run(`{"of":"lid","work":"loosen"}`))
	}
	if _, kept := s.bench.open.all[first]; kept || len(s.bench.open.all) > mostOpen {
		t.Fatalf("%d runs in memory", len(s.bench.open.all))
	}
	s.clock.pass(-time.Duration(mostOpen+1) * time.Second)
	if after := s.ask("GET", "/api/runs/"+first, ""); string(after.body) != string(before.body) {
		t.Errorf("%s\nnow\n%s", before, after)
	}
	s.done(first, 2)
}

// A run stays as long as somebody reads its events, whatever else is asked for.
func TestRunsThatAreFollowedStay(t *testing.T) {
	t.Parallel()
	s := served(t)
	followed := s.run(`{"of":"lid","work":"loosen"}`)
	events := s.events("/api/runs/"+followed+"/events", "")
	for range mostOpen + 1 {
		s.clock.pass(time.Second)
		s.state(s.run(`{"of":"lid","work":"loosen"}`))
	}
	s.done(followed, 1)
	if at, e := events.read(t); at != "1" || e.ID != "d1" {
		t.Errorf("event %s %s", at, e.ID)
	}
}
