package patterns

import (
	"path/filepath"
	"testing"
)

// Every problem of a file has a code that identifies it for other programs.
func TestEveryProblemHasACode(t *testing.T) {
	files, err := filepath.Glob("testdata/broken/*.yaml")
	if err != nil || len(files) < 24 {
		t.Fatalf("%d broken files, %v", len(files), err)
	}
	for _, path := range files {
		from, err := Open(path, nil)
		if err != nil {
			t.Fatal(err)
		}
		from.Printable = lacksDragon
		_, problems := Read(from)
		for _, p := range said(problems) {
			if p.Code == "" {
				t.Errorf("%s:%d: %q has no code", path, p.Line, p.What)
			}
		}
	}
}
