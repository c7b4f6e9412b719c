package cli

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"unicode"
	"unicode/utf8"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/machine"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/render"
	"drawdown/sequence/exercise"
	"drawdown/sequence/plan"
)

var handoutCommand = command{
	name:    "handout",
	operand: patternFile,
	build: func(flags *pflag.FlagSet) runner {
		var ask job.HandoutRequest
		parts := flag.List(flags, "make", []job.HandoutPart{job.HandoutSheets, job.HandoutKey}, job.HandoutParts, "what to `make`, separated by commas: ")
		flags.BoolVar(&ask.Loosening, "loosen", false, "use the loosening order")
		mark := flags.String("mark", "", "mark the answers of a class in this `table` (CSV)")
		flags.IntVar(&ask.Layouts, "layouts", 0, fmt.Sprintf("`number` of made-up parts, 1 to %d, instead of the file's part", exercise.Most))
		flags.Uint64Var(&ask.Seed, "seed", 1, "whole `number` that selects the made-up parts")
		printing := flag.AddPrint(flags, render.PDF)
		return func(p *Program, args []string) Status {
			err := checkHandout(flags, ask, *mark)
			if err == nil {
				ask.Printing, err = printing.Chosen()
			}
			file, errFile := oneFile(args)
			if err := cmp.Or(err, errFile); err != nil {
				return p.misuse(err)
			}
			if file == "-" && *mark == "-" {
				return p.misuse(finding.Failed(OneInputOnly, nil))
			}
			made, _, status := p.load(file, "", "")
			if status != Done {
				return status
			}
			if *mark != "" {
				return p.grade(made, ask, *mark, printing)
			}
			ask.Parts = *parts
			done := machine.Waiting(p.Stderr)
			files, notes, err := job.Handout(made, ask)
			done()
			if err != nil {
				return p.fail(Wrong, err)
			}
			return p.deliver(files, p.words.SayAll(notes), printing)
		}
	},
}

// checkHandout checks the command's own flags.
func checkHandout(flags *pflag.FlagSet, ask job.HandoutRequest, mark string) error {
	switch {
	case flags.Changed("mark") && mark == "":
		return finding.Failed(TableNotNamed, nil)
	case flags.Changed("mark") && flags.Changed("make"):
		return finding.Failed(GradeOrMake, nil)
	case flags.Changed("layouts") && (ask.Layouts < 1 || ask.Layouts > exercise.Most):
		return finding.Failed(exercise.HowMany, finding.Values{"count": ask.Layouts, "most": exercise.Most})
	case flags.Changed("seed") && ask.Layouts == 0:
		return finding.Failed(SeedAlone, nil)
	}
	return nil
}

// grade grades a table of answers: it prints a line per student, and writes the
// graded sheets and the summary of the class.
func (p *Program) grade(made plan.Plan, ask job.HandoutRequest, table string, f flag.Print) Status {
	graded, problems, err := job.Grade(made, ask, table, p.Stdin)
	if errors.Is(err, fs.ErrNotExist) {
		return p.fail(Wrong, finding.Failed(NoTable, finding.Values{"file": table}))
	}
	if status := p.stopped(table, problems, err); status != Done {
		return status
	}
	if job.OfOtherParts(graded) {
		p.warn([]string{p.words.Say(finding.Warned(OfOtherParts, finding.Values{"layouts": ask.Layouts, "seed": fmt.Sprint(ask.Seed)}))})
	}
	papers, err := job.GradedSheets(made, ask, graded)
	if err != nil {
		return p.fail(Wrong, err)
	}
	paths, err := files.Write(*f.Folder, papers)
	if err != nil {
		return p.fail(Failed, err)
	}
	if *f.AsJSON {
		return p.printJSON(report.GradedJSON(p.words, graded, paths))
	}
	for _, g := range graded {
		code := AnswerGraded
		if g.Outcome == exercise.Unread {
			code = AnswerUnread
		}
		fmt.Fprintln(p.Stdout, p.words.Say(finding.Noted(code, finding.Values{
			"student": g.Student, "sheet": fmt.Sprint(g.Answer.Sheet), "line": fmt.Sprint(g.Line), "outcome": p.outcome(g),
		})))
		if code == AnswerUnread {
			fmt.Fprintf(p.Stdout, "    %s\n", p.words.Value(g.Answer.Unread, ""))
		}
		for _, finding := range g.ToMend() {
			fmt.Fprintf(p.Stdout, "    %s\n", p.words.Say(finding.Found()))
		}
	}
	p.printPaths(paths)
	return Done
}

// outcome sums up an answer in a word or two, as on the sheets.
func (p *Program) outcome(g job.Graded) string {
	outcome := p.words.Handout.Graded.Outcomes[string(g.Outcome)]
	first, size := utf8.DecodeRuneInString(outcome)
	return string(unicode.ToLower(first)) + outcome[size:]
}
