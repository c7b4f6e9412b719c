package cli

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/shell"
	"drawdown/geometry/testkit"
	"drawdown/sequence/figures"
)

// completions are command lines up to the cursor, with the completions of the
// last word. The folder has lid.yaml, notes.txt, a file with a blank in its
// name, and the folder parts.
var completions = []struct {
	words []string
	want  []string
}{
	{[]string{""}, []string{"bench", "book", "card", "check", "completion", "condition", "diff", "handout", "help", "order", "patterns", "predict", "records", "schema", "survey", "target", "torque", "trace", "tray", "version", "wrench"}},
	{[]string{"ca"}, []string{"card"}},
	{[]string{"card", "p4-h"}, []string{"p4-head"}},
	{[]string{"order", "li"}, []string{"lid.yaml"}},
	{[]string{"check", "pa"}, []string{"parts"}},
	{[]string{"check", "two"}, []string{"two words.yaml"}},
	{[]string{"check", "no"}, nil},
	{[]string{"card", "--pa"}, []string{"--paper"}},
	{[]string{"card", "p4-head", "--paper", ""}, []string{"a3", "a4", "a5", "letter"}},
	{[]string{"card", "p4-head", "--format", "p"}, []string{"pdf", "png"}},
	{[]string{"card", "p4-head", "--format", "pdf,s"}, []string{"pdf,svg"}},
	{[]string{"card", "p4-head", "--side", "l"}, []string{"loosen"}},
	{[]string{"order", "p4-head", "--way", "c"}, []string{"cast", "circular", "cross"}},
	{[]string{"check", "p4-head", "--order", ""}, []string{"cast", "file"}},
	{[]string{"order", "p4-head", "--turn", ""}, []string{"left", "right"}},
	{[]string{"order", "p4-head", "--js"}, []string{"--json"}},
	{[]string{"order", "p4-head", "--pa"}, nil},
	{[]string{"card", "p4-head", "-o", "pa"}, []string{"parts"}},
	{[]string{"card", "p4-head", "--out", "li"}, nil},
	{[]string{"card", "p4-head", "--dpi", ""}, nil},
	{[]string{"torque", "--eq"}, []string{"--equation"}},
	{[]string{"torque", "--equation", ""}, []string{"exact", "linear"}},
	{[]string{"torque", "p4-h"}, []string{"p4-head"}},
	{[]string{"wrench", "p4"}, nil},
	{[]string{"records", "ex"}, []string{"export"}},
	{[]string{"records", "export", "R1", "--format", "c"}, []string{"csv"}},
	{[]string{"wrench", "--ag"}, []string{"--again"}},
	{[]string{"wrench", "--wrenches", "li"}, []string{"lid.yaml"}},
	{[]string{"patterns", "p4-su"}, []string{"p4-sump"}},
	{[]string{"patterns", "li"}, nil},
	{[]string{"patterns", "ne"}, []string{"new"}},
	{[]string{"patterns", "p4-head", "--as", ""}, []string{"csv", "dxf", "yaml"}},
	{[]string{"survey", "p4"}, []string{"p4-pump-cover"}},
	{[]string{"survey", "li"}, []string{"lid.yaml"}},
	{[]string{"trace", "p4"}, []string{"p4-pump-gasket"}},
	{[]string{"trace", "gask"}, []string{"gasket.png"}},
	{[]string{"trace", "li"}, nil},
	{[]string{"trace", "p4-pump-gasket", "--part", ""}, []string{"dark", "light"}},
	{[]string{"predict", "p4-h"}, []string{"p4-head"}},
	{[]string{"predict", "p4-head", "--gasket", "fib"}, []string{"fibre-sheet", "fibre-sheet-1.5-mm"}},
	{[]string{"predict", "p4-head", "--gasket-s"}, []string{"--gasket-stiffness"}},
	{[]string{"predict", "p4-head", "--passes", ""}, nil},
	{[]string{"completion", "z"}, []string{"zsh"}},
	{[]string{"help", "ch"}, []string{"check"}},
}

