package stiffness

import (
	"math"
	"slices"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension/strength"
)

// layer is a clamped part with its material resolved.
type layer struct {
	thickness unit.Length
	material  strength.Material
}

func thicknessOf(layers []layer) unit.Length {
	var sum unit.Length
	for _, l := range layers {
		sum += l.thickness
	}
	return sum
}

// pressedBody is the part of the members that the bolt compresses: a cone from
// the head down, and for a nut a second one from below, limited by the width of
// the members around the bolt.
type pressedBody struct {
	face, hole unit.Length // ring under the head
	outer      unit.Length // of the members around the bolt; infinite if they are wide
	tangent    float64     // of half the cone's angle
	oneCone    bool        // only at the head: the bolt is screwed into the lowest part
}

// resilience adds up slices of the body with constant material and form.
func (p pressedBody) resilience(layers []layer) Resilience {
	grip := thicknessOf(layers)
	cuts := p.cuts(layers)
	var sum Resilience
	for i := 1; i < len(cuts); i++ {
		top, bottom := cuts[i-1], cuts[i]
		if bottom <= top {
			continue
		}
		elastic := materialAt(layers, (top+bottom)/2).Elastic
		small := min(p.diameter(top, grip), p.diameter(bottom, grip))
		if p.diameter((top+bottom)/2, grip) >= p.outer {
			sum += SleeveResilience(bottom-top, p.outer, p.hole, elastic)
			continue
		}
		sum += FrustumResilience(bottom-top, small, p.hole, p.tangent, elastic)
	}
	return sum
}

// diameter returns the diameter of the body at a depth below the head.
func (p pressedBody) diameter(depth, grip unit.Length) unit.Length {
	from := depth
	if !p.oneCone {
		from = min(depth, grip-depth)
	}
	return min(p.face+2*from*unit.Length(p.tangent), p.outer)
}

// cuts returns the depths where the material or the form changes, ascending.
func (p pressedBody) cuts(layers []layer) []unit.Length {
	grip := thicknessOf(layers)
	cuts := []unit.Length{0, grip}
	var depth unit.Length
	for _, l := range layers {
		depth += l.thickness
		cuts = append(cuts, min(depth, grip))
	}
	if !p.oneCone {
		cuts = append(cuts, grip/2)
	}
	reach := max((p.outer-p.face)/(2*unit.Length(p.tangent)), 0) // where the cone reaches the rim
	if !math.IsInf(float64(reach), 1) && reach < grip {
		cuts = append(cuts, reach, grip-reach)
	}
	slices.Sort(cuts)
	return cuts
}

func materialAt(layers []layer, depth unit.Length) strength.Material {
	for _, l := range layers {
		if depth < l.thickness {
			return l.material
		}
		depth -= l.thickness
	}
	return layers[len(layers)-1].material
}
