package cli

import (
	"cmp"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/unit"
	"drawdown/patterns"
	"drawdown/patterns/drawn"
	"drawdown/patterns/dxf"
	"drawdown/patterns/table"
	"drawdown/render"
	"drawdown/sequence/plan"
	"drawdown/sequence/revision"
)

var patternsCommand = command{
	name:    "patterns",
	operand: builtinName,
	build: func(flags *pflag.FlagSet) runner {
		folder := flag.Out(flags, "", "`folder` to write the file to, instead of printing it; for a folder of files, where their prints are")
		as := flag.Choice(flags, "as", yamlForm, patternForms, "`form` of the file, one of ")
		addNewFlags(flags)
		flags.String("machine", "", "of a folder: only files of a machine with this `text` in its name")
		flag.Language(flags)
		asJSON := flag.JSON(flags)
		return func(p *Program, args []string) Status {
			if len(args) > 0 && args[0] != newPattern && !slices.Contains(patterns.Builtin(), args[0]) && job.IsFolder(args[0]) {
				return p.library(flags, args, *folder, *asJSON)
			}
			if err := checkPatternsCall(flags, args, *folder); err != nil {
				return p.misuse(err)
			}
			switch {
			case len(args) == 0:
				return p.listPatterns(*asJSON)
			case args[0] == newPattern:
				return p.newPattern(flags, *folder)
			case *as == csvForm:
				return p.writeTable(args[0], *folder)
			case *as == dxfForm:
				return p.writeDrawing(args[0], *folder)
			}
			return p.writePattern(args[0], *folder)
		}
	},
}

// checkPatternsCall rejects flags that would have no effect.
func checkPatternsCall(flags *pflag.FlagSet, args []string, folder string) error {
	switch {
	case len(args) > 1:
		return finding.Failed(OneAtATime, finding.Values{"sort": "pattern", "written": args[1]})
	case len(args) == 0 && flags.Changed("out"):
		return finding.Failed(NeedsName, finding.Values{"flag": "out", "example": "drawdown patterns p4-cover -o mine"})
	case len(args) == 0 && flags.Changed("as"):
		return finding.Failed(NeedsName, finding.Values{"flag": "as", "example": "drawdown patterns p4-cover --as csv"})
	case len(args) == 1 && args[0] == newPattern && flags.Changed("as"):
		return finding.Failed(NotWithNew, nil)
	case (len(args) == 0 || args[0] != newPattern) && newFlag(flags) != "":
		return finding.Failed(OnlyWithNew, finding.Values{"flag": newFlag(flags)})
	case len(args) == 1 && flags.Changed("json"):
		return finding.Failed(JSONOfList, nil)
	case flags.Changed("out"):
		return files.CheckFolder(folder)
	}
	return nil
}

// shelvedOut is a file of a shop's folder as data.
type shelvedOut struct {
	File      string   `json:"file"`
	Title     string   `json:"title"`
	Machine   string   `json:"machine"`
	Fasteners int      `json:"fasteners"`
	Threads   []string `json:"threads"`
	Sound     bool     `json:"sound"`
	Errors    int      `json:"errors"`
	Warnings  int      `json:"warnings"`
	OldPrints int      `json:"old_prints"`
}

