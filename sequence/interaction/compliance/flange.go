package compliance

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Flange is a round flange as a ring that keeps its cross-section. Compared
// with the same flange as a Plate, it was 6 to 12 % softer at the bolts, and 18
// % if a raised face is close to them.
type Flange struct {
	Part        Part
	Outer, Bore unit.Length // diameters
	BoltCircle  unit.Length // diameter
	GasketInner unit.Length // diameters; both 0: the gasket covers the full face
	GasketOuter unit.Length
	PipeWall    unit.Length // of the pipe or hub behind it; 0: none
	PipeRadius  unit.Length // to the middle of its wall
	Pair        bool        // two equal flanges facing each other, rather than one on a stiff part
	Centre      geometry.Point
}

// FullFace reports whether the gasket covers the whole face.
func (f Flange) FullFace() bool { return f.GasketInner == 0 && f.GasketOuter == 0 }

// Compliance returns the deflection of the flange at each bolt for a unit load
// at each other, in mm/N.
func (f Flange) Compliance(at []geometry.Point, foundationMPaPerMm float64) (*mat.SymDense, error) {
	if err := positive(foundation(foundationMPaPerMm)); err != nil {
		return nil, err
	}
	ring, line, err := f.Ring(foundationMPaPerMm)
	if err != nil {
		return nil, err
	}
	const harmonics = 60
	return ring.Compliance(anglesOf(at, f.Centre), line, harmonics)
}

// Ring returns the flange as a ring beam, with the foundation per millimetre of
// its circumference, in N/mm².
func (f Flange) Ring(foundationMPaPerMm float64) (ring Ring, foundationMPa float64, err error) {
	if err := f.check(); err != nil {
		return Ring{}, 0, err
	}
	width, radius := f.widthMm(), f.radiusMm()
	share := 1.0
	if f.Pair {
		share = 0.5 // Facing of two equal ones
	}
	ring = Ring{
		RadiusMm:     radius,
		BendingNmm2:  share * f.Part.BendingNmm2(unit.Length(width)),
		TorsionNmm2:  share * f.torsionNmm2(),
		TwistN:       share * f.hubN(),
		BoltOffsetMm: float64(f.BoltCircle)/2 - radius,
	}
	if f.FullFace() {
		ring.TwistN += foundationMPaPerMm * width * width * width / 12 // resistance of the face itself to rolling
		return ring, foundationMPaPerMm * width, nil
	}
	middle := float64(f.GasketInner+f.GasketOuter) / 4
	ring.GasketOffsetMm = middle - radius
	return ring, foundationMPaPerMm * float64(f.GasketOuter-f.GasketInner) / 2 * middle / radius, nil
}

func (f Flange) widthMm() float64 { return float64(f.Outer-f.Bore) / 2 }

func (f Flange) radiusMm() float64 { return float64(f.Outer+f.Bore) / 4 }

// torsionNmm2 is G·J of the rectangular cross-section.
func (f Flange) torsionNmm2() float64 {
	shear := float64(f.Part.Elastic) / (2 * (1 + f.Part.Poisson))
	b, t := f.widthMm(), float64(f.Part.Thickness)
	long, short := math.Max(b, t), math.Min(b, t)
	slim := short / long
	beta := 1.0/3 - 0.21*slim*(1-slim*slim*slim*slim/12) // Roark, 7th ed., table 10.1, case 4, within 0.5 %
	return shear * beta * long * short * short * short
}

// hubN is the resistance of a long pipe behind the flange to its roll, in N·mm
// per mm of circumference and radian.
func (f Flange) hubN() float64 {
	if f.PipeWall == 0 {
		return 0
	}
	wall, r := float64(f.PipeWall), float64(f.PipeRadius)
	one := 1 - f.Part.Poisson*f.Part.Poisson
	beta := math.Pow(3*one/(r*wall*r*wall), 0.25) // Timoshenko and Woinowsky-Krieger, eq. (275)
	rigidity := float64(f.Part.Elastic) * wall * wall * wall / (12 * one)
	return 2 * beta * rigidity * r / f.radiusMm() // edge moment of a long shell: M = 2βD·slope
}

func (f Flange) check() error {
	if !(f.Bore > 0 && f.Outer > f.Bore && !math.IsInf(float64(f.Outer), 1)) {
		return finding.Failed(NoFlange, finding.Values{"outer": f.Outer, "bore": f.Bore})
	}
	if !(f.BoltCircle > f.Bore && f.BoltCircle < f.Outer) {
		return finding.Failed(CircleOff, finding.Values{"circle": f.BoltCircle, "bore": f.Bore, "outer": f.Outer})
	}
	if !f.FullFace() && !(f.GasketInner > 0 && f.GasketOuter > f.GasketInner && f.GasketOuter <= f.Outer) {
		return finding.Failed(GasketOff, finding.Values{"inner": f.GasketInner, "outer": f.GasketOuter, "most": f.Outer})
	}
	if f.PipeWall > 0 {
		return positive(quantity{"pipe radius", float64(f.PipeRadius), "mm"})
	}
	return nil
}
