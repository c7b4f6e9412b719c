package way_test

import (
	"bytes"
	"fmt"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/sequence/way"
	"drawdown/sequence/way/waytest"
)

// Pinned from our own output: the orders of the invented parts, which other
// tests check against the rules. A changed weight or limit shows here; review
// what it changes.
func TestOrdersStay(t *testing.T) {
	t.Parallel()
	var all bytes.Buffer
	for _, p := range waytest.Parts() {
		for _, turn := range way.Turns {
			fmt.Fprintf(&all, "%s, %s: %v\n", p.Name, turn, way.Places(p.Points, way.Auto, turn))
		}
		for _, by := range []way.Way{way.Spiral, way.Cross, way.Row, way.Star, way.Balanced, way.Circular} {
			fmt.Fprintf(&all, "%s, %s: %v\n", p.Name, by, way.Places(p.Points, by, way.TurnDefault))
		}
	}
	testkit.Golden(t, "testdata/orders.txt", all.Bytes())
}
