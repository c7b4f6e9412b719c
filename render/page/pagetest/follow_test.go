package pagetest

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/google/go-cmp/cmp"

	"drawdown/render/words"
	"drawdown/sequence/run"
)

// openRun opens the page of a run and waits until its script is ready.
func openRun(one *Tab, b *bench, id string) {
	one.T.Helper()
	one.Open(b.URL + "/runs/" + id)
	one.Until(`document.body.dataset.ready === "yes"`)
}

// signedOn opens a run with somebody's initials on the tablet.
func signedOn(one *Tab, b *bench, id, who string) {
	one.T.Helper()
	one.Open(b.URL + "/settings") // sooner there than the run
	one.SignOn(who, id)
	openRun(one, b, id)
}

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func version(one *Tab, n string) {
	one.T.Helper()
	one.Until(`document.body.dataset.version === "` + n + `" && document.body.dataset.held === "0"`)
}

func (b *bench) want(id string, want ...string) {
	b.t.Helper()
	if diff := cmp.Diff(want, b.taken(id)); diff != "" {
		b.t.Errorf("entries (- wanted, + taken):\n%s", diff)
	}
}

// A technician with gloves follows a joint on a tablet: the page asks who it is
// before the first tap, the bar takes no second tap at once, the mark does the same as the bar, a key too,
// and one tap takes a tap back.
func TestFollow(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := NewTab(t, Browser(t), Tablet)
	openRun(one, b, id)
	// 15 mm and capitals of 12 mm at 6.3 px/mm; the capitals of Go Bold are 0.7227 em
	// (OS/2 sCapHeight).
	if got := Evaluate[float64](one, `document.getElementById("bar").getBoundingClientRect().height`); got < 95 {
		t.Errorf("the bar is %v px high", got)
	}
	if got := 0.7227 * Evaluate[float64](one, `parseFloat(getComputedStyle(document.querySelector(".figure b")).fontSize)`); got < 12*6.3 {
		t.Errorf("the capitals of the figure are %v px high", got)
	}
	one.Until(`document.getElementById("who").open`)
	one.Type("#who input", "ra"+kb.Enter)
	one.Until(`!document.getElementById("who").open`)
	one.Tap("#bar")
	version(one, "1")
	first := Evaluate[[]float64](one, `(() => { const b = document.getElementById("bar").getBoundingClientRect(); return [b.x, b.y, b.width, b.height]; })()`)
	one.Rest()
	// Two clicks in one go: on a busy machine a second touch may come after the pause.
	Evaluate[any](one, `(() => { const b = document.getElementById("bar"); b.click(); b.click(); return null; })()`)
	version(one, "2")
	one.Rest()
	one.Tap(`.mark[data-state="next"] .edge`)
	version(one, "3")
	if got := Evaluate[[]float64](one, `(() => { const b = document.getElementById("bar").getBoundingClientRect(); return [b.x, b.y, b.width, b.height]; })()`); !cmp.Equal(first, got) {
		t.Errorf("the bar moved from %v to %v", first, got)
	}
	one.Rest()
	one.Do(chromedp.KeyEvent(kb.Enter))
	version(one, "4")
	one.Tap("#undo")
	version(one, "5")
	b.want(id, "done 1 RA", "done 2 RA", "done 3 RA", "done 4 RA", "undo 0 RA")
	if got := Evaluate[int](one, `document.querySelectorAll('.mark[data-state="done"]').length`); got != 3 {
		t.Errorf("%d marks are done, want 3", got)
	}
	one.Quiet()
}

// A step out of order needs a reason, and a mark that is not next asks for it.
func TestOutOfOrder(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := NewTab(t, Browser(t), Phone)
	signedOn(one, b, id, "RA")
	one.Tap(`.mark[data-state="todo"]:last-of-type .edge`)
	one.Until(`document.getElementById("fastener").open`)
	one.Click(`#fastener .outoforder button`)
	if len(b.taken(id)) != 0 {
		t.Error("taken without a reason")
	}
	one.Type("#fastener input[name=note]", "blocked by the pipe"+kb.Enter)
	version(one, "1")
	b.mu.Lock()
	note := b.runs[id].entries[0].Note
	b.mu.Unlock()
	if note != "blocked by the pipe" {
		t.Errorf("the reason is %q", note)
	}
	one.Quiet()
}

