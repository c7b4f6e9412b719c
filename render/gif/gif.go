// Package gif paints a series of scenes as an animated GIF (GIF89a), which
// every slide program and browser shows. Each picture stores only what has
// changed. It may import scene and the PNG painter.
package gif

import (
	"fmt"
	"image"
	"image/color"
	"image/gif"
	"io"
	"math"

	"drawdown/render/png"
	"drawdown/render/scene"
)

// Most is the largest number of pictures of a film: with more, the file is too
// large to be useful.
const Most = 1000

// Write paints the pages as a loop, each shown for its number of seconds. All
// pages have the size of the first.
func Write(w io.Writer, pages []scene.Page, seconds []float64, dpi int) error {
	if len(pages) == 0 || len(pages) > Most || len(seconds) != len(pages) {
		return fmt.Errorf("%d pictures with %d times; allowed: 1 to %d, a time each", len(pages), len(seconds), Most)
	}
	film := &gif.GIF{}
	var shown *image.Paletted
	for k, page := range pages {
		painted, err := png.Paint(page, dpi)
		if err != nil {
			return err
		}
		if shown != nil && painted.Rect != shown.Rect {
			return fmt.Errorf("page %q has another size than the first; the pictures of a film have one size", page.Name)
		}
		film.Image = append(film.Image, changed(shown, painted))
		film.Delay = append(film.Delay, int(math.Round(seconds[k]*100)))
		film.Disposal = append(film.Disposal, gif.DisposalNone)
		shown = painted
	}
	film.Config = image.Config{ColorModel: film.Image[0].Palette, Width: shown.Rect.Dx(), Height: shown.Rect.Dy()}
	return gif.EncodeAll(w, film)
}

// changed returns the part of a picture that differs from the one before, with
// unchanged pixels transparent.
func changed(before, after *image.Paletted) *image.Paletted {
	clear := len(after.Palette)
	colours := append(append(color.Palette{}, after.Palette...), color.RGBA{})
	if before == nil {
		return &image.Paletted{Pix: after.Pix, Stride: after.Stride, Rect: after.Rect, Palette: colours}
	}
	area := image.Rectangle{}
	for y := range after.Rect.Dy() {
		for x := range after.Rect.Dx() {
			if at := y*after.Stride + x; before.Pix[at] != after.Pix[at] {
				area = area.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	if area.Empty() {
		area = image.Rect(0, 0, 1, 1)
	}
	out := image.NewPaletted(area, colours)
	for y := area.Min.Y; y < area.Max.Y; y++ {
		for x := area.Min.X; x < area.Max.X; x++ {
			pixel := after.Pix[y*after.Stride+x]
			if before.Pix[y*before.Stride+x] == pixel {
				pixel = uint8(clear)
			}
			out.Pix[(y-area.Min.Y)*out.Stride+x-area.Min.X] = pixel
		}
	}
	return out
}
