package job

import (
	"time"

	"drawdown/render"
	"drawdown/render/scene"
	"drawdown/render/sheet"
)

// Printing says on which paper, in which language and in which formats a sheet
// is wanted.
type Printing struct {
	sheet.Request
	Formats []render.Format
	DPI     int
}

// files writes a document in every format asked for. Nothing goes to disk.
func (ask Printing) files(doc scene.Document, stem string, date time.Time) ([]render.File, error) {
	return ask.filesOf(doc, stem, "", date)
}

// filesOf does the same for a sheet other than the card: its PDF is named after
// the sheet, as its pages are.
func (ask Printing) filesOf(doc scene.Document, name, sheet string, date time.Time) ([]render.File, error) {
	var files []render.File
	for _, format := range ask.Formats {
		stem := name
		if format == render.PDF && sheet != "" {
			stem += "-" + sheet
		}
		made, err := render.Files(doc, stem, format, ask.DPI, date)
		if err != nil {
			return nil, err
		}
		files = append(files, made...)
	}
	return files, nil
}
