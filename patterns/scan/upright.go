package scan

import "image"

// flips say for each orientation whether the stored picture runs the other way
// along x and along y. From 5 on it lies on its side.
var flips = [9][2]bool{2: {true, false}, 3: {true, true}, 4: {false, true}, 6: {false, true}, 7: {true, true}, 8: {true, false}}

// upright turns a picture as its EXIF orientation says (CIPA DC-008, tag 274):
// cameras store what the sensor saw, however they were held.
func upright(p *image.Gray, orientation int) *image.Gray {
	if orientation < 2 || orientation >= len(flips) {
		return p
	}
	w, h := p.Rect.Dx(), p.Rect.Dy()
	size, onSide := image.Pt(w, h), orientation >= 5
	if onSide {
		size = image.Pt(h, w)
	}
	out := image.NewGray(image.Rectangle{Max: size})
	for y := range size.Y {
		for x := range size.X {
			from := image.Pt(x, y)
			if onSide {
				from = image.Pt(y, x)
			}
			if flips[orientation][0] {
				from.X = w - 1 - from.X
			}
			if flips[orientation][1] {
				from.Y = h - 1 - from.Y
			}
			out.Pix[y*out.Stride+x] = p.Pix[from.Y*p.Stride+from.X]
		}
	}
	return out
}
