package diagram

import (
	"math"
	"strconv"

	"drawdown/geometry"
	"drawdown/render/font"
	"drawdown/render/scene"
)

// Show is the content of the marks. It goes beside marks that are too small.
type Show uint8

const (
	// Numbers shows the order: the numbers, the path, the first mark filled and
	// the last with two rings.
	Numbers Show = iota
	// Blank leaves the marks empty for writing by hand, as large as possible.
	// Nothing shows the order.
	Blank
	// Words sets a word for each fastener instead of its number, such as its id
	// or a share of the load. Nothing shows the order.
	Words
)

// IDs returns the fasteners' ids, as the words of a check drawing.
func IDs(j geometry.Joint) []string {
	ids := make([]string, len(j.Fasteners))
	for i, f := range j.Fasteners {
		ids[i] = f.ID
	}
	return ids
}

func (s *sketch) count() int { return len(s.req.Plan.Joint.Fasteners) }

// text is the content of a fastener's mark; empty for none.
func (s *sketch) text(fastener int) string {
	switch {
	case s.req.Show == Numbers:
		return strconv.Itoa(s.number(fastener))
	case s.req.Show == Words && fastener < len(s.req.Words):
		return s.req.Words[fastener]
	}
	return ""
}

func (s *sketch) number(fastener int) int {
	if s.req.Called != nil {
		return s.req.Called[fastener]
	}
	return s.numbers[fastener]
}

// last reports whether a fastener's mark shows the end of the order.
func (s *sketch) last(fastener int) bool {
	return s.req.Show == Numbers && s.req.wholeCount() > 1 && s.numbers[fastener] == s.req.wholeCount()
}

// widestText is the width of the widest text. An empty mark is sized for the
// number that is written into it.
func (s *sketch) widestText(em float64) float64 {
	if s.req.Show != Words {
		return font.Width("0", scene.Bold, em) * float64(s.req.digits())
	}
	widest := font.Width(s.req.Widest, scene.Bold, em)
	for i := range s.count() {
		widest = math.Max(widest, font.Width(s.text(i), scene.Bold, em))
	}
	return widest
}

// digits is the number of digits of the longest number of the whole part.
func (r *Part) digits() int {
	most := r.wholeCount()
	for _, n := range r.Called {
		most = max(most, n)
	}
	return len(strconv.Itoa(most))
}
