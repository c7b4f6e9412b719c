package places

import (
	"maps"
	"math"
	"slices"
	"strconv"

	"drawdown/geometry"
)

// OffRow is a fastener off the row that the neighbouring ids form: P1, P2, P4
// and P5 at even steps, and P3 not between them.
type OffRow struct {
	Index int
	At    geometry.Point // its place in the row
	Off   float64
}

const (
	fewestOfRow  = 4    // others, enough to be sure of the row
	leastOffStep = 0.07 // of a step: a slightly moved bolt is deliberate (common practice, no source)
)

// FindOffRow returns such a fastener if there is only one: two of them are
// deliberate.
func FindOffRow(joint geometry.Joint) (off OffRow, found bool) {
	var all []OffRow
	for _, row := range rowsByID(joint) {
		numbers := slices.Sorted(maps.Keys(row.index))
		if len(numbers) <= fewestOfRow {
			continue
		}
		for k, n := range numbers {
			i, others := row.index[n], slices.Concat(numbers[:k], numbers[k+1:])
			place, step, even := row.evenAt(n, others)
			for by := 1; by <= 2 && !even; by++ { // 1, 2, 3 along a row, or 1, 3, 5
				place, step, even = row.evenAt(n, []int{n - 2*by, n - by, n + by, n + 2*by})
			}
			if d := place.Distance(joint.Fasteners[i].At); even && d > max(toleranceMm, leastOffStep*step) {
				all = append(all, OffRow{i, place, d})
			}
		}
	}
	if len(all) != 1 {
		return OffRow{}, false
	}
	return all[0], true
}

// rowByID holds the fasteners whose ids have the same letters, by number.
type rowByID struct {
	joint geometry.Joint
	index map[int]int
}

func rowsByID(joint geometry.Joint) (all []rowByID) {
	of := map[string]map[int]int{}
	for i, f := range joint.Fasteners {
		m := lettersAndNumber.FindStringSubmatch(f.ID)
		if m == nil {
			continue
		}
		if of[m[1]] == nil {
			of[m[1]] = map[int]int{}
			all = append(all, rowByID{joint, of[m[1]]})
		}
		n, _ := strconv.Atoi(m[2])
		of[m[1]][n] = i
	}
	return all
}

// evenAt returns the place of a number according to the places of others, if
// these are at even steps.
func (r rowByID) evenAt(n int, others []int) (place geometry.Point, step float64, even bool) {
	at := func(k int) geometry.Point { return r.joint.Fasteners[r.index[k]].At }
	for _, k := range others {
		if _, there := r.index[k]; !there {
			return place, 0, false
		}
	}
	low, high := others[0], others[len(others)-1]
	by := at(high).Sub(at(low)).Scale(1 / float64(high-low))
	on := func(k int) geometry.Point { return at(low).Add(by.Scale(float64(k - low))) }
	for _, k := range others {
		if at(k).Distance(on(k)) > toleranceMm {
			return place, 0, false
		}
	}
	return on(n), math.Hypot(by.X, by.Y), true
}
