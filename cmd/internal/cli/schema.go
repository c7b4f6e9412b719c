package cli

import (
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/flag"
	"drawdown/geometry/finding"
	"drawdown/patterns/schema"
	"drawdown/render"
)

var schemaCommand = command{
	name:    "schema",
	operand: schemaName,
	build: func(flags *pflag.FlagSet) runner {
		folder := flag.Out(flags, "", "`folder` to write NAME.schema.json to; without NAME, all of them")
		flag.Language(flags)
		return func(p *Program, args []string) Status {
			switch {
			case len(args) > 1:
				return p.misuse(finding.Failed(OneAtATime, finding.Values{"sort": "schema", "written": args[1]}))
			case flags.Changed("out"):
				if err := files.CheckFolder(*folder); err != nil {
					return p.misuse(err)
				}
			}
			names := args
			if len(names) == 0 {
				if names = schema.Names(); *folder == "" {
					names = names[:1]
				}
			}
			return p.schemas(names, *folder)
		}
	},
}

// schemas prints the schemas, or writes them if a folder is given.
func (p *Program) schemas(names []string, folder string) Status {
	var made []render.File
	for _, name := range names {
		text, err := schema.Of(name)
		if err != nil {
			return p.fail(Wrong, err)
		}
		made = append(made, render.File{Name: name + ".schema.json", Data: text})
	}
	if folder == "" {
		p.Stdout.Write(made[0].Data) // p.Stdout keeps the error
		return Done
	}
	paths, err := files.Write(folder, made)
	if err != nil {
		return p.fail(Failed, err)
	}
	p.printPaths(paths)
	return Done
}
