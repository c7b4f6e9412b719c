package cli_test

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawdown/cmd/internal/cli"
)

// shop makes a folder for each of fifty made-up engines, with a head.yaml in
// each. One of them is not sound.
func shop(t *testing.T) string {
	t.Helper()
	root := filepath.Join(t.TempDir(), "shop")
	for n := 1; n <= 50; n++ {
		folder := filepath.Join(root, fmt.Sprintf("e%02d", n))
		if err := os.MkdirAll(folder, 0o777); err != nil {
			t.Fatal(err)
		}
		thread, columns := []string{"M8", "M10", "M12"}[n%3], 3+n%4
		if n == 17 {
			thread = "M10x9"
		}
		text := fmt.Sprintf("drawdown: 1\ntitle: Cylinder head\nmachine: Fernhollow E%d\nrevision: 1\nkinds: {main: {thread: %s, class: \"8.8\", lubricant: engine oil}}\nfasteners:\n"+
			"  - grid: {columns: %d, rows: 2, pitch: [90, 80], kind: main, id: M}\ntighten: {order: [{kind: main, way: spiral}], stages: [{torque: 8 N·m}, {torque: 16 N·m}], source: made up}\n", n, thread, columns)
		if err := os.WriteFile(filepath.Join(folder, "head.yaml"), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	return root
}

// Each command works on the whole shop at once. The counts are those of shop.
func TestShopOfFiftyEngines(t *testing.T) {
	root, out := shop(t), filepath.Join(t.TempDir(), "out")
	list := func(args ...string) (files []struct {
		File      string
		Fasteners int
		Sound     bool
		OldPrints int `json:"old_prints"`
	}) {
		text, problems, status := run(append([]string{"patterns", root, "--json", "-o", out}, args...)...)
		if status != cli.Done || json.Unmarshal([]byte(text), &files) != nil {
			t.Fatalf("%q: status %d, %s%s", args, status, text, problems)
		}
		return files
	}
	all := list()
	unsound := 0
	for _, one := range all {
		if !one.Sound {
			unsound++
		}
	}
	if len(all) != 50 || unsound != 1 {
		t.Errorf("%d files, %d not sound; want 50, 1", len(all), unsound)
	}
	for _, c := range []struct {
		args []string
		want int
	}{
		{[]string{"--machine", "e4"}, 11},                 // E4, E40 to E49
		{[]string{"--bolts", "M10"}, 17},                  // n mod 3 = 1: 17 of 50; 17 is not one of them
		{[]string{"--bolts", "12"}, 12},                   // six columns: n mod 4 = 3
		{[]string{"--bolts", "12", "--machine", "E4"}, 2}, // 43, 47
	} {
		if got := list(c.args...); len(got) != c.want {
			t.Errorf("%q: %d files, want %d", c.args, len(got), c.want)
		}
	}
	if text, _, status := run("patterns", root, "e07"); status != cli.Done || strings.Count(text, "\n") != 1 || !strings.Contains(text, "e07/head.yaml: 12 fasteners, Cylinder head, Fernhollow E7") {
		t.Errorf("text e07: %s", text)
	}
	if text, _, status := run("check", root, "-o", out); status != cli.Wrong || strings.Count(text, "\n") != 50 {
		t.Errorf("check: status %d, %d lines", status, strings.Count(text, "\n"))
	}
	text, _, status := run("card", root, "-o", out, "--format", "svg", "--side", "tighten")
	if status != cli.Wrong || strings.Count(text, ".svg") != 49 || !strings.Contains(text, "e01-head") || !strings.Contains(text, "e50-head") {
		t.Errorf("card: status %d\n%s", status, text)
	}
	// A file that is changed after its card was drawn has an old print.
	changed := filepath.Join(root, "e03", "head.yaml")
	before, err := os.ReadFile(changed)
	if err == nil {
		err = os.WriteFile(changed, []byte(strings.Replace(string(before), "16 N·m", "17 N·m", 1)), 0o666)
	}
	if err != nil {
		t.Fatal(err)
	}
	for _, one := range list() {
		if old := one.OldPrints > 0; old != strings.Contains(one.File, "e03") {
			t.Errorf("%s: %d prints out of date", one.File, one.OldPrints)
		}
	}
}
