// Package trace finds the holes and the outline of a gasket, or of a part, in a
// flat picture of it. The picture is split into part and background, each
// closed shape in the part is followed along its edge to a fraction of a pixel,
// and circles are fitted to the edges by least squares. Results are in
// millimetres, y upwards.
//
// An uncertain feature is returned with its doubt as a finding; nothing is left
// out silently. The package decides what is a hole, an opening or dirt, how the
// part is turned, and which scale to believe. It may import geometry, its holes
// and units; no file, no sheet.
package trace

import (
	"cmp"
	"image"
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/trace/fixes"
	"drawdown/geometry/unit"
)

// Tone says which of the two tones of a picture is the part.
type Tone string

const (
	ToneAuto  Tone = ""      // the tone that the picture's rim has not
	ToneDark  Tone = "dark"  // a dark part on a light ground
	ToneLight Tone = "light" // a light part on a dark ground
)

// Options set what counts as what. The zero Options are sound.
type Options struct {
	Tone Tone
	// SmallestMm is the smallest diameter of a hole: what is smaller is dust.
	// 0 for 2.5.
	SmallestMm float64
	// Holes says which diameters are for what.
	Holes holes.Rule
	// AsScanned leaves the part turned as it lies in the picture.
	AsScanned bool
	// TurnDeg turns the part anticlockwise, after it was laid level.
	TurnDeg float64
	// Mirrored says that the face that is seen from above lay away from the
	// camera: left and right are changed over.
	Mirrored bool
	// Fixes are the corrections of a person.
	Fixes fixes.Fixes
}

// Role is what a shape in the part is taken for.
type Role = holes.Use

const (
	Fastener      = holes.Fastener
	Dowel         = holes.Dowel
	Bore          = holes.Bore
	Port     Role = "port" // an opening that is not round, or round and for none of the rest
	Hole     Role = "hole" // round, of a size that may be for bolts or for something else
	Spot     Role = "spot" // too small and ragged for a hole; left out of the pattern
	// Candidate is a place that may be a hole: one of two routes saw it. It is left
	// out of the pattern.
	Candidate Role = "candidate"
)

// Shape is one closed shape found in the part.
type Shape struct {
	ID   string // F1, D1, B1, H1, P1, S1, C1: by role, in reading order
	Role Role
	At   geometry.Point // centre; of a port or spot that of its area
	// DiameterMm is that of the circle through the edge; of a port or spot
	// that of a circle of its area, of a slot its width.
	DiameterMm float64
	// ScatterMm is the standard deviation of the edge about the circle, over
	// the part of the edge that was kept.
	ScatterMm float64
	Kept      float64 // share of the edge that lies on the circle, 0 to 1
	Contrast  float64 // of the edge, as a share of the picture's
	Group     int     // of like diameters, from 0; -1 for what is not round
	Doubts    []finding.Finding
	Edge      []geometry.Point // simplified
	Pixel     geometry.Point   // centre in the picture, from the top left corner
	slot      bool
	was       string // its id before a person said what it is
	said      bool   // a person said what it is
	dropped   bool
}

// Round reports whether the shape is a circle, or a slot that takes a fastener.
func (s Shape) Round() bool { return s.Group >= 0 }

// Found is what a picture shows.
type Found struct {
	Shapes  []Shape // by role, then in reading order
	Dropped []Shape // what a person said is no hole: spots, by the ids they had
	Outline []geometry.Point
	// GroupsMm are the median diameters of the groups of round holes, the most
	// common first.
	GroupsMm []float64
	// Specks counts shapes smaller than the smallest hole, from SpeckMm across;
	// anything finer is treated as grain.
	Specks              int
	SeenSpecks          []geometry.Point // places of the largest, from 1 mm long
	SpeckMm, SmallestMm float64
	// TurnedDeg is how far the picture was turned, anticlockwise, to lie level.
	TurnedDeg float64
	// Straightened says that a direction stood out to turn it by.
	Straightened bool
	Tone         Tone
	// GreyLevels is the difference between part and background, of 255.
	GreyLevels float64
	// PixelMm is the side of a pixel in the middle of the part.
	PixelMm float64
	Doubts  []finding.Finding // about the picture as a whole
	// Taken says what sizes of hole were taken for, where that may surprise.
	Taken []finding.Finding
	// Scale says where the scale comes from, and ScaleOffMm how far the worst
	// known distance is missed.
	Scale      finding.Finding
	ScaleOffMm float64
	View       View
}

