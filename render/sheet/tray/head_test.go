package tray

import (
	"testing"

	"drawdown/geometry/thread"
	"drawdown/render/words"
	"drawdown/sequence/plan"
	bolthead "drawdown/sequence/tension/head"
)

// The size of a spot: that of the file first, then that of the standard.
func TestHeadOf(t *testing.T) {
	t.Parallel()
	m10, err := thread.Parse("M10")
	if err != nil {
		t.Fatal(err)
	}
	half, err := thread.Parse("1/2-13 UNC")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		kind plan.Kind
		want string
		path int // segments: 7 of a hexagon, 6 of a circle
	}{
		{plan.Kind{HeadAcross: 17, Thread: &m10}, "head 17 mm across flats", 7},
		{plan.Kind{HeadAcross: 24, WasherFace: 30}, "washer Ø 30 mm", 6},
		{plan.Kind{HeadAcross: 24, WasherFace: 20}, "head 24 mm across flats", 7},
		{plan.Kind{NutAcross: 13, Into: "aluminium"}, "nut 13 mm across flats", 7},
		{plan.Kind{HeadAcross: 16, NutAcross: 13}, "head 16 mm across flats", 7},
		// ISO 4014: M10 has s = 16 (value from memory).
		{plan.Kind{Thread: &m10}, "head 16 mm across flats, ISO 4014 M10", 7},
		// ASME B18.2.1: 1/2 in has 3/4 in across flats (value from memory).
		{plan.Kind{Thread: &half}, "head 19.05 mm across flats, ASME B18.2.1 1/2 in", 7},
		// ISO 4762: M10 has dw of at least 15.33 (value from memory).
		{plan.Kind{Thread: &m10, HeadForm: bolthead.Socket}, "head Ø 15.33 mm, ISO 4762 M10", 6},
		// Nothing is known: our own choice.
		{plan.Kind{}, "size unknown, drawn Ø 14 mm", 6},
	} {
		h := headOf(c.kind)
		if got := h.words(words.English()); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
		b := h.path(struct{ X, Y float64 }{100, 100}, 1).Bounds()
		if height := b.Height(); height < h.across-0.02 || height > h.across+0.02 {
			t.Errorf("%s is drawn %.2f mm high", c.want, height)
		}
		if n := len(h.path(struct{ X, Y float64 }{}, 1)); n != c.path {
			t.Errorf("%s has %d segments", c.want, n)
		}
	}
}
