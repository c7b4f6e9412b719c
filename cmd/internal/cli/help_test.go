package cli_test

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"syscall"
	"testing"
	"unicode/utf8"

	"drawdown/cmd/internal/cli"
)

// run runs the program in this process.
func run(args ...string) (stdout, stderr string, status cli.Status) {
	var out, problems bytes.Buffer
	program := cli.Program{Stdin: strings.NewReader(""), Stdout: &out, Stderr: &problems}
	status = program.Run(args)
	return out.String(), problems.String(), status
}

// names are the commands listed in the help, except help.
func names(t *testing.T) []string {
	t.Helper()
	text, _, _ := run("help")
	_, list, ok := strings.Cut(text, "\nCommands:\n")
	list, _, end := strings.Cut(list, "\n\n")
	if !ok || !end {
		t.Fatalf("the help lists no commands:\n%s", text)
	}
	var names []string
	for line := range strings.Lines(list + "\n") {
		name := strings.Fields(line)[0]
		if name != "help" {
			names = append(names, name)
		}
	}
	if len(names) < 5 {
		t.Fatalf("the help lists only %q", names)
	}
	return names
}

// Help is the same however it is requested, and fits a terminal of 80 columns
// (common practice, no source).
func TestHelpOfEveryCommand(t *testing.T) {
	texts := map[string]string{}
	texts["help"], _, _ = run("help")
	for _, name := range names(t) {
		want, problems, status := run("help", name)
		if status != cli.Done || problems != "" || !strings.Contains(want, "\nUsage: drawdown "+name) {
			t.Errorf("help %s: status %d, problems %q, text:\n%s", name, status, problems, want)
		}
		texts[name] = want
		for _, flag := range []string{"--help", "-h"} {
			if got, _, status := run(name, flag); got != want || status != cli.Done {
				t.Errorf("%s %s prints (status %d):\n%s\nhelp %s prints:\n%s", name, flag, status, got, name, want)
			}
			if got, _, _ := run(name, "p4-head", flag); got != want {
				t.Errorf("%s p4-head %s prints no help", name, flag)
			}
		}
	}
	for name, text := range texts {
		for line := range strings.Lines(text) {
			if n := utf8.RuneCountInString(strings.TrimRight(line, "\n")); n > 80 {
				t.Errorf("help of %s: %d columns: %s", name, n, line)
			}
		}
	}
}

// example is a command shown in the help, and the output shown for it.
type example struct {
	command string
	prints  []string
}

// examples reads the part of a help text below Example:. A line indented by two
// blanks is a command; lines indented by four more are its output.
func examples(text string) []example {
	_, part, _ := strings.Cut(text, "\nExample:\n")
	part, _, _ = strings.Cut(part, "\n\n")
	var all []example
	for line := range strings.Lines(part) {
		line = strings.TrimPrefix(strings.TrimRight(line, "\n"), "  ")
		if output, deeper := strings.CutPrefix(line, "    "); deeper && len(all) > 0 {
			last := &all[len(all)-1]
			last.prints = append(last.prints, output)
			continue
		}
		all = append(all, example{command: line})
	}
	return all
}

// Every example in the help runs and prints what the help shows.
func TestExamplesPrintWhatTheySay(t *testing.T) {
	for _, name := range append(names(t), "") {
		t.Run("help "+name, func(t *testing.T) {
			text, _, _ := run(strings.Fields("help " + name)...)
			shown := examples(text)
			if len(shown) == 0 {
				t.Fatalf("no example in:\n%s", text)
			}
			for _, e := range shown {
				t.Chdir(t.TempDir())
				tryExample(t, e)
			}
		})
	}
}

func tryExample(t *testing.T, e example) {
	t.Helper()
	args := strings.Fields(e.command)
	if args[1] == "bench" {
		tryServing(t, e)
		return
	}
	if args[1] == "records" {
		if err := recordedWork("shop"); err != nil {
			t.Fatal(err)
		}
	}
	if args[0] != "drawdown" || len(e.prints) == 0 {
		t.Fatalf("not an example of drawdown with its output: %+v", e)
	}
	got, problems, status := run(args[1:]...)
	if status != cli.Done || problems != "" {
		t.Errorf("%s: status %d, problems %q", e.command, status, problems)
	}
	if !matches(strings.Split(strings.TrimSuffix(got, "\n"), "\n"), e.prints) {
		t.Errorf("%s prints\n%s\nbut the help says\n%s", e.command, got, strings.Join(e.prints, "\n"))
	}
	for _, line := range e.prints {
		if strings.Contains(line, " ") || line == "..." || filepath.Ext(line) == "" {
			continue // not a file name
		}
		if _, err := os.Stat(line); err != nil {
			t.Errorf("%s names a file that it does not write: %v", e.command, err)
		}
	}
}

// tryServing runs the example of a command that serves until it is ended, on a
// free port with its own record.
func tryServing(t *testing.T, e example) {
	t.Helper()
	for _, signal := range []os.Signal{os.Interrupt, syscall.SIGTERM} {
		serveUntil(t, e, signal)
	}
}

func serveUntil(t *testing.T, e example, signal os.Signal) {
	t.Helper()
	out := &untilServed{line: make(chan string, 1)}
	program := cli.Program{Stdin: strings.NewReader(""), Stdout: out, Stderr: out}
	ended := make(chan cli.Status, 1)
	go func() {
		ended <- program.Run(append(strings.Fields(e.command)[1:], "--port", "0", "--data", "data"))
	}()
	address := regexp.MustCompile(`^http://127\.0\.0\.1:\d+/\?key=[A-Z2-7…]+\n?$`)
	if got := <-out.line; !address.MatchString(got) || len(e.prints) != 1 || !address.MatchString(e.prints[0]) {
		t.Errorf("%s prints %q, and the help says %q", e.command, got, e.prints)
	}
	myself, err := os.FindProcess(os.Getpid())
	if err == nil {
		err = myself.Signal(signal)
	}
	if status := <-ended; err != nil || status != cli.Done {
		t.Errorf("%s ends with %d after %v, %v", e.command, status, signal, err)
	}
}

// untilServed sends the first line that a program prints.
type untilServed struct {
	once sync.Once
	line chan string
}

func (u *untilServed) Write(data []byte) (int, error) {
	u.once.Do(func() { u.line <- string(data) })
	return len(data), nil
}

// matches compares lines with what the help shows, where ... stands for any
// number of lines.
func matches(got, shown []string) bool {
	if len(shown) == 0 {
		return len(got) == 0
	}
	if strings.TrimSpace(shown[0]) == "..." {
		for skipped := range len(got) + 1 {
			if matches(got[skipped:], shown[1:]) {
				return true
			}
		}
		return false
	}
	return len(got) > 0 && got[0] == shown[0] && matches(got[1:], shown[1:])
}

func TestMatches(t *testing.T) {
	for _, c := range []struct {
		got, shown string
		want       bool
	}{
		{"a b c", "a b c", true},
		{"a b c", "a b", false},
		{"a b", "a b c", false},
		{"a b c", "a ...", true},
		{"a b c", "a ... c", true},
		{"a b c", "a ... d", false},
		{"a b c", "... b ...", true},
		{"a", "a ...", true},
		{"x", "a", false},
	} {
		if got := matches(strings.Fields(c.got), strings.Fields(c.shown)); got != c.want {
			t.Errorf("%q shown as %q: %v, want %v", c.got, c.shown, got, c.want)
		}
	}
}
