package cli

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"slices"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/job"
	"drawdown/patterns/problem"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

// wayFlags are the flags that override a file's order.
type wayFlags struct{ way, turn *string }

func addWayFlags(flags *pflag.FlagSet) wayFlags {
	return wayFlags{
		way:  flags.String("way", "", "order every group by this way instead of the file's: "+choices(sequence.Ways)),
		turn: flags.String("turn", "", "turn this way instead of the file's: "+choices(sequence.Turns)),
	}
}

// check says what is wrong with the values, if anything.
func (f wayFlags) check() error {
	if *f.way != "" && !slices.Contains(sequence.Ways, sequence.Way(*f.way)) {
		return fmt.Errorf("--way %q is not known; allowed: %s", *f.way, choices(sequence.Ways))
	}
	if *f.turn != "" && !slices.Contains(sequence.Turns, sequence.Turn(*f.turn)) {
		return fmt.Errorf("--turn %q is not known; allowed: %s", *f.turn, choices(sequence.Turns))
	}
	return nil
}

// oneFile gives the one file that a command takes.
func oneFile(args []string) (string, error) {
	switch len(args) {
	case 0:
		return "", errors.New("which pattern? Name a built-in one, a path, or - for standard input")
	case 1:
		return args[0], nil
	}
	return "", fmt.Errorf("one pattern at a time: %q is one too many", args[1])
}

// load plans a pattern and reports its problems. Not ok means that the status
// is final.
func (p *Program) load(name string, way sequence.Way, turn sequence.Turn) (made plan.Plan, status Status, ok bool) {
	made, problems, err := job.Load(name, p.Stdin, way, turn)
	if err != nil {
		return made, p.fail(statusOf(err), err), false
	}
	p.report(problems)
	if problems.Stops() {
		return made, Wrong, false
	}
	return made, Done, true
}

// statusOf tells a name that the user has to mend from a failing machine.
func statusOf(err error) Status {
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, fs.ErrInvalid) {
		return Wrong
	}
	return Failed
}

// report prints problems with the lines they stand on.
func (p *Program) report(problems problem.List) {
	for _, one := range problems {
		fmt.Fprint(p.Stderr, one.Detail())
	}
}

// printJSON prints a value for other programs.
func (p *Program) printJSON(v any) Status {
	encoder := json.NewEncoder(p.Stdout)
	encoder.SetIndent("", "  ")
	encoder.SetEscapeHTML(false)
	if err := encoder.Encode(v); err != nil {
		return p.fail(Failed, err)
	}
	return Done
}
