// Package diagram draws the part: outline, bores, dowels, the marks of the
// fasteners with their numbers, and the path that shows the order. It takes a
// plan and a box on the page and returns scene items; nothing that it draws
// leaves the box.
//
// It may import places, orders, plans, scenes and type. It knows no paper, and
// only the words that it is given.
package diagram

import (
	"cmp"
	"drawdown/geometry"
	"drawdown/render/diagram/space"
	"drawdown/render/scene"
	"drawdown/sequence/plan"
)

// Part is what to draw, and where.
type Part struct {
	Plan plan.Plan
	// Order lists the fasteners as they are numbered here, from 1. It is used
	// only where Show is Numbers.
	Order []int
	// Called are the numbers in the marks where they are not those of the order,
	// one for each fastener; nil for those of the order.
	Called []int
	Show   Show
	// Words are what stands in the marks where Show is Words, one for each
	// fastener; empty strings are left out.
	Words []string
	// Widest is the widest word of several drawings that have marks of one size;
	// empty for that of this one.
	Widest string
	// Beside is a second, small number for each fastener, such as the
	// tightening number on a loosening card or the cast number; empty strings
	// are left out. Nil draws none.
	Beside []string
	// Front is the word at the arrow to the front of the machine; without it the
	// arrow stands alone.
	Front string
	Box   scene.Box
	// Thick says of which fasteners the marks will have a thick edge; nil: of none.
	Thick []bool
	// SmallEm is the em of the small words, in millimetres; 0 asks for the usual.
	SmallEm float64

	// Modest lets the marks be smaller than on a card rather than hide the part.
	Modest bool
	// NoArrows draws no arrows, though they would find their way.
	NoArrows bool

	piece *cutout // nil for the whole part
}

// Drawing is the part as drawn.
type Drawing struct {
	Items []scene.Item
	// Path says that arrows show the order.
	Path bool
	// Led says that the marks are too small to write in: numbers or words stand
	// outside them, on leader lines where crowded.
	Led bool
	// Unplaced are the fasteners whose number or word found no room, by their
	// index in the joint; Dropped are the labels that found none.
	Unplaced []int
	Dropped  []string
	// BesideLeftOut counts the small numbers that found no room; Alike says that all
	// stand on one side of their marks.
	BesideLeftOut int
	Alike         bool
	// Hidden says that the marks leave too little of the outline or of a bore to
	// know it by.
	Hidden bool
}

const (
	plentyAir = 0.5 // kept free round a text where there is room, in millimetres
	smallEm   = 3.0 // the em of the small words where nothing else is asked for, in millimetres
)

type sketch struct {
	req     Part
	view    view
	marks   []mark
	numbers []int // of each fastener
	space   *space.Space
	bounds  geometry.Box // of the part
	strings []float64    // across the strings of fasteners; nil until asked for
	along   []int        // fasteners numbered along their strings; nil until asked for
	rimmed  []bool       // fasteners with none further out; nil until asked for
	nearest float64      // distance between two fasteners of the part; 0 until asked for
	path    []scene.Item
	edges   [][]scene.Point        // of the part and its openings, as drawn
	holes   []hole                 // bores and dowels, as drawn
	rings   map[string]scene.Point // of stations, by the names of these things
	looks   int                    // left to search with
	worded  int                    // words that the part has
	out     Drawing
}

// Draw draws the part. Things are placed in the order of their importance:
// marks and numbers, then the path, then small numbers and labels where there
// is room. Numbers are made a little smaller where that lets the path through.
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
			continue // the middle is too full, and a smaller part makes it worse
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

// unlessNameless takes a drawing with arrows, unless most words on the part find
// no room beside them and do without: caps are told apart by their names.
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

// again begins anew with what is known of the part, to draw it in another size.
func (s *sketch) again() *sketch {
	next := newSketch(s.req)
	next.strings, next.along, next.rimmed, next.nearest = s.strings, s.along, s.rimmed, s.nearest
	return next
}

// arrange places marks, numbers and the path, and says whether there is a path.
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

// name joins a fastener's mark, number and leader for the layout check.
func (s *sketch) name(fastener int) string { return s.req.Plan.Joint.Fasteners[fastener].ID }
