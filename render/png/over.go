package png

import (
	"fmt"
	"image"
	"io"

	"drawdown/render/scene"
)

// WriteOver paints the page over a grey picture of the whole page, which has
// the page's size in pixels at that resolution; PixelSize gives it.
func WriteOver(w io.Writer, page scene.Page, dpi int, under *image.Gray) error {
	p, err := painterFor(page, dpi)
	if err != nil {
		return err
	}
	if under.Rect != image.Rect(0, 0, p.width, p.height) {
		return fmt.Errorf("the picture under page %q is %v: it must be %d × %d pixels from 0, 0", page.Name, under.Rect, p.width, p.height)
	}
	p.under = under
	return encode(w, p, dpi)
}

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
