package cli

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/job"
	"drawdown/patterns"
	"drawdown/patterns/scan"
	"drawdown/render"
	"drawdown/render/sheet"
	"drawdown/render/sheet/book"
	"drawdown/render/sheet/card"
	"drawdown/render/words"
	"drawdown/sequence"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
)

// completion is the command that prints completion scripts. It is a function
// because the scripts list all commands, this one among them.
func completion() command {
	return command{
		name:    "completion",
		summary: "print a completion script for a shell",
		usage:   strings.Join(shellNames(), "|"),
		operand: shellName,
		about: `The script completes commands, flags, their values and the names of built-in
patterns. Load it from the shell's start-up file with the line

  bash        source <(drawdown completion bash)
  zsh         source <(drawdown completion zsh)
  fish        drawdown completion fish | source
  PowerShell  drawdown completion powershell | Out-String | Invoke-Expression

The bash of macOS is too old to source from a command there; write the script
to a file and source the file.`,
		example: `
drawdown completion bash
    # drawdown completion for bash
    ...
`,
		build: func(*pflag.FlagSet) runner {
			return func(p *Program, args []string) Status {
				i := -1
				if len(args) == 1 {
					i = slices.Index(shellNames(), args[0])
				}
				if i < 0 {
					return p.misuse("completion", "name one shell: %s", strings.Join(shellNames(), ", "))
				}
				fmt.Fprint(p.Stdout, shells[i].script())
				return Done
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

// operands lists what may follow a command's name, apart from files.
func operands(c command) []string {
	switch c.operand {
	case shellName:
		return shellNames()
	case nothing:
		return nil
	case surveyFile:
		return patterns.BuiltinSurveys()
	case machineFile:
		return patterns.BuiltinMachines()
	case scanFile:
		return scan.Builtin()
	case builtinName:
		return append(patterns.Builtin(), newPattern)
	}
	return patterns.Builtin()
}

// takesFiles says whether a YAML file may follow a command's name.
func takesFiles(c command) bool {
	return c.operand == patternFile || c.operand == surveyFile || c.operand == machineFile
}

// takesPictures says whether a picture may follow a command's name.
func takesPictures(c command) bool { return c.operand == scanFile }

// values lists what a flag can be set to, for completion.
func values(flag string) []string {
	switch flag {
	case "format":
		return texts(render.Formats)
	case "paper":
		return sheet.PaperNames()
	case "trays":
		return texts(book.TrayChoices)
	case "lang":
		return words.Languages()
	case "make":
		return texts(job.HandoutParts)
	case "side":
		return texts(card.Sides)
	case "order":
		return []string{job.CastOrder, job.FilesOrder}
	case "way":
		return texts(sequence.Ways)
	case "turn":
		return texts(sequence.Turns)
	case "equation":
		return texts(screw.Equations)
	case "units":
		return []string{"N", "kN", "lbf", "MPa", "psi", "ksi", "mm", "in", "Nm", "lbf.ft", "lbf.in", "kgf.m"}
	case "head":
		return texts(head.Forms)
	case "washer":
		return texts(head.Washers)
	case "as":
		return texts(patternForms)
	case "part":
		return texts(tones)
	case "gasket":
		return gasketWords()
	}
	return nil
}

// takesList says whether a flag takes several values with commas between.
func takesList(flag string) bool { return flag == "format" || flag == "make" }

// takesFile says whether a flag's value is a YAML file.
func takesFile(flag string) bool { return flag == "wrenches" }

// flagsOf lists a command's flags.
func flagsOf(c command) []*pflag.Flag {
	flags := newFlags(c)
	c.build(flags)
	var all []*pflag.Flag
	flags.VisitAll(func(f *pflag.Flag) { all = append(all, f) })
	return all
}

// flagWords lists a command's flags as they are typed, sorted.
func flagWords(c command) []string {
	all := []string{"--help"}
	for _, f := range flagsOf(c) {
		all = append(all, "--"+f.Name)
	}
	slices.Sort(all)
	return all
}

// allNames lists what may stand first on the command line.
func allNames() []string { return append(commandNames(), "help", "version") }

// valueFlags lists the flags of all commands that take a value, each once.
func valueFlags() []string {
	var names []string
	for _, c := range commands() {
		for _, f := range flagsOf(c) {
			if f.Value.Type() != "bool" && !slices.Contains(names, f.Name) {
				names = append(names, f.Name)
			}
		}
	}
	return names
}
