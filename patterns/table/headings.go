package table

import (
	"slices"
	"strings"
	"unicode"
)

// The columns of a table of points. A table without a heading has the first
// ones, in this order.
var csvColumns = []string{"id", "x", "y", "kind", "cast", "mark"}

const diameterColumn = "diameter"

// wordSet is a set of words of headings, in lower case.
type wordSet map[string]bool

func setOf(words string) wordSet {
	set := wordSet{}
	for _, w := range strings.Fields(words) {
		set[w] = true
	}
	return set
}

// The words of headings in tables from spreadsheets and measuring machines, in
// the four languages of the program (value from memory, common practice).
var (
	actualWords  = setOf("actual act measured meas ist istwert istmaß istmass gemessen mesuré mesure mesurée réel reel réelle real medido medida")
	nominalWords = setOf("nominal nom nominell nennmaß nennmass nennwert soll sollwert sollmaß sollmass theoretical theo target théorique theorique teórico teorico teórica")
	// otherWords name a quantity that is not a place.
	otherWords = setOf("deviation dev delta error err tolerance tol abweichung abw abstand toleranz écart ecart tolérance desviación desviacion desv tolerancia" +
		" diff difference differenz min max upper lower plus minus std sigma range size width length direction vector normal out radius radio rayon area count angle grid")
	// plainWords do not change the meaning of a heading.
	plainWords = setOf("coordinate coordinates coord coords position pos koordinate koordinaten coordonnée coordonnee coordonnées coordenada coordenadas" +
		" centre center mitte mittelpunkt zentrum centro location loc value wert valeur valor axis achse axe eje of the de la du der des hole holes bohrung trou agujero point punkt punto")
	idWords = setOf("id ident name label point hole feature element no nr num number item bohrung loch punkt merkmal nummer bezeichnung nom trou numéro numero perçage élément" +
		" nombre número agujero taladro punto elemento bolt schraube vis tornillo fastener")
	diameterWords = setOf("diameter diameters dia diam d durchmesser diamètre diametre diámetro diametro ø ⌀ φ")
)

// unitWords are the units of headings and reports, by their spellings.
var unitWords = map[string]string{
	"mm": "mm", "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm", "millimètre": "mm", "millimètres": "mm", "milímetro": "mm", "milímetros": "mm",
	"cm": "cm", "m": "m",
	"in": "in", "inch": "in", "inches": "in", "zoll": "in", "pouce": "in", "pouces": "in", "pulgada": "in", "pulgadas": "in", `"`: "in", "″": "in",
}

// heading is what the heading of a column says.
type heading struct {
	column string // the meaning; empty for a column that is not used
	rank   int    // of headings with the same meaning, the lowest is used
	unit   string // empty: not stated
}

// The ranks of headings: measured values before bare ones before nominal ones,
// and last what has words that nobody knows.
const (
	rankMeasured = iota
	rankBare
	rankNominal
	rankUnknown
)

// headingOf reads the heading of one column.
func headingOf(text string) heading {
	words := headingWords(text)
	if len(words) == 0 {
		if strings.TrimSpace(text) == "#" {
			return heading{column: "id", rank: rankUnknown}
		}
		return heading{}
	}
	if slices.Contains([]string{"kind", "cast", "mark"}, words[0]) {
		return heading{column: words[0], rank: rankBare}
	}
	var h heading
	var axes, sizes []string
	var rest []string
	measured, nominal := false, false
	for i, w := range words {
		switch {
		case i > 0 && unitWords[w] != "" && h.unit == "":
			h.unit = unitWords[w]
		case w == "x" || w == "y" || w == "z":
			axes = append(axes, w)
		case diameterWords[w]:
			sizes = append(sizes, w)
		case actualWords[w]:
			measured = true
		case nominalWords[w] && !(len(words) == 1 && idWords[w]):
			nominal = true
		case otherWords[w]:
			return heading{}
		default:
			rest = append(rest, w)
		}
	}
	unknown := slices.ContainsFunc(rest, func(w string) bool { return !plainWords[w] })
	switch {
	case len(axes) == 1 && len(sizes) == 0 && axes[0] != "z":
		h.column = axes[0]
	case len(sizes) == 1 && len(axes) == 0 && !slices.ContainsFunc(rest, func(w string) bool { return !plainWords[w] && !idWords[w] }):
		h.column, unknown = diameterColumn, false
	case len(axes)+len(sizes) == 0 && words[0] == "id":
		return heading{column: "id", rank: rankMeasured}
	case len(axes)+len(sizes) == 0 && !measured && slices.Contains(words, "id"):
		return heading{column: "id", rank: rankBare}
	case len(axes)+len(sizes) == 0 && !measured && !nominal && idWords[rest[len(rest)-1]] && !slices.ContainsFunc(rest, func(w string) bool { return !plainWords[w] && !idWords[w] }):
		return heading{column: "id", rank: rankNominal}
	default:
		return heading{}
	}
	switch {
	case unknown:
		h.rank = rankUnknown
	case measured:
		h.rank = rankMeasured
	case nominal:
		h.rank = rankNominal
	default:
		h.rank = rankBare
	}
	return h
}

// headingWords returns the words of a heading in lower case. Names such as
// PosX and Xmm are two words.
func headingWords(text string) []string {
	var words []string
	for _, w := range strings.FieldsFunc(strings.ToLower(text), func(c rune) bool { return !unicode.IsLetter(c) && !strings.ContainsRune(`"″⌀`, c) }) {
		words = append(words, apart(w)...)
	}
	return words
}

// apart splits a word into an axis and what is written together with it.
func apart(word string) []string {
	known := func(w string) bool {
		return actualWords[w] || nominalWords[w] || plainWords[w] || otherWords[w] || len(w) > 1 && unitWords[w] != ""
	}
	if known(word) || len(word) < 3 {
		return []string{word}
	}
	for _, axis := range []string{"x", "y", "z"} {
		if rest, ok := strings.CutPrefix(word, axis); ok && known(rest) {
			return []string{axis, rest}
		}
		if rest, ok := strings.CutSuffix(word, axis); ok && known(rest) {
			return []string{rest, axis}
		}
	}
	return []string{word}
}

// namesPlaces reports whether a row is the heading of a table of points: it
// names a column x and a column y in words that are known.
func namesPlaces(cells []string) bool {
	found := map[string]bool{}
	for _, cell := range cells {
		if h := headingOf(cell); h.rank < rankUnknown {
			found[h.column] = true
		}
	}
	return found["x"] && found["y"]
}

// unitOf returns the unit if a cell has nothing else, as in "[mm]".
func unitOf(cell string) string {
	return unitWords[strings.ToLower(strings.Trim(strings.TrimSpace(cell), "[]()."))]
}

// unitNamed returns the unit that a line above the table states, or "".
func unitNamed(cells []string) string {
	words := headingWords(strings.Join(cells, " "))
	for i, w := range words {
		if !setOf("unit units einheit einheiten unité unités unite unidad unidades")[w] {
			continue
		}
		for _, after := range words[i+1:] {
			if u := unitWords[after]; u != "" {
				return u
			}
		}
	}
	return ""
}

// totalWords begin a line under the points that has sums or means.
var totalWords = setOf("total totals sum sums mean average avg count summe gesamt mittel mittelwert anzahl somme totaux moyenne nombre suma totales media promedio min max minimum maximum")

// isTotal reports whether a line has sums of the lines above it.
func isTotal(cells []string) bool {
	for _, cell := range cells {
		if text := strings.TrimSpace(cell); text != "" {
			return totalWords[strings.ToLower(strings.TrimRight(text, ": "))]
		}
	}
	return false
}
