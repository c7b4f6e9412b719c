package cli

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"drawdown/cmd/internal/flag"
)

// readmes are the documents whose commands are run, each with the file names
// for its YAML blocks, in order.
var readmes = []struct {
	path     string
	saved    []string
	commands int
	writes   []string
}{
	{"README.md", []string{"my-cover.yaml"}, 5, []string{"out/p4-head.pdf", "out/my-cover.pdf", "out/my-cover-tighten.png", "p4-head.yaml"}},
	{"patterns/README.md", []string{"my-head.yaml", "shop.yaml", "my-lid.yaml", "my-warp.yaml"}, 9, []string{"out/my-head.pdf", "out/my-head-tighten.png"}},
	{"geometry/README.md", []string{"cover.yaml", "p4-pump-gasket.fixes.yaml"}, 7, []string{"out/cover.yaml", "drawings/p4-head.dxf"}},
	{"sequence/README.md", nil, 8, nil},
	{"render/README.md", nil, 6, nil},
}

// blocks returns the fenced blocks of a document in one language.
func blocks(text, language string) []string {
	var found []string
	for _, m := range regexp.MustCompile("(?s)```"+language+"\n(.*?)```").FindAllStringSubmatch(text, -1) {
		found = append(found, m[1])
	}
	return found
}

// document reads a file of the tree.
func document(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "..", filepath.FromSlash(path)))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// Every drawdown command in a README runs as printed, in order, with the
// README's own files.
func TestReadmeCommands(t *testing.T) {
	for _, readme := range readmes {
		text := document(t, readme.path)
		t.Run(readme.path, func(t *testing.T) {
			t.Chdir(t.TempDir())
			files := blocks(text, "yaml")
			if len(files) != len(readme.saved) {
				t.Fatalf("%d YAML files, want %d", len(files), len(readme.saved))
			}
			for k, name := range readme.saved {
				if err := os.WriteFile(name, []byte(files[k]), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			if ran := runCommands(t, blocks(text, "sh")); ran < readme.commands {
				t.Errorf("%d commands were found, want %d", ran, readme.commands)
			}
			for _, file := range readme.writes {
				if _, err := os.Stat(file); err != nil {
					t.Errorf("%s was not written: %v", file, err)
				}
			}
		})
	}
}

// runCommands runs each drawdown command of the blocks and counts them.
func runCommands(t *testing.T, shells []string) int {
	ran := 0
	for _, line := range strings.Split(strings.Join(shells, "\n"), "\n") {
		words := shellWords(strings.ReplaceAll(line, "go run ./cmd/drawdown", "drawdown"))
		if len(words) == 0 || words[0] != "drawdown" {
			continue
		}
		ran++
		var out, problems bytes.Buffer
		p := Program{Stdin: strings.NewReader(""), Stdout: &out, Stderr: &problems}
		if status := p.Run(words[1:]); status != Done || problems.Len() > 0 {
			t.Errorf("%s: status %d\n%s", line, status, problems.String())
		}
	}
	return ran
}

// A link in a README leads to a file of the tree, and to a heading in it.
func TestReadmeLinks(t *testing.T) {
	for _, readme := range readmes {
		for _, m := range regexp.MustCompile(`\]\(([^):]+)\)`).FindAllStringSubmatch(document(t, readme.path), -1) {
			path, heading, _ := strings.Cut(m[1], "#")
			file := readme.path // a link to a heading of the same file
			if path != "" {
				file = filepath.ToSlash(filepath.Join(filepath.Dir(readme.path), path))
			}
			text := document(t, file)
			if heading != "" && !slices.Contains(anchors(text), heading) {
				t.Errorf("%s: %s: no such heading", readme.path, m[1])
			}
		}
	}
}

// anchors are the headings of a document in the form used by links.
func anchors(text string) []string {
	var all []string
	for _, m := range regexp.MustCompile(`(?m)^#+ (.*)$`).FindAllStringSubmatch(text, -1) {
		plain := regexp.MustCompile(`[^a-z0-9 -]`).ReplaceAllString(strings.ToLower(m[1]), "")
		all = append(all, strings.ReplaceAll(plain, " ", "-"))
	}
	return all
}

// The README can be read in one sitting.
func TestReadmeIsShort(t *testing.T) {
	if lines := strings.Count(document(t, "README.md"), "\n"); lines > 150 {
		t.Errorf("the README has %d lines, at most 150 are allowed", lines)
	}
}

// shellWords splits a line like a shell that knows only double quotes.
func shellWords(line string) []string {
	words := regexp.MustCompile(`"[^"]*"|\S+`).FindAllString(line, -1)
	for k := range words {
		words[k] = strings.Trim(words[k], `"`)
	}
	return words
}

// The README names every command, every way, and every flag of card.
func TestReadmeIsComplete(t *testing.T) {
	text := document(t, "README.md")
	for _, name := range commandNames() {
		if !strings.Contains(text, "drawdown "+name) {
			t.Errorf("the README does not name the command %s", name)
		}
	}
	for _, f := range flag.Table(flagsOf(cardCommand)) {
		if !slices.Contains([]string{"way", "paper", "format"}, f.Name) {
			continue
		}
		for _, word := range f.Words {
			if !strings.Contains(text, word) {
				t.Errorf("the README does not name %s", word)
			}
		}
	}
}
