package stiffness

import (
	"math"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
)

// plasticBolt is a bolt beyond yield: each section hardens from the yield
// stress to the tensile strength, under tension and torsion together.
type plasticBolt struct {
	yield, tensile unit.Stress
	uniform        float64 // plastic strain at the tensile strength
	neckingMm      float64 // stretch from the greatest load until the bolt breaks
	parts          []plasticPart
}

// plasticPart is a section of one diameter.
type plasticPart struct {
	Section
	areaMm2 float64
	torsion float64 // combined stress divided by tensile stress
}

// plastic returns the sections that may yield: the free thread with the part of
// the engaged thread that stretches too (0.5 d, as in VDI 2230-1 below yield),
// and the shank.
func (r completedGrip) plastic(s screw.Completed, threadFriction float64) plasticBolt {
	p := plasticBolt{yield: s.Strength.Yield, tensile: s.Strength.Hardened(), uniform: s.Strength.UniformStrain()}
	p.neckingMm = s.Strength.NeckingDiameters() * s.Thread.MajorMm
	arm := screw.ThreadArmMm(s.Thread, threadFriction, s.Equation)
	add := func(length unit.Length, diameterMm float64) {
		ratio := 3 * arm / diameterMm // VDI 2230-1, section 5.4.3: τ/σ with WP = π d³/12, as in PreloadAtYieldShare
		p.parts = append(p.parts, plasticPart{Section{length, unit.Length(diameterMm)}, math.Pi / 4 * diameterMm * diameterMm, math.Sqrt(1 + 3*ratio*ratio)})
	}
	add(r.freeThread+unit.Length(0.5*s.Thread.MajorMm), s.Thread.StressDiameterMm())
	for _, part := range r.shank {
		add(part.Length, float64(part.Diameter))
	}
	return p
}

// combined returns the stress of tension and torsion in a part.
func (p plasticPart) combined(force unit.Force) unit.Stress {
	return unit.Stress(float64(force) / p.areaMm2 * p.torsion) // von Mises: √(σ² + 3 τ²)
}

// strain returns the plastic strain of a part.
func (p plasticBolt) strain(part plasticPart, force unit.Force) float64 {
	over := float64((part.combined(force) - p.yield) / (p.tensile - p.yield))
	if over <= 0 {
		return 0
	}
	// Hardening as a parabola that starts at the yield stress and is level at
	// the tensile strength (Considère: the load is greatest there): σ = Re +
	// (Rm − Re)(1 − (1 − ε/εu)²).
	return p.uniform * (1 - math.Sqrt(1-math.Min(over, 1)))
}

// stretch returns the permanent stretch of the whole bolt, in mm.
func (p plasticBolt) stretch(force unit.Force) float64 {
	var sum float64
	for _, part := range p.parts {
		sum += float64(part.Length) * p.strain(part, force)
	}
	return sum
}

// weakest returns the part that bears least.
func (p plasticBolt) weakest() plasticPart {
	weakest := p.parts[0]
	for _, part := range p.parts {
		if part.areaMm2/part.torsion < weakest.areaMm2/weakest.torsion {
			weakest = part
		}
	}
	return weakest
}

// reaches returns the force at which the weakest part has the stress.
func (p plasticBolt) reaches(stress unit.Stress) unit.Force {
	weakest := p.weakest()
	return unit.Force(float64(stress) * weakest.areaMm2 / weakest.torsion)
}
