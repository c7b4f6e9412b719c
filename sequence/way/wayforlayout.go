package way

import "drawdown/geometry/family"

// For returns the usual way of the trade for a family of layouts.
func For(f family.Family) Way {
	switch f {
	case family.Row:
		return Row
	case family.Circle, family.Circles:
		return Star
	case family.Grid:
		return Spiral
	}
	return Balanced
}
