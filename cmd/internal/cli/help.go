package cli

import (
	"fmt"
	"io"
	"runtime/debug"
	"slices"
	"strings"
)

const about = `drawdown turns bolt coordinates and fastener data into the order, the stages and
the figures for a joint held by many bolts, and draws them as cards.

Usage: drawdown COMMAND [FILE] [flags]

Commands:
`

const aboutFile = `
FILE is a built-in pattern (drawdown patterns lists them), a path, or - for
standard input.
`

const mainExample = `
drawdown card p4-head
    out/p4-head.pdf
    out/p4-head-tighten.png
    out/p4-head-loosen.png
`

const aboutStatus = `
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
	fmt.Fprintf(w, "  %-12s %s\n", "version", "print which build this is")
	fmt.Fprint(w, aboutFile, "\nExample:\n", indented(mainExample), aboutStatus)
}

func (p *Program) help(args []string) Status {
	if len(args) == 2 && args[0] == patternsCommand.name && args[1] == newPattern {
		args = args[:1] // its help is that of patterns
	}
	if len(args) > 1 {
		return p.misuse("", "one command at a time: %q is one too many", args[1])
	}
	if len(args) == 0 || slices.Contains([]string{"help", "version", "-h", "--help"}, args[0]) {
		p.printHelp(p.Stdout)
		return Done
	}
	c, known := findCommand(args[0])
	if !known {
		return p.misuse("", "%v", unknownCommand(args[0]))
	}
	p.printCommandHelp(p.Stdout, c)
	return Done
}

func (p *Program) printCommandHelp(w io.Writer, c command) {
	flags := flagsOf(c)
	fmt.Fprintf(w, "drawdown %s: %s\n\nUsage: drawdown %s %s\n\n%s\n", c.name, c.summary, c.name, c.usage, c.about)
	if flags.HasFlags() {
		usages := flags.FlagUsagesWrapped(80)
		// Both of a switch's values are rarely typed; the blanks keep the column.
		usages = strings.ReplaceAll(usages, "[=true|false]", strings.Repeat(" ", len("[=true|false]")))
		fmt.Fprintf(w, "\nFlags:\n%s", usages)
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

func (p *Program) printVersion(args []string) Status {
	if len(args) > 0 {
		return p.misuse("", "version takes nothing: %q is one too many", args[0])
	}
	fmt.Fprintln(p.Stdout, "drawdown "+version())
	return Done
}

// version is what the build says of itself.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" {
		return "(devel)"
	}
	return info.Main.Version
}
