package texts

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

var (
	firstWords = list("first zuerst d’abord d'abord primero")
	lastWords  = list("last zuletzt dernier derniers dernières finalmente último últimos")
	// adverbs are first and last by themselves; the English words also stand before
	// a noun: the first turn.
	adverbs = list("zuerst zuletzt d’abord d'abord primero finalmente")
	// afterFirst may follow: F1 and F2 last by hand.
	afterFirst = list("with by and then to go come out off")
	notWords   = list("not never no nicht nie kein ne pas jamais nunca")
	// conditions are words after which a clause only states when.
	conditions  = list("when after once before until till while nach vor wenn sobald bis après avant quand lorsque tras después antes cuando hasta")
	beforeWords = list("before vor bevor avant antes")
	afterWords  = list("after when once nach wenn sobald après quand lorsque tras después cuando")
)

// meant returns the fasteners that a clause names by ids, kinds and caps.
func (f facts) meant(clause []word) map[int]bool {
	ids := f.idsIn(clause)
	if len(ids) > 0 {
		return ids
	}
	all := map[int]bool{}
	for _, m := range f.mentions(clause) {
		for i, x := range f.Joint.Fasteners {
			if x.Kind == m.kind.Name {
				all[i] = true
			}
		}
	}
	index := f.Joint.Index()
	for _, name := range f.numbersIn(clause) {
		for _, c := range f.Joint.Clusters {
			if c.Name == name {
				for _, id := range c.Of {
					all[index[id]] = true
				}
			}
		}
	}
	return all
}

// idsIn returns the fasteners whose ids a clause names, alone or as a range: M1 to M4.
func (f facts) idsIn(clause []word) map[int]bool {
	all := map[int]bool{}
	at := func(w word) int {
		return slices.IndexFunc(f.Joint.Fasteners, func(x geometry.Fastener) bool { return x.ID == w.as })
	}
	for k, w := range clause {
		i := at(w)
		if i < 0 || w.number() > 0 && !listed(clause, k) {
			continue
		}
		all[i] = true
		if k < 2 || !clause[k-1].is(list("to bis à a")) {
			continue
		}
		if from := at(clause[k-2]); from >= 0 {
			for between := min(from, i); between <= max(from, i); between++ {
				all[between] = true
			}
		}
	}
	return all
}

// listed reports whether a number is an id among others, and no quantity: 5 and 6.
func listed(clause []word, k int) bool {
	if k+1 < len(clause) && (clause[k+1].is(units) || isFastener(clause[k+1].low)) || k > 0 && clause[k-1].is(notCounts) {
		return false
	}
	joined := func(by, to int) bool {
		return to >= 0 && to < len(clause) && clause[by].is(joins) && clause[to].number() > 0
	}
	return k+2 < len(clause) && joined(k+1, k+2) && !(k+3 < len(clause) && clause[k+3].is(units)) || k >= 2 && joined(k-1, k-2)
}

// steps are the first and the last step of each fastener on one side of the work.
type steps struct{ first, last []int }

func (f facts) stepsOf(side plan.Side) steps {
	s := steps{make([]int, len(f.Joint.Fasteners)), make([]int, len(f.Joint.Fasteners))}
	n := 0
	for _, stage := range side.Stages {
		for _, i := range stage.Fasteners {
			if n++; s.first[i] == 0 {
				s.first[i] = n
			}
			s.last[i] = n
		}
	}
	return s
}

// ordered finds a text that has some fasteners first or last, where by the file others
// are: of all, and of their own kinds.
func (f facts) ordered(text string, side plan.Side) (found []finding.Finding) {
	s := f.stepsOf(side)
	for _, sentence := range sentencesOf(text) {
		for _, clause := range clausesOf(sentence) {
			which := firstOrLast(clause)
			named := f.meant(clause)
			if which == "" || len(named) == 0 || slices.ContainsFunc(clause, func(w word) bool { return w.is(conditions) || w.is(notWords) }) {
				continue
			}
			all, own := f.every(nil), f.every(f.kindsOf(named))
			if len(named) == len(all) || s.ends(which, named, all) || len(named) < len(own) && s.ends(which, named, own) {
				continue
			}
			among := all
			if len(named) < len(own) {
				among = own
			}
			ids := geometry.Mapped(s.at(which, s.of(which), len(named), among), func(i int) string { return f.Joint.Fasteners[i].ID })
			found = append(found, finding.Warned(TextFirst, finding.Values{"text": text, "which": which, "have": ids[:min(len(ids), mostIDs)]}))
		}
	}
	return found
}

