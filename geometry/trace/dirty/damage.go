package dirty

import (
	"math"

	"drawdown/geometry"
)

var damages = []struct {
	name Damage
	do   func(p *painter)
}{
	{Oil, (*painter).oil}, {Bead, (*painter).beads}, {Print, (*painter).print}, {Shadow, (*painter).shadow},
	{Reflection, (*painter).reflection}, {Tear, (*painter).tear}, {TornAway, (*painter).tornAway}, {Plug, (*painter).plugs}, {Dust, (*painter).dust},
}

// some picks bolt holes that nothing hides yet, and notes what will.
func (p *painter) some(n int, by Damage) []Hole {
	var picked []Hole
	for _, i := range p.Perm(len(p.scan.Holes)) {
		h := &p.scan.Holes[i]
		if len(picked) < n && h.Bolt && h.Whole() {
			h.Damage = by
			picked = append(picked, *h)
		}
	}
	return picked
}

// blot is a round shape with a ragged edge.
func (p *painter) blot(at geometry.Point, radius, ragged float64) line {
	phase := 2 * math.Pi * p.Float64()
	l := make(line, 90)
	for i := range l {
		a := 2 * math.Pi * float64(i) / 90
		l[i] = geometry.Polar(at, radius*(1+ragged*(math.Sin(3*a+phase)+math.Sin(5*a-phase))/2), 4*float64(i))
	}
	return l
}

// oil soaks the paper in and round one or two holes.
func (p *painter) oil() {
	for _, h := range p.some(1+p.IntN(2), Oil) {
		p.glaze(64, uint8(70+p.IntN(90)))
		p.path(p.blot(h.At, h.DiameterMm*(1+p.Float64()), 0.3))
		p.dc.Fill()
	}
}

// beads are bright rings of sealant round holes.
func (p *painter) beads() {
	level := uint8(130 + p.IntN(70))
	for _, h := range p.some(2+p.IntN(5), Bead) {
		p.fill(level, circle(h.At, h.DiameterMm*(0.68+0.2*p.Float64())))
		p.fill(paperLevel, circle(h.At, h.DiameterMm/2))
	}
}

// print is a row of white signs on the part: rings, bars and full stops.
func (p *painter) print() {
	at, ok := p.bare(26, 9)
	if !ok {
		return
	}
	for i := range 5 {
		c := geometry.Point{X: at.X - 10 + 5*float64(i), Y: at.Y}
		switch p.IntN(3) {
		case 0:
			p.stroke(paperLevel, 0.8, circle(c, 1.9)...)
		case 1:
			p.stroke(paperLevel, 0.9, c.Add(geometry.Point{Y: 2.4}), c.Add(geometry.Point{Y: -2.4}))
		default:
			p.fill(paperLevel, circle(c, 1.4+0.5*p.Float64()))
		}
	}
}

// bare returns a place on the part with that much room round it.
func (p *painter) bare(width, height float64) (geometry.Point, bool) {
	img := p.grey()
	for range 3000 {
		at := geometry.Point{X: 220 * (p.Float64() - 0.5), Y: 140 * (p.Float64() - 0.5)}
		free := true
		for i := range 9 {
			for k := range 5 {
				x, y := p.see(at.Add(geometry.Point{X: width * (float64(i)/8 - 0.5), Y: height * (float64(k)/4 - 0.5)}))
				free = free && img.GrayAt(int(x), int(y)).Y == partLevel && x > 0 && y > 0
			}
		}
		if free {
			return at, true
		}
	}
	return geometry.Point{}, false
}

// shadow darkens one side of the picture.
func (p *painter) shadow() {
	w, h := float64(p.dc.Width()), float64(p.dc.Height())
	from, deg := 0.3+0.3*p.Float64(), 360*p.Float64()
	s, c := math.Sincos(deg * math.Pi / 180)
	for i := range 40 {
		p.glaze(0, 5)
		d := from + 0.4*float64(i)/40
		// A half plane beyond a line that lies ever further out.
		mx, my := w/2+(d-0.5)*w*c, h/2+(d-0.5)*h*s
		far := 2 * (w + h)
		p.dc.MoveTo(mx-s*far, my+c*far)
		p.dc.LineTo(mx+s*far, my-c*far)
		p.dc.LineTo(mx+s*far+c*far, my-c*far+s*far)
		p.dc.LineTo(mx-s*far+c*far, my+c*far+s*far)
		p.dc.ClosePath()
		p.dc.Fill()
	}
}

// reflection is a bright patch on the part that touches a hole.
func (p *painter) reflection() {
	for _, h := range p.some(1, Reflection) {
		deg := 360 * p.Float64()
		r := h.DiameterMm * (0.4 + 0.6*p.Float64())
		at := geometry.Polar(h.At, h.DiameterMm/2+0.8*r, deg)
		p.fill(uint8(170+p.IntN(58)), p.blot(at, r, 0.25))
		p.fill(paperLevel, circle(h.At, h.DiameterMm/2))
	}
}

// tear runs from a hole into the part.
func (p *painter) tear() {
	for _, h := range p.some(1, Tear) {
		deg := 360 * p.Float64()
		p.stroke(paperLevel, 0.8+p.Float64(), h.At, geometry.Polar(h.At, h.DiameterMm*1.4, deg), geometry.Polar(h.At, h.DiameterMm*1.9, deg+20))
	}
}

// tornAway takes a piece with most of a hole off the rim of the part.
func (p *painter) tornAway() {
	for _, h := range p.some(1, TornAway) {
		out := h.At.AngleFrom(geometry.Point{})
		side := geometry.Polar(geometry.Point{}, 1, out+90)
		cut := h.At.Add(geometry.Polar(geometry.Point{}, h.DiameterMm*(0.5*p.Float64()-0.1), out))
		far := geometry.Polar(geometry.Point{}, 30, out)
		w := h.DiameterMm * (0.8 + 0.3*p.Float64())
		p.fill(paperLevel, line{cut.Add(side.Scale(w)), cut.Add(side.Scale(0.3 * w)).Add(far.Scale(-0.03)), cut.Add(side.Scale(-w)), cut.Add(side.Scale(-1.4 * w)).Add(far), cut.Add(side.Scale(1.4 * w)).Add(far)})
	}
}

// plugs fill holes with dirt that is nearly as dark as the part.
func (p *painter) plugs() {
	for _, h := range p.some(1+p.IntN(2), Plug) {
		p.fill(uint8(partLevel+25+p.IntN(45)), circle(h.At, h.DiameterMm/2))
	}
}

func (p *painter) dust() {
	for range 150 {
		level := uint8(partLevel)
		if p.IntN(2) == 0 {
			level = paperLevel
		}
		p.level(level)
		p.dc.DrawEllipse(p.Float64()*float64(p.dc.Width()), p.Float64()*float64(p.dc.Height()), 1+3*p.Float64(), 1+3*p.Float64())
		p.dc.Fill()
	}
}
