package benchtest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp/kb"

	"drawdown/render/page/pagetest"
)

const lid = `# the lid of the trainer
drawdown: 1
title: Lid
kinds: {main: {thread: M8, class: "8.8"}}   # one size
fasteners:
  - {id: A1, at: [0, 0], kind: main}        # by the port
  - {id: A2, at: [60, 0], kind: main}
  - {id: A3, at: [60, 40], kind: main}
  - {id: A4, at: [0, 40], kind: main}
tighten: {stages: [{torque: 20 N·m}]}
`

// editing opens a file of the shop on its edit page.
func editing(t *testing.T, d pagetest.Device) (*served, *pagetest.Tab) {
	t.Helper()
	s := serve(t)
	if err := os.WriteFile(filepath.Join(s.options.Folder, "lid.yaml"), []byte(strings.ReplaceAll(lid, "\n", "\r\n")), 0o666); err != nil {
		t.Fatal(err)
	}
	one := pagetest.NewTab(t, pagetest.Browser(t), d)
	one.Open(s.address)
	one.Open(base(s.address) + "/patterns/lid/edit")
	one.Until(`document.body.dataset.ready === "yes"`)
	return s, one
}

// edits waits for the answer to what do does.
func edits(one *pagetest.Tab, do func()) {
	before := pagetest.Evaluate[string](one, `document.getElementById("text").value`)
	do()
	one.Until(`document.getElementById("text").value !== ` + quoted(before))
}

func quoted(s string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`, "\n", `\n`).Replace(s) + `"`
}

// saved saves the text: the browser asks before it leaves one that is not.
func saved(one *pagetest.Tab) {
	one.Click("#save")
	one.Until(`document.getElementById("kept").textContent === document.getElementById("kept").dataset.saved`)
}

func textOf(one *pagetest.Tab) string {
	return pagetest.Evaluate[string](one, `document.getElementById("text").value`)
}

