package cli

import (
	"errors"
	"fmt"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/job"
	"drawdown/patterns"
	"drawdown/patterns/table"
	"drawdown/render"
)

var patternsCommand = command{
	name:    "patterns",
	summary: "list the built-in patterns, write one out, or make a new one",
	usage:   "[--json] | NAME [flags] | new LAYOUT [flags]",
	operand: builtinName,
	about: `Without a name it lists the built-in patterns. With a name it prints the file;
with -o it writes NAME.yaml to the folder instead, for you to edit, and replaces
a file of that name. --as csv gives the places of a pattern (your own, too) as a
table: id, x, y in mm, kind, number cast on the part. --as dxf gives them as a
drawing in mm (DXF, release 12): the outline, the bores, the dowels and every
kind of fastener on a layer of its own, ids and labels as text. A kind without a
hole in the file is drawn as points.

new makes a pattern file with comments that say what else can be filled in:
  drawdown patterns new --grid 5x2 --pitch 95x90
  drawdown patterns new --circle 16 --diameter 240
  drawdown patterns new --row 5 --pitch 60
  drawdown patterns new --rectangle 5x2 --size 300x160
  drawdown patterns new --csv points.csv
  drawdown patterns new --dxf part.dxf
A rectangle has its holes round the edge: 5 along the top and the bottom with
the corners, 2 more on each end. A table has a row a hole: id, x, y. A heading
may name the columns (id, x, y, kind, cast, mark) and the unit, as in x in.
Columns are parted by commas, semicolons or tabs. Bare lengths are in mm; 3.75in
is taken, too.

A drawing (DXF, text or binary, release 12 and later) is read in the unit that
it states, or in --units. Circles and points become fasteners, one kind a size.
A hole above 40 mm is a bore; so is a size of fewer than 4 holes that are more
than 2.5 times as wide as the most common ones. --bolts 6-14mm, --dowels 8mm and
--bores 30mm- say it otherwise. Of circles round one centre the inner is the
hole. The outermost closed line is the edge of the part; curves are drawn to
0.05 mm. What is left out is counted and said: layers that are off or frozen,
paper space, dimensions, hatching. --layer names the layers to read.`,
	example: `
drawdown patterns p4-cover -o .
    p4-cover.yaml
drawdown patterns new --grid 5x2 --pitch 95x90 --title Cylinder-head -o mine
    mine/cylinder-head.yaml
`,
	build: func(flags *pflag.FlagSet) runner {
		folder := flags.StringP("out", "o", "", "`folder` to write the file to, instead of printing it")
		as := flags.String("as", string(yamlForm), "`form` of the file, one of "+choices(patternForms))
		addLayoutFlags(flags)
		asJSON := jsonFlag(flags)
		return func(p *Program, args []string) Status {
			err := checkPatternsCall(flags, args, *folder)
			if err != nil {
				return p.misuse("patterns", "%v", err)
			}
			form, err := choose("as", *as, patternForms)
			if err != nil {
				return p.misuse("patterns", "%v", err)
			}
			switch {
			case len(args) == 0:
				return p.listPatterns(*asJSON)
			case args[0] == newPattern:
				return p.newPattern(flags, *folder)
			case form == csvForm:
				return p.writeTable(args[0], *folder)
			case form == dxfForm:
				return p.writeDrawing(args[0], *folder)
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
	case len(args) == 0 && flags.Changed("as"):
		return errors.New("--as needs the name of a pattern, as in: drawdown patterns p4-cover --as csv")
	case len(args) == 1 && args[0] == newPattern && flags.Changed("as"):
		return errors.New("--as goes with a pattern that is there, not with new")
	case (len(args) == 0 || args[0] != newPattern) && changed(flags, layoutFlags) != "":
		return fmt.Errorf("--%s makes a new pattern; write: drawdown patterns new --%[1]s …", changed(flags, layoutFlags))
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
		return p.fail(Wrong, patterns.Unknown(name))
	}
	return p.printOrWrite(folder, name+".yaml", text)
}

// printOrWrite prints a file, or writes it where a folder is named.
func (p *Program) printOrWrite(folder, name string, text []byte) Status {
	if folder == "" {
		p.Stdout.Write(text) // the output keeps the error
		return Done
	}
	paths, err := writeFiles(folder, []render.File{{Name: name, Data: text}})
	if err != nil {
		return p.fail(Failed, err)
	}
	fmt.Fprintln(p.Stdout, paths[0])
	return Done
}

// writeTable writes the places of a pattern as a table.
func (p *Program) writeTable(name, folder string) Status {
	made, status, ok := p.loadPlaces(name, "", "")
	if !ok {
		return status
	}
	return p.printOrWrite(folder, made.Name+".csv", table.Write(made.Joint))
}
