package overhaul

import (
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

// name is what a step opens or takes off; empty for a note.
func (t Task) name() string {
	if t.Joint != nil {
		return t.Joint.Title
	}
	return t.Part
}

// behindOther looks for a step at something that another one, still to come, covers
// or holds.
func (o Overhaul) behindOther(task int) *finding.Finding {
	t := o.Tasks[task]
	if t.name() == "" {
		return nil
	}
	for _, l := range layers {
		if !names(t.name(), l.under) && !(t.Part != "" && names(t.Loosen, l.under)) {
			continue
		}
		covers := func(other Task) bool { return names(other.name(), l.over) && ofOneSide(other.name(), t.name()) }
		begun := func(other Task) bool {
			return covers(other) || hasAny(tokens(other.name()+" "+other.Note+" "+other.Loosen), l.unless)
		}
		if slices.ContainsFunc(o.Tasks[:task], begun) {
			continue
		}
		if later := slices.IndexFunc(o.Tasks[task+1:], covers); later >= 0 {
			return warned(PartBehind, finding.Values{"part": t.name(), "over": o.Tasks[task+1+later].name()})
		}
	}
	return nil
}

// names says that a text names one of some parts: at its end, or before a word that
// joins more to it. So a camshaft sprocket is no camshaft.
func names(text string, parts []string) bool {
	if end := strings.IndexAny(text, ",;:(·–"); end > 0 {
		text = text[:end]
	}
	said, _ := bare(text)
	return slices.ContainsFunc(parts, func(part string) bool {
		words := strings.Fields(part)
		for i := 0; i+len(words) <= len(said); i++ {
			rest := said[i+len(words):]
			if slices.Equal(said[i:i+len(words)], words) && (len(rest) == 0 || slices.Contains(joiners, rest[0]) || slices.Contains(fastenings, rest[0])) {
				return true
			}
		}
		return false
	})
}

// What a machine is drained of, and what cannot be open before.
var (
	drained = []string{"drained", "drain", "abgelassen", "ablassen", "vidangé", "vidangée", "vidanger", "vaciado", "vaciar"}
	filled  = []string{"filled", "fill", "aufgefüllt", "eingefüllt", "einfüllen", "rempli", "remplir", "llenado", "llenar"}
	pumps   = []string{"pump", "filter", "pumpe", "ölpumpe", "pompe", "filtre", "bomba", "filtro"}
	fluids  = []struct{ fluid, held []string }{
		{[]string{"oil", "öl", "motoröl", "huile", "aceite"}, sumps},
		{[]string{"coolant", "kühlmittel", "kühlwasser", "refroidissement", "refrigerante"}, heads},
	}
)

// drainedLate looks for oil or coolant that is drained when what holds it is open, or
// filled in before that is closed.
func (o Overhaul) drainedLate(task int) *finding.Finding {
	t := o.Tasks[task]
	for _, side := range []plan.CautionSide{plan.CautionLoosen, plan.CautionTighten} {
		moved := drained
		if side == plan.CautionTighten {
			moved = filled
		}
		for _, clause := range t.clausesOn(side) {
			said := tokens(clause)
			if !hasAny(said, moved) || side == plan.CautionTighten && (t.Part != "" || hasAny(said, pumps)) {
				continue
			}
			for _, f := range fluids {
				open := slices.IndexFunc(o.Tasks[:task], func(t Task) bool { return names(t.name(), f.held) })
				if open >= 0 && hasAny(said, f.fluid) && !o.movedAbove(open, side, moved, f.fluid) {
					return warned(DrainedLate, finding.Values{"text": strings.TrimSpace(clause), "side": string(side), "name": o.Tasks[open].name()})
				}
			}
		}
	}
	return nil
}

// movedAbove says that a step above another one drains or fills the same, too.
func (o Overhaul) movedAbove(task int, side plan.CautionSide, moved, fluid []string) bool {
	return slices.ContainsFunc(o.Tasks[:task], func(t Task) bool {
		return slices.ContainsFunc(t.clausesOn(side), func(c string) bool { return hasAny(tokens(c), moved) && hasAny(tokens(c), fluid) })
	})
}

// clausesOn are the things to do on one side that the texts of a task name.
func (t Task) clausesOn(side plan.CautionSide) []string {
	texts := []string{t.Remark(side)}
	if t.Note != "" && (t.Side == side || t.Side == plan.CautionBoth) {
		texts = append(texts, t.Note)
	}
	return clausesOf(texts)
}
