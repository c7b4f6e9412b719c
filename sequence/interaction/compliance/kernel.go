package compliance

import (
	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
)

// Kernel is a model of part and gasket: the deflection at each fastener for a
// newton at each other, in mm/N, on a foundation in MPa/mm.
type Kernel interface {
	Compliance(at []geometry.Point, foundationMPaPerMm float64) (*mat.SymDense, error)
}

// Separate is several parts, such as the caps of a camshaft, that do not act on
// each other. Each has its fasteners, by index; every fastener belongs to one.
type Separate []Piece

// Piece is one of several separate parts.
type Piece struct {
	Fasteners []int
	Kernel    Kernel
}

// Compliance combines those of the pieces.
func (s Separate) Compliance(at []geometry.Point, foundationMPaPerMm float64) (*mat.SymDense, error) {
	c := mat.NewSymDense(len(at), nil)
	for _, piece := range s {
		var own []geometry.Point
		for _, i := range piece.Fasteners {
			own = append(own, at[i])
		}
		part, err := piece.Kernel.Compliance(own, foundationMPaPerMm)
		if err != nil {
			return nil, err
		}
		for a, i := range piece.Fasteners {
			for b, k := range piece.Fasteners {
				c.SetSym(i, k, part.At(a, b))
			}
		}
	}
	return c, nil
}
