package bench

import (
	"fmt"
	"net/http"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"drawdown/cmd/internal/record"
)

func TestPatterns(t *testing.T) {
	t.Parallel()
	s := served(t)
	s.write("broken.yaml", "drawdown: 1\ntitle: Broken\nkinds: {main: {thread: M8}}\nfasteners: [{id: A, at: [0, 0], kind: mian}]\n")
	s.write("pump.yaml", "drawdown: 1\nmachine: Test pump\nstrip: [lid.yaml, {part: rotor}]\n")
	s.write("p4-cover.yaml", strings.Replace(lid, "Lid", "Our own cover", 1))
	var list []struct {
		Name, Kind, Title, Machine, Reason string
		Fasteners                          int
		Builtin, Sound                     bool
	}
	s.want(http.StatusOK, s.ask("GET", "/api/patterns", "")).into(t, &list)
	found := map[string]string{}
	for _, p := range list {
		if found[p.Name] != "" {
			t.Errorf("%s is listed twice", p.Name)
		}
		found[p.Name] = fmt.Sprintf("%s, %s, %s, %d, %v, %v", p.Kind, p.Title, p.Machine, p.Fasteners, p.Builtin, p.Sound)
		if p.Sound == (p.Reason != "") {
			t.Errorf("%s: sound %v, reason %q", p.Name, p.Sound, p.Reason)
		}
	}
	// As in the files above; those of the built-in ones are pinned from
	// drawdown patterns.
	for name, want := range map[string]string{
		"lid":       "pattern, Lid, Test pump, 4, false, true",
		"broken":    "pattern, broken, , 0, false, false",
		"pump":      "machine, Test pump, Test pump, 4, false, true",
		"p4-cover":  "pattern, Our own cover, Test pump, 4, false, true",
		"p4-head":   "pattern, Cylinder head, Fernhollow P4 pump engine, 14, true, true",
		"p4-engine": "machine, Strip and rebuild of the P4, Fernhollow P4 pump engine, 162, true, true",
	} {
		if name != "p4-engine" && found[name] != want {
			t.Errorf("%s: %s, want %s", name, found[name], want)
		}
	}
	if !strings.HasPrefix(found["p4-engine"], "machine, ") {
		t.Errorf("p4-engine: %s", found["p4-engine"])
	}
}

// A refused start gives the reason, with the right status.
func TestRunsThatCannotStart(t *testing.T) {
	t.Parallel()
	s := served(t)
	s.write("broken.yaml", "drawdown: 1\ntitle: Broken\nfasteners: [\n")
	for body, want := range map[string]int{
		``: 400, `{`: 400, `{"of":"lid"`: 400, `[]`: 400, `"lid"`: 400, `{"of":7,"work":"loosen"}`: 400, `{"of":"lid","work":"loosen"} {}`: 400,
		`{"of":"lid","work":"open"}`: 400, `{"of":"lid"}`: 400, `{"of":"lid","work":"loosen","wrench":"W7"}`: 400,
		`{"of":"lide","work":"loosen"}`: 404, `{"work":"loosen"}`: 404, `{"of":"lid","work":"loosen","job":"J9"}`: 404, `{"of":"lid","work":"loosen","again":"R9"}`: 404,
		`{"of":"broken","work":"loosen"}`: 422, `{"of":"p4-engine","work":"loosen"}`: 422,
	} {
		got := s.ask("POST", "/api/runs", body)
		var said said
		got.into(t, &said)
		if got.status != want || said.Reason == "" {
			t.Errorf("%s: %s, want %d with a reason", body, got, want)
		}
	}
	if got := s.ask("POST", "/api/runs", `{"of":"lide","work":"loosen"}`); !contains(got.body, "did you mean lid?") {
		t.Errorf("no hint: %s", got)
	}
	if got := s.ask("POST", "/api/runs", "{\"of\": \"lid\",\n \"work\": }"); !contains(got.body, "line 2, column 10") {
		t.Errorf("no place: %s", got)
	}
	var list []record.Subject
	if s.ask("GET", "/api/runs", "").into(t, &list); len(list) != 0 {
		t.Errorf("%d runs were started", len(list))
	}
}

