package job

import (
	"errors"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"drawdown/geometry"
	"drawdown/geometry/trace"
	"drawdown/patterns/scan"
	"drawdown/patterns/writing"
	"drawdown/render"
	"drawdown/render/font"
	"drawdown/render/sheet"
	"drawdown/render/sheet/proof"
	"drawdown/render/words"
)

// TraceRequest says how a scan is to be taken.
type TraceRequest struct {
	trace.Options
	DPIX, DPIY float64 // 0: those that the file states
	Known      []KnownDistance
	// Corners in pixels and the size of the rectangle that they are of; a
	// width of 0 for none.
	Corners                     [4]geometry.Point
	FrameWidthMm, FrameHeightMm float64
	Title, Machine              string
}

// KnownDistance is a distance measured on the part, between two places of the
// picture or between two holes by their ids.
type KnownDistance struct {
	From, To     geometry.Point // pixels, where FromID is empty
	FromID, ToID string
	Mm           float64
}

// TraceAnswer is what a scan shows.
type TraceAnswer struct {
	trace.Found
	Name, Title, Machine string
	Width, Height        int // of the picture
	Scale                proof.Scale
	ScaleOffMm           float64
	Offer                *writing.Layout
	Taken                []string // what sizes of hole were taken for, where that may surprise
	scan                 scan.Scan
}

// Trace reads a scan (a built-in name, a path, or - for stdin) and finds its
// holes. ErrRead tells a picture that cannot be used from a file that could not
// be read from the disk.
func Trace(name string, stdin io.Reader, ask TraceRequest) (TraceAnswer, error) {
	source, err := scan.Open(name, stdin)
	if err != nil {
		return TraceAnswer{}, err
	}
	read, err := scan.Read(source)
	if err != nil {
		return TraceAnswer{}, &ScanError{err}
	}
	a := TraceAnswer{Machine: ask.Machine, scan: read, Width: read.Picture.Rect.Dx(), Height: read.Picture.Rect.Dy()}
	a.Title = ask.Title
	if a.Title == "" {
		a.Title = titleOf(read.Name)
	}
	if a.Name = read.Name; a.Name == "" {
		a.Name = strings.TrimSuffix(writing.FileName(a.Title), ".yaml")
	}
	if missing, found := font.Missing(a.Title + a.Machine); found {
		return a, &ScanError{fmt.Errorf("the title holds %q, which the typeface lacks; name another one with --title", missing)}
	}
	frame, err := a.frame(ask)
	if err != nil {
		return a, &ScanError{err}
	}
	if a.Found, err = trace.Find(read.Picture, frame, ask.Options); err != nil {
		return a, &ScanError{fmt.Errorf("%s: %w", source.File, err)}
	}
	if slices.ContainsFunc(ask.Known, func(k KnownDistance) bool { return k.FromID != "" }) {
		if err := a.again(ask); err != nil {
			return a, &ScanError{err}
		}
	}
	a.doubtScale(ask)
	a.Taken = taken(a.Found, ask.Holes)
	a.Offer = writing.TracedOffer(a.Found)
	return a, nil
}

// ScanError is about a picture, or about what was said of it.
type ScanError struct{ error }

func (e *ScanError) Unwrap() error { return e.error }

func titleOf(name string) string {
	title := strings.TrimSpace(strings.NewReplacer("-", " ", "_", " ").Replace(filepath.Base(name)))
	if name == "" || title == "" {
		return "Traced part"
	}
	first, size := utf8.DecodeRuneInString(title)
	return string(unicode.ToUpper(first)) + title[size:]
}

// frame finds the scale of the picture. What was measured goes before what the
// file states.
func (a *TraceAnswer) frame(ask TraceRequest) (trace.Frame, error) {
	var inPixels []trace.Known
	byHoles := false
	for _, k := range ask.Known {
		if k.FromID != "" {
			byHoles = true
			continue
		}
		inPixels = append(inPixels, trace.Known{From: k.From, To: k.To, Mm: k.Mm})
	}
	switch {
	case ask.FrameWidthMm > 0:
		a.Scale = proof.Scale{From: proof.FourCorners, WidthMm: ask.FrameWidthMm, HeightMm: ask.FrameHeightMm}
		return trace.FromRectangle(ask.Corners, ask.FrameWidthMm, ask.FrameHeightMm)
	case len(inPixels) > 0:
		return a.known(inPixels)
	case ask.DPIX > 0:
		a.Scale = proof.Scale{From: proof.Stated, DPIX: ask.DPIX, DPIY: ask.DPIY}
		return trace.PerInch(ask.DPIX, ask.DPIY), nil
	case a.scan.DPIX > 0:
		a.Scale = proof.Scale{From: proof.FromFile, DPIX: a.scan.DPIX, DPIY: a.scan.DPIY}
		return trace.PerInch(a.scan.DPIX, a.scan.DPIY), nil
	}
	says := "does not say its resolution"
	if a.scan.StatedDPI > 0 {
		says = fmt.Sprintf("says %.0f dpi, which cameras and screens put in unasked", a.scan.StatedDPI)
	}
	if byHoles {
		return trace.Frame{}, fmt.Errorf("the file %s; to tell the holes apart name it roughly with --dpi, beside --known", says)
	}
	return trace.Frame{}, fmt.Errorf("the file %s; name it with --dpi 300, or a distance measured on the part with --known, or for a photo four corners with --corners", says)
}

