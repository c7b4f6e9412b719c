// Package relabel renames what a file takes over from the file that it extends:
// the labels and ids of the other bank. It sees texts and their nodes, but no
// joint. It may import form and nodes.
package relabel

import (
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
)

// AllNumbers is the key of the entry that adds to all numbers in labels: all
// numbers: +4.
const AllNumbers = "all numbers"

// Sort is what a name belongs to: names of one sort must differ.
type Sort string

const (
	Fasteners Sort = "fastener"
	Stations  Sort = "station"
	Clusters  Sort = "cluster"
	Labels    Sort = "label"         // of bores, and words on the part
	AtStation Sort = "station label" // beside a station
)

// ids reports whether names of the sort are short ids, to which the rule for
// numbers does not apply.
func (s Sort) ids() bool { return s == Fasteners || s == Stations }

// Names holds the relabel of every file of a chain, in reading order.
type Names struct {
	problems *form.Reader
	layers   []*layer
	taken    map[Sort]map[string]string // new name to old name
	kept     []kept                     // labels that no relabel touched
	first    bank                       // as in the files below
	second   bank                       // as relabelled
}

// layer is the relabel of one file.
type layer struct {
	level int // of the file
	from  int // names at this level or above are changed
	at    *nodes.Node
	names map[string]*nodes.Entry
	used  map[string]bool
	seen  []string // names that could be meant
	add   int      // to all numbers in labels
}

type kept struct {
	label string
	level int // of its file
}

// New returns names without changes.
func New(r *form.Reader) *Names {
	return &Names{problems: r, taken: map[Sort]map[string]string{}, first: bank{}, second: bank{}}
}

// Take reads the key relabel of a file: at is its value. In a file that extends
// no other it is for the file's own names, which a mirror turns into those of
// another part.
func (s *Names) Take(at *nodes.Node, level int, builds bool) {
	if at.Null || at.Shape != nodes.Map || len(at.Entries) == 0 {
		s.problems.Fail(at, NoRelabel, finding.Values{"found": at.Called(), "example": "{cyl 1: cyl 2, all numbers: +4}"})
		return
	}
	l := &layer{level: level, from: level, at: at, names: map[string]*nodes.Entry{}, used: map[string]bool{}}
	if builds {
		l.from++
	}
	for i := range at.Entries {
		e := &at.Entries[i]
		if e.Key.Text == AllNumbers {
			l.add = s.addend(e.Value)
		} else if _, ok := s.problems.Text(e.Value, finding.Term("a new name")); ok {
			l.names[strings.TrimSpace(e.Key.Text)] = e
		}
	}
	s.layers = append(s.layers, l)
}

func (s *Names) addend(n *nodes.Node) int {
	const most = 9999
	v, err := strconv.Atoi(n.Text)
	if n.Shape != nodes.Scalar || err != nil || v == 0 || v > most || v < -most {
		s.problems.Fail(n, NoAddend, finding.Values{"found": n.Called(), "most": most})
		return 0
	}
	return v
}

// Of returns the part's name for a text at the node that names a thing defined
// there.
func (s *Names) Of(sort Sort, text string, at *nodes.Node) string {
	was, touched := text, false
	for _, l := range slices.Backward(s.layers) {
		if at.File.Level < l.from {
			continue
		}
		l.seen = append(l.seen, text)
		var changed bool
		if text, changed = s.by(l, sort, text); changed {
			touched = true
		}
	}
	if !touched && !sort.ids() {
		s.kept = append(s.kept, kept{text, at.File.Level})
	}
	if sort == Labels && touched {
		s.first.add(was)
		s.second.add(text)
	}
	s.differ(sort, was, text)
	return text
}

// Now returns the part's name for a text at the node that only refers to
// something defined elsewhere.
func (s *Names) Now(sort Sort, text string, at *nodes.Node) string {
	for _, l := range slices.Backward(s.layers) {
		if at.File.Level >= l.from {
			text, _ = s.by(l, sort, text)
		}
	}
	return text
}

