package scan

import "image"

// flips states for each orientation whether the stored picture is reversed
// along x and along y. From 5 on it is on its side.
var flips = [9][2]bool{2: {true, false}, 3: {true, true}, 4: {false, true}, 6: {false, true}, 7: {true, true}, 8: {true, false}}

// upright turns a picture by its EXIF orientation (CIPA DC-008, tag 274):
// cameras store the sensor's picture, however they were held.
func upright(p *image.Gray, orientation int) *image.Gray {
	if !turns(orientation) {
		return p
	}
	size, from := turning(orientation, p.Rect.Dx(), p.Rect.Dy())
	out := image.NewGray(image.Rectangle{Max: size})
	for y := range size.Y {
		for x := range size.X {
			at := from(x, y)
			out.Pix[y*out.Stride+x] = p.Pix[at.Y*p.Stride+at.X]
		}
	}
	return out
}

func turns(orientation int) bool { return orientation >= 2 && orientation < len(flips) }

// turning returns the size of the upright picture, and a function that maps its
// pixels to those of the stored one, of width w and height h.
func turning(orientation, w, h int) (size image.Point, from func(x, y int) image.Point) {
	size, onSide, flip := image.Pt(w, h), orientation >= 5, flips[orientation]
	if onSide {
		size = image.Pt(h, w)
	}
	return size, func(x, y int) image.Point {
		at := image.Pt(x, y)
		if onSide {
			at = image.Pt(y, x)
		}
		if flip[0] {
			at.X = w - 1 - at.X
		}
		if flip[1] {
			at.Y = h - 1 - at.Y
		}
		return at
	}
}
