package texts

import (
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
)

var (
	// ofBits are words that make T40 or E10 the size of a tool.
	ofBits = list("bit bits torx socket key drive star nuss schlüssel embout clé llave punta paper sheet")
	// ofBanks are words of a text that may name things on the other bank.
	ofBanks = list("bank banks bänke zylinderbank rangée bancada")
	// stageWords are words for a stage.
	stageWords = list("stage stages stufe stufen étape étapes etapa etapas")
	// joins connect numbers of one list: caps 4 and 5.
	joins = list("and und et y to bis à a or oder ou o & -")
)

// names finds ids, caps, cylinders and stages in a text that the file lacks.
func (f facts) names(text string, words []word) (found []finding.Finding) {
	said := map[string]bool{}
	for i := range words {
		for _, name := range append(f.unknownID(words, i), f.unknownNumbers(words, i)...) {
			if !said[name] {
				said[name] = true
				found = append(found, finding.Warned(TextName, finding.Values{"text": text, "name": name}))
			}
		}
	}
	return found
}

const fewestOfLetters = 2

// unknownID returns a word that looks like the ids of the file but is none of
// them.
func (f facts) unknownID(words []word, i int) []string {
	w := words[i]
	m := lettersAndNumber.FindStringSubmatch(w.as)
	if m == nil || f.heads[m[1]] < fewestOfLetters || f.ids[w.as] || m[2][0] == '0' {
		return nil
	}
	beside := words[max(0, i-1):min(len(words), i+2)]
	if slices.ContainsFunc(beside, func(b word) bool { return b.is(ofBits) }) || f.calledElsewhere(w.as) {
		return nil
	}
	if m[1] == "M" && isThread(w.as) && !(i > 1 && words[i-1].is(joins) && f.ids[words[i-2].as]) {
		return nil // texts about threads are checked by size
	}
	return []string{w.as}
}

func isThread(said string) bool {
	_, err := thread.Parse(said)
	return err == nil
}

// calledElsewhere reports whether the name is part of that of the machine or
// its book: P4.
func (f facts) calledElsewhere(name string) bool {
	return slices.Contains(strings.Fields(f.Machine+" "+f.Source+" "+f.Title), name)
}

// unknownNumbers returns the caps, cylinders, stages and fasteners that a word
// and the numbers after it name, and that do not exist.
func (f facts) unknownNumbers(words []word, i int) (unknown []string) {
	w := words[i]
	known := f.numbersOf(words, w)
	if known == nil {
		return nil
	}
	if areFigures(words[i+1:]) {
		return nil
	}
	for k := i + 1; k < len(words); k++ {
		n, err := strconv.Atoi(words[k].low)
		switch {
		case err != nil && !words[k].is(joins):
			return unknown
		case err == nil && k+1 < len(words) && words[k+1].is(units):
			return unknown
		case err == nil && n > 0 && !known(n):
			unknown = append(unknown, w.as+" "+words[k].as)
		}
	}
	return unknown
}

// areFigures reports whether a list of numbers is one of torques: 30, then 60
// N·m.
func areFigures(words []word) bool {
	for _, w := range words {
		if _, err := strconv.Atoi(w.low); err != nil && !w.is(joins) && !w.is(list("then dann puis luego")) {
			return w.is(units)
		}
	}
	return false
}

// numbersOf returns which numbers may follow a word; it is nil for a word that
// names nothing in the file.
func (f facts) numbersOf(words []word, w word) func(int) bool {
	called := callOf(w.low)
	switch {
	case w.is(stageWords):
		most := max(len(f.Tighten.Stages), len(f.Loosen.Stages))
		return func(n int) bool { return n <= most }
	case slices.Contains(list("bolt screw nut stud"), called):
		return func(n int) bool {
			return n <= len(f.Joint.Fasteners) || slices.ContainsFunc(f.Joint.Fasteners, func(x geometry.Fastener) bool { return x.Cast == n })
		}
	case len(called) < 3 || len(f.named[called]) < fewestOfLetters:
		return nil
	case called == "cyl" && slices.ContainsFunc(words, func(w word) bool { return w.is(ofBanks) }):
		return nil
	}
	return func(n int) bool { return slices.Contains(f.named[called], n) }
}
