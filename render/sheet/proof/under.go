package proof

import (
	"image"
	"math"

	"drawdown/geometry"
)

// faded is the share of the picture's blackness that is printed, so that the
// lines over it stand out.
const faded = 0.55

// Under returns the picture that the sheet is painted over: the whole page in
// so many pixels, white but for the picture, which is turned level and freed
// from perspective as the part is.
func (s Overlay) Under(picture *image.Gray, width, height int) *image.Gray {
	out := image.NewGray(image.Rect(0, 0, width, height))
	for i := range out.Pix {
		out.Pix[i] = 255
	}
	perMM := float64(width) / s.Page.Width
	top, bottom := int(s.frame.Top*perMM), int(math.Ceil(s.frame.Bottom*perMM))
	left, right := int(s.frame.Left*perMM), int(math.Ceil(s.frame.Right*perMM))
	for y := max(top, 0); y < min(bottom, height); y++ {
		for x := max(left, 0); x < min(right, width); x++ {
			p := geometry.Point{
				X: s.part.Min.X + ((float64(x)+0.5)/perMM-s.frame.Left)/s.scale,
				Y: s.part.Max.Y - ((float64(y)+0.5)/perMM-s.frame.Top)/s.scale,
			}
			at := s.view.Pixel(p)
			if level, ok := sampled(picture, at.X-0.5, at.Y-0.5); ok {
				out.Pix[y*out.Stride+x] = uint8(math.Round(255 - faded*(255-level)))
			}
		}
	}
	return out
}

// sampled returns the brightness between four pixels; not ok is beyond the
// picture.
func sampled(p *image.Gray, x, y float64) (level float64, ok bool) {
	left, top := math.Floor(x), math.Floor(y)
	if !(left >= 0 && top >= 0 && left < float64(p.Rect.Dx()-1) && top < float64(p.Rect.Dy()-1)) {
		return 0, false
	}
	fx, fy := x-left, y-top
	at := int(top)*p.Stride + int(left)
	upper, lower := p.Pix[at:at+2], p.Pix[at+p.Stride:at+p.Stride+2]
	a := float64(upper[0])*(1-fx) + float64(upper[1])*fx
	b := float64(lower[0])*(1-fx) + float64(lower[1])*fx
	return a*(1-fy) + b*fy, true
}
