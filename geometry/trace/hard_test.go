package trace_test

import (
	"image"
	"image/color"
	"math"
	"slices"
	"testing"

	"github.com/fogleman/gg"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/trace"
	"drawdown/geometry/unit"
)

// over paints on a picture that was painted.
func over(p *image.Gray, draw func(dc *gg.Context)) *image.Gray {
	dc := gg.NewContextForImage(p)
	draw(dc)
	out := image.NewGray(p.Rect)
	rgba := dc.Image().(*image.RGBA)
	for i := range out.Pix {
		out.Pix[i] = rgba.Pix[4*i]
	}
	return out
}

// near returns the shape next to a place, laid out as drawn: the gasket's own
// middle is [0, 0] but for a fraction.
func near(t *testing.T, found trace.Found, at geometry.Point) trace.Shape {
	t.Helper()
	for _, s := range found.Shapes {
		if s.At.Distance(at) < 2.5 {
			return s
		}
	}
	t.Fatalf("no shape near %v", at)
	return trace.Shape{}
}

var smallScan = image.Pt(1500, 1050) // at 150 dpi

// A tear at a hole, dirt stuck to another, a hair across a third and a hole torn
// open to the outside: all four are found in their places, the damaged ones
// with a doubt.
func TestDamage(t *testing.T) {
	t.Parallel()
	gasket := coverGasket()
	see := scanner(smallScan, 150, 0)
	line := func(dc *gg.Context, level uint8, widthMm float64, points ...geometry.Point) {
		dc.SetColor(color.Gray{level})
		dc.SetLineWidth(widthMm * 150 / 25.4)
		for _, p := range points {
			dc.LineTo(see(p))
		}
		dc.Stroke()
	}
	blob := func(dc *gg.Context, level uint8, at geometry.Point, radiusMm float64) {
		x, y := see(at)
		dc.SetColor(color.Gray{level})
		dc.DrawCircle(x, y, radiusMm*150/25.4)
		dc.Fill()
	}
	at := func(i int) geometry.Point { return gasket.holes[i].at }
	picture := over(gasket.paint(smallScan, see), func(dc *gg.Context) {
		line(dc, lightGround, 1.6, at(2), at(2).Add(geometry.Point{X: 6, Y: -5}))                                      // a tear into the part
		blob(dc, darkPart, at(8).Add(geometry.Point{X: 3.2, Y: 0.5}), 2)                                               // dirt on the edge
		line(dc, darkPart, 0.3, at(5).Add(geometry.Point{X: -9, Y: 2}), at(5), at(5).Add(geometry.Point{X: 9, Y: -3})) // a hair
		line(dc, lightGround, 2.2, at(3), at(3).Add(geometry.Point{X: 1, Y: 14}))                                      // torn open
		blob(dc, lightGround, geometry.Point{X: -80, Y: -48}, 0.9)                                                     // a light speck
	})
	found := find(t, grainy(blurred(picture, 0.8), 4, 6), trace.PerInch(150, 150), trace.Options{})
	for _, s := range found.Shapes {
		t.Logf("%s %s %.2f %.2f ø %.2f kept %.2f %q", s.ID, s.Role, s.At.X, s.At.Y, s.DiameterMm, s.Kept, s.Doubts)
	}
	if n := count(found); n[trace.Fastener] != 14 || n[trace.Bore] != 1 || n[trace.Port] != 1 || n[trace.Spot] != 0 || found.Specks != 1 {
		t.Errorf("found %v and %d specks", n, found.Specks)
	}
	if centre, diameter := worst(t, found, gasket); centre > 0.1 || diameter > 0.15 {
		t.Errorf("centres within %.3f mm, diameters within %.3f mm", centre, diameter)
	}
	for i, want := range map[int]finding.Code{2: trace.Torn, 8: trace.Torn, 5: "", 3: trace.Open, 0: ""} {
		s := near(t, found, at(i))
		if want == "" && len(s.Doubts) > 0 || want != "" && !finding.Has(s.Doubts, want) {
			t.Errorf("the hole at %v has the doubts %q, want %q", at(i), s.Doubts, want)
		}
	}
	// The outline runs on where a hole is torn open: nothing of it reaches in.
	for _, p := range found.Outline {
		if p.Distance(at(3)) < 5 {
			t.Errorf("the outline reaches into the torn hole: %v", p)
		}
	}
}

