package measures

import (
	"maps"
	"regexp"
	"slices"
	"strconv"

	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/sequence/measure"
)

// Spot is a place where a value could be taken, with what it is called: in 1, cyl 3.
type Spot struct {
	Place  measure.Place
	Called string
}

var wordAndNumber = regexp.MustCompile(`^(.*\pL)\W*(\d{1,3})$`)

// wordOf returns the word of a name that ends in a number; empty for others.
func wordOf(name string) string {
	if m := wordAndNumber.FindStringSubmatch(name); m != nil {
		return m[1]
	}
	return ""
}

// CheckPlaces warns of a place that the lists of one value leave out, of one that is in the
// list of other places, of one that is not opposite the others, and of places whose labels
// do not fit the value.
func CheckPlaces(problems *nodes.Problems, values []measure.Value, at []*nodes.Node, spots []Spot) {
	checked := map[string]bool{}
	for i, v := range values {
		unevenRound(problems, v, at[i], spots)
		otherSide(problems, v, at[i], spots)
		if checked[v.What] {
			continue
		}
		checked[v.What] = true
		widthsDiffer(problems, values[i:], at[i:])
		lists := map[int][]string{} // what the places of each value of this name are called
		for k := range values {
			if values[k].What == v.What {
				lists[k] = calledAt(values[k], spots)
			}
		}
		if !inOtherList(problems, v.What, lists, at) && !unlike(problems, v, lists[i], at[i], spots) {
			leftOut(problems, v, lists, at[i], spots)
		}
	}
}

func calledAt(v measure.Value, spots []Spot) (called []string) {
	for _, p := range v.At {
		for _, s := range spots {
			if s.Place == p {
				called = append(called, s.Called)
			}
		}
	}
	return called
}

// leftOut finds the one place of a row that no list of the value has.
func leftOut(problems *nodes.Problems, v measure.Value, lists map[int][]string, at *nodes.Node, spots []Spot) {
	const fewest, fewestOfFasteners = 3, 5
	has := map[string]bool{}
	for _, called := range lists {
		for _, c := range called {
			has[c] = true
		}
	}
	rows := map[string][]string{}
	for _, s := range spots {
		if w := wordOf(s.Called); w != "" {
			rows[w] = append(rows[w], s.Called)
		}
	}
	for _, w := range slices.Sorted(maps.Keys(rows)) {
		lacks := slices.DeleteFunc(slices.Clone(rows[w]), func(c string) bool { return has[c] })
		enough := fewest
		if slices.ContainsFunc(spots, func(s Spot) bool { return s.Called == rows[w][0] && s.Place.Fastener != "" }) {
			enough = fewestOfFasteners
		}
		if len(rows[w]) >= enough && len(lacks) == 1 {
			problems.Warn(at, PlaceLeftOut, finding.Values{"what": v.What, "place": problem.Quoted(lacks[0])})
		}
	}
}

// inOtherList finds the one place of a list that is called as those of another list of the
// same value.
func inOtherList(problems *nodes.Problems, what string, lists map[int][]string, at []*nodes.Node) bool {
	const fewest = 2 // others in its list
	for _, k := range slices.Sorted(maps.Keys(lists)) {
		words := map[string][]string{}
		for _, c := range lists[k] {
			words[wordOf(c)] = append(words[wordOf(c)], c)
		}
		for _, w := range slices.Sorted(maps.Keys(words)) {
			if len(words) != 2 || len(words[w]) != 1 || w == "" || len(lists[k])-1 < fewest {
				continue
			}
			for n, other := range lists {
				if n != k && len(other) > 0 && !slices.ContainsFunc(other, func(c string) bool { return wordOf(c) != w }) {
					problems.Warn(at[k], PlaceOfOtherList, finding.Values{"what": what, "place": problem.Quoted(words[w][0])})
					return true
				}
			}
		}
	}
	return false
}

// unevenRound finds the one fastener of several evenly round a circle that is not: S1, S4,
// S7, S11 of 12.
func unevenRound(problems *nodes.Problems, v measure.Value, at *nodes.Node, spots []Spot) {
	const fewest = 4
	var numbers []int
	word := ""
	for _, p := range v.At {
		m := wordAndNumber.FindStringSubmatch(p.Fastener)
		if m == nil || word != "" && m[1] != word {
			return
		}
		word = m[1]
		n, _ := strconv.Atoi(m[2])
		numbers = append(numbers, n)
	}
	all := 0
	for _, s := range spots {
		if s.Place.Fastener != "" && wordOf(s.Place.Fastener) == word {
			all++
		}
	}
	if len(numbers) < fewest || all%len(numbers) != 0 || all == len(numbers) {
		return
	}
	step := all / len(numbers)
	of := map[int][]int{} // places in the list by the remainder of the number
	for i, n := range numbers {
		of[n%step] = append(of[n%step], i)
	}
	for _, same := range of {
		if len(same) != len(numbers)-1 {
			continue
		}
		odd := slices.IndexFunc(v.At, func(p measure.Place) bool {
			return !slices.ContainsFunc(same, func(i int) bool { return v.At[i] == p })
		})
		problems.Warn(at, PlaceUneven, finding.Values{"what": v.What, "place": v.At[odd].Name(), "count": len(numbers)})
	}
}

// widthsDiffer warns of a value at other places than the first of its name whose limits
// are much further apart, or closer: the valves of one engine are made alike (common
// practice, no source).
func widthsDiffer(problems *nodes.Problems, values []measure.Value, at []*nodes.Node) {
	const mostTimes = 1.8
	first := values[0]
	if first.From == nil || first.To == nil {
		return
	}
	for i, v := range values[1:] {
		if v.What != first.What || v.Unit != first.Unit || v.From == nil || v.To == nil {
			continue
		}
		a, b := first.To.Minus(*first.From).Float(), v.To.Minus(*v.From).Float()
		if max(a, b) > mostTimes*min(a, b) {
			problems.Warn(at[i+1].KeyNode("to"), WidthsDiffer, finding.Values{
				"what": v.What, "from": v.Read(*v.From), "to": v.Read(*v.To), "otherFrom": v.Read(*first.From), "otherTo": v.Read(*first.To),
			})
			return
		}
	}
}
