// Package family recognizes the layout that places form: filled rows, a
// perimeter, a circle. Places that are measured slightly off, or missing, do
// not change the family. Its results are figures and lists of places;
// render/words turns them into sentences.
package family

import "drawdown/geometry"

// Family is a kind of layout.
type Family string

const (
	Row       Family = "row"       // on one line
	Grid      Family = "grid"      // filled rows and columns, as on a head
	Perimeter Family = "perimeter" // along the sides of a rectangle, with its corners
	Curve     Family = "curve"     // along one closed edge: oval, D, triangle
	Circle    Family = "circle"    // evenly spaced on one circle
	Circles   Family = "circles"   // concentric circles
	Flanges   Family = "flanges"   // separate flanges on one part
	Free      Family = "free"      // any other layout
)

// All lists the families that a pattern file can name.
var All = []Family{Row, Grid, Perimeter, Curve, Circle, Circles, Flanges, Free}

// Seen is a family with the figures that decided it. Lists hold indices into
// the given places.
type Seen struct {
	Family Family
	Named  bool // by the user, regardless of the places

	// Layout holds the places moved to their exact positions if the family is
	// regular.
	Layout geometry.Layout

	SpacingMm float64
	// OffMm is the largest distance of a place from the shape: the line, the
	// rows, the circle, the sides.
	OffMm float64
	// Missing is the number of empty places of a grid or circle.
	Missing int

	Rings   [][]int // of a circle or circles, from the inside out
	Edge    []int   // of a perimeter or curve, in order along it
	Corners []int   // of a perimeter
	Inner   []int   // inside a perimeter or curve
	Parts   [][]int // of flanges, along the part
}

// Of returns the family of places.
func Of(points []geometry.Point) Seen {
	s := newSeer(points)
	for _, look := range []func() (Seen, bool){s.row, s.circle, s.grid, s.looseCircle, s.flanges, s.perimeter, s.circles, s.curve} {
		if seen, ok := look(); ok {
			return s.finish(seen)
		}
	}
	return s.finish(Seen{Family: Free})
}

// As returns the places seen as a family that the user names, or as Of does if
// named is empty. If they do not fit the family, it fills in what it can.
func As(points []geometry.Point, named Family) Seen {
	if named == "" {
		return Of(points)
	}
	s := newSeer(points)
	s.named = true
	looks := map[Family]func() (Seen, bool){
		Row: s.row, Grid: s.grid, Circle: s.looseCircle, Circles: s.circles,
		Perimeter: s.perimeter, Curve: s.curve, Flanges: s.flanges,
	}
	seen := Seen{Family: Free}
	if look := looks[named]; look != nil {
		seen, _ = look()
	}
	seen.Family, seen.Named = named, true
	return s.finish(seen)
}

// seer examines one set of places.
type seer struct {
	points  []geometry.Point
	spacing float64
	layout  geometry.Layout // if regular
	rows    geometry.Layout // rows found with the loose tolerance; empty if there are none
	named   bool            // the user named the family: every deviation is accepted
	round   []int           // through all places; nil until computed
}

func newSeer(points []geometry.Point) *seer {
	s := &seer{points: points, spacing: geometry.Spacing(points), layout: geometry.NewLayout(points)}
	s.rows, _ = geometry.LooseRows(points)
	return s
}

// finish fills in what all families have.
func (s *seer) finish(seen Seen) Seen {
	seen.SpacingMm = s.spacing
	if seen.Layout.Points == nil {
		seen.Layout = s.layout
	}
	return seen
}

// off returns the largest distance that a place was moved.
func off(points, moved []geometry.Point) float64 {
	most := 0.0
	for i, p := range points {
		most = max(most, p.Distance(moved[i]))
	}
	return most
}