// What is no round hole is not dropped in silence: a slot is a doubtful
// opening, a small ragged shape a spot, a large one an opening.
func TestOddShapes(t *testing.T) {
	t.Parallel()
	gasket := coverGasket()
	see := scanner(smallScan, 150, 0)
	star := func(at geometry.Point, radius float64) []geometry.Point {
		var line []geometry.Point
		for i := range 10 {
			line = append(line, geometry.Polar(at, radius*(0.4+0.6*float64(i%2)), 36*float64(i)))
		}
		return line
	}
	slot := rounded(geometry.Box{Min: geometry.Point{X: -86, Y: -52}, Max: geometry.Point{X: -74, Y: -45}}, 3.4)
	gasket.ports = append(gasket.ports, slot, star(geometry.Point{X: 80, Y: 45}, 3), star(geometry.Point{X: -10, Y: -40}, 7))
	found := find(t, gasket.paint(smallScan, see), trace.PerInch(150, 150), trace.Options{})
	for _, c := range []struct {
		at    geometry.Point
		role  trace.Role
		doubt finding.Code
	}{
		{geometry.Point{X: -80, Y: -48.5}, trace.Port, trace.Long},
		{geometry.Point{X: 80, Y: 45}, trace.Spot, trace.Dirt},
		{geometry.Point{X: -10, Y: -40}, trace.Port, trace.PerhapsPort},
	} {
		s := near(t, found, c.at)
		if s.Role != c.role || !finding.Has(s.Doubts, c.doubt) || !slices.Equal(s.Doubts[0].At.IDs, []string{s.ID}) {
			t.Errorf("at %v: %s %q, want %s %q", c.at, s.Role, s.Doubts, c.role, c.doubt)
		}
		if c.doubt != trace.Long {
			continue
		}
		// The slot is drawn 7 mm wide and 12 mm long.
		if length := float64(s.Doubts[0].Values["length"].(unit.Length)); math.Abs(s.DiameterMm-7) > 0.1 || math.Abs(length-12) > 0.05 {
			t.Errorf("the slot is %.2f mm wide and %.2f mm long", s.DiameterMm, length)
		}
	}
}

// A slot as wide as a dowel is no dowel; and a small round speck beside bolt
// holes that are twice as wide is doubted.
func TestOddOnes(t *testing.T) {
	t.Parallel()
	gasket := coverGasket()
	see := scanner(smallScan, 150, 0)
	gasket.ports = append(gasket.ports, rounded(geometry.Box{Min: geometry.Point{X: -86, Y: -52}, Max: geometry.Point{X: -74, Y: -45}}, 3.4))
	gasket.holes = append(gasket.holes, hole{geometry.Point{X: 80, Y: 45}, 3.2})
	found := find(t, gasket.paint(smallScan, see), trace.PerInch(150, 150), trace.Options{Holes: holes.Rule{Dowels: span(6.9, 7.2)}})
	if s := near(t, found, geometry.Point{X: -80, Y: -48.5}); s.Role != trace.Port || s.Round() {
		t.Errorf("the slot is a %s", s.Role)
	}
	for _, s := range found.Shapes {
		small := s.Round() && s.DiameterMm < 4
		if doubted := finding.Has(s.Doubts, trace.Alone); doubted != small {
			t.Errorf("%s of %.1f mm: %q", s.ID, s.DiameterMm, s.Doubts)
		}
	}
}

// Coarse scans still give a tenth of a millimetre; holes of fewer than 12 pixels
// are doubted.
func TestCoarse(t *testing.T) {
	t.Parallel()
	gasket := coverGasket()
	for _, dpi := range []float64{150, 100, 45} {
		size := image.Pt(int(10*dpi), int(7*dpi))
		picture := grainy(blurred(gasket.paint(size, scanner(size, dpi, 1.1)), 0.7), 5, 7)
		found := find(t, picture, trace.PerInch(dpi, dpi), trace.Options{})
		centre, diameter := worst(t, found, gasket)
		t.Logf("%g dpi: centres %.3f mm, diameters %.3f mm", dpi, centre, diameter)
		if n := count(found); n[trace.Fastener] != 14 || centre > 0.1 || diameter > 0.25*25.4/dpi { // a quarter of a pixel
			t.Errorf("%g dpi: %v, centres within %.3f mm, diameters within %.3f mm", dpi, n, centre, diameter)
		}
		for _, s := range found.Shapes {
			coarse := s.DiameterMm*dpi/25.4 < 12
			if doubted := finding.Has(s.Doubts, trace.Coarse); s.Round() && doubted != coarse {
				t.Errorf("%g dpi: %s of %.1f mm has the doubts %q", dpi, s.ID, s.DiameterMm, s.Doubts)
			}
		}
	}
}

// A shadow beside every edge moves all centres alike, so that the distances
// between them stay; diameters come out smaller by its width.
func TestShadow(t *testing.T) {
	t.Parallel()
	gasket := coverGasket()
	see := scanner(smallScan, 150, 0)
	clean := gasket.paint(smallScan, see)
	const reach = 4 // pixels, 0.7 mm
	picture := change(clean, func(x, y int, v float64) float64 {
		for k := range reach {
			if x-k >= 0 && clean.Pix[y*clean.Stride+x-k] < 100 && v > 200 {
				return 226 - 110*(1-float64(k)/reach)
			}
		}
		return v
	})
	found := find(t, blurred(picture, 0.8), trace.PerInch(150, 150), trace.Options{})
	centre, diameter := worst(t, found, gasket)
	t.Logf("centres %.3f mm, diameters %.3f mm", centre, diameter)
	if centre > 0.1 || diameter > 0.5 || math.IsNaN(centre) {
		t.Errorf("centres within %.3f mm, diameters within %.3f mm", centre, diameter)
	}
}
