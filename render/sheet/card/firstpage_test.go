package card

import (
	"reflect"
	"testing"

	"drawdown/patterns/patterntest"
	"drawdown/render/sheet"
	"drawdown/render/words"
)

// Looking for a first page changes nothing that was measured: what the search
// tries and turns down leaves no trace in what is drawn.
func TestChoosingChangesNothing(t *testing.T) {
	for _, name := range []string{"p4-head", "p4-pump-flange", "p4-sump"} {
		for _, paper := range []sheet.Paper{sheet.Papers[1], sheet.Papers[1].Landscape(), sheet.Papers[2], sheet.Papers[2].Landscape()} {
			c := newCard(patterntest.Plan(t, name), false, sheet.Request{Paper: paper, Words: words.English()})
			whole, spreads := c.stacked(), c.spreads()
			for room := 60.0; room < paper.Height; room += 40 {
				first := c.choose(room, whole, spreads)
				if again := c.choose(room, whole, spreads); !reflect.DeepEqual(first, again) {
					t.Errorf("%s on %s, %g mm free: chosen anew, the first page is another", name, paper.Name, room)
				}
			}
			if !reflect.DeepEqual(whole, c.stacked()) || !reflect.DeepEqual(spreads, c.spreads()) {
				t.Errorf("%s on %s: the search changed what was measured", name, paper.Name)
			}
		}
	}
}
