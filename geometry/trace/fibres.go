package trace

import "math"

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
