package pagetest

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/sequence/run"
)

// doneTo does the first steps of a run in order.
func (b *bench) doneTo(id string, last int) {
	b.t.Helper()
	for n := range last {
		b.take(id, run.Entry{Act: run.Done, Step: n + 1})
	}
}

// A touch of the drawing records no angle: the first tap on its mark has the bar ask,
// the second records.
func TestAngleTakesTwoTaps(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Tighten)
	b.doneTo(id, 20) // two torques of ten main bolts
	one := NewTab(t, Browser(t), Tablet)
	signedOn(one, b, id, "RA")
	one.Tap(`.mark[data-state="next"] .edge`)
	one.Until(`document.getElementById("bar").textContent.startsWith("Tap again to record")`)
	if said := one.Text("#bar"); !strings.Contains(said, b.step(id, 21).ID) || !strings.Contains(said, "+90°") {
		t.Errorf("the bar says %q", said)
	}
	if got := len(b.taken(id)); got != 20 {
		t.Errorf("the first tap was recorded: %d entries", got)
	}
	one.Rest()
	one.Tap(`.mark[data-state="next"] .edge`)
	version(one, "21")
	one.Rest()
	one.Tap(`.mark[data-state="next"] .edge`)
	one.Tap(`.mark[data-state="done"] .edge`) // another mark: the first tap no longer counts
	one.Until(`document.getElementById("fastener").open`)
	if said := one.Text("#bar"); strings.HasPrefix(said, "Tap again") {
		t.Errorf("the bar still asks: %q", said)
	}
	one.Quiet()
}

// Of a fastener that is done in this stage the dialog says what would be recorded, and
// that this stage is not complete.
func TestOutOfOrderSaysWhat(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Tighten)
	b.doneTo(id, 21)
	first := b.step(id, 21).ID
	one := NewTab(t, Browser(t), Phone)
	signedOn(one, b, id, "RA")
	one.Tap(`.mark[data-id="` + first + `"] .edge`)
	one.Until(`document.getElementById("fastener").open`)
	if said := one.Text("#fastener-does"); !strings.Contains(said, first+": +90°") || !strings.Contains(said, "stage 4") {
		t.Errorf("it says %q", said)
	}
	if said := one.Text("#fastener-early"); !strings.Contains(said, "Stage 3 is not complete") || !strings.Contains(said, b.step(id, 22).ID) {
		t.Errorf("it warns %q", said)
	}
	one.Quiet()
}

// A wait is left out with a reason, as a step on a fastener is.
func TestWaitIsLeftOut(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open(`
drawdown: 1
title: lid
fasteners: [{row: {count: 3, pitch: 60, id: C}}]
tighten: {stages: [{torque: 20 N·m}, {wait: 10 min}, {torque: 25 N·m}], source: works manual 4.2}
`, run.Tighten)
	b.doneTo(id, 3)
	one := NewTab(t, Browser(t), Phone)
	signedOn(one, b, id, "RA")
	one.Tap(`.tool[data-open="more"]`)
	one.Click(`#more [data-open="fastener"]`)
	one.Until(`document.getElementById("fastener").open`)
	if said := one.Text("#fastener-title"); !strings.HasPrefix(said, "Wait: 10 min") {
		t.Errorf("the dialog is about %q", said)
	}
	one.Type("#fastener input[name=note]", "the sealant needs none")
	one.Click(`#fastener [data-act="leave out"]`)
	version(one, "4")
	if diff := cmp.Diff("leave out 4 RA", b.taken(id)[3]); diff != "" {
		t.Error(diff)
	}
	one.Quiet()
}

// Before a stage begins with a fastener behind, the page asks once; then it says so at
// each step until that is settled.
func TestGoesOnBehind(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Tighten)
	b.doneTo(id, 20)
	b.take(id, run.Entry{ID: "cut", Act: run.Unsure, Step: 21})
	for n := range 9 { // the other main bolts
		b.take(id, run.Entry{Act: run.Done, Step: 22 + n})
	}
	late := b.step(id, 21).ID
	one := NewTab(t, Browser(t), Phone)
	signedOn(one, b, id, "MB")
	if said := one.Text("#panel"); !strings.Contains(said, late+" is not finished in stage 3") {
		t.Fatalf("the panel says %q", said)
	}
	one.Tap("#bar")
	one.Until(`document.getElementById("behind").open`)
	one.Type("#behind textarea", "LM: new bolt at noon")
	one.Click("#behind .go")
	version(one, "31")
	if e := b.entries(id)[30]; e.Act != run.Remark || e.Of != "cut" || e.Note != "Go on all the same. LM: new bolt at noon" {
		t.Errorf("the answer is %+v", e)
	}
	one.Until(`document.querySelector(".ask").classList.contains("step")`)
	if said := one.Text("#panel .notes"); !strings.Contains(said, late+" is not finished in stage 3") {
		t.Errorf("the next step says %q", said)
	}
	b.take(id, run.Entry{Act: run.Settle, Of: "cut", Note: "counts as done"}, run.Entry{Act: run.Done, Step: 21})
	version(one, "33")
	if said := one.Text("#panel"); strings.Contains(said, "is not finished") {
		t.Errorf("settled, the panel says %q", said)
	}
	one.Quiet()
}

