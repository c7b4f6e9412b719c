package trace

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

// FromRectangle returns the frame of a camera from the four corners of a
// rectangle of known size: top left, top right, bottom right, bottom left. The
// corners must lie in the plane of the part.
func FromRectangle(corners [4]geometry.Point, widthMm, heightMm float64) (Frame, error) {
	if !(widthMm > 0 && heightMm > 0) || math.IsInf(widthMm, 0) || math.IsInf(heightMm, 0) {
		return Frame{}, finding.Failed(NoRectangle, nil)
	}
	if !turnsRight(corners) {
		return Frame{}, finding.Failed(CornersMixed, nil)
	}
	places := [4]geometry.Point{{X: 0, Y: heightMm}, {X: widthMm, Y: heightMm}, {X: widthMm, Y: 0}, {X: 0, Y: 0}}
	// Pixels are brought near to 1 first: the equations hold squares of them.
	largest := 0.0
	for _, c := range corners {
		largest = max(largest, math.Abs(c.X), math.Abs(c.Y))
	}
	rows, right := mat.NewDense(8, 8, nil), mat.NewVecDense(8, nil)
	for i, c := range corners {
		x, y := c.X/largest, c.Y/largest
		p := places[i]
		rows.SetRow(2*i, []float64{x, y, 1, 0, 0, 0, -x * p.X, -y * p.X})
		rows.SetRow(2*i+1, []float64{0, 0, 0, x, y, 1, -x * p.Y, -y * p.Y})
		right.SetVec(2*i, p.X)
		right.SetVec(2*i+1, p.Y)
	}
	var h mat.VecDense
	if err := h.SolveVec(rows, right); err != nil {
		return Frame{}, finding.Failed(CornersFlat, nil)
	}
	f := Frame{}
	for i := range 8 {
		f.to[i] = h.AtVec(i)
		if i%3 < 2 {
			f.to[i] /= largest
		}
	}
	f.to[8] = 1
	var back mat.Dense
	if err := back.Inverse(mat.NewDense(3, 3, f.to[:])); err != nil {
		return Frame{}, finding.Failed(CornersFlat, nil)
	}
	copy(f.back[:], back.RawMatrix().Data)
	return f, nil
}

// turnsRight reports whether the corners run clockwise in the picture and bulge
// outwards everywhere.
func turnsRight(c [4]geometry.Point) bool {
	for i := range c {
		a, b := c[(i+1)%4].Sub(c[i]), c[(i+2)%4].Sub(c[(i+1)%4])
		if !(a.X*b.Y-a.Y*b.X > 1e-3*math.Hypot(a.X, a.Y)*math.Hypot(b.X, b.Y)) {
			return false
		}
	}
	return true
}
