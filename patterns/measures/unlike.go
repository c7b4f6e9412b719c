package measures

import (
	"maps"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/sequence/measure"
)

// The two sides of a cylinder head: in the name of a value, and in that of a place.
var (
	intake  = []string{"in", "int", "inlet", "intake", "einlass", "ein", "admission", "adm", "admisión"}
	exhaust = []string{"ex", "exh", "exhaust", "outlet", "auslass", "aus", "échappement", "ech", "éch", "escape", "esc"}
)

// sideNamed returns whether a name is of the intake or of the exhaust; empty for neither
// and for both.
func sideNamed(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return strings.ContainsRune(" -_/.,()0123456789", r) })
	is := func(of []string) bool {
		return slices.ContainsFunc(words, func(w string) bool {
			return slices.ContainsFunc(of, func(o string) bool { return w == o || len(o) > 3 && strings.HasPrefix(w, o) })
		})
	}
	switch in, ex := is(intake), is(exhaust); {
	case in && !ex:
		return "intake"
	case ex && !in:
		return "exhaust"
	}
	return ""
}

// otherSide warns of an intake value that is measured at exhaust places only, or the
// reverse: the lists, or the labels of the places, are exchanged.
func otherSide(problems *nodes.Problems, v measure.Value, at *nodes.Node, spots []Spot) {
	const fewest = 2
	of, called := sideNamed(v.What), calledAt(v, spots)
	if of == "" || len(called) < fewest {
		return
	}
	if slices.ContainsFunc(called, func(c string) bool { s := sideNamed(c); return s == "" || s == of }) {
		return
	}
	problems.Warn(at, PlacesOfOther, finding.Values{"what": v.What, "places": called})
}

// unlike finds the one place of a list that is called otherwise than all others, while a
// place called like them, with its number, is left out: its label is probably wrong.
func unlike(problems *nodes.Problems, v measure.Value, called []string, at *nodes.Node, spots []Spot) bool {
	const fewest = 2 // others in the list
	words := map[string][]string{}
	for _, c := range called {
		words[wordOf(c)] = append(words[wordOf(c)], c)
	}
	if len(words) != 2 || len(called)-1 < fewest {
		return false
	}
	for _, w := range slices.Sorted(maps.Keys(words)) {
		if len(words[w]) != 1 || w == "" {
			continue
		}
		odd := words[w][0]
		for usual := range words {
			lacks := usual + strings.TrimPrefix(odd, w)
			if usual != w && slices.ContainsFunc(spots, func(s Spot) bool { return s.Called == lacks }) {
				problems.Warn(at, PlaceUnlike, finding.Values{"what": v.What, "place": problem.Quoted(odd), "missing": problem.Quoted(lacks)})
				return true
			}
		}
	}
	return false
}
