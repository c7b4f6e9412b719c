package flag

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/shell"
	"drawdown/render/words"
)

type colour string

var colours = []colour{"red", "green", "blue"}

func described() (flags *pflag.FlagSet, one *colour, some *[]colour) {
	flags = pflag.NewFlagSet("paint", pflag.ContinueOnError)
	one = Choice(flags, "one", "red", colours, "a `colour`, one of ")
	some = List(flags, "some", []colour{"red", "blue"}, colours, "`colours`, of ")
	Out(flags, "out", OutUsage)
	JSON(flags)
	return flags, one, some
}

// First principles: a word is taken in small letters and large, each once; the
// usual ones stand where none is said.
func TestChoices(t *testing.T) {
	flags, one, some := described()
	if *one != "red" || len(*some) != 2 {
		t.Errorf("without flags %s and %s", *one, *some)
	}
	if err := flags.Parse([]string{"--one", "GREEN", "--some", "blue, Blue,green"}); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([]colour{"blue", "green"}, *some); diff != "" || *one != "green" {
		t.Errorf("--one %s, --some:\n%s", *one, diff)
	}
}

// What is wrong is told with the flag, what was near, and what is allowed.
func TestProblems(t *testing.T) {
	for args, want := range map[string]string{
		"--one gren":       `--one "gren" is not known (did you mean green?); allowed: red, green, blue`,
		"--some red,mauve": `--some "mauve" is not known; allowed: red, green, blue`,
		"--one":            "--one needs a value: red, green, blue",
		"--onee red":       "paint has no flag --onee (did you mean --one?); flags: --help, --json, --one, --out, --some",
		"-x":               "paint has no flag -x; flags: --help, --json, --one, --out, --some",
		"--json=perhaps":   `--json "perhaps": write true or false`,
	} {
		flags, _, _ := described()
		err := flags.Parse(strings.Fields(args))
		if err == nil {
			t.Errorf("%s is taken", args)
		} else if got := words.English().Error(Problem("paint", flags, err)); got != want {
			t.Errorf("%s: %s, want %s", args, got, want)
		}
	}
	if _, ok := errors.AsType[Misuse](Misused(Together, nil)); !ok {
		t.Error("a misuse is none")
	}
}

// First principles: completion knows of a flag what its description says.
func TestTable(t *testing.T) {
	flags, _, _ := described()
	want := []shell.Flag{
		{Name: "help", Short: "h", Usage: "the help of this command"},
		{Name: "json", Usage: "print JSON for other programs"},
		{Name: "one", Usage: "a colour, one of red, green, blue", Takes: shell.Text, Words: []string{"red", "green", "blue"}},
		{Name: "out", Short: "o", Usage: "folder to write to; created if missing", Takes: shell.Folder},
		{Name: "some", Usage: "colours, of red, green, blue", Takes: shell.List, Words: []string{"red", "green", "blue"}},
	}
	if diff := cmp.Diff(want, Table(flags)); diff != "" {
		t.Error(diff)
	}
}
