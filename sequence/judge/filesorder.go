package judge

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

// Findings about the order that a file states.
const (
	StatedDeparts  finding.Code = "order stated departs"  // why: the first departure; more: number of others
	StatedReversed finding.Code = "order stated reversed" // first, last: ids of the list
	StatedParts    finding.Code = "order stated parts"    // name: a cluster, ids, steps; more: number of others
	// first, second: two entries, at step and other; moved: the first should be
	// at the place of the second
	StatedExchanged finding.Code = "order stated exchanged"
)

// Stated judges the order that a file states instead of the program's own. It
// reports an order that departs from the trade's, and the kind it concerns. A
// maker's order, as a list or as cast numbers, is not judged, but some faults
// are reported. If it separates the two fasteners of a cap, one is probably in
// the wrong place. If it departs but its reverse does not, it is probably the
// loosening order. If it is a usual one except for two entries, these are
// probably swapped. Smaller threads first is reported when the input is
// planned.
func Stated(in plan.Input, p plan.Plan) (finding.Finding, bool) {
	isStated := func(g sequence.Group) bool { return g.Way != sequence.Auto && g.Way != "" }
	stated := slices.ContainsFunc(in.Groups, isStated)
	if p.Asked != (plan.Asked{}) || len(p.Joint.Fasteners) > plan.MostJudged || !stated && !slices.ContainsFunc(p.Groups, plan.Group.Makers) {
		return finding.Finding{}, false
	}
	order := ForPlan(p, Tighten, p.IDs(p.Tighten.Order))
	departures := departuresOf(order)
	switch {
	case len(departures) == 0 && order.Makers && remarked(order):
		return exchanged(p)
	case len(departures) == 0 && order.Makers:
		return pairsExchanged(p)
	case len(departures) == 0:
		return finding.Finding{}, false
	case order.Makers:
		if f, found := parted(p, departures); found {
			return f, true
		}
		if f, found := reversed(p, order); found {
			return f, true
		}
		return exchanged(p)
	case !stated:
		return finding.Finding{}, false
	}
	first := departures[0]
	values := finding.Values{"why": first.Found(), "more": len(departures) - 1}
	place := finding.Place{}
	if len(first.Kinds) > 0 {
		place.Kind = first.Kinds[0]
	}
	return finding.Warned(StatedDeparts, values).From(finding.CommonPractice).About(place), true
}

// departuresOf returns how an order departs, whoever made it.
func departuresOf(in Input) []Finding {
	in.Makers = false
	return slices.DeleteFunc(Order(in).Findings, func(f Finding) bool {
		return f.Rule == GroupOrder || f.Severity != Departure && f.Severity != Fault
	})
}

// remarked reports whether an order has remarks, whoever made it.
func remarked(in Input) bool {
	in.Makers = false
	return slices.ContainsFunc(Order(in).Findings, func(f Finding) bool { return f.Rule != GroupOrder && f.Severity == Remark })
}

// parted finds caps with two fasteners of which a maker's order tightens only
// one at first: a list by rows, or two swapped numbers.
func parted(p plan.Plan, departures []Finding) (finding.Finding, bool) {
	var caps []Finding
	for _, d := range departures {
		if d.Rule == Together && len(d.IDs) == 2 {
			caps = append(caps, d)
		}
	}
	if len(caps) == 0 {
		return finding.Finding{}, false
	}
	first := caps[0]
	name := p.ClusterNames()[p.Joint.Index()[first.IDs[0]]]
	values := finding.Values{"name": name, "ids": first.IDs, "steps": first.Steps, "more": len(caps) - 1}
	return finding.Warned(StatedParts, values).From(finding.CommonPractice), true
}

// reversed reverses the groups in maker's order, each in its place.
func reversed(p plan.Plan, in Input) (finding.Finding, bool) {
	var back []int
	values := finding.Values{}
	for _, g := range p.Groups {
		members := slices.Clone(g.Members)
		if g.Makers() && len(members) > 0 {
			slices.Reverse(members)
			values["last"], values["first"] = p.IDs(members[:1])[0], p.IDs(members[len(members)-1:])[0]
		}
		back = append(back, members...)
	}
	in.Order = p.IDs(back)
	if len(departuresOf(in)) > 0 {
		return finding.Finding{}, false
	}
	return finding.Warned(StatedReversed, values).From(finding.CommonPractice), true
}
