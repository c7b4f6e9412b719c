// Package texts compares the texts of a file with what the file states:
// figures, counts, names, sizes, lubricants, sides. A text may be about
// something else, so all findings are questions, and texts that it does not
// understand are ignored. It reads English, German, French and Spanish.
package texts

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

// Statements of a text that the file lacks or contradicts.
const (
	TextTorque      finding.Code = "text torque"       // text, torque; kind: where it is of one
	TextAngle       finding.Code = "text angle"        // text, angle; kind: where it is of one
	TextDry         finding.Code = "text dry"          // text, kinds, lubricants
	TextLubricant   finding.Code = "text lubricant"    // text, lubricants
	TextCount       finding.Code = "text count"        // text, stated, what, count
	TextName        finding.Code = "text name"         // text, name
	TextSize        finding.Code = "text size"         // text, stated, have: sizes of the file
	TextGasket      finding.Code = "text gasket"       // text, gasket: that of the joint
	TextSide        finding.Code = "text side"         // text, other: the text of the other side
	TextOtherWork   finding.Code = "text other work"   // text, side: that it is written for
	TextMachine     finding.Code = "text machine"      // text, machine
	TextReuse       finding.Code = "text reuse"        // text, kinds, reuse
	TextsDisagree   finding.Code = "texts disagree"    // text, other
	TextPlace       finding.Code = "text place"        // text, label, side
	TextOtherKind   finding.Code = "text other kind"   // text, id, kind: that it is said of, own: of the id
	TextStageKind   finding.Code = "text stage kind"   // text, kind, kinds: of the stage
	TextAngleFrom   finding.Code = "text angle from"   // text, torque, before: the torque before the angle
	TextCylinders   finding.Code = "text cylinders"    // text, stated, count, highest: of the bores
	TextGasketAgain finding.Code = "text gasket again" // text, gasket: that of the joint
	TextFirst       finding.Code = "text first"        // text, which: first or last, have: ids that are
	TextBefore      finding.Code = "text before"       // text, first, second: kinds, as in the text
	TextAtSide      finding.Code = "text at side"      // text, names: ids, side
	TextFromSide    finding.Code = "text from side"    // text, name: the number at that side, side
	TextWait        finding.Code = "text wait"         // text, stated, wait
	TextHot         finding.Code = "text hot"          // text, stated: degrees Celsius
	TextPressure    finding.Code = "text pressure"     // text, stated
	TextUpsideDown  finding.Code = "text upside down"  // text
	TextsThrust     finding.Code = "texts thrust"      // text, other
	TextDesignation finding.Code = "text designation"  // text, name, machine
	TextAgain       finding.Code = "text again"        // text, kinds: that must not be
	TextOtherOrder  finding.Code = "text other order"  // text, first, last: of the file
)

// Notes compares the notes of the tightening stages with the file.
func Notes(p plan.Plan) (found []finding.Finding) {
	facts := factsOf(p)
	for _, s := range p.Tighten.Stages {
		angles := anglesOf(p, s.Number)
		if s.Do != plan.Advance {
			angles = anglesOf(p, 0)
		}
		general := slices.Concat(figuresIn(p, s.Note, angles), facts.compare(s.Note), facts.anglesFrom(s), facts.arranged(s.Note, p.Tighten), noteOfWait(s), facts.within(s.Note, s.Number-1))
		for _, f := range append(general, besides(general, append(facts.noteOfOther(s), facts.ofOtherKind(s.Note, plan.CautionTighten, &s)...))...) {
			found = append(found, f.About(finding.Place{Stage: s.Number}))
		}
	}
	return found
}

// LoosenNotes compares the notes of the stages of loosening with the file.
func LoosenNotes(p plan.Plan) (found []finding.Finding) {
	facts := factsOf(p)
	for _, s := range p.Loosen.Stages {
		for _, f := range slices.Concat(facts.compare(s.Note), facts.arranged(s.Note, p.Loosen), facts.otherWork(plan.Caution{Text: s.Note, Side: plan.CautionLoosen})) {
			found = append(found, f.About(finding.Place{Stage: s.Number}))
		}
	}
	return found
}

// arranged checks what a text says of the order and the sides of the part.
func (f facts) arranged(text string, side plan.Side) []finding.Finding {
	return slices.Concat(f.ordered(text, side), f.before(text, side), f.atSides(text))
}

// Measures compares the values to measure with the file; the result has the same order as
// the list.
func Measures(p plan.Plan) [][]finding.Finding {
	facts := factsOf(p)
	found := make([][]finding.Finding, len(p.Measures))
	for i, m := range p.Measures {
		found[i] = slices.Concat(facts.otherMachine(m.Source), facts.designation(m.Source))
	}
	return found
}

// Cautions compares the cautions with the file; the result has the same order
// as the list.
func Cautions(p plan.Plan) [][]finding.Finding {
	facts := factsOf(p)
	found := make([][]finding.Finding, len(p.Cautions))
	for i, c := range p.Cautions {
		if c.Side != plan.CautionLoosen {
			found[i] = append(figuresIn(p, c.Text, anglesOf(p, 0)), dryBesideOil(p, c.Text)...)
		}
		found[i] = append(found[i], slices.Concat(disagrees(p, i), holesDisagree(p, i), thrusts(p, i))...)
		switch c.Side {
		case plan.CautionTighten:
			found[i] = slices.Concat(found[i], facts.arranged(c.Text, p.Tighten), facts.otherOrder(c.Text, p.Tighten, p.Loosen), facts.tightenedAgain(c.Text), facts.within(c.Text, facts.closing()))
		case plan.CautionLoosen:
			found[i] = slices.Concat(found[i], facts.arranged(c.Text, p.Loosen), facts.otherOrder(c.Text, p.Loosen, p.Tighten), tooHot(c.Text), underPressure(c.Text))
		default:
			found[i] = slices.Concat(found[i], facts.atSides(c.Text), facts.tightenedAgain(c.Text))
		}
		found[i] = slices.Concat(found[i], facts.compare(c.Text), facts.otherWork(c), facts.otherSide(c.Text), facts.otherMachine(c.Text))
		found[i] = append(found[i], besides(found[i], facts.ofOtherKind(c.Text, c.Side, nil))...)
	}
	return found
}

// besides returns the findings of more whose sort is not in before.
func besides(before, more []finding.Finding) []finding.Finding {
	if len(before) == 0 {
		return more
	}
	return slices.DeleteFunc(more, func(f finding.Finding) bool { return finding.Has(before, f.Code) })
}

// Title compares the title with the file.
func Title(p plan.Plan) []finding.Finding {
	facts := factsOf(p)
	return slices.Concat(facts.compare(p.Title), facts.filedOtherwise(), facts.labelledOtherwise(), facts.otherMachine(p.Title), facts.designation(p.Title), facts.cylinders(p.Title))
}

// View compares the sides in the view with the labels.
func View(p plan.Plan) []finding.Finding { return factsOf(p).sidesOfView() }

// Source compares the source of the figures with the file.
func Source(p plan.Plan) []finding.Finding {
	facts := factsOf(p)
	return append(facts.otherMachine(p.Source), facts.designation(p.Source)...)
}

// compare checks a text against everything that it may name.
func (f facts) compare(text string) []finding.Finding {
	if text == "" {
		return nil
	}
	words := wordsOf(text)
	return slices.Concat(f.counts(text, words, text == f.Title), f.names(text, words), f.sizes(text), f.lubricants(text), f.gaskets(text), f.gasketAgain(text), f.reuse(text), f.boresIn(text), upsideDown(text))
}
