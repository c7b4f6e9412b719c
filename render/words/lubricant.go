package words

import (
	"cmp"
	"strings"
)

// Lubricant names a lubricant, or the condition of a thread, in the language.
// An unknown word of a file is not changed.
func (c *Catalogue) Lubricant(said string) string {
	name := Plain(said)
	return cmp.Or(c.Card.Checks.Lubricants[name], c.Card.Checks.States[name], said)
}

// Plain returns a word of a file in the form of the catalogue keys: lower case,
// single spaces, no hyphens.
func Plain(said string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(strings.ToLower(said), "-", " ")), " ")
}