// Taps that the network does not take stay on the tablet, are shown as not saved,
// survive a reload, and are sent in order, each once.
func TestHeldTaps(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := NewTab(t, Browser(t), Tablet)
	signedOn(one, b, id, "RA")
	b.deaf.Store(true)
	for range 3 {
		one.Tap("#bar")
		one.Rest()
	}
	one.Until(`document.body.dataset.held === "3"`)
	if got := Evaluate[int](one, `document.querySelectorAll('.mark[data-held]').length`); got != 3 {
		t.Errorf("%d marks are shown as not saved, want 3", got)
	}
	if got := Evaluate[int](one, `document.querySelectorAll('.mark[data-state="done"]').length`); got != 0 {
		t.Errorf("%d marks are shown as done, want none", got)
	}
	one.Until(`document.getElementById("status").textContent.startsWith("3 taps are not saved yet")`)
	one.Tap(`.tool.trouble`)
	one.Until(`document.getElementById("trouble").open`)
	one.Click(`#trouble .kind summary`)
	one.Click(`#trouble .kind button[type=submit]`)
	time.Sleep(100 * time.Millisecond)
	if got := Evaluate[string](one, `document.body.dataset.held`); got != "3" {
		t.Errorf("a trouble was taken without a connection: %s held", got)
	}
	openRun(one, b, id)
	one.Until(`document.body.dataset.held === "3"`)
	b.deaf.Store(false)
	version(one, "3")
	b.want(id, "done 1 RA", "done 2 RA", "done 3 RA")
	one.Quiet("Failed to load resource", "ERR_")
}

// At the first tap that is refused sending stops, and every held tap is shown with
// who was first.
func TestRefused(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := NewTab(t, Browser(t), Tablet)
	signedOn(one, b, id, "RA")
	b.deaf.Store(true)
	for range 2 {
		one.Tap("#bar")
		one.Rest()
	}
	one.Until(`document.body.dataset.held === "2"`)
	b.take(id, run.Entry{Act: run.Done, Step: 1})
	b.deaf.Store(false)
	one.Until(`document.getElementById("refused").open`)
	if got := one.Text("#refused-by"); !strings.HasPrefix(got, "KL, ") {
		t.Errorf("who was first: %q", got)
	}
	if got := Evaluate[string](one, `document.body.dataset.held`); got != "2" {
		t.Errorf("%s taps are held, want 2", got)
	}
	one.Click("#refused-close")
	one.Until(`document.getElementById("held").open`)
	one.Click("#send-again")
	version(one, "2")
	b.want(id, "done 1 KL", "done 2 RA")
	one.Quiet("Failed to load resource", "ERR_")
}

// What was refused is sent again under another id, once its cause is gone: under
// the old one it would get the old answer.
func TestSentAgain(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := NewTab(t, Browser(t), Phone)
	signedOn(one, b, id, "RA")
	b.deaf.Store(true)
	one.Tap("#bar")
	one.Until(`document.body.dataset.held === "1"`)
	one.Until(`document.getElementById("status").textContent.startsWith("1 tap is not saved yet")`)
	b.take(id, run.Entry{Act: run.Done, Step: 1})
	b.deaf.Store(false)
	one.Until(`document.getElementById("refused").open`)
	b.take(id, run.Entry{Act: run.Undo, Of: "other0"})
	one.Click("#refused-again")
	version(one, "3")
	b.want(id, "done 1 KL", "undo 0 KL", "done 1 RA")
}

// What another tablet does is seen at once.
func TestTwoTablets(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := NewTab(t, Browser(t), Tablet)
	openRun(one, b, id)
	b.take(id, run.Entry{Act: run.Done, Step: 1})
	version(one, "1")
	b.take(id, run.Entry{Act: run.Done, Step: 2})
	version(one, "2")
	if got := Evaluate[string](one, `document.getElementById("bar").dataset.step`); got != "3" {
		t.Errorf("the bar is for step %s", got)
	}
	one.Quiet()
}

