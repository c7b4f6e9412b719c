package trace_test

import (
	"image"
	"math"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/trace"
)

// A shadow that falls into every hole of a thick part neither moves the holes nor makes
// them doubtful (first principles: places and sizes as painted; 0.1 mm a pixel).
func TestShadowsInHoles(t *testing.T) {
	t.Parallel()
	const radius, shadow, soft = 45.0, 12.0, 10.0
	holes := []geometry.Point{{X: 200.3, Y: 150.2}, {X: 500.6, Y: 151.4}, {X: 800.1, Y: 150.7}, {X: 200.9, Y: 450.5}, {X: 500.2, Y: 449.8}, {X: 800.5, Y: 450.4}}
	inPart := func(p geometry.Point) float64 { // how deep, in pixels
		deep := min(p.X-100, 900-p.X, p.Y-50, 550-p.Y)
		for _, h := range holes {
			deep = min(deep, p.Distance(h)-radius)
		}
		return deep
	}
	share := func(deep, over float64) float64 { return min(max(0.5+deep/over, 0), 1) }
	clean := image.NewGray(image.Rect(0, 0, 1000, 600))
	for i := range clean.Pix {
		p := geometry.Point{X: float64(i%1000) + 0.5, Y: float64(i/1000) + 0.5}
		paper := 225 - 85*share(inPart(p.Sub(geometry.Point{X: shadow, Y: shadow / 2})), soft)
		part := share(inPart(p), 1)
		clean.Pix[i] = uint8(math.Round(part*85 + (1-part)*paper))
	}
	found := find(t, grainy(blurred(clean, 1), 3, 4), trace.PerInch(254, 254), trace.Options{AsScanned: true})
	if n := count(found); n[trace.Fastener] != len(holes) || len(found.Shapes) != len(holes) {
		t.Fatalf("found %v", n)
	}
	for i, s := range found.Shapes {
		if len(s.Doubts) > 0 {
			t.Errorf("%s: %v", s.ID, s.Doubts)
		}
		if off := s.Pixel.Distance(holes[i]) / 10; off > 0.05 || math.Abs(s.DiameterMm-2*radius/10) > 0.05 {
			t.Errorf("%s: %.3f mm off, %.3f mm wide", s.ID, off, s.DiameterMm)
		}
	}
}
