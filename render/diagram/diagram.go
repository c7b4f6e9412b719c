// Package diagram draws the part: outline, bores, dowels, fastener marks with
// numbers, and the path that shows the order. It takes a plan and a box on the
// page and returns scene items. Nothing is drawn outside the box.
//
// It may import geometry, sequence, plan, scene and font packages. It does not
// know the paper, and it uses only the words it is given.
package diagram

import (
	"cmp"
	"drawdown/geometry"
	"drawdown/render/diagram/space"
	"drawdown/render/scene"
	"drawdown/sequence/plan"
)

// Part says what to draw, and where.
type Part struct {
	Plan plan.Plan
	// Order lists the fasteners in the order of their numbers, from 1. It is
	// used only if Show is Numbers.
	Order []int
	// Called holds a number for each fastener that replaces the one from the
	// order in its mark. Nil keeps the numbers of the order.
	Called []int
	Show   Show
	// Words holds a word for each fastener, drawn if Show is Words. Empty
	// strings are left out.
	Words []string
	// Widest is the widest word among several drawings that share one mark
	// size. If empty, the words of this drawing set the size.
	Widest string
	// Beside holds a second, small text for each fastener, such as the
	// tightening number on a loosening card or the cast number. Empty strings
	// are left out; nil draws none.
	Beside []string
	// Front is the word at the arrow to the front of the machine. If empty, the
	// arrow has no word.
	Front string
	Box   scene.Box
	// Thick reports which fasteners will have marks with a thick edge; nil
	// means none.
	Thick []bool
	// SmallEm is the em of the small words, in millimetres; 0 means the
	// default.
	SmallEm float64

	// Modest allows marks smaller than on a card, so that they do not hide the
	// part.
	Modest bool
	// NoArrows leaves the arrows out.
	NoArrows bool

	piece *cutout // nil for the whole part
}

// Drawing is the finished drawing of a part.
type Drawing struct {
	Items []scene.Item
	// Path reports that arrows show the order.
	Path bool
	// Led reports that the marks are too small for text. Numbers or words are
	// outside them, on leader lines where crowded.
	Led bool
	// Unplaced lists the fasteners whose number or word did not fit, by index
	// in the joint. Dropped lists the labels that did not fit.
	Unplaced []int
	Dropped  []string
	// BesideLeftOut counts the small numbers that did not fit. Alike reports
	// that all of them are on the same side of their marks.
	BesideLeftOut int
	Alike         bool
	// Hidden reports that the marks cover too much of the outline or of a bore
	// to recognize it.
	Hidden bool
}

const (
	plentyAir = 0.5 // preferred clearance around a text, in millimetres
	smallEm   = 3.0 // default em of the small words, in millimetres
)

type sketch struct {
	req     Part
	view    view
	marks   []mark
	numbers []int // of each fastener
	space   *space.Space
	bounds  geometry.Box // of the part
	strings []float64    // direction across the string at each fastener; nil until computed
	along   []int        // fasteners numbered along their strings; nil until computed
	rimmed  []bool       // whether no fastener is further out; nil until computed
	nearest float64      // least distance between two fasteners of the part; 0 until computed
	path    []scene.Item
	edges   [][]scene.Point        // of the part and its openings, as drawn
	holes   []hole                 // bores and dowels, as drawn
	rings   map[string]scene.Point // of stations, by name
	looks   int                    // left for the search
	worded  int                    // number of words on the part
	out     Drawing
}

// Led reports what Draw would in Drawing.Led, without drawing.
func (req Part) Led() bool { return newSketch(req).sizes()[0].led }

// Draw draws the part. It places things in order of importance: marks and
// numbers, then the path, then small numbers and labels where they fit. If
// slightly smaller numbers make room for the path, it uses them.
func Draw(req Part) Drawing {
	first := newSketch(req)
	sizes := first.sizes()
	if first.paths() {
		for _, z := range sizes {
			if s := first.again(); s.arrange(z) {
				return s.unlessNameless(s.finish(z))
			}
		}
	}
	if req.Modest {
		if d, ok := first.modest(sizes); ok {
			return d
		}
	}
	best, chosen := first, sizes[0]
	best.arrange(chosen)
	left := best.looks
	for _, z := range sizes[1:] {
		if len(best.out.Unplaced) == 0 || first.count() > hopeless || left <= 0 {
			break
		}
		if z.edge > chosen.edge && len(best.out.Unplaced)*5 > best.count() && !best.mostlyStrung() {
			continue // the middle is too full; a smaller part makes it worse
		}
		s := best.again()
		s.looks = left
		s.arrange(z)
		left = s.looks
		if len(s.out.Unplaced) < len(best.out.Unplaced) {
			best, chosen = s, z
		}
	}
	return best.finish(chosen)
}

// modest draws the part with the largest marks that do not hide it.
func (s *sketch) modest(sizes []size) (d Drawing, ok bool) {
	for _, z := range sizes {
		if s := s.again(); !z.led {
			s.arrange(z)
			if !s.out.Hidden {
				return s.finish(z), true
			}
		}
	}
	return Drawing{}, false
}

// unlessNameless returns the drawing with arrows, unless the arrows displace
// most words on the part. Caps can only be told apart by their names.
func (s *sketch) unlessNameless(arrows Drawing) Drawing {
	if 2*len(arrows.Dropped) <= s.worded {
		return arrows
	}
	req := s.req
	req.NoArrows = true
	if plain := Draw(req); 2*len(plain.Dropped) <= s.worded && len(plain.Unplaced) == 0 {
		return plain
	}
	return arrows
}

func newSketch(req Part) *sketch {
	req.SmallEm = cmp.Or(req.SmallEm, smallEm)
	s := &sketch{req: req, bounds: partBounds(req.Plan.Joint), space: space.New(req.Box, len(req.Plan.Joint.Fasteners)), looks: mostLooks}
	s.numbers = make([]int, s.count())
	if req.Show == Numbers {
		for k, i := range req.Order {
			s.numbers[i] = k + 1
		}
	}
	if req.piece != nil {
		s.numbers, s.bounds = req.piece.numbers, req.piece.window
		s.looks = looksInPiece * s.count()
	}
	return s
}

// again returns a new sketch for another size, with the facts already computed
// about the part.
func (s *sketch) again() *sketch {
	next := newSketch(s.req)
	next.strings, next.along, next.rimmed, next.nearest = s.strings, s.along, s.rimmed, s.nearest
	return next
}

// arrange places marks, numbers and the path, and reports whether there is a
// path.
func (s *sketch) arrange(z size) bool {
	s.view, s.out.Led = s.fitWith(z), z.led
	s.placeMarks(z)
	s.drawPart(z)
	s.out.Hidden = s.hidden()
	s.placeLed(z)
	s.path = s.planPath()
	return s.out.Path
}

func (s *sketch) finish(z size) Drawing {
	s.drawClusters()
	s.drawWords()
	s.add(s.path...)
	s.drawMarks(z)
	return s.out
}

func (s *sketch) add(items ...scene.Item) { s.out.Items = append(s.out.Items, items...) }

// name is the fastener's id, by which the layout check links its mark, number
// and leader.
func (s *sketch) name(fastener int) string { return s.req.Plan.Joint.Fasteners[fastener].ID }
