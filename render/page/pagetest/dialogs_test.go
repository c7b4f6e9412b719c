package pagetest

import (
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
