// Package geometry describes where the fasteners of a joint are and the shape
// of the part: points, outlines, mirror, rings, generators. All lengths are in
// millimetres; x points right and y up in the view. The package is pure: it
// uses no files, no paper and no clock.
package geometry

// Fastener is one bolt, screw or nut of a joint.
type Fastener struct {
	ID   string
	Kind string // name of a fastener kind of the joint
	At   Point
	Cast int // number cast or marked on the part itself; 0 for none
	// Mark is what somebody wrote beside it with chalk or paint. It is only
	// shown; it does not affect the order.
	Mark string
}

// Cluster is a set of fasteners that are tightened together, such as the two
// bolts of a cam cap.
type Cluster struct {
	Name string
	Of   []string // fastener ids
	// Unloaded reports that no spring pushes against this cluster. It comes off
	// last and goes on first, unless the joint says otherwise.
	Unloaded bool
}

// Bore is a large hole, drawn with its centre lines.
type Bore struct {
	Centre   Point
	Diameter float64
	Label    string
	Through  bool // an opening of the part itself, not only of what it covers
}

// Dowel is a locating pin.
type Dowel struct {
	Centre   Point
	Diameter float64
}

// Label is text on the drawing of the part.
type Label struct {
	Text string
	At   Point
}

// Station is the position of a part that must go back where it came from.
type Station struct {
	ID    string
	At    Point
	Label string
}

// Front is the side of the view that faces the front of the machine.
type Front string

const (
	FrontUnknown Front = ""
	FrontLeft    Front = "left"
	FrontRight   Front = "right"
	FrontTop     Front = "top"
	FrontBottom  Front = "bottom"
)

// Joint is a part and the fasteners that hold it.
type Joint struct {
	Fasteners []Fastener
	Clusters  []Cluster
	// UnloadedFirstOff reports that clusters without spring load come off first
	// and go on last.
	UnloadedFirstOff bool
	Outline          [][]Point // closed paths; empty if the file gives none
	Bores            []Bore
	Dowels           []Dowel
	Labels           []Label
	Stations         []Station
	Front            Front
}

// Points returns the places of the fasteners, in their order in the joint.
func (j Joint) Points() []Point {
	return Mapped(j.Fasteners, func(f Fastener) Point { return f.At })
}

// PointsOf returns the places of some of the fasteners.
func (j Joint) PointsOf(fasteners []int) []Point {
	return Mapped(fasteners, func(i int) Point { return j.Fasteners[i].At })
}

// IDs returns the ids of some of the fasteners.
func (j Joint) IDs(fasteners []int) []string {
	ids := make([]string, len(fasteners))
	for k, i := range fasteners {
		ids[k] = j.Fasteners[i].ID
	}
	return ids
}

// Index maps the id of each fastener to its index.
func (j Joint) Index() map[string]int {
	index := make(map[string]int, len(j.Fasteners))
	for i, f := range j.Fasteners {
		index[f.ID] = i
	}
	return index
}
