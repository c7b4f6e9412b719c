package trace_test

import (
	"image"
	"math"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/trace"
)

// Oil on the paper beside the part hides where its edge is: the place is named. A
// clean part has no such doubt (blot as drawn: 8 mm about a place on the right side).
func TestFaintOutline(t *testing.T) {
	t.Parallel()
	size := image.Pt(1000, 720)
	see := scanner(size, 100, 0)
	clean := coverGasket().paint(size, see)
	if f := find(t, clean, trace.PerInch(100, 100), trace.Options{}); finding.Has(f.Doubts, trace.FaintOutline) {
		t.Errorf("clean: %v", f.Doubts)
	}
	box := geometry.Bounds(coverGasket().outline)
	x, y := see(geometry.Point{X: box.Max.X, Y: 5})
	oiled := change(clean, func(px, py int, v float64) float64 {
		if math.Hypot(float64(px)-x, float64(py)-y) < 32 {
			return 50 + 0.4*(v-50)
		}
		return v
	})
	f := find(t, oiled, trace.PerInch(100, 100), trace.Options{})
	for _, d := range f.Doubts {
		at := geometry.Point{X: d.Values["x"].(float64), Y: d.Values["y"].(float64)}
		if d.Code != trace.FaintOutline || at.Distance(geometry.Point{X: x, Y: y}) > 36 {
			t.Errorf("%v, oil at %.0f, %.0f", d, x, y)
		}
	}
	if len(f.Doubts) == 0 {
		t.Error("oil at the edge was not reported")
	}
}

// Specks that an eye sees are kept with their places: a bar, not a grain (as drawn).
func TestSeenSpecks(t *testing.T) {
	t.Parallel()
	size := image.Pt(1000, 720)
	see := scanner(size, 100, 0)
	x, y := see(geometry.Point{X: 12, Y: 37})
	bar := change(coverGasket().paint(size, see), func(px, py int, v float64) float64 {
		if math.Abs(float64(px)-x) < 2 && math.Abs(float64(py)-y) < 9 || math.Hypot(float64(px)-x-40, float64(py)-y) < 1.2 {
			return 230
		}
		return v
	})
	f := find(t, bar, trace.PerInch(100, 100), trace.Options{AsScanned: true})
	if len(f.SeenSpecks) != 1 || f.View.Pixel(f.SeenSpecks[0]).Distance(geometry.Point{X: x, Y: y}) > 1 {
		t.Errorf("%v, want one at pixel %.0f, %.0f", f.SeenSpecks, x, y)
	}
}
