package words

import (
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"drawdown/render/font"
)

// eachWord calls f with every printed string of a catalogue and its path.
func eachWord(path string, v reflect.Value, f func(path, text string)) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			eachWord(path+"."+v.Type().Field(i).Name, v.Field(i), f)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			eachWord(path+"."+string(rune('1'+i)), v.Index(i), f)
		}
	case reflect.Map:
		for _, key := range v.MapKeys() {
			eachWord(path+"."+key.String(), v.MapIndex(key), f)
		}
	case reflect.String:
		f(path, v.String())
	}
}

// wordsOf returns all printed strings of a language by their paths.
func wordsOf(c *Catalogue) map[string]string {
	all := map[string]string{}
	eachWord("", reflect.ValueOf(*c), func(path, text string) { all[path] = text })
	return all
}

var verbs = regexp.MustCompile(`%(\[\d+\])?[.\d]*[a-z]`)

// arguments lists what a string is filled in with, in the order of the
// arguments. A plural form that has its count in words needs no verb.
func arguments(text string) []string {
	text = strings.ReplaceAll(text, "%%", "")
	var list []string
	for n, verb := range verbs.FindAllString(text, -1) {
		if at := strings.IndexByte(verb, ']'); at > 0 {
			n = int(verb[2] - '1')
			verb = "%" + verb[at+1:]
		}
		list = append(list, string(rune('1'+n))+verb)
	}
	slices.Sort(list)
	return list
}

// braces are what Say fills in, and what starts an optional part.
var braces = regexp.MustCompile(`\{\w+(:[^{}|]*)?\}|\{[?!]\w+:|\{\w+\||\w+=|[|}]`)

// Every language has the same strings, each with the same things to fill in.
func TestLanguagesFillInTheSame(t *testing.T) {
	in := wordsOf(English())
	for _, c := range All() {
		other := wordsOf(c)
		for path, text := range in {
			translated, ok := other[path]
			if !ok {
				t.Errorf("%s lacks %s", c.Language, path)
			} else if got, want := arguments(translated), arguments(text); !slices.Equal(got, want) {
				t.Errorf("%s%s: %q fills in %q, English %q", c.Language, path, translated, got, want)
			}
		}
		for path := range other {
			if _, ok := in[path]; !ok {
				t.Errorf("%s has %s, which English has not", c.Language, path)
			}
		}
	}
}

// sameAsEnglish lists the words that a language shares with English and that
// are not missing translations.
var sameAsEnglish = map[string][]string{
	"es": {".Torque.AtWork.Nominal", ".Terms.PTFE", ".Condition.Manual", ".Findings.exercise how many", ".Findings.torque stress area", ".Sheet.Ways.circular", ".Condition.Nominal", ".Tray.Round", ".Tile.Bar", ".Torque.Nominal", ".Torque.No", ".Page.Share.Systems.1.System", ".Page.Share.Systems.2.System", ".Page.Share.Systems.3.System", ".Page.Share.Systems.4.System", ".Page.Share.Systems.5.System"},
	"de": {".Record.SignName", ".Terms.PTFE", ".Findings.exercise how many", ".Findings.torque stress area", ".Tray.Round", ".Tile.Bar", ".Handout.Name", ".Handout.Showing.Pause", ".Page.Records.Person", ".Page.Share.Systems.1.System", ".Page.Share.Systems.2.System", ".Page.Share.Systems.3.System", ".Page.Share.Systems.4.System", ".Page.Share.Systems.5.System"},
	"fr": {".Record.SignHere", ".Page.Edit.Keys.note", ".Page.Edit.Keys.angle", ".Page.Edit.Keys.machine", ".Page.Edit.Keys.centre", ".Page.Edit.Keys.date", ".Terms.PTFE", ".Terms.graphite", ".Torque.AtWork.Fatigue", ".Record.Angles", ".Findings.exercise how many", ".Findings.torque stress area", ".Page.Records.Corrections", ".Page.Run.Photo", ".Page.Seen.Names.corrosion", ".Terms.aluminium", ".Record.Photo", ".Sheet.Date", ".Terms.bronze", ".Terms.composite", ".Book.Page", ".Book.AngleOn", ".Tray.Round", ".Tile.Bar", ".Handout.Date", ".Handout.Showing.Pause", ".Torque.Nominal", ".Torque.Sources", ".Page.Share.Systems.1.System", ".Page.Share.Systems.2.System", ".Page.Share.Systems.3.System", ".Page.Share.Systems.4.System", ".Page.Share.Systems.5.System"},
}

// A string that equals the English one has not been translated. A string of
// only figures and signs has nothing to translate.
func TestNothingIsLeftInEnglish(t *testing.T) {
	in := wordsOf(English())
	letters := regexp.MustCompile(`\pL`)
	for _, c := range All()[1:] {
		shared := sameAsEnglish[c.Language]
		for path, text := range wordsOf(c) {
			if path == ".Decimal" || !letters.MatchString(braces.ReplaceAllString(verbs.ReplaceAllString(text, ""), "")) {
				continue
			}
			if listed := slices.Contains(shared, path); (text == in[path]) != listed {
				t.Errorf("%s%s: %q, English %q; listed as the same: %v", c.Language, path, text, in[path], listed)
			}
		}
	}
}

// The typeface has every character of every language.
func TestTypefaceHoldsTheLanguages(t *testing.T) {
	for _, c := range All() {
		for path, text := range wordsOf(c) {
			if missing, found := font.Missing(text); found {
				t.Errorf("%s%s: the typeface lacks %c (U+%04X)", c.Language, path, missing, missing)
			}
		}
	}
}

// French has a space before a colon, a semicolon, a question mark and an
// exclamation mark, and it must not break (Lexique des règles typographiques en
// usage à l'Imprimerie nationale, from memory).
func TestFrenchBlanks(t *testing.T) {
	french, err := Find("fr")
	if err != nil {
		t.Fatal(err)
	}
	wrong := regexp.MustCompile(`[^\x{a0}][:;?!%]`)
	asWritten := regexp.MustCompile(`«[^»]*»`) // text of a file follows the file's rules
	for path, text := range wordsOf(french) {
		text = asWritten.ReplaceAllString(braces.ReplaceAllString(text, "x"), "x")
		text = strings.ReplaceAll(verbs.ReplaceAllString(strings.ReplaceAll(text, "%%", "٪"), "x"), "٪", "%")
		if found := wrong.FindString(text); found != "" {
			t.Errorf("%s: %q has %q", path, text, found)
		}
	}
}

// Figures in the style of each language; common practice, no source.
func TestFigures(t *testing.T) {
	for _, c := range []struct{ language, printed, want string }{
		{"en", "24.5 N·m", "24.5 N·m"},
		{"es", "24.5 N·m", "24,5\u00a0N·m"},
		{"de", "2.5–24.5 N·m", "2,5–24,5\u00a0N·m"},
		{"fr", "M10×1.5", "M10×1,5"},
		{"fr", "3/8-16 UNC", "3/8-16\u00a0UNC"},
		{"de", "90°", "90°"},
	} {
		catalogue, err := Find(c.language)
		if err != nil {
			t.Fatal(err)
		}
		if got := catalogue.Figure(c.printed); got != c.want {
			t.Errorf("%s %q: %q, want %q", c.language, c.printed, got, c.want)
		}
	}
}
