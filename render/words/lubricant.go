package words

import (
	"cmp"
	"strings"
)

// Lubricant says what goes on a thread, or how it is left, in the language. A
// word of the file's own that drawdown does not know stays as it is.
func (c *Catalogue) Lubricant(said string) string {
	name := Plain(said)
	return cmp.Or(c.Card.Checks.Lubricants[name], c.Card.Checks.States[name], said)
}

// Plain returns what a file says as the keys of the catalogues are written: small,
// one blank between words, no hyphen.
func Plain(said string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(strings.ToLower(said), "-", " ")), " ")
}
