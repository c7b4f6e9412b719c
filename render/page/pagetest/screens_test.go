package pagetest

import (
	"cmp"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"drawdown/geometry/finding"
	"drawdown/geometry/testkit"
	"drawdown/render/page"
	"drawdown/sequence/run"
)

// screen is one thing to look at.
type screen struct {
	name, path string
	then       string // a script that opens it
}

// screens sets up a bench with a run in each state, and lists its screens.
func screens(b *bench) []screen {
	fresh := b.open("p4-head", run.Tighten)
	loosen := b.open("p4-head", run.Loosen)
	for n := range 5 {
		b.take(loosen, run.Entry{Act: run.Done, Step: n + 1})
	}
	angle := b.open("p4-head", run.Tighten)
	for n := range 34 {
		b.take(angle, run.Entry{Act: run.Done, Step: n + 1})
	}
	accept := b.open("p4-head", run.Tighten, finding.Warned("list names nothing", nil))
	trouble := b.open("p4-head", run.Tighten)
	for n := range 12 {
		b.take(trouble, run.Entry{Act: run.Done, Step: n + 1})
	}
	b.take(trouble, run.Entry{Act: run.Report, Trouble: run.Broken, Step: 13, Note: "snapped under the head"})
	caps := b.open("p4-cam-caps", run.Tighten)
	sump := b.open("p4-sump", run.Tighten)
	b.take(sump, run.Entry{Act: run.Done, Step: 1}, run.Entry{Act: run.LeaveOut, Step: 2, Note: "not there on this one"})
	done := b.open("p4-flywheel", run.Tighten)
	b.finish(done)
	sealed := b.open("p4-flywheel", run.Tighten)
	b.finish(sealed)
	b.take(sealed, run.Entry{Act: run.Measure, Measure: "check pass", Value: "61", Unit: "N·m", Step: 1}, run.Entry{Act: run.HandOver, To: "RA"}, run.Entry{Act: run.Seal, Second: "MB", Wrench: "W-07"})
	stuck, decided, renewed := b.open("p4-head", run.Tighten), b.open("p4-head", run.Tighten), b.open("p4-head", run.Tighten)
	for n := range 20 {
		for _, id := range []string{stuck, decided, renewed} {
			b.take(id, run.Entry{Act: run.Done, Step: n + 1})
		}
	}
	b.take(stuck, run.Entry{Act: run.Unsure, Step: 21})
	b.take(decided, run.Entry{ID: "cut", Act: run.Unsure, Step: 21}, run.Entry{Act: run.Settle, Of: "cut", Note: "Turned 60° by the mark: turn 30° more, then stop"})
	b.take(renewed, run.Entry{ID: "new", Act: run.Replace, Step: 21, Note: "thread burred"})
	dialog := func(id string) string { return `document.querySelector('#` + id + `').showModal()` }
	return []screen{
		{name: "home", path: "/"}, {name: "pattern", path: "/patterns/p4-head"},
		{name: "run", path: "/runs/" + fresh}, {name: "run-loosen", path: "/runs/" + loosen}, {name: "run-angle", path: "/runs/" + angle},
		{name: "run-accept", path: "/runs/" + accept}, {name: "run-blocked", path: "/runs/" + trouble}, {name: "run-caps", path: "/runs/" + caps},
		{name: "run-sump", path: "/runs/" + sump}, {name: "run-alldone", path: "/runs/" + done}, {name: "run-sealed", path: "/runs/" + sealed},
		{name: "trouble", path: "/runs/" + angle, then: `document.querySelector('.tool.trouble').click(); document.querySelectorAll('.kind')[2].open = true`},
		{name: "settle", path: "/runs/" + trouble, then: `document.querySelector('#bar').click()`},
		{name: "other", path: "/runs/" + angle, then: `document.querySelector('[data-id="M1"]').dispatchEvent(new MouseEvent("click", {bubbles: true}))`},
		{name: "more", path: "/runs/" + angle, then: `document.querySelector('[data-open="more"]').click()`},
		{name: "handover", path: "/runs/" + trouble, then: `document.querySelector('[data-open="handover"]').click()`},
		{name: "seal", path: "/runs/" + done, then: `document.querySelector('#bar').click()`},
		{name: "who", path: "/runs/" + fresh, then: `document.querySelector('#who-button').click()`},
		{name: "run-unsure", path: "/runs/" + stuck}, {name: "run-settled", path: "/runs/" + decided}, {name: "run-renewed", path: "/runs/" + renewed},
		{name: "blocked", path: "/runs/" + stuck, then: `document.querySelector('[data-id="M3"]').dispatchEvent(new MouseEvent("click", {bubbles: true}))`},
		{name: "unsure", path: "/runs/" + angle, then: `document.querySelector('#more [data-open="unsure"]').click()`},
		{name: "replace", path: "/runs/" + angle, then: dialog("replace")},
		{name: "answer", path: "/runs/" + renewed, then: `document.querySelector('#bar').click()`},
		{name: "readiness", path: "/runs/" + fresh, then: `document.querySelector('[data-open="readiness"]').click()`},
		{name: "measure", path: "/runs/" + fresh, then: dialog("measure")}, {name: "shim", path: "/runs/" + caps, then: dialog("measure")},
		{name: "finding", path: "/runs/" + fresh, then: dialog("finding")}, {name: "finding-loosen", path: "/runs/" + loosen, then: dialog("finding")},
		{name: "job", path: "/jobs/J1"}, {name: "records", path: "/records"}, {name: "record", path: "/records/" + sealed}, {name: "record-trouble", path: "/records/" + trouble},
		{name: "share", path: "/share"}, {name: "share-off", path: "/share?off"}, {name: "join", path: "/join"}, {name: "join-wrong", path: "/join?wrong"},
		{name: "settings", path: "/settings"}, {name: "message", path: "/message/no%20key"},
	}
}

