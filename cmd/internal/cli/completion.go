package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/shell"
	"drawdown/patterns"
	"drawdown/patterns/scan"
)

// completion is the command that prints completion scripts. It is a function
// because the scripts list all commands, this one among them.
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
				return p.misuse("completion", "name one shell: %s", strings.Join(shell.Names(), ", "))
			}
		},
	}
}

// operand is what a command takes after its name, besides flags.
type operand int

const (
	patternFile operand = iota // a built-in pattern or a file
	surveyFile                 // a built-in survey or a file
	machineFile                // a built-in machine or a file
	scanFile                   // a built-in scan or a picture
	builtinName                // a built-in pattern
	shellName
	nothing // flags only
)

// words lists what may stand there, apart from files.
func (o operand) words() []string {
	switch o {
	case shellName:
		return shell.Names()
	case nothing:
		return nil
	case surveyFile:
		return patterns.Surveys.Names()
	case machineFile:
		return patterns.Machines.Names()
	case scanFile:
		return scan.Builtin()
	case builtinName:
		return append(patterns.Builtin(), newPattern)
	}
	return patterns.Builtin()
}

// files says which files may stand there.
func (o operand) files() shell.Files {
	switch o {
	case patternFile, surveyFile, machineFile:
		return shell.YAML
	case scanFile:
		return shell.Pictures
	}
	return shell.NoFiles
}

// described is the description of all commands from which the scripts come.
func described() []shell.Command {
	var all []shell.Command
	for _, c := range commands() {
		flags := flagsOf(c)
		all = append(all, shell.Command{Name: c.name, Summary: c.summary(), Words: c.operand.words(), Files: c.operand.files(), Flags: flag.Table(flags)})
	}
	return append(all,
		shell.Command{Name: "help", Summary: "the help of a command: drawdown help card", Words: commandNames()},
		shell.Command{Name: "version", Summary: "print which build this is"})
}

// allNames lists what may stand first on the command line.
func allNames() []string { return append(commandNames(), "help", "version") }
