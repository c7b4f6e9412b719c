package teardown

import (
	"slices"

	"drawdown/sequence/run"
)

// before returns the first line of a list that is not done and comes before a line;
// nil for none. A joint is done once a run of it is sealed; what is entered from paper
// does not wait for joints, which have sheets of their own.
func (s *State) before(step int, runs []RunFact, onPaper bool) *LineNow {
	list, direction := s.work.Teardown, run.Loosen
	if step > len(list) {
		list, direction = s.work.Rebuild, run.Tighten
	}
	for _, line := range s.now(list, direction, runs) {
		if line.Number < step && line.State != IsDone && !(onPaper && line.Joint != "") {
			return &line
		}
	}
	return nil
}

// BeforeJoint returns the first line that is not done and comes before a joint in the
// list of a direction; nil for none.
func (s *State) BeforeJoint(of string, d run.Direction, runs []RunFact) *LineNow {
	list := s.work.Teardown
	if d == run.Tighten {
		list = s.work.Rebuild
	}
	i := slices.IndexFunc(list, func(l Line) bool { return l.Joint == of })
	if i < 0 {
		return nil
	}
	return s.before(list[i].Number, runs, false)
}

// What names a line: the part, the joint by its title, or the note.
func (l Line) What() string { return l.Part + l.Title + l.Note }
