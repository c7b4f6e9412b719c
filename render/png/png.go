// Package png paints one page of a scene as a PNG picture.
//
// The page is painted in bands of fixed height, so that memory never holds a
// whole page, and stored with a palette of the inks and their blends. It may
// import scene and font.
package png

import (
	"fmt"
	"image"
	"image/color"
	"io"
	"math"

	"drawdown/geometry/finding"
	"drawdown/render/font"
	"drawdown/render/scene"
)

// The limits of the resolution, in dots per inch.
const (
	CoarsestDPI = 36
	FinestDPI   = 1200
)

// mostPixels limits a picture: A4 at 1200 dpi and A0 at 300 dpi fit.
const mostPixels = 150e6

const mmPerInch = 25.4

// Write paints the page at dpi dots per inch, from CoarsestDPI to FinestDPI.
func Write(w io.Writer, page scene.Page, dpi int) error {
	p, err := painterFor(page, dpi)
	if err != nil {
		return err
	}
	return encode(w, p, dpi)
}

func painterFor(page scene.Page, dpi int) (*painter, error) {
	if err := font.Check(page); err != nil {
		return nil, err
	}
	if len(page.Photos) > 0 {
		return nil, fmt.Errorf("page %q has photos, for which the palette has no room; allowed: PDF and SVG", page.Name)
	}
	width, height, err := PixelSize(page, dpi)
	if err != nil {
		return nil, err
	}
	return newPainter(page, width, height, float64(dpi)/mmPerInch), nil
}

// PixelSize returns the size of the picture of a page.
func PixelSize(page scene.Page, dpi int) (width, height int, err error) {
	if dpi < CoarsestDPI || dpi > FinestDPI {
		return 0, 0, finding.Failed(NoResolution, finding.Values{"dpi": dpi, "least": CoarsestDPI, "most": FinestDPI})
	}
	w := max(1, math.Round(page.Width*float64(dpi)/mmPerInch))
	h := max(1, math.Round(page.Height*float64(dpi)/mmPerInch))
	if w*h > mostPixels {
		most := int(mmPerInch * math.Sqrt(mostPixels/(page.Width*page.Height)))
		return 0, 0, finding.Failed(TooLarge, finding.Values{
			"page": page.Name, "width": page.Width, "height": page.Height, "dpi": dpi, "across": w, "down": h, "most": int(mostPixels / 1e6), "best": most,
		})
	}
	return int(w), int(h), nil
}

// Paint returns the page as a picture with a palette, for formats that are
// encoded elsewhere. It accepts the same arguments as Write.
func Paint(page scene.Page, dpi int) (*image.Paletted, error) {
	painter, err := painterFor(page, dpi)
	if err != nil {
		return nil, err
	}
	width, height := painter.width, painter.height
	var colours color.Palette
	for _, c := range palette() {
		colours = append(colours, color.RGBA{c[0], c[1], c[2], 255})
	}
	made := image.NewPaletted(image.Rect(0, 0, width, height), colours)
	buffer := make([]byte, bandRows*(width+1))
	for first := 0; first < height; first += bandRows {
		end := min(first+bandRows, height)
		rows := buffer[:(end-first)*(width+1)]
		painter.paint(first, end, rows)
		for y := first; y < end; y++ {
			copy(made.Pix[y*made.Stride:], rows[(y-first)*(width+1)+1:(y-first+1)*(width+1)])
		}
	}
	return made, nil
}

// WriteOver paints the page over a grey picture, whose size must be that of the
// page in pixels at that resolution; see PixelSize.
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