// A second person who turns an angle again is asked, and yes becomes a trouble.
func TestTurnedTwice(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Tighten)
	for n := range 20 {
		b.take(id, run.Entry{Act: run.Done, Step: n + 1})
	}
	one := NewTab(t, Browser(t), Desktop)
	signedOn(one, b, id, "RA")
	b.deaf.Store(true)
	one.Click("#bar")
	one.Until(`document.body.dataset.held === "1"`)
	b.take(id, run.Entry{Act: run.Done, Step: 21})
	b.deaf.Store(false)
	one.Until(`document.getElementById("refused").open && !document.getElementById("refused-angle").hidden`)
	one.Click("#turned-twice")
	version(one, "22")
	if got := b.taken(id)[21]; got != "trouble 21 RA" {
		t.Errorf("the last entry is %q", got)
	}
	one.Until(`document.querySelector('.ask').classList.contains("settle")`)
	one.Quiet("Failed to load resource", "ERR_")
}

// A joint is followed to its end by keys alone: trouble, what to do, settled,
// handed over, sealed with wrench and second signature.
func TestToTheSeal(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-flywheel", run.Tighten)
	one := NewTab(t, Browser(t), Desktop)
	signedOn(one, b, id, "RA")
	key := func(keys ...string) {
		for _, k := range keys {
			one.Do(chromedp.KeyEvent(k))
		}
	}
	key(kb.Enter)
	version(one, "1")
	key("t")
	one.Until(`document.getElementById("trouble").open`)
	one.Type(`#trouble .kind:nth-child(4) summary`, "")
	key(kb.Enter, kb.Tab)
	key("two", " ", "mm", kb.Tab, kb.Enter)
	version(one, "2")
	one.Until(`document.querySelector(".ask").classList.contains("settle")`)
	one.Rest()
	key(kb.Enter)
	one.Until(`document.getElementById("settle").open`)
	one.Type("#settle textarea", "measured, it may pass")
	one.Type("#settle [name=decided_by]", "LM")
	one.Click(`#settle button[type=submit]`)
	version(one, "3")
	b.finish(id)
	one.Until(`document.querySelector(".ask").classList.contains("seal")`)
	one.Click(`.runmain > [data-open="more"]`)
	one.Click(`[data-open="handover"]`)
	if got := one.Text("#handover .lines"); !strings.Contains(got, "24 steps") || !strings.Contains(got, "Stretched") {
		t.Errorf("the five lines: %s", got)
	}
	one.Type("#handover input", "MB")
	one.Click(`#handover button[type=submit]`)
	one.Until(`document.querySelector("[data-open=handed]")?.textContent.includes("RA to MB")`)
	one.Rest()
	one.Click("#bar")
	one.Until(`document.getElementById("seal").open`)
	one.Type("#seal input[name=wrench]", "W-07")
	one.Type("#seal input[name=second]", "RA"+kb.Enter)
	one.Until(`document.getElementById("who").open && document.querySelector("#who input").value === "MB"`) // who took over
	key(kb.Enter)
	one.Until(`document.querySelector(".ask").classList.contains("over")`)
	taken := b.taken(id)
	if got := taken[len(taken)-2:]; !cmp.Equal(got, []string{"hand over 0 RA", "seal 0 MB"}) {
		t.Errorf("the last entries are %q", got)
	}
	one.Quiet()
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
	one := NewTab(t, Browser(t), Tablet)
	from := time.Now()
	signedOn(one, b, id, "RA")
	one.Tap("#bar")
	version(one, "4")
	// The server writes it too: it is never empty.
	left, err := time.Parse("04:05", one.Text("#left"))
	if err != nil {
		t.Fatal(err)
	}
	passed := 10*60 - 60*left.Minute() - left.Second()
	// The page's clock is behind by the time that the page took to come.
	if most := time.Since(from).Seconds() + 1; math.Abs(float64(passed)) > most {
		t.Errorf("%d seconds of the wait have passed; at most %v did", passed, most)
	}
	if !Evaluate[bool](one, `document.getElementById("bar").disabled`) {
		t.Error("the bar takes a tap while one waits")
	}
	b.mu.Lock()
	b.clock = func() time.Time { return time.Now().Add(10 * time.Minute) }
	b.mu.Unlock()
	openRun(one, b, id)
	if got := Evaluate[string](one, `document.getElementById("bar").dataset.step`); got != "5" {
		t.Errorf("after the wait the bar is for step %s", got)
	}
	one.Quiet()
}