// Limits of a picture.
const (
	LeastSide     = 64 // pixels
	leastContrast = 24 // grey levels of 255 between part and background
	mostRagged    = 15 // pixels along the part's edge, by width and height of the picture
)

// Find traces a picture.
func Find(picture *image.Gray, frame Frame, o Options) (Found, error) {
	o.SmallestMm = cmp.Or(o.SmallestMm, 2.5)
	size := picture.Rect.Size()
	if size.X < LeastSide || size.Y < LeastSide {
		return Found{}, finding.Failed(SmallPicture, finding.Values{"width": size.X, "height": size.Y, "least": LeastSide})
	}
	if err := frame.check(size); err != nil {
		return Found{}, err
	}
	whole, place := picture, frame
	picture, frame = cropped(picture, frame, o.Fixes.Crop)
	size = picture.Rect.Size()
	light, err := measureLight(picture)
	if err != nil {
		return Found{}, err
	}
	m := split(picture, light, o.Tone)
	m.dropFibres(frame.pixelMm(float64(size.X)/2, float64(size.Y)/2))
	part, err := m.findPart(frame, o)
	if err != nil {
		return Found{}, err
	}
	t := tracer{picture: picture, light: light, mask: m, frame: frame, options: o}
	found := Found{Specks: part.specks, Tone: m.tone, GreyLevels: math.Round(light.contrast), Doubts: part.doubts}
	outer := t.edge(part.sheet)
	if len(outer.mm) > mostRagged*(size.X+size.Y) {
		return Found{}, finding.Failed(RaggedEdge, nil)
	}
	found.PixelMm = outer.side
	found.SpeckMm, found.SmallestMm = math.Sqrt(4*leastSpeck/math.Pi)*found.PixelMm, o.SmallestMm
	for _, hole := range part.holes {
		found.Shapes = append(found.Shapes, t.shape(hole))
	}
	for _, speck := range part.seen {
		at := speck.middle()
		found.SeenSpecks = append(found.SeenSpecks, frame.Mm(at.X, at.Y))
	}
	torn, outline := t.tornHoles(outer)
	found.Shapes = append(found.Shapes, torn...)
	t.secondRoute(&found, outer)
	found.sort(o.Holes)
	t.frame = place // the places in the picture are those of the whole one
	found.Doubts = append(found.Doubts, t.faintStretches(outer)...)
	t.place(&found, outline)
	found.lookInGaps(whole)
	found.number()
	if err := found.fix(o.Fixes, o.Holes, whole); err != nil {
		return Found{}, err
	}
	return found, nil
}

// Check says what keeps what was found from being a pattern.
func (f Found) Check() error {
	if slices.ContainsFunc(f.Shapes, func(s Shape) bool { return s.Role == Fastener }) {
		return nil
	}
	if sizes := f.openSizes(); len(sizes) > 0 {
		return finding.Failed(WhichBolts, finding.Values{"sizes": sizes})
	}
	return finding.Failed(NoFastener, nil)
}

// openSizes are the diameters of round holes that nobody said the use of.
func (f Found) openSizes() (sizes []unit.Length) {
	for _, size := range f.Sizes() {
		if size.Role == Hole {
			sizes = append(sizes, unit.Length(size.DiameterMm))
		}
	}
	return sizes
}

type tracer struct {
	picture *image.Gray
	light   light
	mask    *mask
	frame   Frame
	options Options
}
