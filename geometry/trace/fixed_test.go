package trace_test

import (
	"image"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/holes"
	"drawdown/geometry/trace"
	"drawdown/geometry/trace/fixes"
)

// Two parts in one picture: crop and part choose, and places in the picture stay
// those of the whole one.
func TestCropAndPart(t *testing.T) {
	t.Parallel()
	size := image.Pt(1000, 720)
	see := scanner(size, 100, 0)
	left := drawing{outline: rounded(geometry.Box{Min: geometry.Point{X: -110, Y: -70}, Max: geometry.Point{X: 20, Y: 70}}, 5), holes: []hole{{geometry.Point{X: -40}, 8}, {geometry.Point{X: -80, Y: 10}, 8}}}
	right := drawing{outline: rounded(geometry.Box{Min: geometry.Point{X: 40, Y: -50}, Max: geometry.Point{X: 110, Y: 50}}, 5), holes: []hole{{geometry.Point{X: 70}, 10}}}
	a, b := left.paint(size, see), right.paint(size, see)
	both := change(a, func(x, y int, v float64) float64 { return min(v, float64(b.Pix[y*b.Stride+x])) })
	x, y := see(geometry.Point{X: 70})
	for name, by := range map[string]fixes.Fixes{
		"part": {Part: 2},
		"crop": {Crop: geometry.Box{Min: geometry.Point{X: 610, Y: 60}, Max: geometry.Point{X: 990, Y: 700}}},
	} {
		f := find(t, both, trace.PerInch(100, 100), trace.Options{Fixes: by})
		if n := count(f); n[trace.Fastener] != 1 || len(f.Shapes) != 1 || f.Shapes[0].Pixel.Distance(geometry.Point{X: x, Y: y}) > 0.2 {
			t.Errorf("%s: %v, %+v", name, n, f.Shapes)
		}
	}
	if _, err := trace.Find(both, trace.PerInch(100, 100), trace.Options{Fixes: fixes.Fixes{Part: 3}}); err == nil {
		t.Error("a third part was found")
	}
}

// A hole that a person adds takes place and size from its edge; one said to be for
// another use keeps its place, and ids stay.
func TestAddedAndTaken(t *testing.T) {
	t.Parallel()
	size := image.Pt(1000, 720)
	see := scanner(size, 100, 0)
	gasket := coverGasket()
	x, y := see(gasket.holes[12].at)
	by := fixes.Fixes{
		Drop:  []fixes.Place{{ID: "F2"}},
		Takes: []fixes.Take{{Place: fixes.Place{Pixel: geometry.Point{X: x + 5, Y: y}}, Use: holes.Dowel}},
		Adds:  []fixes.Add{{Pixel: geometry.Point{X: x, Y: y + 3}, Use: holes.Fastener}},
	}
	before := find(t, gasket.paint(size, see), trace.PerInch(100, 100), trace.Options{})
	f := find(t, gasket.paint(size, see), trace.PerInch(100, 100), trace.Options{Fixes: by})
	if n := count(f); n[trace.Fastener] != 13 || n[trace.Dowel] != 1 {
		t.Errorf("%v", n)
	}
	var added trace.Shape
	for _, s := range f.Shapes {
		if s.ID == "F2" {
			t.Error("F2 is still there")
		}
		if s.ID == "F15" {
			added = s
		}
		for _, old := range before.Shapes {
			if s.ID == old.ID && s.At.Distance(old.At) > 1e-9 {
				t.Errorf("%s has moved", s.ID)
			}
		}
	}
	if added.Pixel.Distance(geometry.Point{X: x, Y: y}) > 0.3 || added.DiameterMm < 8 || added.DiameterMm > 8.8 {
		t.Errorf("added: %+v", added)
	}
}

