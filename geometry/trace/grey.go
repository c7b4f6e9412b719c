package trace

import (
	"image"
	"image/draw"
)

// Grey returns the one grey picture that tells part from background best: the
// brightness, or one of the three colours where a coloured part has the
// brightness of its ground. What is transparent is taken for white.
func Grey(picture image.Image) *image.Gray {
	if grey, ok := picture.(*image.Gray); ok && grey.Rect.Min == (image.Point{}) {
		return grey
	}
	best := pickChannel(picture)
	b := picture.Bounds()
	out := image.NewGray(image.Rect(0, 0, b.Dx(), b.Dy()))
	eachRow(picture, func(y int, row []uint8) {
		to := out.Pix[y*out.Stride:]
		for x := range b.Dx() {
			to[x] = best.of(row[4*x:])
		}
	})
	return out
}

// channel is a way to make one grey of a colour: the brightness, or its red,
// green or blue.
type channel int

const brightness, channels channel = 0, 4

func (k channel) of(pixel []uint8) uint8 {
	if k != brightness {
		return pixel[k-1]
	}
	// ITU-R BT.601 luma, as JPEG uses it.
	return uint8((299*int(pixel[0]) + 587*int(pixel[1]) + 114*int(pixel[2]) + 500) / 1000)
}

// pickChannel compares how well one threshold parts the greys of each channel.
func pickChannel(picture image.Image) channel {
	var counts [channels][256]int
	step := max(1, max(picture.Bounds().Dx(), picture.Bounds().Dy())/800)
	eachRow(picture, func(y int, row []uint8) {
		if y%step != 0 {
			return
		}
		for x := 0; x < len(row); x += 4 * step {
			for k := range channels {
				counts[k][k.of(row[x:])]++
			}
		}
	})
	best, most := brightness, 1.2*separation(counts[brightness]) // colour has to be clearly better: it is noisier
	for k := brightness + 1; k < channels; k++ {
		if s := separation(counts[k]); s > most {
			best, most = k, s
		}
	}
	return best
}

// separation is the largest variance between two classes of greys (Otsu, 1979).
func separation(counts [256]int) (variance float64) {
	var total, sum float64
	for v, n := range counts {
		total, sum = total+float64(n), sum+float64(v*n)
	}
	var below, sumBelow float64
	for v, n := range counts {
		below, sumBelow = below+float64(n), sumBelow+float64(v*n)
		if below == 0 || below == total {
			continue
		}
		d := sumBelow/below - (sum-sumBelow)/(total-below)
		variance = max(variance, below/total*(total-below)/total*d*d)
	}
	return variance
}

// eachRow hands over the rows of a picture on white, four bytes a pixel. The row
// is used again.
func eachRow(picture image.Image, do func(y int, row []uint8)) {
	b := picture.Bounds()
	strip := image.NewRGBA(image.Rect(0, 0, b.Dx(), 1))
	for y := range b.Dy() {
		draw.Draw(strip, strip.Rect, image.White, image.Point{}, draw.Src)
		draw.Draw(strip, strip.Rect, picture, image.Pt(b.Min.X, b.Min.Y+y), draw.Over)
		do(y, strip.Pix)
	}
}
