package job

import (
	"time"

	"drawdown/render"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
)

// Printing says on which paper, in which language and in which formats a sheet
// is wanted.
type Printing struct {
	Paper   sheet.Paper
	Words   *words.Catalogue
	Formats []render.Format
	DPI     int
}

// files writes a document in every format asked for. Nothing goes to disk.
func (ask Printing) files(doc scene.Document, stem string, date time.Time) ([]render.File, error) {
	var files []render.File
	for _, format := range ask.Formats {
		made, err := render.Files(doc, stem, format, render.Options{DPI: ask.DPI, Date: date})
		if err != nil {
			return nil, err
		}
		files = append(files, made...)
	}
	return files, nil
}
