package sheet

import "drawdown/geometry/finding"

// Missing keeps how many numbers of a sheet found no room, at the worst place.
type Missing struct {
	left, of int
	fixed    bool // no other paper helps there
}

// mostMissing is the share of numbers from which on a sheet is of no use: what
// most of it is for is not there (common practice, no source).
const mostMissing = 0.5

// Note takes down a drawing with so many numbers left out.
func (m *Missing) Note(left, of int) { m.note(left, of, false) }

// NoteFixed takes down a drawing that larger paper does not help: one at its true
// size, or for a screen.
func (m *Missing) NoteFixed(left, of int) { m.note(left, of, true) }

func (m *Missing) note(left, of int, fixed bool) {
	if m != nil && left*max(1, m.of) > m.left*of {
		*m = Missing{left, of, fixed}
	}
}

// Err says that too many are missing for the sheet to be of use.
func (m *Missing) Err(paper Paper) error {
	if m == nil || float64(m.left) <= mostMissing*float64(m.of) {
		return nil
	}
	values := finding.Values{"left": m.left, "of": m.of, "paper": paper.Name}
	if m.fixed {
		values["paper"] = ""
	}
	return finding.Failed(MostNoRoom, values)
}
