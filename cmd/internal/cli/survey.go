package cli

import (
	"fmt"
	"os"
	"path/filepath"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/job"
	"drawdown/patterns"
	"drawdown/render"
)

var surveyCommand = command{
	name:    "survey",
	summary: "find hole positions from distances measured with a caliper",
	usage:   "FILE [-o FOLDER] [--unfinished] [--json]",
	operand: surveyFile,
	about: `FILE lists the holes and the distances between them:
  drawdown: 1
  title: Pump cover, measured
  units: mm
  holes: {A: 8.4, B: 8.4, C: 8.4}         # diameters, or only a list: [A, B, C]
                                          # {1-12: 6.6, 13-14: 8.4} for many
  measured:
    - [A, B, 95.02]                       # centre to centre
    - {from: A, to: C, outside: 142.10}   # over the far edges
    - {from: B, to: C, inside: 120.35}    # between the near edges
  level: [A, B]                           # drawn level, A on the left
  up: C                                   # above that line; or down: C
  accuracy: 0.05                          # of one reading

The places fit all readings best (least squares); A of level is at [0, 0]. Each
hole has its standard error. A reading that does not fit the others is named
and left out. Holes that the readings do not fix are named, with what to measure
next; then the status is 1 and no file is written, unless --unfinished asks for
it: the file lacks them, and the card says so.
Measure each hole to four others or more, across the part too: then one wrong
reading is found. With -o a pattern file is written, ready for drawdown card;
short ids stand on the card as marks on the part.`,
	example: `
drawdown survey p4-pump-cover -o out
    Pump cover, measured: 6 holes, 15 readings
    wrong: B to D is 0.94 mm too long; it is left out, measure it again
    ...
    all holes lie within 0.06 mm of a 3 × 2 grid at 72 × 84 mm
    out/p4-pump-cover.yaml
`,
	build: func(flags *pflag.FlagSet) runner {
		folder := flags.StringP("out", "o", "", "`folder` to write the pattern file to")
		start := flags.Bool("example", false, "print a survey file to start from")
		unfinished := flags.Bool("unfinished", false, "allow holes that the readings do not fix: the file goes without them")
		asJSON := jsonFlag(flags)
		return func(p *Program, args []string) Status {
			if *start {
				return p.surveyExample(args)
			}
			file, err := oneSource(args, "survey", "a file", patterns.BuiltinSurveys()[0])
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

// oneSource gives the one file of some kind that a command reads.
func oneSource(args []string, kind, file, builtin string) (string, error) {
	switch {
	case len(args) > 1:
		return "", fmt.Errorf("one %s at a time: %q is one too many", kind, args[1])
	case len(args) == 0 || args[0] == "":
		return "", fmt.Errorf("which %s? Name %s, a built-in one such as %s, or - for standard input", kind, file, builtin)
	}
	return args[0], nil
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
	if status, stop := p.stopped(file, problems, err); stop {
		return status
	}
	if len(answer.Loose) > 0 && !unfinished {
		return p.surveyLacks(answer, asJSON)
	}
	written := ""
	if folder != "" {
		if err := sparesSource(folder, answer.Pattern, file, "survey"); err != nil {
			return p.fail(Wrong, err)
		}
		paths, err := writeFiles(folder, []render.File{answer.Pattern})
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

// sparesSource refuses to write the pattern over the file of some kind that was
// read.
func sparesSource(folder string, pattern render.File, source, kind string) error {
	path := filepath.Join(folder, pattern.Name)
	there, err := os.Stat(path)
	if err != nil {
		return nil
	}
	if read, err := os.Stat(source); err == nil && os.SameFile(there, read) {
		return fmt.Errorf("%s is the %s itself, and the pattern would take its place; name another folder with --out", filepath.ToSlash(path), kind)
	}
	return nil
}
