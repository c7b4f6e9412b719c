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

// readme gives the fenced blocks of the README in one language.
func readme(t *testing.T, language string) []string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	var blocks []string
	for _, m := range regexp.MustCompile("(?s)```"+language+"\n(.*?)```").FindAllStringSubmatch(string(text), -1) {
		blocks = append(blocks, m[1])
	}
	return blocks
}

// Every drawdown command that the README shows runs as it stands there, in its
// order, with the README's own pattern file in place.
func TestReadmeCommands(t *testing.T) {
	patterns, shells := readme(t, "yaml"), readme(t, "sh")
	if len(patterns) == 0 || len(shells) < 4 {
		t.Fatalf("the README has %d pattern files and %d blocks of commands", len(patterns), len(shells))
	}
	t.Chdir(t.TempDir())
	if err := os.WriteFile("my-head.yaml", []byte(patterns[0]), 0o644); err != nil {
		t.Fatal(err)
	}
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
	if ran < 6 {
		t.Errorf("only %d commands were found", ran)
	}
	for _, file := range []string{"out/p4-head.pdf", "out/my-head.pdf", "out/my-head-tighten.png", "p4-head.yaml"} {
		if _, err := os.Stat(file); err != nil {
			t.Errorf("%s was not written: %v", file, err)
		}
	}
}

// shellWords parts a line as a shell does that knows double quotes alone.
func shellWords(line string) []string {
	words := regexp.MustCompile(`"[^"]*"|\S+`).FindAllString(line, -1)
	for k := range words {
		words[k] = strings.Trim(words[k], `"`)
	}
	return words
}

// The README names every command, way and flag of the card.
func TestReadmeIsComplete(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("..", "..", "..", "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
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
