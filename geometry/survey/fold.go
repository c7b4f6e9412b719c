package survey

import (
	"fmt"
	"math"
	"slices"

	"drawdown/geometry"
)

// fold is an alternative position of some holes that fits the readings equally
// well: mirrored on the line through the holes that hold them.
type fold struct {
	holes []int
	at    []geometry.Point // all places, in the frame of the network
}

// otherPlaceMm is the least distance between two separate positions. Closer
// ones count as one position with a large standard error.
const otherPlaceMm = 1

// folds finds the alternative positions of the holes of the core. It tries
// every line through two holes: if removing the holes on it separates the
// others into parts, each part may be mirrored on the line.
func (n Network) folds(at []geometry.Point, readings []Reading, core []bool, accuracy float64) []fold {
	var found []fold
	seen := map[string]bool{}
	cost := squares(at, readings, accuracy)
	for u := range at {
		for v := range u {
			if !core[u] || !core[v] || at[u].Distance(at[v]) < otherPlaceMm {
				continue
			}
			on := onLine(at, at[u], at[v], math.Max(0.3, 4*accuracy))
			for _, part := range n.parts(readings, core, on) {
				name := fmt.Sprint(part)
				if seen[name] {
					continue
				}
				if f, ok := n.turnedOver(at, readings, core, part, at[u], at[v], cost, accuracy); ok {
					found, seen[name] = append(found, f), true
				}
			}
		}
	}
	return found
}

func onLine(at []geometry.Point, a, b geometry.Point, slack float64) []bool {
	along := b.Sub(a).Scale(1 / a.Distance(b))
	on := make([]bool, len(at))
	for i, p := range at {
		d := p.Sub(a)
		on[i] = math.Abs(d.X*along.Y-d.Y*along.X) < slack
	}
	return on
}

// parts returns the parts of the core that the holes on the line separate,
// except the one that stays.
func (n Network) parts(readings []Reading, core, on []bool) [][]int {
	label := make([]int, len(core))
	for i := range label {
		label[i] = i
	}
	var root func(int) int
	root = func(i int) int {
		if label[i] != i {
			label[i] = root(label[i])
		}
		return label[i]
	}
	for _, r := range readings {
		if core[r.From] && core[r.To] && !on[r.From] && !on[r.To] {
			label[root(r.From)] = root(r.To)
		}
	}
	byRoot := map[int]int{}
	var parts [][]int
	for i := range core {
		if !core[i] || on[i] {
			continue
		}
		k, known := byRoot[root(i)]
		if !known {
			k, parts = len(parts), append(parts, nil)
			byRoot[root(i)] = k
		}
		parts[k] = append(parts[k], i)
	}
	if len(parts) < 2 {
		return nil
	}
	stays := 0
	for k := range parts {
		if n.anchors(parts[k]) > n.anchors(parts[stays]) {
			stays = k
		}
	}
	return slices.Delete(parts, stays, stays+1)
}

// anchors weighs how firmly a part is tied to the frame: by the holes that the
// file names for it, then by its size.
func (n Network) anchors(part []int) int {
	weight := len(part)
	for _, h := range part {
		if n.Level[0] != n.Level[1] && (h == n.Level[0] || h == n.Level[1]) {
			weight += 4 * n.Holes
		}
		if slices.Contains(n.Above, h) || slices.Contains(n.Below, h) {
			weight += 2 * n.Holes
		}
	}
	return weight
}

// turnedOver returns the fit with a part mirrored on the line. ok is false if
// it fits worse, if it is the same place, if holes would overlap, or if a named
// hole would be on the wrong side.
func (n Network) turnedOver(at []geometry.Point, readings []Reading, core []bool, part []int, a, b geometry.Point, cost, accuracy float64) (fold, bool) {
	over := slices.Clone(at)
	for _, h := range part {
		over[h] = reflected(at[h], a, b)
	}
	over = adjust(over, readings, nil, fully)
	over, _ = n.oriented(over, core)
	far := 0.0
	for _, h := range part {
		far = math.Max(far, over[h].Distance(at[h]))
	}
	const asGood = 9 // three times the accuracy on a single reading
	ok := far > otherPlaceMm && squares(over, readings, accuracy) < cost+asGood &&
		n.astray(over) <= n.astray(at) && n.overlaps(over, core) <= n.overlaps(at, core)
	return fold{holes: part, at: over}, ok
}

func reflected(p, a, b geometry.Point) geometry.Point {
	along := b.Sub(a).Scale(1 / a.Distance(b))
	foot := a.Add(along.Scale(p.Sub(a).Dot(along)))
	return foot.Scale(2).Sub(p)
}

func (n Network) overlaps(at []geometry.Point, core []bool) int {
	const least = 0.5 // between centres, if no diameters are known
	count := 0
	for i := range at {
		for k := range i {
			if !core[i] || !core[k] {
				continue
			}
			apart := least
			if n.Diameters != nil && n.Diameters[i] > 0 && n.Diameters[k] > 0 {
				apart = math.Max(least, (n.Diameters[i]+n.Diameters[k])/2)
			}
			if at[i].Distance(at[k]) < apart {
				count++
			}
		}
	}
	return count
}

// spread measures how far apart the holes are. Of two equally good positions
// the one further out is taken, because a part is rarely folded over itself.
func spread(at []geometry.Point, core []bool) float64 {
	sum := 0.0
	for i := range at {
		for k := range i {
			if core[i] && core[k] {
				sum += at[i].Distance(at[k])
			}
		}
	}
	return sum
}

// unfold mirrors parts as long as that puts named holes on their sides,
// separates overlapping holes, or spreads the holes. It returns the folds that
// remain equally good.
func (n Network) unfold(at []geometry.Point, readings []Reading, core []bool, accuracy float64) ([]geometry.Point, []fold) {
	const mostTurns = 100
	for range mostTurns {
		found := n.folds(at, readings, core, accuracy)
		next := -1
		for k, f := range found {
			if n.preferred(f.at, at, core) && (next < 0 || n.preferred(f.at, found[next].at, core)) {
				next = k
			}
		}
		if next < 0 {
			return at, found
		}
		at = found[next].at
	}
	return at, n.folds(at, readings, core, accuracy)
}

func (n Network) preferred(a, b []geometry.Point, core []bool) bool {
	if x, y := n.astray(a), n.astray(b); x != y {
		return x < y
	}
	if x, y := n.overlaps(a, core), n.overlaps(b, core); x != y {
		return x < y
	}
	return spread(a, core) > spread(b, core)*(1+1e-6)
}
