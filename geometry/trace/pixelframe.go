package trace

import (
	"image"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/trace/photo"
	"drawdown/geometry/unit"
)

// Frame brings places in the picture, in pixels from its top left corner, y
// downwards, to millimetres on the glass, y upwards. It is a plane seen by a
// scanner or, with perspective and a lens, by a camera.
type Frame struct {
	lens     photo.Lens
	to, back [9]float64     // rows of the matrix on (x, y, 1)
	first    geometry.Point // pixel of the whole picture, where this is of a piece
}

const mmPerInch = 25.4

// PerInch is the frame of a scanner with so many dots per inch each way.
func PerInch(x, y float64) Frame { return perPixel(mmPerInch/x, mmPerInch/y) }

func perPixel(x, y float64) Frame {
	return Frame{to: [9]float64{x, 0, 0, 0, -y, 0, 0, 0, 1}, back: [9]float64{1 / x, 0, 0, 0, -1 / y, 0, 0, 0, 1}}
}

// Known is a distance measured on the part, between two places of the picture
// or between two holes.
type Known struct {
	FromID, ToID string         // of holes; empty for places
	From, To     geometry.Point // pixels
	Mm           float64
}

func (k Known) byHoles() bool { return k.FromID != "" }

// FromKnown returns the frame of a scanner from measured distances. One distance
// gives one scale; several that lie in different directions give each axis its
// own. offMm is how far the worst distance is missed.
func FromKnown(distances []Known) (frame Frame, offMm float64, err error) {
	if err := longEnough(distances); err != nil {
		return Frame{}, 0, err
	}
	x, y, offMm := axisScales(distances)
	return perPixel(x, y), offMm, nil
}

// FromKnownOn returns the frame of a photo, its millimetres stretched so that
// measured distances come out right: a sheet of paper is cut, and a target
// printed, only to some tenths.
func FromKnownOn(frame Frame, distances []Known) (stretched Frame, offMm float64, err error) {
	if err := longEnough(distances); err != nil {
		return Frame{}, 0, err
	}
	onPaper := slices.Clone(distances)
	for i, k := range distances {
		onPaper[i].From, onPaper[i].To = frame.Mm(k.From.X, k.From.Y), frame.Mm(k.To.X, k.To.Y)
	}
	x, y, offMm := axisScales(onPaper)
	for i := range 3 {
		frame.to[i], frame.to[3+i] = x*frame.to[i], y*frame.to[3+i]
		frame.back[3*i], frame.back[3*i+1] = frame.back[3*i]/x, frame.back[3*i+1]/y
	}
	return frame, offMm, nil
}

// longEnough checks measured distances.
func longEnough(distances []Known) error {
	for _, k := range distances {
		length := k.From.Distance(k.To)
		if !(length >= leastKnownPixels) || !(k.Mm > 0) || math.IsInf(length, 0) || math.IsInf(k.Mm, 0) {
			return finding.Failed(KnownShort, finding.Values{"least": leastKnownPixels})
		}
	}
	if len(distances) == 0 {
		return finding.Failed(KnownShort, finding.Values{"least": leastKnownPixels})
	}
	return nil
}

// axisScales returns what lengths along both axes are to be multiplied with, and
// how far the worst distance is missed then.
func axisScales(distances []Known) (x, y, offMm float64) {
	scales := newEquations(2)
	directions := mat.NewSymDense(2, nil)
	var lengths, product float64
	for _, k := range distances {
		length := k.From.Distance(k.To)
		// (x·sx)² + (y·sy)² = mm², which is linear in the squares of the scales.
		// Divided by the length it weighs each distance as an error in mm.
		x2, y2 := math.Pow(k.To.X-k.From.X, 2)/length, math.Pow(k.To.Y-k.From.Y, 2)/length
		scales.add([]float64{x2, y2}, k.Mm*k.Mm/length, 1)
		directions.SymRankOne(directions, 1, mat.NewVecDense(2, []float64{x2 / length, y2 / length}))
		lengths, product = lengths+length*length, product+length*k.Mm
	}
	x = product / lengths
	y = x
	var factors mat.Cholesky
	apart := factors.Factorize(directions) && factors.Cond() < worstCondition
	if squares, ok := scales.solve(); apart && ok && squares[0] > 0 && squares[1] > 0 {
		x, y = math.Sqrt(squares[0]), math.Sqrt(squares[1])
	}
	for _, k := range distances {
		off := math.Hypot((k.To.X-k.From.X)*x, (k.To.Y-k.From.Y)*y) - k.Mm
		offMm = max(offMm, math.Abs(off))
	}
	return x, y, offMm
}

