package pdf

import (
	"math"
	"strconv"

	"drawdown/render/scene"
)

// Paths are most of a page. gofpdf formats each number by a general routine,
// which takes longer than all the rest of a page of a book; so the operators
// (ISO 32000-1, table 59) are written here and handed to it in one piece.

// verbs are the operators that build a path.
var verbs = [...]byte{scene.Move: 'm', scene.Line: 'l', scene.Curve: 'c', scene.Close: 'h'}

// appendPath appends a path of a page that is height mm high, each operator on
// its own line.
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

// appendPoints appends a length in points to two decimals, without idle zeros.
func appendPoints(b []byte, mm float64) []byte {
	hundredths := int64(math.Round(mm * pointsPerMM * 100))
	if hundredths < 0 {
		b = append(b, '-')
		hundredths = -hundredths
	}
	b = strconv.AppendInt(b, hundredths/100, 10)
	if rest := hundredths % 100; rest != 0 {
		b = append(b, '.', byte('0'+rest/10))
		if rest%10 != 0 {
			b = append(b, byte('0'+rest%10))
		}
	}
	return b
}
