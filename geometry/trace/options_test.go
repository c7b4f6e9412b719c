package trace_test

import (
	"errors"
	"image"
	"math"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/trace"
)

func small(t *testing.T, turnDeg float64, o trace.Options) trace.Found {
	t.Helper()
	size := image.Pt(1000, 720)
	return find(t, coverGasket().paint(size, scanner(size, 100, turnDeg)), trace.PerInch(100, 100), o)
}

// at returns the place of the one hole of 8.4 mm in the top left quarter as drawn,
// by its diameter and the distance to the bore.
func at(t *testing.T, f trace.Found) geometry.Point {
	t.Helper()
	var bore geometry.Point
	for _, s := range f.Shapes {
		if s.Role == trace.Bore {
			bore = s.At
		}
	}
	for _, s := range f.Shapes {
		// From the drawing: 37.6, 6.2 to -88.7, 40.3.
		if s.Role == trace.Fastener && math.Abs(s.DiameterMm-8.4) < 0.3 && math.Abs(s.At.Distance(bore)-130.82) < 0.3 {
			return s.At
		}
	}
	t.Fatal("the hole is not found")
	return geometry.Point{}
}

// The part comes out as drawn, mirrored, turned or left as it lay.
func TestWhichWay(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name    string
		options trace.Options
		want    geometry.Point
	}{
		{"level", trace.Options{}, geometry.Point{X: -88.7, Y: 40.3}},
		{"mirrored", trace.Options{Mirrored: true}, geometry.Point{X: 88.7, Y: 40.3}},
		{"a quarter turn", trace.Options{TurnDeg: 90}, geometry.Point{X: -40.3, Y: -88.7}},
		{"mirrored and turned", trace.Options{Mirrored: true, TurnDeg: 90}, geometry.Point{X: -40.3, Y: 88.7}},
		// 6° anticlockwise by the scanner: first principles.
		{"as scanned", trace.Options{AsScanned: true}, geometry.Point{X: -88.7*math.Cos(6*math.Pi/180) - 40.3*math.Sin(6*math.Pi/180), Y: -88.7*math.Sin(6*math.Pi/180) + 40.3*math.Cos(6*math.Pi/180)}},
	} {
		f := small(t, 6, c.options)
		// The middle of the fasteners' box is the origin, within a millimetre of the drawing's.
		if p := at(t, f); p.Distance(c.want) > 1 {
			t.Errorf("%s: the hole lies at %v, want %v", c.name, p, c.want)
		}
		// The pixel that a shape names is where View leads back to.
		for _, s := range f.Shapes {
			if q := f.View.Pixel(s.At); q.Distance(s.Pixel) > 1e-6 {
				t.Fatalf("%s: %s at pixel %v, led back to %v", c.name, s.ID, s.Pixel, q)
			}
		}
		if f.Straightened == c.options.AsScanned {
			t.Errorf("%s: straightened is %v", c.name, f.Straightened)
		}
	}
}

func span(from, to float64) holes.Range { return holes.Range{FromMm: from, ToMm: to} }

// Diameters decide what a hole is.
func TestRoles(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name    string
		options trace.Options
		want    map[trace.Role]int
		groups  int
	}{
		{"as it comes", trace.Options{}, map[trace.Role]int{trace.Fastener: 14, trace.Bore: 1, trace.Port: 1}, 3},
		{"dowels", trace.Options{Holes: holes.Rule{Dowels: span(8, 9)}}, map[trace.Role]int{trace.Fastener: 12, trace.Dowel: 2, trace.Bore: 1, trace.Port: 1}, 3},
		{"bolts", trace.Options{Holes: holes.Rule{Fasteners: holes.Ranges{span(8, 9)}}}, map[trace.Role]int{trace.Fastener: 2, trace.Port: 13, trace.Bore: 1}, 3},
		{"bores", trace.Options{Holes: holes.Rule{Bores: span(8, 90)}}, map[trace.Role]int{trace.Fastener: 12, trace.Bore: 3, trace.Port: 1}, 3},
		{"dust", trace.Options{SmallestMm: 7}, map[trace.Role]int{trace.Fastener: 2, trace.Bore: 1, trace.Port: 1}, 2},
	} {
		f := small(t, 0, c.options)
		n := count(f)
		for role, want := range c.want {
			if n[role] != want {
				t.Errorf("%s: %v, want %v", c.name, n, c.want)
			}
		}
		if len(f.GroupsMm) != c.groups {
			t.Errorf("%s: groups %v, want %d", c.name, f.GroupsMm, c.groups)
		}
		if c.name == "dust" && f.Specks != 12 {
			t.Errorf("%d specks, want the 12 small holes", f.Specks)
		}
	}
}

