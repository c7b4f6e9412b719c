// Package png paints one page of a scene as a PNG picture.
//
// The page is painted in bands of fixed height, so that a whole page never lies
// in memory, and stored with a palette of the inks and their blends. It may
// import scenes and type.
package png

import (
	"fmt"
	"io"
	"math"

	"drawdown/render/font"
	"drawdown/render/scene"
)

// The resolutions that are painted, in dots per inch.
const (
	CoarsestDPI = 36
	FinestDPI   = 1200
)

// mostPixels bounds a picture: A4 at 1200 dpi and A0 at 300 dpi fit.
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

// painterFor checks a page and makes it ready to be painted.
func painterFor(page scene.Page, dpi int) (*painter, error) {
	if err := font.Check(page); err != nil {
		return nil, err
	}
	width, height, err := PixelSize(page, dpi)
	if err != nil {
		return nil, err
	}
	return newPainter(page, width, height, float64(dpi)/mmPerInch), nil
}

// PixelSize gives the size of the picture of a page.
func PixelSize(page scene.Page, dpi int) (width, height int, err error) {
	if dpi < CoarsestDPI || dpi > FinestDPI {
		return 0, 0, fmt.Errorf("a picture at %d dpi: the resolution must be from %d to %d dpi", dpi, CoarsestDPI, FinestDPI)
	}
	w := max(1, math.Round(page.Width*float64(dpi)/mmPerInch))
	h := max(1, math.Round(page.Height*float64(dpi)/mmPerInch))
	if w*h > mostPixels {
		most := int(mmPerInch * math.Sqrt(mostPixels/(page.Width*page.Height)))
		return 0, 0, fmt.Errorf("page %q of %g × %g mm at %d dpi makes %.0f × %.0f pixels: at most %.0f million are painted, so choose %d dpi or less",
			page.Name, page.Width, page.Height, dpi, w, h, mostPixels/1e6, most)
	}
	return int(w), int(h), nil
}
