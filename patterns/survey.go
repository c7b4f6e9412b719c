package patterns

import (
	"regexp"
	"strconv"

	"drawdown/geometry/survey"
	"drawdown/patterns/problem"
)

var surveyKeys = []string{"drawdown", "title", "machine", "units", "holes", "measured", "level", "up", "down", "accuracy"}

// Survey is what a survey file says: the holes of a part and the distances
// measured between them.
type Survey struct {
	Name    string // stem of the files that are written
	Title   string
	Machine string
	IDs     []string // of the holes, in the file's order
	Network survey.Network
	Inches  bool         // the file is in inches
	Ways    []survey.Way // of the readings, how each was taken
}

// surveyReader reads a survey file with the means of the pattern reader.
type surveyReader struct {
	*reader
	made   Survey
	index  map[string]int // into made.IDs
	broken bool           // some holes could not be read; a missing id cannot be judged
	first  map[measure]*node
}

// measure is one way to measure between two holes.
type measure struct {
	a, b int // the lower number first
	how  string
}

// ReadSurvey reads a survey file:
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
// The list holds every problem, in reading order; when Stops says that one of
// them stops the work, the survey is empty.
func ReadSurvey(source Source) (Survey, problem.List) {
	s := &surveyReader{reader: &reader{source: source}, index: map[string]int{}, first: map[measure]*node{}}
	if root := s.parse(newFile(source.File, source.Data), source.Data); root != nil {
		s.version(root)
		s.survey(root)
	}
	problems := s.problems()
	if problems.Stops() {
		return Survey{}, problems
	}
	return s.made, problems
}

func (s *surveyReader) survey(root *node) {
	f, _ := s.fields(root, "the survey", surveyKeys...)
	if !f.has("drawdown") && !f.mistyped("drawdown") {
		s.fail(root, "", "the file needs drawdown: 1, the version of its format")
	}
	if n := f.need("title", "Pump cover, measured"); n != nil {
		s.made.Title, _ = s.text(n, "title")
	}
	if s.made.Name = s.source.stem; s.made.Name == "" {
		s.made.Name = slug(s.made.Title)
	}
	s.made.Machine = f.text("machine")
	s.bareUnit = "mm"
	if n := f.get("units"); n != nil {
		if word, ok := s.choice(n, "units", "mm", "in"); ok {
			s.bareUnit = word
		}
	}
	s.made.Inches = s.bareUnit == "in"
	s.readHoles(f)
	s.readMeasured(f)
	s.readFrame(f)
	if n := f.get("accuracy"); n != nil {
		s.made.Network.AccuracyMm, _ = s.sizeMm(n, "accuracy")
	}
}

// readHoles reads {A: 8.4, B: 8.4}, or [A, B] where no diameters are needed. A
// range stands for its holes: {1-12: 6.6}, [A-F].
func (s *surveyReader) readHoles(f fields) {
	const example = "{A: 8.4, B: 8.4, C: 8.4}"
	n := f.need("holes", example)
	switch {
	case n == nil:
		s.broken = true
	case n.shape == mapShape:
		for _, e := range n.entries {
			diameter := 0.0
			if !e.value.null {
				var ok bool
				diameter, ok = s.sizeMm(e.value, "the diameter of "+shortened(e.key.text))
				s.broken = s.broken || !ok
			}
			s.addHoles(e.key, diameter)
		}
	case n.shape == listShape:
		for _, item := range n.items {
			s.addHoles(item, 0)
		}
	default:
		s.broken = true
		s.fail(n, "", "holes is a map of the holes with their diameters, for example %s, not %s", example, n.called())
	}
	s.made.Network.Holes = len(s.made.IDs)
	if n == nil || s.broken {
		return
	}
	switch count := len(s.made.IDs); {
	case count < 2:
		s.broken = true
		s.fail(n, "", "a survey needs at least 2 holes, not %d", count)
	case count > survey.MostHoles:
		s.broken = true
		s.fail(n, "", "the survey has more than %d holes; more cannot be worked out", survey.MostHoles)
	}
}

