package patterns

import (
	"path/filepath"
	"strings"
	"testing"

	"drawdown/geometry/testkit"
)

// lacksDragon replaces the check of the typeface: it lacks one sign.
func lacksDragon(text string) (rune, bool) {
	return '龍', strings.ContainsRune(text, '龍')
}

// The texts beside the broken files are pinned from our own output after every
// line was checked against its rule.
func TestBrokenFiles(t *testing.T) {
	files, err := filepath.Glob("testdata/broken/*.yaml")
	dangerous, _ := filepath.Glob("testdata/dangerous/*.yaml") // bad practice, though correct in form
	files = append(files, dangerous...)
	if err != nil || len(files) < 24 {
		t.Fatalf("%d broken files, %v", len(files), err)
	}
	for _, path := range files {
		t.Run(filepath.Base(path), func(t *testing.T) {
			from, err := Open(path, nil)
			if err != nil {
				t.Fatal(err)
			}
			from.Printable = lacksDragon
			_, problems := Read(from)
			if len(problems) == 0 {
				t.Error("the file reads without a problem")
			}
			got := filepath.ToSlash(said(problems).Detail())
			golden := strings.TrimSuffix(path, ".yaml") + ".txt"
			testkit.Golden(t, golden, []byte(got))
		})
	}
}
