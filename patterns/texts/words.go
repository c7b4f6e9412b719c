package texts

import (
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry/expression"
	"drawdown/sequence/plan"
)

// word is a word of a text, as written and in lower case, and whether it is the
// last of its clause.
type word struct {
	as, low string
	ends    bool
}

var marks = expression.Lazily(`[.,;:)?!]$`)

// wordsOf splits a text at spaces. It also splits words joined by a dash or a
// slash (M1-M4, M1/M2), but not compound words.
func wordsOf(text string) (all []word) {
	for _, field := range strings.Fields(strings.NewReplacer("(", " ", "“", " ", "„", " ", "\"", " ", "\u00a0", " ").Replace(text)) {
		ends := marks.MatchString(field)
		all = append(all, parts(strings.TrimRight(field, ".,;:)?!”’"), ends)...)
	}
	return all
}

var numbered = expression.Lazily(`^(\pL{0,3}\d{1,3})[-–—/+](\pL{0,3}\d{1,3})$`)

func parts(field string, ends bool) []word {
	if field == "" {
		return nil
	}
	if m := numbered.FindStringSubmatch(field); m != nil && !propertyClass.MatchString(field) {
		return []word{{m[1], strings.ToLower(m[1]), false}, {m[2], strings.ToLower(m[2]), ends}}
	}
	return []word{{field, strings.ToLower(field), ends}}
}

var propertyClass = expression.Lazily(`^[ACF]\d-\d{2,3}$`) // ISO 3506: A2-70

// numberWords are the number words of texts, from two on: one is no count.
// Spanish once (11) is left out, as it is an English word too.
var numberWords = numbersOf(
	"two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty",
	"zwei drei vier fünf sechs sieben acht neun zehn elf zwölf dreizehn vierzehn fünfzehn sechzehn siebzehn achtzehn neunzehn zwanzig",
	"deux trois quatre cinq six sept huit neuf dix onze douze treize quatorze quinze seize",
	"dos tres cuatro cinco seis siete ocho nueve diez _ doce trece catorce quince dieciséis",
)

func numbersOf(languages ...string) map[string]int {
	numbers := map[string]int{}
	for _, words := range languages {
		for i, w := range list(words) {
			numbers[w] = i + 2
		}
	}
	return numbers
}

// number returns the count that a word states, or 0.
func (w word) number() int {
	if n, err := strconv.Atoi(w.low); err == nil && n > 1 && n < 1000 {
		return n
	}
	return numberWords[w.low]
}

// is reports whether the word is in a list.
func (w word) is(list []string) bool { return slices.Contains(list, w.low) }

func list(words string) []string { return strings.Fields(words) }

// units are words that make the number before them a quantity.
var units = list("mm cm m in inch inches nm n·m n.m n lbf·ft lbf·in ft-lb lb-ft ft lbf kg g h min s sec minutes hours days stunden tage heures jours horas días ° degrees grad degrés grados °c % bar l ml litre litres µm people persons")

// stemsOf lists the words of a name in lower case, each also without a final s.
func stemsOf(name string) (all []string) {
	for _, w := range strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return strings.ContainsRune(" -_/.,()", r) }) {
		all = append(all, w, strings.TrimSuffix(w, "s"))
	}
	return all
}

// facts holds what a file states, by the words that a text may use for it.
type facts struct {
	plan.Plan
	used  []plan.Kind      // those of fasteners
	ids   map[string]bool  // of fasteners and stations
	heads map[string]int   // letters of ids, and their number
	named map[string][]int // numbers by the word before them: cap, cyl, shell
	alone bool             // about one kind of several
}

func factsOf(p plan.Plan) facts {
	f := facts{Plan: p, ids: map[string]bool{}, heads: map[string]int{}, named: map[string][]int{}}
	for _, k := range p.Kinds {
		if p.Count(k.Name) > 0 {
			f.used = append(f.used, k)
		}
	}
	for _, x := range p.Joint.Fasteners {
		f.id(x.ID)
	}
	for _, s := range p.Joint.Stations {
		f.id(s.ID)
		f.name(s.Label)
	}
	for _, c := range p.Joint.Clusters {
		f.name(c.Name)
	}
	for _, b := range p.Joint.Bores {
		f.name(b.Label)
	}
	for _, l := range p.Joint.Labels {
		f.ids[l.Text] = true
		f.name(l.Text)
	}
	return f
}

var lettersAndNumber = expression.Lazily(`^(\p{Lu}{1,3})(\d{1,3})$`)

func (f facts) id(id string) {
	f.ids[id] = true
	if m := lettersAndNumber.FindStringSubmatch(id); m != nil {
		f.heads[m[1]]++
	}
}

var wordAndNumber = expression.Lazily(`(\pL+)\W*(\d{1,3})$`)

func (f facts) name(name string) {
	if m := wordAndNumber.FindStringSubmatch(name); m != nil {
		n, _ := strconv.Atoi(m[2])
		called := callOf(m[1])
		f.named[called] = append(f.named[called], n)
	}
}

// cylinders are the words for a cylinder.
var cylinders = list("cyl cylinder cylinders zyl zylinder zylindern cylindre cylindres cil cilindro cilindros")

// callOf maps the words for a thing to one word.
func callOf(w string) string {
	w = strings.ToLower(w)
	if slices.Contains(cylinders, w) {
		return "cyl"
	}
	return strings.TrimSuffix(w, "s")
}
