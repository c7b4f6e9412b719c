package pagetest

import (
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/google/go-cmp/cmp"

	"drawdown/sequence/run"
)

// signOn sets the initials of the device.
func (one *tab) signOn(who string) {
	one.t.Helper()
	evaluate[any](one, `localStorage.setItem("drawdown-who", "`+who+`"); null`)
}

// rest waits until the bar takes a tap again.
func (one *tab) rest() {
	one.t.Helper()
	one.until(`!("resting" in document.getElementById("bar").dataset)`)
}

func (one *tab) version(n string) {
	one.t.Helper()
	one.until(`document.body.dataset.version === "` + n + `" && document.body.dataset.held === "0"`)
}

func (b *bench) want(id string, want ...string) {
	b.t.Helper()
	if diff := cmp.Diff(want, b.taken(id)); diff != "" {
		b.t.Errorf("entries (- wanted, + taken):\n%s", diff)
	}
}

// A technician with gloves follows a joint on a tablet: the bar asks who it is
// once, takes no second tap at once, the mark does the same as the bar, a key too,
// and one tap takes a tap back.
func TestFollow(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := newTab(t, browser(t), tablet)
	one.openRun(b, id)
	one.tap("#bar")
	one.until(`document.getElementById("who").open`)
	one.do(chromedp.SendKeys(chromedp.CSS("#who input"), "ra"+kb.Enter))
	one.version("1")
	first := evaluate[[]float64](one, `(() => { const b = document.getElementById("bar").getBoundingClientRect(); return [b.x, b.y, b.width, b.height]; })()`)
	one.rest()
	one.tap("#bar")
	one.tap("#bar")
	one.version("2")
	one.rest()
	one.tap(`.mark[data-state="next"] .edge`)
	one.version("3")
	if got := evaluate[[]float64](one, `(() => { const b = document.getElementById("bar").getBoundingClientRect(); return [b.x, b.y, b.width, b.height]; })()`); !cmp.Equal(first, got) {
		t.Errorf("the bar moved from %v to %v", first, got)
	}
	one.rest()
	one.do(chromedp.KeyEvent(kb.Enter))
	one.version("4")
	one.tap("#undo")
	one.version("5")
	b.want(id, "done 1 RA", "done 2 RA", "done 3 RA", "done 4 RA", "undo 0 RA")
	if got := evaluate[int](one, `document.querySelectorAll('.mark[data-state="done"]').length`); got != 3 {
		t.Errorf("%d marks are done, want 3", got)
	}
	one.quiet()
}

// A step out of order needs a reason, and a mark that is not next asks for it.
func TestOutOfOrder(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := newTab(t, browser(t), phone)
	one.openRun(b, id)
	one.signOn("RA")
	one.openRun(b, id)
	one.tap(`.mark[data-state="todo"]:last-of-type .edge`)
	one.until(`document.getElementById("fastener").open`)
	one.click(`#fastener .outoforder button`)
	if len(b.taken(id)) != 0 {
		t.Error("taken without a reason")
	}
	one.do(chromedp.SendKeys(chromedp.CSS("#fastener input[name=note]"), "blocked by the pipe"+kb.Enter))
	one.version("1")
	b.mu.Lock()
	note := b.runs[id].entries[0].Note
	b.mu.Unlock()
	if note != "blocked by the pipe" {
		t.Errorf("the reason is %q", note)
	}
	one.quiet()
}

