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
	if n == 1 && !strings.Contains(p.One, "%") {
		return p.One // says it in words
	}
	if n == 1 {
		return fmt.Sprintf(p.One, n)
	}
	return fmt.Sprintf(p.More, n)
}
