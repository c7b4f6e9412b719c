package geometry

// Axis names the coordinate that a mirror negates.
type Axis string

const (
	NoAxis Axis = ""
	AxisX  Axis = "x" // swaps left and right
	AxisY  Axis = "y" // swaps top and bottom
)

// Mirrored returns the mirror image of the joint. Every place is reflected;
// ids, labels and cast numbers stay with their fasteners.
func (j Joint) Mirrored(axis Axis) Joint {
	if axis == NoAxis {
		return j
	}
	m := j
	m.Fasteners = Mapped(j.Fasteners, func(f Fastener) Fastener { f.At = f.At.mirrored(axis); return f })
	m.Bores = Mapped(j.Bores, func(b Bore) Bore { b.Centre = b.Centre.mirrored(axis); return b })
	m.Dowels = Mapped(j.Dowels, func(d Dowel) Dowel { d.Centre = d.Centre.mirrored(axis); return d })
	m.Labels = Mapped(j.Labels, func(l Label) Label { l.At = l.At.mirrored(axis); return l })
	m.Stations = Mapped(j.Stations, func(s Station) Station { s.At = s.At.mirrored(axis); return s })
	m.Outline = Mapped(j.Outline, func(path []Point) []Point {
		return Mapped(path, func(p Point) Point { return p.mirrored(axis) })
	})
	m.Front = j.Front.mirrored(axis)
	return m
}

// mirrored subtracts the coordinate from zero: changing its sign would turn 0
// into −0.
func (p Point) mirrored(axis Axis) Point {
	switch axis {
	case AxisX:
		return Point{0 - p.X, p.Y}
	case AxisY:
		return Point{p.X, 0 - p.Y}
	}
	return p
}

func (f Front) mirrored(axis Axis) Front {
	switch {
	case axis == AxisX && f == FrontLeft:
		return FrontRight
	case axis == AxisX && f == FrontRight:
		return FrontLeft
	case axis == AxisY && f == FrontTop:
		return FrontBottom
	case axis == AxisY && f == FrontBottom:
		return FrontTop
	}
	return f
}
