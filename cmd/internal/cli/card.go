package cli

import (
	"cmp"
	"fmt"
	"runtime"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/machine"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
	"drawdown/render"
	"drawdown/render/sheet/card"
	"drawdown/sequence/plan"
)

var cardCommand = command{
	name:    "card",
	operand: patternFile,
	build: func(flags *pflag.FlagSet) runner {
		side := flag.Choice(flags, "side", card.BothSides, card.SideChoices, "`side` of the card, one of ")
		ways := addWayFlags(flags)
		printing := flag.AddPrint(flags, render.PDF, render.PNG)
		jobs := flags.Int("jobs", 0, "`count` of patterns to draw at the same time; default: one per core")
		return func(p *Program, args []string) Status {
			ask, err := printing.Chosen()
			if err == nil {
				err = checkFiles(args)
			}
			if !flags.Changed("jobs") {
				*jobs = runtime.GOMAXPROCS(0)
			}
			if err == nil && *jobs < 1 {
				err = finding.Failed(flag.AboveZero, finding.Values{"flag": "jobs", "written": fmt.Sprint(*jobs)})
			}
			if err != nil {
				return p.misuse(err)
			}
			if areMany(args) {
				if args, err = cardFiles(args); err != nil {
					return p.fail(Wrong, err)
				}
				b := batch{side: *side, ways: ways, print: ask, folder: *printing.Folder, atATime: *jobs}
				return p.cards(b, args, *printing.AsJSON)
			}
			made, _, status := p.load(args[0], *ways.way, *ways.turn)
			if status != Done {
				return status
			}
			return p.draw(made, ask, printing, func(made plan.Plan, ask job.Printing) ([]render.File, []string, error) {
				return job.Card(made, *side, ask)
			})
		}
	},
}

// batch is one card for each of several patterns.
type batch struct {
	side     card.Sides
	ways     wayFlags
	print    job.Printing
	folder   string
	atATime  int
	patterns []*batchPattern // in command-line order
}

// batchPattern is one of the patterns and its result.
type batchPattern struct {
	File     string       `json:"pattern"`
	Status   Status       `json:"status"` // like the exit status for it alone
	Paths    []string     `json:"files"`
	Notes    []string     `json:"warnings"`
	Problems problem.List `json:"problems"`
	Error    string       `json:"error,omitempty"` // what went wrong besides the problems
	made     plan.Plan
}

// batchOut is the output of card --json for several patterns.
type batchOut struct {
	Drawn  int             `json:"drawn"`
	Failed int             `json:"failed"`
	Cards  []*batchPattern `json:"cards"` // in command-line order
}

// cards draws all cards. One that fails does not stop the others; the status is
// the worst of all.
func (p *Program) cards(b batch, names []string, asJSON bool) Status {
	for _, name := range names {
		b.patterns = append(b.patterns, &batchPattern{File: name, Paths: []string{}, Notes: []string{}})
	}
	bar := machine.NewProgress(p.Stderr, 2*len(b.patterns))
	b.load(p, bar)
	b.tellApart()
	if err := b.sameName(); err != nil {
		bar.Clear()
		return p.fail(Wrong, err)
	}
	b.draw(p, bar)
	bar.Clear()
	worst, out := Done, batchOut{Cards: b.patterns}
	for _, one := range b.patterns {
		worst = max(worst, one.Status)
		if one.Status == Done {
			out.Drawn++
		} else {
			out.Failed++
		}
		// The summary says what else stopped it.
		p.report(one.Problems.WithoutNotes())
		p.reportTo(p.Stderr).Warn(one.File, one.Notes)
		one.Problems = p.said(one.Problems)
	}
	p.reportFailed(out)
	if asJSON {
		return max(worst, p.printJSON(out))
	}
	for _, one := range b.patterns {
		p.printPaths(one.Paths)
	}
	return worst
}

