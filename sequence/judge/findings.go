package judge

import (
	"slices"
	"strconv"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// What an order can do, one code per rule. side is that of the work; at is
// AtSteps.
const (
	UnknownName    finding.Code = "order unknown name"       // names, at; meant: the one it may mean
	NamedTwice     finding.Code = "order names twice"        // id, first, again: steps
	LeftOut        finding.Code = "order leaves out"         // ids
	GroupsMixed    finding.Code = "order mixes groups"       // n, ids, at, against, side
	ClusterParted  finding.Code = "order parts a cluster"    // ids, at, side
	UnloadedLate   finding.Code = "order unloaded late"      // id, step, against, againststep, side
	UnloadedEarly  finding.Code = "order unloaded early"     // id, step, against, againststep, side
	NotFromMiddle  finding.Code = "order not from middle"    // id, middle, side
	Inwards        finding.Code = "order goes inwards"       // id, step, against, againststep, n, side
	LongOneSide    finding.Code = "order long on one side"   // n, ids, at, most
	NextNeighbours finding.Code = "order goes to neighbours" // n, first, second, early, late, most
	NotAcross      finding.Code = "order not across"         // n, of, first, second, early, late
	PullsAside     finding.Code = "order pulls aside"        // id, step, pull, most, side
	BendsPart      finding.Code = "order bends the part"     // id, step, bend, most, side
	LongWay        finding.Code = "order long way"           // way, own
	AtSteps        finding.Code = "at steps"                 // n, steps; from, to: if they are consecutive
)

// What can be wrong with a list of fasteners.
const (
	NoNames       finding.Code = "list names nothing"  //
	MixedNames    finding.Code = "list mixes names"    // id, cast
	CastNotOne    finding.Code = "cast number not one" // cast, ids
	WayNotAnOrder finding.Code = "order is a way"      // way
)

// severities maps the severities of this package to those of findings.
var severities = map[Severity]finding.Severity{
	Fault: finding.Error, Departure: finding.Warning, Remark: finding.Note, Description: finding.Note,
}

// Found returns the finding as a code with its values, for render/words.
func (f Finding) Found() finding.Finding {
	code, values := f.coded()
	values["side"] = string(f.Side)
	return finding.Finding{
		Code: code, Severity: severities[f.Severity], Values: values,
		At: finding.Place{IDs: f.IDs, Steps: f.Steps}, Ground: finding.CommonPractice,
	}
}

func (f Finding) coded() (finding.Code, finding.Values) {
	switch f.Rule {
	case Unknown:
		names := make([]string, len(f.IDs))
		for k, id := range f.IDs {
			names[k] = strconv.Quote(id)
		}
		v := finding.Values{"names": names, "at": atSteps(f.Steps)}
		if len(f.Against) > 0 {
			v["meant"] = f.Against[0]
		}
		return UnknownName, v
	case Twice:
		return NamedTwice, finding.Values{"id": f.IDs[0], "first": f.Steps[0], "again": f.Steps[1]}
	case Missing:
		return LeftOut, finding.Values{"ids": f.IDs}
	case GroupOrder:
		return GroupsMixed, finding.Values{"n": len(f.IDs), "ids": f.IDs, "at": atSteps(f.Steps), "against": f.Against}
	case Together:
		return ClusterParted, finding.Values{"ids": f.IDs, "at": atSteps(f.Steps)}
	case Unloaded:
		k := 0 // the first to go on decides, or the last to come off
		if f.Side == Loosen {
			k = len(f.IDs) - 1
		}
		v := f.heldAgainst(k)
		if early := f.Steps[k] < f.AgainstSteps[0]; early != (f.Side == Loosen) {
			return UnloadedEarly, v
		}
		return UnloadedLate, v
	case Middle:
		return NotFromMiddle, finding.Values{"id": f.IDs[0], "middle": f.Against}
	case Outwards:
		v := f.heldAgainst(0)
		v["n"] = int(f.Figure)
		return Inwards, v
	case OneSide:
		return LongOneSide, finding.Values{"n": int(f.Figure), "ids": f.IDs, "at": atSteps(f.Steps), "most": f.Allowed}
	case Neighbours:
		v := f.firstPair()
		v["most"] = f.Allowed
		return NextNeighbours, v
	case Across:
		v := f.firstPair()
		v["of"] = f.Of
		return NotAcross, v
	case Balance:
		return PullsAside, finding.Values{"id": f.IDs[0], "step": f.Steps[0], "pull": f.Figure, "most": f.Allowed}
	case Saddle:
		return BendsPart, finding.Values{"id": f.IDs[0], "step": f.Steps[0], "bend": f.Figure, "most": f.Allowed}
	case Travel:
		return LongWay, finding.Values{"way": unit.Length(f.Figure), "own": unit.Length(f.Allowed)}
	}
	panic("no code for the rule " + f.Rule)
}

// heldAgainst returns one of the fasteners with the first of those it is
// compared with.
func (f Finding) heldAgainst(k int) finding.Values {
	return finding.Values{"id": f.IDs[k], "step": f.Steps[k], "against": f.Against[0], "againststep": f.AgainstSteps[0]}
}

// firstPair is the first pair of a finding, in working order.
func (f Finding) firstPair() finding.Values {
	first, second := f.Against[0], f.IDs[0]
	if f.Side == Loosen {
		first, second = second, first
	}
	return finding.Values{
		"n": int(f.Figure), "first": first, "second": second,
		"early": min(f.Steps[0], f.AgainstSteps[0]), "late": max(f.Steps[0], f.AgainstSteps[0]),
	}
}

// atSteps names steps of an order; consecutive ones by their ends.
func atSteps(steps []int) finding.Finding {
	v := finding.Values{"n": len(steps), "steps": steps}
	if last := len(steps) - 1; last > 1 && steps[last]-steps[0] == last && slices.IsSorted(steps) {
		v["from"], v["to"] = steps[0], steps[last]
	}
	return finding.Noted(AtSteps, v)
}
