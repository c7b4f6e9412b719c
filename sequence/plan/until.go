package plan

import (
	"slices"
	"strings"
	"unicode"

	"drawdown/geometry/finding"
)

// Conditions for repeating a stage under spring load.
const (
	UntilPressed finding.Code = "plan until pressed" // until; usual: what a file should say
	UntilCut     finding.Code = "plan until cut"     // until, usual
	UntilOwn     finding.Code = "plan until own"     // until, usual
)

// Words for a spring that presses, and for one that does not, in the languages
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

// untilSense reports what is wrong with the condition for repeating a stage
// under spring load. It must say that no spring presses any more, because the
// crew stops when it is true.
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

// wordsOf splits a text into lower-case words; "don't" gives two.
func wordsOf(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) })
}
