package words

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"
)

// Text joins sentences. Empty ones are left out.
func Text(sentences ...string) string { return joined(sentences, " ") }

// Row joins short texts on one line, separated by dots. Empty ones are left
// out.
func Row(things ...string) string { return joined(things, " · ") }

// With joins a text and a remark in the way of the language. If one is empty it
// returns the other.
func (c *Catalogue) With(said, remark string) string {
	return joined([]string{said, remark}, c.Card.Checks.And)
}

// NoRoomFor says which words did not fit on the paper; "" for none.
func (c *Catalogue) NoRoomFor(words []string) string {
	if len(words) == 0 {
		return ""
	}
	return fmt.Sprintf(c.Sheet.NoRoomFor, strings.Join(words, ", "))
}

// Capital capitalizes the first letter of a sentence.
func Capital(sentence string) string {
	first, size := utf8.DecodeRuneInString(sentence)
	return strings.ToUpper(string(first)) + sentence[size:]
}

func joined(texts []string, sign string) string {
	there := slices.DeleteFunc(slices.Clone(texts), func(t string) bool { return t == "" })
	return strings.Join(there, sign)
}

// Between says that something lies between two others, or near one; empty where there
// is neither.
func (c *Catalogue) Between(between [2]string, near string) string {
	switch {
	case between[0] != "":
		return fmt.Sprintf(c.Page.Seen.Between, between[0], between[1])
	case near != "":
		return fmt.Sprintf(c.Page.Seen.Near, near)
	}
	return ""
}