func onDisk(t *testing.T, s *served) string {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(s.options.Folder, "lid.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// drag moves a mark by the mouse.
func drag(one *pagetest.Tab, id string, dx, dy float64) {
	at := pagetest.Evaluate[[]float64](one, `(() => { const b = document.querySelector('.mark[data-id="`+id+`"] .hit').getBoundingClientRect(); return [b.x + b.width / 2, b.y + b.height / 2]; })()`)
	for _, e := range []struct {
		kind input.DispatchMouseEventType
		x, y float64
	}{{"mousePressed", at[0], at[1]}, {"mouseMoved", at[0] + dx/2, at[1] + dy/2}, {"mouseMoved", at[0] + dx, at[1] + dy}, {"mouseReleased", at[0] + dx, at[1] + dy}} {
		one.Mouse(e.kind, e.x, e.y)
	}
}

// By mouse, touch and keys on three devices: each edit changes one place of the
// text, all are taken back, and what is saved is what is seen, with its comments
// and line breaks.
func TestEditedOnThePicture(t *testing.T) {
	for _, d := range []pagetest.Device{pagetest.Phone, pagetest.Tablet, pagetest.Desktop} {
		t.Run(d.Name, func(t *testing.T) {
			t.Parallel()
			s, one := editing(t, d)
			first := textOf(one)
			pick := one.Click
			if d.Touch {
				pick = one.Tap
			}
			pick(`.mark[data-id="A3"] .edge`)
			one.Until(`document.querySelector('.mark[data-id="A3"]').classList.contains("picked")`)
			edits(one, func() { pick(`[data-by="1 0"]`) })
			if got := textOf(one); got != strings.Replace(first, "[60, 40]", "[61, 40]", 1) {
				t.Errorf("moved to the right:\n%s", got)
			}
			edits(one, func() {
				pagetest.Evaluate[any](one, `document.querySelector('.mark[data-id="A3"]').focus(); null`)
				one.Key(kb.ArrowUp)
			})
			edits(one, func() {
				pagetest.Evaluate[any](one, `(() => { const f = document.querySelector('#chosen [data-key="x"]'); f.value = "2.5 in"; f.dispatchEvent(new Event("change", { bubbles: true })); })(); null`)
			})
			if got := textOf(one); got != strings.Replace(first, "[60, 40]", "[63.5, 41]", 1) {
				t.Errorf("moved by keys and typed:\n%s", got)
			}
			if !d.Touch {
				edits(one, func() { drag(one, "A2", 40, 0) })
				if got := textOf(one); !strings.Contains(got, ", 0], kind: main}\n  - {id: A3") || strings.Contains(got, "[60, 0]") {
					t.Errorf("dragged:\n%s", got)
				}
				edits(one, func() { pick("#undo") })
				pick(`.mark[data-id="A3"] .edge`)
			}
			edits(one, func() { pick(`[data-do*="remove"]`) })
			if got := textOf(one); strings.Contains(got, "A3") || !strings.Contains(got, "# by the port") {
				t.Errorf("removed:\n%s", got)
			}
			for range 4 {
				edits(one, func() { pick("#undo") })
				pick(`.mark[data-id="A3"] .edge`)
			}
			if got := textOf(one); got != first {
				t.Errorf("all taken back:\n%s", got)
			}
			edits(one, func() { pick("#redo") })
			saved(one)
			if got := onDisk(t, s); got != strings.Replace(strings.ReplaceAll(lid, "\n", "\r\n"), "[60, 40]", "[61, 40]", 1) {
				t.Errorf("saved: %q", got)
			}
			for _, barrier := range pagetest.Barriers(one) {
				t.Error(barrier)
			}
			if wide := pagetest.Evaluate[bool](one, `document.documentElement.scrollWidth > innerWidth`); wide {
				t.Error("the page is wider than the screen")
			}
			one.Quiet()
		})
	}
}

// A text edit redraws the picture, its mistakes are shown at their line, and the
// maker's order is given by tapping.
func TestEditedInTheText(t *testing.T) {
	t.Parallel()
	_, one := editing(t, pagetest.Desktop)
	write := func(text string) {
		pagetest.Evaluate[any](one, `(() => { const t = document.getElementById("text"); t.value = `+quoted(text)+`; t.dispatchEvent(new Event("input")); })(); null`)
	}
	first := textOf(one)
	write(strings.Replace(first, "A4", "A1", 1))
	one.Until(`document.querySelector('.found [data-line="9"] .warn') !== null`)
	write(strings.Replace(first, "A4", "B4", 1))
	one.Until(`document.querySelector('.mark[data-id="B4"]') !== null`)
	one.Click(`[data-mode="order"]`)
	edits(one, func() {
		for _, id := range []string{"A3", "A1", "B4", "A2"} {
			one.Click(`.mark[data-id="` + id + `"] .edge`)
		}
	})
	if got := textOf(one); !strings.Contains(got, "tighten: {stages: [{torque: 20 N·m}], order: [A3, A1, B4, A2]}") {
		t.Errorf("the order:\n%s", got)
	}
	saved(one)
	one.Quiet()
}

// A file that was changed meanwhile is not overwritten: both versions are shown.
func TestNotOverAChange(t *testing.T) {
	t.Parallel()
	s, one := editing(t, pagetest.Desktop)
	edits(one, func() {
		pagetest.Evaluate[any](one, `document.querySelector('.mark[data-id="A2"]').focus(); null`)
		one.Key(kb.ArrowLeft)
	})
	other := strings.Replace(lid, "Lid", "Other lid", 1)
	if err := os.WriteFile(filepath.Join(s.options.Folder, "lid.yaml"), []byte(other), 0o666); err != nil {
		t.Fatal(err)
	}
	one.Click("#save")
	one.Until(`document.getElementById("conflict").open`)
	if got := onDisk(t, s); got != other {
		t.Errorf("overwritten: %s", got)
	}
	if got := pagetest.Evaluate[[]string](one, `[document.getElementById("mine").value, document.getElementById("theirs").value]`); !strings.Contains(got[0], "[59, 0]") || got[1] != other {
		t.Errorf("the versions: %q", got)
	}
	one.Click("#take-theirs")
	one.Until(`document.getElementById("text").value.includes("Other lid")`)
	edits(one, func() { one.Click("#undo") })
	if got := textOf(one); !strings.Contains(got, "[59, 0]") {
		t.Errorf("taken back:\n%s", got)
	}
	saved(one)
	if got := onDisk(t, s); got != textOf(one) && strings.ReplaceAll(got, "\r\n", "\n") != textOf(one) {
		t.Errorf("saved: %q", got)
	}
	one.Quiet("409")
}

// A built-in pattern is saved as a file of the shop.
func TestBuiltinIsCopied(t *testing.T) {
	t.Parallel()
	s := serve(t)
	one := pagetest.NewTab(t, pagetest.Browser(t), pagetest.Tablet)
	one.Open(s.address)
	one.Open(base(s.address) + "/patterns/p4-head/edit")
	one.Until(`document.body.dataset.ready === "yes"`)
	pagetest.Evaluate[any](one, `document.getElementById("save-as").value = "my-head"; null`)
	one.Tap("#save")
	one.Until(`location.pathname === "/patterns/my-head/edit" && document.body.dataset.ready === "yes"`)
	if _, err := os.Stat(filepath.Join(s.options.Folder, "my-head.yaml")); err != nil {
		t.Error(err)
	}
	one.Quiet()
}

// On a mirrored part a fastener goes where the key says, and what it changes is
// noted beside the file that this one extends.
func TestEditedAsMirrored(t *testing.T) {
	t.Parallel()
	s := serve(t)
	one := pagetest.NewTab(t, pagetest.Browser(t), pagetest.Desktop)
	one.Open(s.address)
	one.Open(base(s.address) + "/patterns/p4-v-head-right/edit")
	one.Until(`document.body.dataset.ready === "yes"`)
	across := func() float64 {
		return pagetest.Evaluate[float64](one, `document.querySelector('.mark[data-id="M2"] .hit').cx.baseVal.value - document.querySelector('.mark[data-id="M3"] .hit').cx.baseVal.value`)
	}
	before := across()
	edits(one, func() {
		pagetest.Evaluate[any](one, `document.querySelector('.mark[data-id="M2"]').focus(); null`)
		one.Key(kb.ArrowRight)
	})
	if got := textOf(one); !strings.Contains(got, "change: {M2: {at: [-96, 45]}}") { // from -95 in p4-head.yaml
		t.Errorf("the file:\n%s", got)
	}
	if after := across(); after <= before {
		t.Errorf("M2 was %.2f to the right of M3, and now %.2f", before, after)
	}
	edits(one, func() { one.Click("#undo") })
	one.Quiet()
}
