// Package measured reads survey files, the distances measured on a part, and
// drafts a pattern from the calculated places. It may import form, nodes,
// writing and geometry/survey.
package measured

import (
	"regexp"
	"slices"
	"strconv"

	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
)

var surveyKeys = []string{"drawdown", "title", "machine", "units", "holes", "measured", "level", "up", "down", "accuracy"}

// Survey is the content of a survey file.
type Survey struct {
	Name    string // stem of the files to write
	Title   string
	Machine string
	IDs     []string // of the holes, in the file's order
	Network survey.Network
	Inches  bool // the file is in inches

	ReadingsAt []problem.Problem // position of each reading; the caller sets severity and finding
	AccuracyAt problem.Problem
}

// reader reads a survey file, based on the pattern reader.
type reader struct {
	*form.Reader
	made   Survey
	index  map[string]int // into made.IDs
	blank  bool           // the readings may be missing
	broken bool           // some holes could not be read, so missing ids cannot be judged
	first  map[measure]*nodes.Node
}

// measure is one measurement between two holes, to find repeated ones.
type measure struct {
	a, b int // the lower number first
	how  string
}

// Read reads a survey file:
//
//	drawdown: 1
//	title: Pump cover, measured
//	units: mm                                   # of bare lengths; mm or in
//	holes: {A: 8.4, B: 8.4, C: 8.4}             # diameters, or a list: [A, B, C]; A-C: 8.4
//	measured:
//	  - [A, B, 95.02]                           # centre to centre
//	  - {from: A, to: C, outside: 142.10}       # over the far edges
//	  - {from: B, to: C, inside: 120.35}        # between the near edges
//	level: [A, B]                               # drawn level, A at the origin and left
//	up: C                                       # lies above that line; or a list; down likewise
//	accuracy: 0.05                              # standard deviation of a reading
//
// Where a problem stops the work the survey is empty.
func Read(from source.Source) (Survey, problem.List) { return read(from, false) }

// ReadBlank reads a survey file that need not have readings yet.
func ReadBlank(from source.Source) (Survey, problem.List) { return read(from, true) }

func read(from source.Source, blank bool) (Survey, problem.List) {
	s := &reader{Reader: form.NewReader(from), blank: blank, index: map[string]int{}, first: map[measure]*nodes.Node{}}
	if root := s.Root(nodes.Format{Keys: surveyKeys}); root != nil {
		s.Version(root)
		s.survey(root)
	}
	return form.Sound(s.made, s.List())
}

func (s *reader) survey(root *nodes.Node) {
	f, ok := s.Fields(root, finding.Term("the survey"), surveyKeys...)
	if !ok {
		return
	}
	f.Versioned()
	s.made.Title = f.NeedText("title", "Pump cover, measured")
	s.made.Name = s.Source.Name(s.made.Title)
	s.made.Machine = f.Text("machine")
	f.Units()
	s.made.Inches = s.BareUnit == "in"
	s.readHoles(f)
	s.readMeasured(f)
	s.readFrame(f)
	s.made.Network.AccuracyMm = float64(f.Length("accuracy", unit.Sensible.Accuracy))
	if n := f.Get("accuracy"); n != nil {
		s.made.AccuracyAt = n.Place()
	}
}

// readHoles reads {A: 8.4, B: 8.4}, or [A, B] if no diameters are needed. A
// range means all its holes: {1-12: 6.6}, [A-F].
func (s *reader) readHoles(f form.Fields) {
	const example = "{A: 8.4, B: 8.4, C: 8.4}"
	n := f.Need("holes", example)
	switch {
	case n == nil:
		s.broken = true
	case n.Shape == nodes.Map:
		for _, e := range n.Entries {
			diameter := 0.0
			if !e.Value.Null {
				var ok bool
				diameter, ok = s.LengthMm(e.Value, finding.Failed(TheDiameter, finding.Values{"id": problem.Shortened(e.Key.Text)}), unit.Sensible.MachineHole)
				s.broken = s.broken || !ok
			}
			s.addHoles(e.Key, diameter)
		}
	case n.Shape == nodes.List:
		for _, item := range n.Items {
			s.addHoles(item, 0)
		}
	default:
		s.broken = true
		s.Fail(n, NoHoles, finding.Values{"example": example, "found": n.Called()})
	}
	s.made.Network.Holes = len(s.made.IDs)
	if n == nil || s.broken {
		return
	}
	switch count := len(s.made.IDs); {
	case count < 2:
		s.broken = true
		s.Fail(n, TooFewHoles, finding.Values{"count": count})
	case count > survey.MostHoles:
		s.broken = true
		s.Fail(n, TooManyHoles, finding.Values{"most": survey.MostHoles})
	}
}