// Ids run in reading order, from the top left.
func TestReadingOrder(t *testing.T) {
	t.Parallel()
	d := drawing{outline: rounded(geometry.Box{Min: geometry.Point{X: -60, Y: -40}, Max: geometry.Point{X: 60, Y: 40}}, 5)}
	places := geometry.Grid(4, 3, 30, 25, geometry.Point{})
	for i := range places {
		d.holes = append(d.holes, hole{places[(i*5)%12].Add(geometry.Point{Y: 0.3 * float64(i%3)}), 7})
	}
	size := image.Pt(560, 400)
	f := find(t, d.paint(size, scanner(size, 100, 3)), trace.PerInch(100, 100), trace.Options{})
	for i, s := range f.Shapes {
		if s.At.Distance(places[i]) > 1 {
			t.Errorf("%s lies at %v, want near %v", s.ID, s.At, places[i])
		}
	}
}

// What cannot be traced is said, with what to do.
func TestFindErrors(t *testing.T) {
	t.Parallel()
	size := image.Pt(1000, 720)
	gasket := coverGasket().paint(size, scanner(size, 100, 2))
	flat := func(_, _ int, _ float64) float64 { return 128 }
	for _, c := range []struct {
		name    string
		picture *image.Gray
		want    finding.Code
	}{
		{"flat", change(gasket, flat), trace.NoContrast},
		{"noise", grainy(change(gasket, flat), 40, 3), ""},
		{"too faint", change(gasket, func(_, _ int, v float64) float64 { return 150 + (v-150)*0.1 }), trace.NoContrast},
		{"tiny", image.NewGray(image.Rect(0, 0, 30, 30)), trace.SmallPicture},
	} {
		f, err := trace.Find(c.picture, trace.PerInch(100, 100), trace.Options{})
		if c.want == "" { // any answer without a sure hole will do
			for _, s := range f.Shapes {
				if s.Role == trace.Fastener && len(s.Doubts) == 0 {
					t.Errorf("%s: %+v", c.name, s)
				}
			}
			continue
		}
		if !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
}

// A part that reaches beyond the picture, and a second part beside it, are
// told of.
func TestDoubtsAboutThePicture(t *testing.T) {
	t.Parallel()
	size := image.Pt(1000, 720)
	see := scanner(size, 100, 0)
	cut := coverGasket().paint(size, func(p geometry.Point) (float64, float64) {
		x, y := see(p)
		return x + 80, y
	})
	if f := find(t, cut, trace.PerInch(100, 100), trace.Options{}); !finding.Has(f.Doubts, trace.CutOff) {
		t.Errorf("cut off: %q", f.Doubts)
	}
	two := drawing{outline: rounded(geometry.Box{Min: geometry.Point{X: -110, Y: -70}, Max: geometry.Point{X: 20, Y: 70}}, 5), holes: []hole{{geometry.Point{X: -40}, 8}, {geometry.Point{X: -80, Y: 10}, 8}}}
	beside := drawing{outline: rounded(geometry.Box{Min: geometry.Point{X: 40, Y: -50}, Max: geometry.Point{X: 110, Y: 50}}, 5)}
	left, right := two.paint(size, see), beside.paint(size, see)
	both := change(left, func(x, y int, v float64) float64 { return math.Min(v, float64(right.Pix[y*right.Stride+x])) })
	f := find(t, both, trace.PerInch(100, 100), trace.Options{})
	if !finding.Has(f.Doubts, trace.SecondPart) || count(f)[trace.Fastener] != 2 {
		t.Errorf("two parts: %q, %v", f.Doubts, count(f))
	}
}

// The same picture gives the same answer, and so does one with its tones
// changed over.
func TestSameAgain(t *testing.T) {
	t.Parallel()
	size := image.Pt(1000, 720)
	picture := grainy(coverGasket().paint(size, scanner(size, 100, 2)), 5, 8)
	a := find(t, picture, trace.PerInch(100, 100), trace.Options{})
	b := find(t, picture, trace.PerInch(100, 100), trace.Options{})
	c := find(t, change(picture, func(_, _ int, v float64) float64 { return 255 - v }), trace.PerInch(100, 100), trace.Options{})
	for i := range a.Shapes {
		if a.Shapes[i].At != b.Shapes[i].At || a.Shapes[i].At.Distance(c.Shapes[i].At) > 0.02 {
			t.Errorf("%v, %v, %v", a.Shapes[i].At, b.Shapes[i].At, c.Shapes[i].At)
		}
	}
	if a.Tone != trace.ToneDark || c.Tone != trace.ToneLight {
		t.Errorf("tones %s and %s", a.Tone, c.Tone)
	}
}