// A part beside the one that is traced is named with its place in the whole picture
// and its number (places as drawn).
func TestOtherPart(t *testing.T) {
	t.Parallel()
	size := image.Pt(1000, 720)
	see := scanner(size, 100, 0)
	left := drawing{outline: rounded(geometry.Box{Min: geometry.Point{X: -110, Y: -70}, Max: geometry.Point{X: 20, Y: 70}}, 5), holes: []hole{{geometry.Point{X: -40}, 8}, {geometry.Point{X: -80, Y: 10}, 8}}}
	right := drawing{outline: rounded(geometry.Box{Min: geometry.Point{X: 40, Y: -50}, Max: geometry.Point{X: 110, Y: 50}}, 5)}
	a, b := left.paint(size, see), right.paint(size, see)
	both := change(a, func(x, y int, v float64) float64 { return min(v, float64(b.Pix[y*b.Stride+x])) })
	crop := geometry.Box{Min: geometry.Point{X: 30, Y: 40}, Max: geometry.Point{X: 1000, Y: 720}}
	x, y := see(geometry.Point{X: 75})
	for _, by := range []fixes.Fixes{{}, {Crop: crop}} {
		f := find(t, both, trace.PerInch(100, 100), trace.Options{Fixes: by})
		if len(f.Doubts) != 1 || f.Doubts[0].Code != trace.SecondPart {
			t.Fatalf("%v", f.Doubts)
		}
		v := f.Doubts[0].Values
		if at := (geometry.Point{X: v["x"].(float64), Y: v["y"].(float64)}); at.Distance(geometry.Point{X: x, Y: y}) > 1 || v["part"] != 2 {
			t.Errorf("%v: %v, drawn at %.0f, %.0f", by, v, x, y)
		}
	}
}

// What is dropped is counted no more, and is kept apart for the proof. An id of a
// trace without the diameters of bolts is rejected in one with them: other flags
// change what it names.
func TestDropped(t *testing.T) {
	t.Parallel()
	size := image.Pt(1000, 720)
	see := scanner(size, 100, 0)
	plate := drawing{outline: rounded(geometry.Box{Min: geometry.Point{X: -110, Y: -70}, Max: geometry.Point{X: 110, Y: 70}}, 5), holes: []hole{
		{geometry.Point{X: -90, Y: 50}, 7}, {geometry.Point{X: 90, Y: 50}, 7}, {geometry.Point{X: -90, Y: -50}, 7}, {geometry.Point{X: 80, Y: -50}, 7},
		{geometry.Point{X: -30}, 10}, {geometry.Point{X: 5, Y: 9}, 10}, {geometry.Point{X: 40, Y: -3}, 10}, {geometry.Point{X: 62, Y: 20}, 10},
	}}
	picture := plate.paint(size, see)
	bolts := holes.Rule{Fasteners: holes.Ranges{{FromMm: 6, ToMm: 8}}}
	var last trace.Shape
	for _, s := range find(t, picture, trace.PerInch(100, 100), trace.Options{Holes: bolts}).Shapes {
		if s.DiameterMm > 9 {
			last = s
		}
	}
	f := find(t, picture, trace.PerInch(100, 100), trace.Options{Holes: bolts, Fixes: fixes.Fixes{Drop: []fixes.Place{{ID: last.ID}}}})
	if len(f.Shapes) != 7 || len(f.Dropped) != 1 || f.Dropped[0].Pixel.Distance(last.Pixel) > 0.01 {
		t.Errorf("%s: %+v", last.ID, f.Dropped)
	}
	if len(f.Taken) != 2 || f.Taken[0].Code != trace.TakenForBores || f.Taken[0].Values["holes"] != 3 || f.Taken[1].Code != trace.Fixed {
		t.Errorf("%v", f.Taken)
	}
	if _, err := trace.Find(picture, trace.PerInch(100, 100), trace.Options{Holes: bolts, Fixes: fixes.Fixes{Drop: []fixes.Place{{ID: "H1"}}}}); err == nil {
		t.Error("H1, an id of a trace without the diameters of bolts, was taken for another hole")
	}
}
