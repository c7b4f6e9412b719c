package trace

import (
	"image"
	"math"
)

// mask says of each pixel whether it is part or background.
type mask struct {
	width, height int
	part          []bool
	tone          Tone // of the part
}

// split parts the pixels, each smoothed with its neighbours so that the grain
// of the picture makes no holes.
func split(picture *image.Gray, l light, tone Tone) *mask {
	size := picture.Rect.Size()
	m := &mask{width: size.X, height: size.Y, part: make([]bool, size.X*size.Y), tone: tone}
	smooth := make([]int, size.X)
	for y := range size.Y {
		smoothRow(picture, y, smooth)
		row, threshold := m.part[y*size.X:(y+1)*size.X], 0.0
		for x := range row {
			if x%lightStep == 0 {
				threshold = 16 * l.middle(float64(x)+lightStep/2, float64(y))
			}
			row[x] = float64(smooth[x]) < threshold
		}
	}
	if tone == ToneAuto && m.onRim() < m.width+m.height {
		m.tone = ToneDark
	}
	if m.tone != ToneDark {
		m.tone = ToneLight
		for i := range m.part {
			m.part[i] = !m.part[i]
		}
	}
	return m
}

// lightStep is how many pixels share one threshold: light changes slowly.
const lightStep = 16

// smoothRow returns the row y under the weights 1 2 1 both ways, times 16.
func smoothRow(picture *image.Gray, y int, out []int) {
	last := picture.Rect.Dy() - 1
	row := func(y int) []uint8 {
		y = min(max(y, 0), last)
		return picture.Pix[y*picture.Stride : y*picture.Stride+len(out)]
	}
	above, here, below := row(y-1), row(y), row(y+1)
	sum := func(x int) int { return int(above[x]) + 2*int(here[x]) + int(below[x]) }
	left, middle := sum(0), sum(0)
	for x := range out {
		right := middle
		if x+1 < len(out) {
			right = sum(x + 1)
		}
		out[x] = left + 2*middle + right
		left, middle = middle, right
	}
}

// onRim counts the part's pixels along the rim of the picture.
func (m *mask) onRim() int {
	n := 0
	count := func(x, y int) {
		if m.part[y*m.width+x] {
			n++
		}
	}
	for x := range m.width {
		count(x, 0)
		count(x, m.height-1)
	}
	for y := range m.height {
		count(0, y)
		count(m.width-1, y)
	}
	return n
}

// has reports whether a pixel lies in the picture and is part, or is background.
func (m *mask) has(x, y int, part bool) bool {
	return x >= 0 && y >= 0 && x < m.width && y < m.height && m.part[y*m.width+x] == part
}

// fibreMm is the width up to which a line across the picture is a hair or a
// scratch: no web of a gasket and no slot is as thin.
const fibreMm = 0.3

// dropFibres takes out lines of either tone that are too thin for the part: a
// hair across a hole would make two of it, a scratch would open it.
func (m *mask) dropFibres(pixelMm float64) {
	width := min(int(math.Round(fibreMm/pixelMm)), 10)
	if width < 1 {
		return
	}
	for _, part := range []bool{true, false} {
		m.dropThin(part, width, true)
		m.dropThin(part, width, false)
	}
}

// dropThin changes the tone of stretches of up to so many pixels, down columns or
// along rows, that lie between pixels of the other tone.
func (m *mask) dropThin(part bool, width int, down bool) {
	began := make([]int, max(m.width, m.height)) // where the stretch of each line began; 0 outside of one
	step := 1
	if down {
		step = m.width
	}
	for y := range m.height {
		for x := range m.width {
			i, line, at := y*m.width+x, y, x
			if down {
				line, at = x, y
			}
			from := began[line]
			if m.part[i] == part {
				if from == 0 {
					began[line] = at
				}
				continue
			}
			if from > 0 && at-from <= width {
				for k := from; k < at; k++ {
					m.part[i-(at-k)*step] = !part
				}
			}
			began[line] = 0
		}
	}
}
