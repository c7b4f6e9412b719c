package scan

import "image"

// upright turns a picture as its EXIF orientation says (CIPA DC-008, tag 274):
// cameras store what the sensor saw, however they were held.
func upright(p *image.Gray, orientation int) *image.Gray {
	w, h := p.Rect.Dx(), p.Rect.Dy()
	// from gives the stored place of a place of the upright picture.
	var from func(x, y int) (int, int)
	switch orientation {
	case 2:
		from = func(x, y int) (int, int) { return w - 1 - x, y }
	case 3:
		from = func(x, y int) (int, int) { return w - 1 - x, h - 1 - y }
	case 4:
		from = func(x, y int) (int, int) { return x, h - 1 - y }
	case 5:
		from = func(x, y int) (int, int) { return y, x }
	case 6:
		from = func(x, y int) (int, int) { return y, h - 1 - x }
	case 7:
		from = func(x, y int) (int, int) { return w - 1 - y, h - 1 - x }
	case 8:
		from = func(x, y int) (int, int) { return w - 1 - y, x }
	default:
		return p
	}
	size := image.Pt(w, h)
	if orientation >= 5 {
		size = image.Pt(h, w)
	}
	out := image.NewGray(image.Rectangle{Max: size})
	for y := range size.Y {
		for x := range size.X {
			sx, sy := from(x, y)
			out.Pix[y*out.Stride+x] = p.Pix[sy*p.Stride+sx]
		}
	}
	return out
}
