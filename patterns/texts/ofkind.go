package texts

import (
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
)

// asides are words after which a kind only states when, or beside what.
var asides = list("when after once before until till while than like unlike as with without except over above below beside under behind nach vor wenn sobald bis wie mit ohne außer als über unter neben " +
	"après avant quand lorsque comme avec sans sauf sous tras después antes cuando hasta como con sin excepto bajo")

// sentencesOf splits a text at semicolons and full stops.
func sentencesOf(text string) []string {
	return strings.FieldsFunc(strings.ReplaceAll(text, ". ", ";"), func(r rune) bool { return r == ';' })
}

// clausesOf splits a sentence at commas.
func clausesOf(sentence string) (all [][]word) {
	for _, clause := range strings.Split(sentence, ", ") {
		all = append(all, wordsOf(clause))
	}
	return all
}

// mention is a kind named by a clause, and its word there.
type mention struct {
	kind  plan.Kind
	at    int
	after int  // the word after its noun
	aside bool // it only states when, or beside what
}

// ones stand for fasteners that are named before.
var ones = list("ones one")

// mentions lists the kinds that a clause names with their fasteners: rim bolts, long
// ones, Passschrauben.
func (f facts) mentions(clause []word) (all []mention) {
	for i, w := range clause {
		name, after := compound(w.low), i+1
		if i+1 < len(clause) && (isFastener(clause[i+1].low) || clause[i+1].is(ones)) {
			name, after = w.low, i+2
		}
		for _, k := range f.used {
			if name != "" && slices.Contains(stemsOf(k.Name), name) {
				aside := slices.ContainsFunc(clause[:i], func(w word) bool { return w.is(asides) })
				all = append(all, mention{k, i, after, aside})
			}
		}
	}
	return all
}

// compound returns the first part of a German word for fasteners: the pass of
// Passschrauben.
func compound(w string) string {
	for _, end := range germanEnds {
		if first, is := strings.CutSuffix(w, end); is {
			return strings.TrimSuffix(first, "-")
		}
	}
	return ""
}

// only returns the facts about one kind.
func (f facts) only(k plan.Kind) facts {
	p := f.Plan
	p.Kinds = []plan.Kind{k}
	p.Joint.Fasteners = slices.DeleteFunc(slices.Clone(p.Joint.Fasteners), func(x geometry.Fastener) bool { return x.Kind != k.Name })
	p.Tighten.Stages = stagesOf(p.Tighten.Stages, k)
	p.Loosen.Stages = stagesOf(p.Loosen.Stages, k)
	of := factsOf(p)
	of.ids, of.heads, of.named, of.alone = f.ids, f.heads, f.named, true
	return of
}

func stagesOf(all []plan.Stage, k plan.Kind) []plan.Stage {
	return slices.DeleteFunc(slices.Clone(all), func(s plan.Stage) bool { return s.Do != plan.Wait && !slices.Contains(s.Kinds, k.Name) })
}

// ofOtherKind compares each clause that names a kind, or follows one that does,
// with the stages and sizes of that kind alone. A note belongs to the kind of
// its stage; figures for loosening do not belong to these stages.
func (f facts) ofOtherKind(text string, side plan.CautionSide, stage *plan.Stage) (found []finding.Finding) {
	if len(f.used) < 2 {
		return nil
	}
	for _, sentence := range sentencesOf(text) {
		var subject *plan.Kind
		if stage != nil && len(stage.Kinds) == 1 {
			k := f.Kind(stage.Kinds[0])
			subject = &k
		}
		for i, clause := range clausesOf(sentence) {
			said := strings.Split(sentence, ", ")[i]
			named := f.mentions(clause)
			for _, m := range named {
				if !m.aside {
					subject = &m.kind
				}
			}
			switch {
			case len(named) > 1:
			case len(named) == 1:
				of := f.only(named[0].kind)
				found = append(found, slices.Concat(of.sizes(said), of.lubricants(said), of.reuse(said), f.idsOfOther(clause, named[0]), of.lengthAfter(said, clause[named[0].after:]))...)
				if side != plan.CautionLoosen {
					found = append(found, of.figuresOf(said)...)
				}
			case subject != nil && side != plan.CautionLoosen:
				found = append(found, f.only(*subject).figuresOf(said)...)
			}
		}
	}
	for i := range found {
		found[i].Values["text"] = text
	}
	return found
}