// The part is made larger by buttons, keys and two fingers, and stays tappable.
func TestZoom(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := NewTab(t, Browser(t), Tablet)
	signedOn(one, b, id, "RA")
	width := func() float64 { return Evaluate[float64](one, `document.getElementById("part").viewBox.baseVal.width`) }
	whole := width()
	one.Tap(`[data-zoom="in"]`)
	one.Until(`document.getElementById("part").viewBox.baseVal.width < ` + number(whole*0.7))
	one.Do(chromedp.KeyEvent("+"))
	if got := width(); got > whole*0.5 {
		t.Errorf("the part shows %v of %v", got, whole)
	}
	one.Tap(`.mark[data-state="next"] .edge`)
	version(one, "1")
	one.Do(chromedp.KeyEvent("0"))
	if got := width(); got != whole {
		t.Errorf("whole again it shows %v of %v", got, whole)
	}
	one.Pinch(400, 200, 40, 200)
	one.Until(`document.getElementById("part").viewBox.baseVal.width <= ` + number(whole*0.5))
	one.Quiet()
}

// After an interrupted angle the page asks for what was decided, never for the whole
// angle once more; and a new fastener is recorded with who decided it.
func TestInterruptedAngle(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Tighten)
	for n := range 20 { // two torques of ten main bolts
		b.take(id, run.Entry{Act: run.Done, Step: n + 1})
	}
	b.take(id, run.Entry{ID: "cut", Act: run.Unsure, Step: 21})
	one := NewTab(t, Browser(t), Tablet)
	signedOn(one, b, id, "MB")
	one.Click(".tool.troubles, [data-open=settle]")
	one.Until(`document.getElementById("settle").open`)
	one.Click(`#settle [value="turn on"]`)
	one.Type("#settle [name=value]", "40")
	one.Click("#settle .go")
	if !Evaluate[bool](one, `document.getElementById("settle").open`) {
		t.Error("it was settled without who decided")
	}
	one.Type("#settle [name=decided_by]", "LM")
	one.Type("#settle textarea", "by the mark")
	one.Click("#settle .go")
	one.Until(`!document.getElementById("settle").open && document.querySelector(".ask").dataset.step === "21"`)
	if said := one.Text("#panel"); !strings.Contains(said, "turn on by 40° · by the mark") || !strings.Contains(said, "decided by LM, entered by MB") || strings.Contains(said, "+90") {
		t.Errorf("the panel says %q", said)
	}
	if said := one.Text("#beside"); said != "40°" {
		t.Errorf("beside the mark stands %q", said)
	}
	one.Rest()
	one.Click("#bar")
	one.Until(`document.querySelector(".ask").dataset.step === "22"`)
	b.take(id, run.Entry{ID: "cut again", Act: run.Unsure, Step: 22})
	one.Until(`document.querySelectorAll("#aside [data-open=settle]").length === 1`)
	one.Click("#aside [data-open=settle]")
	one.Click(`#settle [value="new fastener"]`)
	one.Type("#settle [name=decided_by]", "LM")
	one.Click("#settle .go")
	one.Until(`document.querySelector(".ask").classList.contains("neighbours")`)
	one.Rest()
	one.Click("#bar")
	one.Click("#answer [data-person]")
	one.Type("#answer [name=decided_by]", "LM")
	one.Click(`#answer [name="say-1"]`)
	one.Click("#answer .go")
	one.Until(`document.querySelector(".ask").classList.contains("step")`)
	one.Quiet()
}

