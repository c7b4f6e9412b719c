package overhaul

import (
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

// opposites are words of a name that exclude each other, in the languages of the cards.
var opposites = [][2][]string{
	{{"front", "vordere", "vorderer", "vorderen", "avant", "delantero", "delantera"}, {"rear", "hintere", "hinterer", "hinteren", "arrière", "trasero", "trasera"}},
	{{"upper", "obere", "oberer", "oberen", "supérieur", "supérieure", "superior"}, {"lower", "untere", "unterer", "unteren", "inférieur", "inférieure", "inferior"}},
	{{"inner", "innere", "innerer", "inneren", "intérieur", "intérieure", "interior"}, {"outer", "äußere", "äußerer", "äußeren", "extérieur", "extérieure", "exterior"}},
	{{"intake", "inlet", "einlass", "ansaugkrümmer", "admission", "admisión"}, {"exhaust", "auslass", "auspuffkrümmer", "abgaskrümmer", "échappement", "escape"}},
}

// itemOfOther looks for a gasket, a new part or a bolt that is named after the opposite
// of its step: front crankshaft seal at the rear seal carrier.
func (t Task) itemOfOther() *finding.Finding {
	name := tokens(t.name())
	for _, item := range t.needs() {
		said := tokens(item)
		for _, o := range opposites {
			for k := range o {
				if hasAny(name, o[k]) && !hasAny(name, o[1-k]) && hasAny(said, o[1-k]) && !hasAny(said, o[k]) {
					return warned(ItemOfOther, finding.Values{"item": item, "name": t.name()})
				}
			}
		}
	}
	return nil
}

// itemTwice looks for what is listed at two steps and is named after the other one.
func (o Overhaul) itemTwice(task int) *finding.Finding {
	t := o.Tasks[task]
	if t.Part == "" {
		return nil
	}
	for _, item := range slices.Concat(t.New, t.Manual) {
		if isNamedAfter(item, t.Part) || !ofOneSide(item, t.Part) {
			continue
		}
		for i, other := range o.Tasks {
			if i != task && slices.Contains(other.needs(), item) && isNamedAfter(item, other.name()) {
				return warned(ItemTwice, finding.Values{"item": item, "name": t.Part, "other": other.name()})
			}
		}
	}
	return nil
}

// liquids are what a machine is drained of and filled with.
var liquids = [][]string{
	{"oil", "öl", "motoröl", "huile", "aceite"},
	{"coolant", "kühlmittel", "kühlwasser", "refroidissement", "refrigerante"},
	{"fuel", "kraftstoff", "diesel", "carburant", "combustible"},
}

// fluidOneWay looks for a liquid that is drained and never filled in, or the reverse,
// where another one is.
func (o Overhaul) fluidOneWay(task int) *finding.Finding {
	t := o.Tasks[task]
	for _, side := range []plan.CautionSide{plan.CautionLoosen, plan.CautionTighten} {
		here, there := drained, filled
		if side == plan.CautionTighten {
			here, there = filled, drained
		}
		if t.Part != "" || !o.anyMoved(otherSide(side), there, nil) {
			continue
		}
		for _, clause := range t.clausesOn(side) {
			said := tokens(clause)
			for _, l := range liquids {
				if hasAny(said, here) && hasAny(said, l) && !hasAny(said, pumps) && !o.anyMoved(otherSide(side), there, l) {
					return warned(FluidOneWay, finding.Values{"text": strings.TrimSpace(clause), "side": string(otherSide(side))})
				}
			}
		}
	}
	return nil
}

// anyMoved says that a step drains or fills a liquid; nil is any of them.
func (o Overhaul) anyMoved(side plan.CautionSide, moved, liquid []string) bool {
	return slices.ContainsFunc(o.Tasks, func(t Task) bool {
		return slices.ContainsFunc(t.clausesOn(side), func(c string) bool {
			said := tokens(c)
			known := slices.ContainsFunc(liquids, func(l []string) bool { return hasAny(said, l) })
			return hasAny(said, moved) && known && (liquid == nil || hasAny(said, liquid))
		})
	})
}

// What is off while a machine is open, in the languages of the cards.
var (
	supplies = []string{"battery", "power", "mains", "batterie", "strom", "netz", "courant", "batería", "corriente"}
	switched = map[plan.CautionSide][]string{
		plan.CautionLoosen:  {"on", "an", "ein", "eingeschaltet", "angeklemmt", "branchée", "branché", "conectada", "conectado"},
		plan.CautionTighten: {"off", "ab", "aus", "ausgeschaltet", "abgeklemmt", "débranchée", "débranché", "desconectada", "desconectado"},
	}
)

// switchedOn looks for a battery or a supply that is connected for the teardown, or
// disconnected at the rebuild.
func (t Task) switchedOn() *finding.Finding {
	const most = 3 // words: battery on
	for _, side := range []plan.CautionSide{plan.CautionLoosen, plan.CautionTighten} {
		if t.Note != "" && t.Side == plan.CautionBoth {
			continue
		}
		for _, clause := range t.clausesOn(side) {
			said := tokens(clause)
			if len(said) <= most && len(said) > 1 && hasAny(said[:1], supplies) && hasAny(said[1:], switched[side]) {
				return warned(SwitchedOn, finding.Values{"text": strings.TrimSpace(clause), "side": string(side)})
			}
		}
	}
	return nil
}

// toolMissing looks for a lock that goes in and that the list of tools lacks.
func (o Overhaul) toolMissing(task int) *finding.Finding {
	if len(o.Tools) == 0 {
		return nil
	}
	listed := func(word string) bool {
		return slices.ContainsFunc(o.Tools, func(tool string) bool { return slices.Contains(tokens(tool), word) })
	}
	for i, t := range o.Tasks[:task+1] {
		for _, clause := range t.clauses() {
			lock := lockPut(clause, inWords)
			if lock == "" || listed(lock) || len(o.Tools) < 2 {
				continue
			}
			if i < task { // it is reported there
				return nil
			}
			return warned(ToolMissing, finding.Values{"text": strings.TrimSpace(clause)})
		}
	}
	return nil
}
