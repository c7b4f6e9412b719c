// Package shell writes completion scripts for bash, zsh, fish and PowerShell,
// all from one description of the commands, which the caller passes in. It
// imports nothing of the project.
package shell

import (
	"fmt"
	"slices"
	"strings"
)

// Command is a possible first word of the command line.
type Command struct {
	Name    string
	Summary string
	Words   []string // that may follow: built-in names, or other values
	Files   Files    // that may follow, too
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
	Words []string // its possible values, if they are known
}

// Takes is the sort of a flag's value.
type Takes int

const (
	Nothing Takes = iota // a switch
	Text                 // anything; Words has suggestions
	List                 // Words separated by commas
	File                 // a YAML file
	Folder
)

// Names lists the shells in the order of the help.
func Names() []string { return []string{"bash", "zsh", "fish", "powershell"} }

// Script returns the completion script for a shell; known is false for an
// unknown shell.
func Script(name string, commands []Command) (text string, known bool) {
	write, known := map[string]func([]Command) string{"bash": bash, "zsh": zsh, "fish": fish, "powershell": powershell}[name]
	if !known {
		return "", false
	}
	return write(commands), true
}

// lines is a script under construction.
type lines struct{ strings.Builder }

func (l *lines) add(format string, args ...any) { fmt.Fprintf(l, format+"\n", args...) }

func namesOf(commands []Command) []string {
	names := make([]string, len(commands))
	for i, c := range commands {
		names[i] = c.Name
	}
	return names
}

// typed lists a command's flags in typed form, sorted.
func (c Command) typed() []string {
	var all []string
	for _, f := range c.Flags {
		all = append(all, "--"+f.Name)
	}
	slices.Sort(all)
	return all
}

// valued holds the flags whose value is completed in the same way, each after
// its command: "card --paper", "tray --paper".
type valued struct {
	keys   []string
	answer string
}

// valuedFlags groups the flags that take a value by the shell's completion for
// it.
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

// quoted puts a text in single quotes, with the shell's own escape for one
// inside.
func quoted(text, quote string) string { return "'" + strings.ReplaceAll(text, "'", quote) + "'" }

func allQuoted(words []string, between string) string {
	all := make([]string, len(words))
	for i, w := range words {
		all[i] = quoted(w, "''")
	}
	return strings.Join(all, between)
}
