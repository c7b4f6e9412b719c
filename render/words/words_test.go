package words

import (
	"reflect"
	"testing"
)

// All returns every catalogue.
func All() []*Catalogue {
	all := make([]*Catalogue, len(languages))
	for i, l := range languages {
		all[i] = l.read()
	}
	return all
}

// A missing word would leave a gap on the paper.
func TestEveryLanguageHasEveryWord(t *testing.T) {
	for _, c := range All() {
		checkFilled(t, c.Language, reflect.ValueOf(*c))
	}
}

func checkFilled(t *testing.T, path string, v reflect.Value) {
	t.Helper()
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			checkFilled(t, path+"."+v.Type().Field(i).Name, v.Field(i))
		}
	case reflect.Slice, reflect.Array:
		if v.Len() == 0 {
			t.Errorf("%s is empty", path)
		}
		for i := range v.Len() {
			checkFilled(t, path, v.Index(i))
		}
	case reflect.Map:
		if v.Len() == 0 {
			t.Errorf("%s is empty", path)
		}
		for _, key := range v.MapKeys() {
			checkFilled(t, path+"."+key.String(), v.MapIndex(key))
		}
	case reflect.String:
		if v.String() == "" {
			t.Errorf("%s has no words", path)
		}
	}
}

// The usual views are translated; other views of a file are not changed.
func TestViews(t *testing.T) {
	for _, c := range []struct{ language, said, want string }{
		{"en", "from above", "from above"},
		{"de", "from above", "von oben"},
		{"fr", "From below", "de dessous"},
		{"es", "from the front", "desde delante"},
		{"de", "vom Getriebe her", "vom Getriebe her"},
	} {
		catalogue, err := Find(c.language)
		if err != nil {
			t.Fatal(err)
		}
		if got := catalogue.View(c.said); got != c.want {
			t.Errorf("%s %q: %q, want %q", c.language, c.said, got, c.want)
		}
	}
}
