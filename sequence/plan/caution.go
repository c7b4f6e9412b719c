package plan

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// Caution is a warning from the file, for one side of the work or for both.
type Caution struct {
	Text string
	Side CautionSide
}

// CautionSide is the side of the work to which a caution applies.
type CautionSide string

const (
	CautionBoth    CautionSide = ""
	CautionTighten CautionSide = "tighten"
	CautionLoosen  CautionSide = "loosen"
)

// CautionsFor returns the texts that a side shows, its own and those for both,
// in the order of the file. CautionBoth selects all of them.
func (p Plan) CautionsFor(side CautionSide) []string {
	var texts []string
	for _, c := range p.Cautions {
		if side == CautionBoth || c.Side == CautionBoth || c.Side == side {
			texts = append(texts, c.Text)
		}
	}
	return texts
}

// CutOff returns the last word or sign of a text that ends in mid-sentence, or
// "" if it can end there.
func (c Caution) CutOff() string { return cutOff(c.Text) }

// Words that never end a sentence in the languages of the sheets. Words that
// can, as parts of a verb or as other words in another of the languages, are
// left out: "is looked at", "zieht an", "tap and die".
var (
	neverLast = []string{
		"the", "a", "and", "or", "nor", "but", "than", "into", "onto", "until", "because", "between", "without", "every", "its", "their", "your",
		"der", "den", "dem", "des", "eine", "einen", "einem", "einer", "und", "oder", "von", "für", "bis", "ohne", "zum", "zur", "vom", "im", "beim", "ins", "gegen", "zwischen", "dass",
		"le", "la", "les", "un", "une", "du", "de", "et", "ou", "à", "au", "avec", "sans", "par", "dans", "sur", "que", "qui",
		"el", "los", "las", "una", "del", "y", "al", "con", "sin", "para", "por", "en",
	}
	// lastBehind can end a sentence only after certain words: "to turn it
	// with".
	lastBehind = []string{"of", "to", "from", "with", "for", "by"}
	behindThat = []string{"to", "what", "which", "that", "where", "who", "they", "it", "is", "are", "was", "be"}
)

func cutOff(text string) string {
	words := strings.Fields(text)
	if len(words) == 0 {
		return ""
	}
	last := words[len(words)-1]
	if end, _ := utf8.DecodeLastRuneInString(last); strings.ContainsRune(",:;–—-(&/", end) {
		return string(end)
	}
	before := words[:len(words)-1]
	led := slices.ContainsFunc(before, func(word string) bool { return slices.Contains(behindThat, word) })
	if slices.Contains(neverLast, last) || slices.Contains(lastBehind, last) && !led {
		return last
	}
	return ""
}
