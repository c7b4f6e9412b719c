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

// Print is the flags of every command that draws sheets.
type Print struct {
	Flags     *pflag.FlagSet
	formats   *[]render.Format
	paper     *string
	landscape *bool
	dpi       *int
	Folder    *string
	AsJSON    *bool
}

// AddPrint adds them; formats are those written where none are asked for.
func AddPrint(flags *pflag.FlagSet, formats ...render.Format) Print {
	p := Print{
		Flags:     flags,
		formats:   List(flags, "format", formats, render.Formats, "one or more `formats`, separated by commas: "),
		paper:     Paper(flags),
		landscape: flags.Bool("landscape", false, "print landscape"),
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

// OutUsage is what most commands say of the folder to write to.
const OutUsage = "`folder` to write to; created if missing"

// Chosen returns what the flags ask for, or what is wrong with them.
func (f Print) Chosen() (ask job.Printing, err error) {
	if ask.Paper, err = paperFor(*f.Folder, *f.paper, *f.landscape); err != nil {
		return ask, err
	}
	ask.Words, ask.Formats, ask.DPI = Words(f.Flags), *f.formats, *f.dpi
	return ask, render.CheckDPI(ask.DPI, ask.Paper.Width, ask.Paper.Height)
}

// paperFor returns the paper of a name, on its side where that is asked for, and
// refuses a folder that files.CheckFolder does.
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

// ChosenFor returns what the flags ask for where sheets are drawn. Where none are,
// a flag that is for sheets is a slip: nothing would come of it. The code says of
// the flag how sheets are asked for, by which other flag.
func (f Print) ChosenFor(sheets bool, code finding.Code, other string, forSheets ...string) (job.Printing, error) {
	for _, name := range forSheets {
		if !sheets && f.Flags.Changed(name) {
			return job.Printing{}, finding.Failed(code, finding.Values{"flag": name, "other": other})
		}
	}
	return f.Chosen()
}

// language is a flag that is set to the tag of a language.
type language struct{ words *words.Catalogue }

func (l *language) String() string {
	if l.words == nil {
		return "" // pflag asks what the empty value is
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

// Words returns the catalogue of the language that the flags ask for; English
// where they ask for none.
func Words(flags *pflag.FlagSet) *words.Catalogue {
	if f := flags.Lookup("lang"); f != nil {
		return f.Value.(*language).words
	}
	return words.English()
}
