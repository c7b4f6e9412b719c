package shell

import "strings"

func fish(commands []Command) string {
	var s lines
	s.add("# drawdown completion for fish")
	for _, c := range commands {
		s.add("complete -c drawdown -n __fish_use_subcommand -f -a %s -d %s", c.Name, fishQuoted(c.Summary))
	}
	for _, c := range commands {
		on := "complete -c drawdown -n '__fish_seen_subcommand_from " + c.Name + "'"
		files, words := " -f", ""
		if c.Files != NoFiles {
			files = ""
		}
		if len(c.Words) > 0 {
			words = " -a " + fishQuoted(strings.Join(c.Words, " "))
		}
		s.add("%s%s%s", on, files, words)
		for _, f := range c.Flags {
			s.add("%s%s", on, fishFlag(f))
		}
	}
	return s.String()
}

func fishFlag(f Flag) string {
	words := " -l " + f.Name
	if f.Short != "" {
		words += " -s " + f.Short
	}
	switch {
	case f.Takes == Nothing:
	case f.Takes == Folder:
		words += " -x -a '(__fish_complete_directories)'"
	case f.Takes == File:
		words += " -r -F"
	case f.Takes == List:
		words += " -x -a '(__fish_append , " + strings.Join(f.Words, " ") + ")'"
	case f.Words == nil:
		words += " -x"
	default:
		words += " -x -a " + fishQuoted(strings.Join(f.Words, " "))
	}
	return words + " -d " + fishQuoted(f.Usage)
}

func fishQuoted(text string) string { return quoted(strings.ReplaceAll(text, `\`, `\\`), `\'`) }
