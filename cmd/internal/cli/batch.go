package cli

import (
	"fmt"
	"slices"
	"strings"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/machine"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
	"drawdown/render/sheet/card"
	"drawdown/sequence/plan"
)

// batch is the card of every pattern of many.
type batch struct {
	side     card.Sides
	ways     wayFlags
	print    job.Printing
	folder   string
	atATime  int
	patterns []*batchPattern // in the order of the command line
}

// batchPattern is one of them, and what has come of it.
type batchPattern struct {
	file     string
	made     plan.Plan
	problems problem.List
	notes    []string
	paths    []string
	err      error // what went wrong beside the problems
	status   Status
}

// cards draws all cards. One that fails leaves the others alone; the status is
// the worst of all.
func (p *Program) cards(b batch, asJSON bool) Status {
	bar := machine.NewProgress(p.Stderr, 2*len(b.patterns))
	b.load(p, bar)
	if err := b.sameName(); err != nil {
		bar.Clear()
		return p.fail(Wrong, err)
	}
	b.draw(bar)
	bar.Clear()
	worst := Done
	for _, one := range b.patterns {
		worst = max(worst, one.status)
		p.reportCard(one)
	}
	p.reportFailed(b.patterns)
	if asJSON {
		return max(worst, p.printJSON(p.batchJSON(b.patterns)))
	}
	for _, one := range b.patterns {
		p.printPaths(one.paths)
	}
	return worst
}

// load reads and plans every pattern.
func (b batch) load(p *Program, bar *machine.Progress) {
	job.Together(len(b.patterns), b.atATime, func(k int) {
		one := b.patterns[k]
		made, problems, err := job.Load(one.file, p.Stdin, *b.ways.way, *b.ways.turn)
		one.made, one.problems = made, problems
		switch {
		case err != nil:
			one.status, one.err = whyUnread(one.file, err)
		case problems.Stops():
			one.status = Wrong
		}
	}, bar.Done)
}

// sameName finds patterns that would write over each other's cards, also where
// the disk takes capital and small letters for the same.
func (b batch) sameName() error {
	by := map[string][]string{}
	var names []string
	for _, one := range b.patterns {
		if one.status != Done {
			continue
		}
		name := strings.ToLower(one.made.Name)
		if by[name] = append(by[name], one.file); len(by[name]) == 2 {
			names = append(names, name)
		}
	}
	if len(names) == 0 {
		return nil
	}
	var clashes []finding.Finding
	for _, name := range names {
		clashes = append(clashes, finding.Failed(SameCard, finding.Values{"patterns": by[name], "name": name}))
	}
	return finding.Failed(SameName, finding.Values{"clashes": clashes})
}

// draw draws and writes the card of every sound pattern. What is written needs
// no more memory.
func (b batch) draw(bar *machine.Progress) {
	job.Together(len(b.patterns), b.atATime, func(k int) {
		one := b.patterns[k]
		if one.status != Done {
			return
		}
		drawn, notes, err := job.Card(one.made, b.side, b.print)
		one.notes = notes
		if err != nil {
			one.status, one.err = Wrong, err
			return
		}
		if one.paths, err = files.Write(b.folder, drawn); err != nil {
			one.status, one.err, one.paths = Failed, err, nil
		}
	}, func(done int) { bar.Done(len(b.patterns) + done) })
}

// reportCard tells what a pattern has to be mended of. What stopped it beside
// its problems stands in the summary.
func (p *Program) reportCard(one *batchPattern) {
	p.report(one.problems)
	p.reportTo(p.Stderr).Warn(one.file, one.notes)
}

// reportFailed sums up, where anything failed.
func (p *Program) reportFailed(all []*batchPattern) {
	failed := slices.DeleteFunc(slices.Clone(all), func(one *batchPattern) bool { return one.status == Done })
	if len(failed) == 0 {
		return
	}
	fmt.Fprintf(p.Stderr, "drawdown: %s\n", p.words.Say(finding.Warned(BatchFailed, finding.Values{"failed": len(failed), "n": len(all), "drawn": len(all) - len(failed)})))
	for _, one := range failed {
		fmt.Fprintf(p.Stderr, "  %s: %s\n", one.file, p.words.Error(one.why()))
	}
}

// why is why a card was not drawn, in short.
func (one *batchPattern) why() error {
	if one.err != nil {
		return one.err
	}
	errors := 0
	for _, found := range one.problems {
		if found.Severity == problem.Error {
			errors++
		}
	}
	return finding.Failed(ErrorsInFile, finding.Values{"n": errors})
}

// batchOut is what card --json prints for many patterns.
type batchOut struct {
	Drawn  int       `json:"drawn"`
	Failed int       `json:"failed"`
	Cards  []cardOut `json:"cards"` // in the order of the command line
}

// cardOut is what came of one of them.
type cardOut struct {
	Pattern  string       `json:"pattern"`
	Status   Status       `json:"status"` // as the exit status for it alone
	Files    []string     `json:"files"`
	Warnings []string     `json:"warnings"`
	Problems problem.List `json:"problems"`
	Error    string       `json:"error,omitempty"` // what went wrong beside the problems
}

func (p *Program) batchJSON(all []*batchPattern) batchOut {
	out := batchOut{Cards: []cardOut{}}
	for _, one := range all {
		c := cardOut{
			Pattern: one.file, Status: one.status, Files: report.Listed(one.paths),
			Warnings: report.Listed(one.notes), Problems: p.said(one.problems),
		}
		if one.err != nil {
			c.Error = p.words.Error(one.err)
		}
		if one.status == Done {
			out.Drawn++
		} else {
			out.Failed++
		}
		out.Cards = append(out.Cards, c)
	}
	return out
}
