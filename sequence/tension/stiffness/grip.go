package stiffness

import (
	"fmt"
	"math"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/strength"
)

// StiffnessMethod names a way to work out the stiffness of bolt and members.
type Method string

const (
	DeformationCone Method = "VDI 2230" // with head and engaged thread, cone by slenderness; the default
	ThirtyDegrees   Method = "Shigley"  // shank and thread within the grip, cones of 30°
)

// StiffnessMethods lists the ways that can be named.
var StiffnessMethods = []Method{DeformationCone, ThirtyDegrees}

// Layer is one clamped part; a washer is one too, but for that of the bolt.
type Layer struct {
	Thickness unit.Length
	Material  string // as written: steel, grey cast iron, cast aluminium, 70 GPa; empty: steel
}

// Section is a stretch of the bolt's shank.
type Section struct{ Length, Diameter unit.Length }

// Grip is what a bolt clamps and how it is held. Zero values are unknown, and
// are replaced by an assumption that the result names; only the layers are
// required.
type Grip struct {
	Layers []Layer // from the head down, without the bolt's own washer and the part that holds the thread

	TappedIn   string      // material of the part the bolt is screwed into; empty: a through bolt with a nut
	Engagement unit.Length // in the tapped part

	BoltLength unit.Length // from under the head to the end
	FullThread bool        // threaded up to the head
	Shank      []Section   // from the head down; what is left of the grip is thread
	Reach      unit.Length // of the members around the bolt, across; not stated: wide
	BoltGPa    float64     // modulus of elasticity of the bolt in GPa

	Method Method
}

// Simple is a through bolt with one clamped part of the thickness.
func Simple(thickness unit.Length) Grip {
	return Grip{Layers: []Layer{{Thickness: thickness}}}
}

// settledGrip is a grip with nothing left open.
type completedGrip struct {
	layers     []layer
	thickness  unit.Length // of all layers
	tappedIn   *strength.Material
	shank      []Section
	freeThread unit.Length // within the grip
	reach      unit.Length
	elastic    unit.Stress // of the bolt
	method     Method
	assumed    []string
}

// mostGrip bounds the grip in diameters of the thread, to find slips of the
// unit (common practice, no source: tie rods reach a hundred diameters).
const mostGrip = 200

func completeGrip(s screw.Completed, g Grip) (completedGrip, error) {
	r := completedGrip{reach: g.Reach, method: g.Method}
	for _, step := range []func(screw.Completed, Grip) error{r.settleLayers, r.settleTapped, r.settleMethod, r.settleModulus, r.settleShank, r.settleReach} {
		if err := step(s, g); err != nil {
			return completedGrip{}, err
		}
	}
	return r, nil
}

func (r *completedGrip) settleLayers(s screw.Completed, g Grip) error {
	if len(g.Layers) == 0 {
		return fmt.Errorf("the grip is missing; state the thickness of what is clamped, such as 40 mm")
	}
	if err := r.layWasher(s); err != nil {
		return err
	}
	for i, l := range g.Layers {
		material, err := r.material(l.Material, fmt.Sprintf("layer %d", i+1))
		if err != nil {
			return err
		}
		if !(l.Thickness > 0 && !math.IsInf(float64(l.Thickness), 1)) {
			return fmt.Errorf("layer %d is %v thick; allowed: above 0", i+1, l.Thickness)
		}
		r.layers = append(r.layers, layer{l.Thickness, material})
	}
	r.thickness = thicknessOf(r.layers)
	if most := unit.Length(s.Thread.MajorMm) * mostGrip; r.thickness > most {
		return fmt.Errorf("a grip of %v does not go with %s; allowed: up to %v", r.thickness, s.Thread.Name, most)
	}
	return nil
}

// layWasher puts the bolt's own washer on top of the layers.
func (r *completedGrip) layWasher(s screw.Completed) error {
	washer := s.Bearing.Washer
	if washer == nil {
		return nil
	}
	steel, err := r.material("steel", "washer")
	if err != nil {
		return err
	}
	r.layers = append(r.layers, layer{washer.Thickness, steel})
	r.assumed = append(r.assumed, fmt.Sprintf("the steel washer of %v lies on top of the stated grip, assumed", washer.Thickness))
	return nil
}

func (r *completedGrip) material(text, where string) (strength.Material, error) {
	if text == "" {
		r.assumed = append(r.assumed, where+" of steel, assumed")
		text = "steel"
	}
	m, err := strength.ParseMaterial(text)
	if err != nil {
		return strength.Material{}, fmt.Errorf("%s: %w", where, err)
	}
	return m, nil
}

func (r *completedGrip) settleTapped(s screw.Completed, g Grip) error {
	if g.TappedIn == "" {
		if g.Engagement != 0 {
			return fmt.Errorf("an engagement of %v is stated without the part that is tapped; state its material, such as cast aluminium", g.Engagement)
		}
		return nil
	}
	m, err := r.material(g.TappedIn, "tapped part")
	if err != nil {
		return err
	}
	r.tappedIn = &m
	if g.Engagement < 0 || math.IsNaN(float64(g.Engagement)) {
		return fmt.Errorf("engagement %v; allowed: above 0", g.Engagement)
	}
	return nil
}

func (r *completedGrip) settleMethod(_ screw.Completed, g Grip) error {
	switch g.Method {
	case "":
		r.method = DeformationCone
	case DeformationCone, ThirtyDegrees:
	default:
		return fmt.Errorf("stiffness by %q is not known; allowed: %s, %s", g.Method, DeformationCone, ThirtyDegrees)
	}
	return nil
}

// Moduli of bolt steels in MPa: VDI 2230-1, table A9 (value from memory).
const (
	steelBolt      unit.Stress = 205e3
	austeniticBolt unit.Stress = 200e3
)

func (r *completedGrip) settleModulus(s screw.Completed, g Grip) error {
	switch {
	case g.BoltGPa == 0 && s.Strength.Austenitic:
		r.elastic = austeniticBolt
	case g.BoltGPa == 0:
		r.elastic = steelBolt
	case g.BoltGPa >= 1 && g.BoltGPa <= 700:
		r.elastic = unit.Stress(g.BoltGPa * 1000)
		return nil
	default:
		return fmt.Errorf("a modulus of %g GPa is not that of a bolt; allowed: 1 to 700", g.BoltGPa)
	}
	r.assumed = append(r.assumed, fmt.Sprintf("bolt modulus of elasticity %.0f GPa, assumed", float64(r.elastic)/1000))
	return nil
}

func (r *completedGrip) settleReach(s screw.Completed, g Grip) error {
	if g.Reach == 0 {
		r.reach = unit.Length(math.Inf(1))
		r.assumed = append(r.assumed, "clamped parts wide around the bolt, assumed")
		return nil
	}
	if hole := s.Bearing.Part.Hole; !(g.Reach > hole && !math.IsInf(float64(g.Reach), 1)) {
		return fmt.Errorf("clamped parts %v across do not hold the hole of %v; allowed: more than the hole", g.Reach, hole)
	}
	return nil
}
