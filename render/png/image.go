package png

import (
	"image"
	"image/color"

	"drawdown/render/scene"
)

// Paint gives the page as a picture with a palette, for formats that are
// encoded elsewhere. It takes what Write takes.
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
