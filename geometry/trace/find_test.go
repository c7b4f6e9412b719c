package trace_test

import (
	"image"
	"math"
	"testing"
	"time"

	"drawdown/geometry"
	"drawdown/geometry/holes"
	"drawdown/geometry/trace"
)

// a4At300 is a whole A4 at 300 dpi; wholeScan is what the gasket needs of it.
var (
	a4At300   = image.Pt(3508, 2480)
	wholeScan = image.Pt(2860, 1900)
)

// worst compares what was found with what was drawn, both about the middle of
// the fasteners, after the small turn that lays one over the other: where the
// part lay on the glass is not to be found.
func worst(t *testing.T, found trace.Found, want drawing) (centre, diameter float64) {
	t.Helper()
	var pairs [][2]geometry.Point
	for _, h := range want.holes {
		best, least := -1, math.Inf(1)
		for i, s := range found.Shapes {
			if s.Round() && s.Role != trace.Spot {
				if d := s.At.Distance(h.at); d < least && math.Abs(s.DiameterMm-h.diameter) < 1 {
					best, least = i, d
				}
			}
		}
		if best < 0 || least > 5 {
			t.Fatalf("no hole near %v of %.1f mm", h.at, h.diameter)
		}
		pairs = append(pairs, [2]geometry.Point{found.Shapes[best].At, h.at})
		diameter = math.Max(diameter, math.Abs(found.Shapes[best].DiameterMm-h.diameter))
	}
	return laidOver(pairs), diameter
}

// laidOver returns the largest distance that is left after a move and a turn.
func laidOver(pairs [][2]geometry.Point) float64 {
	var a, b geometry.Point
	for _, p := range pairs {
		a, b = a.Add(p[0]), b.Add(p[1])
	}
	n := 1 / float64(len(pairs))
	a, b = a.Scale(n), b.Scale(n)
	var cross, dot float64
	for _, p := range pairs {
		u, v := p[0].Sub(a), p[1].Sub(b)
		cross, dot = cross+u.X*v.Y-u.Y*v.X, dot+u.Dot(v)
	}
	s, c := math.Sincos(math.Atan2(cross, dot))
	most := 0.0
	for _, p := range pairs {
		u, v := p[0].Sub(a), p[1].Sub(b)
		most = math.Max(most, v.Distance(geometry.Point{X: c*u.X - s*u.Y, Y: s*u.X + c*u.Y}))
	}
	return most
}

// count counts the shapes of each role.
func count(found trace.Found) map[trace.Role]int {
	n := map[trace.Role]int{}
	for _, s := range found.Shapes {
		n[s.Role]++
	}
	return n
}

func find(t *testing.T, p *image.Gray, f trace.Frame, o trace.Options) trace.Found {
	t.Helper()
	if !o.Holes.Fasteners.IsSet() && !o.Holes.Bores.IsSet() { // both sizes of the gasket are for bolts
		o.Holes.Fasteners = holes.Ranges{span(1, 25)}
	}
	start := time.Now()
	found, err := trace.Find(p, f, o)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%v: %d shapes, %d specks, %.0f levels, turned %.3f°", time.Since(start).Round(time.Millisecond), len(found.Shapes), found.Specks, found.GreyLevels, found.TurnedDeg)
	return found
}

// A 300 dpi scan of a gasket with 14 bolt holes gives every centre within 0.1 mm
// and no false hole, whatever a scanner does to it.
func TestScan(t *testing.T) {
	t.Parallel()
	gasket := coverGasket()
	clean := gasket.paint(wholeScan, scanner(wholeScan, 300, 2.3))
	for _, c := range []struct {
		name    string
		picture *image.Gray
	}{
		{"clean", clean},
		{"blurred", blurred(clean, 2)},
		{"grainy", grainy(blurred(clean, 1), 18, 1)},
		{"packed", packed(t, grainy(blurred(clean, 1), 6, 2), 40)},
		{"faint", change(grainy(blurred(clean, 1), 6, 3), func(_, _ int, v float64) float64 { return 150 + (v-150)*0.25 })},
		{"badly lit", change(blurred(clean, 1), func(x, y int, v float64) float64 {
			return v * (0.45 + 0.55*float64(x)/2860) * (1 - 0.25*math.Pow(float64(y)/1900-0.4, 2))
		})},
		{"dusty", grainy(blurred(dusty(clean, 2500, 20, 4), 0.8), 5, 4)},
		{"light part", change(blurred(clean, 1), func(_, _ int, v float64) float64 { return 255 - v })},
	} {
		t.Run(c.name, func(t *testing.T) {
			found := find(t, c.picture, trace.PerInch(300, 300), trace.Options{})
			for _, s := range found.Shapes {
				if len(s.Doubts) > 0 {
					t.Logf("%s %.2f %.2f ø %.2f kept %.2f: %q", s.ID, s.At.X, s.At.Y, s.DiameterMm, s.Kept, s.Doubts)
				}
			}
			n := count(found)
			if n[trace.Fastener] != 14 || n[trace.Bore] != 1 || n[trace.Port] != 1 {
				t.Errorf("found %v", n)
			}
			centre, diameter := worst(t, found, gasket)
			t.Logf("centres %.3f mm, diameters %.3f mm", centre, diameter)
			if math.Abs(found.TurnedDeg+2.3) > 0.15 { // its long sides were drawn level
				t.Errorf("turned %.3f°, want -2.3°", found.TurnedDeg)
			}
			if centre > 0.1 || diameter > 0.05 {
				t.Errorf("centres within %.3f mm, diameters within %.3f mm", centre, diameter)
			}
		})
	}
}
