package flag

import (
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/job"
	"drawdown/render"
)

// RecordFormat is an output format of a record.
type RecordFormat string

const (
	RecordPDF  RecordFormat = "pdf"
	RecordJSON RecordFormat = "json"
	RecordCSV  RecordFormat = "csv"
)

// RecordPrint holds the flags for writing a record to files.
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

// Chosen returns what the flags ask for, or an error about them.
func (f RecordPrint) Chosen(flags *pflag.FlagSet) (ask job.Printing, err error) {
	if ask.Paper, err = paperFor(*f.Folder, *f.paper, *f.landscape); err != nil {
		return ask, err
	}
	ask.Words, ask.Formats = Words(flags), []render.Format{render.PDF}
	return ask, nil
}
