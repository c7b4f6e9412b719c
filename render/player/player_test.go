package player_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/google/go-cmp/cmp"

	"drawdown/patterns"
	"drawdown/patterns/patterntest"
	"drawdown/render/frames"
	"drawdown/render/page/pagetest"
	"drawdown/render/player"
	"drawdown/render/words"
)

// planOf plans a built-in pattern, or a pattern given as text.
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

// The page refers to nothing outside itself: no address except the SVG
// namespace, no import, and a policy that forbids all requests.
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

// Text from a file stays text, whatever it contains.
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

func TestMain(m *testing.M) { os.Exit(pagetest.Main(m)) }

// open opens a page written to a file, and returns its path.
func open(one *pagetest.Tab, html string) (path string) {
	one.T.Helper()
	path = filepath.Join(one.T.TempDir(), "order.html")
	if err := os.WriteFile(path, []byte(html), 0o644); err != nil {
		one.T.Fatal(err)
	}
	one.Open("file://" + path)
	return path
}

func at(one *pagetest.Tab) string { return pagetest.Evaluate[string](one, `document.body.dataset.at`) }

// The page is played to its end in a browser, from a file: every step is shown
// once, stepping and the keys work, there are no errors, and only the page
// itself is requested.
func TestPlays(t *testing.T) {
	t.Parallel()
	html, show := written(t, "p4-head", "en", false)
	one := pagetest.NewTab(t, pagetest.Browser(t), pagetest.Desktop)
	path := open(one, html)
	playing := func() string { return pagetest.Evaluate[string](one, `document.body.dataset.playing`) }
	text := func(id string) string { return one.Text("#" + id) }
	want := func(what, wantAt, wantNumber, wantFigure string) {
		t.Helper()
		if at(one) != wantAt || text("number") != wantNumber || text("figure") != wantFigure || playing() != "no" {
			t.Errorf("%s: at %s shows %q %q, playing %s; want at %s %q %q", what, at(one), text("number"), text("figure"), playing(), wantAt, wantNumber, wantFigure)
		}
	}

	want("opened", "-1", "Ready: all screwed in by hand", "")
	one.Click("#forward")
	want("stepped on", "0", "1", "20 N·m")
	if got := text("stage"); got != "Stage 1 of 5" {
		t.Errorf("the stage is %q", got)
	}
	one.Click("#forward")
	one.Click("#back")
	want("stepped back", "0", "1", "20 N·m")
	one.Do(chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowRight))
	want("two arrow keys", "2", "3", "20 N·m")
	one.Do(chromedp.KeyEvent(kb.ArrowLeft))
	want("an arrow key back", "1", "2", "20 N·m")

	// The marks show the state: one now, those before it tight, small ones
	// removed.
	states := pagetest.Evaluate[string](one, `JSON.stringify([...document.querySelectorAll('figure [data-role="mark"]')].reduce((all, e) => {
		(all[e.dataset.state] = all[e.dataset.state] || {})[e.dataset.id] = 1; return all; }, {}))`)
	var marks map[string]map[string]int
	if err := json.Unmarshal([]byte(states), &marks); err != nil {
		t.Fatal(err)
	}
	if len(marks["now"]) != 1 || marks["now"]["M8"] != 1 || marks["tight"]["M3"] != 1 || len(marks["tight"]) != 1 || len(marks["out"]) != 4 || len(marks["open"]) != 8 {
		t.Errorf("marks at the second step: %v", marks)
	}
	one.Do(chromedp.KeyEvent(kb.Home), chromedp.KeyEvent(kb.ArrowLeft))
	want("before the start", "-1", "Ready: all screwed in by hand", "")

	// Played with its key, with the waits between steps shortened: every step
	// is shown once.
	pagetest.Evaluate[bool](one, `window.shown = []; window.later = window.setTimeout; window.setTimeout = (f, ms) => later(f, ms > 5000 ? ms : 0);
		new MutationObserver(() => shown.push(Number(document.body.dataset.at))).observe(document.body, {attributeFilter: ["data-at"]}); true`)
	one.Do(chromedp.KeyEvent(" "))
	one.Until(fmt.Sprintf(`document.body.dataset.at == "%d" && document.body.dataset.playing == "no"`, len(show.Steps)))
	want("played", fmt.Sprint(len(show.Steps)), "All done", "")
	// 4 stages of 10 and one of 4, as in the pattern file.
	if len(show.Steps) != 44 {
		t.Errorf("%d steps", len(show.Steps))
	}
	var order []int
	for k := range len(show.Steps) + 1 {
		order = append(order, k)
	}
	if diff := cmp.Diff(order, pagetest.Evaluate[[]int](one, `shown`)); diff != "" {
		t.Errorf("the steps as played (- wanted, + shown):\n%s", diff)
	}

	// Played again from the end, it starts again, and pauses.
	pagetest.Evaluate[bool](one, `window.setTimeout = later; true`)
	one.Click("#play")
	if playing() != "yes" || text("play-word") != "Pause" {
		t.Errorf("played again: at %s, playing %s", at(one), playing())
	}
	one.Click("#play")
	here := at(one)
	one.Do(chromedp.Sleep(1200 * time.Millisecond)) // longer than a step at speed 1
	if at(one) != here || playing() != "no" {
		t.Errorf("it goes on when paused: from %s to %s", here, at(one))
	}
	one.Do(chromedp.KeyEvent("+"), chromedp.KeyEvent("+"), chromedp.KeyEvent("-"))
	if got := text("speed-word"); got != "1.5×" {
		t.Errorf("the speed is %s", got)
	}

	one.Quiet()
	requests := one.Requests()
	for _, request := range requests {
		if request != "file://"+path && !strings.HasPrefix(request, "data:") {
			t.Errorf("the page asks for %s", request)
		}
	}
	if len(requests) == 0 {
		t.Error("not even the page itself was asked for: requests are not watched")
	}
}

// The test notices a page that requests more and one that breaks; otherwise
// silence would prove nothing.
func TestWatchSees(t *testing.T) {
	t.Parallel()
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/" {
			w.Header().Set("Content-Type", "text/html")
			fmt.Fprint(w, `<img src="/other.png"><script>throw new Error("broken")</script>`)
		}
	}))
	defer server.Close()
	one := pagetest.NewTab(t, pagetest.Browser(t), pagetest.Desktop)
	one.Open(server.URL)
	if problems, requests := one.Problems(), one.Requests(); len(problems) == 0 || !strings.Contains(strings.Join(requests, " "), "/other.png") {
		t.Errorf("problems %q, requests %q", problems, requests)
	}
}

// Every pattern opens in every language without errors, and reduced motion
// leaves no animation running.
func TestOpensEverywhere(t *testing.T) {
	t.Parallel()
	one := pagetest.NewTab(t, pagetest.Browser(t), pagetest.Desktop)
	for k, name := range patterns.Builtin() {
		language := words.Languages()[k%len(words.Languages())]
		html, show := written(t, name, language, k%2 == 1)
		open(one, html)
		one.Click("#forward")
		moving := pagetest.Evaluate[int](one, `document.getAnimations().length`)
		one.Motion("reduce")
		calm := pagetest.Evaluate[int](one, `document.getAnimations().length`)
		one.Motion("no-preference")
		one.Click("#last")
		if moving == 0 || calm != 0 {
			t.Errorf("%s: %d animations, %d where motion is reduced", name, moving, calm)
		}
		if got := at(one); got != fmt.Sprint(len(show.Steps)) {
			t.Errorf("%s: the end is at %s of %d", name, got, len(show.Steps))
		}
		one.Quiet()
	}
}
