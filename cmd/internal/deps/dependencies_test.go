package deps

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// DEVELOPERS.md names every module that go.mod requires, with its purpose.
func TestDependenciesAreExplained(t *testing.T) {
	t.Parallel()
	required, err := os.ReadFile(filepath.Join(root, "go.mod"))
	if err != nil {
		t.Fatal(err)
	}
	explained, err := os.ReadFile(filepath.Join(root, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	modules := regexp.MustCompile(`(?m)^\t(\S+) v`).FindAllStringSubmatch(string(required), -1)
	if len(modules) < 10 {
		t.Fatalf("go.mod requires %d modules, want more", len(modules))
	}
	for _, m := range modules {
		if !strings.Contains(string(explained), "`"+m[1]+"`") {
			t.Errorf("DEVELOPERS.md does not name %s", m[1])
		}
	}
}
