package relabel

import (
	"maps"
	"regexp"
	"slices"
	"strconv"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// cylinder matches the number of a cylinder in a label, in the languages of the
// sheets.
var cylinder = regexp.MustCompile(`(?i)^(?:cyl|zyl|cil)\pL*\.?\s*(\d{1,3})$`)

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

var lettersAndNumber = regexp.MustCompile(`^(.*\D)(\d{1,3})$`)

// checkExchanged warns of two exchanged new names: all other numbers of these
// letters rise by the same amount.
func (s *Names) checkExchanged() {
	if len(s.layers) == 0 {
		return
	}
	type renamed struct {
		old     string
		by, was int
	}
	of := map[string][]renamed{}
	var all []string
	names := s.layers[0].names
	for _, old := range slices.Sorted(maps.Keys(names)) {
		from, to := lettersAndNumber.FindStringSubmatch(old), lettersAndNumber.FindStringSubmatch(names[old].Value.Text)
		if from == nil || to == nil {
			continue
		}
		was, _ := strconv.Atoi(from[2])
		is, _ := strconv.Atoi(to[2])
		letters := from[1] + to[1]
		if of[letters] == nil {
			all = append(all, letters)
		}
		of[letters] = append(of[letters], renamed{old, is - was, was})
	}
	const fewest = 5
	for _, letters := range all {
		list := of[letters]
		steps := map[int]int{}
		for _, r := range list {
			steps[r.by]++
		}
		for step, n := range steps {
			odd := slices.DeleteFunc(slices.Clone(list), func(r renamed) bool { return r.by == step })
			if len(list) >= fewest && n == len(list)-2 && odd[0].was+odd[0].by == odd[1].was+step && odd[1].was+odd[1].by == odd[0].was+step {
				s.problems.Warn(s.layers[0].at, Exchanged, finding.Values{"first": odd[0].old, "second": odd[1].old})
			}
		}
	}
}