func TestEntriesThatAreNone(t *testing.T) {
	t.Parallel()
	s := served(t)
	id := s.run(`{"of":"lid","work":"loosen"}`)
	for body, want := range map[string]int{
		``: 400, `{`: 400, `[]`: 400, `{"entry":"a"} {}`: 400, `null`: 400, `{}`: 400,
		`{"entry":"a","act":"done","who":"RA"}`: 400, `{"entry":"a","act":"dance","step":1,"who":"RA"}`: 400, `{"entry":"a","act":"done","step":1}`: 400,
		`{"act":"done","step":1,"who":"RA"}`: 400, `{"entry":"a","act":"done","step":"1","who":"RA"}`: 400, `{"entry":"a","act":"done","step":99,"who":"RA"}`: 400,
		`{"entry":"a","act":"done","step":1,"who":"RA","time":"2020-01-01T00:00:00Z"}`:      400,
		`{"entry":"a","act":"done","step":1,"who":"RA","wrench_facts":{"listed":true}}`:     400,
		`{"entry":"a","act":"part","step":1,"who":"RA"}`:                                    400,
		`{"entry":"` + strings.Repeat("a", 200) + `","act":"done","step":1,"who":"RA"}`:     400,
		`{"entry":"a","act":"trouble","step":1,"who":"RA","trouble":"gone"}`:                400,
		`{"entry":"a","act":"finding","who":"RA","note":"crack","place":{"at":[1]}}`:        400,
		`{"entry":"a","act":"finding","who":"RA","note":"crack","place":{"fastener":"Z9"}}`: 400,
	} {
		got := s.enter(id, body)
		var said said
		got.into(t, &said)
		if got.status != want || said.Reason == "" || said.Code == "" {
			t.Errorf("%s: %s, want %d with a reason", body, got, want)
		}
	}
	if v := s.state(id); v.Version != 0 || v.Steps[0].State != "todo" {
		t.Errorf("%+v", v)
	}
	if got := s.enter(id, "{\"entry\":\"a\",\n\"act\" \"done\"}"); !contains(got.body, "line 2, column 7") {
		t.Errorf("no place: %s", got)
	}
	s.want(http.StatusNotFound, s.enter("R9", `{"entry":"a","act":"done","step":1,"who":"RA"}`))
	// do is another name for act.
	s.want(http.StatusOK, s.enter(id, `{"entry":"a","do":"done","step":1,"who":"RA","device_time":"2026-03-02T09:00:00+01:00"}`))
}

// Rules 1 to 3 from a client's view: the answers and their statuses.
func TestAnswersOfRules(t *testing.T) {
	t.Parallel()
	answersOfRules(t, served(t))
}

func answersOfRules(t *testing.T, s *shopfloor) {
	id := s.accepted()
	first := `{"entry":"a","act":"done","step":1,"who":"RA"}`
	var once, twice struct{ Version int }
	s.want(http.StatusOK, s.enter(id, first)).into(t, &once)
	s.clock.pass(time.Minute)
	s.want(http.StatusOK, s.enter(id, first)).into(t, &twice)
	if once.Version != 2 || twice != once {
		t.Errorf("the same entry is answered %v and then %v", once, twice)
	}
	got := s.want(http.StatusConflict, s.ask("POST", "/api/runs/"+id+"/entries", `{"entry":"b","act":"done","step":1,"who":"MK"}`, head("Accept-Language", "de-CH,de;q=0.9,en;q=0.5")))
	var rule said
	got.into(t, &rule)
	if rule.By != "RA" || !rule.At.Equal(s.clock.now().Add(-time.Minute)) || rule.Code != "run step done" || strings.Contains(rule.Reason, "done") {
		t.Errorf("%+v", rule)
	}
	s.want(http.StatusConflict, s.enter(id, `{"entry":"a","act":"done","step":2,"who":"RA"}`)) // the id is taken
	s.want(http.StatusConflict, s.enter(id, `{"entry":"c","act":"done","step":3,"who":"RA"}`)) // out of order
	refusedFirst := s.enter(id, `{"entry":"c","act":"done","step":3,"who":"RA"}`)
	s.done(id, 2)
	if again := s.enter(id, `{"entry":"c","act":"done","step":3,"who":"RA"}`); again.status != refusedFirst.status || string(again.body) != string(refusedFirst.body) {
		t.Errorf("an entry that was refused gets another answer: %s, then %s", refusedFirst, again)
	}
	if v := s.state(id); v.Version != 3 || *v.Next != 3 {
		t.Errorf("version %d, next %d", v.Version, *v.Next)
	}
}

// Tightening begins when the warnings are accepted, by name.
func TestAccept(t *testing.T) {
	t.Parallel()
	s := served(t)
	id := s.run(`{"of":"lid","work":"tighten"}`)
	if v := s.state(id); len(v.ToAccept) == 0 || v.ToAccept[0].Text == "" || v.State != "open" {
		t.Fatalf("%+v", v)
	}
	s.want(http.StatusConflict, s.enter(id, `{"entry":"a","act":"done","step":1,"who":"RA"}`))
	s.want(http.StatusOK, s.enter(id, `{"entry":"b","act":"accept","who":"RA"}`))
	s.done(id, 1)
	if v := s.state(id); len(v.ToAccept) != 0 {
		t.Errorf("%+v", v.ToAccept)
	}
	if v := s.state(s.run(`{"of":"lid","work":"loosen"}`)); len(v.ToAccept) != 0 {
		t.Errorf("loosening asks for %v", v.ToAccept)
	}
}

