package trace

import (
	"math"
	"sort"

	"drawdown/geometry/finding"
)

// blob is a connected patch of part or of background.
type blob struct {
	part                   bool
	pixels                 int
	onRim                  bool // touches the rim of the picture
	x, y                   int  // its first pixel from the top
	inside                 int  // the patch that lies above its first pixel; -1 at the rim
	minX, minY, maxX, maxY int
}

// run is a stretch of like pixels in one row.
type run struct {
	from, to int // the last one excluded
	blob     int
}

// blobs finds all patches in one pass over the rows. Parts hang together over
// corners, background does not, so that no line of the part leaks.
func (m *mask) blobs() ([]blob, error) {
	var found []blob
	var joined forest
	var above, here []run
	for y := range m.height {
		here = here[:0]
		for x := 0; x < m.width; {
			from, isPart := x, m.part[y*m.width+x]
			for x < m.width && m.part[y*m.width+x] == isPart {
				x++
			}
			here = append(here, run{from, x, -1})
		}
		next := 0
		for i := range here {
			r := &here[i]
			isPart := m.part[y*m.width+r.from]
			reach := 0
			if isPart {
				reach = 1
			}
			for next > 0 && (next >= len(above) || above[next].from >= r.from) {
				next--
			}
			for next < len(above) && above[next].to+reach <= r.from {
				next++
			}
			for k := next; k < len(above) && above[k].from < r.to+reach; k++ {
				a := above[k]
				if m.part[(y-1)*m.width+a.from] != isPart {
					continue
				}
				if r.blob < 0 {
					r.blob = joined.root(a.blob)
				} else {
					r.blob = joined.join(r.blob, a.blob)
				}
			}
			if r.blob < 0 {
				r.blob = joined.add()
				found = append(found, blob{part: isPart, x: r.from, y: y, inside: m.above(above, r.from), minX: r.from, minY: y, maxX: r.to - 1, maxY: y})
			}
			b := &found[r.blob]
			b.pixels += r.to - r.from
			b.onRim = b.onRim || y == 0 || y == m.height-1 || r.from == 0 || r.to == m.width
			b.minX, b.maxX, b.maxY = min(b.minX, r.from), max(b.maxX, r.to-1), y
		}
		above, here = here, above
		if len(found) > mostBlobs {
			return nil, finding.Failed(TooMuchGrain, nil)
		}
	}
	return gathered(found, &joined), nil
}

// above gives the patch over a pixel; -1 in the first row.
func (m *mask) above(runs []run, x int) int {
	i := sort.Search(len(runs), func(i int) bool { return runs[i].to > x })
	if i == len(runs) {
		return -1
	}
	return runs[i].blob
}

// gathered adds up the pieces that turned out to hang together. The number of
// a patch is that of its first piece, which is its topmost one.
func gathered(found []blob, joined *forest) []blob {
	for i := range found {
		if r := joined.root(i); r != i {
			b, piece := &found[r], found[i]
			b.pixels += piece.pixels
			b.onRim = b.onRim || piece.onRim
			b.minX, b.minY = min(b.minX, piece.minX), min(b.minY, piece.minY)
			b.maxX, b.maxY = max(b.maxX, piece.maxX), max(b.maxY, piece.maxY)
			found[i].pixels = 0
		}
		if in := found[i].inside; in >= 0 {
			found[i].inside = joined.root(in)
		}
	}
	return found
}

// forest joins numbers into sets; the smallest of a set stands for it.
type forest []int

func (f *forest) add() int {
	*f = append(*f, len(*f))
	return len(*f) - 1
}

func (f forest) root(i int) int {
	for f[i] != i {
		f[i] = f[f[i]]
		i = f[i]
	}
	return i
}

func (f forest) join(a, b int) int {
	a, b = f.root(a), f.root(b)
	if a > b {
		a, b = b, a
	}
	f[b] = a
	return a
}

// patches are the part and what is cut out of it.
type patches struct {
	sheet  blob
	holes  []blob
	specks int // shapes that are too small for a hole
	doubts []finding.Finding
}

// findPart takes the largest patch for the part.
func (m *mask) findPart(frame Frame, o Options) (p patches, err error) {
	all, err := m.blobs()
	if err != nil {
		return p, err
	}
	sheet := largest(all, -1)
	if sheet < 0 {
		return p, finding.Failed(NoPart, nil)
	}
	if second := largest(all, sheet); second >= 0 {
		switch share := float64(all[second].pixels) / float64(all[sheet].pixels); {
		case all[sheet].onRim && !all[second].onRim && share > 0.1:
			sheet = second // the rim of the glass, or what lies round the paper
		case share > 0.25:
			p.doubts = append(p.doubts, finding.Warned(SecondPart, finding.Values{"size": share}))
		}
	}
	p.sheet = all[sheet]
	if p.sheet.onRim {
		p.doubts = append(p.doubts, finding.Warned(CutOff, nil))
	}
	for _, b := range all {
		if b.part || b.pixels == 0 || b.onRim || b.inside != sheet {
			continue
		}
		mm := frame.pixelMm(float64(b.minX+b.maxX)/2, float64(b.minY+b.maxY)/2)
		if math.Sqrt(4*float64(b.pixels)/math.Pi)*mm < o.SmallestMm {
			if b.pixels >= leastSpeck {
				p.specks++
			}
			continue
		}
		p.holes = append(p.holes, b)
	}
	if len(p.holes) > mostShapes {
		return p, finding.Failed(TooManyShapes, finding.Values{"shapes": len(p.holes), "most": mostShapes})
	}
	return p, nil
}

const (
	leastSpeck = 6 // pixels; less is the grain of the picture
	mostShapes = 2000
	mostBlobs  = 2_000_000
)

// largest gives the patch of the part with the most pixels, one left out.
func largest(all []blob, but int) int {
	best := -1
	for i, b := range all {
		if i != but && b.part && b.pixels > 0 && (best < 0 || b.pixels > all[best].pixels) {
			best = i
		}
	}
	return best
}
