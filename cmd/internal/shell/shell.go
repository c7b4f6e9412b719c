// Package shell writes completion scripts for bash, zsh, fish and PowerShell,
// all from one description of the commands, which the caller passes in. It
// imports nothing of the project.
package shell

import (
	"fmt"
	"slices"
	"strings"
)

// Command is what can stand first on the command line.
type Command struct {
	Name    string
	Summary string
	Words   []string // that may follow: built-in names, or what else it takes
	Files   Files    // that may follow too
	Flags   []Flag
}

// Files are the files that a command takes.
type Files int

const (
	NoFiles Files = iota
	YAML
	Pictures
)

// Flag is one of a command's flags.
type Flag struct {
	Name  string // without its dashes
	Short string // a letter, or none
	Usage string
	Takes Takes
	Words []string // that it can be set to, where they are known
}

// Takes is what a flag's value is.
type Takes int

const (
	Nothing Takes = iota // a switch
	Text                 // of which nothing is known but what Words says
	List                 // Words with commas between
	File                 // a YAML file
	Folder
)

// Names lists the shells in the order of the help.
func Names() []string { return []string{"bash", "zsh", "fish", "powershell"} }

// Script returns the completion script for a shell; false for one that is not
// known.
func Script(name string, commands []Command) (text string, known bool) {
	write, known := map[string]func([]Command) string{"bash": bash, "zsh": zsh, "fish": fish, "powershell": powershell}[name]
	if !known {
		return "", false
	}
	return write(commands), true
}

// lines is a script while it is written.
type lines struct{ strings.Builder }

func (l *lines) add(format string, args ...any) { fmt.Fprintf(l, format+"\n", args...) }

func namesOf(commands []Command) []string {
	names := make([]string, len(commands))
	for i, c := range commands {
		names[i] = c.Name
	}
	return names
}

// typed lists a command's flags as they are typed, sorted.
func (c Command) typed() []string {
	var all []string
	for _, f := range c.Flags {
		all = append(all, "--"+f.Name)
	}
	slices.Sort(all)
	return all
}

// valued is the flags, each behind its command, whose value is completed alike:
// "card --paper", "tray --paper".
type valued struct {
	keys   []string
	answer string
}

// valuedFlags puts together the flags that take a value by what the shell
// answers for it.
func valuedFlags(commands []Command, answer func(Flag) string) []valued {
	var all []valued
	for _, c := range commands {
		for _, f := range c.Flags {
			if f.Takes == Nothing {
				continue
			}
			does := answer(f)
			i := slices.IndexFunc(all, func(v valued) bool { return v.answer == does })
			if i < 0 {
				i, all = len(all), append(all, valued{answer: does})
			}
			all[i].keys = append(all[i].keys, c.Name+" --"+f.Name)
			if f.Short != "" {
				all[i].keys = append(all[i].keys, c.Name+" -"+f.Short)
			}
		}
	}
	return all
}

// quoted puts a text between single quotes, with the shell's own way to write
// one inside.
func quoted(text, quote string) string { return "'" + strings.ReplaceAll(text, "'", quote) + "'" }

func allQuoted(words []string, between string) string {
	all := make([]string, len(words))
	for i, w := range words {
		all[i] = quoted(w, "''")
	}
	return strings.Join(all, between)
}
