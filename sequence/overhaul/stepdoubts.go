package overhaul

import (
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

// What the steps of a machine file say that does not go together. The place is the
// step, from 1.
const (
	PartTooEarly   finding.Code = "machine part too early"   // part, title
	GasketOfOther  finding.Code = "machine gasket twice"     // gasket, title, other
	GasketUnlisted finding.Code = "machine gasket missing"   // title
	LockStaysIn    finding.Code = "machine lock stays in"    // lock
	LockInAgain    finding.Code = "machine lock in again"    // lock
	LockOutAgain   finding.Code = "machine lock out again"   // lock
	PartOtherSide  finding.Code = "machine part other side"  // part, title
	OffTooEarly    finding.Code = "machine off too early"    // part, title, joint: that asks for it
	OfOtherBank    finding.Code = "machine of other bank"    // what: a gasket, a bolt; step
	BanksShare     finding.Code = "machine banks share"      // title, other, labels
	NotMirrored    finding.Code = "machine not mirrored"     // title, other, mirrored: another joint of the same bank
	FigureApart    finding.Code = "machine figure apart"     // text, other
	DrainedLate    finding.Code = "machine drained late"     // text, title
	NobodyTakesOff finding.Code = "machine nobody takes off" // part, joint
)

// Doubts compares the steps of the work with each other and with what the files of
// the joints say. All of it is common practice, no source.
func (o Overhaul) Doubts() (found []finding.Finding) {
	for i, t := range o.Tasks {
		found = append(found, about(i, o.partTooEarly(i), o.gasketOfOther(i), o.gasketUnlisted(t), o.lockStaysIn(t), o.partOtherSide(t), o.offTooEarly(i), t.ofOtherBank(), o.banksShare(i), o.notMirrored(i), o.figureApart(i), o.drainedLate(i))...)
	}
	for _, f := range o.locksAmiss() {
		if !slices.ContainsFunc(found, func(other finding.Finding) bool {
			return other.Code == LockStaysIn && slices.Equal(other.At.Steps, f.At.Steps)
		}) {
			found = append(found, f)
		}
	}
	return found
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
	side := sideOf(tokens(part.Part))
	part.Part = withoutSide(part.Part)
	for i, t := range o.Tasks {
		if t.Joint == nil || !holdsPart(t.Joint.Title, part) {
			continue
		}
		if of := sideOf(tokens(t.Joint.Title)); side != "" && of != "" && of != side {
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
	return warned(PartTooEarly, finding.Values{"part": o.Tasks[task].Part, "title": holds.Title})
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
	named := tokens(t.Part)
	side := sideOf(named)
	if t.Part == "" || side == "" {
		return nil
	}
	part := t
	part.Part = withoutSide(t.Part)
	var other *plan.Plan
	for _, j := range o.Joints() {
		if !holdsPart(j.Title, part) {
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
		if o.jointsBefore(task) >= enoughBefore && !slices.ContainsFunc(o.Tasks[:task], func(t Task) bool { return t.Part != "" && hasAny(tokens(t.Part), tokens(part)) }) {
			return warned(NobodyTakesOff, finding.Values{"part": part, "joint": joint.Title})
		}
	}
	return nil
}

const enoughBefore = 2 // joints: fewer may be a work that begins with the part off

func (o Overhaul) jointsBefore(task int) (n int) {
	for _, t := range o.Tasks[:task] {
		if t.Joint != nil {
			n++
		}
	}
	return n
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
