// Package render turns scenes into files. It is the only package that lists the
// formats. It may import scenes and their painters.
package render

import (
	"bytes"
	"image"
	"time"

	"drawdown/render/pdf"
	"drawdown/render/png"
	"drawdown/render/scene"
	"drawdown/render/svg"
)

// Format is a file format for a scene.
type Format string

const (
	PDF Format = "pdf" // one file with all pages
	PNG Format = "png" // a file per page
	SVG Format = "svg" // a file per page
)

// Formats lists all of them.
var Formats = []Format{PDF, PNG, SVG}

// File is one finished file, not yet written to disk.
type File struct {
	Name string
	Data []byte
}

// Files writes the document in one format. stem is the start of the file names,
// before the page's name and the extension. A PNG has dpi dots per inch; a PDF
// has the date, unless it is zero.
func Files(doc scene.Document, stem string, f Format, dpi int, date time.Time) ([]File, error) {
	if f == PDF {
		var b bytes.Buffer
		if err := pdf.Write(&b, doc, date); err != nil {
			return nil, err
		}
		return []File{{stem + ".pdf", b.Bytes()}}, nil
	}
	var files []File
	for _, page := range doc.Pages {
		page.Imprint = doc.Imprint
		var b bytes.Buffer
		var err error
		if f == PNG {
			err = png.Write(&b, page, dpi)
		} else {
			err = svg.Write(&b, page)
		}
		if err != nil {
			return nil, err
		}
		files = append(files, File{stem + "-" + page.Name + "." + string(f), b.Bytes()})
	}
	return files, nil
}

// CheckDPI reports whether a picture of a page of that size, in millimetres,
// can be painted at the resolution. The error says what is allowed.
func CheckDPI(dpi int, width, height float64) error {
	_, _, err := png.PixelSize(scene.Page{Name: "page", Width: width, Height: height}, dpi)
	return err
}

// Over writes the page as a PNG over a grey picture of the whole page.
func Over(page scene.Page, under *image.Gray, stem string, dpi int) (File, error) {
	var b bytes.Buffer
	err := png.WriteOver(&b, page, dpi, under)
	return File{stem + "-" + page.Name + ".png", b.Bytes()}, err
}

// PixelSize returns the size of the picture of a page in pixels.
func PixelSize(page scene.Page, dpi int) (width, height int, err error) {
	return png.PixelSize(page, dpi)
}
