package words

import (
	"embed"
	"fmt"
	"io/fs"
	"path"
	"reflect"
	"strconv"
	"strings"
)

//go:embed english spanish german french
var files embed.FS

// load reads a catalogue: card.txt fills the field Card, and so on. The files
// in findings/ together fill Findings, and language.txt names the language.
//
// A line is a path, an equals sign with a space on both sides, and the words:
//
//	Before = Before you start
//	Steps.1 = Loosen all
//	Ways.spiral = spiral
//
// What follows the name of a map is its key, including dots. Words that begin
// or end with a space are in double quotes. Lines that begin with # are
// comments.
//
// The files are embedded, so an error in them is a bug of ours; the tests read
// every one.
func load(folder string) *Catalogue {
	c := &Catalogue{Terms: map[string]string{}, Findings: map[string]string{}}
	whole := reflect.ValueOf(c).Elem()
	err := fs.WalkDir(files, folder, func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := files.ReadFile(name)
		if err != nil {
			return err
		}
		field := whole.FieldByNameFunc(func(n string) bool { return strings.EqualFold(n+".txt", path.Base(name)) })
		switch {
		case path.Base(path.Dir(name)) == "findings":
			field = reflect.ValueOf(c.Findings)
		case path.Base(name) == "language.txt":
			field = whole
		}
		if !field.IsValid() {
			return fmt.Errorf("%s: the catalogue has no such field", name)
		}
		return fill(field, name, string(text))
	})
	if err != nil {
		panic(err)
	}
	return c
}

// fill sets the words of one file.
func fill(field reflect.Value, name, text string) error {
	for number, line := range strings.Split(text, "\n") {
		if line == "" || line[0] == '#' {
			continue
		}
		where, said, ok := strings.Cut(line, " = ")
		if unquoted, err := strconv.Unquote(said); err == nil && said[0] == '"' {
			said = unquoted
		}
		if !strings.HasPrefix(name, "english/") {
			said = bound(said)
		}
		if !ok || !set(field, where, said) {
			return fmt.Errorf("%s:%d: %q is not the path of a word, or is there twice", name, number+1, where)
		}
	}
	return nil
}

// set puts words at a path below v. It returns false if there is no such path,
// or if it has words already.
func set(v reflect.Value, where, said string) bool {
	switch v.Kind() {
	case reflect.String:
		if where != "" || v.String() != "" {
			return false
		}
		v.SetString(said)
		return true
	case reflect.Map:
		return setKey(v, where, said)
	}
	name, rest, _ := strings.Cut(where, ".")
	switch v.Kind() {
	case reflect.Struct:
		field := v.FieldByName(name)
		return field.IsValid() && set(field, rest, said)
	case reflect.Array, reflect.Slice:
		n, err := strconv.Atoi(name)
		if err == nil && v.Kind() == reflect.Slice && n == v.Len()+1 {
			v.Set(reflect.Append(v, reflect.Zero(v.Type().Elem())))
		}
		return err == nil && n >= 1 && n <= v.Len() && set(v.Index(n-1), rest, said)
	}
	return false
}

// setKey puts words into a map of strings, plurals or lists. The path ends in
// the name of the form, or in the number in the list.
func setKey(v reflect.Value, where, said string) bool {
	if v.IsNil() {
		v.Set(reflect.MakeMap(v.Type()))
	}
	key, rest := where, ""
	if v.Type().Elem().Kind() != reflect.String {
		dot := max(0, strings.LastIndexByte(where, '.'))
		key, rest = where[:dot], where[min(len(where), dot+1):]
	}
	one := reflect.New(v.Type().Elem()).Elem()
	if there := v.MapIndex(reflect.ValueOf(key)); there.IsValid() {
		one.Set(there)
	}
	if !set(one, rest, said) {
		return false
	}
	v.SetMapIndex(reflect.ValueOf(key), one)
	return true
}
