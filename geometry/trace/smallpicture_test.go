package trace_test

import (
	"errors"
	"image"
	"image/color"
	"math"
	"strings"
	"testing"

	"github.com/fogleman/gg"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/trace"
)

// plate is a small part, so that it is traced in a moment: six bolt holes, a bore, a
// port and two holes that a tear has opened to the outside. Its figures are invented.
func plate() drawing {
	d := drawing{outline: rounded(geometry.Box{Min: geometry.Point{X: -40, Y: -27}, Max: geometry.Point{X: 40, Y: 27}}, 4)}
	for _, p := range []geometry.Point{{X: -32, Y: 19}, {X: 1, Y: 20}, {X: 33, Y: 19.5}, {X: -33, Y: -19}, {X: 0, Y: -20}, {X: 32, Y: -18.5}} {
		d.holes = append(d.holes, hole{p, 6.6})
	}
	d.holes = append(d.holes, hole{geometry.Point{X: 20, Y: 1}, 14})
	return d
}

var (
	smallSize = image.Pt(500, 360)
	seeSmall  = scanner(smallSize, 127, 0) // 0.2 mm a pixel
	bores     = holes.Rule{Bores: span(10, 20)}
)

func tracedSmall(t *testing.T, p *image.Gray, o trace.Options) trace.Found {
	t.Helper()
	o.Holes = bores
	found, err := trace.Trace(p, trace.Scale{FileX: 127, FileY: 127}, o)
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// All that is said of a small clean picture: first principles, from how it was painted.
func TestSmallPicture(t *testing.T) {
	t.Parallel()
	part := plate()
	part.ports = append(part.ports, []geometry.Point{{X: -24, Y: -9}, {X: -4, Y: -9}, {X: -4, Y: -3}, {X: -18, Y: -3}, {X: -18, Y: 9}, {X: -24, Y: 9}})
	dark := part.paint(smallSize, seeSmall)
	for _, tone := range []trace.Tone{trace.ToneDark, trace.ToneLight} {
		picture := dark
		if tone == trace.ToneLight {
			picture = change(dark, func(_, _ int, v float64) float64 { return 255 - v })
		}
		for _, asked := range []trace.Tone{trace.ToneAuto, tone} {
			found := tracedSmall(t, picture, trace.Options{Tone: asked})
			if n := count(found); n[trace.Fastener] != 6 || n[trace.Bore] != 1 || n[trace.Port] != 1 || len(found.Shapes) != 8 {
				t.Errorf("%s: %v", tone, n)
			}
			if centre, diameter := worst(t, found, part); centre > 0.05 || diameter > 0.1 {
				t.Errorf("%s: centres within %.3f mm, diameters within %.3f mm", tone, centre, diameter)
			}
			if found.Tone != tone || found.GreyLevels != lightGround-darkPart || math.Abs(found.PixelMm-0.2) > 1e-3 || found.SmallestMm != 2.5 || len(found.Doubts) > 0 || found.Specks != 0 {
				t.Errorf("%s: %s, %g levels, a pixel of %g mm, %v, %d specks", tone, found.Tone, found.GreyLevels, found.PixelMm, found.Doubts, found.Specks)
			}
			if want := math.Sqrt(4*6/math.Pi) * 0.2; math.Abs(found.SpeckMm-want) > 1e-3 { // six pixels
				t.Errorf("specks from %g mm, want %g mm", found.SpeckMm, want)
			}
			if found.Scale.Code != trace.ScaleFromFile || !found.Straightened || math.Abs(found.TurnedDeg) > 0.1 {
				t.Errorf("%s: %v, turned by %g", tone, found.Scale, found.TurnedDeg)
			}
			box := geometry.Bounds(found.Outline)
			if math.Abs(box.Width()-80) > 0.1 || math.Abs(box.Height()-54) > 0.1 || len(found.Outline) > 60 {
				t.Errorf("%s: the outline is %g by %g mm, of %d points", tone, box.Width(), box.Height(), len(found.Outline))
			}
			for i, s := range found.Shapes {
				if strings.Trim(s.ID, "0123456789") != strings.ToUpper(string(s.Role[:1])) || s.Contrast < 0.9 || s.Contrast > 1.1 {
					t.Errorf("%s: shape %d is %s, a %s of contrast %g", tone, i, s.ID, s.Role, s.Contrast)
				}
				if q := found.View.Pixel(s.At); q.Distance(s.Pixel) > 1e-6 {
					t.Errorf("%s: %s at pixel %v, led back to %v", tone, s.ID, s.Pixel, q)
				}
			}
		}
	}
}

// The part comes out as it lay, turned, or as seen from its other face: the bore lies at
// [20, 1] as drawn, the middle of the bolts at [0, 0].
func TestSmallPictureTheOtherWay(t *testing.T) {
	t.Parallel()
	picture := plate().paint(smallSize, scanner(smallSize, 127, 4))
	sin, cos := math.Sincos(4 * math.Pi / 180)
	for _, c := range []struct {
		options trace.Options
		want    geometry.Point
	}{
		{trace.Options{}, geometry.Point{X: 20, Y: 1}},
		{trace.Options{Mirrored: true}, geometry.Point{X: -20, Y: 1}},
		{trace.Options{TurnDeg: 90}, geometry.Point{X: -1, Y: 20}},
		{trace.Options{Mirrored: true, TurnDeg: 90}, geometry.Point{X: -1, Y: -20}},
		{trace.Options{AsScanned: true}, geometry.Point{X: 20*cos - sin, Y: 20*sin + cos}},
	} {
		found := tracedSmall(t, picture, c.options)
		for _, s := range found.Shapes {
			if s.Role == trace.Bore && s.At.Distance(c.want) > 0.5 {
				t.Errorf("%+v: the bore lies at %v, want %v", c.options, s.At, c.want)
			}
			if q := found.View.Pixel(s.At); q.Distance(s.Pixel) > 1e-6 {
				t.Errorf("%+v: %s at pixel %v, led back to %v", c.options, s.ID, s.Pixel, q)
			}
		}
		if found.Straightened == c.options.AsScanned || count(found)[trace.Bore] != 1 {
			t.Errorf("%+v: straightened %v, %v", c.options, found.Straightened, count(found))
		}
	}
}

// Two holes beside each other that tears have opened are two holes; the outline runs on
// past both.
func TestHolesTornOpen(t *testing.T) {
	t.Parallel()
	part := plate()
	torn := []geometry.Point{{X: -12, Y: 21}, {X: 14, Y: 21.5}}
	for _, at := range torn {
		part.holes = append(part.holes, hole{at, 6.6})
	}
	picture := over(part.paint(smallSize, seeSmall), func(dc *gg.Context) {
		dc.SetColor(color.Gray{lightGround})
		dc.SetLineWidth(1.6 / 0.2)
		for _, at := range torn {
			dc.LineTo(seeSmall(at))
			dc.LineTo(seeSmall(at.Add(geometry.Point{Y: 9})))
			dc.Stroke()
		}
	})
	found := tracedSmall(t, picture, trace.Options{})
	if n := count(found)[trace.Fastener]; n != 8 {
		t.Fatalf("%d bolt holes", n)
	}
	open := 0
	for _, s := range found.Shapes {
		if finding.Has(s.Doubts, trace.Open) {
			open++
			if s.Doubts[0].At.IDs[0] != s.ID {
				t.Errorf("%s: the doubt is about %v", s.ID, s.Doubts[0].At.IDs)
			}
		}
	}
	if centre, diameter := worst(t, found, part); open != 2 || centre > 0.1 || diameter > 0.2 {
		t.Errorf("%d are open, centres within %.3f mm, diameters within %.3f mm", open, centre, diameter)
	}
	for _, p := range found.Outline {
		if p.Y > -20 && p.Y < 20 && math.Abs(p.X) < 35 {
			t.Errorf("the outline reaches in: %v", p)
		}
	}
}

// The distance between two holes that were found gives the scale; the stated one may
// be rough.
func TestScaleBetweenHoles(t *testing.T) {
	t.Parallel()
	picture := plate().paint(smallSize, seeSmall)
	scale := trace.Scale{FileX: 126, FileY: 126, Known: []trace.Known{{FromID: "F1", ToID: "F6", Mm: geometry.Point{X: -32, Y: 19}.Distance(geometry.Point{X: 32, Y: -18.5})}}}
	found, err := trace.Trace(picture, scale, trace.Options{Holes: bores})
	if err != nil {
		t.Fatal(err)
	}
	if found.Scale.Code != trace.ScaleFromKnown || math.Abs(found.PixelMm-0.2) > 2e-4 || found.ScaleOffMm > 1e-9 || len(found.Doubts) > 0 {
		t.Errorf("%v: a pixel of %g mm, %g mm off, %v", found.Scale, found.PixelMm, found.ScaleOffMm, found.Doubts)
	}
	scale.Known = append(scale.Known, trace.Known{FromID: "F1", ToID: "F6", Mm: 75})
	if found, err = trace.Trace(picture, scale, trace.Options{Holes: bores}); err != nil || !finding.Has(found.Doubts, trace.KnownDiffer) || found.ScaleOffMm < 0.1 {
		t.Errorf("%g mm off, %v (%v)", found.ScaleOffMm, found.Doubts, err)
	}
}

// 64 pixels are the least, either way; 0.002 to 0.6 mm a pixel.
func TestLeastPicture(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		width, height int
		dpi           float64
		want          finding.Code
	}{
		{63, 200, 100, trace.SmallPicture}, {200, 63, 100, trace.SmallPicture}, {64, 64, 100, trace.NoContrast},
		{64, 64, 42, trace.PixelSize}, {64, 64, 42.4, trace.NoContrast}, {64, 64, 12_690, trace.NoContrast}, {64, 64, 12_710, trace.PixelSize},
	} {
		_, err := trace.Find(image.NewGray(image.Rect(0, 0, c.width, c.height)), trace.PerInch(c.dpi, c.dpi), trace.Options{})
		if !errors.Is(err, c.want) {
			t.Errorf("%d by %d at %g dpi: %v, want %s", c.width, c.height, c.dpi, err, c.want)
		}
	}
}
