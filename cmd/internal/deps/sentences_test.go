package deps

import (
	"fmt"
	"go/ast"
	"go/token"
	"maps"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// The calculating half contains no sentences: they are all in render/words.
// A text in the code counts as a sentence, or a part of one, if it has two
// adjacent words, or a word beside something to be filled in. Units and figures
// are not words. These may have words nevertheless:
//   - sources: texts that begin with the name of a standard or of its publisher
//   - codes and other constants of a named type, of up to seven words: identifiers of the file format, of JSON and of the catalogues
//   - technical terms: those that the catalogues list in terms.txt
//   - texts of panic: they are for developers and not for technicians
//   - struct tags, and patterns of package regexp
//   - names of up to five words in the files listed in proper
func TestNoSentencesBelow(t *testing.T) {
	all, known := rooms(t), terms(t)
	used := map[string]bool{}
	for _, folder := range slices.Sorted(maps.Keys(all)) {
		if !within(folder, "geometry") && !within(folder, "sequence") || isKit(folder) {
			continue
		}
		for _, found := range sentences(all[folder]) {
			if known[found.text] {
				continue
			}
			if file := path.Join(folder, found.file); proper[file] != "" && found.isName() {
				used[file] = true
				continue
			}
			t.Error(found)
		}
	}
	for file := range proper {
		if !used[file] {
			t.Errorf("proper lists %s, which needs it no more", file)
		}
	}
}

// proper lists the files whose words are names and not sentences, and why.
var proper = map[string]string{
	"sequence/interaction/compliance/gasket.go":    "names of gaskets that a file may say",
	"sequence/overhaul/coverings.go":               "names of parts that a file may say",
	"sequence/tension/head/pressure.go":            "what of a standard is the source",
	"sequence/tension/screw/lubricant.go":          "words that a file may say of what goes on the threads",
	"sequence/tension/screw/nothingonthethread.go": "words that a file may say of bare threads",
	"sequence/tension/screw/scatter.go":            "words that a file may say of how a torque is set",
	"sequence/tension/strength/material.go":        "names of materials that a file may say",
	"sequence/tension/strength/stripping.go":       "what of a standard is the source",
}

// terms returns the technical terms in the catalogues.
func terms(t *testing.T) map[string]bool {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(root, "render", "words", "english", "terms.txt"))
	if err != nil {
		t.Fatal(err)
	}
	known := map[string]bool{}
	for line := range strings.Lines(string(text)) {
		if term, _, ok := strings.Cut(line, " = "); ok {
			known[term] = true
		}
	}
	return known
}

// standards lists the beginnings of the names of sources.
var standards = []string{"A193 ", "ANSI", "API ", "ASME", "ASTM", "BS ", "DIN", "EN ", "ISO", "JIS", "NASA", "SAE", "Shigley", "UN ", "UNC", "UNF", "US Army", "VDI"}

// units are short words beside figures.
var units = []string{"deg", "dpi", "kip", "ksi", "lbf", "min", "psi", "rad"}

// sentence is a text that counts as one.
type sentence struct {
	at   token.Position
	file string
	text string
}

// isName reports whether a text is short and has nothing to fill in.
func (s sentence) isName() bool {
	return len(strings.Fields(s.text)) <= 5 && !fillIn.MatchString(s.text)
}

func (s sentence) String() string {
	return fmt.Sprintf("%s: %q is words; give a finding with a code, and word it in render/words", s.at, s.text)
}

func sentences(r room) (found []sentence) {
	for _, name := range slices.Sorted(maps.Keys(r.files)) {
		var skip []ast.Node
		ast.Inspect(r.files[name], func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.ImportSpec:
				return false
			case *ast.Field:
				if n.Tag != nil {
					skip = append(skip, n.Tag)
				}
			case *ast.CallExpr:
				return !isCall(n, "", "panic") && !isCall(n, "regexp", "MustCompile")
			case *ast.GenDecl:
				skip = append(skip, identifiers(n)...)
			case *ast.BasicLit:
				text, err := strconv.Unquote(n.Value)
				if n.Kind == token.STRING && err == nil && !slices.Contains(skip, ast.Node(n)) && isSentence(text) {
					found = append(found, sentence{r.set.Position(n.Pos()), name, text})
				}
			}
			return true
		})
	}
	return found
}

func isCall(call *ast.CallExpr, of, name string) bool {
	switch fun := call.Fun.(type) {
	case *ast.Ident:
		return of == "" && fun.Name == name
	case *ast.SelectorExpr:
		x, ok := fun.X.(*ast.Ident)
		return ok && x.Name == of && fun.Sel.Name == name
	}
	return false
}

// mostInIdentifier is the greatest number of words in an identifier.
const mostInIdentifier = 7

// identifiers returns the values of constants of a named type.
func identifiers(decl *ast.GenDecl) (values []ast.Node) {
	if decl.Tok != token.CONST {
		return nil
	}
	for _, spec := range decl.Specs {
		s := spec.(*ast.ValueSpec)
		of, builtIn := s.Type.(*ast.Ident)
		if s.Type == nil || builtIn && of.Name == "string" {
			continue
		}
		for _, v := range s.Values {
			if lit, ok := v.(*ast.BasicLit); ok && len(strings.Fields(lit.Value)) <= mostInIdentifier {
				values = append(values, lit)
			}
		}
	}
	return values
}

var (
	fillIn = regexp.MustCompile(`%(\[\d+\])?[-+# 0]*(\d+|\*)?(\.(\d+|\*)?)?[a-zA-Z]`)
	word   = regexp.MustCompile(`^\pL{2,}$`)
)

// isSentence reports whether a text has a word of three letters beside another
// word or something to fill in.
func isSentence(text string) bool {
	for _, standard := range standards {
		if strings.HasPrefix(text, standard) {
			return false
		}
	}
	long, all := 0, 0
	for _, field := range strings.Fields(fillIn.ReplaceAllString(text, "\x00")) {
		bare := strings.Trim(field, ".,;:!?()\"'`’“”–")
		switch {
		case strings.Contains(field, "\x00"):
			all++
		case word.MatchString(bare) && !slices.Contains(units, bare):
			all++
			if len([]rune(bare)) > 2 {
				long++
			}
		}
	}
	return long > 0 && all > 1
}

func TestSentencesAreFound(t *testing.T) {
	for code, want := range map[string]int{
		`var a = fmt.Errorf("kind %q is not known", "x")`:             1,
		`var a = "left out: " + fmt.Sprintf("step %d", 1)`:            2,
		`var a = "the angle"`:                                         1,
		`const a string = "the angle"`:                                1,
		`const A Code = "bolt breaks now and for good and all"`:       1,
		`var a = Thing{Kind: "back off"}`:                             1,
		`const A Code = "bolt breaks at torque"`:                      0,
		`const A finding.Code = "bolt breaks"`:                        0,
		`var a = "VDI 2230 Part 1, table A5"`:                         0,
		`var a = fmt.Sprintf("%g mm", 1)`:                             0,
		`var a = "90°, 90 deg"`:                                       0,
		`var a = "1 3/8"`:                                             0,
		`func f() { panic("the thread " + "is none of ours") }`:       0,
		"type a struct { B int `json:\"b\" yaml:\"the other one\"` }": 0,
		`var a = regexp.MustCompile("one or two words")`:              0,
	} {
		if got := sentences(roomOf(t, "geometry/a.go", "package geometry\n"+code)); len(got) != want {
			t.Errorf("%s: %q, want %d", code, got, want)
		}
	}
}
