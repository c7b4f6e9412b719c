package plan

import "drawdown/geometry/unit"

// Marked prints a length of the kind as drawers and sockets are marked: in
// inches for inch threads. A length that is not known is empty.
func (k Kind) Marked(l unit.Length) string {
	switch {
	case l == 0:
		return ""
	case k.Thread != nil && k.Thread.Unified():
		return l.Inches()
	}
	return l.String()
}