// While loosening, the steps of a bolt that is out are left out when its trouble is
// settled: nobody is asked to break a drilled-out bolt loose.
func TestDrilledOut(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Loosen)
	b.take(id, run.Entry{Act: run.Report, Trouble: run.Broken, Step: 2})
	one := NewTab(t, Browser(t), Tablet)
	signedOn(one, b, id, "MB")
	one.Click("[data-open=settle]")
	one.Until(`document.getElementById("settle").open && document.querySelector("#settle [value=out]").checked`)
	one.Type("#settle textarea", "drilled out, thread cleaned")
	one.Click("#settle .go")
	version(one, "4")
	for _, e := range b.entries(id)[2:] {
		if st := b.step(id, e.Step); e.Act != run.LeaveOut || e.Note != "drilled out, thread cleaned" || st.ID != b.step(id, 2).ID {
			t.Errorf("entry %+v at %s", e, st.ID)
		}
	}
	one.Quiet()
}

// An angle is recorded as interrupted after one tap more: it cannot be undone. The
// page says what is blocked, and offers no step there.
func TestInterruptedIsAskedFirst(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Tighten)
	for n := range 20 {
		b.take(id, run.Entry{Act: run.Done, Step: n + 1})
	}
	one := NewTab(t, Browser(t), Phone)
	signedOn(one, b, id, "MB")
	one.Tap(".tool.trouble")
	one.Click(`#trouble [data-open="unsure"]`)
	one.Until(`document.getElementById("unsure").open`)
	if said := one.Text("#unsure-of"); !strings.Contains(said, "+90°") {
		t.Errorf("it is about %q", said)
	}
	if got := b.taken(id); len(got) != 20 {
		t.Errorf("taken before it was confirmed: %q", got[20:])
	}
	one.Click("#unsure-do")
	version(one, "21")
	if got := b.taken(id)[20]; got != "unsure 21 MB" {
		t.Errorf("taken: %q", got)
	}
	one.Tap(`.mark[data-state="unsure"] .edge`)
	one.Until(`document.getElementById("fastener").open`)
	if said := one.Text("#fastener-said"); !strings.Contains(said, "Blocked: no step on it") {
		t.Errorf("of the fastener it says %q", said)
	}
	if Evaluate[bool](one, `document.querySelector(".outoforder").checkVisibility()`) {
		t.Error("a step is offered on a blocked fastener")
	}
	one.Click(`#fastener-settle button`)
	one.Until(`document.getElementById("settle").open`)
	one.Quiet()
}

// That the program is gone is said without a tap, and so is that it is back.
func TestServerGone(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := NewTab(t, Browser(t), Tablet)
	signedOn(one, b, id, "RA")
	b.cut.Store(true)
	b.CloseClientConnections()
	one.Until(`document.getElementById("status").textContent.startsWith("No connection")`)
	b.take(id, run.Entry{Act: run.Done, Step: 1})
	b.cut.Store(false)
	version(one, "1")
	one.Until(`document.getElementById("status").textContent === ""`)
	one.Quiet("Failed to load resource", "ERR_")
}

// A read that fails is tried again.
func TestReadAgain(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := NewTab(t, Browser(t), Tablet)
	signedOn(one, b, id, "RA")
	b.cut.Store(true) // the events go on
	b.take(id, run.Entry{Act: run.Done, Step: 1})
	time.Sleep(200 * time.Millisecond)
	b.cut.Store(false)
	version(one, "1")
	one.Quiet("Failed to load resource", "ERR_")
}

// The wrench in use goes with each torque; a seal names those without one, and needs
// its number.
func TestWrench(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-flywheel", run.Tighten)
	one := NewTab(t, Browser(t), Phone)
	signedOn(one, b, id, "RA")
	one.Tap("#bar")
	version(one, "1")
	b.finish(id)
	one.Until(`document.querySelector(".ask").classList.contains("seal")`)
	one.Rest()
	one.Tap("#bar")
	one.Until(`document.getElementById("seal").open`)
	one.Click("#seal .go")
	if said := one.Text("#seal [data-copy]"); !strings.Contains(said, "No wrench number was recorded for") || !Evaluate[bool](one, `document.getElementById("seal").open`) {
		t.Errorf("sealed without a wrench number: %q", said)
	}
	one.Type("#seal input[name=wrench]", "W-07")
	one.Click("#seal .go")
	one.Until(`document.querySelector(".ask").classList.contains("over")`)
	all := b.entries(id)
	if last := all[len(all)-1]; last.Act != run.Seal || last.Wrench != "W-07" {
		t.Errorf("the seal is %+v", last)
	}
	next := b.open("p4-flywheel", run.Tighten)
	openRun(one, b, next)
	one.Click("#who-button") // the initials are there: only the wrench may change
	one.Type("#who input[name=wrench]", "W-07")
	one.Click("#who .go")
	one.Until(`!document.getElementById("who").open`)
	one.Tap("#bar")
	version(one, "1")
	if got := b.entries(next)[0].Wrench; got != "W-07" {
		t.Errorf("a torque names the wrench %q", got)
	}
	one.Quiet("Failed to load resource")
}

