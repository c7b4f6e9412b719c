package wrenches

import (
	"regexp"
	"slices"
	"strconv"

	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/sequence/tension/wrench"
)

// besideOthers compares each wrench with the others of the list, which are at these
// nodes.
func (r *reader) besideOthers(list []wrench.Wrench, at []*nodes.Node) {
	r.nameOther(list, at)
	newest := ""
	for _, w := range list {
		newest = max(newest, w.Calibrated)
	}
	for i, w := range list {
		if w.Calibrated != "" && yearOf(newest)-yearOf(w.Calibrated) > mostYears {
			r.Warn(at[i].KeyNode("calibrated"), CalibratedLong, finding.Values{"date": w.Calibrated, "newest": newest})
		}
	}
}

// mostYears may be between two calibrations of one shop's wrenches: they are calibrated
// once a year (ISO 6789-1, from memory).
const mostYears = 3

func yearOf(date string) (year int) {
	const digits = 4
	year, _ = strconv.Atoi(date[:min(len(date), digits)])
	return year
}

var figureInName = regexp.MustCompile(`\d+(?:\.\d+)?`)

// nameOther warns of the one wrench whose name has another figure than the end of its
// scale, which the names of all others have.
func (r *reader) nameOther(list []wrench.Wrench, at []*nodes.Node) {
	const fewest = 3
	odd := -1
	for i, w := range list {
		figures := figureInName.FindAllString(w.Name, -1)
		has := func(end float64) bool { return slices.Contains(figures, strconv.FormatFloat(end, 'f', -1, 64)) }
		switch {
		case len(figures) == 0:
			return
		case has(w.Max):
		case odd >= 0:
			return
		default:
			odd = i
		}
	}
	if odd < 0 || len(list) < fewest {
		return
	}
	w := list[odd]
	r.Warn(at[odd].KeyNode("to"), NameOther, finding.Values{"name": problem.Quoted(w.Name), "end": at[odd].Get("to").Text})
}
