package form

import (
	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/nodes"
)

// Places reads a number of places.
func (f Fields) Places(key string, low int, example string) (int, bool) {
	n := f.Need(key, example)
	if n == nil {
		return 0, false
	}
	return f.Whole(n, key, low, MostFasteners)
}

// Point reads a place that may be missing: [0, 0] then.
func (f Fields) Point(key string) (geometry.Point, bool) {
	if !f.Has(key) {
		return geometry.Point{}, true
	}
	n := f.Get(key)
	if n == nil {
		return geometry.Point{}, false
	}
	return f.PointMm(n, key)
}

// Angle reads an angle in degrees that may be missing.
func (f Fields) Angle(key string, fallback float64) (float64, bool) {
	if !f.Has(key) {
		return fallback, true
	}
	n := f.Get(key)
	if n == nil {
		return 0, false
	}
	return f.AngleDeg(n, key)
}

// Size reads a length above zero that must be there.
func (f Fields) Size(key, example string) (float64, bool) {
	n := f.Need(key, example)
	if n == nil {
		return 0, false
	}
	return f.SizeMm(n, key)
}

// Two reads [along x, along y] of sizes; one number counts for both.
func (f Fields) Two(key, example string, oneForBoth bool) (x, y float64, ok bool) {
	n := f.Need(key, example)
	if n == nil {
		return 0, 0, false
	}
	if n.Shape == nodes.Scalar && oneForBoth {
		x, ok = f.SizeMm(n, key)
		return x, x, ok
	}
	if n.Shape != nodes.List || len(n.Items) != 2 {
		f.Fail(n, NoTwoLengths, finding.Values{"what": key, "example": example, "found": n.Found()})
		return 0, 0, false
	}
	x, okX := f.SizeMm(n.Items[0], key)
	y, okY := f.SizeMm(n.Items[1], key)
	return x, y, okX && okY
}

// FewEnough checks the number of places before any is made.
func (f Fields) FewEnough(count int) bool {
	if count > MostFasteners {
		f.Fail(f.Node, TooManyPlaces, finding.Values{"what": f.What, "count": count, "most": MostFasteners})
		return false
	}
	return true
}

// Length reads a length above zero that may be missing: 0 then.
func (f Fields) Length(key string) unit.Length {
	if n := f.Get(key); n != nil {
		v, _ := f.SizeMm(n, key)
		return unit.Length(v)
	}
	return 0
}
