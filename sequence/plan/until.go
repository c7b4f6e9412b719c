package plan

import (
	"slices"
	"strings"
	"unicode"

	"drawdown/geometry/finding"
)

// What a stage repeats until, where springs press.
const (
	UntilPressed finding.Code = "plan until pressed" // until; usual: what a file says in its place
	UntilCut     finding.Code = "plan until cut"     // until, usual
	UntilOwn     finding.Code = "plan until own"     // until, usual
)

// The words of a spring that presses, and of what none presses on, in the languages
// of the sheets.
var (
	springWords = []string{"spring", "springs", "feder", "federn", "ventilfeder", "ventilfedern", "ressort", "ressorts", "muelle", "muelles", "resorte", "resortes"}
	pressWords  = []string{"press", "presses", "push", "pushes", "drückt", "drücken", "presse", "pressent", "pousse", "poussent", "appuie", "appuient", "empuja", "empujan", "presiona", "presionan", "aprieta", "aprietan"}
	freeWords   = []string{"free", "loose", "slack", "frei", "lose", "libre", "libres", "suelto", "suelta", "sueltos", "sueltas"}
	noWords     = []string{
		"no", "not", "none", "nothing", "never", "without", "neither", "stop", "stops", "cease", "ceases", "don", "doesn", "cannot",
		"kein", "keine", "keiner", "keinen", "nicht", "nichts", "nie", "ohne", "weder",
		"aucun", "aucune", "ne", "n", "rien", "plus", "pas", "sans", "cesse", "cessent", "ni",
		"ningún", "ninguno", "ninguna", "nada", "nunca", "sin", "deja", "dejan", "cesa", "cesan",
	}
)

// untilSense says what is wrong with what a stage under springs repeats until. It
// has to say that none presses any more: a crew stops when it has come true.
func untilSense(until string) (f finding.Finding, found bool) {
	says := wordsOf(until)
	has := func(any []string) bool {
		return slices.ContainsFunc(says, func(word string) bool { return slices.Contains(any, word) })
	}
	values := finding.Values{"until": until, "usual": "until: " + NoSpringPresses}
	bare := !slices.ContainsFunc(says, func(word string) bool { return !slices.Contains(noWords, word) && !slices.Contains(springWords, word) })
	switch {
	case bare || cutOff(until) != "":
		return finding.Warned(UntilCut, values), true
	case has(noWords):
		return f, false
	case has(springWords) && has(pressWords):
		return finding.Warned(UntilPressed, values), true
	case has(freeWords):
		return f, false
	}
	return finding.Noted(UntilOwn, values), true
}

// wordsOf parts a text into its words, in small letters; "don't" has two.
func wordsOf(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) })
}
