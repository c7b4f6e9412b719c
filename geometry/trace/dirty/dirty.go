// Package dirty paints scans of dirty parts with known truth: oil, beads of
// sealant, print, shadows, reflections, tears, plugs, dust, JPEG, a tilted camera
// and its lens. It shares no code with the tracer. Only tests import it.
package dirty

import (
	"image"
	"math/rand/v2"

	"drawdown/geometry"
)

// Hole is a round hole of the part as it was drawn.
type Hole struct {
	At         geometry.Point
	DiameterMm float64
	Bolt       bool
	// Damage is what hides the hole; empty where its edge is whole.
	Damage Damage
}

// Damage is what was done to a scan.
type Damage string

const (
	Oil        Damage = "oil"
	Bead       Damage = "bead"
	Print      Damage = "print"
	Shadow     Damage = "shadow"
	Reflection Damage = "reflection"
	Tear       Damage = "tear"
	TornAway   Damage = "torn away"
	Plug       Damage = "plug"
	Dust       Damage = "dust"
)

// Scan is a picture with what is in it. The places are those of the part, with
// the middle of the picture at [0, 0].
type Scan struct {
	Picture *image.Gray
	Holes   []Hole
	Done    []Damage
	DPI     float64
	// Corners are those of the sheet under the part, in pixels, and Sheet its
	// size: of a photo only.
	Corners [4]geometry.Point
	Sheet   geometry.Box
	Barrel  float64
	see     camera
}

// Levels of the part and the paper under it.
const (
	partLevel  = 58
	paperLevel = 228
)

// DPI of the scans.
const scanDPI = 150

type painter struct {
	canvas
	scan Scan
	*rand.Rand
}

// New paints the scan of a seed. Each has two to four kinds of damage.
func New(seed uint64) Scan {
	p := &painter{Rand: rand.New(rand.NewPCG(seed, 7))}
	part := parts[int(seed)%len(parts)](p)
	size := part.outline.size()
	w, h := int((size.X+24)*scanDPI/25.4), int((size.Y+24)*scanDPI/25.4)
	p.scan = Scan{Holes: part.holes, DPI: scanDPI}
	p.canvas = newCanvas(image.Pt(w, h), onGlass(image.Pt(w, h), scanDPI, 3*(p.Float64()-0.5)))
	p.scan.see = p.see
	p.part(part)
	for _, k := range p.Perm(len(damages))[:2+p.IntN(3)] {
		damages[k].do(p)
		p.scan.Done = append(p.scan.Done, damages[k].name)
	}
	p.scan.Picture = packed(grainy(blurred(p.grey(), 0.6+0.6*p.Float64()), 2+4*p.Float64(), seed), 45+p.IntN(50))
	return p.scan
}

// Photo paints a part on a sheet of paper on a dark bench, seen by a tilted
// camera whose lens bends straight lines by the barrel, a share of the half
// diagonal.
func Photo(seed uint64, tiltDeg, barrel float64) Scan {
	p := &painter{Rand: rand.New(rand.NewPCG(seed, 8))}
	part := parts[int(seed)%len(parts)](p)
	size := image.Pt(2600, 1950)
	see := byCamera(size, tiltDeg, barrel)
	p.scan = Scan{Holes: part.holes, Barrel: barrel, Sheet: geometry.Box{Min: geometry.Point{X: -148.5, Y: -105}, Max: geometry.Point{X: 148.5, Y: 105}}}
	p.canvas = newCanvas(size, see)
	p.scan.see = see
	p.level(70)
	p.dc.Clear()
	b := p.scan.Sheet
	p.fill(paperLevel, straight(b.Min, geometry.Point{X: b.Max.X, Y: b.Min.Y}, b.Max, geometry.Point{X: b.Min.X, Y: b.Max.Y}))
	for i, c := range []geometry.Point{{X: b.Min.X, Y: b.Max.Y}, b.Max, {X: b.Max.X, Y: b.Min.Y}, b.Min} {
		x, y := see(c)
		p.scan.Corners[i] = geometry.Point{X: x, Y: y}
	}
	p.part(part)
	p.scan.Picture = packed(grainy(blurred(p.grey(), 1), 3, seed), 85)
	return p.scan
}

// Whole reports whether nothing hides the edge of the hole.
func (h Hole) Whole() bool { return h.Damage == "" }

// Pixel returns the place in the picture of a place of the part.
func (s Scan) Pixel(at geometry.Point) geometry.Point {
	x, y := s.see(at)
	return geometry.Point{X: x, Y: y}
}
