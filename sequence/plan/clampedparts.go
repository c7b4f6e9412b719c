package plan

import (
	"cmp"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/unit"
)

// Clamped is what a file states about the parts that the fasteners clamp. It is
// needed to predict what tightening one fastener does to the others. Zero
// values mean unknown.
type Clamped struct {
	Part, Counterpart ClampedPart
	Gasket            Gasket
	Row               *Row    // a narrow part over one line of fasteners
	Flange            *Flange // a round flange
	BoltFlexibility   unit.Flexibility
	Service           Service
}

// Service is what the joint has to hold at work.
type Service struct {
	Pressure    unit.Stress // inside; 0: none
	Sealed      unit.Length // diameter that the pressure acts on; 0: not stated
	Load        unit.Force  // pulls the parts apart, besides the pressure
	Introduced  float64     // where the load enters, n of VDI 2230; 0: not stated
	Temperature *Temperature
}

// Temperature is that of the parts and the bolts at work, and of both when they
// were assembled.
type Temperature struct{ Part, Bolt, Assembled unit.Temperature }

// Stated reports whether the file says what the joint has to hold.
func (s Service) Stated() bool { return s != Service{} }

// ClampedPart is one of the parts.
type ClampedPart struct {
	Material  string
	Thickness unit.Length // the thickness that bends; for a ribbed or hollow part less than its height
}

// Gasket is the gasket between the parts.
type Gasket struct {
	Kind      string                        // as written; a known kind
	Stiffness unit.Span[unit.AreaStiffness] // on loading; takes precedence over the kind
	Strip     unit.Length                   // width of a gasket that follows the edge

	Inside, Outside      unit.Length // diameters of a ring; both 0: it covers the face
	Thickness            unit.Length // before it is compressed
	Seating, Work, Crush unit.Stress // least when tightened, least at work, greatest; 0: by the kind
}

// Ring reports whether the gasket is a ring of stated diameters.
func (g Gasket) Ring() bool { return g.Outside > 0 }

// Row is a narrow part as a beam on an elastic foundation.
type Row struct {
	Bending    unit.BendingStiffness
	Foundation unit.Span[unit.LineStiffness] // gasket and counterpart, per millimetre of the row
	Length     unit.Length
	Start      unit.Length // from the end of the part to the leftmost fastener, or to the lowest of several
}

// Flange is the dimensions of a round flange; its bolt circle is that of the
// fasteners.
type Flange struct {
	Outer, Bore              unit.Length // diameters
	GasketInner, GasketOuter unit.Length // diameters, of a raised face; both 0: the full face
	PipeWall, PipeRadius     unit.Length // of the pipe or hub behind it, to the middle of its wall
	Single                   bool        // on a stiff part, not on a matching flange
}

// mirrored returns the parts for the mirrored joint: the leftmost fastener of a
// row may then be at its other end.
func (c Clamped) mirrored(before, after []geometry.Point) Clamped {
	if c.Row == nil || len(before) == 0 || leftmost(before) == leftmost(after) {
		return c
	}
	first := before[leftmost(before)]
	reach := slices.Max(geometry.Mapped(before, first.Distance))
	row := *c.Row
	row.Start = row.Length - row.Start - unit.Length(reach)
	c.Row = &row
	return c
}

// leftmost finds the leftmost place, or the lowest of several.
func leftmost(at []geometry.Point) int {
	return slices.Index(at, slices.MinFunc(at, func(p, q geometry.Point) int {
		return cmp.Or(cmp.Compare(p.X, q.X), cmp.Compare(p.Y, q.Y))
	}))
}
