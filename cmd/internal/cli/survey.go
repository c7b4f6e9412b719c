package cli

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/patterns"
	"drawdown/render"
)

var surveyCommand = command{
	name:    "survey",
	operand: surveyFile,
	build: func(flags *pflag.FlagSet) runner {
		folder := flag.Out(flags, "", "`folder` to write the pattern file to")
		start := flags.Bool("example", false, "print a survey file to start from")
		unfinished := flags.Bool("unfinished", false, "allow holes that the readings do not fix: the file goes without them")
		flag.Language(flags)
		asJSON := flag.JSON(flags)
		return func(p *Program, args []string) Status {
			if *start {
				return p.surveyExample(args)
			}
			file, err := oneFile(args)
			if err != nil && len(args) == 0 {
				err = errors.New("which survey? Name a file, a built-in one such as p4-pump-cover, or - for standard input")
			}
			if err == nil && flags.Changed("out") {
				err = checkFolder(*folder)
			}
			if err != nil {
				return p.misuse("survey", "%v", err)
			}
			return p.survey(file, *folder, *unfinished, *asJSON)
		}
	},
}

func (p *Program) surveyExample(args []string) Status {
	if len(args) > 0 {
		return p.misuse("survey", "--example takes no file: %q is one too many", args[0])
	}
	text, _ := patterns.BuiltinSurveyText(patterns.BuiltinSurveys()[0])
	p.Stdout.Write(text) // the output keeps the error
	return Done
}

func (p *Program) survey(file, folder string, unfinished, asJSON bool) Status {
	answer, problems, err := job.Survey(file, p.Stdin)
	if err != nil {
		return p.unread(file, err)
	}
	p.report(problems)
	if problems.Stops() {
		return Wrong
	}
	if len(answer.Loose) > 0 && !unfinished {
		return p.surveyLacks(answer, asJSON)
	}
	written := ""
	if folder != "" {
		name, data := answer.Pattern()
		if err := sparesSource(filepath.Join(folder, name), file); err != nil {
			return p.fail(Wrong, err)
		}
		paths, err := writeFiles(folder, []render.File{{Name: name, Data: data}})
		if err != nil {
			return p.fail(Failed, err)
		}
		written = paths[0]
	}
	if asJSON {
		return p.printJSON(surveyJSON(answer, written))
	}
	printSurvey(p.Stdout, answer)
	if written != "" {
		fmt.Fprintln(p.Stdout, written)
	}
	return Done
}

// surveyLacks reports a survey that does not fix all holes, and writes nothing:
// a card made from it would lack bolts.
func (p *Program) surveyLacks(answer job.SurveyAnswer, asJSON bool) Status {
	if asJSON {
		return max(Wrong, p.printJSON(surveyJSON(answer, "")))
	}
	printSurvey(p.Stderr, answer)
	fmt.Fprintf(p.Stderr, "drawdown: %s not fixed, and no file is made; measure as it says above, or go on with what there is: --unfinished\n",
		counted(len(answer.Loose), "hole"))
	return Wrong
}

// sparesSource refuses to write over the file that was read.
func sparesSource(path, source string) error {
	there, err := os.Stat(path)
	if err != nil {
		return nil
	}
	if read, err := os.Stat(source); err == nil && os.SameFile(there, read) {
		return fmt.Errorf("%s is the survey itself, and the pattern would take its place; name another folder with --out", filepath.ToSlash(path))
	}
	return nil
}
