package relabel

import (
	"regexp"
	"slices"
	"strconv"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// cylinder finds the number of a cylinder in a label, in the languages of the sheets.
var cylinder = regexp.MustCompile(`(?i)^(?:cyl|zyl|cil)\pL*\.?\s*(\d{1,3})$`)

// bank is the numbers of the cylinders of one bank, with their labels.
type bank map[int]string

func (b bank) add(label string) {
	if m := cylinder.FindStringSubmatch(label); m != nil {
		n, _ := strconv.Atoi(m[1])
		b[n] = label
	}
}

// Banks warns of new numbers of cylinders that both banks would have, and of those
// that leave a number out between the banks.
func (s *Names) Banks() {
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
		return // kept as they are
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