// What becomes of the neighbours of a new fastener is chosen, and so is who says so.
func TestNeighbours(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Tighten)
	b.take(id, run.Entry{Act: run.Done, Step: 1}, run.Entry{ID: "new", Act: run.Replace, Step: 1})
	one := NewTab(t, Browser(t), Phone)
	signedOn(one, b, id, "MB")
	one.Tap("#bar")
	one.Until(`document.getElementById("answer").open`)
	one.Click("#answer [name=say-1]")
	one.Click("#answer [name=say-2]:not([required])")
	one.Type("#answer [name=decided_by]", "LM")
	one.Type("#answer textarea", "told at the bench")
	one.Click("#answer .go")
	version(one, "3")
	words := words.English().Page.Run
	if e := b.entries(id)[2]; e.Of != "new" || e.Note != words.TheyStay+"; "+words.ByLead+". told at the bench" {
		t.Errorf("the answer is %+v", e)
	}
	one.Quiet()
}

// What must be ready is asked by kind and count, the gasket too; that none of it is
// there is recorded.
func TestReadiness(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Tighten)
	one := NewTab(t, Browser(t), Phone)
	signedOn(one, b, id, "MB")
	one.Tap("[data-open=readiness]")
	one.Until(`document.getElementById("readiness").open`)
	Evaluate[any](one, `document.querySelector("#readiness input").value = "8"; document.querySelector("#readiness [data-none]").value = "1"; null`)
	one.Click("#readiness .go")
	version(one, "2")
	var got []string
	for _, e := range b.entries(id) {
		got = append(got, strings.TrimSpace(fmt.Sprint(e.Act, " ", e.Kind, " ", e.Value)))
	}
	if diff := cmp.Diff([]string{"ready main 8", "ready gasket 1"}, got); diff != "" {
		t.Error(diff)
	}
	one.Until(`document.querySelectorAll("#readiness-list label").length === 1`) // two bolts are missing

	id = b.open("p4-head", run.Tighten)
	openRun(one, b, id)
	one.Tap("[data-open=readiness]")
	one.Until(`document.getElementById("readiness").open`)
	Evaluate[any](one, `document.querySelector("#readiness input").value = "10"; document.querySelector("#readiness [data-none]").value = "0"; null`)
	one.Click("#readiness .go")
	version(one, "2")
	if e := b.entries(id)[1]; e.Kind != run.GasketKind || e.Value != "0" {
		t.Errorf("no gasket: %+v", e)
	}
	one.Quiet()
}

// A new fastener is recorded with who decided it: it cannot be undone.
func TestNewFastenerNeedsANote(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Tighten)
	b.take(id, run.Entry{Act: run.Done, Step: 1})
	one := NewTab(t, Browser(t), Phone)
	signedOn(one, b, id, "MB")
	one.Tap(`.mark[data-id="M3"] .edge`)
	one.Click(`#fastener [data-open="replace"]`)
	one.Until(`document.getElementById("replace").open`)
	one.Click("#replace .go")
	if len(b.taken(id)) != 1 {
		t.Error("taken without a note")
	}
	one.Type("#replace textarea", "thread burred, the lead agrees")
	one.Click("#replace .go")
	version(one, "2")
	if e := b.entries(id)[1]; e.Act != run.Replace || e.Place == nil || e.Place.Fastener != "M3" || e.Note == "" {
		t.Errorf("taken: %+v", e)
	}
	one.Quiet()
}
