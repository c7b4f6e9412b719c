package sheet

import "drawdown/geometry/finding"

// Missing keeps how many numbers of a sheet found no room, at the worst place.
type Missing struct{ left, of int }

// mostMissing is the share of numbers from which on a sheet is of no use: what
// most of it is for is not there (common practice, no source).
const mostMissing = 0.5

// Note takes down a drawing with so many numbers left out.
func (m *Missing) Note(left, of int) {
	if m != nil && left*max(1, m.of) > m.left*of {
		m.left, m.of = left, of
	}
}

// Err says that too many are missing for the sheet to be of use.
func (m *Missing) Err(paper Paper) error {
	if float64(m.left) <= mostMissing*float64(m.of) {
		return nil
	}
	return finding.Failed(MostNoRoom, finding.Values{"left": m.left, "of": m.of, "paper": paper.Name})
}
