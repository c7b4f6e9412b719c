package cli_test

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode/utf16"

	"drawdown/cmd/internal/cli"
)

// Every PDF that the program writes has a title, its language and bookmarks.
// The first bookmark leads to the first page (ISO 32000-1, 12.3.3, 14.3.3,
// 14.9.2).
func TestEveryPDFNamesItself(t *testing.T) {
	t.Parallel()
	answers := filepath.Join(t.TempDir(), "answers.csv")
	if err := os.WriteFile(answers, []byte("student,order\nAna M.,M3 M8 M9 M4 M2 M7 M10 M5 M1 M6 F2 F3 F1 F4\nBo K.,M1 M2\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for args, marks := range map[string][]string{
		"card p4-head --lang de":                    {"Cylinder head: ANZIEHEN", "Cylinder head: LÖSEN"},
		"card p4-head --paper a3 --side loosen":     {"Cylinder head: LOOSEN"},
		"condition p4-head":                         {"Cylinder head: CONDITION"},
		"tray p4-head":                              {"Cylinder head: tray"},
		"check p4-head --draw":                      {"Cylinder head: CHECK"},
		"check p4-head --draw --actual-size":        {"Cylinder head: CHECK"},
		"handout p4-head --make why":                {"Why from the centre outwards?: WHY", "Cylinder head: FORECAST"},
		"handout p4-head --make sheets --layouts 2": {"Bearing caps · sheet 1 of 2: EXERCISE", "Cylinder head · sheet 2 of 2: EXERCISE"},
		"handout p4-head --make key":                {"Cylinder head: KEY"},
		"handout p4-head --mark " + answers:         nil,
		"predict p4-head":                           {"Cylinder head: FORECAST"},
		"predict p4-cover --frames":                 nil,
		"book p4-engine --trays page":               {"Contents", "The joints of the machine"},
	} {
		t.Run(strings.ReplaceAll(args, answers, "answers"), func(t *testing.T) {
			t.Parallel()
			folder := t.TempDir()
			var problems bytes.Buffer
			program := cli.Program{Stdin: strings.NewReader(""), Stdout: io.Discard, Stderr: &problems}
			program.Run(append(strings.Fields(args), "--format", "pdf", "-o", folder))
			files, _ := filepath.Glob(filepath.Join(folder, "*.pdf"))
			if len(files) == 0 {
				t.Fatalf("no PDF is written: %s", problems.String())
			}
			for _, name := range files {
				checkNames(t, name, marks)
			}
		})
	}
}

func checkNames(t *testing.T, name string, marks []string) {
	t.Helper()
	file, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if titles := titled(file, `/Title \(`); len(titles) < 2 { // that of the document, and at least one bookmark
		t.Fatalf("%s: titles and bookmarks: %q", filepath.Base(name), titles)
	}
	if document := titled(file, `\n/Title \(`); len(document) != 1 || document[0] == "" {
		t.Errorf("%s: the document's titles are %q", filepath.Base(name), document)
	}
	for _, entry := range []string{`/Lang \((en|de)\)`, `/Outlines \d+ 0 R`, `/DisplayDocTitle true`, `/First \d+ 0 R`, `/Dest \[3 0 R`} {
		if !regexp.MustCompile(entry).Match(file) {
			t.Errorf("%s lacks %s", filepath.Base(name), entry)
		}
	}
	found := titled(file, `<</Title \(`)
	for k, want := range marks {
		if k >= len(found) || found[k] != want {
			t.Errorf("%s: the bookmarks are %q, want %q", filepath.Base(name), found, marks)
			break
		}
	}
}

// titled reads the texts (UTF-16BE, ISO 32000-1, 7.9.2.2) that follow a key.
func titled(file []byte, key string) (titles []string) {
	letters := make([]rune, len(file)) // a regular expression matches characters, not bytes
	for k, b := range file {
		letters[k] = rune(b)
	}
	for _, m := range regexp.MustCompile("(?s)"+key+`\x{fe}\x{ff}((?:\\.|[^\\)])*)\)`).FindAllStringSubmatch(string(letters), -1) {
		raw := []rune(regexp.MustCompile(`(?s)\\(.)`).ReplaceAllString(m[1], "$1"))
		var units []uint16
		for k := 0; k+1 < len(raw); k += 2 {
			units = append(units, uint16(raw[k])<<8|uint16(raw[k+1]))
		}
		titles = append(titles, string(utf16.Decode(units)))
	}
	return titles
}
