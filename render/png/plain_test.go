package png

import (
	"bytes"
	"image"
	stdpng "image/png"
	"io"
	"math"
	"strings"
	"testing"

	"github.com/fogleman/gg"
	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"

	typeface "drawdown/render/font"
	"drawdown/render/scene"
)

// plain paints a page with gg in the usual way, on a whole RGBA page with gg's
// own text. The bands must look like it.
func plain(t testing.TB, page scene.Page, dpi int) *image.RGBA {
	t.Helper()
	width, height, err := PixelSize(page, dpi)
	if err != nil {
		t.Fatal(err)
	}
	perMM := float64(dpi) / mmPerInch
	im := image.NewRGBA(image.Rect(0, 0, width, height))
	dc := gg.NewContextForRGBA(im)
	dc.SetRGB(1, 1, 1)
	dc.Clear()
	for _, it := range page.Items {
		switch it := it.(type) {
		case scene.Shape:
			plainShape(dc, it, perMM)
		case scene.Text:
			plainText(t, dc, it, perMM)
		}
	}
	return im
}

func plainShape(dc *gg.Context, s scene.Shape, perMM float64) {
	if s.Fill != scene.None {
		plainPath(dc, s.Path, perMM)
		dc.SetColor(rgba(s.Fill))
		dc.Fill()
	}
	if s.Stroke == scene.None {
		return
	}
	dc.SetColor(rgba(s.Stroke))
	dc.SetLineWidth(s.Width * perMM)
	dc.SetDash()
	dc.SetLineCapRound()
	if s.Dash > 0 {
		dc.SetDash(s.Dash*perMM, s.Dash*perMM)
		plainPath(dc, s.Path, perMM)
		dc.Stroke()
		return
	}
	for _, run := range subPaths(s.Path) {
		if run[len(run)-1].Verb == scene.Close {
			// Two caps in one place would paint the edge of the line twice.
			dc.SetLineCapButt()
			run = fromMiddle(run)
		} else {
			dc.SetLineCapRound()
		}
		plainPath(dc, run, perMM)
		dc.Stroke()
	}
}

func subPaths(path scene.Path) []scene.Path {
	var runs []scene.Path
	for _, seg := range path {
		if seg.Verb == scene.Move {
			runs = append(runs, nil)
		}
		runs[len(runs)-1] = append(runs[len(runs)-1], seg)
	}
	return runs
}

// fromMiddle returns a closed sub-path as an open one that starts and ends in
// the middle of its first piece.
func fromMiddle(run scene.Path) scene.Path {
	start, first := run[0].P[0], run[1]
	between := func(p, q scene.Point) scene.Point { return scene.Point{X: (p.X + q.X) / 2, Y: (p.Y + q.Y) / 2} }
	middle := between(start, first.P[0])
	head, tail := first, scene.Segment{Verb: scene.Line, P: [3]scene.Point{middle}}
	if first.Verb == scene.Curve {
		// De Casteljau: the halves of a cubic curve.
		a, b, c := middle, between(first.P[0], first.P[1]), between(first.P[1], first.P[2])
		d, e := between(a, b), between(b, c)
		middle = between(d, e)
		head.P = [3]scene.Point{e, c, first.P[2]}
		tail = scene.Segment{Verb: scene.Curve, P: [3]scene.Point{a, d, middle}}
	}
	open := scene.Path{{Verb: scene.Move, P: [3]scene.Point{middle}}, head}
	open = append(open, run[2:len(run)-1]...)
	return append(open, scene.Segment{Verb: scene.Line, P: [3]scene.Point{start}}, tail)
}

func plainPath(dc *gg.Context, path scene.Path, perMM float64) {
	for _, seg := range path {
		var v [6]float64
		for i, q := range seg.P {
			v[2*i], v[2*i+1] = q.X*perMM, q.Y*perMM
		}
		switch seg.Verb {
		case scene.Move:
			dc.MoveTo(v[0], v[1])
		case scene.Line:
			dc.LineTo(v[0], v[1])
		case scene.Curve:
			dc.CubicTo(v[0], v[1], v[2], v[3], v[4], v[5])
		case scene.Close:
			dc.ClosePath()
		}
	}
}

func plainText(t testing.TB, dc *gg.Context, s scene.Text, perMM float64) {
	face, err := opentype.NewFace(typeface.Typeface(s.Weight), &opentype.FaceOptions{Size: s.Size * perMM, DPI: 72, Hinting: font.HintingNone})
	if err != nil {
		t.Fatal(err)
	}
	dc.SetFontFace(face)
	dc.SetColor(rgba(s.Ink))
	x, y := s.At.X*perMM, s.At.Y*perMM
	dc.Push()
	if s.Upward {
		dc.RotateAbout(-math.Pi/2, x, y)
	}
	dc.DrawString(s.Content, x-[...]float64{0, s.Width / 2, s.Width}[s.Anchor]*perMM, y)
	dc.Pop()
}

// size is the number of bytes written.
func size(t testing.TB, write func(w io.Writer) error) int {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	return b.Len()
}

func plainBytes(t testing.TB, page scene.Page, dpi int) int {
	im := plain(t, page, dpi)
	return size(t, func(w io.Writer) error { return stdpng.Encode(w, im) })
}

// The palette has no room for a photo: the page is refused, not painted without it.
func TestPhotoIsRefused(t *testing.T) {
	page := scene.Page{Width: 100, Height: 100, Photos: []scene.Photo{{JPEG: []byte("jpeg"), Box: scene.Box{Right: 40, Bottom: 40}}}}
	if err := Write(io.Discard, page, 72); err == nil || !strings.Contains(err.Error(), "photos") {
		t.Errorf("%v", err)
	}
}
