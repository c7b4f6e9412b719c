package cli_test

import (
	"bytes"
	"errors"
	"io"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"drawdown/cmd/internal/cli"
)

// full accepts some bytes and then no more, like a full disk.
type full struct{ left int }

var errFull = errors.New("no space left")

func (f *full) Write(data []byte) (int, error) {
	if len(data) > f.left {
		n := f.left
		f.left = 0
		return n, errFull
	}
	f.left -= len(data)
	return len(data), nil
}

// Output that cannot be written is a failure of the machine, whichever command
// prints it and however much was written.
func TestFailingOutputIsAFailure(t *testing.T) {
	for _, args := range []string{
		"help", "--help", "help card", "card --help", "version", "completion bash",
		"order p4-head", "order p4-head --json", "check p4-head", "check p4-head --json",
		"patterns", "patterns --json", "patterns p4-head",
		"patterns p4-head -o .", "card p4-head --format svg", "card p4-head --format svg --json",
	} {
		for _, room := range []int{0, 3} {
			t.Chdir(t.TempDir())
			var problems bytes.Buffer
			program := cli.Program{Stdin: strings.NewReader(""), Stdout: &full{room}, Stderr: &problems}
			status := program.Run(strings.Fields(args))
			want := "drawdown: standard output cannot be written: no space left\n"
			if status != cli.Failed || problems.String() != want {
				t.Errorf("%s with room for %d bytes: status %d, %q; want 3, %q", args, room, status, problems.String(), want)
			}
		}
	}
}

// A closed pipe ends the program with the status for failed output, without a
// message, a signal or a panic: piping into head is common.
func TestBrokenPipe(t *testing.T) {
	reader, writer, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer writer.Close()
	reader.Close()
	var problems bytes.Buffer
	command := exec.Command("drawdown", "order", "p4-head")
	command.Stdout, command.Stderr = writer, &problems
	err = command.Run()
	var exit *exec.ExitError
	if !errors.As(err, &exit) || exit.ExitCode() != 3 {
		t.Fatalf("ends with %v, want exit status 3", err)
	}
	if got := problems.String(); got != "" {
		t.Errorf("says %q", got)
	}
}

// unreadable is a stream that always fails.
type unreadable struct{}

func (unreadable) Read([]byte) (int, error) { return 0, errors.New("the line is cut") }

func TestFailingInputIsAFailure(t *testing.T) {
	for _, name := range []string{"order", "check", "card"} {
		var out, problems bytes.Buffer
		program := cli.Program{Stdin: unreadable{}, Stdout: &out, Stderr: &problems}
		status := program.Run([]string{name, "-"})
		if status != cli.Failed || out.Len() > 0 || problems.String() != "drawdown: reading standard input: the line is cut\n" {
			t.Errorf("%s: status %d, output %q, problems %q", name, status, out.String(), problems.String())
		}
	}
}

// For any arguments, order ends with one of the statuses. If it fails, it says
// why and prints nothing on standard output; check prints a line per file.
func FuzzArguments(f *testing.F) {
	for _, seed := range []string{
		"order\np4-head\n--way\nspiral", "order\n--turn=left\np4-head", "order\n-h", "order\n--\n--way",
		"check\np4-head\n--json", "help\norder", "completion\nzsh", "--version", "ordre\n-o", "check\n-", "",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, line string) {
		args := strings.Split(line, "\n")
		if !isHarmless(args) {
			return
		}
		var out, problems bytes.Buffer
		program := cli.Program{Stdin: io.LimitReader(strings.NewReader(line), 1000), Stdout: &out, Stderr: &problems}
		status := program.Run(args)
		if status < cli.Done || status > cli.Failed {
			t.Errorf("%q: status %d", args, status)
		}
		if status == cli.Done && out.Len() == 0 {
			t.Errorf("%q prints nothing", args)
		}
		aLineAFile := args[0] == "check" // prints the files that it could read, and a list as JSON
		if status != cli.Done && (problems.Len() == 0 || out.Len() > 0) && !aLineAFile {
			t.Errorf("%q: status %d, output %q, problems %q", args, status, out.String(), problems.String())
		}
	})
}

// isHarmless excludes calls that write files, read devices, or serve the bench
// until they are ended.
func isHarmless(args []string) bool {
	for _, arg := range args {
		if strings.ContainsAny(arg, `/\`) {
			return false
		}
	}
	writing := []string{"card", "tray", "condition", "book", "handout", "target", "trace", "survey", "patterns", "records", "bench"}
	return !slices.Contains(writing, args[0])
}
