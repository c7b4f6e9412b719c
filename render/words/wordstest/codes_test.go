package wordstest

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/render/words"
)

// codesOfTheTree lists the value of every constant of the type finding.Code in
// the project, outside of tests.
func codesOfTheTree(t *testing.T) []string {
	t.Helper()
	var codes []string
	root := filepath.Join("..", "..", "..")
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		ast.Inspect(file, func(n ast.Node) bool {
			spec, ok := n.(*ast.ValueSpec)
			if !ok {
				return true
			}
			of, ok := spec.Type.(*ast.SelectorExpr)
			if !ok || of.Sel.Name != "Code" {
				return true
			}
			for _, v := range spec.Values {
				if lit, ok := v.(*ast.BasicLit); ok && lit.Kind == token.STRING {
					code, err := strconv.Unquote(lit.Value)
					if err != nil {
						t.Error(err)
					}
					codes = append(codes, code)
				}
			}
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return codes
}

// Every code has its words in every language, and no words lack a code.
func TestEveryFindingHasItsWords(t *testing.T) {
	codes := codesOfTheTree(t)
	if len(codes) < 10 {
		t.Fatalf("only %d codes found in the tree", len(codes))
	}
	for i, code := range codes {
		if slices.Contains(codes[:i], code) {
			t.Errorf("the code %q is there twice", code)
		}
	}
	for _, c := range All() {
		for _, code := range codes {
			if c.Findings[code] == "" {
				t.Errorf("%s has no words for %q", c.Language, code)
			}
		}
		for key := range c.Findings {
			if !slices.Contains(codes, strings.TrimSuffix(key, ".allowed")) {
				t.Errorf("%s: there is no code %q", c.Language, key)
			}
		}
	}
}

// Every code has an example, and each is said in every language with all its
// braces filled.
func TestEveryFindingIsSaid(t *testing.T) {
	for _, code := range codesOfTheTree(t) {
		values, ok := Examples[finding.Code(code)]
		if !ok {
			t.Errorf("there is no example of %q", code)
			continue
		}
		for _, c := range All() {
			said := c.Say(finding.Noted(finding.Code(code), values))
			ours := said
			for _, v := range values {
				if written, ok := v.(string); ok { // a file's own words may have braces
					ours = strings.ReplaceAll(ours, written, "")
				}
			}
			if strings.ContainsAny(ours, "{}") || strings.Contains(said, "%!") || strings.Contains(said, "=map[") {
				t.Errorf("%s %q: %s", c.Language, code, said)
			}
			t.Logf("%s %s: %s", c.Language, code, said)
		}
	}
}

// Every language fills in the same values.
func TestSentencesFillInTheSame(t *testing.T) {
	names := regexp.MustCompile(`\{[?!]?(\w+)`)
	filled := func(sentence string) []string {
		found := map[string]bool{}
		for _, m := range names.FindAllStringSubmatch(sentence, -1) {
			found[m[1]] = true
		}
		return slices.Sorted(maps.Keys(found))
	}
	for key, english := range words.English().Findings {
		for _, c := range All()[1:] {
			if got, want := filled(c.Findings[key]), filled(english); !slices.Equal(got, want) {
				t.Errorf("%s %q fills in %q, English %q", c.Language, key, got, want)
			}
		}
	}
}

// Nothing in a sentence is worded beside the catalogue but what a person wrote:
// names, and the words of files and flags.
func TestFindingsSpeakTheCatalogue(t *testing.T) {
	c := Marked()
	for code, values := range Examples {
		given := map[string]bool{}
		note(given, reflect.ValueOf(values))
		for _, word := range Unmarked(c.Say(finding.Warned(code, values)), unitsAndIDs) {
			if !given[word] {
				t.Errorf("%s: %q in %s", code, word, c.Say(finding.Warned(code, values)))
			}
		}
	}
}

// note keeps the words of all texts in a value; terms of the trade are none.
func note(given map[string]bool, v reflect.Value) {
	if !v.IsValid() || v.Type() == reflect.TypeFor[finding.Term]() {
		return
	}
	switch v.Kind() {
	case reflect.String:
		for _, word := range Unmarked(v.String(), unitsAndIDs) {
			given[word] = true
		}
	case reflect.Interface, reflect.Pointer:
		note(given, v.Elem())
	case reflect.Slice:
		for i := range v.Len() {
			note(given, v.Index(i))
		}
	case reflect.Map:
		for _, key := range v.MapKeys() {
			note(given, v.MapIndex(key))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				note(given, v.Field(i))
			}
		}
	}
	if why, ok := v.Interface().(error); ok && v.Type() != reflect.TypeFor[finding.Finding]() && v.Kind() != reflect.Interface {
		note(given, reflect.ValueOf(why.Error()))
	}
}

// unitsAndIDs are units, numbers and the names of a source.
var unitsAndIDs = regexp.MustCompile(`^(VDI|table|A9|AC-AlSi9Cu3|N|N·m|lbf(·ft|·in)?|kN(/mm)?|[MG]Pa(/mm)?|mm|in|µm|s|min|h|dpi|\d.*)$`)
