package thread

import (
	"os"
	"strings"
	"testing"
)

// Pinned from our own output: the whole list of threads, so that no row of a
// table changes unnoticed. Published rows are also checked separately.
func TestTheListOfThreadsIsUnchanged(t *testing.T) {
	want, err := os.ReadFile("testdata/names.txt")
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, s := range every() {
		names = append(names, s.Name)
	}
	if got := strings.Join(names, "\n") + "\n"; got != string(want) {
		t.Errorf("testdata/names.txt differs; the tables give\n%s", got)
	}
}
