// Package pdf writes a scene document as a PDF file.
//
// The typeface is embedded, reduced to the characters that are used. The same
// document and date give the same bytes. It may import scene and font.
package pdf

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"time"

	"github.com/jung-kurt/gofpdf"

	"drawdown/render/font"
	"drawdown/render/scene"
)

// epoch is the date in the file if no date is given.
var epoch = time.Unix(0, 0).UTC()

// Write writes all pages as one file, each on a sheet of its own size. The
// date, in UTC, is the creation date stated in the file; the zero time means a
// fixed date.
func Write(w io.Writer, doc scene.Document, date time.Time) error {
	if err := check(doc); err != nil {
		return err
	}
	out := bufio.NewWriter(w)
	if err := draw(newPacker(out, doc.Language), doc, date); err != nil {
		return err
	}
	return out.Flush()
}

func check(doc scene.Document) error {
	if len(doc.Pages) == 0 {
		return errors.New("the document has no page: a PDF file needs at least one")
	}
	for _, line := range []string{doc.Title, doc.Subject} {
		if err := font.CheckLine(line); err != nil {
			return err
		}
	}
	for _, page := range doc.Pages {
		if err := font.Check(page); err != nil {
			return err
		}
		for _, mark := range page.Bookmarks {
			if err := font.CheckLine(mark.Title); err != nil {
				return err
			}
			if mark.Level < 0 || mark.Level > 1 {
				return fmt.Errorf("page %q: the bookmark %q has level %d; allowed: 0 and 1", page.Name, mark.Title, mark.Level)
			}
		}
	}
	return checkLanguage(doc.Language)
}

// draw draws the document and writes the file to w. gofpdf panics on some
// characters; none of them pass the check above, but a panic must not end the
// program.
func draw(w io.Writer, doc scene.Document, date time.Time) (err error) {
	defer func() {
		if r := recover(); r != nil {
			err = fmt.Errorf("the PDF file cannot be written: %v", r)
		}
	}()
	p := gofpdf.New("P", "mm", "A4", "")
	describe(p, doc, date)
	embed(p, doc)
	pen := pen{pdf: p}
	for _, page := range doc.Pages {
		p.AddPageFormat("P", gofpdf.SizeType{Wd: page.Width, Ht: page.Height})
		pen.bookmark(page.Bookmarks)
		pen.height = page.Height
		pen.photos(page.Photos)
		for _, it := range page.Items {
			switch it := it.(type) {
			case scene.Shape:
				pen.shape(it)
			case scene.Text:
				pen.text(it)
			}
		}
	}
	if err := p.Output(w); err != nil {
		return err
	}
	return p.Error()
}

// bookmark adds entries that lead to the top of the current page. gofpdf
// encodes their letters for the current font, so one must be set.
func (p *pen) bookmark(marks []scene.Bookmark) {
	for _, mark := range marks {
		p.setFont(scene.Regular, 1)
		p.pdf.Bookmark(font.Clean(mark.Title), mark.Level, 0)
	}
}

// describe sets the metadata of the file, and whatever gofpdf needs to produce
// the same bytes again.
func describe(p *gofpdf.Fpdf, doc scene.Document, date time.Time) {
	if date.IsZero() {
		date = epoch
	}
	p.SetCatalogSort(true)
	p.SetCreationDate(date.UTC())
	p.SetModificationDate(date.UTC())
	p.SetTitle(font.Clean(doc.Title), true)
	p.SetSubject(font.Clean(doc.Subject), true)
	p.SetKeywords(doc.Imprint, false)
	p.SetCreator("drawdown", true)
	p.SetCompression(false) // the packer does it
	p.SetMargins(0, 0, 0)
	p.SetAutoPageBreak(false, 0)
	p.SetLineCapStyle("round")
	p.SetLineJoinStyle("round")
}

// family is the name of the typeface in the file.
const family = "Go"

var styles = [...]string{scene.Regular: "", scene.Bold: "B"}

// embed adds the weights that the document uses. gofpdf modifies the bytes that
// it is given, so it gets a copy.
func embed(p *gofpdf.Fpdf, doc scene.Document) {
	var used [len(styles)]bool
	for _, page := range doc.Pages {
		used[scene.Regular] = used[scene.Regular] || len(page.Bookmarks) > 0
		for _, it := range page.Items {
			if t, ok := it.(scene.Text); ok && visible(t) {
				used[t.Weight] = true
			}
		}
	}
	for weight, style := range styles {
		if used[weight] {
			p.AddUTF8FontFromBytes(family, style, bytes.Clone(font.Data(scene.Weight(weight))))
		}
	}
}

func visible(t scene.Text) bool { return t.Ink != scene.None && t.Content != "" }

var languageTag = regexp.MustCompile(`^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$`)

func checkLanguage(tag string) error {
	if tag == "" || languageTag.MatchString(tag) {
		return nil
	}
	return fmt.Errorf("language %q: it must be a BCP 47 tag such as en or pt-BR", tag)
}
