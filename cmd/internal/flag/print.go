package flag

import (
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
	"drawdown/render"
	"drawdown/render/sheet"
	"drawdown/render/words"
)

// Print holds the flags of every command that draws sheets.
type Print struct {
	Flags     *pflag.FlagSet
	formats   *[]render.Format
	paper     *string
	landscape *bool
	dpi       *int
	Folder    *string
	AsJSON    *bool
}

// AddPrint adds them; formats are the default formats.
func AddPrint(flags *pflag.FlagSet, formats ...render.Format) Print {
	p := AddPrintOneWay(flags, formats...)
	p.landscape = flags.Bool("landscape", false, "print landscape")
	return p
}

// AddPrintOneWay adds the flags of a sheet that is always landscape.
func AddPrintOneWay(flags *pflag.FlagSet, formats ...render.Format) Print {
	p := Print{
		Flags:     flags,
		formats:   List(flags, "format", formats, render.Formats, "one or more `formats`, separated by commas: "),
		paper:     Paper(flags),
		landscape: new(true),
	}
	Language(flags)
	p.dpi = flags.Int("dpi", 300, "`dots` per inch of PNG pictures")
	p.Folder = Out(flags, "out", OutUsage)
	p.AsJSON = JSON(flags)
	return p
}

// Paper adds the flag of commands that draw on paper.
func Paper(flags *pflag.FlagSet) *string {
	return Choice(flags, "paper", "a4", sheet.PaperNames(), "`size` of the paper, one of ")
}

// OutUsage is the usage text of the output folder for most commands.
const OutUsage = "`folder` to write to; created if missing"

// Chosen returns what the flags ask for, or an error about them.
func (f Print) Chosen() (ask job.Printing, err error) {
	if ask.Paper, err = paperFor(*f.Folder, *f.paper, *f.landscape); err != nil {
		return ask, err
	}
	ask.Words, ask.Formats, ask.DPI = Words(f.Flags), *f.formats, *f.dpi
	return ask, render.CheckDPI(ask.DPI, ask.Paper.Width, ask.Paper.Height)
}

// paperFor returns the paper of a name, in landscape if requested, and refuses
// the same folders as files.CheckFolder.
func paperFor(folder, name string, landscape bool) (sheet.Paper, error) {
	if err := files.CheckFolder(folder); err != nil {
		return sheet.Paper{}, err
	}
	paper, err := sheet.FindPaper(name)
	if err == nil && landscape {
		paper = paper.Landscape()
	}
	return paper, err
}

// ChosenFor returns what the flags ask for if sheets are drawn. If none are
// drawn, a flag for sheets is an error, since it would have no effect. The code
// states how sheets are asked for, by which other flag.
func (f Print) ChosenFor(sheets bool, code finding.Code, other string, forSheets ...string) (job.Printing, error) {
	for _, name := range forSheets {
		if !sheets && f.Flags.Changed(name) {
			return job.Printing{}, finding.Failed(code, finding.Values{"flag": name, "other": other})
		}
	}
	return f.Chosen()
}

// language is a flag whose value is the tag of a language.
type language struct{ words *words.Catalogue }

func (l *language) String() string {
	if l.words == nil {
		return "" // pflag asks for the zero value
	}
	return l.words.Language
}

func (l *language) Type() string { return "string" }

func (l *language) Set(tag string) error {
	found, err := words.Find(tag)
	if err != nil {
		return Unknown("lang", tag, words.Languages())
	}
	l.words = found
	return nil
}

// Language adds the flag of every command that prints words.
func Language(flags *pflag.FlagSet) {
	flags.Var(&language{words.English()}, "lang", "`language` of the printed words, one of "+strings.Join(words.Languages(), ", "))
	Offer(flags, "lang", words.Languages()...)
}

// Words returns the catalogue of the requested language; English by default.
func Words(flags *pflag.FlagSet) *words.Catalogue {
	if f := flags.Lookup("lang"); f != nil {
		return f.Value.(*language).words
	}
	return words.English()
}
