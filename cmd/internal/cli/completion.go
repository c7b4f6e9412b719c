package cli

import (
	"fmt"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/shell"
	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/patterns/scan"
	"drawdown/patterns/schema"
	"drawdown/render"
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
	schemaName  = operand{schema.Names, shell.NoFiles}
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

var schemaCommand = command{
	name:    "schema",
	operand: schemaName,
	build: func(flags *pflag.FlagSet) runner {
		folder := flag.Out(flags, "", "`folder` to write NAME.schema.json to; without NAME, all of them")
		flag.Language(flags)
		return func(p *Program, args []string) Status {
			switch {
			case len(args) > 1:
				return p.misuse(finding.Failed(OneAtATime, finding.Values{"sort": "schema", "written": args[1]}))
			case flags.Changed("out"):
				if err := files.CheckFolder(*folder); err != nil {
					return p.misuse(err)
				}
			}
			names := args
			if len(names) == 0 {
				if names = schema.Names(); *folder == "" {
					names = names[:1]
				}
			}
			return p.schemas(names, *folder)
		}
	},
}

// schemas prints the schemas, or writes them if a folder is given.
func (p *Program) schemas(names []string, folder string) Status {
	var made []render.File
	for _, name := range names {
		text, err := schema.Of(name)
		if err != nil {
			return p.fail(Wrong, err)
		}
		made = append(made, render.File{Name: name + ".schema.json", Data: text})
	}
	if folder == "" {
		p.Stdout.Write(made[0].Data) // p.Stdout keeps the error
		return Done
	}
	paths, err := files.Write(folder, made)
	if err != nil {
		return p.fail(Failed, err)
	}
	p.printPaths(paths)
	return Done
}