// finish does every step of a run.
func (b *bench) finish(id string) {
	b.t.Helper()
	for range 1000 {
		b.mu.Lock()
		v := b.runs[id].state.At(b.clock())
		b.mu.Unlock()
		if v.Next == nil {
			return
		}
		b.take(id, run.Entry{Act: run.Done, Step: *v.Next})
	}
	b.t.Fatal("it never ends")
}

// faults finds layout faults of a page: what is outside the screen, and what is
// too small for a thumb.
const faults = `(() => {
	const found = [];
	const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
	if (wide > 0) found.push("the page is " + wide + " px too wide");
	const dialog = document.querySelector("dialog[open]");
	for (const e of (dialog || document).querySelectorAll("button, a.button, input, select, textarea, summary")) {
		const b = e.getBoundingClientRect();
		if (b.width === 0 || e.type === "radio" || e.type === "checkbox") continue;
		if (b.height < 47.5 || b.width < 47.5) found.push((e.id || e.textContent.trim()) + " is " + b.width + " by " + b.height);
		if (b.left < -0.5 || b.right > innerWidth + 0.5) found.push((e.id || e.textContent.trim()) + " is outside");
		if (e.scrollWidth > e.clientWidth + 1 && e.tagName === "BUTTON") found.push((e.id || e.textContent.trim()) + " is too narrow for its words");
		if (e.scrollHeight > e.clientHeight + 1 && e.tagName === "BUTTON") found.push((e.id || e.textContent.trim()) + " is too low for its words");
	}
	const panel = document.getElementById("panel")?.getBoundingClientRect();
	for (const e of document.querySelectorAll(".ask.step > *, .ask.wait > *")) {
		const b = e.getBoundingClientRect();
		if (b.width > 0 && (b.left < panel.left || b.right > panel.right || b.top < panel.top || b.bottom > panel.bottom)) found.push("the panel cuts " + e.className);
	}
	const view = document.querySelector(".view")?.getBoundingClientRect();
	for (const e of document.querySelectorAll(".zoom button, .note")) {
		const b = e.getBoundingClientRect();
		if (b.width > 0 && b.left < view.right && b.right > view.left && b.top < view.bottom && b.bottom > view.top) found.push((e.textContent.trim() || e.ariaLabel) + " covers the part");
	}
	if (document.body.classList.contains("run") && document.documentElement.scrollHeight > innerHeight) found.push("the run is taller than the screen");
	return found;
})()`

