package job

import (
	"fmt"

	"drawdown/geometry/holes"
	"drawdown/geometry/trace"
)

// taken says what the sizes of hole were taken for where that may surprise:
// where a range that was named for bolts leaves out another size, and where a
// few smaller holes count as bolts because nobody spoke of dowels.
func taken(found trace.Found, rule holes.Rule) []string {
	count, role := map[int]int{}, map[int]trace.Role{}
	common := -1 // the most common size of bolts
	for _, s := range found.Shapes {
		if s.Round() {
			count[s.Group]++
			role[s.Group] = s.Role
		}
	}
	var lines []string
	for g, mm := range found.GroupsMm {
		if count[g] == 0 {
			continue
		}
		if common < 0 && role[g] == trace.Fastener {
			common = g
		}
		size := fmt.Sprintf("%s of %.1f mm", holeCount(count[g]), mm)
		switch {
		case rule.Fasteners.IsSet() && role[g] == trace.Bore && !rule.Bores.IsSet():
			lines = append(lines, fmt.Sprintf("%s: above --bolts %v, so bores", size, rule.Fasteners))
		case role[g] == trace.Port:
			lines = append(lines, fmt.Sprintf("%s: below --bolts %v, so openings", size, rule.Fasteners))
		case role[g] == trace.Fastener && g != common && !rule.Dowels.IsSet() && !rule.Fasteners.IsSet() &&
			count[g] < holes.ManyHoles && mm < found.GroupsMm[common]:
			lines = append(lines, fmt.Sprintf("%s: bolts; dowels? Then say --dowels %.1fmm", size, mm))
		}
	}
	return lines
}

func holeCount(n int) string {
	if n == 1 {
		return "1 hole"
	}
	return fmt.Sprintf("%d holes", n)
}
