package stiffness

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/strength"
)

// Layer is one clamped part, or a washer other than that of the bolt.
type Layer struct {
	Thickness unit.Length
	Material  string // as written: steel, grey cast iron, cast aluminium, 70 GPa; "": steel
}

// Section is a section of the bolt's shank.
type Section struct{ Length, Diameter unit.Length }

// Grip is what a bolt clamps and how it is held. Zero values are unknown, and
// are replaced by an assumption that the result reports; only the layers are
// required.
type Grip struct {
	Layers []Layer // from the head down, without the bolt's own washer and the part with the thread

	TappedIn   string      // material of the part with the thread; "": a through bolt with a nut
	Engagement unit.Length // in the tapped part

	BoltLength unit.Length // from under the head to the end
	FullThread bool        // threaded up to the head
	Thread     unit.Length // length of the thread; 0: from the standard of the bolt
	Shank      []Section   // from the head down; the rest of the grip is thread
	Reach      unit.Length // width of the members around the bolt; 0: wide
}

// Simple is a through bolt with one clamped part of the given thickness.
func Simple(thickness unit.Length) Grip {
	return Grip{Layers: []Layer{{Thickness: thickness}}}
}

// completedGrip is a grip with nothing left open.
type completedGrip struct {
	layers     []layer
	thickness  unit.Length // of all layers
	tappedIn   *strength.Material
	shank      []Section
	freeThread unit.Length // within the grip
	reach      unit.Length
	elastic    unit.Stress // of the bolt
	assumed    []finding.Finding
}

// mostGrip limits the grip in diameters of the thread, to find wrong units
// (common practice, no source: tie rods reach a hundred diameters).
const mostGrip = 200

func completeGrip(s screw.Completed, g Grip) (completedGrip, error) {
	r := completedGrip{reach: g.Reach}
	for _, step := range []func(screw.Completed, Grip) error{r.settleLayers, r.settleTapped, r.settleModulus, r.settleShank, r.settleReach} {
		if err := step(s, g); err != nil {
			return completedGrip{}, err
		}
	}
	return r, nil
}

func (r *completedGrip) settleLayers(s screw.Completed, g Grip) error {
	if len(g.Layers) == 0 {
		return finding.Failed(NoGrip, nil)
	}
	if err := r.layWasher(s); err != nil {
		return err
	}
	for i, l := range g.Layers {
		material, err := r.material(l.Material, i+1)
		if err != nil {
			return finding.Failed(LayerOfUnknown, finding.Values{"layer": i + 1, "why": err})
		}
		if !(l.Thickness > 0 && !math.IsInf(float64(l.Thickness), 1)) {
			return finding.Failed(LayerRange, finding.Values{"layer": i + 1, "thickness": l.Thickness})
		}
		r.layers = append(r.layers, layer{l.Thickness, material})
	}
	r.thickness = thicknessOf(r.layers)
	if most := unit.Length(s.Thread.MajorMm) * mostGrip; r.thickness > most {
		return finding.Failed(GripTooLong, finding.Values{"grip": r.thickness, "thread": s.Thread.Name, "most": most})
	}
	return nil
}

// layWasher puts the bolt's own washer on top of the layers.
func (r *completedGrip) layWasher(s screw.Completed) error {
	washer := s.Bearing.Washer
	if washer == nil {
		return nil
	}
	steel, err := strength.ParseMaterial("steel")
	if err != nil {
		return err
	}
	r.layers = append(r.layers, layer{washer.Thickness, steel})
	r.assume(WasherOnGrip, finding.Values{"thickness": washer.Thickness})
	return nil
}

func (r *completedGrip) assume(code finding.Code, values finding.Values) {
	r.assumed = append(r.assumed, finding.Noted(code, values))
}

// material returns the material of a layer, numbered from 1.
func (r *completedGrip) material(text string, layer int) (strength.Material, error) {
	if text == "" {
		r.assume(LayerOfSteel, finding.Values{"layer": layer})
		text = "steel"
	}
	return strength.ParseMaterial(text)
}

func (r *completedGrip) settleTapped(s screw.Completed, g Grip) error {
	if g.TappedIn == "" {
		if g.Engagement != 0 {
			return finding.Failed(EngagementAlone, finding.Values{"engagement": g.Engagement})
		}
		return nil
	}
	m, err := strength.ParseMaterial(g.TappedIn)
	if err != nil {
		return finding.Failed(TappedOfUnknown, finding.Values{"why": err})
	}
	r.tappedIn = &m
	if g.Engagement < 0 || math.IsNaN(float64(g.Engagement)) {
		return finding.Failed(EngagementNegative, finding.Values{"engagement": g.Engagement})
	}
	return nil
}

// Moduli of bolt steels in MPa: VDI 2230-1, table A9 (value from memory).
const (
	steelBolt      unit.Stress = 205e3
	austeniticBolt unit.Stress = 200e3
)

func (r *completedGrip) settleModulus(s screw.Completed, _ Grip) error {
	r.elastic = steelBolt
	if s.Strength.Austenitic {
		r.elastic = austeniticBolt
	}
	r.assume(ModulusAssumed, finding.Values{"modulus": r.elastic})
	return nil
}

func (r *completedGrip) settleReach(s screw.Completed, g Grip) error {
	if g.Reach == 0 {
		r.reach = unit.Length(math.Inf(1))
		r.assume(WideAssumed, nil)
		return nil
	}
	if hole := s.Bearing.Part.Hole; !(g.Reach > hole && !math.IsInf(float64(g.Reach), 1)) {
		return finding.Failed(PartsTooNarrow, finding.Values{"reach": g.Reach, "hole": hole})
	}
	return nil
}
