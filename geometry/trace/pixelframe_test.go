package trace_test

import (
	"errors"
	"image"
	"math"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/trace"
)

// One distance gives one scale: 1000 pixels are 100 mm.
func TestOneKnownDistance(t *testing.T) {
	t.Parallel()
	f, off, err := trace.FromKnown([]trace.Known{{From: geometry.Point{X: 100, Y: 50}, To: geometry.Point{X: 700, Y: 850}, Mm: 100}})
	if err != nil || off > 1e-9 {
		t.Fatal(off, err)
	}
	// First principles: 0.1 mm a pixel, y upwards.
	if p := f.Mm(30, 40); math.Hypot(p.X-3, p.Y+4) > 1e-9 {
		t.Errorf("pixel 30, 40 lies at %v", p)
	}
	if q := f.Pixel(geometry.Point{X: 3, Y: -4}); math.Hypot(q.X-30, q.Y-40) > 1e-9 {
		t.Errorf("3, -4 mm is the pixel %v", q)
	}
}

// A scanner whose carriage runs 1 % fast is set right by two distances; the
// second may be much shorter. Two along the same line give one scale for both
// axes.
func TestTwoKnownDistances(t *testing.T) {
	t.Parallel()
	const x, y = 0.084, 0.0849
	known := func(ax, ay, bx, by float64) trace.Known {
		return trace.Known{From: geometry.Point{X: ax, Y: ay}, To: geometry.Point{X: bx, Y: by}, Mm: math.Hypot((bx-ax)*x, (by-ay)*y)}
	}
	f, off, err := trace.FromKnown([]trace.Known{known(200, 300, 2200, 380), known(500, 200, 530, 350)})
	if err != nil || off > 1e-6 {
		t.Fatal(off, err)
	}
	if p := f.Mm(1000, 1000); math.Abs(p.X-84) > 1e-6 || math.Abs(p.Y+84.9) > 1e-6 {
		t.Errorf("pixel 1000, 1000 lies at %v", p)
	}
	f, off, _ = trace.FromKnown([]trace.Known{known(200, 300, 2200, 380), known(200, 900, 2200, 800)})
	if p := f.Mm(1000, 1000); math.Abs(p.X+p.Y) > 1e-9 || math.Abs(p.X-84) > 0.05 || off > 0.1 {
		t.Errorf("one direction: pixel 1000, 1000 lies at %v, off %g", p, off)
	}
}

// The gasket scanned with different scales comes out true.
func TestStretchedScan(t *testing.T) {
	t.Parallel()
	gasket := coverGasket()
	see := scanner(smallScan, 150, 1.4)
	stretched := func(p geometry.Point) (float64, float64) {
		x, y := see(p)
		return x, 1.01 * y
	}
	picture := gasket.paint(smallScan, stretched)
	if centre, _ := worst(t, find(t, picture, trace.PerInch(150, 150), trace.Options{}), gasket); centre < 0.3 {
		t.Errorf("unmended, the centres are within %.3f mm: this tests nothing", centre)
	}
	centre, _ := worst(t, find(t, picture, trace.PerInch(150, 151.5), trace.Options{}), gasket)
	if centre > 0.05 {
		t.Errorf("centres within %.3f mm", centre)
	}
}

// Corners come back as they were named, and a place between them lies where
// the camera saw it.
func TestRectangle(t *testing.T) {
	t.Parallel()
	see := tilted(image.Pt(4000, 3000), 30, 420, 4600)
	var corners [4]geometry.Point
	for i, c := range []geometry.Point{{X: -130, Y: 88}, {X: 130, Y: 88}, {X: 130, Y: -88}, {X: -130, Y: -88}} {
		corners[i].X, corners[i].Y = see(c)
	}
	f, err := trace.FromRectangle(corners, 260, 176)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []geometry.Point{{X: -130, Y: 88}, {X: 41, Y: 17}, {X: -90, Y: -60}} {
		x, y := see(want)
		// The rectangle's own bottom left is its origin.
		if p := f.Mm(x, y).Sub(geometry.Point{X: 130, Y: 88}); p.Distance(want) > 1e-6 {
			t.Errorf("%v comes out at %v", want, p)
		}
	}
}

func TestFrameErrors(t *testing.T) {
	t.Parallel()
	square := [4]geometry.Point{{X: 0, Y: 0}, {X: 100, Y: 0}, {X: 100, Y: 100}, {X: 0, Y: 100}}
	turned := [4]geometry.Point{square[1], square[0], square[3], square[2]}
	straight := [4]geometry.Point{{X: 0, Y: 0}, {X: 50, Y: 0}, {X: 100, Y: 0}, {X: 0, Y: 100}}
	flat := [4]geometry.Point{{X: 280, Y: 190}, {X: 320, Y: 190}, {X: 600, Y: 400}, {X: 0, Y: 400}}
	for _, c := range []struct {
		corners [4]geometry.Point
		width   float64
		want    finding.Code
	}{{turned, 10, trace.CornersMixed}, {straight, 10, trace.CornersMixed}, {square, 0, trace.NoRectangle}, {square, math.NaN(), trace.NoRectangle}, {square, math.Inf(1), trace.NoRectangle}} {
		if _, err := trace.FromRectangle(c.corners, c.width, 10); !errors.Is(err, c.want) {
			t.Errorf("%v, %g: %v, want %q", c.corners, c.width, err, c.want)
		}
	}
	f, err := trace.FromRectangle(flat, 100, 100)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := trace.Find(image.NewGray(image.Rect(0, 0, 600, 400)), f, trace.Options{}); !errors.Is(err, trace.HorizonSeen) {
		t.Errorf("a horizon in the picture: %v", err)
	}
	for _, dpi := range []float64{10, 20_000} {
		if _, err := trace.Find(image.NewGray(image.Rect(0, 0, 600, 400)), trace.PerInch(dpi, dpi), trace.Options{}); !errors.Is(err, trace.PixelSize) {
			t.Errorf("%g dpi: %v", dpi, err)
		}
	}
	if _, _, err := trace.FromKnown([]trace.Known{{To: geometry.Point{X: 10}, Mm: 5}}); err == nil {
		t.Error("ten pixels are taken for a distance")
	}
	if _, _, err := trace.FromKnown(nil); err == nil {
		t.Error("no distance gives a frame")
	}
}
