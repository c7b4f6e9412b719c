package trace

import (
	"testing"

	"drawdown/geometry"
)

// A notch and a bump of dust on a side go; corners, a chamfer and a deep slot
// stay.
func TestNicks(t *testing.T) {
	t.Parallel()
	corners := []geometry.Point{{X: 0, Y: 0}, {X: 100, Y: 0}, {X: 100, Y: 59}, {X: 99, Y: 60}, {X: 0, Y: 60}}
	slot := []geometry.Point{{X: 0, Y: 31}, {X: 4, Y: 31}, {X: 4, Y: 29.5}, {X: 0, Y: 29.5}}
	line := []geometry.Point{
		corners[0], {X: 40, Y: 0}, {X: 40.4, Y: 0.8}, {X: 41, Y: 0.1}, corners[1], // a notch below
		{X: 100, Y: 20}, {X: 100.5, Y: 20.2}, {X: 100.6, Y: 20.9}, {X: 100, Y: 21.1}, corners[2], corners[3], corners[4], // a bump on the right
	}
	line = append(line, slot...)
	got := simplified(withoutNicks(line), 0.2, 100)
	want := append(append([]geometry.Point{}, corners...), slot...)
	if len(got) != len(want) {
		t.Fatalf("%v, want %v", got, want)
	}
	for _, w := range want {
		found := false
		for _, g := range got {
			found = found || g == w
		}
		if !found {
			t.Errorf("%v is gone: %v", w, got)
		}
	}
}