// ScaleWords says where the scale comes from.
func (a TraceAnswer) ScaleWords() string { return a.Scale.Words(words.English()) }

func (a *TraceAnswer) known(distances []trace.Known) (trace.Frame, error) {
	frame, off, err := trace.FromKnown(distances)
	a.Scale, a.ScaleOffMm = proof.Scale{From: proof.Known, Distances: len(distances)}, off
	return frame, err
}

// again traces once more, with the scale that distances between holes give.
func (a *TraceAnswer) again(ask TraceRequest) error {
	at := map[string]geometry.Point{}
	var ids []string
	for _, s := range a.Shapes {
		if s.Round() {
			at[s.ID] = s.Pixel
			ids = append(ids, s.ID)
		}
	}
	var distances []trace.Known
	for _, k := range ask.Known {
		known := trace.Known{From: k.From, To: k.To, Mm: k.Mm}
		if k.FromID != "" {
			for _, id := range []string{k.FromID, k.ToID} {
				if _, ok := at[id]; !ok {
					return fmt.Errorf("--known: there is no hole %s; found: %s", id, strings.Join(ids, ", "))
				}
			}
			known.From, known.To = at[k.FromID], at[k.ToID]
		}
		distances = append(distances, known)
	}
	frame, err := a.known(distances)
	if err != nil {
		return err
	}
	if a.Found, err = trace.Find(a.scan.Picture, frame, ask.Options); err != nil {
		return err
	}
	return nil
}

// plausibleScale is how far a scanner may be off what its file states.
const plausibleScale = 0.02

// doubtScale holds known distances against the resolution that was stated, and
// against each other: a slip of the caliper would make every place wrong.
func (a *TraceAnswer) doubtScale(ask TraceRequest) {
	if a.ScaleOffMm > 0.1 {
		a.Doubts = append(a.Doubts, trace.NewDoubt(trace.KnownDiffer, fmt.Sprintf("%.2f", a.ScaleOffMm)))
	}
	stated := ask.DPIX
	if stated == 0 {
		stated = a.scan.DPIX
	}
	if len(ask.Known) == 0 && ask.FrameWidthMm == 0 && ask.DPIX > 0 && a.scan.DPIX > 0 {
		if math.Abs(ask.DPIX/a.scan.DPIX-1) > plausibleScale || math.Abs(ask.DPIY/a.scan.DPIY-1) > plausibleScale {
			a.Doubts = append(a.Doubts, trace.NewDoubt(trace.OtherStated, proof.DPI(a.scan.DPIX, a.scan.DPIY),
				proof.DPI(ask.DPIX, ask.DPIY), fmt.Sprintf("%.3g", a.scan.DPIX/ask.DPIX)))
		}
	}
	if len(ask.Known) == 0 || stated == 0 {
		return
	}
	const mmPerInch = 25.4
	if ratio := a.PixelMm * stated / mmPerInch; math.Abs(ratio-1) > plausibleScale {
		a.Doubts = append(a.Doubts, trace.NewDoubt(trace.OtherKnown, fmt.Sprintf("%.4g", ratio), proof.DPI(stated, stated)))
	}
}

// Pattern gives the pattern file of the trace.
func (a TraceAnswer) Pattern() render.File {
	notes := append([]string{
		fmt.Sprintf("Traced by drawdown from a picture of %d × %d pixels; scale %s.", a.Width, a.Height, a.ScaleWords()),
		"Look at the proof sheet, and hold it against the part.",
	}, a.Taken...)
	return render.File{Name: a.Name + ".yaml", Data: writing.Pattern(writing.Traced(a.Title, a.Machine, a.Found, notes))}
}

// proofDPI shows a hair line and keeps the file small.
const proofDPI = 200

// Proof gives the sheet that shows what was found, over the picture.
func (a TraceAnswer) Proof(ask sheet.Request) (render.File, error) {
	laid := proof.Lay(proof.Traced{Title: a.Title, Scale: a.Scale, Found: a.Found}, ask)
	width, height, err := render.PixelSize(laid.Page, proofDPI)
	if err != nil {
		return render.File{}, err
	}
	return render.Over(laid.Page, laid.Under(a.scan.Picture, width, height), a.Name, proofDPI)
}

// Check says what keeps the trace from being a pattern.
func (a TraceAnswer) Check() error {
	for _, s := range a.Shapes {
		if s.Role == trace.Fastener {
			return nil
		}
	}
	return errors.New("no hole for a fastener was found; see the proof sheet, and set --smallest, --bolts or --bores")
}
