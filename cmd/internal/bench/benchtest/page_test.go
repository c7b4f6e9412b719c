// Package benchtest tries the bench as it is served, in a browser: pages, scripts,
// server, rules and record together.
package benchtest

import (
	"context"
	"errors"
	"net/url"
	"os"
	"path"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp/kb"

	"drawdown/cmd/internal/bench"
	"drawdown/render/page/pagetest"
	"drawdown/render/words"
)

func TestMain(m *testing.M) { os.Exit(pagetest.Main(m)) }

// served is a bench that can be stopped and started again.
type served struct {
	t       *testing.T
	options bench.Options
	address string // with its key
	stop    func()
}

func serve(t *testing.T) *served { return serveOn(t, "") }

// serveOn serves a page with its record in a database, or in a folder.
func serveOn(t *testing.T, store string) *served {
	t.Helper()
	s := &served{t: t, options: bench.Options{Folder: t.TempDir(), Data: t.TempDir(), Store: store, Words: words.English(), Limits: bench.Usual, Now: time.Now, Program: "test"}}
	s.start()
	t.Cleanup(func() { s.stop() })
	return s
}

// start serves at the port of before: a browser keeps what it holds by the address.
func (s *served) start() {
	s.t.Helper()
	b, err := bench.Open(s.options)
	if err != nil {
		s.t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	address, ended := make(chan string, 1), make(chan error, 1)
	serve := func() { ended <- b.Serve(ctx, func(a string) { address <- a }) }
	go serve()
	for s.address = ""; s.address == ""; {
		select {
		case s.address = <-address:
		case err := <-ended:
			if !errors.Is(err, bench.PortTaken) {
				s.t.Fatal(err)
			}
			go serve() // another program has the port for a moment
		}
	}
	at, err := url.Parse(s.address)
	if err != nil {
		s.t.Fatal(err)
	}
	if s.options.Port, err = strconv.Atoi(at.Port()); err != nil {
		s.t.Fatal(err)
	}
	s.stop = func() {
		cancel()
		if err := <-ended; err != nil {
			s.t.Error(err)
		}
		if err := b.Close(); err != nil {
			s.t.Error(err)
		}
		s.stop = func() {}
	}
}

func base(address string) string {
	before, _, _ := strings.Cut(address, "?")
	return strings.TrimSuffix(before, "/")
}

// A technician starts the built-in flywheel from the first page, taps while the
// program is down and comes back, finds a stretched bolt, replaces it, and seals
// the run: the record holds it all.
func TestFollowedToTheRecord(t *testing.T) {
	t.Parallel()
	s := serve(t)
	one := pagetest.NewTab(t, pagetest.Browser(t), pagetest.Tablet)
	one.Open(s.address)
	one.Click(`a[href="/patterns/p4-flywheel"]`)
	one.Until(`document.querySelector("#start-form") !== null`)
	one.Type(`input[name="number"]`, "P4-0117")
	one.Click(`button[value="tighten"]`)
	one.Until(`document.body.dataset.ready === "yes"`)
	here := pagetest.Evaluate[string](one, `location.pathname`)
	one.SignOn("RA", path.Base(here))
	ready := func() {
		one.Open(base(s.address) + here)
		one.Until(`document.body.dataset.ready === "yes"`)
	}
	ready()
	state := func() string {
		return pagetest.Evaluate[string](one, `document.querySelector(".ask").className.replace("ask ", "")`)
	}
	taps := 0
	tap := func() { // and wait until the server has taken it
		t.Helper()
		before := pagetest.Evaluate[string](one, `document.body.dataset.version`)
		one.Rest()
		one.Tap("#bar")
		one.Until(`document.body.dataset.version !== "` + before + `" && document.body.dataset.held === "0"`)
		taps++
	}
	isReady := func() { // what is asked for is there
		t.Helper()
		one.Rest()
		one.Tap("#bar")
		one.Until(`document.getElementById("readiness").open`)
		pagetest.Evaluate[any](one, `for (const input of document.querySelectorAll("#readiness input")) input.value = input.max; null`)
		one.Click("#readiness .go")
		one.Until(`!document.querySelector(".ask").classList.contains("ready")`)
	}
	for state() != "step" && taps < 5 { // what the check warns of is accepted, and the new bolts are there
		if state() == "ready" {
			isReady()
			continue
		}
		tap()
	}
	tap()
	tap()

	s.stop()
	one.Rest()
	one.Tap("#bar")
	one.Until(`document.body.dataset.held === "1"`)
	s.start()
	one.Open(s.address)
	ready()
	one.Until(`document.body.dataset.held === "0"`)
	if got := pagetest.Evaluate[int](one, `document.querySelectorAll('.mark[data-state="done"]').length`); got != 3 {
		t.Errorf("%d bolts are done, want 3", got)
	}

	one.Tap(".tool.trouble")
	one.Until(`document.getElementById("trouble").open`)
	one.Click(`#trouble .kind:nth-child(4) summary`)
	one.Click(`#trouble .kind:nth-child(4) button[type=submit]`)
	one.Until(`document.querySelector(".ask").classList.contains("settle")`)
	one.Rest()
	one.Tap("#bar")
	one.Until(`document.getElementById("settle").open`)
	one.Type("#settle textarea", "measured again, within the limit")
	one.Type("#settle [name=decided_by]", "LM")
	one.Click("#settle button[type=submit]")
	for taps < 60 && state() != "seal" {
		if state() == "settle" {
			one.Until(`!document.querySelector(".ask").classList.contains("settle")`)
			continue
		}
		if state() == "ready" {
			isReady()
			continue
		}
		if pagetest.Evaluate[bool](one, `!document.getElementById("bar").dataset.act`) {
			t.Fatalf("the work stops at %q: %s", state(), one.Text("#panel"))
		}
		tap()
	}
	one.Rest()
	one.Tap("#bar")
	one.Until(`document.getElementById("seal").open`)
	one.Type("#seal input[name=wrench]", "W-07")
	one.Type("#seal input[name=second]", "MB"+kb.Enter)
	one.Until(`document.querySelector(".ask").classList.contains("over")`)
	one.Rest()
	one.Tap("#bar")
	one.Until(`location.pathname.startsWith("/records/")`)
	record := one.Text("#content")
	for _, want := range []string{"Sealed by RA", "Second signature: MB", "Stretched", "P4-0117", "measured again"} {
		if !strings.Contains(record, want) {
			t.Errorf("the record does not say %q: %s", want, record)
		}
	}
	one.Quiet("Failed to load resource", "ERR_")
}

// All pages of the bench open without a complaint, on a telephone and in German.
func TestPagesOpen(t *testing.T) {
	t.Parallel()
	s := serve(t)
	one := pagetest.NewTab(t, pagetest.Browser(t), pagetest.Phone)
	one.Language("de")
	one.Open(s.address)
	for _, path := range []string{"/", "/patterns/p4-head", "/patterns/p4-v-head-right", "/records", "/share", "/settings", "/records?person=RA"} {
		one.Open(base(s.address) + path)
		if got := pagetest.Evaluate[string](one, `document.documentElement.lang`); got != "de" {
			t.Errorf("%s is in %q", path, got)
		}
		if got := pagetest.Evaluate[int](one, `document.documentElement.scrollWidth`); got > 360 {
			t.Errorf("%s is %d px wide", path, got)
		}
		if one.Text("h1") == "" {
			t.Errorf("%s has no heading", path)
		}
	}
	one.Quiet()
}
