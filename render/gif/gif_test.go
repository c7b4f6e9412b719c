package gif_test

import (
	"bytes"
	"image"
	"image/color"
	stdgif "image/gif"
	"testing"

	"drawdown/render/gif"
	"drawdown/render/png"
	"drawdown/render/scene"
)

// page has a square at a place.
func page(x float64) scene.Page {
	return scene.Page{Name: "p", Width: 60, Height: 40, Items: []scene.Item{
		scene.Shape{Path: scene.Rect(5, 5, 50, 30, 0), Stroke: scene.Black, Width: 0.5},
		scene.Shape{Path: scene.Circle(x, 20, 4), Fill: scene.Accent},
	}}
}

// Each picture of the film, laid over those before it, equals the picture of
// its page, pixel by pixel; only what has changed is stored.
func TestFilmIsItsPages(t *testing.T) {
	pages := []scene.Page{page(15), page(24), page(24), page(40)}
	var b bytes.Buffer
	if err := gif.Write(&b, pages, []float64{1, 0.5, 2, 1.25}, 72); err != nil {
		t.Fatal(err)
	}
	film, err := stdgif.DecodeAll(bytes.NewReader(b.Bytes()))
	if err != nil {
		t.Fatal(err)
	}
	if len(film.Image) != 4 || film.LoopCount != 0 {
		t.Fatalf("%d pictures, loop %d", len(film.Image), film.LoopCount)
	}
	for k, want := range []int{100, 50, 200, 125} { // hundredths of a second
		if film.Delay[k] != want {
			t.Errorf("picture %d stands for %d, want %d", k+1, film.Delay[k], want)
		}
	}
	shown := image.NewRGBA(film.Image[0].Rect)
	for k, frame := range film.Image {
		for y := frame.Rect.Min.Y; y < frame.Rect.Max.Y; y++ {
			for x := frame.Rect.Min.X; x < frame.Rect.Max.X; x++ {
				if _, _, _, a := frame.At(x, y).RGBA(); a > 0 {
					shown.Set(x, y, frame.At(x, y))
				}
			}
		}
		want, err := png.Paint(pages[k], 72)
		if err != nil {
			t.Fatal(err)
		}
		for y := range want.Rect.Dy() {
			for x := range want.Rect.Dx() {
				if color.RGBAModel.Convert(want.At(x, y)) != shown.RGBAAt(x, y) {
					t.Fatalf("picture %d differs at %d,%d: %v, want %v", k+1, x, y, shown.RGBAAt(x, y), want.At(x, y))
				}
			}
		}
		if size := frame.Rect.Dx() * frame.Rect.Dy(); k > 0 && size > want.Rect.Dx()*want.Rect.Dy()/2 {
			t.Errorf("picture %d stores %d pixels", k+1, size)
		}
	}
}

func TestRefused(t *testing.T) {
	wide := page(15)
	wide.Width = 80
	for what, c := range map[string]struct {
		pages   []scene.Page
		seconds []float64
	}{
		"no pictures":      {nil, nil},
		"a time lacks":     {[]scene.Page{page(15), page(20)}, []float64{1}},
		"two sizes":        {[]scene.Page{page(15), wide}, []float64{1, 1}},
		"too many":         {make([]scene.Page, gif.Most+1), make([]float64, gif.Most+1)},
		"a page of no use": {[]scene.Page{{Name: "none"}}, []float64{1}},
	} {
		if err := gif.Write(&bytes.Buffer{}, c.pages, c.seconds, 72); err == nil {
			t.Errorf("%s: no error", what)
		}
	}
}
