package job

import (
	"cmp"
	"fmt"
	"image"
	"io"
	"path/filepath"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"drawdown/geometry/finding"
	"drawdown/geometry/trace"
	"drawdown/patterns/scan"
	"drawdown/patterns/writing"
	"drawdown/render"
	"drawdown/render/font"
	"drawdown/render/sheet"
	"drawdown/render/sheet/proof"
	"drawdown/render/words"
)

// TraceRequest says how a scan is to be taken. What the file states of its
// scale is filled in.
type TraceRequest struct {
	trace.Options
	trace.Scale
	Title, Machine string
	Words          *words.Catalogue // of the pattern
}

// TraceAnswer is what a scan shows.
type TraceAnswer struct {
	trace.Found
	Name, Title, Machine string
	FixesFile            string // beside the scan, for corrections
	Offer                *writing.Layout
	words                *words.Catalogue
	picture              *image.Gray
}

// Trace reads a scan and finds its holes. ScanError tells a picture that cannot be
// used from a file that could not be read from the disk.
func Trace(name string, stdin io.Reader, ask TraceRequest) (TraceAnswer, error) {
	source, err := scan.Open(name, stdin)
	if err != nil {
		return TraceAnswer{}, err
	}
	read, err := scan.Read(source)
	if err != nil {
		return TraceAnswer{}, &ScanError{err}
	}
	a := TraceAnswer{FixesFile: read.Name + fixesEnding, Name: read.Name, Title: ask.Title, Machine: ask.Machine, words: ask.Words, picture: read.Picture}
	if a.Title == "" {
		a.Title = cmp.Or(titleOf(read.Name), ask.Words.Say(finding.Noted(writing.Title, finding.Values{"shape": "scan"})))
	}
	if a.Name == "" {
		a.Name = strings.TrimSuffix(writing.FileName(a.Title), ".yaml")
	}
	if missing, found := font.Missing(a.Title + a.Machine); found {
		return a, &ScanError{finding.Failed(trace.TitleLetter, finding.Values{"letter": string(missing)})}
	}
	if ask.FileX, ask.FileY = read.DPIX, read.DPIY; read.DPIX == 0 {
		ask.Unbelieved = read.StatedDPI
	}
	if a.Found, err = trace.Trace(read.Picture, ask.Scale, ask.Options); err != nil {
		return a, &ScanError{fmt.Errorf("%s: %w", source.File, err)}
	}
	a.Offer = writing.TracedOffer(a.Found)
	return a, nil
}

// InDoubt reports whether an eye has to judge some shape.
func (a TraceAnswer) InDoubt() bool {
	return slices.ContainsFunc(a.Shapes, func(s trace.Shape) bool { return len(s.Doubts) > 0 })
}

// ScanError is about a picture, or about what was said of it.
type ScanError struct{ error }

func (e *ScanError) Unwrap() error { return e.error }

func titleOf(name string) string {
	title := strings.TrimSpace(strings.NewReplacer("-", " ", "_", " ").Replace(filepath.Base(name)))
	if name == "" || title == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(title)
	return string(unicode.ToUpper(first)) + title[size:]
}

// Pattern returns the pattern file of the trace.
func (a TraceAnswer) Pattern() render.File {
	origin := finding.Noted(trace.Origin, finding.Values{"width": a.picture.Rect.Dx(), "height": a.picture.Rect.Dy(), "scale": a.Scale})
	notes := append([]finding.Finding{origin, finding.Noted(trace.HoldProof, nil)}, a.Taken...)
	return render.File{Name: a.Name + ".yaml", Data: writing.Pattern(writing.Traced(a.Title, a.Machine, a.Found, notes), a.words.Say)}
}

// proofDPI shows a hair line and keeps the file small.
const proofDPI = 200

// Proof returns the sheet that shows what was found, over the picture.
func (a TraceAnswer) Proof(ask sheet.Request) (render.File, error) {
	laid := proof.Lay(proof.Traced{Title: a.Title, Found: a.Found}, ask)
	width, height, err := render.PixelSize(laid.Page, proofDPI)
	if err != nil {
		return render.File{}, err
	}
	return render.Over(laid.Page, laid.Under(a.picture, width, height), a.Name, proofDPI)
}
