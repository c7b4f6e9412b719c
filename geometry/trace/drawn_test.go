package trace_test

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/fogleman/gg"

	"drawdown/geometry"
)

// drawing is a part with known geometry, in millimetres, x right and y up,
// painted by a rasteriser that shares no code with the tracer.
type drawing struct {
	outline []geometry.Point
	holes   []hole
	ports   [][]geometry.Point
}

type hole struct {
	at       geometry.Point
	diameter float64
}

// coverGasket has 14 bolt holes of two sizes, a bore and a port that is not
// round, nothing at a symmetric place. Its figures are invented.
func coverGasket() drawing {
	d := drawing{outline: rounded(geometry.Box{Min: geometry.Point{X: -112, Y: -71}, Max: geometry.Point{X: 112, Y: 71}}, 9)}
	for _, p := range [][2]float64{{-104.3, 62.1}, {-51.2, 63.4}, {3.7, 62.8}, {55.9, 63.1}, {104.6, 61.7}, {105.1, 8.4}, {104.2, -62.5}, {49.3, -63.3}, {-2.8, -62.2}, {-57.4, -63.7}, {-104.9, -61.3}, {-105.2, 4.9}} {
		d.holes = append(d.holes, hole{geometry.Point{X: p[0], Y: p[1]}, 6.6})
	}
	d.holes = append(d.holes, hole{geometry.Point{X: -88.7, Y: 40.3}, 8.4}, hole{geometry.Point{X: 87.2, Y: -41.9}, 8.4})
	d.holes = append(d.holes, hole{geometry.Point{X: 37.6, Y: 6.2}, 58})
	d.ports = append(d.ports, rounded(geometry.Box{Min: geometry.Point{X: -74, Y: -33}, Max: geometry.Point{X: -22, Y: 29}}, 12))
	return d
}

// rounded is a box with round corners as a fine line.
func rounded(b geometry.Box, radius float64) []geometry.Point {
	var line []geometry.Point
	for k, c := range []geometry.Point{{X: b.Max.X - radius, Y: b.Max.Y - radius}, {X: b.Min.X + radius, Y: b.Max.Y - radius}, {X: b.Min.X + radius, Y: b.Min.Y + radius}, {X: b.Max.X - radius, Y: b.Min.Y + radius}} {
		for i := range 25 {
			line = append(line, geometry.Polar(c, radius, 90*float64(k)+90*float64(i)/24))
		}
	}
	return line
}

func ring(h hole) []geometry.Point {
	line := make([]geometry.Point, 360)
	for i := range line {
		line[i] = geometry.Polar(h.at, h.diameter/2, float64(i))
	}
	return line
}

// camera brings millimetres of the part to pixels.
type camera func(geometry.Point) (x, y float64)

// scanner lays the part on the glass, turned, with its middle in the middle.
func scanner(size image.Point, dpi, turnDeg float64) camera {
	s, c := math.Sincos(turnDeg * math.Pi / 180)
	return func(p geometry.Point) (float64, float64) {
		k := dpi / 25.4
		return float64(size.X)/2 + 0.37 + k*(c*p.X-s*p.Y), float64(size.Y)/2 - 0.21 - k*(s*p.X+c*p.Y)
	}
}

// tilted is a pinhole camera above the middle of the part, tipped about the
// picture's x axis and turned a little.
func tilted(size image.Point, tiltDeg, heightMm, focalPixels float64) camera {
	st, ct := math.Sincos(tiltDeg * math.Pi / 180)
	sr, cr := math.Sincos(7 * math.Pi / 180)
	return func(p geometry.Point) (float64, float64) {
		x, y := cr*p.X-sr*p.Y, sr*p.X+cr*p.Y
		depth := heightMm + y*st
		return float64(size.X)/2 + focalPixels*x/depth, float64(size.Y)/2 - focalPixels*y*ct/depth
	}
}

const darkPart, lightGround = 62, 226

