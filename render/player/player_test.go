package player_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/google/go-cmp/cmp"

	"drawdown/geometry/testkit"
	"drawdown/patterns"
	"drawdown/patterns/patterntest"
	"drawdown/render/frames"
	"drawdown/render/player"
	"drawdown/render/words"
)

// planOf plans a built-in pattern, or the text of one.
var planOf = patterntest.Plan

// written writes the page of a pattern in a language.
func written(t testing.TB, pattern, language string, loosening bool) (string, frames.Playback) {
	t.Helper()
	w, err := words.Find(language)
	if err != nil {
		t.Fatal(err)
	}
	show := frames.Lay(frames.Work{Plan: planOf(t, pattern), Words: w, Loosening: loosening})
	var b bytes.Buffer
	if err := player.Write(&b, show, w); err != nil {
		t.Fatal(err)
	}
	return b.String(), show
}

// The page names nothing outside itself: no address but the name of the SVG
// elements, no import, and a policy that forbids all requests.
func TestSelfContained(t *testing.T) {
	for _, language := range words.Languages() {
		text, _ := written(t, "p4-head", language, false)
		for _, address := range regexp.MustCompile(`(?:https?:)?//[a-zA-Z][^"' ]*|@import|url\([^)]*\)`).FindAllString(text, -1) {
			if !strings.HasPrefix(address, "// ") {
				t.Errorf("%s: the page names %q", language, address)
			}
		}
		if !strings.Contains(text, `content="default-src 'none';`) || !strings.Contains(text, `<html lang="`+language+`">`) {
			t.Errorf("%s: no policy, or no language", language)
		}
		if strings.Contains(text, "ZgotmplZ") {
			t.Errorf("%s: a value was left out as unsafe", language)
		}
	}
}

// What a file says stays text, whatever it says.
func TestHostileWords(t *testing.T) {
	text, _ := written(t, `
drawdown: 1
title: </title><script>alert(1)</script> "lid"
fasteners: [{row: {count: 3, pitch: 60, id: C}}]
tighten: {stages: [{torque: 20 N·m, note: "</script><img src=x>"}], source: works manual 4.2}
`, "en", false)
	if strings.Count(text, "<script") != 2 || strings.Contains(text, "<img") {
		t.Errorf("words of the file became markup")
	}
}

// browser starts a browser for a test; where there is none the test is skipped.
func browser(t *testing.T) context.Context {
	t.Helper()
	if testing.Short() {
		t.Skip("a browser takes long to start")
	}
	path := testkit.Program(t, "chromium", "chromium-browser", "google-chrome", "chrome", "headless-shell")
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.WindowSize(1366, 768))
	ctx, cancel := chromedp.NewExecAllocator(context.Background(), options...)
	t.Cleanup(cancel)
	ctx, cancel = chromedp.NewContext(ctx)
	t.Cleanup(cancel)
	if err := chromedp.Do(ctx); err != nil { // starts it
		t.Fatal(err)
	}
	ctx, cancel = context.WithTimeout(ctx, 90*time.Second)
	t.Cleanup(cancel)
	return ctx
}

// evaluate gives the value of an expression in the page.
func evaluate[T any](t *testing.T, ctx context.Context, expression string) T {
	t.Helper()
	value, err := chromedp.Run(ctx, chromedp.Evaluate[T](expression))
	if err != nil {
		t.Fatalf("%s: %v", expression, err)
	}
	return value
}

func do(t *testing.T, ctx context.Context, actions ...chromedp.Action[chromedp.Void]) {
	t.Helper()
	if err := chromedp.Do(ctx, actions...); err != nil {
		t.Fatal(err)
	}
}

func click(id string) chromedp.Action[chromedp.Void] { return chromedp.Click(chromedp.CSS("#" + id)) }

func open(path string) chromedp.Action[chromedp.Void] { return chromedp.Navigate("file://" + path) }

// enable has the browser tell of requests and of entries in its log.
func enable() chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, target *chromedp.Target) error {
		if _, err := cdp.Call(ctx, target, network.Enable, network.EnableParams{}); err != nil {
			return err
		}
		_, err := cdp.Call(ctx, target, log.Enable, cdp.Empty{})
		return err
	})
}

