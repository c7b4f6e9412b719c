package cli_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawdown/cmd/internal/cli"
)

// mistake is one entry of testdata/mistakes; see its README for the format.
type mistake struct {
	what, in, checked    string
	changes              []change
	severity, code, line string
	words                []string
}

// change replaces a text of a file.
type change struct{ from, to string }

func readMistakes(t *testing.T, path string) (all []mistake) {
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, entry := range strings.Split("\n"+string(data), "\n== ")[1:] {
		lines := strings.Split(strings.TrimSpace(entry), "\n")
		m := mistake{what: lines[0]}
		last := ""
		for _, line := range lines[1:] {
			sign, rest, _ := strings.Cut(line, " ")
			switch sign {
			case "in":
				m.in = rest
			case "check":
				m.checked = rest
			case "-":
				if last != "-" {
					m.changes = append(m.changes, change{from: rest})
					break
				}
				m.changes[len(m.changes)-1].from += "\n" + rest
			case "+":
				if c := &m.changes[len(m.changes)-1]; last == "+" {
					c.to += "\n" + rest
				} else {
					c.to = rest
				}
			case "=":
				m.severity, m.code, _ = strings.Cut(rest, ": ")
			case "|":
				m.words = append(m.words, rest)
			case "@":
				m.line = rest
			case "":
			default:
				t.Fatalf("%s, %s: %q begins with no sign", path, m.what, line)
			}
			last = sign
		}
		all = append(all, m)
	}
	return all
}

// made returns the sound file with the mistake.
func (m mistake) made(t *testing.T, sound string) string {
	data, err := os.ReadFile(filepath.Join(sound, m.in+".yaml"))
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	for _, c := range m.changes {
		if n := strings.Count(text, c.from); n != 1 {
			t.Fatalf("%q stands %d times in %s", c.from, n, m.in)
		}
		text = strings.Replace(text, c.from, c.to, 1)
	}
	return text
}

type checked struct {
	Problems []struct{ Severity, Code, What, Allowed, Snippet string }
}

func checkedJSON(t *testing.T, path string) (checked, cli.Status) {
	out, problems, status := run("check", path, "--json")
	var c checked
	if err := json.Unmarshal([]byte(out), &c); err != nil {
		t.Fatalf("%v: %s%s", err, out, problems)
	}
	return c, status
}

// The sound files, and those of unusual but correct parts, have no problem by
// the trade's rules, so nothing is reported. Each mistake is one by first
// principles or common practice. The messages are pinned from our own output
// after comparing each with the mistake.
func TestMistakesAreReported(t *testing.T) {
	t.Parallel()
	const folder = "testdata/mistakes"
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS(filepath.Join(folder, "sound"))); err != nil {
		t.Fatal(err)
	}
	sound, _ := filepath.Glob(filepath.Join(dir, "*.yaml"))
	unusual, _ := filepath.Glob(filepath.Join(folder, "unusual", "*.yaml"))
	if len(unusual) < 20 {
		t.Errorf("%d unusual files", len(unusual))
	}
	sound = append(sound, unusual...)
	for _, path := range sound {
		c, status := checkedJSON(t, path)
		for _, p := range c.Problems {
			if p.Severity != "note" || status != cli.Done {
				t.Errorf("%s is sound, and is said to have: %v", filepath.Base(path), p)
			}
		}
	}
	tables, err := filepath.Glob(filepath.Join(folder, "*.txt"))
	if err != nil {
		t.Fatal(err)
	}
	n, ofMeaning := 0, 0
	for _, table := range tables {
		for _, m := range readMistakes(t, table) {
			n++
			if filepath.Base(table) != "form.txt" {
				ofMeaning++
			}
			t.Run(m.what, func(t *testing.T) { m.try(t, dir) })
		}
	}
	if n < 150 || ofMeaning < 40 {
		t.Errorf("%d mistakes, %d of them about meaning", n, ofMeaning)
	}
}

func (m mistake) try(t *testing.T, dir string) {
	made, path := m.made(t, dir), filepath.Join(dir, "mistake.yaml")
	if m.checked != "" {
		sound := dir
		dir = t.TempDir()
		if err := os.CopyFS(dir, os.DirFS(sound)); err != nil {
			t.Fatal(err)
		}
		path = filepath.Join(dir, m.in+".yaml")
	}
	if err := os.WriteFile(path, []byte(made), 0o600); err != nil {
		t.Fatal(err)
	}
	if m.checked != "" {
		path = filepath.Join(dir, m.checked+".yaml")
	}
	c, status := checkedJSON(t, path)
	if m.severity == "error" && status != cli.Wrong || m.severity == "warning" && status != cli.Done {
		t.Errorf("status %d for %s", status, m.severity)
	}
	for _, p := range c.Problems {
		said := true
		for _, words := range m.words {
			said = said && strings.Contains(p.What+p.Allowed, words)
		}
		if said && p.Severity == m.severity && p.Code == m.code && strings.TrimSpace(p.Snippet) == m.line {
			return
		}
	}
	t.Errorf("want %s %q, %q, of the line %q; got %+v", m.severity, m.code, m.words, m.line, c.Problems)
}
