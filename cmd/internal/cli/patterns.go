package cli

import (
	"errors"
	"fmt"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/job"
	"drawdown/patterns"
	"drawdown/render"
)

var patternsCommand = command{
	name:    "patterns",
	summary: "list the built-in patterns, or write one out as a start",
	usage:   "[--json] | NAME [-o FOLDER]",
	operand: builtinName,
	about: `Without a name it lists the built-in patterns. With a name it prints the file;
with -o it writes NAME.yaml to the folder instead, for you to edit, and replaces
a file of that name.`,
	example: `
drawdown patterns p4-cover -o .
    p4-cover.yaml
`,
	build: func(flags *pflag.FlagSet) runner {
		folder := flags.StringP("out", "o", "", "`folder` to write the file to, instead of printing it")
		asJSON := jsonFlag(flags)
		return func(p *Program, args []string) Status {
			err := checkPatternsCall(flags, args, *folder)
			if err != nil {
				return p.misuse("patterns", "%v", err)
			}
			if len(args) == 0 {
				return p.listPatterns(*asJSON)
			}
			return p.writePattern(args[0], *folder)
		}
	},
}

// checkPatternsCall refuses flags that would do nothing.
func checkPatternsCall(flags *pflag.FlagSet, args []string, folder string) error {
	switch {
	case len(args) > 1:
		return fmt.Errorf("one pattern at a time: %q is one too many", args[1])
	case len(args) == 0 && flags.Changed("out"):
		return errors.New("--out needs the name of the pattern to write, as in: drawdown patterns p4-cover -o mine")
	case len(args) == 1 && flags.Changed("json"):
		return errors.New("--json goes with the list, not with a pattern's name")
	case flags.Changed("out"):
		return checkFolder(folder)
	}
	return nil
}

type patternOut struct {
	Name      string `json:"name"`
	Title     string `json:"title"`
	Fasteners int    `json:"fasteners"`
}

func (p *Program) listPatterns(asJSON bool) Status {
	var list []patternOut
	for _, name := range patterns.Builtin() {
		made, problems, err := job.Load(name, nil, "", "")
		if err != nil || problems.Stops() {
			p.report(problems)
			return p.fail(Failed, fmt.Errorf("the built-in pattern %s is not sound: %v", name, err))
		}
		list = append(list, patternOut{name, made.Title, len(made.Joint.Fasteners)})
	}
	if asJSON {
		return p.printJSON(list)
	}
	for _, one := range list {
		fmt.Fprintf(p.Stdout, "%-18s %3d  %s\n", one.Name, one.Fasteners, one.Title)
	}
	return Done
}

func (p *Program) writePattern(name, folder string) Status {
	text, known := patterns.BuiltinText(name)
	if !known {
		return p.fail(Wrong, &patterns.UnknownNameError{Name: name})
	}
	if folder == "" {
		p.Stdout.Write(text) // the output keeps the error
		return Done
	}
	paths, err := writeFiles(folder, []render.File{{Name: name + ".yaml", Data: text}})
	if err != nil {
		return p.fail(Failed, err)
	}
	fmt.Fprintln(p.Stdout, paths[0])
	return Done
}
