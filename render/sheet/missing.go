package sheet

import "drawdown/geometry/finding"

// Missing records how many numbers of a sheet did not fit, in the worst place.
type Missing struct {
	left, of int
	fixed    bool // no other paper helps
}

// mostMissing is the share of missing numbers from which a sheet is useless
// (common practice, no source).
const mostMissing = 0.5

// Note records a drawing with left of its numbers missing.
func (m *Missing) Note(left, of int) { m.note(left, of, false) }

// NoteFixed records a drawing that larger paper does not help: one at true
// size, or for a screen.
func (m *Missing) NoteFixed(left, of int) { m.note(left, of, true) }

func (m *Missing) note(left, of int, fixed bool) {
	if m != nil && left*max(1, m.of) > m.left*of {
		*m = Missing{left, of, fixed}
	}
}

// Err reports that too many numbers are missing for the sheet to be useful.
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
