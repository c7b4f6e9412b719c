package rings

// centre is a place that many edges point to from one distance.
type centre struct{ x, y, radius float64 }

// Radii that one level looks for, in its pixels.
const (
	finestRadius = 5
	widestRadius = 11
	voteShare    = 0.3 // of the way round that has to vote for a centre
)

// centres lets each edge vote for the place at a distance on its bright or its
// dark side (Hough's transform with the direction of the edge; Kimme, Ballard
// and Sklansky, 1975), and returns the places with most votes.
func (l level) centres(bright bool) []centre {
	side := float32(1)
	if !bright {
		side = -1
	}
	votes := make([]uint16, len(l.grey))
	var found []centre
	for radius := finestRadius; radius <= widestRadius; radius++ {
		clear(votes)
		reach := side * float32(radius)
		for _, e := range l.edges {
			x, y := int(float32(e.x)+reach*e.dx+0.5), int(float32(e.y)+reach*e.dy+0.5)
			if x > 0 && y > 0 && x < l.width-1 && y < l.height-1 {
				votes[y*l.width+x]++
			}
		}
		least := uint16(voteShare * 6.28 * float64(radius))
		for y := 1; y < l.height-1; y++ {
			for x := 1; x < l.width-1; x++ {
				i := y*l.width + x
				if votes[i] == 0 {
					continue
				}
				if l.around(votes, i) >= least && l.isPeak(votes, i) {
					found = append(found, centre{float64(x), float64(y), float64(radius)})
				}
			}
		}
	}
	return found
}

// around sums the votes of a place and its eight neighbours.
func (l level) around(votes []uint16, i int) uint16 {
	w := l.width
	return votes[i-w-1] + votes[i-w] + votes[i-w+1] + votes[i-1] + votes[i] + votes[i+1] + votes[i+w-1] + votes[i+w] + votes[i+w+1]
}

// isPeak reports whether no neighbour has more votes.
func (l level) isPeak(votes []uint16, i int) bool {
	v := votes[i]
	for _, k := range [8]int{-l.width - 1, -l.width, -l.width + 1, -1, 1, l.width - 1, l.width, l.width + 1} {
		if votes[i+k] > v {
			return false
		}
	}
	return true
}
