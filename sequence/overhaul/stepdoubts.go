package overhaul

import (
	"cmp"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

// Doubts compares the steps of the work with each other and with what the files of
// the joints say. All of it is common practice, no source.
func (o Overhaul) Doubts() (found []finding.Finding) {
	if found = o.titleTwice(); len(found) > 0 {
		return found // the names decide all that follows
	}
	for i, t := range o.Tasks {
		found = append(found, about(i, o.partTooEarly(i), o.gasketOfOther(i), o.gasketUnlisted(t), o.lockStaysIn(t), o.partOtherSide(t),
			cmp.Or(o.offTooEarly(i), o.behindOther(i)), o.drainedLate(i), o.turnedOnce(i), o.stopperStays(t), t.textOfOther(),
			t.itemOfOtherSide(), t.gasketNowhere(), o.partOfOneSide(i), t.ownMassDiffers(),
			t.itemOfOther(), o.itemTwice(i), o.fluidOneWay(i), t.switchedOn(), o.toolMissing(i), t.liftedWrong(), o.massUnlikeJoint(t))...)
	}
	found = once(found, PartBehind, "over")
	return slices.Concat(found, o.locksAmiss(), o.sistersAmiss(), o.banksAmiss())
}

// titleTwice looks for two joints of one title.
func (o Overhaul) titleTwice() (found []finding.Finding) {
	first := map[string]bool{}
	for i, t := range o.Tasks {
		if t.Joint == nil {
			continue
		}
		if title := plain(t.Joint.Title); first[title] {
			found = append(found, about(i, warned(TitleTwice, finding.Values{"title": t.Joint.Title}))...)
		} else {
			first[title] = true
		}
	}
	return found
}

// once keeps the first finding of a code with each value of a name.
func once(found []finding.Finding, code finding.Code, name string) []finding.Finding {
	seen := map[any]bool{}
	return slices.DeleteFunc(found, func(f finding.Finding) bool {
		again := f.Code == code && seen[f.Values[name]]
		seen[f.Values[name]] = seen[f.Values[name]] || f.Code == code
		return again
	})
}

// about returns those that were found, with their step.
func about(task int, found ...*finding.Finding) (all []finding.Finding) {
	for _, f := range found {
		if f != nil {
			all = append(all, f.About(finding.Place{Steps: []int{task + 1}}).From(finding.CommonPractice))
		}
	}
	return all
}

func warned(code finding.Code, values finding.Values) *finding.Finding {
	f := finding.Warned(code, values)
	return &f
}

// partTooEarly looks for a part that comes off while the joint of its name still
// holds it.
func (o Overhaul) partTooEarly(task int) *finding.Finding {
	part := o.Tasks[task]
	if part.Part == "" {
		return nil
	}
	var holds *plan.Plan
	for i, t := range o.Tasks {
		if t.Joint == nil || !holdsPart(t.Joint.Title, part) || !ofOneSide(t.Joint.Title, part.Part) {
			continue
		}
		if i < task {
			return nil // it may be this one
		}
		if holds == nil {
			holds = t.Joint
		}
	}
	if holds == nil {
		return nil
	}
	return warned(PartTooEarly, finding.Values{"part": part.Part, "title": holds.Title})
}

// gasketOfOther looks for the gasket of another joint: both list it, and it is
// named after the other one.
func (o Overhaul) gasketOfOther(task int) *finding.Finding {
	this := o.Tasks[task]
	for _, gasket := range this.Gaskets {
		if this.Joint == nil || isNamedAfter(gasket, this.Joint.Title) {
			continue
		}
		for i, t := range o.Tasks {
			if i != task && t.Joint != nil && slices.Contains(t.Gaskets, gasket) && isNamedAfter(gasket, t.Joint.Title) {
				return warned(GasketOfOther, finding.Values{"gasket": gasket, "title": this.Joint.Title, "other": t.Joint.Title})
			}
		}
	}
	return nil
}

// gasketUnlisted looks for a joint that asks for a new gasket in a caution, in a book
// that lists gaskets, but not its own.
func (o Overhaul) gasketUnlisted(t Task) *finding.Finding {
	if t.Joint == nil || t.Joint.Clamped.Gasket.Kind != "" || len(t.Gaskets) > 0 || len(o.Gaskets()) == 0 || !slices.ContainsFunc(t.Joint.Cautions, asksForGasket) {
		return nil
	}
	return warned(GasketUnlisted, finding.Values{"title": t.Joint.Title})
}

func asksForGasket(c plan.Caution) bool {
	said := tokens(c.Text)
	return c.Side != plan.CautionLoosen && hasAny(said, newWords) && slices.ContainsFunc(said, isGasketWord)
}

// lockStaysIn looks for a pin or a lock that goes in and never comes out: the
// machine would be turned against it.
func (o Overhaul) lockStaysIn(t Task) *finding.Finding {
	for _, clause := range t.clauses() {
		lock := lockPut(clause, inWords)
		if lock == "" {
			continue
		}
		out := slices.ContainsFunc(o.Tasks, func(t Task) bool {
			return slices.ContainsFunc(t.clauses(), func(c string) bool { return lockPut(c, outWords) == lock })
		})
		if !out {
			return warned(LockStaysIn, finding.Values{"lock": strings.TrimSpace(clause)})
		}
	}
	return nil
}

// clauses are the things to do that the texts of a task name.
func (t Task) clauses() []string { return clausesOf([]string{t.Note, t.Loosen, t.Tighten}) }

func clausesOf(texts []string) (all []string) {
	for _, text := range texts {
		all = append(all, strings.FieldsFunc(text, func(c rune) bool { return strings.ContainsRune(";,.:", c) })...)
	}
	return all
}

// partOtherSide looks for a part of one bank where only the joint of the other bank is
// opened.
func (o Overhaul) partOtherSide(t Task) *finding.Finding {
	_, side := bare(t.Part)
	if side == "" {
		return nil
	}
	var other *plan.Plan
	for _, j := range o.Joints() {
		if !holdsPart(j.Title, t) {
			continue
		}
		if of := sideOf(tokens(j.Title)); of == side || of == "" {
			return nil
		}
		other = j.Plan
	}
	if other == nil {
		return nil
	}
	return warned(PartOtherSide, finding.Values{"part": t.Part, "title": other.Title})
}

// offTooEarly looks for a joint that is seen, or opened, with a part off whose own joint
// is opened only later.
func (o Overhaul) offTooEarly(task int) *finding.Finding {
	joint := o.Tasks[task].Joint
	if joint == nil {
		return nil
	}
	for _, part := range partsOff(*joint) {
		holds := func(t Task) bool { return t.Joint != nil && holdsPart(t.Joint.Title, Task{Part: part}) }
		if slices.ContainsFunc(o.Tasks[:task], holds) {
			continue
		}
		if later := slices.IndexFunc(o.Tasks[task+1:], holds); later >= 0 {
			return warned(OffTooEarly, finding.Values{"part": part, "joint": joint.Title, "title": o.Tasks[task+1+later].Joint.Title})
		}
	}
	return nil
}

// partsOff lists the parts that the texts of a joint name as off: view: from below, sump
// off.
func partsOff(p plan.Plan) (parts []string) {
	texts := []string{p.View}
	for _, c := range p.Cautions {
		if c.Side != plan.CautionTighten {
			texts = append(texts, c.Text)
		}
	}
	const longest = 3 // words
	for _, clause := range clausesOf(texts) {
		said := tokens(clause)
		if n := len(said) - 1; n >= 1 && n <= longest && slices.Contains(offWords, said[n]) && !(n == 1 && slices.Contains(manyParts, said[0])) {
			parts = append(parts, strings.Join(said[:n], " "))
		}
	}
	return parts
}
