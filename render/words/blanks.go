package words

import (
	"regexp"
	"strings"
)

// tight are the blanks at which no line may end: in French those before high
// signs and inside quotation marks, in all languages the one before the sign
// for percent and units and the one behind ≈. The catalogues have plain blanks there.
var tight = strings.NewReplacer(" :", "\u00a0:", " ;", "\u00a0;", " ?", "\u00a0?", " !", "\u00a0!", "≈ %", "≈\u00a0%", " kN", "\u00a0kN", " MPa", "\u00a0MPa", " dpi", "\u00a0dpi", "« ", "«\u00a0", " »", "\u00a0»")

// percent is the sign with its blank, not a verb that stands behind a blank.
var percent = regexp.MustCompile(` %(%|[^\w.\[]|\.(?:\s|$)|$)`)

// bound makes the tight blanks of some words hold.
func bound(said string) string {
	return percent.ReplaceAllString(tight.Replace(said), "\u00a0%$1")
}
