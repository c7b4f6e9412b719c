package bench

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"drawdown/render/words"
)

// lid is a pattern of four bolts with a wait between two stages, of which nothing
// has to be accepted but what cannot be judged.
const lid = `drawdown: 1
title: Lid
machine: Test pump
kinds: {main: {thread: M8}}
fasteners: [{row: {count: 4, pitch: 60, kind: main, id: A}}]
tighten:
  order: row
  stages: [{torque: 10 N·m}, {wait: 5 min}, {torque: 20 N·m}]
`

// clock is the server's clock, which a test sets.
type clock struct {
	mu sync.Mutex
	t  time.Time
}

func (c *clock) now() time.Time {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.t
}

func (c *clock) pass(d time.Duration) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.t = c.t.Add(d)
}

// shopfloor is a page that is served, and who uses it.
type shopfloor struct {
	t      testing.TB
	bench  *Bench
	clock  *clock
	shop   string // folder
	data   string
	base   string
	key    string
	client *http.Client
	before func() // each request; nil: nothing
	end    func()
}

// served serves a page with the pattern lid in its folder.
func served(t testing.TB, change ...func(*Options)) *shopfloor {
	t.Helper()
	s := &shopfloor{t: t, shop: t.TempDir(), data: t.TempDir(), clock: &clock{t: time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)}}
	s.write("lid.yaml", lid)
	s.start(change...)
	return s
}

func (s *shopfloor) write(name, text string) {
	s.t.Helper()
	if err := os.WriteFile(filepath.Join(s.shop, name), []byte(text), 0o666); err != nil {
		s.t.Fatal(err)
	}
}

// start serves the page; after stop it is a restart.
func (s *shopfloor) start(change ...func(*Options)) {
	s.t.Helper()
	o := Options{Folder: s.shop, Data: s.data, Words: words.English(), Limits: Usual, Now: s.clock.now, Program: "test"}
	for _, f := range change {
		f(&o)
	}
	made, err := Open(o)
	if err != nil {
		s.t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	address, ended := make(chan string, 1), make(chan error, 1)
	go func() { ended <- made.Serve(ctx, func(a string) { address <- a }) }()
	select {
	case a := <-address:
		s.base, s.key, _ = strings.Cut(a, "/?key=")
	case err := <-ended:
		s.t.Fatal(err)
	}
	s.bench = made
	s.client = &http.Client{Transport: &http.Transport{MaxIdleConnsPerHost: 100}, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	var once sync.Once
	s.end = func() {
		once.Do(func() {
			s.client.CloseIdleConnections()
			cancel()
			if err := <-ended; err != nil {
				s.t.Error(err)
			}
			if err := made.Close(); err != nil {
				s.t.Error(err)
			}
		})
	}
	s.t.Cleanup(s.end)
}

// reply is an answer as it came.
type reply struct {
	status int
	head   http.Header
	body   []byte
}

func (r reply) String() string { return fmt.Sprintf("%d %s", r.status, r.body) }

// into reads the JSON of an answer.
func (r reply) into(t testing.TB, v any) {
	t.Helper()
	if err := json.Unmarshal(r.body, v); err != nil {
		t.Fatalf("%v in %s", err, r)
	}
}

// said is what an answer says that something was not done for.
type said struct {
	Reason string    `json:"reason"`
	Code   string    `json:"code"`
	By     string    `json:"by"`
	At     time.Time `json:"at"`
}

// ask sends a request with the key, changed as a test wants.
func (s *shopfloor) ask(method, path, body string, change ...func(*http.Request)) reply {
	s.t.Helper()
	if s.before != nil {
		s.before()
	}
	r, err := http.NewRequest(method, s.base+path, strings.NewReader(body))
	if err != nil {
		s.t.Fatal(err)
	}
	r.Header.Set("Authorization", "Bearer "+s.key)
	for _, f := range change {
		f(r)
	}
	return s.do(r)
}

func (s *shopfloor) do(r *http.Request) reply {
	s.t.Helper()
	answer, err := s.client.Do(r)
	if err != nil {
		s.t.Fatal(err)
	}
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	if err != nil {
		s.t.Fatal(err)
	}
	return reply{answer.StatusCode, answer.Header, text}
}

func head(key, value string) func(*http.Request) {
	return func(r *http.Request) { r.Header.Set(key, value) }
}

func withoutKey(r *http.Request) { r.Header.Del("Authorization") }

func asHost(host string) func(*http.Request) { return func(r *http.Request) { r.Host = host } }

// want fails unless the answer has the status, and returns it.
func (s *shopfloor) want(status int, r reply) reply {
	s.t.Helper()
	if r.status != status {
		s.t.Fatalf("answered %s, want %d", r, status)
	}
	return r
}

// run starts a run and returns its id.
func (s *shopfloor) run(body string) string {
	s.t.Helper()
	var made struct{ Run string }
	s.want(http.StatusCreated, s.ask("POST", "/api/runs", body)).into(s.t, &made)
	return made.Run
}

// enter sends an entry to a run.
func (s *shopfloor) enter(run, entry string) reply {
	s.t.Helper()
	return s.ask("POST", "/api/runs/"+run+"/entries", entry)
}

// state is what the tests look at of a run.
type state struct {
	State    string
	Version  int
	Next     *int
	ToAccept []worded `json:"to_accept"`
	Flags    []flagged
	Steps    []struct {
		Step  int
		Stage int
		ID    string
		Do    string
		State string
		By    string
	}
	Needs []struct {
		Kind  string
		ID    string
		Count int
		Ready int
	}
}

func (s *shopfloor) state(run string) (v state) {
	s.t.Helper()
	s.want(http.StatusOK, s.ask("GET", "/api/runs/"+run, "")).into(s.t, &v)
	return v
}

// done does a step and fails unless it is taken.
func (s *shopfloor) done(run string, step int) {
	s.t.Helper()
	s.want(http.StatusOK, s.enter(run, fmt.Sprintf(`{"entry":"d%d","act":"done","step":%d,"who":"RA"}`, step, step)))
}

// accepted starts a tightening run of the lid with its warnings accepted.
func (s *shopfloor) accepted() string {
	s.t.Helper()
	id := s.run(`{"of":"lid","work":"tighten"}`)
	s.want(http.StatusOK, s.enter(id, `{"entry":"ok","act":"accept","who":"RA"}`))
	return id
}

func contains(text []byte, want string) bool { return bytes.Contains(text, []byte(want)) }
