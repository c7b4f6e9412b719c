// Package wordstest has a catalogue with every word marked, for tests of
// printed text: unmarked text does not come from the catalogue. Only tests
// import it.
package wordstest

import (
	"reflect"
	"regexp"
	"strings"

	"drawdown/render/words"
)

// All returns every catalogue, English first.
func All() []*words.Catalogue {
	var all []*words.Catalogue
	for _, tag := range words.Languages() {
		c, err := words.Find(tag)
		if err != nil {
			panic(err)
		}
		all = append(all, c)
	}
	return all
}

// Marked returns the English catalogue with every word between ‹ and ›, and a comma
// before decimals.
func Marked() *words.Catalogue {
	c := *words.English()
	c.Decimal = ","
	mark(reflect.ValueOf(&c).Elem())
	return &c
}

func mark(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			switch v.Type().Field(i).Name {
			case "Language", "Name", "Decimal":
			default:
				mark(v.Field(i))
			}
		}
	case reflect.Slice:
		fresh := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		reflect.Copy(fresh, v)
		v.Set(fresh)
		for i := range v.Len() {
			mark(v.Index(i))
		}
	case reflect.Map:
		fresh := reflect.MakeMap(v.Type())
		for _, key := range v.MapKeys() {
			one := reflect.New(v.Type().Elem()).Elem()
			one.Set(v.MapIndex(key))
			mark(one)
			fresh.SetMapIndex(key, one)
		}
		v.Set(fresh)
	case reflect.String:
		v.SetString(sentence(v.String()))
	}
}

var wordOrVerb = regexp.MustCompile(`%(\[\d\])?[.\d]*[a-z]|%%|[\pL’'-]*\pL[\pL’'-]*`)

func plain(text string) string {
	return wordOrVerb.ReplaceAllStringFunc(text, func(w string) string {
		if strings.HasPrefix(w, "%") {
			return w
		}
		return "‹" + w + "›"
	})
}

// sentence marks the words outside of braces, and those that braces choose from.
func sentence(text string) string {
	var out strings.Builder
	for {
		open := strings.IndexByte(text, '{')
		if open < 0 {
			return out.String() + plain(text)
		}
		end := closing(text, open)
		out.WriteString(plain(text[:open]) + "{" + choice(text[open+1:end]) + "}")
		text = text[end+1:]
	}
}

// closing finds the end of the braces that open at a place.
func closing(text string, open int) int {
	depth := 0
	for i := open; i < len(text); i++ {
		switch text[i] {
		case '{':
			depth++
		case '}':
			if depth--; depth == 0 {
				return i
			}
		}
	}
	panic("the braces do not close: " + text)
}

var keyed = regexp.MustCompile(`^[\pL\d '-]+=`)

// choice marks what stands inside of braces.
func choice(inside string) string {
	if inside[0] == '?' || inside[0] == '!' {
		name, text, _ := strings.Cut(inside, ":")
		return name + ":" + sentence(text)
	}
	name, forms, ok := strings.Cut(inside, "|")
	if !ok {
		return inside
	}
	out, depth, from := name, 0, 0
	for i := 0; i <= len(forms); i++ {
		last := i == len(forms)
		if !last && forms[i] == '{' {
			depth++
		} else if !last && forms[i] == '}' {
			depth--
		}
		if last || depth == 0 && forms[i] == '|' {
			form := forms[from:i]
			key := ""
			if !last {
				key = keyed.FindString(form)
			}
			out, from = out+"|"+key+sentence(form[len(key):]), i+1
		}
	}
	return out
}

var (
	fromCatalogue = regexp.MustCompile(`‹[^›]*(›|…|$)`) // a word at the end may be cut off
	wordOrFigure  = regexp.MustCompile(`[\pL\d][\pL\d·×,./-]*`)
	letter        = regexp.MustCompile(`\pL`)
	pointed       = regexp.MustCompile(`\d\.\d`)
)

// Unmarked returns the words of a line that do not come from the marked catalogue,
// and the figures that keep their point. Those that are allowed are no words but
// names, units and keys.
func Unmarked(line string, allowed *regexp.Regexp) []string {
	var found []string
	for _, word := range wordOrFigure.FindAllString(fromCatalogue.ReplaceAllString(line, ""), -1) {
		word = strings.TrimRight(word, ".,·-")
		if (letter.MatchString(word) || pointed.MatchString(word)) && !allowed.MatchString(word) {
			found = append(found, word)
		}
	}
	return found
}
