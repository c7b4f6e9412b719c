package tray

import (
	"fmt"

	"drawdown/geometry/unit"
	"drawdown/render/scene"
	"drawdown/render/words"
	"drawdown/sequence/plan"
	bolthead "drawdown/sequence/tension/head"
)

// head is the outline of a fastener on its spot.
type head struct {
	across  float64 // millimetres: across flats, or diameter
	hexagon bool
	washer  bool   // of a washer, or of the bearing face
	nut     bool   // of a stud's nut
	source  string // a standard; "": see known
	known   bool   // the file states the size
}

// unknownAcross is the diameter drawn if neither the file nor a standard gives
// a size.
const unknownAcross = 14.0

// headOf returns the size stated by the file, the larger of head and washer;
// otherwise that of the standard head for the thread; otherwise one and a half
// times the thread (common practice, no source).
func headOf(k plan.Kind) head {
	switch {
	case k.WasherFace > 0 && k.WasherFace >= k.TurnedAcross():
		return head{across: float64(k.WasherFace), washer: true, known: true}
	case k.TurnedAcross() > 0:
		return head{across: float64(k.TurnedAcross()), hexagon: true, nut: k.Stud(), known: true}
	case k.Thread == nil:
		return head{across: unknownAcross}
	}
	if k.HeadForm == "" || k.HeadForm == bolthead.Hexagon {
		if across, standard, err := bolthead.HexagonAcross(*k.Thread); err == nil {
			return head{across: float64(across), hexagon: true, source: standard}
		}
	} else if face, standard, err := bolthead.Face(*k.Thread, k.HeadForm); err == nil {
		return head{across: float64(face), source: standard}
	}
	return head{across: 1.5 * k.Thread.MajorMm}
}

func (h head) words(w *words.Catalogue) string {
	size := w.Figure(unit.Length(h.across).String())
	switch {
	case !h.known && h.source == "":
		return fmt.Sprintf(w.Tray.NoSize, size)
	case h.nut:
		size = fmt.Sprintf(w.Tray.Nut, size)
	case h.hexagon:
		size = fmt.Sprintf(w.Tray.Hexagon, size)
	case h.washer:
		size = fmt.Sprintf(w.Tray.Washer, size)
	default:
		size = fmt.Sprintf(w.Tray.RoundHead, size)
	}
	if h.known {
		return size
	}
	return size + ", " + h.source
}

func (h head) path(c scene.Point, reduced float64) scene.Path {
	r := h.across / 2 / reduced
	if h.hexagon {
		const corner = 1.1547005383792515 // across corners divided by across flats: 2/√3
		return scene.Polygon(c.X, c.Y, r*corner, 6, 0)
	}
	return scene.Circle(c.X, c.Y, r)
}
