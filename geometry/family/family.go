// Package family recognises the layout that places form: filled rows, a
// perimeter, a circle. Places that are measured slightly off, or missing, do
// not change the family. Its results are figures and lists of places;
// render/words turns them into sentences.
package family

import "drawdown/geometry"

// Family is a kind of layout.
type Family string

const (
	Row       Family = "row"       // one line
	Grid      Family = "grid"      // filled rows and columns, as on a head
	Perimeter Family = "perimeter" // along the sides of a rectangle, with its corners
	Curve     Family = "curve"     // along one closed edge: oval, D, triangle
	Circle    Family = "circle"    // even places of one circle
	Circles   Family = "circles"   // circles inside each other
	Flanges   Family = "flanges"   // separate flanges on one part
	Free      Family = "free"      // none of these
)

// All lists the families that a pattern file can name.
var All = []Family{Row, Grid, Perimeter, Curve, Circle, Circles, Flanges, Free}

// Seen is a family with the figures that decided for it. Lists hold indices of
// the places as they were given.
type Seen struct {
	Family Family
	Named  bool // by the user, whatever the places look like

	// Layout holds the places brought to true where the family is regular.
	Layout geometry.Layout

	SpacingMm float64
	// OffMm is how far the places lie off the shape at the most: off the line,
	// the rows, the circle, the sides.
	OffMm float64
	// Missing counts the places of a grid or circle that have no fastener.
	Missing int

	Rings   [][]int // of a circle or circles, inside out
	Edge    []int   // of a perimeter or curve, in their round
	Corners []int   // of a perimeter
	Inner   []int   // inside a perimeter or curve
	Parts   [][]int // of flanges, along the part
}

// Of sees the family of places.
func Of(points []geometry.Point) Seen {
	s := newSeer(points)
	for _, look := range []func() (Seen, bool){s.row, s.circle, s.grid, s.looseCircle, s.flanges, s.perimeter, s.circles, s.curve} {
		if seen, ok := look(); ok {
			return s.finish(seen)
		}
	}
	return s.finish(Seen{Family: Free})
}

// As sees places as a family that the user names; empty: as what they are. Where
// they lie as none of it, the family stands with what can be said of it.
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

// seer looks at one set of places.
type seer struct {
	points  []geometry.Point
	spacing float64
	layout  geometry.Layout // as far as it is regular
	rows    geometry.Layout // rows seen loosely; empty where there are none
	named   bool            // the family is named: nothing is too far off
	round   []int           // through all places; nil: not yet known
}

func newSeer(points []geometry.Point) *seer {
	s := &seer{points: points, spacing: geometry.Spacing(points), layout: geometry.NewLayout(points)}
	s.rows, _ = geometry.LooseRows(points)
	return s
}

// finish fills in what every family has.
func (s *seer) finish(seen Seen) Seen {
	seen.SpacingMm = s.spacing
	if seen.Layout.Points == nil {
		seen.Layout = s.layout
	}
	return seen
}

// off returns how far places were moved at the most.
func off(points, moved []geometry.Point) float64 {
	most := 0.0
	for i, p := range points {
		most = max(most, p.Distance(moved[i]))
	}
	return most
}
