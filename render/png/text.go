package png

import (
	"image"
	"image/draw"
	"math"

	xfont "golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"

	"drawdown/render/font"
	"drawdown/render/scene"
)

// typesetter paints text at the position given by the scene, with the width
// that the scene measured.
type typesetter struct {
	faces    map[cut]xfont.Face
	stencils map[scene.Text]*image.Alpha
}

// cut is one size of one weight, in 1/64 pixel.
type cut struct {
	weight scene.Weight
	size   fixed.Int26_6
}

// unkerned advances each letter by its own width, as the scene measured it and
// as the PDF does.
type unkerned struct{ xfont.Face }

func (unkerned) Kern(_, _ rune) fixed.Int26_6 { return 0 }

// face returns the face of a text. Faces are cheap and keep no glyphs. They are
// unhinted, so that the letters have their exact widths.
func (s *typesetter) face(t scene.Text, perMM float64) xfont.Face {
	key := cut{t.Weight, max(1, pixel(t.Size*perMM))}
	if f, ok := s.faces[key]; ok {
		return f
	}
	f, err := opentype.NewFace(font.Typeface(t.Weight), &opentype.FaceOptions{
		Size: float64(key.size) / 64, DPI: 72, Hinting: xfont.HintingNone,
	})
	if err != nil {
		panic("the embedded typeface cannot be set: " + err.Error())
	}
	s.faces[key] = unkerned{f}
	return s.faces[key]
}

func (s *typesetter) line(canvas draw.Image, ink image.Image, t scene.Text, perMM float64, top int) {
	x := (t.At.X - t.Before()) * perMM
	y := t.At.Y*perMM - float64(top)
	d := xfont.Drawer{Dst: canvas, Src: ink, Face: s.face(t, perMM), Dot: fixed.Point26_6{X: pixel(x), Y: pixel(y)}}
	d.DrawString(font.Clean(t.Content))
}

// stencil returns the shape of upward text in pixels of the page. The text is
// set level, turned, and cached, because it extends over many bands.
func (s *typesetter) stencil(t scene.Text, perMM float64) *image.Alpha {
	if st, ok := s.stencils[t]; ok {
		return st
	}
	em := int(math.Ceil(t.Size * perMM))
	x, y := t.At.X*perMM, (t.At.Y+t.Before())*perMM
	column, row := math.Floor(x), math.Floor(y)
	// The level picture has a margin of one em on every side. Its pixel (u, v)
	// becomes the page's pixel (left+v, bottom−u).
	level := image.NewAlpha(image.Rect(0, 0, int(math.Ceil(t.Width*perMM))+2*em, 3*em))
	d := xfont.Drawer{Dst: level, Src: image.Opaque, Face: s.face(t, perMM), Dot: fixed.Point26_6{
		X: pixel(float64(em) + 1 - (y - row)),
		Y: pixel(float64(2*em) + (x - column)),
	}}
	d.DrawString(font.Clean(t.Content))
	st := turn(level, int(column)-2*em, int(row)+em)
	s.stencils[t] = st
	return st
}

// turn turns a picture a quarter anticlockwise; its lower left pixel moves to
// (left, bottom).
func turn(level *image.Alpha, left, bottom int) *image.Alpha {
	size := level.Rect.Size()
	st := image.NewAlpha(image.Rect(left, bottom-size.X+1, left+size.Y, bottom+1))
	for v := range size.Y {
		for u := range size.X {
			st.Pix[(size.X-1-u)*st.Stride+v] = level.Pix[v*level.Stride+u]
		}
	}
	return st
}

// pixel returns a length in pixels as a multiple of 1/64.
func pixel(v float64) fixed.Int26_6 { return fixed.Int26_6(math.Round(v * 64)) }
