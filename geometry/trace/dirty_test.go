package trace_test

import (
	"math"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/testkit"
	"drawdown/geometry/trace"
	"drawdown/geometry/trace/dirty"
)

// tally counts what became of the holes of dirty scans.
type tally struct {
	bolts, found, doubted, lost int // truth: bolts
	false_                      int // bolts without doubt where no bolt is
	worst                       float64
	failed                      int
}

// A dirty scan loses no hole in silence and invents no bolt without a doubt; whole
// edges keep their accuracy (limits of the design: 0.05 mm).
func TestDirtyScans(t *testing.T) {
	t.Parallel()
	var all tally
	n := testkit.Samples(4, 200)
	for seed := range uint64(n) {
		all.scan(t, seed)
	}
	t.Logf("%d scans: %d bolts, %d found, %d in doubt, %d lost; %d false; worst centre %.3f mm; %d not traced", n, all.bolts, all.found, all.doubted, all.lost, all.false_, all.worst, all.failed)
	if all.lost > 0 || all.false_ > 0 || all.worst > 0.05 || all.failed > 0 {
		t.Errorf("%+v", all)
	}
}

func (n *tally) scan(t *testing.T, seed uint64) {
	s := dirty.New(seed)
	found, err := trace.Find(s.Picture, trace.PerInch(s.DPI, s.DPI), trace.Options{AsScanned: true})
	if err != nil {
		t.Logf("%d %v: %v", seed, s.Done, err)
		n.failed++
		return
	}
	truth := inPixels(s)
	var pairs [][2]geometry.Point
	for i, h := range s.Holes {
		if !h.Bolt {
			continue
		}
		n.bolts++
		sure, doubt := false, false
		for _, f := range found.Shapes {
			if f.Pixel.Distance(truth[i])*25.4/s.DPI > h.DiameterMm/2 {
				continue
			}
			near := f.Role == trace.Fastener && math.Abs(f.DiameterMm-h.DiameterMm) < max(0.5, 0.08*h.DiameterMm)
			sure = sure || near && len(f.Doubts) == 0
			doubt = doubt || len(f.Doubts) > 0
			if near && len(f.Doubts) == 0 && h.Whole() {
				pairs = append(pairs, [2]geometry.Point{f.Pixel.Scale(25.4 / s.DPI), truth[i].Scale(25.4 / s.DPI)})
			}
		}
		switch {
		case sure:
			n.found++
		case doubt:
			n.doubted++
		default:
			n.lost++
			t.Logf("seed %d %v: lost %.1f at pixel %.0f %.0f: %s", seed, s.Done, h.DiameterMm, truth[i].X, truth[i].Y, h.Damage)
		}
	}
	for _, f := range found.Shapes {
		if f.Role != trace.Fastener || len(f.Doubts) > 0 {
			continue
		}
		real := false
		for i, h := range s.Holes {
			real = real || h.Bolt && f.Pixel.Distance(truth[i])*25.4/s.DPI < 0.5 && math.Abs(f.DiameterMm-h.DiameterMm) < max(0.5, 0.08*h.DiameterMm)
		}
		if !real {
			n.false_++
			t.Logf("seed %d %v: false %s %.1f mm at pixel %.0f %.0f", seed, s.Done, f.ID, f.DiameterMm, f.Pixel.X, f.Pixel.Y)
		}
	}
	if len(pairs) > 2 {
		n.worst = max(n.worst, laidOver(pairs))
	}
}

func inPixels(s dirty.Scan) []geometry.Point {
	at := make([]geometry.Point, len(s.Holes))
	for i, h := range s.Holes {
		at[i] = s.Pixel(h.At)
	}
	return at
}
