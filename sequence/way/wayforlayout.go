package way

import "drawdown/geometry/family"

// For returns the way that the trade has for a family of layouts.
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
