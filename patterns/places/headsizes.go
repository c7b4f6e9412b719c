package places

import (
	"drawdown/geometry"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/head"
)

// size is the space that a fastener takes, in millimetres across; 0 means
// unknown.
type size struct {
	through float64 // its hole, or its shank if the file gives no hole
	hole    bool    // through is the hole
	head    float64 // the least that its head, nut or washer covers
}

func sizes(p Part) []size {
	byKind := map[string]size{}
	for _, k := range p.Kinds {
		byKind[k.Name] = sizeOf(k)
	}
	return geometry.Mapped(p.Joint.Fasteners, func(f geometry.Fastener) size { return byKind[f.Kind] })
}

func sizeOf(k plan.Kind) size {
	s := size{through: max(float64(k.Hole), k.MajorMm()), hole: k.Hole > 0}
	s.head = max(float64(max(k.HeadAcross, k.NutAcross)), float64(k.WasherFace))
	if k.HeadAcross == 0 && k.NutAcross == 0 && k.Thread != nil {
		s.head = max(s.head, standardHead(k))
	}
	return s
}

// standardHead returns the width across flats of a hexagon head, or the bearing
// face of another: less than the heads themselves, so an overlap of these is
// certain.
func standardHead(k plan.Kind) float64 {
	if k.HeadForm == "" || k.HeadForm == head.Hexagon {
		across, _, err := head.HexagonAcross(*k.Thread)
		if err != nil {
			return 0
		}
		return float64(across)
	}
	face, _, err := head.Face(*k.Thread, k.HeadForm)
	if err != nil {
		return 0
	}
	return float64(face)
}
