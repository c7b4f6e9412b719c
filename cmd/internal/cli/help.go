package cli

import (
	"cmp"
	"embed"
	"fmt"
	"io"
	"runtime/debug"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/licences"
	"drawdown/geometry/finding"
)

//go:embed help
var helpFiles embed.FS

func helpFile(name string) string {
	text, err := helpFiles.ReadFile("help/" + name + ".txt")
	if err != nil {
		panic(err) // the file is embedded, and the tests read every one
	}
	return string(text)
}

// summary is the line for the list of commands: the first line of a command's
// help file.
func (c command) summary() string { return strings.Split(helpFile(c.name), "\n")[0] }

func (p *Program) printHelp(w io.Writer) {
	var list []string
	for _, c := range described() {
		list = append(list, fmt.Sprintf("  %-12s %s", c.Name, c.Summary))
	}
	fmt.Fprint(w, strings.Replace(helpFile("drawdown"), "{commands}", strings.Join(list, "\n"), 1))
}

func (p *Program) help(args []string) Status {
	if len(args) == 2 && args[0] == patternsCommand.name && args[1] == newPattern {
		args = args[:1] // its help is that of patterns
	}
	if len(args) > 1 {
		return p.misuse(finding.Failed(OneAtATime, finding.Values{"sort": "command", "written": args[1]}))
	}
	if len(args) == 0 || slices.Contains([]string{"help", "-h", "--help"}, args[0]) {
		p.printHelp(p.Stdout)
		return Done
	}
	c, err := findCommand(args[0])
	if err != nil {
		return p.misuse(err)
	}
	p.printCommandHelp(p.Stdout, c)
	return Done
}

// printCommandHelp prints a command's help file: summary, usage and
// description, the list of flags, then example commands with their output
// indented below, where ... stands for omitted lines.
func (p *Program) printCommandHelp(w io.Writer, c command) {
	heads, rest, _ := strings.Cut(helpFile(c.name), "\n\n")
	summary, usage, _ := strings.Cut(heads, "\n")
	about, example, _ := strings.Cut(rest, "\n\nExample:\n")
	fmt.Fprintf(w, "drawdown %s: %s\n\nUsage: drawdown %[1]s %[3]s\n\n%[4]s\n", c.name, summary, usage, about)
	if flags := flagsOf(c); flags.HasFlags() {
		usages := flags.FlagUsagesWrapped(80)
		// Both values of a switch are rarely typed; the blanks keep the column.
		usages = strings.ReplaceAll(usages, "[=true|false]", strings.Repeat(" ", len("[=true|false]")))
		fmt.Fprintf(w, "\nFlags:\n%s", usages)
	}
	fmt.Fprintf(w, "\nExample:\n  %s\n", strings.ReplaceAll(strings.TrimSuffix(example, "\n"), "\n", "\n  "))
}

var versionCommand = command{
	name:    "version",
	operand: nothing,
	build: func(flags *pflag.FlagSet) runner {
		notices := flags.Bool("licences", false, "print the licences of all software in the program")
		return func(p *Program, args []string) Status {
			if len(args) > 0 {
				return p.misuse(finding.Failed(TakesNoName, finding.Values{"command": "version", "written": args[0]}))
			}
			if *notices {
				fmt.Fprint(p.Stdout, licences.Notices)
				return Done
			}
			fmt.Fprintln(p.Stdout, "drawdown "+version())
			return Done
		}
	},
}

// version describes this build.
func version() string {
	const unknown = "(devel)"
	if info, ok := debug.ReadBuildInfo(); ok {
		return cmp.Or(info.Main.Version, unknown)
	}
	return unknown
}
