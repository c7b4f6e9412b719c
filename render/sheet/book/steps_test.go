package book_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/book"
	"drawdown/render/words"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
)

// A step has one tick and one action; what stops the work comes before it, and
// a caution has a sign and no tick. First principles: whoever ticks seven
// things at once has not looked at each.
func TestOneTickOneAction(t *testing.T) {
	t.Parallel()
	o := p4(t)
	o.Tasks = append([]overhaul.Task{
		o.Joints()[1].Task,
		{Note: "Stand rated for the weight; nobody under it", Warns: true, Side: plan.CautionTighten},
		{Part: "rotor", Tighten: "two people; blocked; oiled", New: []string{"seal"}, Figures: []string{"clearance"}},
		{Note: "Block upright; stand locked", Side: plan.CautionTighten},
	}, o.Joints()[0].Task)
	paper, _ := sheet.FindPaper("a4")
	doc, _, err := book.Document(o, book.Request{Request: sheet.Request{Paper: paper, Words: words.English()}, Trays: book.NoTrays})
	if err != nil {
		t.Fatal(err)
	}
	page, _ := pageOf(t, doc, "Rebuild", "BOOK")
	inOrder(t, page, "Block upright", "Stand locked", "STOP: figures on page", "NEW: seal", "In: rotor; two people", "Blocked", "Oiled")
	joint := o.Joints()[0]
	tightening, _ := pageOf(t, doc, strconv.Itoa(joint.Number)+" "+joint.Title, "TIGHTEN")
	for _, begin := range []string{"First: Block upright", "First: Stand locked", "NEW: seal", "In: rotor; two people", "Blocked", "Oiled"} {
		if !slices.ContainsFunc(scenetest.Texts(tightening), func(text scene.Text) bool {
			return strings.HasPrefix(text.Content, begin) && ticked(tightening, text.At.Y)
		}) {
			t.Errorf("%q has no box of its own on the card", begin)
		}
	}
	for _, text := range scenetest.Texts(page) {
		for begin, want := range map[string]bool{"Block upright": true, "Stand locked": true, "STOP": true, "NEW": true, "In: rotor": true, "Blocked": true, "Oiled": true, "Caution: Stand": false} {
			if strings.HasPrefix(text.Content, begin) && ticked(page, text.At.Y) != want {
				t.Errorf("%q has a box to tick: %v", text.Content, !want)
			}
		}
	}
}

// ticked reports whether the row with a baseline has a tick box: a square at
// the left edge.
func ticked(page scene.Page, baseline float64) bool {
	return slices.ContainsFunc(page.Items, func(it scene.Item) bool {
		shape, ok := it.(scene.Shape)
		if !ok || shape.Stroke == scene.None {
			return false
		}
		b := shape.Path.Bounds()
		square := b.Width() < 5 && math.Abs(b.Width()-b.Height()) < 0.05
		return square && b.Right < 25 && b.Top < baseline && baseline < b.Bottom+1
	})
}