// inFolder creates the folder in which the lines are completed.
func inFolder(t *testing.T) {
	t.Helper()
	folder := t.TempDir()
	for _, name := range []string{"lid.yaml", "notes.txt", "two words.yaml", "gasket.png"} {
		write(t, filepath.Join(folder, name), "")
	}
	if err := os.Mkdir(filepath.Join(folder, "parts"), 0o777); err != nil {
		t.Fatal(err)
	}
	t.Chdir(folder)
}

// needs skips the test if the shell is not installed.
func needs(t *testing.T, shell string) {
	t.Helper()
	if runtime.GOOS == "windows" {
		t.Skip("a bash there may be another system's")
	}
	testkit.Program(t, shell)
}

func shellOutput(t *testing.T, name string, args ...string) string {
	t.Helper()
	command := exec.Command(name, args...)
	var problems strings.Builder
	command.Stderr = &problems
	out, err := command.Output()
	if err != nil || problems.Len() > 0 {
		t.Fatalf("%s: %v\n%s", name, err, problems.String())
	}
	return string(out)
}

// lines returns sorted unique lines, without the slash that a shell adds to a
// folder.
func lines(text string) []string {
	var all []string
	for line := range strings.Lines(text) {
		word, _, _ := strings.Cut(strings.TrimRight(line, "\n"), "\t")
		if word != "" {
			all = append(all, strings.TrimSuffix(word, "/"))
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// quotedWords writes words for bash and fish.
func quotedWords(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = singleQuoted(w, `'\''`)
	}
	return strings.Join(quoted, " ")
}

func TestBashCompletes(t *testing.T) {
	needs(t, "bash")
	inFolder(t)
	write(t, "script.bash", scriptFor(t, "bash"))
	all := append(slices.Clone(completions), struct{ words, want []string }{
		// bash gives --paper=l as three words.
		[]string{"card", "p4-head", "--paper", "=", "l"}, []string{"letter"},
	}, struct{ words, want []string }{
		[]string{"card", "p4-head", "--turn", "="}, []string{"left", "right"},
	})
	ask := "source ./script.bash\n"
	for _, c := range all {
		ask += fmt.Sprintf(`COMP_WORDS=(drawdown %s)
COMP_CWORD=%d
COMPREPLY=()
_drawdown
[ ${#COMPREPLY[@]} -eq 0 ] || printf '%%s\n' "${COMPREPLY[@]}"
echo '%s'
`, quotedWords(c.words), len(c.words), nextLine)
	}
	checkCompleted(t, all, shellOutput(t, "bash", "--norc", "-c", ask))
}

// nextLine is what a shell prints after what completes a line: one shell completes
// all, since it takes long to start.
const nextLine = "== next"

func checkCompleted(t *testing.T, all []struct{ words, want []string }, printed string) {
	t.Helper()
	parts := strings.Split(printed, nextLine+"\n")
	if len(parts) != len(all)+1 {
		t.Fatalf("%d lines are completed, want %d:\n%s", len(parts)-1, len(all), printed)
	}
	for k, c := range all {
		if diff := cmp.Diff(c.want, lines(parts[k])); diff != "" {
			t.Errorf("%q (- wanted, + completed):\n%s", c.words, diff)
		}
	}
}

func TestFishCompletes(t *testing.T) {
	needs(t, "fish")
	inFolder(t)
	t.Setenv("HOME", t.TempDir())
	write(t, "script.fish", scriptFor(t, "fish"))
	shellOutput(t, "fish", "--no-execute", "script.fish")
	var all []struct{ words, want []string }
	ask := "source ./script.fish\n"
	for _, c := range completions {
		// fish offers every file where a pattern file or a picture is possible,
		// and quotes blanks in names itself.
		if slices.Contains([]string{"check no", "check two", "trace li"}, strings.Join(c.words, " ")) {
			continue
		}
		all = append(all, c)
		ask += "complete -C " + singleQuoted("drawdown "+strings.Join(c.words, " "), `\'`) + "; echo '" + nextLine + "'\n"
	}
	checkCompleted(t, all, shellOutput(t, "fish", "--no-config", "-c", ask))
}

func TestZshReadsTheScript(t *testing.T) {
	needs(t, "zsh")
	inFolder(t)
	write(t, "script.zsh", scriptFor(t, "zsh"))
	shellOutput(t, "zsh", "-f", "-n", "script.zsh")
	// If the start-up file has no compinit, the script runs it.
	t.Setenv("HOME", t.TempDir())
	t.Setenv("ZDOTDIR", t.TempDir())
	got := shellOutput(t, "zsh", "-f", "-c", `source ./script.zsh; print -r -- ${_comps[drawdown]}`)
	if got != "_drawdown\n" {
		t.Errorf("drawdown is completed by %q, want _drawdown", got)
	}
}

// PowerShell is rarely installed: the script is checked for balanced brackets
// and quotes, and for what every script must name.
func TestPowershellScriptIsBalanced(t *testing.T) {
	var open []rune
	inQuotes := false
	pairs := map[rune]rune{')': '(', '}': '{', ']': '['}
	for i, r := range scriptFor(t, "powershell") {
		switch {
		case r == '\'':
			inQuotes = !inQuotes
		case inQuotes:
		case strings.ContainsRune("({[", r):
			open = append(open, r)
		case pairs[r] != 0:
			if len(open) == 0 || open[len(open)-1] != pairs[r] {
				t.Fatalf("%c at byte %d closes nothing", r, i)
			}
			open = open[:len(open)-1]
		}
		if inQuotes && r == '\n' {
			t.Fatalf("a quoted word goes over the end of the line at byte %d", i)
		}
	}
	if inQuotes || len(open) > 0 {
		t.Errorf("left open: quotes %v, brackets %q", inQuotes, string(open))
	}
}

func TestEveryScriptNamesAll(t *testing.T) {
	for _, name := range shell.Names() {
		text := scriptFor(t, name)
		for _, c := range described() {
			names := append([]string{c.Name}, c.Words...)
			for _, f := range c.Flags {
				names = append(append(names, f.Name), f.Words...)
			}
			for _, word := range names {
				if !strings.Contains(text, word) {
					t.Errorf("%s: %s lacks %s", name, c.Name, word)
				}
			}
		}
	}
}

// The words offered for a flag are valid for the flag. For flags with a
// quantity or a list of units, the commands check this themselves.
func TestOfferedWordsAreTaken(t *testing.T) {
	taken := 0
	for _, c := range commands() {
		for _, f := range flag.Table(flagsOf(c)) {
			for _, word := range f.Words {
				flags := flagsOf(c)
				if err := flags.Set(f.Name, word); err != nil {
					t.Errorf("%s: %v", c.name, err)
				}
				taken++
			}
		}
	}
	if taken < 100 {
		t.Errorf("only %d words are offered", taken)
	}
	for name, reads := range map[string]func(q *quantities){
		"torque":  func(q *quantities) { q.override(&figures.Ask{}); flag.Read(q, "units", askedUnits) },
		"predict": func(q *quantities) { q.predictRequest() },
		"trace":   func(q *quantities) { q.traceRequest() },
	} {
		c, _ := findCommand(name)
		for _, f := range flag.Table(flagsOf(c)) {
			for _, word := range f.Words {
				q := newQuantities(flagsOf(c))
				if err := q.Flags.Set(f.Name, word); err != nil {
					t.Fatal(err)
				}
				if reads(q); q.Err != nil {
					t.Errorf("%s --%s %s: %v", name, f.Name, word, q.Err)
				}
			}
		}
	}
}

func scriptFor(t *testing.T, name string) string {
	t.Helper()
	text, known := shell.Script(name, described())
	if !known {
		t.Fatalf("no script for %s", name)
	}
	return text
}

// write writes a test file.
func write(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

// singleQuoted quotes a text in single quotes, with the shell's own escape for
// one inside.
func singleQuoted(text, quote string) string { return "'" + strings.ReplaceAll(text, "'", quote) + "'" }
