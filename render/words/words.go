// Package words holds every word that is printed on a sheet: one catalogue a
// language, each with the same fields. A sheet never spells a word itself, so
// that a word that a language lacks is seen by a test, not by a reader.
//
// What a pattern file says (titles, notes, cautions, names of kinds) stays as
// it is written there.
package words

import (
	"fmt"
	"slices"
	"strings"
)

// Catalogue is the printed words of one language. Verbs such as %d and %s
// stand where a sheet fills in figures and names; they may change places with
// %[2]s.
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
	Drawing   Drawing
	Proof     Proof
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

	Named string // %s: %s: a name, and what is said of it
}

var catalogues = []*Catalogue{&english, bound(&spanish), bound(&german), bound(&french)}

// Languages lists the tags of all catalogues.
func Languages() []string {
	var tags []string
	for _, c := range catalogues {
		tags = append(tags, c.Language)
	}
	return tags
}

// English is the language of a sheet where none is asked for.
func English() *Catalogue { return &english }

// Find gives the catalogue of a language by its tag; the error lists those
// there are.
func Find(tag string) (*Catalogue, error) {
	i := slices.IndexFunc(catalogues, func(c *Catalogue) bool { return strings.EqualFold(c.Language, tag) })
	if i < 0 {
		return nil, fmt.Errorf("language %q is not known; allowed: %s", tag, strings.Join(Languages(), ", "))
	}
	return catalogues[i], nil
}

// View says from where a part is seen. The usual places are known in every
// language; what else a file says stays as it is.
func (c *Catalogue) View(said string) string {
	if view, ok := c.Sheet.Views[strings.ToLower(strings.TrimSpace(said))]; ok {
		return view
	}
	return said
}
