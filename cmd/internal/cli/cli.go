// Package cli is the command line: flags, words and exit statuses. It decides
// nothing about bolts and draws nothing.
package cli

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/pflag"
)

// Status is an exit status of the program.
type Status int

const (
	Done   Status = 0 // all went well
	Wrong  Status = 1 // the input, or a check of it, is wrong
	Misuse Status = 2 // the command line is wrong
	Failed Status = 3 // the machine failed: disk, permission
)

// Program is one call of drawdown with its streams.
type Program struct {
	Stdin  io.Reader
	Stdout io.Writer
	Stderr io.Writer
}

// command is one of the program's commands.
type command struct {
	name    string
	summary string // one line for the list of commands
	usage   string // what follows the name
	about   string // a paragraph or two
	example string // a worked example, with what it prints
	build   func(flags *pflag.FlagSet) runner
}

// runner does the work of a command once its flags are read.
type runner func(p *Program, args []string) Status

// commands lists all commands in the order of the help.
func commands() []command {
	return []command{cardCommand, orderCommand, checkCommand, patternsCommand, completion()}
}

func findCommand(name string) (command, bool) {
	all := commands()
	i := slices.IndexFunc(all, func(c command) bool { return c.name == name })
	if i < 0 {
		return command{}, false
	}
	return all[i], true
}

// Run does what the arguments ask for, without the program's own name.
func (p *Program) Run(args []string) Status {
	if len(args) == 0 {
		p.printHelp(p.Stderr)
		return Misuse
	}
	switch args[0] {
	case "help":
		return p.help(args[1:])
	case "-h", "--help":
		p.printHelp(p.Stdout)
		return Done
	case "--version", "version":
		fmt.Fprintln(p.Stdout, "drawdown "+version())
		return Done
	}
	c, known := findCommand(args[0])
	if !known {
		return p.misuse("", "there is no command %q; commands: %s", args[0], strings.Join(commandNames(), ", "))
	}
	return p.runCommand(c, args[1:])
}

func commandNames() []string {
	var names []string
	for _, c := range commands() {
		names = append(names, c.name)
	}
	return names
}

func (p *Program) runCommand(c command, args []string) Status {
	flags := newFlags(c)
	run := c.build(flags)
	err := flags.Parse(args)
	switch {
	case err == pflag.ErrHelp:
		p.printCommandHelp(p.Stdout, c)
		return Done
	case err != nil:
		return p.misuse(c.name, "%v", err)
	}
	return run(p, flags.Args())
}

func newFlags(c command) *pflag.FlagSet {
	flags := pflag.NewFlagSet(c.name, pflag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.Usage = func() {}
	flags.SortFlags = false
	return flags
}

// misuse reports a wrong command line and points to the help.
func (p *Program) misuse(name, format string, args ...any) Status {
	fmt.Fprintf(p.Stderr, "drawdown: "+format+"\n", args...)
	fmt.Fprintf(p.Stderr, "see: drawdown %s\n", strings.TrimSpace("help "+name))
	return Misuse
}

// fail reports an error with its status.
func (p *Program) fail(status Status, err error) Status {
	fmt.Fprintf(p.Stderr, "drawdown: %v\n", err)
	return status
}
