package overhaul

import (
	"slices"
	"strings"
	"unicode"
)

// Words of the trade by which names are compared, in the languages of the cards. A
// name in other words is compared as it is.
var (
	// fastenings end the title of a joint and are no part that it holds.
	fastenings = []string{"bolt", "cap", "nut", "screw", "stud", "schrauben", "deckel", "muttern", "vis", "boulon", "tornillo"}
	// joiners stand between a part and what belongs to it.
	joiners = []string{"with", "and", "of", "mit", "und", "von", "avec", "et", "de", "du", "des", "con", "y", "del"}
	// gaskets are no name of a joint.
	gaskets = []string{"gasket", "seal", "dichtung", "dichtring", "joint", "junta"}
	// rings seal a shaft or a hole, not the faces of a joint.
	rings    = []string{"seal", "dichtring"}
	newWords = []string{"new", "neu", "neue", "neuf", "neufs", "nouveau", "nueva", "nuevo", "renew", "erneuern", "remplacer"}
	// locks hold a machine for some of its steps.
	locks    = []string{"pin", "lock", "holder", "halter", "dorn", "stift", "sperre", "pige", "broche", "blocage", "pasador", "bloqueo"}
	inWords  = []string{"in", "ein", "rein", "eingesetzt", "einsetzen", "place", "mettre", "poser", "puesto", "puesta", "poner"}
	outWords = []string{"out", "off", "aus", "raus", "heraus", "entfernt", "entfernen", "herausnehmen", "retirée", "retiré", "retirer", "enlever", "sacado", "quitado", "quitar", "sacar", "remove", "removed"}
)

// What bank a part is of, and what is off.
var (
	lefts    = []string{"left", "linke", "linker", "linken", "links", "gauche", "izquierda", "izquierdo"}
	rights   = []string{"right", "rechte", "rechter", "rechten", "rechts", "droite", "droit", "derecha", "derecho"}
	banks    = []string{"bank", "hand", "zylinderbank", "rangée", "bancada"}
	offWords = []string{"off", "removed", "ab", "abgebaut", "abgenommen", "déposé", "déposée", "retiré", "retirée", "quitado", "quitada", "desmontado", "desmontada"}
	// caps hold a shaft and come off with their bolts, so that the joint has their name.
	caps = []string{"cap", "deckel", "chapeau", "chapeaux", "palier", "sombrerete", "tapa"}
	// manyParts are names that several parts of a machine have.
	manyParts = []string{"cover", "cap", "head", "deckel", "kopf", "couvercle", "chapeau", "tapa", "housing", "gehäuse", "pump", "pumpe", "pompe", "bomba"}
)

// sideOf returns the side that words name; empty for none, or for both.
func sideOf(words []string) string {
	switch l, r := hasAny(words, lefts), hasAny(words, rights); {
	case l && !r:
		return "left"
	case r && !l:
		return "right"
	}
	return ""
}

// bare returns the words of a name without its side, and the side.
func bare(name string) (words []string, side string) {
	words = tokens(name)
	side = sideOf(words)
	if side == "" {
		return words, ""
	}
	return slices.DeleteFunc(words, func(w string) bool {
		return slices.Contains(lefts, w) || slices.Contains(rights, w) || slices.Contains(banks, w)
	}), side
}

// ofOneSide says that neither name is of the other side than the other.
func ofOneSide(name, other string) bool {
	a, b := sideOf(tokens(name)), sideOf(tokens(other))
	return a == b || a == "" || b == ""
}

// plain returns a text without what two writers of it differ in.
func plain(text string) string { return strings.Join(tokens(text), " ") }

// tokens returns the words of a text in small letters, without the plural's s.
func tokens(text string) []string {
	all := strings.FieldsFunc(strings.ToLower(text), func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) })
	for i, word := range all {
		all[i] = singular(word)
	}
	return all
}

func singular(word string) string {
	if len(word) > 3 && !strings.HasSuffix(word, "ss") {
		return strings.TrimSuffix(word, "s")
	}
	return word
}

func hasAny(words, of []string) bool {
	return slices.ContainsFunc(of, func(w string) bool { return slices.Contains(words, singular(w)) })
}

// holdsPart says that a joint is named after the part: the part itself, the part
// with its bolts or caps, or with a word more before it (Oil sump, sump). Bolts of
// its own may hold the last kind. Of the sides it knows nothing.
func holdsPart(title string, part Task) bool {
	if end := strings.IndexAny(title, ",;:(·–"); end > 0 {
		title = title[:end]
	}
	joint, _ := bare(title)
	named, _ := bare(part.Part)
	if len(named) > 1 && slices.Contains(caps, named[len(named)-1]) {
		named = named[:len(named)-1]
	}
	for len(joint) > 1 && slices.Contains(fastenings, joint[len(joint)-1]) {
		joint = joint[:len(joint)-1]
	}
	if len(joint) == 0 || len(named) == 0 {
		return false
	}
	if begins(named, joint) {
		return true
	}
	last := len(joint) - len(named)
	return len(part.Manual) == 0 && (begins(joint, named) || last > 0 && slices.Equal(joint[last:], named))
}

// begins says that a name is another one, alone or with what belongs to it.
func begins(name, other []string) bool {
	return len(name) >= len(other) && slices.Equal(name[:len(other)], other) &&
		(len(name) == len(other) || slices.Contains(joiners, name[len(other)]))
}

// isGasketWord also knows compounds: Kopfdichtung.
func isGasketWord(word string) bool {
	return slices.ContainsFunc(gaskets, func(g string) bool { return strings.HasSuffix(word, g) })
}

// isNamedAfter says that a gasket has a word of the title of a joint.
func isNamedAfter(gasket, title string) bool {
	joint := plain(title)
	return slices.ContainsFunc(tokens(gasket), func(word string) bool {
		for _, g := range gaskets {
			word = strings.TrimSuffix(word, g)
		}
		return len(word) > 2 && strings.Contains(joint, word)
	})
}

// isLock also knows compounds: Absteckdorn.
func isLock(word string) bool {
	return slices.ContainsFunc(locks, func(lock string) bool { return strings.HasSuffix(word, lock) })
}

// lockPut returns the lock that a short clause puts in or out: Timing pin in.
// Empty for none.
func lockPut(clause string, where []string) string {
	said := tokens(clause)
	if len(said) < 2 || len(said) > 6 || !hasAny(said[1:], where) {
		return ""
	}
	i := slices.IndexFunc(said, isLock)
	if i < 0 {
		return ""
	}
	return said[i]
}