// Taps that the network does not take stay on the tablet, are shown as not saved,
// survive a reload, and are sent in order, each once.
func TestHeldTaps(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := newTab(t, browser(t), tablet)
	one.openRun(b, id)
	one.signOn("RA")
	one.openRun(b, id)
	b.deaf.Store(true)
	for range 3 {
		one.tap("#bar")
		one.rest()
	}
	one.until(`document.body.dataset.held === "3"`)
	if got := evaluate[int](one, `document.querySelectorAll('.mark[data-held]').length`); got != 3 {
		t.Errorf("%d marks are shown as not saved, want 3", got)
	}
	if got := evaluate[int](one, `document.querySelectorAll('.mark[data-state="done"]').length`); got != 0 {
		t.Errorf("%d marks are shown as done, want none", got)
	}
	one.until(`document.getElementById("status").textContent.startsWith("3 taps are not saved yet")`)
	one.tap(`.tool.trouble`)
	one.until(`document.getElementById("trouble").open`)
	one.click(`#trouble .kind summary`)
	one.click(`#trouble .kind button[type=submit]`)
	time.Sleep(100 * time.Millisecond)
	if got := evaluate[string](one, `document.body.dataset.held`); got != "3" {
		t.Errorf("a trouble was taken without a connection: %s held", got)
	}
	one.openRun(b, id)
	one.until(`document.body.dataset.held === "3"`)
	b.deaf.Store(false)
	one.version("3")
	b.want(id, "done 1 RA", "done 2 RA", "done 3 RA")
	one.quiet("Failed to load resource", "ERR_")
}

// At the first tap that is refused sending stops, and every held tap is shown with
// who was first.
func TestRefused(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := newTab(t, browser(t), tablet)
	one.openRun(b, id)
	one.signOn("RA")
	one.openRun(b, id)
	b.deaf.Store(true)
	for range 2 {
		one.tap("#bar")
		one.rest()
	}
	one.until(`document.body.dataset.held === "2"`)
	b.take(id, run.Entry{Act: run.Done, Step: 1})
	b.deaf.Store(false)
	one.until(`document.getElementById("refused").open`)
	if got := one.text("#refused-by"); !strings.HasPrefix(got, "KL, ") {
		t.Errorf("who was first: %q", got)
	}
	if got := evaluate[string](one, `document.body.dataset.held`); got != "2" {
		t.Errorf("%s taps are held, want 2", got)
	}
	one.click("#refused-close")
	one.until(`document.getElementById("held").open`)
	one.click("#send-again")
	one.version("2")
	b.want(id, "done 1 KL", "done 2 RA")
	one.quiet("Failed to load resource", "ERR_")
}

// What another tablet does is seen at once.
func TestTwoTablets(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := newTab(t, browser(t), tablet)
	one.openRun(b, id)
	b.take(id, run.Entry{Act: run.Done, Step: 1})
	one.version("1")
	b.take(id, run.Entry{Act: run.Done, Step: 2})
	one.version("2")
	if got := evaluate[string](one, `document.getElementById("bar").dataset.step`); got != "3" {
		t.Errorf("the bar is for step %s", got)
	}
	one.quiet()
}

// A second person who turns an angle again is asked, and yes becomes a trouble.
func TestTurnedTwice(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Tighten)
	for n := range 20 {
		b.take(id, run.Entry{Act: run.Done, Step: n + 1})
	}
	one := newTab(t, browser(t), desktop)
	one.openRun(b, id)
	one.signOn("RA")
	one.openRun(b, id)
	b.deaf.Store(true)
	one.click("#bar")
	one.until(`document.body.dataset.held === "1"`)
	b.take(id, run.Entry{Act: run.Done, Step: 21})
	b.deaf.Store(false)
	one.until(`document.getElementById("refused").open && !document.getElementById("refused-angle").hidden`)
	one.click("#turned-twice")
	one.version("22")
	if got := b.taken(id)[21]; got != "trouble 21 RA" {
		t.Errorf("the last entry is %q", got)
	}
	one.until(`document.querySelector('.ask').classList.contains("settle")`)
	one.quiet("Failed to load resource", "ERR_")
}