// The first tap counts; all others are told who made it. First principles.
func TestManyAtOneStep(t *testing.T) {
	t.Parallel()
	s := served(t)
	id := s.accepted()
	const tablets = 20
	statuses := make([]int, tablets)
	var all sync.WaitGroup
	for k := range tablets {
		all.Go(func() {
			statuses[k] = s.enter(id, fmt.Sprintf(`{"entry":"t%d","act":"done","step":1,"who":"W%d"}`, k, k)).status
		})
	}
	all.Wait()
	taken := countTaken(t, statuses)
	if v := s.state(id); taken != 1 || v.Version != 2 {
		t.Errorf("taken %d times, version %d", taken, v.Version)
	}
}

// countTaken counts the accepted taps; the others must meet a rule.
func countTaken(t *testing.T, statuses []int) (count int) {
	t.Helper()
	for _, status := range statuses {
		if status == http.StatusOK {
			count++
		} else if status != http.StatusConflict {
			t.Errorf("status %d", status)
		}
	}
	return count
}

// On many runs in parallel, no entry is lost or duplicated.
func TestManyRunsSideBySide(t *testing.T) {
	t.Parallel()
	s := served(t)
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			id := s.accepted()
			for _, step := range []int{1, 2, 3, 4} {
				s.done(id, step)
				if v := s.state(id); v.Version != step+1 || v.Steps[step-1].State != "done" {
					t.Errorf("%s after step %d: version %d", id, step, v.Version)
				}
			}
		})
	}
	all.Wait()
	if verdict, err := s.bench.store.Verify(""); err != nil || len(verdict.Faults) > 0 {
		t.Errorf("%v %v", err, verdict.Faults)
	}
}

// A restart shows what was shown before, and a run can be searched for.
func TestRestart(t *testing.T) {
	t.Parallel()
	s := served(t)
	id := s.run(`{"of":"lid","work":"loosen","number":"TP-0007","order":"A 12","note":"leaks","who":"RA"}`)
	s.done(id, 1)
	s.want(http.StatusOK, s.enter(id, `{"entry":"t","act":"trouble","step":2,"trouble":"seized","who":"RA","note":"rust"}`))
	before := s.ask("GET", "/api/runs/"+id, "")
	s.end()
	s.write("lid.yaml", "drawdown: 1\ntitle: Changed\nfasteners: [\n") // the run keeps what it was started from
	s.start()
	if diff := cmp.Diff(string(before.body), string(s.ask("GET", "/api/runs/"+id, "").body)); diff != "" {
		t.Error(diff)
	}
	s.want(http.StatusOK, s.ask("GET", "/runs/"+id, ""))
	s.want(http.StatusOK, s.ask("GET", "/runs/"+id+"/card.pdf", ""))
	for query, want := range map[string]int{
		"": 1, "?machine=tp-0007": 1, "?machine=TP-9": 0, "?joint=lid": 1, "?joint=head": 0, "?person=RA": 1, "?person=XX": 0, "?open=1": 1,
		"?from=2026-03-02&to=2026-03-02": 1, "?to=2026-02-01": 0, "?from=2026-04-01": 0,
	} {
		var list []record.Subject
		s.want(http.StatusOK, s.ask("GET", "/api/runs"+query, "")).into(t, &list)
		if len(list) != want {
			t.Errorf("%q finds %d", query, len(list))
		}
		if got := s.want(http.StatusOK, s.ask("GET", "/records"+query, "")); contains(got.body, "/records/"+id) != (want == 1) {
			t.Errorf("the page of %q shows it: %v", query, want != 1)
		}
	}
	s.want(http.StatusBadRequest, s.ask("GET", "/api/runs?from=yesterday", ""))
	s.want(http.StatusBadRequest, s.ask("GET", "/records?from=yesterday", ""))
}