// holeRange is a run of numbered or lettered holes: 1-12, M1-M8, A-F.
var holeRange = regexp.MustCompile(`^(\pL*)(\d{1,4})-(\pL*)(\d{1,4})$|^([A-Za-z])-([A-Za-z])$`)

// holeNames gives the ids that a key of holes stands for: one, or those of a
// range.
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

// addHoles adds the holes that a key of holes stands for.
func (s *surveyReader) addHoles(at *node, diameterMm float64) {
	if at.shape != scalarShape || at.null {
		s.addHole(at, at.text, diameterMm)
		return
	}
	if len(s.made.IDs) > survey.MostHoles {
		return
	}
	for _, name := range holeNames(at.text) {
		// One problem of a range is told once, and one too long is not filled.
		if !s.addHole(at, name, diameterMm) || len(s.made.IDs) > survey.MostHoles {
			return
		}
	}
}

func (s *surveyReader) addHole(at *node, name string, diameterMm float64) bool {
	id, ok := s.newID(at, "a hole's id", name)
	if !ok {
		s.broken = true
		return false
	}
	if _, taken := s.index[id]; taken {
		s.fail(at, "", "the hole %s stands here twice", id)
		return false
	}
	s.index[id] = len(s.made.IDs)
	s.made.IDs = append(s.made.IDs, id)
	s.made.Network.Diameters = append(s.made.Network.Diameters, diameterMm)
	return true
}

// hole gives the number of the hole that a node names.
func (s *surveyReader) hole(n *node) (int, bool) {
	if n.shape != scalarShape || n.null {
		s.fail(n, "", "a hole is named by its id, such as A, not %s", n.called())
		return 0, false
	}
	i, ok := s.index[n.text]
	if !ok && !s.broken {
		s.fail(n, some(s.made.IDs), "there is no hole %s%s", quoted(n.text), s.hint(n.text, s.made.IDs))
	}
	return i, ok
}

// readFrame reads how the part is to lie in the picture.
func (s *surveyReader) readFrame(f fields) {
	network := &s.made.Network
	if n := f.get("level"); n != nil {
		if n.shape != listShape || len(n.items) != 2 {
			s.fail(n, "", "level is two holes, the left one first, for example [A, B], not %s", n.found())
		} else {
			a, okA := s.hole(n.items[0])
			b, okB := s.hole(n.items[1])
			if okA && okB && a == b {
				s.fail(n, "", "level names the hole %s twice; it takes two holes to draw a line", n.items[0].text)
			}
			network.Level = [2]int{a, b}
		}
	}
	network.Above = s.side(f, "up")
	network.Below = s.side(f, "down")
	if len(network.Above)+len(network.Below) > 0 && !f.has("level") && !f.mistyped("level") {
		s.fail(f.node.keyNode("up"), "", "up and down need a line: name two holes that are drawn level, for example level: [A, B]")
	}
	if len(network.Above)+len(network.Below) == 0 && !f.has("up") && !f.has("down") && !f.mistyped("up", "down") && network.Holes > 2 {
		s.warn(f.node, "up is missing: the mirror image fits the readings as well; name a hole that lies above the level line, for example up: %s", s.example(2))
	}
}

func (s *surveyReader) example(hole int) string {
	if hole < len(s.made.IDs) {
		return s.made.IDs[hole]
	}
	return "C"
}

// side reads the holes above or below the level line.
func (s *surveyReader) side(f fields, key string) []int {
	n := f.get(key)
	if n == nil {
		return nil
	}
	var holes []int
	for _, item := range s.list(n) {
		h, ok := s.hole(item)
		if !ok {
			continue
		}
		if level := f.node.get("level"); level != nil && (h == s.made.Network.Level[0] || h == s.made.Network.Level[1]) {
			s.fail(item, "", "%s: %s lies on the level line itself; name a hole off it", key, item.text)
			continue
		}
		holes = append(holes, h)
	}
	return holes
}