const mostIDs = 4

// every lists the fasteners of some kinds; nil for all.
func (f facts) every(kinds []string) (all []int) {
	for i, x := range f.Joint.Fasteners {
		if kinds == nil || slices.Contains(kinds, x.Kind) {
			all = append(all, i)
		}
	}
	return all
}

func (f facts) kindsOf(named map[int]bool) (kinds []string) {
	for i := range named {
		kinds = append(kinds, f.Joint.Fasteners[i].Kind)
	}
	return kinds
}

func (s steps) of(which string) []int {
	if which == "first" {
		return s.first
	}
	return s.last
}

// ends reports whether the named are the first or the last among some. The last may be
// so in their first step, as a check pass over all follows.
func (s steps) ends(which string, named map[int]bool, among []int) bool {
	is := func(order []int) bool {
		return !slices.ContainsFunc(s.at(which, order, len(named), among), func(i int) bool { return !named[i] })
	}
	return is(s.first) || which == "last" && is(s.last)
}

// at returns the first or the last n among some.
func (s steps) at(which string, order []int, n int, among []int) []int {
	sorted := slices.Clone(among)
	slices.SortStableFunc(sorted, func(a, b int) int { return order[a] - order[b] })
	if which == "last" {
		slices.Reverse(sorted)
	}
	return sorted[:min(n, len(sorted))]
}

// firstOrLast returns whether a clause has something first or last.
func firstOrLast(clause []word) (which string) {
	for i, w := range clause {
		if !w.is(firstWords) && !w.is(lastWords) || i == 0 {
			continue
		}
		if alone := w.is(adverbs) || w.ends || i == len(clause)-1 || clause[i+1].is(afterFirst); !alone {
			return ""
		}
		if which = "last"; w.is(firstWords) {
			which = "first"
		}
	}
	return which
}

// before finds a clause with one kind before another, where the file has them the other
// way round: it begins and ends the second first.
func (f facts) before(text string, side plan.Side) (found []finding.Finding) {
	s := f.stepsOf(side)
	for _, sentence := range sentencesOf(text) {
		for _, clause := range clausesOf(sentence) {
			at := slices.IndexFunc(clause, func(w word) bool { return w.is(beforeWords) || w.is(afterWords) })
			if at < 1 || slices.ContainsFunc(clause, func(w word) bool { return w.is(notWords) }) {
				continue
			}
			first, second := f.meant(clause[:at]), f.meant(clause[at+1:])
			if clause[at].is(afterWords) {
				first, second = second, first
			}
			a, b := without(first, second), without(second, first)
			if len(a) == 0 || len(b) == 0 {
				continue
			}
			if s.latest(s.first, b) < s.latest(s.first, a) && s.latest(s.last, b) < s.latest(s.last, a) {
				found = append(found, finding.Warned(TextBefore, finding.Values{"text": text, "first": f.calledOf(a), "second": f.calledOf(b)}))
			}
		}
	}
	return found
}

// without lists those of some that are not among others.
func without(some, others map[int]bool) (all []int) {
	for i := range some {
		if !others[i] {
			all = append(all, i)
		}
	}
	slices.Sort(all)
	return all
}

// calledOf returns the kind of some fasteners, or the id of the first where they are not
// all of it.
func (f facts) calledOf(some []int) string {
	kind := f.Joint.Fasteners[some[0]].Kind
	if len(f.every([]string{kind})) == len(some) {
		return kind
	}
	return f.Joint.Fasteners[some[0]].ID
}

func (s steps) latest(order, of []int) (step int) {
	for _, i := range of {
		step = max(step, order[i])
	}
	return step
}