// Rule 9 with the server's clock: a wait is over when its time has passed, also
// after a restart, and no sooner where the clock is set back.
func TestWaitByTheServersClock(t *testing.T) {
	t.Parallel()
	s := served(t)
	id := s.accepted()
	for _, step := range []int{1, 2, 3, 4} {
		s.done(id, step)
	}
	s.want(http.StatusConflict, s.enter(id, `{"entry":"e","act":"done","step":5,"who":"RA"}`))
	s.want(http.StatusOK, s.enter(id, `{"entry":"w","act":"begin","step":5,"who":"RA"}`))
	stateOf := func() string { return s.state(id).Steps[4].State }
	s.clock.pass(4 * time.Minute)
	s.end()
	s.start()
	s.clock.pass(-time.Hour)
	if got := stateOf(); got != "waiting" {
		t.Errorf("an hour set back: %s", got)
	}
	s.want(http.StatusConflict, s.enter(id, `{"entry":"f","act":"done","step":6,"who":"RA"}`))
	s.clock.pass(time.Hour)
	if got := stateOf(); got != "waiting" {
		t.Errorf("after 4 of 5 minutes: %s", got)
	}
	s.clock.pass(time.Minute)
	if got := stateOf(); got != "done" {
		t.Errorf("after 5 minutes: %s", got)
	}
	s.want(http.StatusOK, s.enter(id, `{"entry":"g","act":"done","step":6,"who":"RA"}`))
}

// The reasons follow the reader: what is asked for in the address first, then what
// was chosen, then what the browser prefers, then English.
func TestLanguage(t *testing.T) {
	t.Parallel()
	s := served(t)
	reason := func(path string, change ...func(*http.Request)) string {
		var v said
		s.ask("GET", path, "", change...).into(t, &v)
		return v.Reason
	}
	chosen := func(r *http.Request) { r.AddCookie(&http.Cookie{Name: languageCookie, Value: "fr"}) }
	for _, test := range []struct {
		got, want string
	}{
		{reason("/api/none"), "there is nothing at /api/none"},
		{reason("/api/none", head("Accept-Language", "pt, es;q=0.7")), "no hay nada en /api/none"},
		{reason("/api/none", head("Accept-Language", "xx")), "there is nothing at /api/none"},
		{reason("/api/none", head("Accept-Language", strings.Repeat("de,", 400))), "there is nothing at /api/none"},
		{reason("/api/none", head("Accept-Language", "es"), chosen), "il n’y a rien à /api/none"},
		{reason("/api/none?lang=de", head("Accept-Language", "es"), chosen), "unter /api/none ist nichts"},
		{reason("/api/none?lang=xx", head("Accept-Language", "es")), "no hay nada en /api/none"},
	} {
		if test.got != test.want {
			t.Errorf("%q, want %q", test.got, test.want)
		}
	}
	page := s.want(http.StatusOK, s.ask("GET", "/settings?lang=de", ""))
	if !contains(page.body, `lang="de"`) || !strings.Contains(page.head.Get("Set-Cookie"), languageCookie+"=de") {
		t.Errorf("%v", page.head)
	}
}

// A list of wrenches in the shop's folder decides what a wrench may set; what is old
// or unknown is flagged and taken.
func TestWrenches(t *testing.T) {
	t.Parallel()
	s := served(t)
	s.write("tools.yaml", `wrenches:
  - {name: small, number: W1, from: 2 N·m, to: 12 N·m, calibrated: 2026-01-10}
  - {name: large, number: W2, to: 100 N·m, calibrated: 2026-01-10}
  - {name: old, number: W3, to: 25 N·m, calibrated: 2024-11-05}
  - {name: none, to: 25 N·m}
`)
	var list []struct{ Number string }
	if s.want(http.StatusOK, s.ask("GET", "/api/wrenches", "")).into(t, &list); len(list) != 3 {
		t.Errorf("%v", list)
	}
	id := s.accepted()
	got := s.want(http.StatusConflict, s.enter(id, `{"entry":"a","act":"done","step":1,"who":"RA","wrench":"W2"}`)) // 10 N·m is under a fifth of 100
	if !contains(got.body, "20") {
		t.Errorf("the range is not said: %s", got)
	}
	s.want(http.StatusOK, s.enter(id, `{"entry":"b","act":"done","step":1,"who":"RA","wrench":"W1"}`))
	s.want(http.StatusOK, s.enter(id, `{"entry":"c","act":"done","step":2,"who":"RA","wrench":"W3"}`))
	s.want(http.StatusOK, s.enter(id, `{"entry":"d","act":"done","step":3,"who":"RA","wrench":"W9"}`))
	s.write("tools.yaml", "wrenches: []") // what was known then stays with the entries
	codes := map[string]int{}
	for _, f := range s.state(id).Flags {
		codes[string(f.Code)] = f.Step
	}
	if diff := cmp.Diff(map[string]int{"run wrench out of date": 2, "run wrench unknown": 3}, codes); diff != "" {
		t.Error(diff)
	}
}
