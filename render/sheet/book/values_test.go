package book

import (
	"strings"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/sheettest"
	"drawdown/sequence/measure"
	"drawdown/sequence/overhaul"
)

// A machine with values has a page to write them on, listed in the contents; one
// without has none. From first principles.
func TestValuesOfTheMachine(t *testing.T) {
	t.Parallel()
	limit := unit.Decimal{Millionths: 15_000_000}
	for _, ask := range sheettest.Requests(2) {
		var o overhaul.Overhaul
		o.Title, o.Measures = "Test pump", []measure.Value{
			{What: "leak-down", Unit: "bar", To: &limit, At: []measure.Place{{Label: "cyl 1"}, {Label: "cyl 2"}}},
			{What: "end float", Unit: "mm"},
		}
		b := &binder{o: o, ask: Request{Request: ask}, w: ask.Words.Book}
		sections := b.sections()
		b.lists(sections, firstPages(sections))
		found := false
		for _, s := range sections {
			if s.kind != values {
				continue
			}
			found = true
			said := scenetest.Said(s.pages...)
			for _, want := range []string{"leak-down", "cyl 2", ask.Words.Figure("≤ 15 bar"), "end float"} {
				if !strings.Contains(said, want) {
					t.Errorf("on %s in %s the page does not say %q: %s", ask.Paper.Name, ask.Words.Language, want, said)
				}
			}
		}
		if !found {
			t.Error("there is no page of values")
		}
	}
	b := &binder{ask: Request{Request: sheettest.English(sheet.Papers[1])}, w: sheettest.English(sheet.Papers[1]).Words.Book}
	for _, s := range b.sections() {
		if s.kind == values {
			t.Error("a machine without values has a page of them")
		}
	}
}