// paint draws the part, dark on light.
func (d drawing) paint(size image.Point, see camera) *image.Gray {
	dc := gg.NewContext(size.X, size.Y)
	dc.SetColor(color.Gray{lightGround})
	dc.Clear()
	fill := func(line []geometry.Point, level uint8) {
		for i, p := range line {
			if x, y := see(p); i == 0 {
				dc.MoveTo(x, y)
			} else {
				dc.LineTo(x, y)
			}
		}
		dc.ClosePath()
		dc.SetColor(color.Gray{level})
		dc.Fill()
	}
	fill(d.outline, darkPart)
	for _, h := range d.holes {
		fill(ring(h), lightGround)
	}
	for _, p := range d.ports {
		fill(p, lightGround)
	}
	grey := image.NewGray(image.Rect(0, 0, size.X, size.Y))
	rgba := dc.Image().(*image.RGBA)
	for i := range grey.Pix {
		grey.Pix[i] = rgba.Pix[4*i]
	}
	return grey
}

// change maps every level of a picture.
func change(p *image.Gray, f func(x, y int, level float64) float64) *image.Gray {
	out := image.NewGray(p.Rect)
	for y := range p.Rect.Dy() {
		for x := range p.Rect.Dx() {
			v := f(x, y, float64(p.Pix[y*p.Stride+x]))
			out.Pix[y*out.Stride+x] = uint8(min(max(math.Round(v), 0), 255))
		}
	}
	return out
}

// blurred spreads every pixel by a bell curve.
func blurred(p *image.Gray, sigma float64) *image.Gray {
	reach := int(math.Ceil(3 * sigma))
	var bell []float64
	sum := 0.0
	for i := -reach; i <= reach; i++ {
		w := math.Exp(-float64(i*i) / 2 / sigma / sigma)
		bell, sum = append(bell, w), sum+w
	}
	w, h := p.Rect.Dx(), p.Rect.Dy()
	across := image.NewGray(p.Rect)
	for y := range h {
		spread(across.Pix[y*across.Stride:][:w], bell, sum, func(i, x int) uint8 {
			return p.Pix[y*p.Stride+min(max(x+i-reach, 0), w-1)]
		})
	}
	out := image.NewGray(p.Rect)
	for y := range h {
		rows := make([][]uint8, len(bell))
		for i := range bell {
			rows[i] = across.Pix[min(max(y+i-reach, 0), h-1)*across.Stride:]
		}
		spread(out.Pix[y*out.Stride:][:w], bell, sum, func(i, x int) uint8 { return rows[i][x] })
	}
	return out
}

// spread fills a row: each level is the mean of those near it by their weights.
func spread(row []uint8, bell []float64, sum float64, near func(i, x int) uint8) {
	for x := range row {
		v := 0.0
		for i, b := range bell {
			v += b * float64(near(i, x))
		}
		row[x] = uint8(v/sum + 0.5)
	}
}

// grainy adds noise with this standard deviation.
func grainy(p *image.Gray, sigma float64, seed uint64) *image.Gray {
	r := rand.New(rand.NewPCG(seed, 1))
	return change(p, func(_, _ int, v float64) float64 { return v + sigma*r.NormFloat64() })
}

// packed is what a JPEG file of this quality leaves of the picture.
func packed(t testing.TB, p *image.Gray, quality int) *image.Gray {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, p, &jpeg.Options{Quality: quality}); err != nil {
		t.Fatal(err)
	}
	back, err := jpeg.Decode(&b)
	if err != nil {
		t.Fatal(err)
	}
	return back.(*image.Gray)
}

// dusty strews specks of up to the given diameter, light and dark ones.
func dusty(p *image.Gray, count int, mostPixels float64, seed uint64) *image.Gray {
	r := rand.New(rand.NewPCG(seed, 2))
	dc := gg.NewContextForImage(p)
	for range count {
		level := uint8(darkPart)
		if r.IntN(2) == 0 {
			level = lightGround
		}
		dc.SetColor(color.Gray{level})
		dc.DrawEllipse(r.Float64()*float64(p.Rect.Dx()), r.Float64()*float64(p.Rect.Dy()), (0.2+0.8*r.Float64())*mostPixels/2, (0.2+0.8*r.Float64())*mostPixels/2)
		dc.Fill()
	}
	out := image.NewGray(p.Rect)
	rgba := dc.Image().(*image.RGBA)
	for i := range out.Pix {
		out.Pix[i] = rgba.Pix[4*i]
	}
	return out
}