// Seen returns the id that the file of a level uses for a fastener named at the
// node, before that file's own relabel. Level -1 means the part.
func (s *Names) Seen(id string, at *nodes.Node, level int) string {
	for _, l := range slices.Backward(s.layers) {
		if e := l.names[id]; e != nil && l.level > level && at.File.Level >= l.from {
			id = strings.TrimSpace(e.Value.Text)
		}
	}
	return id
}

// Later returns the part's name for a name of a file below; it is empty if that
// is unchanged.
func (s *Names) Later(name string) string {
	for _, l := range slices.Backward(s.layers) {
		if e := l.names[name]; e != nil {
			return strings.TrimSpace(e.Value.Text)
		}
	}
	return ""
}

// by returns the name that a layer makes of another, and whether the layer
// states it.
func (s *Names) by(l *layer, sort Sort, text string) (string, bool) {
	if e := l.names[text]; e != nil {
		l.used[text] = true
		made := strings.TrimSpace(e.Value.Text)
		if sort.ids() {
			made, _ = s.problems.NewID(e.Value, "relabel", made)
		}
		return made, true
	}
	if sort.ids() || l.add == 0 {
		return text, false
	}
	made := numbers.ReplaceAllStringFunc(text, func(digits string) string {
		v, err := strconv.Atoi(digits)
		if err != nil || v+l.add < 0 {
			return digits
		}
		return strconv.Itoa(v + l.add)
	})
	if made == text {
		return text, false
	}
	l.used[AllNumbers] = true
	return made, true
}

var numbers = expression.Lazily(`[0-9]+`)

// differ reports two names of a sort that have become the same.
func (s *Names) differ(sort Sort, was, is string) {
	if s.taken[sort] == nil {
		s.taken[sort] = map[string]string{}
	}
	earlier, taken := s.taken[sort][is]
	s.taken[sort][is] = was
	if !taken || earlier == was || len(s.layers) == 0 || is == "" {
		return
	}
	s.problems.Fail(s.layers[0].at, MadeAlike, finding.Values{"first": problem.Quoted(earlier), "second": problem.Quoted(was), "name": problem.Quoted(is)})
}

// Unused reports names in the file's own relabel that nothing has. What a file
// below relabels may have been replaced since.
func (s *Names) Unused() {
	for _, l := range s.layers {
		if l.level > 0 {
			continue
		}
		for _, e := range l.at.Entries {
			name := strings.TrimSpace(e.Key.Text)
			switch {
			case l.used[name] || name != AllNumbers && l.names[name] == nil || name == AllNumbers && l.add == 0:
			case name == AllNumbers:
				s.problems.Fail(e.Key, NoNumbers, nil)
			default:
				s.problems.Fail(e.Key, NamesNothing, finding.Values{"name": problem.Quoted(name), "meant": s.problems.Meant(name, l.seen)})
			}
		}
	}
}

var (
	leftSide  = expression.Lazily(`(?i)(?:^|\PL)(left|links|linke[rs]?|gauche|izquierd[oa])(?:\PL|$)`)
	rightSide = expression.Lazily(`(?i)(?:^|\PL)(right|rechts|rechte[rs]?|droite?|derech[oa])(?:\PL|$)`)
)

// SideOf returns the side in a text; it is empty for none, or for both.
func SideOf(text string) string {
	switch l, r := leftSide.MatchString(text), rightSide.MatchString(text); {
	case l && !r:
		return "left"
	case r && !l:
		return "right"
	}
	return ""
}

// tellsBanks reports whether a label distinguishes the banks: by a number, or a
// side.
func tellsBanks(label string) bool {
	return numbers.MatchString(label) || leftSide.MatchString(label) || rightSide.MatchString(label)
}

// OfOtherBank returns the labels of files below a level that no relabel changed
// and that distinguish the banks, each once.
func (s *Names) OfOtherBank(level int) []string {
	var labels []string
	for _, k := range s.kept {
		if k.level > level && tellsBanks(k.label) && !slices.Contains(labels, k.label) {
			labels = append(labels, k.label)
		}
	}
	return labels
}