// watched collects what goes wrong in a page, and every request that it makes.
type watched struct {
	mu       sync.Mutex
	problems []string
	requests []string
}

func (w *watched) listen(t *testing.T, ctx context.Context) {
	t.Helper()
	err := chromedp.Listen(ctx, func(event any) {
		w.mu.Lock()
		defer w.mu.Unlock()
		switch e := event.(type) {
		case *runtime.EventExceptionThrown:
			w.problems = append(w.problems, fmt.Sprint(e.ExceptionDetails.Text, e.ExceptionDetails.Exception))
		case *runtime.EventConsoleAPICalled:
			w.problems = append(w.problems, fmt.Sprintf("console: %s", e.Type))
		case *log.EventEntryAdded:
			w.problems = append(w.problems, e.Entry.Text)
		case *network.EventRequestWillBeSent:
			w.requests = append(w.requests, e.Request.URL)
		}
	})
	if err != nil {
		t.Fatal(err)
	}
	do(t, ctx, enable())
}

// The page is played to its end in a browser, from a file: every step is shown
// once, stepping and the keys work, nothing goes wrong, and nothing but the
// page itself is asked for.
func TestPlays(t *testing.T) {
	ctx := browser(t)
	html, show := written(t, "p4-head", "en", false)
	path := filepath.Join(t.TempDir(), "order.html")
	if err := os.WriteFile(path, []byte(html), 0o644); err != nil {
		t.Fatal(err)
	}
	var seen watched
	seen.listen(t, ctx)
	at := func() string { return evaluate[string](t, ctx, `document.body.dataset.at`) }
	playing := func() string { return evaluate[string](t, ctx, `document.body.dataset.playing`) }
	text := func(id string) string {
		return evaluate[string](t, ctx, `document.getElementById("`+id+`").textContent`)
	}
	want := func(what, wantAt, wantNumber, wantFigure string) {
		t.Helper()
		if at() != wantAt || text("number") != wantNumber || text("figure") != wantFigure || playing() != "no" {
			t.Errorf("%s: at %s shows %q %q, playing %s; want at %s %q %q", what, at(), text("number"), text("figure"), playing(), wantAt, wantNumber, wantFigure)
		}
	}

	do(t, ctx, open(path))
	want("opened", "-1", "Ready: all screwed in by hand", "")
	do(t, ctx, click("forward"))
	want("stepped on", "0", "1", "20 N·m")
	if got := text("stage"); got != "Stage 1 of 5" {
		t.Errorf("the stage is %q", got)
	}
	do(t, ctx, click("forward"), click("back"))
	want("stepped back", "0", "1", "20 N·m")
	do(t, ctx, chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowRight))
	want("two arrow keys", "2", "3", "20 N·m")
	do(t, ctx, chromedp.KeyEvent(kb.ArrowLeft))
	want("an arrow key back", "1", "2", "20 N·m")

	// The marks tell the state: one now, those before it tight, small ones out.
	states := evaluate[string](t, ctx, `JSON.stringify([...document.querySelectorAll('figure [data-role="mark"]')].reduce((all, e) => {
		(all[e.dataset.state] = all[e.dataset.state] || {})[e.dataset.id] = 1; return all; }, {}))`)
	var marks map[string]map[string]int
	if err := json.Unmarshal([]byte(states), &marks); err != nil {
		t.Fatal(err)
	}
	if len(marks["now"]) != 1 || marks["now"]["M8"] != 1 || marks["tight"]["M3"] != 1 || len(marks["tight"]) != 1 || len(marks["out"]) != 4 || len(marks["open"]) != 8 {
		t.Errorf("marks at the second step: %v", marks)
	}
	do(t, ctx, chromedp.KeyEvent(kb.Home), chromedp.KeyEvent(kb.ArrowLeft))
	want("before the start", "-1", "Ready: all screwed in by hand", "")

	// Played by its key, with the waits between steps cut short: every step is
	// shown once.
	evaluate[bool](t, ctx, `window.shown = []; window.later = window.setTimeout; window.setTimeout = (f, ms) => later(f, ms > 5000 ? ms : 0);
		new MutationObserver(() => shown.push(Number(document.body.dataset.at))).observe(document.body, {attributeFilter: ["data-at"]}); true`)
	do(t, ctx, chromedp.KeyEvent(" "), chromedp.Poll[chromedp.Void](fmt.Sprintf(`document.body.dataset.at == "%d"`, len(show.Steps))))
	want("played", fmt.Sprint(len(show.Steps)), "All done", "")
	// 4 stages of 10 and one of 4, by the pattern file.
	if len(show.Steps) != 44 {
		t.Errorf("%d steps", len(show.Steps))
	}
	var order []int
	for k := range len(show.Steps) + 1 {
		order = append(order, k)
	}
	if diff := cmp.Diff(order, evaluate[[]int](t, ctx, `shown`)); diff != "" {
		t.Errorf("the steps as played (- wanted, + shown):\n%s", diff)
	}

	// Played again from the end it starts anew, and pauses.
	evaluate[bool](t, ctx, `window.setTimeout = later; true`)
	do(t, ctx, click("play"))
	if playing() != "yes" || text("play-word") != "Pause" {
		t.Errorf("played again: at %s, playing %s", at(), playing())
	}
	do(t, ctx, click("play"))
	here := at()
	do(t, ctx, chromedp.Sleep(1200*time.Millisecond)) // longer than a step at speed 1
	if at() != here || playing() != "no" {
		t.Errorf("it goes on when paused: from %s to %s", here, at())
	}
	do(t, ctx, chromedp.KeyEvent("+"), chromedp.KeyEvent("+"), chromedp.KeyEvent("-"))
	if got := text("speed-word"); got != "1.5×" {
		t.Errorf("the speed is %s", got)
	}

	seen.mu.Lock()
	defer seen.mu.Unlock()
	for _, problem := range seen.problems {
		t.Errorf("the page says: %s", problem)
	}
	for _, request := range seen.requests {
		if request != "file://"+path && !strings.HasPrefix(request, "data:") {
			t.Errorf("the page asks for %s", request)
		}
	}
	if len(seen.requests) == 0 {
		t.Error("not even the page itself was asked for: requests are not watched")
	}
}