// Undo names what it takes back; of somebody else's tap it asks first.
func TestUndoOfAnother(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Tighten)
	b.doneTo(id, 2) // by KL
	name := b.step(id, 2).ID
	one := NewTab(t, Browser(t), Tablet)
	signedOn(one, b, id, "RA")
	if said := one.Text("#undo"); !strings.Contains(said, name+": 20 N·m") || !strings.Contains(said, "KL") {
		t.Errorf("undo says %q", said)
	}
	one.Tap("#undo")
	one.Until(`document.getElementById("takeback").open`)
	if said := one.Text("#takeback-title"); !strings.Contains(said, name+": 20 N·m, by KL") {
		t.Errorf("it asks %q", said)
	}
	if got := len(b.taken(id)); got != 2 {
		t.Errorf("%d entries before the answer", got)
	}
	one.Click("#takeback-do")
	version(one, "3")
	one.Until(`document.querySelector("#undo .of").textContent.includes("` + b.step(id, 1).ID + `")`)
	one.Quiet()
}

// Where a trouble stops the work undo takes back its report, and no step before it.
func TestUndoWhereStopped(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Tighten)
	b.take(id, run.Entry{ID: "broke", Act: run.Report, Trouble: run.Broken, Step: 1}, run.Entry{ID: "found", Act: run.Measure, Measure: "depth", Value: "3", Unit: "mm"})
	one := NewTab(t, Browser(t), Phone)
	openRun(one, b, id)
	if !Evaluate[bool](one, `document.getElementById("undo").disabled`) {
		t.Errorf("undo takes back %q", one.Text("#undo"))
	}
	b.take(id, run.Entry{Act: run.Undo, Of: "found"})
	version(one, "3")
	one.Until(`document.getElementById("undo").dataset.of === "broke"`)
	one.Quiet()
}

// Neighbours that start again are named, and their steps are open from then on.
func TestNeighboursStartAgain(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Tighten)
	b.doneTo(id, 2)
	beside := b.step(id, 2).ID
	b.take(id, run.Entry{ID: "new", Act: run.Replace, Step: 1})
	one := NewTab(t, Browser(t), Phone)
	signedOn(one, b, id, "MB")
	one.Tap("#bar")
	one.Until(`document.getElementById("answer").open`)
	one.Click("#answer [data-restart]")
	one.Click("#answer [name=say-2]:not([required])")
	one.Type("#answer [name=decided_by]", "LM")
	one.Click("#answer .go")
	if got := len(b.taken(id)); got != 3 {
		t.Error("taken without naming a neighbour")
	}
	one.Click(`#answer [name="new-at"][value="` + beside + `"]`)
	one.Click("#answer .go")
	version(one, "6")
	all := b.entries(id)[3:]
	if all[0].Act != run.Remark || all[0].Of != "new" || all[1].Act != run.Replace || all[1].Place.Fastener != beside || all[2].Of != all[1].ID {
		t.Errorf("taken: %+v", all)
	}
	one.Until(`document.querySelector(".ask").classList.contains("step")`)
	one.Quiet()
}

// The first torque asks for the wrench where none is set, also of a person whose
// initials are known; it is seen beside them, and another person is asked anew.
func TestWrenchIsAskedFor(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Tighten)
	one := NewTab(t, Browser(t), Tablet)
	openRun(one, b, id)
	Evaluate[any](one, `localStorage.setItem("drawdown-who", "RA"); null`)
	openRun(one, b, id)
	one.Tap("#bar")
	one.Until(`document.getElementById("who").open && document.activeElement.name === "wrench"`)
	one.Type("#who input[name=wrench]", "W-07")
	one.Click("#who .go")
	version(one, "1")
	if got := b.entries(id)[0].Wrench; got != "W-07" {
		t.Errorf("the torque names the wrench %q", got)
	}
	if said := one.Text("#who-button"); said != "RA · W-07" {
		t.Errorf("the run shows %q", said)
	}
	one.Click("#who-button")
	Evaluate[any](one, `document.querySelector("#who input[name=who]").value = "KB"; document.querySelector("#who input[name=wrench]").value = ""; null`)
	one.Click("#who .go")
	one.Until(`document.getElementById("who-button").textContent === "KB"`)
	one.Quiet()
}

