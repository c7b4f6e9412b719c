package cli

import (
	"fmt"
	"io"
	"runtime/debug"
	"strings"

	"github.com/spf13/pflag"
)

const about = `drawdown turns bolt coordinates and fastener data into the order, the stages and
the figures for a joint held by many bolts, and draws them as cards.

Usage: drawdown COMMAND [FILE] [flags]

Commands:
`

const afterCommands = `
FILE is a built-in pattern (drawdown patterns lists them), a path, or - for
standard input.

Example:
  drawdown card p4-head
      writes out/p4-head.pdf and a picture of each page

Exit status: 0 done, 1 the input or a check is wrong, 2 misuse, 3 the machine
failed (disk, permission).

A figure that drawdown worked out is marked with ≈. The maker's manual, local
codes and licensed practice come first.
`

func (p *Program) printHelp(w io.Writer) {
	fmt.Fprint(w, about)
	for _, c := range commands() {
		fmt.Fprintf(w, "  %-12s %s\n", c.name, c.summary)
	}
	fmt.Fprintf(w, "  %-12s %s\n", "help", "the help of a command: drawdown help card")
	fmt.Fprint(w, afterCommands)
}

func (p *Program) help(args []string) Status {
	if len(args) == 0 {
		p.printHelp(p.Stdout)
		return Done
	}
	c, known := findCommand(args[0])
	if !known {
		return p.misuse("", "there is no command %q; commands: %s", args[0], strings.Join(commandNames(), ", "))
	}
	p.printCommandHelp(p.Stdout, c)
	return Done
}

func (p *Program) printCommandHelp(w io.Writer, c command) {
	flags := newFlags(c)
	c.build(flags)
	fmt.Fprintf(w, "drawdown %s: %s\n\nUsage: drawdown %s %s\n\n%s\n", c.name, c.summary, c.name, c.usage, c.about)
	if flags.HasFlags() {
		fmt.Fprintf(w, "\nFlags:\n%s", flags.FlagUsagesWrapped(80))
	}
	fmt.Fprintf(w, "\nExample:\n%s", indented(c.example))
}

func indented(s string) string {
	lines := strings.Split(strings.Trim(s, "\n"), "\n")
	for i, l := range lines {
		if l != "" {
			lines[i] = "  " + l
		}
	}
	return strings.Join(lines, "\n") + "\n"
}

// version is what the build says of itself.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" {
		return "(devel)"
	}
	return info.Main.Version
}

// choices writes a list of allowed values for a flag's help.
func choices[T ~string](values []T) string {
	words := make([]string, len(values))
	for i, v := range values {
		words[i] = string(v)
	}
	return strings.Join(words, ", ")
}

// jsonFlag adds the flag that every command with figures has.
func jsonFlag(flags *pflag.FlagSet) *bool {
	return flags.Bool("json", false, "print JSON for other programs")
}
