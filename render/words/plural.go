package words

import "fmt"

// Plural is a line with a count in it. English, Spanish, German and French all
// need two forms; a count of none is never printed.
type Plural struct{ One, More string }

// Of writes the line for a count.
func (p Plural) Of(n int) string {
	if n == 1 {
		return fmt.Sprintf(p.One, n)
	}
	return fmt.Sprintf(p.More, n)
}
