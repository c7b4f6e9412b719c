// Package way orders places: points in, a permutation out. There is one file
// per way. Orders do not depend on how the places are listed. Scaling, moving
// or turning the part changes only the choice between places that tie.
package way

// Way is a method of going through a group of fasteners.
type Way string

const (
	Auto     Way = "auto"     // by the family of the layout
	Spiral   Way = "spiral"   // from the centre outwards, in one direction
	Cross    Way = "cross"    // from the centre outwards, each followed by the one across the centre
	Row      Way = "row"      // from the middle outwards, on alternate sides
	Star     Way = "star"     // bolt circles, the cross-pattern of ASME PCC-1
	Four     Way = "four"     // four crosswise, then once around all others
	Circular Way = "circular" // once around, for a check pass
	Balanced Way = "balanced" // the trade's rules as an objective
	Cast     Way = "cast"     // by the numbers cast or marked on the part
	List     Way = "list"     // the maker's own sequence
)

// IsMakers reports whether the order is the maker's: a list, or the numbers on
// the part.
func (w Way) IsMakers() bool { return w == Cast || w == List }

// Ways lists the ways that a pattern file can name, in the order of the help
// text.
var Ways = []Way{Auto, Spiral, Cross, Row, Star, Four, Balanced, Circular, Cast}

// Turn is a direction of rotation in the view.
type Turn string

const (
	TurnDefault Turn = ""      // left for spiral, cross and row; right for star, four and circular
	TurnLeft    Turn = "left"  // anticlockwise
	TurnRight   Turn = "right" // clockwise
)

// Turns lists the directions that a pattern file can name.
var Turns = []Turn{TurnLeft, TurnRight}

// Opposite returns the other direction, as in a mirror.
func (t Turn) Opposite() Turn {
	switch t {
	case TurnLeft:
		return TurnRight
	case TurnRight:
		return TurnLeft
	}
	return t
}

// For returns the direction for way w if the file names none. ASME PCC-1
// numbers and tightens bolt circles clockwise.
func (t Turn) For(w Way) Turn {
	if t != TurnDefault {
		return t
	}
	if w == Star || w == Four || w == Circular {
		return TurnRight
	}
	return TurnLeft
}
