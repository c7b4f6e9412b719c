// Package cli is the command line: flags, words and exit statuses. It makes no
// decisions about bolts and draws nothing.
package cli

import (
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"strings"
	"syscall"
	"time"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/machine"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
	"drawdown/render/words"
)

// Status is an exit status of the program.
type Status int

const (
	Done   Status = 0 // success
	Wrong  Status = 1 // the input, or a check of it, is wrong
	Misuse Status = 2 // the command line is wrong
	Failed Status = 3 // the machine failed: disk, permission
)

// Program is one call of drawdown, with its streams.
type Program struct {
	Stdin   io.Reader
	Stdout  io.Writer
	Stderr  io.Writer
	Today   time.Time        // to compare dates with; zero: the clock
	alone   bool             // the process exists only for this call
	command string           // of the call, once known
	words   *words.Catalogue // in the language of --lang
}

// command is one of the program's commands. Its help is in the file
// help/NAME.txt.
type command struct {
	name    string
	operand operand
	build   func(flags *pflag.FlagSet) runner
}

// runner runs a command after its flags are parsed.
type runner func(p *Program, args []string) Status

// commands lists all commands in the order of the help text.
func commands() []command {
	return []command{cardCommand, bookCommand, trayCommand, conditionCommand, orderCommand, checkCommand, torqueCommand, wrenchCommand, surveyCommand, traceCommand, targetCommand, predictCommand, handoutCommand, benchCommand, patternsCommand, diffCommand, schemaCommand, recordsCommand, completion(), versionCommand}
}

func findCommand(name string) (command, error) {
	for _, c := range commands() {
		if c.name == name {
			return c, nil
		}
	}
	return command{}, unknownCommand(name)
}

// Main runs the program on the streams and arguments of the process, and exits
// with the status.
func Main() {
	// A closed pipe ends the program with its own status, not a signal.
	signal.Ignore(syscall.SIGPIPE)
	machine.OnEnd(files.Abandon)
	program := Program{Stdin: os.Stdin, Stdout: os.Stdout, Stderr: os.Stderr, alone: true}
	os.Exit(int(program.Run(os.Args[1:])))
}

// Run runs the program with these arguments, without its own name. If output
// could not be written the status is Failed, whatever else succeeded. A closed
// pipe, as with head, needs no message.
func (p *Program) Run(args []string) Status {
	out := &output{to: p.Stdout}
	call := &Program{Stdin: p.Stdin, Stdout: out, Stderr: p.Stderr, Today: p.Today, alone: p.alone, words: spoken(args)}
	if call.Today.IsZero() {
		call.Today = time.Now()
	}
	status := call.run(args)
	switch {
	case errors.Is(out.err, syscall.EPIPE):
		return Failed
	case out.err != nil:
		return call.fail(Failed, finding.Failed(OutputNotWritten, finding.Values{"why": files.Reason(out.err)}))
	}
	return status
}

// spoken returns the words of the language that the arguments ask for, even if
// they are wrong otherwise. The default is English.
func spoken(args []string) *words.Catalogue {
	asked := words.English()
	for i, arg := range args {
		tag, is := strings.CutPrefix(arg, "--lang=")
		if arg == "--lang" && i+1 < len(args) {
			tag, is = args[i+1], true
		}
		if found, err := words.Find(tag); is && err == nil {
			asked = found
		}
	}
	return asked
}

func (p *Program) run(args []string) Status {
	if len(args) == 0 && machine.OwnConsole() {
		args = []string{benchCommand.name}
	}
	if len(args) == 0 {
		p.printHelp(p.Stderr)
		return Misuse
	}
	name, rest := args[0], args[1:]
	switch name {
	case "help":
		return p.help(rest)
	case "-h", "--help":
		p.printHelp(p.Stdout)
		return Done
	case "--version":
		name = versionCommand.name
	}
	c, err := findCommand(name)
	if err != nil {
		return p.misuse(err)
	}
	return p.runCommand(c, rest)
}

// unknownCommand suggests a command that may have been meant.
func unknownCommand(name string) error {
	if strings.HasPrefix(name, "-") {
		return finding.Failed(FlagFirst, finding.Values{"flag": name})
	}
	if looksLikePattern(name) {
		return finding.Failed(PatternFirst, finding.Values{"name": name})
	}
	return finding.Failed(NoCommand, finding.Values{"name": name, "meant": problem.Nearest(name, allNames()), "commands": allNames()})
}

func commandNames() []string {
	var names []string
	for _, c := range commands() {
		names = append(names, c.name)
	}
	return names
}

func (p *Program) runCommand(c command, args []string) Status {
	p.command = c.name
	flags, run := c.flags()
	err := flags.Parse(args)
	switch {
	case errors.Is(err, pflag.ErrHelp):
		p.printCommandHelp(p.Stdout, c)
		return Done
	case err != nil:
		return p.misuse(flag.Problem(c.name, flags, err))
	}
	return run(p, flags.Args())
}

// flags returns a command's flags, and the function to run after they are
// parsed.
func (c command) flags() (*pflag.FlagSet, runner) {
	flags := pflag.NewFlagSet(c.name, pflag.ContinueOnError)
	flags.SetOutput(io.Discard)
	flags.Usage = func() {}
	flags.SortFlags = false
	return flags, c.build(flags)
}

// flagsOf returns a command's flags for descriptions.
func flagsOf(c command) *pflag.FlagSet {
	flags, _ := c.flags()
	return flags
}

// misuse reports a wrong command line and refers to the help.
func (p *Program) misuse(err error) Status {
	p.fail(Misuse, err)
	fmt.Fprintln(p.Stderr, p.words.Say(finding.Noted(SeeHelp, finding.Values{"help": strings.TrimSpace("help " + p.command)})))
	return Misuse
}

// fail reports an error with its status.
func (p *Program) fail(status Status, err error) Status {
	fmt.Fprintf(p.Stderr, "drawdown: %s\n", p.words.Error(err))
	return status
}

// output remembers the first error of a stream. Commands can print line by
// line, and the program still reports that a disk is full or a pipe is closed.
// After an error it writes nothing more.
type output struct {
	to  io.Writer
	err error
}

func (o *output) Write(data []byte) (int, error) {
	if o.err != nil {
		return 0, o.err
	}
	n, err := o.to.Write(data)
	o.err = err
	return n, err
}

func (p *Program) printJSON(v any) Status {
	text, err := report.JSON(v)
	if err != nil {
		return p.fail(Failed, err)
	}
	p.Stdout.Write(text) // p.Stdout keeps the error
	return Done
}

// refuse reports an error in a command's arguments, with its status.
func (p *Program) refuse(err error) Status {
	if _, ok := errors.AsType[flag.Misuse](err); ok {
		return p.misuse(err)
	}
	return p.fail(Wrong, err)
}

// quantities reads the flags of a command that have a quantity.
type quantities struct{ flag.Quantities }

func newQuantities(flags *pflag.FlagSet) *quantities {
	return &quantities{flag.Quantities{Flags: flags}}
}
