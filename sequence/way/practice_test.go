package way

import (
	"testing"

	"drawdown/sequence/gallery"
)

// worked gives each place of a part of the gallery its number in the order.
func worked(t *testing.T, name string) []int {
	t.Helper()
	for _, p := range gallery.Parts() {
		if p.Name == name {
			return numbers(Places(p.Points, Auto, TurnDefault))
		}
	}
	t.Fatalf("no part %q", name)
	return nil
}

// Common practice, no source: on staggered rows the middles of the outer rows
// come before what lies beside them.
func TestMiddlesOfStaggeredRows(t *testing.T) {
	got := worked(t, "head of staggered rows")
	for _, middle := range []int{2, 11} {
		for _, other := range []int{0, 1, 3, 4, 5, 8, 9, 10, 12, 13} {
			if got[middle] > got[other] {
				t.Errorf("place %d is worked at %d, place %d before it at %d", middle, got[middle], other, got[other])
			}
		}
	}
}
