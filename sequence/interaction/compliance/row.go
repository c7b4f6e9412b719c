package compliance

import (
	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
)

// Row is a narrow part over one row of bolts: a beam with two free ends on a
// foundation. A foundation per millimetre of the row's length, in N/mm², goes
// with a width of 1.
type Row struct {
	BendingNmm2 float64
	WidthMm     float64 // of the gasket across the row
	LengthMm    float64
	StartMm     float64 // from the end of the part to the first bolt
}

// PerLength reports whether the foundation is per millimetre of the row's
// length, in N/mm².
func (r Row) PerLength() bool { return r.WidthMm == 1 }

// Compliance returns the deflection of the row at each bolt for a unit load at
// each other, in mm/N. The bolts are on the line from the first to the one
// farthest from it; their distance from it is ignored.
func (r Row) Compliance(at []geometry.Point, foundationMPaPerMm float64) (*mat.SymDense, error) {
	if err := positive(quantity{"gasket width", r.WidthMm, "mm"}, foundation(foundationMPaPerMm)); err != nil {
		return nil, err
	}
	along := alongRow(at)
	for i := range along {
		along[i] += r.StartMm
	}
	return Beam{BendingNmm2: r.BendingNmm2, FoundationMPa: foundationMPaPerMm * r.WidthMm, LengthMm: r.LengthMm}.Compliance(along)
}

// alongRow measures the bolts from the first, the end where the list starts.
func alongRow(at []geometry.Point) []float64 {
	if len(at) == 0 {
		return nil
	}
	first, last := RowEnds(at)
	length := first.Distance(last)
	along := make([]float64, len(at))
	if length == 0 {
		return along
	}
	for i, p := range at {
		along[i] = (p.Sub(first).X*last.Sub(first).X + p.Sub(first).Y*last.Sub(first).Y) / length
	}
	return along
}
