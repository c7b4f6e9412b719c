package cli

import (
	"fmt"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/job"
	"drawdown/patterns"
	"drawdown/render"
)

var patternsCommand = command{
	name:    "patterns",
	summary: "list the built-in patterns, or write one out as a start",
	usage:   "[NAME] [-o FOLDER] [--json]",
	about: `Without a name it lists the built-in patterns. With a name it prints the file;
with -o it writes NAME.yaml to the folder instead, for you to edit.`,
	example: `
drawdown patterns p4-cover -o .
    p4-cover.yaml
`,
	build: func(flags *pflag.FlagSet) runner {
		folder := flags.StringP("out", "o", "", "folder to write the file to, instead of printing it")
		asJSON := jsonFlag(flags)
		return func(p *Program, args []string) Status {
			switch {
			case len(args) == 0:
				return p.listPatterns(*asJSON)
			case len(args) > 1:
				return p.misuse("patterns", "one pattern at a time: %q is one too many", args[1])
			}
			return p.writePattern(args[0], *folder)
		}
	},
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
		if _, err := p.Stdout.Write(text); err != nil {
			return p.fail(Failed, err)
		}
		return Done
	}
	paths, err := writeFiles(folder, []render.File{{Name: name + ".yaml", Data: text}})
	if err != nil {
		return p.fail(Failed, err)
	}
	fmt.Fprintln(p.Stdout, paths[0])
	return Done
}
