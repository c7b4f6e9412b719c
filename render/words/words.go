// Package words has every word that a person reads: one catalogue per language,
// all with the same fields. Sheets, commands and pages contain no text of their
// own, so that a test, not a reader, notices a word that a language lacks.
//
// The words are in text files, a folder per language and a file per subject:
// see load.go. Say words the findings of the calculating packages.
//
// Texts of a pattern file (titles, notes, cautions, names of kinds) are not
// translated.
package words

import (
	"cmp"
	"fmt"
	"strings"
	"sync"
)

// Catalogue has the words of one language. Verbs such as %d and %s stand for
// figures and names that a sheet fills in; %[2]s changes their order.
type Catalogue struct {
	Language  string // BCP 47 tag
	Name      string // of the language, in that language
	Decimal   string // decimal sign: see Figure
	Sheet     Sheet
	Card      Card
	Book      Book
	Forecast  Forecast
	Handout   Handout
	Tile      Tile
	Tray      Tray
	Target    Target
	Condition Condition
	Readings  Readings
	Record    Record
	Drawing   Drawing
	Revised   Revised
	Proof     Proof
	Page      Page
	Torque    Torque
	Wrench    Wrench
	List      List
	Terms     map[string]string // of the trade, by finding.Term
	Findings  map[string]string // sentences by finding.Code: see Say
}

// List has the words for joining names.
type List struct {
	And, Or string // before the last name
	More    Plural // %d: number of names left out
	Allowed string // %s; allowed: %s
}

// Sheet has the words that all sheets share.
type Sheet struct {
	Card     string // card %s: the fingerprint of the file
	Revision string // rev %s
	Seen     string // seen %s: from above
	Mirrored string
	Front    string // at the arrow to the front of the machine
	Asked    string // order %s, not that of the file

	Ways, Turns map[string]string // by the names in the pattern file
	Views       map[string]string // of the part, by the usual names in a file: see View

	DoneBy, WrenchNumber, Date, CheckedBy string // fields to sign
	SignOnLast                            string // where the fields to sign are

	ManualFirst string

	Named     string // %s: %s: a name, and a text about it
	NoRoomFor string // %s: words that did not fit
}

// languages are the catalogues by tag, each read at its first use.
var languages = []struct {
	tag  string
	read func() *Catalogue
}{
	{"en", sync.OnceValue(func() *Catalogue { return load("english") })},
	{"es", sync.OnceValue(func() *Catalogue { return load("spanish") })},
	{"de", sync.OnceValue(func() *Catalogue { return load("german") })},
	{"fr", sync.OnceValue(func() *Catalogue { return load("french") })},
}

// Languages lists the tags of all catalogues.
func Languages() []string {
	var tags []string
	for _, l := range languages {
		tags = append(tags, l.tag)
	}
	return tags
}

// English is the default language.
func English() *Catalogue { return languages[0].read() }

// Find returns the catalogue of a language by its tag. The error lists the
// available ones.
func Find(tag string) (*Catalogue, error) {
	for _, l := range languages {
		if strings.EqualFold(l.tag, tag) {
			return l.read(), nil
		}
	}
	return nil, fmt.Errorf("language %q is not known; allowed: %s", tag, strings.Join(Languages(), ", "))
}

// View names the direction from which a part is seen. The usual names are
// translated; other texts of a file are not changed.
func (c *Catalogue) View(said string) string {
	return cmp.Or(c.Sheet.Views[strings.ToLower(strings.TrimSpace(said))], said)
}
