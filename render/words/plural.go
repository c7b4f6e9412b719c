package words

import (
	"fmt"
	"strings"
)

// Plural is a text with a count. English, Spanish, German and French all need
// two forms; a count of zero is never printed.
type Plural struct{ One, More string }

// Of returns the text for a count.
func (p Plural) Of(n int) string {
	form := p.More
	if n == 1 {
		form = p.One
	}
	if !strings.Contains(form, "%") {
		return form // the form has the count in words
	}
	return fmt.Sprintf(form, n)
}
