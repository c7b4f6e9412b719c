package overhaul

import (
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

// Words beside a lock, in the languages of the cards.
var (
	allWords = []string{"all", "alle", "tous", "toutes", "todos", "todas", "both", "beide"}
	// stillWords say how a lock is, and not that somebody moves it.
	stillWords = []string{"still", "stay", "stays", "remain", "bleibt", "bleiben", "noch", "reste", "restent", "encore", "sigue", "queda", "todavía"}
	// noNames stand before a lock and do not name it.
	noNames = []string{"the", "a", "then", "and", "with", "every", "put", "fit", "insert", "remove", "der", "den", "die", "dann", "la", "le", "el", "puis", "mettre", "retirer", "poner", "quitar", "sacar"}
)

// lockAct is a lock that goes in or comes out, or of which a text says something else.
type lockAct struct {
	task         int
	side         plan.CautionSide
	name, clause string
	in, out      bool
	all, told    bool // of all locks; it says only how the lock is
	onBoth       bool // on both sides of the work, so that it is of none
}

// lockActs lists them in working order: first the teardown, then the rebuild.
func (o Overhaul) lockActs() (acts []lockAct) {
	add := func(side plan.CautionSide, task int) {
		t := o.Tasks[task]
		texts := []string{t.Remark(side)}
		if t.Note != "" && (t.Side == side || t.Side == plan.CautionBoth) {
			texts = append(texts, t.Note)
		}
		for _, clause := range clausesOf(texts) {
			if act, found := lockActOf(clause); found {
				act.task, act.side, act.onBoth = task, side, t.Note != "" && t.Side == plan.CautionBoth
				acts = append(acts, act)
			}
		}
	}
	for i := range o.Tasks {
		add(plan.CautionLoosen, i)
	}
	for i := len(o.Tasks) - 1; i >= 0; i-- {
		add(plan.CautionTighten, i)
	}
	return acts
}

func lockActOf(clause string) (act lockAct, found bool) {
	said := tokens(clause)
	i := slices.IndexFunc(said, isLock)
	if i < 0 {
		return lockAct{}, false
	}
	act = lockAct{name: said[i], clause: strings.TrimSpace(clause), all: hasAny(said, allWords), told: hasAny(said, stillWords)}
	if i > 0 && !slices.Contains(noNames, said[i-1]) && !slices.Contains(inWords, said[i-1]) && !slices.Contains(outWords, said[i-1]) {
		act.name = said[i-1] + " " + said[i]
	}
	act.in, act.out = lockPut(clause, inWords) != "", lockPut(clause, outWords) != ""
	return act, true
}

// locksAmiss looks for a lock that goes in on the rebuild while it still is in, that
// comes out and is not in, and that is in at the end.
func (o Overhaul) locksAmiss() (found []finding.Finding) {
	acts := o.lockActs()
	for i, act := range acts {
		if act.all || slices.ContainsFunc(acts[:i], func(a lockAct) bool { return a.name == act.name && !a.all }) {
			continue
		}
		if code, at := amiss(actsOf(acts, act.name)); code != "" {
			found = append(found, about(at.task, warned(code, finding.Values{"lock": at.clause}))...)
		}
	}
	return found
}

// actsOf returns those of one lock. One without a name of its own is that lock if no
// other has its word.
func actsOf(acts []lockAct, name string) (of []lockAct) {
	word := name[strings.LastIndex(name, " ")+1:]
	for _, a := range acts {
		if a.all || a.name == name || a.name == word || name == word && strings.HasSuffix(a.name, " "+word) {
			if a.name != name && !a.all {
				a.in, a.out = false, false // it may be another one
			}
			of = append(of, a)
		}
	}
	return of
}

// amiss follows one lock through the work.
func amiss(acts []lockAct) (finding.Code, lockAct) {
	var last, first *lockAct // nil: not known
	putIn := false
	for i := range acts {
		a := &acts[i]
		switch {
		case a.onBoth:
			return "", lockAct{}
		case a.in == a.out:
			last = nil
			if first == nil {
				return "", lockAct{} // how it was at first is not known
			}
			continue
		case a.told || a.all:
		case last != nil && last.side != a.side && last.in == a.in && a.in:
			return LockInAgain, *a
		case last != nil && last.side != a.side && last.in == a.in:
			return LockOutAgain, *a
		}
		if first == nil {
			first = a
		}
		last, putIn = a, putIn || a.in
	}
	switch {
	case first == nil || last == nil || !putIn || first.in != last.in && first != last:
		return "", lockAct{}
	case first.in && first != last:
		return LockStaysIn, *last
	case !first.in && !first.all:
		return LockOutAgain, *first
	}
	return "", lockAct{}
}
