package trace

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// doubtful says of a round hole what an eye has to judge.
func (s *Shape) doubtful(oval, side float64) {
	if s.Kept < soundShare {
		s.doubt(Torn, finding.Values{"round": s.Kept})
	}
	if limit := max(0.12, 0.75*noticedShare*s.DiameterMm, side); oval > limit/2 {
		s.doubt(NotRound, finding.Values{"shortest": unit.Length(s.DiameterMm - 2*oval), "longest": unit.Length(s.DiameterMm + 2*oval)})
	}
	if s.Contrast < soundStep {
		s.doubt(Faint, finding.Values{"contrast": s.Contrast})
	}
	if across := s.DiameterMm / side; across < fewPixels {
		s.doubt(Coarse, finding.Values{"pixels": across})
	}
}

// doubt notes what an eye has to judge in the shape.
func (s *Shape) doubt(code finding.Code, values finding.Values) {
	s.Doubts = append(s.Doubts, finding.Warned(code, values))
}
