package relabel

import (
	"maps"
	"slices"
	"strconv"

	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// cylinder matches the number of a cylinder in a label, in the languages of the
// sheets.
var cylinder = expression.Lazily(`(?i)^(?:cyl|zyl|cil)\pL*\.?\s*(\d{1,3})$`)

// bank maps the numbers of the cylinders of one bank to their labels.
type bank map[int]string

func (b bank) add(label string) {
	if m := cylinder.FindStringSubmatch(label); m != nil {
		n, _ := strconv.Atoi(m[1])
		b[n] = label
	}
}

// Banks warns of new cylinder numbers that both banks would have, and of those
// that leave a gap between the banks.
func (s *Names) Banks() {
	s.checkExchanged()
	if len(s.layers) == 0 || len(s.second) == 0 {
		return
	}
	var shared []string
	all := map[int]bool{}
	for n, label := range s.second {
		all[n] = true
		if s.first[n] != "" {
			shared = append(shared, problem.Quoted(label))
		}
	}
	if len(shared) == len(s.second) {
		return // unchanged
	}
	slices.Sort(shared)
	if len(shared) > 0 {
		s.problems.Warn(s.layers[0].at, BanksShare, finding.Values{"labels": shared})
		return
	}
	least, most := 999, 0
	for n := range s.first {
		all[n] = true
	}
	for n := range all {
		least, most = min(least, n), max(most, n)
	}
	for n := least; n < most; n++ {
		if !all[n] {
			s.problems.Warn(s.layers[0].at, BanksGap, finding.Values{"missing": n, "least": least, "most": most})
			return
		}
	}
}

var lettersAndNumber = expression.Lazily(`^(.*\D)(\d{1,3})$`)

// renamed is a name with a number that gets a new number.
type renamed struct {
	old, new string
	from, to string // letters
	by, was  int
}

// renamedBy groups the new names of the topmost file by their letters, in order.
func (s *Names) renamedBy() (groups [][]renamed) {
	names := s.layers[0].names
	index := map[string]int{}
	for _, old := range slices.Sorted(maps.Keys(names)) {
		is := names[old].Value.Text
		from, to := lettersAndNumber.FindStringSubmatch(old), lettersAndNumber.FindStringSubmatch(is)
		if from == nil || to == nil {
			continue
		}
		was, _ := strconv.Atoi(from[2])
		number, _ := strconv.Atoi(to[2])
		letters := from[1] + "\n" + to[1]
		if _, there := index[letters]; !there {
			index[letters] = len(groups)
			groups = append(groups, nil)
		}
		groups[index[letters]] = append(groups[index[letters]], renamed{old, is, from[1], to[1], number - was, was})
	}
	return groups
}

// checkExchanged warns of two exchanged new names, and of one that is off: all
// other numbers of these letters rise by the same amount.
func (s *Names) checkExchanged() {
	if len(s.layers) == 0 {
		return
	}
	const (
		fewest      = 5
		fewestOfOne = 3 // the two others agree
	)
	groups := s.renamedBy()
	for _, list := range groups {
		steps := map[int]int{}
		for _, r := range list {
			steps[r.by]++
		}
		for step, n := range steps {
			odd := slices.DeleteFunc(slices.Clone(list), func(r renamed) bool { return r.by == step })
			switch {
			case len(list) >= fewest && n == len(list)-2 && odd[0].was+odd[0].by == odd[1].was+step && odd[1].was+odd[1].by == odd[0].was+step:
				s.exchanged(odd[0], odd[1])
			case len(list) >= fewestOfOne && n == len(list)-1 && n >= 2:
				s.problems.Warn(s.layers[0].names[odd[0].old].Value, OneOff, finding.Values{"old": odd[0].old, "new": odd[0].new, "by": step})
			}
		}
		if other, crossed := crossing(list, groups); crossed {
			s.exchanged(list[0], other)
		}
	}
}

func (s *Names) exchanged(a, b renamed) {
	s.problems.Warn(s.layers[0].names[b.old].Value, Exchanged, finding.Values{"first": a.old, "second": b.old})
}

// crossing finds the name that takes the letters of one and gives it its own: in 2
// becomes ex 5 and ex 2 becomes in 5, where all others keep their letters.
func crossing(one []renamed, groups [][]renamed) (other renamed, found bool) {
	a := one[0]
	if len(one) != 1 || a.from >= a.to { // each pair once
		return other, false
	}
	keeps := func(letters string) bool {
		return slices.ContainsFunc(groups, func(g []renamed) bool {
			return len(g) >= 2 && g[0].from == letters && g[0].to == letters && g[0].by == a.by
		})
	}
	for _, g := range groups {
		if b := g[0]; len(g) == 1 && b.from == a.to && b.to == a.from && b.was == a.was && b.by == a.by {
			return b, keeps(a.from) && keeps(a.to)
		}
	}
	return other, false
}
