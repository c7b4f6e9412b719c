package trace_test

import (
	"image"
	"image/color"
	"image/draw"
	"math"
	"testing"

	"pgregory.net/rapid"

	"drawdown/geometry/trace"
)

// Any picture gives finite places that lead back into it, or an error; none
// panics.
func TestAnyPicture(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		size := image.Pt(rapid.IntRange(1, 150).Draw(t, "width"), rapid.IntRange(1, 150).Draw(t, "height"))
		p := image.NewGray(image.Rectangle{Max: size})
		for range rapid.IntRange(0, 40).Draw(t, "patches") {
			x, y := rapid.IntRange(-20, size.X).Draw(t, "x"), rapid.IntRange(-20, size.Y).Draw(t, "y")
			r := image.Rect(x, y, x+rapid.IntRange(1, 90).Draw(t, "w"), y+rapid.IntRange(1, 90).Draw(t, "h"))
			draw.Draw(p, r, image.NewUniform(color.Gray{rapid.Uint8().Draw(t, "level")}), image.Point{}, draw.Src)
		}
		options := trace.Options{SmallestMm: 0.5, Tone: rapid.SampledFrom([]trace.Tone{trace.ToneAuto, trace.ToneDark, trace.ToneLight}).Draw(t, "tone")}
		found, err := trace.Find(p, trace.PerInch(100, 120), options)
		if err != nil {
			return
		}
		for _, s := range found.Shapes {
			if !finite(s.At.X, s.At.Y, s.DiameterMm, s.ScatterMm, s.Kept, s.Contrast, s.Pixel.X, s.Pixel.Y) || s.DiameterMm <= 0 || s.Role == "" || s.ID == "" {
				t.Fatalf("%+v", s)
			}
			if s.Round() && s.Group >= len(found.GroupsMm) {
				t.Fatalf("%s is in group %d of %d", s.ID, s.Group, len(found.GroupsMm))
			}
		}
		for _, q := range found.Outline {
			if !finite(q.X, q.Y) {
				t.Fatalf("outline %v", found.Outline)
			}
		}
	})
}

func finite(values ...float64) bool {
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}