// holeRange is a run of numbered or lettered holes: 1-12, M1-M8, A-F.
var holeRange = regexp.MustCompile(`^(\pL*)(\d{1,4})-(\pL*)(\d{1,4})$|^([A-Za-z])-([A-Za-z])$`)

// holeNames returns the ids for a key of holes: one, or those of a range.
func holeNames(text string) []string {
	m := holeRange.FindStringSubmatch(text)
	var names []string
	switch {
	case m == nil || m[3] != "" && m[3] != m[1]:
	case m[5] != "":
		for c := m[5][0]; c <= m[6][0]; c++ {
			names = append(names, string(c))
		}
	default:
		low, _ := strconv.Atoi(m[2]) // up to 4 digits
		high, _ := strconv.Atoi(m[4])
		for n := low; n <= high; n++ {
			names = append(names, m[1]+strconv.Itoa(n))
		}
	}
	if len(names) < 2 || m[5] != "" && (m[5][0] < 'a') != (m[6][0] < 'a') {
		return []string{text}
	}
	return names
}

// addHoles adds the holes for a key of holes.
func (s *reader) addHoles(at *nodes.Node, diameterMm float64) {
	if at.Shape != nodes.Scalar || at.Null {
		s.addHole(at, at.Text, diameterMm)
		return
	}
	if len(s.made.IDs) > survey.MostHoles {
		return
	}
	for _, name := range holeNames(at.Text) {
		// A problem in a range is reported once, and a range that is too long
		// is not filled.
		if !s.addHole(at, name, diameterMm) || len(s.made.IDs) > survey.MostHoles {
			return
		}
	}
}

func (s *reader) addHole(at *nodes.Node, name string, diameterMm float64) bool {
	id, ok := s.NewID(at, finding.Term("a hole's id"), name)
	if !ok {
		s.broken = true
		return false
	}
	if _, taken := s.index[id]; taken {
		s.Fail(at, HoleTwice, finding.Values{"id": id})
		return false
	}
	s.index[id] = len(s.made.IDs)
	s.made.IDs = append(s.made.IDs, id)
	s.made.Network.Diameters = append(s.made.Network.Diameters, diameterMm)
	return true
}

// hole returns the index of the hole that a node names.
func (s *reader) hole(n *nodes.Node) (int, bool) {
	if n.Shape != nodes.Scalar || n.Null {
		s.Fail(n, NoHoleName, finding.Values{"found": n.Called()})
		return 0, false
	}
	i, ok := s.index[n.Text]
	if !ok && !s.broken {
		s.Fail(n, NoSuchHole, finding.Values{"name": problem.Quoted(n.Text), "meant": s.Meant(n.Text, s.made.IDs), "allowed": s.made.IDs})
	}
	return i, ok
}

// readFrame reads the position of the part in the picture.
func (s *reader) readFrame(f form.Fields) {
	network := &s.made.Network
	switch n := f.Get("level"); {
	case n == nil:
	case n.Shape != nodes.List || len(n.Items) != 2:
		s.Fail(n, NoLevel, finding.Values{"found": n.Found()})
	default:
		a, okA := s.hole(n.Items[0])
		b, okB := s.hole(n.Items[1])
		if okA && okB && a == b {
			s.Fail(n, LevelTwice, finding.Values{"id": n.Items[0].Text})
		}
		network.Level = [2]int{a, b}
	}
	network.Above = s.side(f, "up")
	network.Below = s.side(f, "down")
	if len(network.Above)+len(network.Below) > 0 && !f.Has("level") && !f.Mistyped("level") {
		s.Fail(f.Node.KeyNode("up"), LevelMissing, nil)
	}
	if len(network.Above)+len(network.Below) == 0 && !f.Has("up") && !f.Has("down") && !f.Mistyped("up", "down") && network.Holes > 2 {
		s.Warn(f.Node, UpMissing, finding.Values{"id": s.made.IDs[2]})
	}
}

// side reads the holes above or below the level line.
func (s *reader) side(f form.Fields, key string) []int {
	n := f.Get(key)
	if n == nil {
		return nil
	}
	var holes []int
	for _, item := range s.Several(n) {
		h, ok := s.hole(item)
		switch {
		case !ok:
		case f.Node.Get("level") != nil && slices.Contains(s.made.Network.Level[:], h):
			s.Fail(item, OnLevelLine, finding.Values{"key": key, "id": item.Text})
		default:
			holes = append(holes, h)
		}
	}
	return holes
}
