package png

import (
	"fmt"
	"image"
	"io"

	"drawdown/render/font"
	"drawdown/render/scene"
)

// WriteOver paints the page over a grey picture of the whole page, which has
// the page's size in pixels at that resolution; PixelSize gives it.
func WriteOver(w io.Writer, page scene.Page, dpi int, under *image.Gray) error {
	if err := font.Check(page); err != nil {
		return err
	}
	width, height, err := pixels(page, dpi)
	if err != nil {
		return err
	}
	if under.Rect != image.Rect(0, 0, width, height) {
		return fmt.Errorf("the picture under page %q is %v: it must be %d × %d pixels from 0, 0", page.Name, under.Rect, width, height)
	}
	p := newPainter(page, width, height, float64(dpi)/mmPerInch)
	p.under = under
	return encode(w, picture{width: width, height: height, dpi: dpi, bands: p})
}

// PixelSize gives the size of the picture of a page.
func PixelSize(page scene.Page, dpi int) (width, height int, err error) { return pixels(page, dpi) }

// lay copies the rows of the picture under the page to the canvas.
func (p *painter) lay() {
	for y := range p.canvas.Rect.Dy() {
		from := p.top + y
		if from < 0 || from >= p.height {
			continue
		}
		row := p.under.Pix[from*p.under.Stride:]
		to := p.canvas.Pix[y*p.canvas.Stride:]
		for x := range p.width {
			v := row[x]
			to[4*x], to[4*x+1], to[4*x+2] = v, v, v
		}
	}
}
