package judge

import (
	"slices"

	"drawdown/geometry"
	"drawdown/sequence"
)

// Order judges an order of the fasteners of a joint.
func Order(in Input) Report {
	report := Report{Side: in.Side, Makers: in.Makers, Findings: []Finding{}}
	if report.Side == "" {
		report.Side = Tighten
	}
	order, faults := in.whole()
	if len(faults) == 0 {
		if report.Side == Loosen {
			slices.Reverse(order)
		}
		report.judge(in, order)
	} else {
		report.Findings = faults
	}
	report.settle(len(order))
	return report
}

// judge checks a complete tightening order against the rules.
func (r *Report) judge(in Input, order []int) {
	step := make([]int, len(in.Joint.Fasteners))
	for k, i := range order {
		step[i] = k + 1
	}
	groups := in.groups()
	r.Findings = append(r.Findings, groupOrder(in.Joint, groups, order)...)
	var own []int
	for _, g := range groups {
		members := slices.DeleteFunc(slices.Clone(order), func(i int) bool {
			return !slices.Contains(g.Kinds, in.Joint.Fasteners[i].Kind)
		})
		if len(members) == 0 {
			continue
		}
		w := newWork(in.Joint, members, step)
		report, findings := w.judge()
		report.Kinds, report.IDs = g.Kinds, in.Joint.IDs(members)
		for k := range findings {
			findings[k].Kinds = g.Kinds
		}
		r.Groups, r.Findings = append(r.Groups, report), append(r.Findings, findings...)
		own = append(own, w.ownOrder(members)...)
	}
	r.TravelMm, r.OwnTravelMm = travel(in.Joint, order), travel(in.Joint, own)
	if far := r.TravelMm / max(r.OwnTravelMm, 1e-9); far > farTravel && len(order) > 2 {
		r.Findings = append(r.Findings, Finding{Rule: Travel, Severity: Description, Figure: r.TravelMm, Allowed: r.OwnTravelMm})
	}
}

// settle converts the findings to the side of the work and derives the verdict.
func (r *Report) settle(fasteners int) {
	r.Verdict = Sound
	for k := range r.Findings {
		f := &r.Findings[k]
		f.Side = r.Side
		if f.Severity == Fault {
			r.Verdict = NotWhole
			continue
		}
		if r.Side == Loosen {
			f.reverse(fasteners)
		}
		switch {
		case r.Makers:
			f.Severity = Description
		case f.Severity == Departure:
			r.Verdict = Departs
		case f.Severity == Remark && r.Verdict == Sound:
			r.Verdict = Remarks
		}
	}
	if r.Side == Loosen {
		for k := range r.Groups {
			g := &r.Groups[k]
			slices.Reverse(g.IDs)
			g.Order.PullStep = afterwards(g.Order.PullStep, fasteners)
		}
		slices.Reverse(r.Groups)
	}
	if r.Makers && r.Verdict != NotWhole {
		r.Verdict = Described
	}
}

// reverse converts the steps of a tightening order to those of its reverse.
func (f *Finding) reverse(fasteners int) {
	turned := func(step int) int { return fasteners + 1 - step }
	if f.Rule == Balance || f.Rule == Saddle {
		turned = func(step int) int { return afterwards(step, fasteners) }
	}
	for k := range f.Steps {
		f.Steps[k] = turned(f.Steps[k])
	}
	slices.Reverse(f.Steps)
	slices.Reverse(f.IDs)
	for k := range f.AgainstSteps {
		f.AgainstSteps[k] = turned(f.AgainstSteps[k])
	}
	if len(f.AgainstSteps) > 0 {
		slices.Reverse(f.Against)
		slices.Reverse(f.AgainstSteps)
	}
}

// afterwards returns the loosening step after which the same fasteners are
// tight as after a tightening step.
func afterwards(step, fasteners int) int { return fasteners - step }

// travel adds up the distances from fastener to fastener.
func travel(j geometry.Joint, order []int) float64 {
	sum := 0.0
	for k := 1; k < len(order); k++ {
		sum += j.Fasteners[order[k]].At.Distance(j.Fasteners[order[k-1]].At)
	}
	return sum
}

// ownOrder returns drawdown's own order of a group's members.
func (w *work) ownOrder(members []int) []int {
	sorted := slices.Sorted(slices.Values(members))
	order, err := sequence.OrderGroup(w.joint, sorted, sequence.Group{Way: sequence.Auto})
	if err != nil {
		return members // auto needs nothing that can be missing
	}
	return order
}
