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
	m.dropThin(true, width)
	m.dropThin(false, width)
}

// dropThin changes the tone of stretches of up to so many pixels, along rows and
// down columns, that lie between pixels of the other tone.
func (m *mask) dropThin(part bool, width int) {
	began := make([]int, m.width) // the row in which the stretch of each column began; -1 outside of one
	for i := range began {
		began[i] = -1
	}
	for y := range m.height {
		row := m.part[y*m.width : (y+1)*m.width]
		for x, v := range row {
			if v == part {
				if began[x] < 0 && y > 0 {
					began[x] = y
				}
				continue
			}
			if from := began[x]; from >= 0 && y-from <= width {
				for v := from; v < y; v++ {
					m.part[v*m.width+x] = !part
				}
			}
			began[x] = -1
		}
	}
	for y := range m.height {
		row, from := m.part[y*m.width:(y+1)*m.width], -1
		for x, v := range row {
			if v == part {
				if from < 0 && x > 0 {
					from = x
				}
				continue
			}
			if from >= 0 && x-from <= width {
				for i := from; i < x; i++ {
					row[i] = !part
				}
			}
			from = -1
		}
	}
}