// The watch sees a page that asks for more and one that breaks: else silence
// would prove nothing.
func TestWatchSees(t *testing.T) {
	ctx := browser(t)
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/" {
			w.Header().Set("Content-Type", "text/html")
			fmt.Fprint(w, `<img src="/other.png"><script>throw new Error("broken")</script>`)
		}
	}))
	defer server.Close()
	var seen watched
	seen.listen(t, ctx)
	do(t, ctx, chromedp.Navigate(server.URL))
	seen.mu.Lock()
	defer seen.mu.Unlock()
	if len(seen.problems) == 0 || !strings.Contains(strings.Join(seen.requests, " "), "/other.png") {
		t.Errorf("problems %q, requests %q", seen.problems, seen.requests)
	}
}

// Every pattern opens in every language without a complaint, and reduced
// motion leaves no animation running.
func TestOpensEverywhere(t *testing.T) {
	ctx := browser(t)
	var seen watched
	seen.listen(t, ctx)
	for k, name := range patterns.Builtin() {
		language := words.Languages()[k%len(words.Languages())]
		text, show := written(t, name, language, k%2 == 1)
		path := filepath.Join(t.TempDir(), name+".html")
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		do(t, ctx, open(path), click("forward"))
		moving := evaluate[int](t, ctx, `document.getAnimations().length`)
		do(t, ctx, reducedMotion("reduce"))
		calm := evaluate[int](t, ctx, `document.getAnimations().length`)
		do(t, ctx, reducedMotion("no-preference"), click("last"))
		at := evaluate[string](t, ctx, `document.body.dataset.at`)
		if moving == 0 || calm != 0 {
			t.Errorf("%s: %d animations, %d where motion is reduced", name, moving, calm)
		}
		if at != fmt.Sprint(len(show.Steps)) {
			t.Errorf("%s: the end is at %s of %d", name, at, len(show.Steps))
		}
	}
	seen.mu.Lock()
	defer seen.mu.Unlock()
	for _, problem := range seen.problems {
		t.Errorf("a page says: %s", problem)
	}
}

func reducedMotion(value string) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, target *chromedp.Target) error {
		_, err := cdp.Call(ctx, target, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{{Name: "prefers-reduced-motion", Value: value}},
		})
		return err
	})
}
