package rings_test

import (
	"image"
	"math"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/trace/dirty"
	"drawdown/geometry/trace/rings"
)

// Every hole of a dirty scan that shows more than half of its edge has a ring of
// its place and size, however bright it is (places as painted).
func TestRingsOfDirtyScans(t *testing.T) {
	t.Parallel()
	for seed := range uint64(3) {
		s := dirty.New(seed)
		k := s.DPI / 25.4
		found := rings.Find(s.Picture, 1.25*k, 25*k)
		for _, h := range s.Holes {
			if h.DiameterMm > 48 || h.Damage == dirty.TornAway {
				continue
			}
			at, near := s.Pixel(h.At), false
			for _, r := range found {
				near = near || r.Centre.Distance(at) < 0.3*k && math.Abs(2*r.Radius/k-h.DiameterMm) < max(0.5, 0.06*h.DiameterMm)
			}
			if !near {
				t.Errorf("scan %d: no ring of %.1f mm at %.0f, %.0f: %s", seed, h.DiameterMm, at.X, at.Y, h.Damage)
			}
		}
		t.Logf("scan %d %v: %d rings for %d holes", seed, s.Done, len(found), len(s.Holes))
	}
}

// A plain picture has no ring, and one too small for a ring none either.
func TestNoRings(t *testing.T) {
	t.Parallel()
	for _, size := range []image.Point{{X: 300, Y: 200}, {X: 64, Y: 64}, {X: 5, Y: 5}} {
		if found := rings.Find(image.NewGray(image.Rectangle{Max: size}), 5, 40); len(found) > 0 {
			t.Errorf("%v: %d rings", size, len(found))
		}
	}
	if r, ok := rings.Look(image.NewGray(image.Rect(0, 0, 80, 80)), geometry.Point{X: 40, Y: 40}, 12); ok {
		t.Errorf("a ring on nothing: %+v", r)
	}
}
