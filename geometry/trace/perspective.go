package trace

import (
	"drawdown/geometry"
	"drawdown/geometry/finding"
	"image"
	"math"

	"gonum.org/v1/gonum/mat"
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

// onSheet returns a photo in which the sheet under the part runs on to the rim of
// the picture, so that the bench round it is not taken for the part. Where the
// sheet's edge is not plain all round, the rectangle is none under the part, and
// the photo stays as it is.
func onSheet(picture *image.Gray, corners [4]geometry.Point) *image.Gray {
	middle := corners[0].Add(corners[1]).Add(corners[2]).Add(corners[3]).Scale(0.25)
	var sheet []geometry.Point
	for _, c := range corners {
		sheet = append(sheet, middle.Add(c.Sub(middle).Scale(sheetShare)))
	}
	if !plainAlong(picture, sheet) {
		return picture
	}
	out := image.NewGray(picture.Rect)
	for y := range picture.Rect.Dy() {
		for x := range picture.Rect.Dx() {
			p := geometry.Point{X: float64(x) + 0.5, Y: float64(y) + 0.5}
			if over := beyond(sheet, middle, p); over > 1 {
				p = middle.Add(p.Sub(middle).Scale(1 / over))
			}
			out.Pix[y*out.Stride+x] = levelNear(picture, p)
		}
	}
	return out
}

const (
	sheetShare  = 0.985 // of the sheet that is looked at: corners are named to some pixels
	mostJump    = 24    // grey levels between places near to each other on plain paper
	alongSheet  = 400   // places looked at along each side
	patchPixels = 2     // on either side that one look takes in
)

// plainAlong reports whether no edge crosses a closed line.
func plainAlong(picture *image.Gray, line []geometry.Point) bool {
	var last float64
	for i, a := range line {
		b := line[(i+1)%len(line)]
		for k := range alongSheet {
			p := a.Add(b.Sub(a).Scale(float64(k) / alongSheet))
			level := 0.0
			for dy := -patchPixels; dy <= patchPixels; dy++ {
				for dx := -patchPixels; dx <= patchPixels; dx++ {
					level += float64(levelNear(picture, p.Add(geometry.Point{X: float64(dx), Y: float64(dy)})))
				}
			}
			level /= (2*patchPixels + 1) * (2*patchPixels + 1)
			if (i > 0 || k > 0) && math.Abs(level-last) > mostJump {
				return false
			}
			last = level
		}
	}
	return true
}

// beyond is how many times as far from the middle as the line a place lies.
func beyond(line []geometry.Point, middle, p geometry.Point) float64 {
	most := 0.0
	for i, a := range line {
		along := line[(i+1)%len(line)].Sub(a)
		out := geometry.Point{X: along.Y, Y: -along.X} // the corners run clockwise in the picture
		most = max(most, p.Sub(middle).Dot(out)/a.Sub(middle).Dot(out))
	}
	return most
}

func levelNear(picture *image.Gray, p geometry.Point) uint8 {
	x := min(max(int(math.Floor(p.X)), 0), picture.Rect.Dx()-1)
	y := min(max(int(math.Floor(p.Y)), 0), picture.Rect.Dy()-1)
	return picture.Pix[y*picture.Stride+x]
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
