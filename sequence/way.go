// Package sequence decides in which order the fasteners of a joint are worked.
// Every function is pure: places in, a permutation out. Orders do not depend
// on how the joint is listed; scaling, moving or turning the part changes
// nothing but the choice between places that tie.
package sequence

// Way is a manner of going through a group of fasteners.
type Way string

const (
	Auto     Way = "auto"     // row, star or spiral, by the layout
	Spiral   Way = "spiral"   // centre outwards, turning one way
	Cross    Way = "cross"    // centre outwards, each followed by the one across the centre
	RowWay   Way = "row"      // middle outwards, side by side
	Star     Way = "star"     // bolt circles, the cross-pattern of ASME PCC-1
	Circular Way = "circular" // once round, for a check pass
	Cast     Way = "cast"     // by the numbers marked on the part
	List     Way = "list"     // the maker's own sequence
)

// Ways lists the ways that a pattern file can name, in the order of the help.
var Ways = []Way{Auto, Spiral, Cross, RowWay, Star, Circular, Cast}

// Turn is a sense of rotation in the view.
type Turn string

const (
	TurnDefault Turn = ""      // left for spiral, cross and row; right for star and circular
	TurnLeft    Turn = "left"  // anticlockwise
	TurnRight   Turn = "right" // clockwise
)

// Turns lists the senses that a pattern file can name.
var Turns = []Turn{TurnLeft, TurnRight}

// Opposite gives the other sense, as a mirror shows it.
func (t Turn) Opposite() Turn {
	switch t {
	case TurnLeft:
		return TurnRight
	case TurnRight:
		return TurnLeft
	}
	return t
}

// For settles the sense of way w where the file names none. ASME PCC-1 numbers
// and goes round bolt circles clockwise.
func (t Turn) For(w Way) Turn {
	if t != TurnDefault {
		return t
	}
	if w == Star || w == Circular {
		return TurnRight
	}
	return TurnLeft
}

// Group is one set of fastener kinds that is ordered together.
type Group struct {
	Kinds []string // empty: every kind
	Way   Way
	Turn  Turn
	List  []string // the maker's own sequence of ids, for Way List
}
