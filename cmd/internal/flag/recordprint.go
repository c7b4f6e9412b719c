package flag

import (
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/job"
	"drawdown/render"
)

// RecordFormat is a form in which a record leaves the program.
type RecordFormat string

const (
	RecordPDF  RecordFormat = "pdf"
	RecordJSON RecordFormat = "json"
	RecordCSV  RecordFormat = "csv"
)

// RecordPrint is the flags with which a record is written to files.
type RecordPrint struct {
	Formats   *[]RecordFormat
	paper     *string
	landscape *bool
	Folder    *string
	AsJSON    *bool
}

// AddRecordPrint adds them.
func AddRecordPrint(flags *pflag.FlagSet) RecordPrint {
	all := []RecordFormat{RecordPDF, RecordJSON, RecordCSV}
	p := RecordPrint{
		Formats:   List(flags, "format", all[:1], all, "export: one or more `formats`, separated by commas: "),
		paper:     Paper(flags),
		landscape: flags.Bool("landscape", false, "export: print landscape"),
		Folder:    Out(flags, "out", "export: "+OutUsage),
	}
	Language(flags)
	p.AsJSON = JSON(flags)
	return p
}

// Chosen returns what the flags ask for, or what is wrong with them.
func (f RecordPrint) Chosen(flags *pflag.FlagSet) (ask job.Printing, err error) {
	if ask.Paper, err = paperFor(*f.Folder, *f.paper, *f.landscape); err != nil {
		return ask, err
	}
	ask.Words, ask.Formats = Words(flags), []render.Format{render.PDF}
	return ask, nil
}