// Every screen fits the devices, in each scheme and language, and breaks no
// rule of WCAG 2.2, A or AA, that a program can check. A plain run tries each
// screen once, on alternating devices, schemes and languages. DRAWDOWN_PICTURES
// names a folder for pictures of all, DRAWDOWN_SCREEN selects some, separated
// by commas, DRAWDOWN_LOOK their look: "dark,de".
func TestScreens(t *testing.T) {
	for k, d := range Devices {
		t.Run(d.Name, func(t *testing.T) {
			t.Parallel()
			b := newBench(t)
			one := NewTab(t, Browser(t), d)
			var barred []string
			one.Open(b.URL + "/settings")
			one.SignOn("RA", "")
			for n, s := range screens(b) {
				if !isWanted(s.name, n, k) {
					continue
				}
				scheme, language := look(n/len(Devices) + k)
				where := strings.Join([]string{s.name, d.Name, scheme, language}, "-")
				show(one, b, s, scheme, language)
				for _, fault := range Evaluate[[]string](one, faults) {
					t.Errorf("%s: %s", where, fault)
				}
				one.picture(where)
				for _, fault := range Barriers(one) {
					barred = append(barred, where+": "+fault)
				}
			}
			one.Quiet()
			t.Run("accessible", func(t *testing.T) {
				if axe() == "" {
					t.Skip("not installed: axe-core, whose axe.min.js DRAWDOWN_AXE names; see .ci/tools")
				}
				for _, fault := range barred {
					t.Error(fault)
				}
			})
		})
	}
}

var pictures = os.Getenv("DRAWDOWN_PICTURES")

// isWanted reports whether the nth screen is tried on the kth device.
func isWanted(name string, n, k int) bool {
	if only := os.Getenv("DRAWDOWN_SCREEN"); only != "" && !slices.Contains(strings.Split(only, ","), name) {
		return false
	}
	return pictures != "" || n%len(Devices) == k || testkit.Full()
}

// look returns the scheme and the language of a turn, or those set for the
// pictures.
func look(turn int) (scheme, language string) {
	if pictures != "" {
		scheme, language, _ = strings.Cut(cmp.Or(os.Getenv("DRAWDOWN_LOOK"), "light,en"), ",")
		return scheme, language
	}
	return []string{"light", "dark", "contrast"}[turn%3], []string{"en", "de", "fr", "es"}[turn%4]
}

// show opens a screen.
func show(one *Tab, b *bench, s screen, scheme, language string) {
	one.T.Helper()
	b.mu.Lock()
	if b.light = page.BySystem; scheme == "contrast" {
		b.light = page.Contrast // not a system setting: it is set on the page
	}
	b.mu.Unlock()
	one.Scheme(scheme)
	one.Language(language)
	one.Open(b.URL + s.path)
	if Evaluate[bool](one, `document.body.classList.contains("run")`) {
		one.Until(`document.body.dataset.ready === "yes"`)
	}
	if got := Evaluate[string](one, `document.documentElement.lang`); got != language {
		one.T.Errorf("%s is in %q, want %q", s.name, got, language)
	}
	if s.then != "" {
		Evaluate[any](one, s.then+`; null`)
	}
}

// picture saves a picture of the page if requested.
func (one *Tab) picture(name string) {
	one.T.Helper()
	if pictures == "" {
		return
	}
	picture, err := chromedp.Run(one.Ctx, chromedp.CaptureScreenshot())
	if err != nil {
		one.T.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(pictures, name+".png"), picture, 0o644); err != nil {
		one.T.Fatal(err)
	}
}
