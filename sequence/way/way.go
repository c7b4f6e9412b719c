// Package way has the ways to order places: bare points in, a permutation out.
// There is one file per way. Orders do not depend on how the places are listed;
// scaling, moving or turning the part changes nothing but the choice between
// places that tie.
package way

// Way is a manner of going through a group of fasteners.
type Way string

const (
	Auto     Way = "auto"     // by the family of the layout
	Spiral   Way = "spiral"   // centre outwards, turning one way
	Cross    Way = "cross"    // centre outwards, each followed by the one across the centre
	Row      Way = "row"      // middle outwards, side by side
	Star     Way = "star"     // bolt circles, the cross-pattern of ASME PCC-1
	Circular Way = "circular" // once round, for a check pass
	Balanced Way = "balanced" // the trade's rules as an objective
	Cast     Way = "cast"     // by the numbers marked on the part
	List     Way = "list"     // the maker's own sequence
)

// IsMakers says that the order is the maker's word: his list, or the numbers on
// the part.
func (w Way) IsMakers() bool { return w == Cast || w == List }

// Ways lists the ways that a pattern file can name, in the order of the help.
var Ways = []Way{Auto, Spiral, Cross, Row, Star, Balanced, Circular, Cast}

// Turn is a sense of rotation in the view.
type Turn string

const (
	TurnDefault Turn = ""      // left for spiral, cross and row; right for star and circular
	TurnLeft    Turn = "left"  // anticlockwise
	TurnRight   Turn = "right" // clockwise
)

// Turns lists the senses that a pattern file can name.
var Turns = []Turn{TurnLeft, TurnRight}

// Opposite returns the other sense, as a mirror shows it.
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
