package cli

import (
	"fmt"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/shell"
	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/patterns/scan"
)

// completion is the command that prints completion scripts. It is a function
// because the scripts list all commands, including itself.
func completion() command {
	return command{
		name:    "completion",
		operand: shellName,
		build: func(*pflag.FlagSet) runner {
			return func(p *Program, args []string) Status {
				if len(args) == 1 {
					if text, known := shell.Script(args[0], described()); known {
						fmt.Fprint(p.Stdout, text)
						return Done
					}
				}
				return p.misuse(finding.Failed(WhichShell, finding.Values{"shells": shell.Names()}))
			}
		},
	}
}

// operand is what follows a command besides flags: a word, or a file.
type operand struct {
	words func() []string
	files shell.Files
}

var (
	patternFile = operand{patterns.Builtin, shell.YAML}
	surveyFile  = operand{patterns.Surveys.Names, shell.YAML}
	machineFile = operand{patterns.Machines.Names, shell.YAML}
	scanFile    = operand{scan.Builtin, shell.Pictures}
	builtinName = operand{func() []string { return append(patterns.Builtin(), newPattern) }, shell.NoFiles}
	shellName   = operand{shell.Names, shell.NoFiles}
	nothing     = operand{func() []string { return nil }, shell.NoFiles}
)

// described describes all commands for the scripts.
func described() []shell.Command {
	var all []shell.Command
	for _, c := range commands() {
		all = append(all, shell.Command{Name: c.name, Summary: c.summary(), Words: c.operand.words(), Files: c.operand.files, Flags: flag.Table(flagsOf(c))})
	}
	return append(all,
		shell.Command{Name: "help", Summary: "explain a command: drawdown help card", Words: commandNames()})
}

// allNames lists the possible first words of the command line.
func allNames() []string { return append(commandNames(), "help") }