// A joint is followed to its end by keys alone: trouble, what to do, settled,
// handed over, sealed with wrench and second signature.
func TestToTheSeal(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-flywheel", run.Tighten)
	one := newTab(t, browser(t), desktop)
	one.openRun(b, id)
	one.signOn("RA")
	one.openRun(b, id)
	key := func(keys ...string) {
		for _, k := range keys {
			one.do(chromedp.KeyEvent(k))
		}
	}
	key(kb.Enter)
	one.version("1")
	key("t")
	one.until(`document.getElementById("trouble").open`)
	one.do(chromedp.Focus(chromedp.CSS(`#trouble .kind:nth-child(4) summary`)))
	key(kb.Enter, kb.Tab)
	key("two", " ", "mm", kb.Tab, kb.Enter)
	one.version("2")
	one.until(`document.querySelector(".ask").classList.contains("settle")`)
	one.rest()
	key(kb.Enter)
	one.until(`document.getElementById("settle").open`)
	one.do(chromedp.SendKeys(chromedp.CSS("#settle textarea"), "measured, the lead lets it pass"))
	one.click(`#settle button[type=submit]`)
	one.version("3")
	b.finish(id)
	one.until(`document.querySelector(".ask").classList.contains("seal")`)
	one.click(`.runmain > [data-open="more"]`)
	one.click(`[data-open="handover"]`)
	if got := one.text("#handover .lines"); !strings.Contains(got, "24 steps") || !strings.Contains(got, "Stretched") {
		t.Errorf("the five lines: %s", got)
	}
	one.do(chromedp.SendKeys(chromedp.CSS("#handover input"), "MB"))
	one.click(`#handover button[type=submit]`)
	one.until(`!document.getElementById("handover").open`)
	one.rest()
	one.click("#bar")
	one.until(`document.getElementById("seal").open`)
	one.do(chromedp.SendKeys(chromedp.CSS("#seal input[name=wrench]"), "W-07"), chromedp.SendKeys(chromedp.CSS("#seal input[name=second]"), "MB"+kb.Enter))
	one.until(`document.querySelector(".ask").classList.contains("over")`)
	taken := b.taken(id)
	if got := taken[len(taken)-2:]; !cmp.Equal(got, []string{"hand over 0 RA", "seal 0 RA"}) {
		t.Errorf("the last entries are %q", got)
	}
	one.quiet()
}

// A wait counts down by the server's clock and goes on when it is over there.
func TestWait(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open(`
drawdown: 1
title: lid
fasteners: [{row: {count: 3, pitch: 60, id: C}}]
tighten: {stages: [{torque: 20 N·m}, {wait: 10 min}, {torque: 25 N·m}], source: works manual 4.2}
`, run.Tighten)
	for n := range 3 {
		b.take(id, run.Entry{Act: run.Done, Step: n + 1})
	}
	one := newTab(t, browser(t), tablet)
	one.openRun(b, id)
	one.signOn("RA")
	one.openRun(b, id)
	one.tap("#bar")
	one.version("4")
	one.until(`/^0?9:5\d|10:00$/.test(document.getElementById("left").textContent)`)
	if !evaluate[bool](one, `document.getElementById("bar").disabled`) {
		t.Error("the bar takes a tap while one waits")
	}
	b.mu.Lock()
	b.clock = func() time.Time { return time.Now().Add(10 * time.Minute) }
	b.mu.Unlock()
	one.openRun(b, id)
	if got := evaluate[string](one, `document.getElementById("bar").dataset.step`); got != "5" {
		t.Errorf("after the wait the bar is for step %s", got)
	}
	one.quiet()
}

// The part is made larger by buttons, keys and two fingers, and stays tappable.
func TestZoom(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := newTab(t, browser(t), tablet)
	one.openRun(b, id)
	one.signOn("RA")
	one.openRun(b, id)
	width := func() float64 { return evaluate[float64](one, `document.getElementById("part").viewBox.baseVal.width`) }
	whole := width()
	one.tap(`[data-zoom="in"]`)
	one.until(`document.getElementById("part").viewBox.baseVal.width < ` + number(whole*0.7))
	one.do(chromedp.KeyEvent("+"))
	if got := width(); got > whole*0.5 {
		t.Errorf("the part shows %v of %v", got, whole)
	}
	one.tap(`.mark[data-state="next"] .edge`)
	one.version("1")
	one.do(chromedp.KeyEvent("0"))
	if got := width(); got != whole {
		t.Errorf("whole again it shows %v of %v", got, whole)
	}
	one.pinch(400, 200, 40, 200)
	if got := width(); got > whole*0.5 {
		t.Errorf("pinched it shows %v of %v", got, whole)
	}
	one.quiet()
}
