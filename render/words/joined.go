package words

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"
)

// Text puts sentences one after the other. Empty ones fall away.
func Text(sentences ...string) string { return joined(sentences, " ") }

// Row puts short things to know in one line, with dots between. Empty ones fall
// away.
func Row(things ...string) string { return joined(things, " · ") }

// With says a thing and a remark to it, as the language joins them. Where one
// is empty the other stands alone.
func (c *Catalogue) With(said, remark string) string {
	return joined([]string{said, remark}, c.Card.Checks.And)
}

// NoRoomFor says on the paper which words found no room there; empty for none.
func (c *Catalogue) NoRoomFor(words []string) string {
	if len(words) == 0 {
		return ""
	}
	return fmt.Sprintf(c.Sheet.NoRoomFor, strings.Join(words, ", "))
}

// Capital begins a sentence with a capital.
func Capital(sentence string) string {
	first, size := utf8.DecodeRuneInString(sentence)
	return strings.ToUpper(string(first)) + sentence[size:]
}

func joined(texts []string, sign string) string {
	there := slices.DeleteFunc(slices.Clone(texts), func(t string) bool { return t == "" })
	return strings.Join(there, sign)
}