// fail records what went wrong with a pattern besides its problems.
func (one *batchPattern) fail(p *Program, status Status, err error) {
	one.Status, one.Error = status, p.words.Error(err)
}

func (b batch) load(p *Program, bar *machine.Progress) {
	job.Together(len(b.patterns), b.atATime, func(k int) {
		one := b.patterns[k]
		made, problems, err := p.planned(one.File, *b.ways.way, *b.ways.turn)
		one.made, one.Problems = made, problems
		if err != nil {
			status, why := whyUnread(one.File, err)
			one.fail(p, status, why)
		} else if problems.Stops() {
			one.Status = Wrong
		}
	}, bar.Done)
}

// cardFiles returns the patterns that the arguments name: those of a folder and
// its subfolders, by name.
func cardFiles(args []string) (names []string, err error) {
	for _, arg := range args {
		inside := []string{arg}
		if job.IsFolder(arg) {
			if inside, err = job.PatternsIn(arg); err == nil && len(inside) == 0 {
				err = finding.Failed(EmptyFolder, finding.Values{"folder": arg, "allowed": []string{".yaml", ".yml"}})
			}
		}
		if err != nil {
			return nil, err
		}
		names = append(names, inside...)
	}
	return names, nil
}

// tellApart names the cards of different folders apart.
func (b batch) tellApart() {
	var files []string
	var plans []job.Shelved
	for _, one := range b.patterns {
		files, plans = append(files, one.File), append(plans, job.Shelved{Plan: one.made})
	}
	for k, stem := range job.TellApart(files, plans) {
		b.patterns[k].made.Name = stem
	}
}

// sameName finds patterns that would overwrite each other's cards, also on a
// disk that ignores case.
func (b batch) sameName() error {
	by := map[string][]string{}
	var names []string
	for _, one := range b.patterns {
		if one.Status != Done {
			continue
		}
		name := strings.ToLower(one.made.Name)
		if by[name] = append(by[name], one.File); len(by[name]) == 2 {
			names = append(names, name)
		}
	}
	var clashes []finding.Finding
	for _, name := range names {
		clashes = append(clashes, finding.Failed(SameCard, finding.Values{"patterns": by[name], "name": name}))
	}
	if len(clashes) == 0 {
		return nil
	}
	return finding.Failed(SameName, finding.Values{"clashes": clashes})
}

// draw draws and writes the card of every sound pattern. A written card is
// released from memory.
func (b batch) draw(p *Program, bar *machine.Progress) {
	job.Together(len(b.patterns), b.atATime, func(k int) {
		one := b.patterns[k]
		if one.Status != Done {
			return
		}
		drawn, notes, err := job.Card(one.made, b.side, b.print)
		one.Notes = report.Listed(notes)
		if err != nil {
			one.fail(p, Wrong, err)
			return
		}
		paths, err := files.Write(b.folder, drawn)
		if err != nil {
			one.fail(p, Failed, err)
			return
		}
		one.Paths = report.Listed(paths)
	}, func(done int) { bar.Done(len(b.patterns) + done) })
}

// reportFailed sums up if anything failed.
func (p *Program) reportFailed(out batchOut) {
	if out.Failed == 0 {
		return
	}
	fmt.Fprintf(p.Stderr, "drawdown: %s\n", p.words.Say(finding.Warned(BatchFailed, finding.Values{"failed": out.Failed, "n": len(out.Cards), "drawn": out.Drawn})))
	for _, one := range out.Cards {
		if one.Status != Done {
			fmt.Fprintf(p.Stderr, "  %s: %s\n", one.File, cmp.Or(one.Error, p.errorsIn(one.Problems)))
		}
	}
}

func (p *Program) errorsIn(problems problem.List) string {
	errors := 0
	for _, found := range problems {
		if found.Severity == problem.Error {
			errors++
		}
	}
	return p.words.Error(finding.Failed(ErrorsInFile, finding.Values{"n": errors}))
}