// lengthAfter finds a length directly after the fasteners of the one kind that is not
// theirs: long ones 150 mm.
func (f facts) lengthAfter(clause string, after []word) []finding.Finding {
	k := f.Kinds[0]
	if len(after) < 2 || after[0].number() == 0 || after[1].low != "mm" || k.Length == 0 || lengthIs(k, after[0].low) {
		return nil
	}
	if rest := after[2:]; !after[1].ends && len(rest) > 0 && !rest[0].is(list("long at on for")) {
		return nil
	}
	return []finding.Finding{f.sized(clause, after[0].as+" mm", []string{millimetres(k.Length)})}
}

// noteOfOther finds a note about another kind than its stage tightens.
func (f facts) noteOfOther(s plan.Stage) []finding.Finding {
	if said := wordsOf(s.Note); len(said) > 0 && !slices.ContainsFunc(said[:min(2, len(said))], func(w word) bool { return w.is(conditions) }) {
		const nearStart = 4 // words: S1 and S2
		ids := f.idsIn(said[:min(nearStart, len(said))])
		for _, i := range f.every(nil) {
			if ids[i] && len(s.Fasteners) > 0 && !slices.Contains(s.Fasteners, i) && len(f.idsIn(said[:min(2, len(said))])) > 0 {
				return []finding.Finding{finding.Warned(TextStageKind, finding.Values{"text": s.Note, "kind": f.Joint.Fasteners[i].ID, "kinds": s.Kinds})}
			}
		}
	}
	const nearStart = 3 // words: all 8 main bolts
	for _, m := range f.mentions(wordsOf(s.Note)) {
		if !m.aside && m.at <= nearStart && len(s.Kinds) > 0 && !slices.Contains(s.Kinds, m.kind.Name) {
			return []finding.Finding{finding.Warned(TextStageKind, finding.Values{"text": s.Note, "kind": m.kind.Name, "kinds": s.Kinds})}
		}
	}
	return nil
}

var torqueBefore = expression.Lazily(`(?i)\b(?:after|from|nach|ab|après|depuis|tras|desde) (\d+(?:[.,]\d+)?[\s\x{a0}]*(?:N|lbf?|ft|in|kgf?|m)[·⋅.\- ]?(?:m|ft|in|lbf?|kgf?))\b`)

// anglesFrom finds a note that counts an angle from another torque than the
// preceding one.
func (f facts) anglesFrom(s plan.Stage) []finding.Finding {
	m := torqueBefore.FindStringSubmatch(s.Note)
	if s.Do != plan.Advance || m == nil {
		return nil
	}
	var last unit.GivenTorque
	for _, other := range f.Tighten.Stages[:s.Number-1] {
		if other.Torque.Value > 0 && slices.ContainsFunc(other.Kinds, func(k string) bool { return slices.Contains(s.Kinds, k) }) {
			last = other.Torque
		}
	}
	stated, err := unit.ParseTorque(m[1])
	if err != nil || last.Value == 0 || isTorque(last, stated) {
		return nil
	}
	return []finding.Finding{finding.Warned(TextAngleFrom, finding.Values{"text": s.Note, "torque": stated, "before": last})}
}

// figuresOf finds the torques and angles in a clause that no stage of the one
// kind has.
func (f facts) figuresOf(clause string) []finding.Finding {
	found := figuresIn(f.Plan, clause, anglesOf(f.Plan, 0))
	for i := range found {
		found[i].Values["kind"] = f.Kinds[0].Name
	}
	return found
}

// idsOfOther finds ids of another kind directly after the name of one: rim
// bolts M1 to M3.
func (f facts) idsOfOther(clause []word, m mention) []finding.Finding {
	for _, w := range clause[m.after:] {
		i := slices.IndexFunc(f.Joint.Fasteners, func(x geometry.Fastener) bool { return x.ID == w.as })
		switch {
		case i >= 0 && f.Joint.Fasteners[i].Kind != m.kind.Name:
			return []finding.Finding{finding.Warned(TextOtherKind, finding.Values{"id": w.as, "kind": m.kind.Name, "own": f.Joint.Fasteners[i].Kind})}
		case i < 0 && !w.is(joins):
			return nil
		}
	}
	return nil
}