// library lists the patterns of a folder that match the search.
func (p *Program) library(flags *pflag.FlagSet, args []string, prints string, asJSON bool) Status {
	search := job.Search{Texts: args[1:]}
	search.Machine, _ = flags.GetString("machine")
	if bolts, _ := flags.GetStringArray("bolts"); len(bolts) > 0 {
		search.Bolts = bolts[len(bolts)-1]
	}
	for _, name := range append([]string{"as", "layer", "replace"}, newTextNames()...) {
		if flags.Changed(name) {
			return p.misuse(finding.Failed(NotOfFolder, finding.Values{"flag": name}))
		}
	}
	found, err := job.Library(args[0], cmp.Or(prints, "out"), search, p.Today)
	if err != nil {
		return p.fail(Failed, err)
	}
	list := []shelvedOut{}
	for _, one := range found {
		out := shelvedOut{File: filepath.ToSlash(one.File), Title: one.Plan.Title, Machine: one.Plan.Machine, Fasteners: len(one.Plan.Joint.Fasteners), Threads: []string{}, OldPrints: one.Prints}
		for _, k := range one.Plan.Kinds {
			if k.Thread != nil {
				out.Threads = append(out.Threads, k.Thread.Name)
			}
		}
		for _, problem := range one.Problems {
			if problem.Severity == finding.Error {
				out.Errors++
			} else {
				out.Warnings++
			}
		}
		if one.Failed != nil {
			out.Errors++
		}
		out.Sound = out.Errors == 0
		list = append(list, out)
	}
	if asJSON {
		return p.printJSON(list)
	}
	for _, one := range list {
		fmt.Fprintln(p.Stdout, p.words.Say(finding.Noted(LibraryLine, finding.Values{
			"file": one.File, "fasteners": one.Fasteners, "title": one.Title, "machine": one.Machine, "errors": one.Errors, "warnings": one.Warnings, "prints": one.OldPrints,
		})))
	}
	if len(list) == 0 {
		fmt.Fprintln(p.Stdout, p.words.Say(finding.Noted(LibraryEmpty, finding.Values{"folder": args[0]})))
	}
	return Done
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
			return p.stopped(name, problems, err) // a test ensures that all are sound
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

// printOrWrite prints a file, or writes it if a folder is given.
func (p *Program) printOrWrite(folder, name string, text []byte) Status {
	if folder == "" {
		p.Stdout.Write(text) // p.Stdout keeps the error
		return Done
	}
	paths, err := files.Write(folder, []render.File{{Name: name, Data: text}})
	if err != nil {
		return p.fail(Failed, err)
	}
	p.printPaths(paths)
	return Done
}

func (p *Program) writeTable(name, folder string) Status {
	made, status := p.loadPlaces(name, "", "")
	if status != Done {
		return status
	}
	return p.printOrWrite(folder, made.Name+".csv", table.Write(made.Joint))
}

func (q *quantities) drawing() drawn.Options {
	ask := drawn.Options{Holes: q.holeRule()}
	ask.Layers = q.layers()
	ask.Unit, _ = flag.OneOf(q, "units", dxf.Units)
	gap := dxf.UsualGap
	flag.Over(q, "gap", unit.Within(dxf.GapSizes, bareLength), &gap)
	ask.GapMm = float64(gap)
	return ask
}

// holeRule reads the diameters for each use of a hole.
func (q *quantities) holeRule() holes.Rule {
	var rule holes.Rule
	bolts, _ := q.Flags.GetStringArray("bolts")
	for _, text := range bolts {
		ranges, err := holes.ParseRanges(text, unit.Sensible.BoltHole)
		if err != nil {
			q.Fail(fmt.Errorf("--bolts: %w", err))
		}
		rule.Fasteners = append(rule.Fasteners, ranges...)
	}
	for _, use := range []struct {
		flag   string
		limits unit.Limits
		ends   *holes.Range
	}{
		{"dowels", unit.Sensible.Dowel, &rule.Dowels},
		{"bores", unit.Sensible.Bore, &rule.Bores},
	} {
		*use.ends, _ = flag.Read(q, use.flag, func(text string) (holes.Range, error) { return holes.ParseRange(text, use.limits) })
	}
	q.Fail(rule.Check())
	return rule
}

func (q *quantities) layers() []string {
	names, err := q.Flags.GetStringArray("layer")
	q.Fail(err)
	for i, name := range names {
		if names[i] = strings.TrimSpace(name); names[i] == "" {
			q.Fail(finding.Failed(flag.NoValue, finding.Values{"flag": "layer"}))
		}
	}
	return names
}

func (p *Program) writeDrawing(name, folder string) Status {
	made, status := p.loadPlaces(name, "", "")
	if status != Done {
		return status
	}
	data, asPoints := job.DrawingOf(made)
	if len(asPoints) > 0 {
		p.fail(Done, finding.Noted(DrawnAsPoints, finding.Values{"kinds": asPoints}))
	}
	status = p.printOrWrite(folder, made.Name+".dxf", data)
	lacks := finding.Noted(NotInDrawing, nil)
	if folder == "" {
		p.fail(Done, lacks) // the drawing is on standard output
	} else if status == Done {
		fmt.Fprintln(p.Stdout, p.words.Say(lacks))
	}
	return status
}

var diffCommand = command{
	name:    "diff",
	operand: patternFile,
	build: func(flags *pflag.FlagSet) runner {
		draw := flags.Bool("draw", false, "draw the newer one, with a letter at each difference")
		printing := flag.AddPrint(flags, render.PDF)
		return func(p *Program, args []string) Status {
			ask, err := printing.ChosenFor(*draw, flag.NeedsOther, "draw", "format", "paper", "landscape", "dpi", "out")
			if len(args) != 2 {
				err = cmp.Or(error(finding.Failed(TwoFiles, nil)), err)
			}
			if err = cmp.Or(err, checkFiles(args)); err != nil {
				return p.misuse(err)
			}
			var made [2]plan.Plan
			for i, name := range args {
				var status Status
				if made[i], status = p.loadPlaces(name, "", ""); status != Done {
					return status
				}
			}
			return p.diff(made[0], made[1], *draw, ask, printing)
		}
	},
}

func (p *Program) diff(before, after plan.Plan, draw bool, ask job.Printing, printing flag.Print) Status {
	found := revision.Between(before, after)
	var written []string
	if draw {
		p.keepSmall(after, ask)
		drawn, notes, err := job.Differences(before, after, ask)
		if err != nil {
			return p.fail(Wrong, err)
		}
		p.warn(notes)
		if written, err = files.Write(*printing.Folder, drawn); err != nil {
			return p.fail(Failed, err)
		}
	}
	if *printing.AsJSON {
		return p.printJSON(report.DifferencesJSON(p.words, found, written))
	}
	if len(found) == 0 {
		found = []finding.Finding{finding.Noted(revision.Nothing, nil)}
	}
	for _, one := range found {
		fmt.Fprintln(p.Stdout, p.words.Say(one))
	}
	p.printPaths(written)
	return Done
}