const (
	leastKnownPixels = 50
	// worstCondition: two distances nearer than some 25° to the same direction
	// do not tell the axes apart.
	worstCondition = 60
)

func apply(m [9]float64, x, y float64) geometry.Point {
	w := m[6]*x + m[7]*y + m[8]
	return geometry.Point{X: (m[0]*x + m[1]*y + m[2]) / w, Y: (m[3]*x + m[4]*y + m[5]) / w}
}

// Mm returns the place of a pixel on the glass.
func (f Frame) Mm(x, y float64) geometry.Point {
	p := f.lens.Straight(geometry.Point{X: x, Y: y})
	return apply(f.to, p.X, p.Y)
}

// Pixel returns the place in the picture of a place on the glass.
func (f Frame) Pixel(p geometry.Point) geometry.Point { return f.lens.Bent(apply(f.back, p.X, p.Y)) }

// cropped is a piece of a picture with its frame; all of it where the box is empty.
func cropped(picture *image.Gray, frame Frame, to geometry.Box) (*image.Gray, Frame) {
	piece := image.Rect(int(to.Min.X), int(to.Min.Y), int(math.Ceil(to.Max.X)), int(math.Ceil(to.Max.Y))).Intersect(picture.Rect)
	if piece.Dx() < LeastSide || piece.Dy() < LeastSide {
		return picture, frame
	}
	out := image.NewGray(image.Rectangle{Max: piece.Size()})
	for y := range piece.Dy() {
		copy(out.Pix[y*out.Stride:], picture.Pix[(y+piece.Min.Y)*picture.Stride+piece.Min.X:][:piece.Dx()])
	}
	return out, frame.from(float64(piece.Min.X), float64(piece.Min.Y))
}

// from is the frame of a piece of the picture that begins at a pixel.
func (f Frame) from(x, y float64) Frame {
	moved := f
	moved.lens = f.lens.From(x, y)
	moved.first = f.first.Add(geometry.Point{X: x, Y: y})
	for row := range 3 {
		moved.to[3*row+2] += f.to[3*row]*x + f.to[3*row+1]*y
	}
	for column := range 3 {
		moved.back[column] -= x * f.back[6+column]
		moved.back[3+column] -= y * f.back[6+column]
	}
	return moved
}

// pixelMm is the side of a pixel at a place of the picture, in mm.
func (f Frame) pixelMm(x, y float64) float64 {
	const step = 0.5
	a := f.Mm(x+step, y).Sub(f.Mm(x-step, y))
	b := f.Mm(x, y+step).Sub(f.Mm(x, y-step))
	return math.Sqrt(math.Abs(a.X*b.Y - a.Y*b.X))
}

// Limits of a pixel's side.
const (
	finestPixelMm   = 0.002
	coarsestPixelMm = 0.6
)

// check sees that the whole picture lies on the plane, before its horizon.
func (f Frame) check(size image.Point) error {
	w, h := float64(size.X), float64(size.Y)
	for _, c := range [][2]float64{{0, 0}, {w, 0}, {0, h}, {w, h}} {
		p := f.lens.Straight(geometry.Point{X: c[0], Y: c[1]})
		depth := f.to[6]*p.X + f.to[7]*p.Y + f.to[8]
		if !(depth > 0) {
			return finding.Failed(HorizonSeen, nil)
		}
	}
	side := f.pixelMm(w/2, h/2)
	if !(side >= finestPixelMm && side <= coarsestPixelMm) {
		return finding.Failed(PixelSize, finding.Values{
			"pixel": unit.Length(side), "least": unit.Length(finestPixelMm), "most": unit.Length(coarsestPixelMm),
		})
	}
	return nil
}
