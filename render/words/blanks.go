package words

import (
	"reflect"
	"regexp"
	"strings"
)

// tight are the blanks at which no line may end: in French those before high
// signs and inside quotation marks, in all languages the one before the sign
// for percent and units and the one behind ≈. The catalogues have plain blanks there.
var tight = strings.NewReplacer(" :", "\u00a0:", " ;", "\u00a0;", " ?", "\u00a0?", " !", "\u00a0!", "≈ %", "≈\u00a0%", " kN", "\u00a0kN", " MPa", "\u00a0MPa", " dpi", "\u00a0dpi", "« ", "«\u00a0", " »", "\u00a0»")

// percent is the sign with its blank, not a verb that stands behind a blank.
var percent = regexp.MustCompile(` %(%|[^\w.\[]|\.(?:\s|$)|$)`)

// bound makes the tight blanks of a catalogue hold.
func bound(c *Catalogue) *Catalogue {
	bind(reflect.ValueOf(c).Elem())
	return c
}

func bind(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			bind(v.Field(i))
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			bind(v.Index(i))
		}
	case reflect.Map:
		for _, key := range v.MapKeys() {
			one := reflect.New(v.Type().Elem()).Elem()
			one.Set(v.MapIndex(key))
			bind(one)
			v.SetMapIndex(key, one)
		}
	case reflect.String:
		v.SetString(percent.ReplaceAllString(tight.Replace(v.String()), "\u00a0%$1"))
	}
}
