// Package words has every word that a person reads: one catalogue per language,
// all with the same fields. Sheets, commands and pages contain no text of their
// own, so that a test, not a reader, notices a word that a language lacks.
//
// The words are in text files, a folder per language and a file per subject:
// see load.go. Say words a finding of the calculating half.
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

// Catalogue is the words of one language. Verbs such as %d and %s stand where a
// sheet fills in figures and names; they may change places with %[2]s.
type Catalogue struct {
	Language  string // BCP 47 tag
	Name      string // of the language, in itself
	Decimal   string // the sign before decimals: see Figure
	Sheet     Sheet
	Card      Card
	Book      Book
	Forecast  Forecast
	Handout   Handout
	Tile      Tile
	Tray      Tray
	Condition Condition
	Record    Record
	Drawing   Drawing
	Proof     Proof
	Page      Page
	Torque    Torque
	Wrench    Wrench
	List      List
	Terms     map[string]string // of the trade, by finding.Term
	Findings  map[string]string // sentences by finding.Code: see Say
}

// List is how names are put in a row.
type List struct {
	And, Or string // before the last
	More    Plural // %d: names that are left out
	Allowed string // %s; allowed: %s
}

// Sheet is what all sheets share.
type Sheet struct {
	Card     string // card %s: the fingerprint of the file
	Revision string // rev %s
	Seen     string // seen %s: from above
	Mirrored string
	Front    string // at the arrow to the front of the machine
	Asked    string // order %s, not the file's own

	Ways, Turns map[string]string // by the words of the pattern file
	Views       map[string]string // of the part, by the words that a file may say: see View

	DoneBy, WrenchNumber, Date, CheckedBy string // places to sign
	SignOnLast                            string // where the places to sign are

	ManualFirst string

	Named     string // %s: %s: a name, and what is said of it
	NoRoomFor string // %s: words that found no room
}

// languages are the catalogues by their tags, each read when it is first asked
// for.
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

// English is the language where none is asked for.
func English() *Catalogue { return languages[0].read() }

// Find returns the catalogue of a language by its tag; the error lists those
// there are.
func Find(tag string) (*Catalogue, error) {
	for _, l := range languages {
		if strings.EqualFold(l.tag, tag) {
			return l.read(), nil
		}
	}
	return nil, fmt.Errorf("language %q is not known; allowed: %s", tag, strings.Join(Languages(), ", "))
}

// View says from where a part is seen. The usual places are known in every
// language; what else a file says stays as it is.
func (c *Catalogue) View(said string) string {
	return cmp.Or(c.Sheet.Views[strings.ToLower(strings.TrimSpace(said))], said)
}
