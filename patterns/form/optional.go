package form

import (
	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/nodes"
)

// Given reads the value of a key; false if there is none.
func Given[T any](n *nodes.Node, key string, read func(*nodes.Node, any) (T, bool)) (v T, ok bool) {
	if n == nil {
		return v, false
	}
	return read(n, key)
}

// Places reads a number of places.
func (f Fields) Places(key string, low int, example string) (int, bool) {
	return Given(f.Need(key, example), key, func(n *nodes.Node, what any) (int, bool) {
		return f.Whole(n, what, low, MostFasteners)
	})
}

// Point reads an optional place; the default is [0, 0].
func (f Fields) Point(key string) (geometry.Point, bool) {
	if !f.Has(key) {
		return geometry.Point{}, true
	}
	return Given(f.Get(key), key, f.PointMm)
}

// NeedPoint reads a required place.
func (f Fields) NeedPoint(key, example string) (geometry.Point, bool) {
	return Given(f.Need(key, example), key, f.PointMm)
}

// Angle reads an optional angle in degrees.
func (f Fields) Angle(key string, fallback float64) (float64, bool) {
	if !f.Has(key) {
		return fallback, true
	}
	return Given(f.Get(key), key, f.AngleDeg)
}

// Size reads a required length.
func (f Fields) Size(key, example string, limits unit.Limits) (float64, bool) {
	return Given(f.Need(key, example), key, f.sizeMm(limits))
}

func (r *Reader) sizeMm(limits unit.Limits) func(*nodes.Node, any) (float64, bool) {
	return func(n *nodes.Node, what any) (float64, bool) { return r.LengthMm(n, what, limits) }
}

// NeedID reads a required id.
func (f Fields) NeedID(example string) (string, bool) {
	return Given(f.Need("id", example), "id", func(n *nodes.Node, what any) (string, bool) { return f.NewID(n, what, n.Text) })
}

// Cast reads the number cast on the part beside a fastener.
func (r *Reader) Cast(n *nodes.Node) int {
	v, _ := r.Whole(n, "cast", 1, MostCast)
	return v
}

// Two reads [along x, along y] of distances; with oneForBoth, a single number
// is used for both.
func (f Fields) Two(key, example string, oneForBoth bool) (x, y float64, ok bool) {
	n := f.Need(key, example)
	if n == nil {
		return 0, 0, false
	}
	if n.Shape == nodes.Scalar && oneForBoth {
		x, ok = f.LengthMm(n, key, unit.Sensible.Distance)
		return x, x, ok
	}
	if n.Shape != nodes.List || len(n.Items) != 2 {
		f.Fail(n, NoTwoLengths, finding.Values{"what": key, "example": example, "found": n.Found()})
		return 0, 0, false
	}
	x, okX := f.LengthMm(n.Items[0], key, unit.Sensible.Distance)
	y, okY := f.LengthMm(n.Items[1], key, unit.Sensible.Distance)
	return x, y, okX && okY
}

// FewEnough checks the number of places before they are made.
func (f Fields) FewEnough(count int) bool {
	if count > MostFasteners {
		f.Fail(f.Node, TooManyPlaces, finding.Values{"what": f.What, "count": count, "most": MostFasteners})
		return false
	}
	return true
}

// Length reads an optional length; the default is 0.
func (f Fields) Length(key string, limits unit.Limits) unit.Length {
	v, _ := Given(f.Get(key), key, f.sizeMm(limits))
	return unit.Length(v)
}

// No reports whether a yes/no key is no.
func (f Fields) No(key string) bool {
	yes, ok := Given(f.Get(key), key, f.YesNo)
	return ok && !yes
}