// The angle gauge goes with each angle, in place of the wrench, and back.
func TestGaugeOfAngles(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Tighten)
	b.doneTo(id, 20)
	one := NewTab(t, Browser(t), Tablet)
	signedOn(one, b, id, "RA")
	one.Click("#who-button")
	one.Type("#who input[name=wrench]", "W-07")
	one.Type("#who input[name=gauge]", "AG-2")
	one.Click("#who .go")
	one.Until(`document.getElementById("who-button").textContent === "RA · AG-2"`)
	one.Tap("#bar")
	version(one, "21")
	if got := b.entries(id)[20].Wrench; got != "AG-2" {
		t.Errorf("the angle names %q", got)
	}
	for n := 22; n <= 40; n++ {
		b.take(id, run.Entry{Act: run.Done, Step: n})
	}
	one.Until(`document.getElementById("who-button").textContent === "RA · W-07"`)
	one.Quiet()
}

// A bolt that broke while tightening is not tightened further: a new one goes in, or
// its steps are left out, and somebody decides which.
func TestBrokenWhileTightening(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		button string
		want   []string
	}{
		{"#settle .go", []string{"replace 23 LM"}},
		{"#settle [value=out]", []string{"settle 0 LM", "leave out 23 ", "leave out 33 "}},
	} {
		b := newBench(t)
		id := b.open("p4-head", run.Tighten)
		b.doneTo(id, 22)
		b.take(id, run.Entry{Act: run.Report, Trouble: run.Broken, Step: 23})
		one := NewTab(t, Browser(t), Phone)
		signedOn(one, b, id, "MB")
		one.Click("[data-open=settle]")
		one.Until(`document.getElementById("settle").open`)
		one.Type("#settle textarea", "stub drilled out")
		one.Click(c.button)
		if n := len(b.taken(id)); n != 23 {
			t.Fatalf("taken without a name: %d entries", n)
		}
		one.Type("#settle [name=decided_by]", "LM")
		one.Click(c.button)
		version(one, fmt.Sprint(23+len(c.want)))
		var got []string
		for _, e := range b.entries(id)[23:] {
			got = append(got, fmt.Sprintf("%s %d %s", e.Act, e.Step, e.DecidedBy))
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: %s", c.button, diff)
		}
		one.Quiet()
	}
}

// Whoever goes on after a hand over reads it first: the tap that asks for the initials
// records nothing.
func TestHandOverIsRead(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Loosen)
	b.take(id, run.Entry{Act: run.Done, Step: 1}, run.Entry{Act: run.HandOver, To: "MB", Note: "F4 is stiff"})
	one := NewTab(t, Browser(t), Phone)
	openRun(one, b, id)
	one.Until(`document.getElementById("who").open`)
	one.Click("#who [data-close]")
	one.Tap("#bar")
	one.Until(`document.getElementById("who").open`)
	one.Type("#who input[name=who]", "MB")
	one.Click("#who .go")
	one.Until(`document.getElementById("handed").open`)
	if said := one.Text("#handed"); !strings.Contains(said, "F4 is stiff") {
		t.Errorf("it shows %q", said)
	}
	one.Click("#handed [data-close]")
	one.Rest()
	one.Tap("#bar")
	version(one, "3")
	one.Quiet()
}

// A bolt that is out before its trouble is seen has no steps to leave out: what is
// settled is the trouble alone, and the run can be sealed.
func TestSettledWhenDone(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Loosen)
	b.doneTo(id, b.steps(id))
	first := b.step(id, 1).ID
	b.take(id, run.Entry{ID: "bent", Act: run.Report, Trouble: run.Stretched, Place: &run.Place{Fastener: first}})
	one := NewTab(t, Browser(t), Phone)
	signedOn(one, b, id, "RA")
	one.Tap("#bar")
	one.Until(`document.getElementById("settle").open`)
	if Evaluate[bool](one, `document.querySelector('#settle [name="after"]') !== null`) {
		t.Error("steps are left out that are done")
	}
	one.Type("#settle textarea", "scrap")
	one.Click("#settle .go")
	one.Until(`document.querySelector(".ask").classList.contains("seal")`)
	one.Quiet()
}

// A tap that is rejected says why, also where it is dismissed by Escape, and leaves the
// queue.
func TestRejectedTapLeaves(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-sump", run.Tighten)
	one := NewTab(t, Browser(t), Phone)
	signedOn(one, b, id, "RA")
	b.deaf.Store(true)
	one.Tap("#bar")
	one.Until(`document.body.dataset.held === "1"`)
	b.take(id, run.Entry{Act: run.Done, Step: 1})
	b.deaf.Store(false)
	one.Until(`document.getElementById("refused").open`)
	if said := one.Text("#status"); !strings.Contains(said, "already done") {
		t.Errorf("the status says %q", said)
	}
	one.Key("\x1b")
	one.Until(`document.body.dataset.held === "0" && !document.querySelector("dialog[open]")`)
	b.want(id, "done 1 KL")
	one.Quiet("Failed to load resource", "ERR_")
}
