package cli

import (
	"strings"

	"github.com/spf13/pflag"
)

func fishScript() string {
	var s script
	s.line("# drawdown completion for fish")
	first := "complete -c drawdown -n __fish_use_subcommand -f -a %s -d %s"
	for _, c := range commands() {
		s.line(first, c.name, fishQuoted(c.summary))
	}
	s.line(first, "help", fishQuoted("the help of a command"))
	s.line(first, "version", fishQuoted("print which build this is"))
	s.line("complete -c drawdown -n '__fish_seen_subcommand_from help' -f -a %s", fishQuoted(strings.Join(commandNames(), " ")))
	s.line("complete -c drawdown -n '__fish_seen_subcommand_from version' -f")
	for _, c := range commands() {
		on := "complete -c drawdown -n '__fish_seen_subcommand_from " + c.name + "'"
		files := " -f"
		if takesFiles(c) || takesPictures(c) {
			files = ""
		}
		s.line("%s%s -a %s", on, files, fishQuoted(strings.Join(operands(c), " ")))
		s.line("%s -s h -l help -d 'the help of this command'", on)
		for _, f := range flagsOf(c) {
			s.line("%s%s", on, fishFlag(f))
		}
	}
	return s.String()
}

func fishFlag(f *pflag.Flag) string {
	words := " -l " + f.Name
	if f.Shorthand != "" {
		words += " -s " + f.Shorthand
	}
	switch {
	case f.Name == "out":
		words += " -x -a '(__fish_complete_directories)'"
	case takesFile(f.Name):
		words += " -r -F"
	case takesList(f.Name):
		words += " -x -a '(__fish_append , " + strings.Join(values(f.Name), " ") + ")'"
	case values(f.Name) != nil:
		words += " -x -a " + fishQuoted(strings.Join(values(f.Name), " "))
	case f.Value.Type() != "bool":
		words += " -x"
	}
	_, usage := pflag.UnquoteUsage(f)
	return words + " -d " + fishQuoted(usage)
}

func fishQuoted(text string) string {
	return singleQuoted(strings.ReplaceAll(text, `\`, `\\`), `\'`)
}
