package png_test

import (
	"bytes"
	"image"
	stdpng "image/png"
	"strings"
	"testing"

	"drawdown/render/png"
	"drawdown/render/scene"
)

// The page is painted over the picture: what no item covers keeps the grey of
// the picture, within a step of the palette, in every band.
func TestWriteOver(t *testing.T) {
	page := scene.Page{Name: "over", Width: 60, Height: 80, Margin: 1, Items: []scene.Item{
		scene.Shape{Path: scene.Rect(10, 10, 20, 60, 0), Fill: scene.Black},
	}}
	const dpi = 127 // five pixels a millimetre
	w, h, err := png.PixelSize(page, dpi)
	if err != nil || w != 300 || h != 400 {
		t.Fatal(w, h, err)
	}
	under := image.NewGray(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			under.Pix[y*under.Stride+x] = uint8(60 + (x+y)*190/(w+h))
		}
	}
	var b bytes.Buffer
	if err := png.WriteOver(&b, page, dpi, under); err != nil {
		t.Fatal(err)
	}
	picture, err := stdpng.Decode(&b)
	if err != nil {
		t.Fatal(err)
	}
	ink, _, _ := scene.Black.RGB()
	for y := 0; y < h; y += 3 {
		for x := 0; x < w; x += 3 {
			r, g, _, _ := picture.At(x, y).RGBA()
			want, most := int(under.GrayAt(x, y).Y), 5 // half a step of the palette's greys
			if x > 52 && x < 148 && y > 52 && y < 348 {
				want, most = int(ink), 0
			} else if x > 47 && x < 153 && y > 47 && y < 353 {
				continue
			}
			if d := int(r>>8) - want; d < -most || d > most || int(r>>8)-int(g>>8) > 4 {
				t.Fatalf("pixel %d,%d is %d, want %d", x, y, r>>8, want)
			}
		}
	}
	if err := png.WriteOver(&b, page, 100, under); err == nil || !strings.Contains(err.Error(), "must be 236 × 315 pixels") {
		t.Errorf("a picture of another size: %v", err)
	}
}
