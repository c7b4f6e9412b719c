package words

import (
	"regexp"
	"strings"
)

// tight replaces blanks at which a line must not break: in French those before
// high punctuation and inside quotation marks, in all languages those before
// percent signs and units, and after ≈. The catalogues have normal blanks
// there.
var tight = strings.NewReplacer(" :", "\u00a0:", " ;", "\u00a0;", " ?", "\u00a0?", " !", "\u00a0!", "≈ %", "≈\u00a0%", " kN", "\u00a0kN", " MPa", "\u00a0MPa", " dpi", "\u00a0dpi", "« ", "«\u00a0", " »", "\u00a0»")

// percent matches the sign with its blank, but not a verb after a blank.
var percent = regexp.MustCompile(` %(%|[^\w.\[]|\.(?:\s|$)|$)`)

// bound makes the tight blanks of a text non-breaking.
func bound(said string) string {
	return percent.ReplaceAllString(tight.Replace(said), "\u00a0%$1")
}
