package dirty

import (
	"image"
	"image/color"
	"math"

	"github.com/fogleman/gg"

	"drawdown/geometry"
)

// camera brings millimetres of the part to pixels.
type camera func(geometry.Point) (x, y float64)

// onGlass lays the part on a scanner, turned, its middle in the middle.
func onGlass(size image.Point, dpi, turnDeg float64) camera {
	s, c := math.Sincos(turnDeg * math.Pi / 180)
	return func(p geometry.Point) (float64, float64) {
		k := dpi / 25.4
		return float64(size.X)/2 + k*(c*p.X-s*p.Y), float64(size.Y)/2 - k*(s*p.X+c*p.Y)
	}
}

// byCamera is a pinhole camera 450 mm above the middle of the part, tipped and
// turned a little; its lens draws places in towards the middle by the barrel at
// the corners of the picture.
func byCamera(size image.Point, tiltDeg, barrel float64) camera {
	st, ct := math.Sincos(tiltDeg * math.Pi / 180)
	sr, cr := math.Sincos(4 * math.Pi / 180)
	focal := 3300.0 * float64(size.X) / 2600
	half := math.Hypot(float64(size.X), float64(size.Y)) / 2
	return func(p geometry.Point) (float64, float64) {
		x, y := cr*p.X-sr*p.Y, sr*p.X+cr*p.Y
		depth := 450 + y*st
		u, v := focal*x/depth, -focal*y*ct/depth
		r := math.Hypot(u, v) / half
		k := 1 - barrel*r*r
		return float64(size.X)/2 + k*u, float64(size.Y)/2 + k*v
	}
}

// canvas paints places of the part.
type canvas struct {
	dc  *gg.Context
	see camera
}

func newCanvas(size image.Point, see camera) canvas {
	c := canvas{gg.NewContext(size.X, size.Y), see}
	c.level(paperLevel)
	c.dc.Clear()
	return c
}

func (c canvas) level(level uint8) { c.dc.SetColor(color.Gray{level}) }

// glaze sets a colour that lets what lies under it through.
func (c canvas) glaze(level, opaque uint8) {
	c.dc.SetColor(color.NRGBA{level, level, level, opaque})
}

func (c canvas) path(l line) {
	for i, p := range l {
		if x, y := c.see(p); i == 0 {
			c.dc.MoveTo(x, y)
		} else {
			c.dc.LineTo(x, y)
		}
	}
	c.dc.ClosePath()
}

func (c canvas) fill(level uint8, l line) {
	c.level(level)
	c.path(l)
	c.dc.Fill()
}

// stroke draws an open line of a width in millimetres.
func (c canvas) stroke(level uint8, widthMm float64, points ...geometry.Point) {
	x0, y0 := c.see(geometry.Point{})
	x1, y1 := c.see(geometry.Point{X: 1})
	c.level(level)
	c.dc.SetLineWidth(widthMm * math.Hypot(x1-x0, y1-y0))
	for _, p := range points {
		c.dc.LineTo(c.see(p))
	}
	c.dc.Stroke()
}

func (c canvas) part(p part) {
	c.fill(partLevel, p.outline)
	for _, h := range p.holes {
		c.fill(paperLevel, circle(h.At, h.DiameterMm/2))
	}
	for _, l := range p.ports {
		c.fill(paperLevel, l)
	}
}

func (c canvas) grey() *image.Gray {
	rgba := c.dc.Image().(*image.RGBA)
	out := image.NewGray(rgba.Rect)
	for i := range out.Pix {
		out.Pix[i] = rgba.Pix[4*i]
	}
	return out
}
