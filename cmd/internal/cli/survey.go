package cli

import (
	"cmp"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/patterns/writing"
	"drawdown/render"
)

var surveyCommand = command{
	name:    "survey",
	operand: surveyFile,
	build: func(flags *pflag.FlagSet) runner {
		printing := flag.AddPrint(flags, render.PDF)
		sheet := flags.Bool("sheet", false, "draw a sheet to write the readings on, instead")
		start := flags.Bool("example", false, "print a survey file to start from")
		unfinished := flags.Bool("unfinished", false, "write the file without the holes that the readings do not locate")
		replace := addReplace(flags, replaceUsage)
		return func(p *Program, args []string) Status {
			if *start {
				text, _ := patterns.Surveys.Text(patterns.Surveys.Names()[0])
				return p.example(args, text)
			}
			file, err := oneSource(args, "survey", patterns.Surveys.Names()[0])
			ask, errPrinting := printing.ChosenFor(*sheet, flag.NeedsOther, "sheet", "format", "paper", "landscape", "dpi")
			if *sheet && (*unfinished || *replace) {
				errPrinting = flag.Misused(SaysNothing, finding.Values{"flag": changed(flags, []string{"unfinished", "replace"}), "other": "sheet"})
			}
			if err := cmp.Or(err, errPrinting); err != nil {
				return p.misuse(err)
			}
			if *sheet {
				return p.surveySheet(file, ask, printing)
			}
			folder := ""
			if flags.Changed("out") {
				folder = *printing.Folder
			}
			return p.survey(file, folder, *unfinished, *printing.AsJSON, *replace)
		}
	},
}

// surveySheet draws the sheet that the readings are written on.
func (p *Program) surveySheet(file string, ask job.Printing, printing flag.Print) Status {
	drawn, notes, problems, err := job.SurveySheet(file, p.Stdin, ask)
	if status := p.stopped(file, problems, err); status != Done {
		return status
	}
	return p.deliver(drawn, notes, printing)
}

func (p *Program) survey(file, folder string, unfinished, asJSON, replace bool) Status {
	answer, problems, err := job.Survey(file, p.Stdin, p.words)
	if status := p.stopped(file, problems, err); status != Done {
		return status
	}
	status, to := Done, p.Stdout
	lacks := len(answer.Loose) > 0 && !unfinished // a card made from it would lack bolts
	if lacks {
		status, to = Wrong, p.Stderr
	}
	var written []string
	if folder != "" && !lacks {
		if err := cmp.Or(sparesSource(folder, answer.Pattern, file, "survey"), sparesEdited(folder, answer.Pattern.Name, replace)); err != nil {
			return p.fail(Wrong, err)
		}
		if written, err = files.Write(folder, []render.File{answer.Pattern}); err != nil {
			return p.fail(Failed, err)
		}
	}
	if asJSON {
		return max(status, p.printJSON(report.SurveyJSON(p.words, answer, strings.Join(written, ""))))
	}
	p.reportTo(to).Survey(answer)
	if lacks {
		p.reportTo(to).SurveyLacks(len(answer.Loose))
	}
	p.printPaths(written)
	return status
}

// sparesSource rejects writing the pattern over the file that was read.
func sparesSource(folder string, pattern render.File, source, sort string) error {
	path := filepath.Join(folder, pattern.Name)
	there, err := os.Stat(path)
	if err != nil {
		return nil
	}
	if read, err := os.Stat(source); err == nil && os.SameFile(there, read) {
		return finding.Failed(OverItself, finding.Values{"path": filepath.ToSlash(path), "sort": sort})
	}
	return nil
}

func addReplace(flags *pflag.FlagSet, usage string) *bool { return flags.Bool("replace", false, usage) }

const replaceUsage = "overwrite the pattern file even if it was edited"

// sparesEdited refuses to write over a pattern file that somebody has edited.
func sparesEdited(folder, name string, replace bool) error {
	path := filepath.Join(folder, name)
	data, err := os.ReadFile(path)
	switch {
	case replace || errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil || writing.Untouched(data): // what cannot be read, the writer reports
		return nil
	}
	return finding.Failed(EditedFile, finding.Values{"path": filepath.ToSlash(path)})
}
