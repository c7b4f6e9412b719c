package pdf

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"math"
	"strconv"

	"github.com/jung-kurt/gofpdf"

	"drawdown/render/font"
	"drawdown/render/scene"
)

// pen paints items. It remembers the current settings, so that a series of
// equal marks does not repeat them; gofpdf carries the settings from page to
// page.
type pen struct {
	pdf          *gofpdf.Fpdf
	fill, stroke scene.Ink
	letters      scene.Ink
	width, dash  float64
	weight       scene.Weight
	size         float64
	height       float64 // of the page, in millimetres
	path         []byte
}

// operators paint a path: filled by the nonzero rule, stroked, or both
// (ISO 32000-1, table 60).
var operators = map[[2]bool]byte{{true, false}: 'f', {false, true}: 'S', {true, true}: 'B'}

func (p *pen) shape(s scene.Shape) {
	filled, stroked := s.Fill != scene.None, s.Stroke != scene.None
	if len(s.Path) == 0 || !filled && !stroked {
		return
	}
	if filled {
		p.setFill(s.Fill)
	}
	if stroked {
		p.setStroke(s.Stroke, s.Width, s.Dash)
	}
	p.path = appendPath(p.path[:0], s.Path, p.height)
	p.pdf.RawWriteStr(string(append(p.path, operators[[2]bool{filled, stroked}])))
}

// photos puts pictures on the page. The same picture stands in the file once.
func (p *pen) photos(list []scene.Photo) {
	for _, photo := range list {
		name := fmt.Sprintf("%x", sha256.Sum256(photo.JPEG))
		options := gofpdf.ImageOptions{ImageType: "JPG"}
		p.pdf.RegisterImageOptionsReader(name, options, bytes.NewReader(photo.JPEG))
		b := photo.Box
		p.pdf.ImageOptions(name, b.Left, b.Top, b.Right-b.Left, b.Bottom-b.Top, false, options, 0, "")
	}
}

func (p *pen) setFill(k scene.Ink) {
	if p.fill == k {
		return
	}
	p.fill = k
	r, g, b := k.RGB()
	p.pdf.SetFillColor(int(r), int(g), int(b))
}

func (p *pen) setStroke(k scene.Ink, width, dash float64) {
	if p.stroke != k {
		p.stroke = k
		r, g, b := k.RGB()
		p.pdf.SetDrawColor(int(r), int(g), int(b))
	}
	if p.width != width {
		p.width = width
		p.pdf.SetLineWidth(width)
	}
	if p.dash != dash {
		p.dash = dash
		var pattern []float64
		if dash > 0 {
			pattern = []float64{dash, dash}
		}
		p.pdf.SetDashPattern(pattern, 0)
	}
}

func (p *pen) text(t scene.Text) {
	if !visible(t) {
		return
	}
	p.setLetters(t)
	if t.Upward {
		p.pdf.TransformBegin()
		p.pdf.TransformRotate(90, t.At.X, t.At.Y)
		defer p.pdf.TransformEnd()
	}
	p.pdf.Text(t.At.X-t.Before(), t.At.Y, font.Clean(t.Content))
}

func (p *pen) setLetters(t scene.Text) {
	if p.letters != t.Ink {
		p.letters = t.Ink
		r, g, b := t.Ink.RGB()
		p.pdf.SetTextColor(int(r), int(g), int(b))
	}
	if p.weight != t.Weight || p.size != t.Size {
		p.setFont(t.Weight, t.Size)
	}
}

func (p *pen) setFont(w scene.Weight, size float64) {
	p.weight, p.size = w, size
	p.pdf.SetFont(family, styles[w], size*pointsPerMM)
}

const pointsPerMM = 72 / 25.4

// Paths are most of a page. gofpdf formats each number by a general routine,
// which takes longer than all the rest of a page of a book. So the operators
// (ISO 32000-1, table 59) are written here and passed to it in one piece.

// verbs are the operators that build a path.
var verbs = [...]byte{scene.Move: 'm', scene.Line: 'l', scene.Curve: 'c', scene.Close: 'h'}

// appendPath appends a path on a page that is height mm high, each operator on
// a separate line.
func appendPath(b []byte, path scene.Path, height float64) []byte {
	for _, seg := range path {
		for _, q := range seg.Points() {
			b = append(appendPoints(b, q.X), ' ')
			b = append(appendPoints(b, height-q.Y), ' ')
		}
		b = append(b, verbs[seg.Verb], '\n')
	}
	return b
}

// appendPoints appends a length in points to two decimals, without trailing
// zeros. Integers of hundredths are formatted faster than floating-point
// numbers.
func appendPoints(b []byte, mm float64) []byte {
	n := int64(math.Round(mm * pointsPerMM * 100))
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendInt(b, n/100, 10)
	if tenths, hundredths := byte(n/10%10), byte(n%10); hundredths != 0 {
		b = append(b, '.', '0'+tenths, '0'+hundredths)
	} else if tenths != 0 {
		b = append(b, '.', '0'+tenths)
	}
	return b
}
