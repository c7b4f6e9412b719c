package cli

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/patterns"
	"drawdown/render"
	"drawdown/render/sheet"
	"drawdown/sequence"
)

// completion is the command that prints completion scripts. It is a function
// because the scripts list all commands, this one among them.
func completion() command {
	return command{
		name:    "completion",
		summary: "print a completion script for a shell",
		usage:   strings.Join(shellNames, "|"),
		about: `The script completes commands, flags, their values and the names of built-in
patterns. Load it from the shell's start-up file.`,
		example: `
bash:        source <(drawdown completion bash)
zsh:         source <(drawdown completion zsh)
fish:        drawdown completion fish | source
PowerShell:  drawdown completion powershell | Out-String | Invoke-Expression
`,
		build: func(*pflag.FlagSet) runner {
			return func(p *Program, args []string) Status {
				if len(args) != 1 || !slices.Contains(shellNames, args[0]) {
					return p.misuse("completion", "name one shell: %s", strings.Join(shellNames, ", "))
				}
				fmt.Fprint(p.Stdout, completionScript(args[0]))
				return Done
			}
		},
	}
}

// shellNames are the shells with a script, in the order of the help.
var shellNames = []string{"bash", "zsh", "fish", "powershell"}

func completionScript(shell string) string {
	switch shell {
	case "bash":
		return bashScript()
	case "zsh":
		return zshScript()
	case "fish":
		return fishScript()
	}
	return powershellScript()
}

// values lists what a flag can be set to, for completion.
func values(flag string) []string {
	switch flag {
	case "format":
		return words(render.Formats)
	case "paper":
		return sheet.PaperNames()
	case "side":
		return words(sheet.Sides)
	case "way":
		return words(sequence.Ways)
	case "turn":
		return words(sequence.Turns)
	}
	return nil
}

func words[T ~string](values []T) []string { return strings.Split(choices(values), ", ") }

// arguments lists what may follow a command's name.
func arguments(c command) []string {
	if c.name == "completion" {
		return shellNames
	}
	return patterns.Builtin()
}

// flagsOf lists a command's flags, with -- before them.
func flagsOf(c command) []*pflag.Flag {
	flags := newFlags(c)
	c.build(flags)
	var all []*pflag.Flag
	flags.VisitAll(func(f *pflag.Flag) { all = append(all, f) })
	return all
}

func flagWords(c command) []string {
	all := []string{"--help"}
	for _, f := range flagsOf(c) {
		all = append(all, "--"+f.Name)
	}
	slices.Sort(all)
	return all
}

func allNames() []string { return append(commandNames(), "help") }

// flagsWithValues lists the flags of all commands that complete a value.
func flagsWithValues() []string {
	var names []string
	for _, c := range commands() {
		for _, f := range flagsOf(c) {
			if values(f.Name) != nil && !slices.Contains(names, f.Name) {
				names = append(names, f.Name)
			}
		}
	}
	return names
}
