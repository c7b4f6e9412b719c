package words

import (
	"fmt"
	"strings"
)

// Plural is a line with a count in it. English, Spanish, German and French all
// need two forms; a count of none is never printed.
type Plural struct{ One, More string }

// Of writes the line for a count.
func (p Plural) Of(n int) string {
	form := p.More
	if n == 1 {
		form = p.One
	}
	if !strings.Contains(form, "%") {
		return form // says it in words
	}
	return fmt.Sprintf(form, n)
}
