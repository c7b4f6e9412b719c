package trace

import (
	"cmp"
	"math"
	"slices"
	"sort"

	"drawdown/geometry"
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

func (b *blob) add(piece blob) {
	b.pixels += piece.pixels
	b.onRim = b.onRim || piece.onRim
	b.minX, b.minY = min(b.minX, piece.minX), min(b.minY, piece.minY)
	b.maxX, b.maxY = max(b.maxX, piece.maxX), max(b.maxY, piece.maxY)
}

// middle is that of the box round the patch, in pixels.
func (b blob) middle() geometry.Point {
	return geometry.Point{X: float64(b.minX+b.maxX+1) / 2, Y: float64(b.minY+b.maxY+1) / 2}
}

// run is a stretch of like pixels in one row.
type run struct {
	from, to int // the last one excluded
	part     bool
	blob     int
}

// blobs finds all patches in one pass over the rows. Parts hang together over
// corners, background does not, so that no line of the part leaks.
func (m *mask) blobs() ([]blob, error) {
	var found []blob
	var joined forest
	var above, here []run
	for y := range m.height {
		here = m.runs(y, here[:0])
		for i := range here {
			r := &here[i]
			reach := 0
			if r.part {
				reach = 1
			}
			for k := endingAfter(above, r.from-reach); k < len(above) && above[k].from < r.to+reach; k++ {
				switch {
				case above[k].part != r.part:
				case r.blob < 0:
					r.blob = joined.root(above[k].blob)
				default:
					r.blob = joined.join(r.blob, above[k].blob)
				}
			}
			onRim := y == 0 || y == m.height-1 || r.from == 0 || r.to == m.width
			piece := blob{part: r.part, pixels: r.to - r.from, onRim: onRim, x: r.from, y: y, inside: -1, minX: r.from, minY: y, maxX: r.to - 1, maxY: y}
			if r.blob >= 0 {
				found[r.blob].add(piece)
				continue
			}
			if y > 0 {
				piece.inside = above[endingAfter(above, r.from)].blob
			}
			r.blob = len(found)
			found, joined = append(found, piece), append(joined, r.blob)
		}
		above, here = here, above
		if len(found) > mostBlobs {
			return nil, finding.Failed(TooMuchGrain, nil)
		}
	}
	// The number of a patch is that of its first piece, which is its topmost one.
	for i := range found {
		if r := joined.root(i); r != i {
			found[r].add(found[i])
			found[i].pixels = 0
		}
		if in := found[i].inside; in >= 0 {
			found[i].inside = joined.root(in)
		}
	}
	return found, nil
}

// runs appends the stretches of a row.
func (m *mask) runs(y int, list []run) []run {
	row := m.part[y*m.width : (y+1)*m.width]
	for x := 0; x < m.width; {
		from := x
		for x < m.width && row[x] == row[from] {
			x++
		}
		list = append(list, run{from, x, row[from], -1})
	}
	return list
}

// endingAfter returns the first stretch that ends behind a place.
func endingAfter(runs []run, x int) int {
	return sort.Search(len(runs), func(i int) bool { return runs[i].to > x })
}

// forest joins numbers into sets; the smallest of a set stands for it.
type forest []int

func (f forest) root(i int) int {
	for f[i] != i {
		f[i] = f[f[i]]
		i = f[i]
	}
	return i
}

func (f forest) join(a, b int) int {
	a, b = f.root(a), f.root(b)
	f[max(a, b)] = min(a, b)
	return min(a, b)
}

// patches are the part and what is cut out of it.
type patches struct {
	sheet  blob
	holes  []blob
	specks int    // shapes that are too small for a hole
	seen   []blob // those of them that an eye sees, the largest first
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
	if o.Fixes.Part > 1 {
		if sheet = nthLargest(all, o.Fixes.Part); sheet < 0 {
			return p, finding.Failed(NoSuchPart, finding.Values{"part": o.Fixes.Part})
		}
	} else {
		if second := largest(all, sheet); second >= 0 && all[sheet].onRim && !all[second].onRim && float64(all[second].pixels) > 0.1*float64(all[sheet].pixels) {
			sheet = second // the first is the rim of the glass, or what lies round the paper
		}
		p.doubts = otherParts(all, sheet, frame)
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
			if float64(max(b.maxX-b.minX, b.maxY-b.minY)+1)*mm >= seenSpeckMm {
				p.seen = append(p.seen, b)
			}
			continue
		}
		p.holes = append(p.holes, b)
	}
	slices.SortStableFunc(p.seen, func(a, b blob) int { return cmp.Compare(b.pixels, a.pixels) })
	p.seen = p.seen[:min(len(p.seen), mostSeenSpecks)]
	if len(p.holes) > mostShapes {
		return p, finding.Failed(TooManyShapes, finding.Values{"shapes": len(p.holes), "most": mostShapes})
	}
	return p, nil
}

const (
	leastSpeck = 6 // pixels; less is the grain of the picture
	mostShapes = 2000
	mostBlobs  = 2_000_000
	// A speck as long as this shows on a proof: a bar of print, a scratch. A part
	// with more of them is dusty, and marks would hide the holes.
	seenSpeckMm    = 1.0
	mostSeenSpecks = 40
)

// nthLargest returns the patch of the part with the most pixels but for so many.
func nthLargest(all []blob, nth int) int {
	parts := wholeParts(all)
	if len(parts) < nth {
		return -1
	}
	return parts[nth-1]
}

// wholeParts lists the patches of the part, the largest first. What touches the rim
// of the picture is none.
func wholeParts(all []blob) (parts []int) {
	for i, b := range all {
		if b.part && b.pixels > 0 && !b.onRim {
			parts = append(parts, i)
		}
	}
	slices.SortStableFunc(parts, func(a, b int) int { return cmp.Compare(all[b].pixels, all[a].pixels) })
	return parts
}

// otherParts doubts the patches nearly as large as the one that is traced, and names
// their places. One at the rim counts only where the traced one is there, too.
func otherParts(all []blob, sheet int, frame Frame) (doubts []finding.Finding) {
	parts := wholeParts(all)
	for i, b := range all {
		share := float64(b.pixels) / float64(all[sheet].pixels)
		if i == sheet || !b.part || share <= secondShare || b.onRim && !all[sheet].onRim {
			continue
		}
		at := frame.first.Add(b.middle())
		doubts = append(doubts, finding.Warned(SecondPart, finding.Values{"size": share, "x": at.X, "y": at.Y, "part": slices.Index(parts, i) + 1}))
	}
	return doubts
}

// secondShare of the pixels of the part: less is a scrap.
const secondShare = 0.25

// largest returns the patch of the part with the most pixels, one left out.
func largest(all []blob, but int) int {
	best := -1
	for i, b := range all {
		if i != but && b.part && b.pixels > 0 && (best < 0 || b.pixels > all[best].pixels) {
			best = i
		}
	}
	return best
}
