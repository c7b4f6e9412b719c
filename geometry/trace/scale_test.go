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

// What was measured goes before what was stated, and that before the file's own;
// what differs by more than a scanner errs is doubted. First principles: the
// gasket is drawn at 100 dots per inch, so that 50 dpi draw it twice as large.
func TestScale(t *testing.T) {
	t.Parallel()
	size := image.Pt(1000, 720)
	picture := coverGasket().paint(size, scanner(size, 100, 0))
	between := func(mm float64) []trace.Known {
		return []trace.Known{{From: geometry.Point{X: 100, Y: 100}, To: geometry.Point{X: 500, Y: 400}, Mm: mm}}
	}
	holes := []trace.Known{{FromID: "F1", ToID: "F2"}}
	rough, err := trace.Trace(picture, trace.Scale{FileX: 100, FileY: 100}, trace.Options{})
	if err != nil {
		t.Fatal(err)
	}
	holes[0].Mm = rough.Shapes[0].At.Distance(rough.Shapes[1].At)
	const dotMm = 0.254
	for _, c := range []struct {
		name   string
		scale  trace.Scale
		from   finding.Code
		dotMm  float64
		doubts []finding.Code
	}{
		{"the file's", trace.Scale{FileX: 100, FileY: 100}, trace.ScaleFromFile, dotMm, nil},
		{"named", trace.Scale{FileX: 100, FileY: 100, NamedX: 50, NamedY: 50}, trace.ScaleNamed, 2 * dotMm, []finding.Code{trace.OtherStated}},
		{"named nearly alike", trace.Scale{FileX: 100, FileY: 100, NamedX: 101, NamedY: 101}, trace.ScaleNamed, 0.25149, nil},
		{"measured", trace.Scale{FileX: 100, FileY: 100, Known: between(500 * dotMm)}, trace.ScaleFromKnown, dotMm, nil},
		{"measured otherwise", trace.Scale{FileX: 100, FileY: 100, Known: between(250 * dotMm)}, trace.ScaleFromKnown, dotMm / 2, []finding.Code{trace.OtherKnown}},
		{"measured twice", trace.Scale{Known: append(between(500*dotMm), between(504*dotMm)...)}, trace.ScaleFromKnown, 502 * dotMm / 500, []finding.Code{trace.KnownDiffer}},
		{"between holes", trace.Scale{FileX: 99, FileY: 99, Known: holes}, trace.ScaleFromKnown, dotMm, nil},
	} {
		found, err := trace.Trace(picture, c.scale, trace.Options{})
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if found.Scale.Code != c.from || math.Abs(found.PixelMm/c.dotMm-1) > 1e-3 || len(found.Doubts) != len(c.doubts) {
			t.Errorf("%s: %v, a pixel is %.5f mm, doubts %v; want %s, %.5f mm, %q", c.name, found.Scale, found.PixelMm, found.Doubts, c.from, c.dotMm, c.doubts)
		}
		for _, code := range c.doubts {
			if !finding.Has(found.Doubts, code) {
				t.Errorf("%s: no doubt that %s", c.name, code)
			}
		}
	}
	for want, scale := range map[finding.Code]trace.Scale{
		trace.NoScale:      {Unbelieved: 72},
		trace.NoRoughScale: {Known: holes},
		trace.NoHole:       {FileX: 100, FileY: 100, Known: []trace.Known{{FromID: "F1", ToID: "F99"}}},
		trace.NoRectangle:  {WidthMm: 100},
	} {
		if _, err := trace.Trace(picture, scale, trace.Options{}); !errors.Is(err, want) {
			t.Errorf("%v: want %s", err, want)
		}
	}
}
