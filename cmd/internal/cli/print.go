package cli

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/job"
	"drawdown/render"
	"drawdown/render/sheet"
	"drawdown/render/words"
)

// printFlags are the flags of every command that draws sheets.
type printFlags struct {
	flags                    *pflag.FlagSet
	formats, paper, language *string
	landscape                *bool
	dpi                      *int
	folder                   *string
	asJSON                   *bool
}

// addPrintFlags adds them; formats are those written where none are asked for.
func addPrintFlags(flags *pflag.FlagSet, formats string) printFlags {
	return printFlags{
		flags:     flags,
		formats:   flags.String("format", formats, "one or more `formats`, with commas between: "+choices(render.Formats)),
		paper:     paperFlag(flags),
		landscape: flags.Bool("landscape", false, "lay the paper on its side"),
		language:  languageFlag(flags),
		dpi:       flags.Int("dpi", 300, "`dots` per inch of PNG pictures"),
		folder:    outFlag(flags),
		asJSON:    jsonFlag(flags),
	}
}

func paperFlag(flags *pflag.FlagSet) *string {
	return flags.String("paper", "a4", "`size` of the paper, one of "+strings.Join(sheet.PaperNames(), ", "))
}

// languageFlag adds the flag of commands that print words.
func languageFlag(flags *pflag.FlagSet) *string {
	return flags.String("lang", words.English().Language, "`language` of the printed words, one of "+strings.Join(words.Languages(), ", "))
}

// chosen gives what the flags ask for, or what is wrong with them.
func (f printFlags) chosen() (ask job.Printing, err error) {
	if err := checkFolder(*f.folder); err != nil {
		return ask, err
	}
	if ask.Paper, err = sheet.FindPaper(*f.paper); err != nil {
		return ask, err
	}
	if *f.landscape {
		ask.Paper = ask.Paper.Landscape()
	}
	if ask.Words, err = words.Find(*f.language); err != nil {
		return ask, err
	}
	for _, name := range strings.Split(*f.formats, ",") {
		format, err := render.FindFormat(name)
		if err != nil {
			return ask, err
		}
		if !slices.Contains(ask.Formats, format) {
			ask.Formats = append(ask.Formats, format)
		}
	}
	ask.DPI = *f.dpi
	return ask, render.CheckDPI(ask.DPI, ask.Paper.Width, ask.Paper.Height)
}

// sheetFlags are those that say something of sheets only.
var sheetFlags = []string{"format", "paper", "landscape", "lang", "dpi", "out"}

// chosenFor gives what the flags ask for where sheets are drawn. Where none are,
// a flag for them is a slip: nothing would come of it. The advice says, behind
// the flag's name, how sheets are asked for.
func (f printFlags) chosenFor(sheets bool, advice string) (job.Printing, error) {
	for _, name := range sheetFlags {
		if !sheets && f.flags.Changed(name) {
			return job.Printing{}, fmt.Errorf("--%s %s", name, advice)
		}
	}
	return f.chosen()
}

// deliver writes the files that a job has drawn, tells their paths, and warns
// of what the notes say.
func (p *Program) deliver(files []render.File, notes []string, f printFlags) Status {
	p.warn(notes)
	paths, err := writeFiles(*f.folder, files)
	if err != nil {
		return p.fail(Failed, err)
	}
	if *f.asJSON {
		return p.printJSON(struct {
			Files    []string `json:"files"`
			Warnings []string `json:"warnings"`
		}{paths, append([]string{}, notes...)})
	}
	for _, path := range paths {
		fmt.Fprintln(p.Stdout, path)
	}
	return Done
}

// warn tells what a job could not do as asked.
func (p *Program) warn(notes []string) {
	for _, note := range notes {
		fmt.Fprintf(p.Stderr, "drawdown: warning: %s\n", note)
	}
}
