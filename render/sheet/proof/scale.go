package proof

import (
	"fmt"

	"drawdown/render/words"
)

// ScaleFrom tells where a scale comes from.
type ScaleFrom int

const (
	FourCorners ScaleFrom = iota // of a rectangle of known size
	Stated                       // by who asks
	FromFile
	Known // distances
)

// Scale tells where the scale of a picture comes from.
type Scale struct {
	From              ScaleFrom
	DPIX, DPIY        float64
	WidthMm, HeightMm float64
	Distances         int
}

// Words says it in a language.
func (s Scale) Words(w *words.Catalogue) string {
	switch s.From {
	case FourCorners:
		return fmt.Sprintf(w.Proof.FourCorners, w.Figure(fmt.Sprintf("%g", s.WidthMm)), w.Figure(fmt.Sprintf("%g", s.HeightMm)))
	case Stated:
		return fmt.Sprintf(w.Proof.Stated, w.Figure(DPI(s.DPIX, s.DPIY)))
	case FromFile:
		return fmt.Sprintf(w.Proof.FromFile, w.Figure(DPI(s.DPIX, s.DPIY)))
	}
	return w.Proof.Known.Of(s.Distances)
}

// DPI prints a resolution, across and down where the two differ.
func DPI(x, y float64) string {
	if x == y {
		return fmt.Sprintf("%.4g dpi", x)
	}
	return fmt.Sprintf("%.4g × %.4g dpi", x, y)
}
