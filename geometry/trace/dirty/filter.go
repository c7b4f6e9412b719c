package dirty

import (
	"bytes"
	"image"
	"image/jpeg"
	"math"
	"math/rand/v2"
)

// blurred spreads every pixel by a bell curve, across and down.
func blurred(p *image.Gray, sigma float64) *image.Gray {
	return spread(spread(p, sigma, 1, 0), sigma, 0, 1)
}

func spread(p *image.Gray, sigma float64, dx, dy int) *image.Gray {
	reach := int(math.Ceil(3 * sigma))
	bell, sum := make([]float64, 2*reach+1), 0.0
	for i := range bell {
		bell[i] = math.Exp(-math.Pow(float64(i-reach)/sigma, 2) / 2)
		sum += bell[i]
	}
	w, h := p.Rect.Dx(), p.Rect.Dy()
	out := image.NewGray(p.Rect)
	for y := range h {
		for x := range w {
			v := 0.0
			for i, weight := range bell {
				v += weight * float64(p.Pix[min(max(y+(i-reach)*dy, 0), h-1)*p.Stride+min(max(x+(i-reach)*dx, 0), w-1)])
			}
			out.Pix[y*out.Stride+x] = uint8(v/sum + 0.5)
		}
	}
	return out
}

// grainy adds noise with this standard deviation.
func grainy(p *image.Gray, sigma float64, seed uint64) *image.Gray {
	r := rand.New(rand.NewPCG(seed, 9))
	for i, v := range p.Pix {
		p.Pix[i] = uint8(min(max(math.Round(float64(v)+sigma*r.NormFloat64()), 0), 255))
	}
	return p
}

// packed is what a JPEG file of this quality leaves of the picture.
func packed(p *image.Gray, quality int) *image.Gray {
	var b bytes.Buffer
	if err := jpeg.Encode(&b, p, &jpeg.Options{Quality: quality}); err != nil {
		panic(err) // to memory
	}
	back, err := jpeg.Decode(&b)
	if err != nil {
		panic(err)
	}
	return back.(*image.Gray)
}
