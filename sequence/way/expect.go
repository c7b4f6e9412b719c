package way

import (
	"cmp"
	"slices"

	"drawdown/geometry"
)

// blurred is the width over which distances pass for alike, in units of the
// farthest place: on a round part no place has a turn of its own.
const blurred = 0.15

// expect appends, for each step of a stage, the distance whose turn it is and
// what is bent by then if places come by their distance. A place counts little
// by little as the distance passes it, so that nothing jumps where two change
// places.
func (o *objective) expect(stage []int) {
	order := slices.Clone(stage)
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(o.far[a], o.far[b]) })
	var before geometry.Point
	if len(o.bent) > 0 {
		before = o.bent[len(o.bent)-1]
	}
	low, high := o.far[order[0]]-blurred/2, o.far[order[len(order)-1]]+blurred/2
	const samples = 64
	count := make([]float64, samples+1)
	bent := make([]geometry.Point, samples+1)
	for s := range count {
		at := low + (high-low)*float64(s)/samples
		for _, i := range order {
			share := min(1, max(0, (at-o.far[i])/blurred+0.5))
			count[s] += share
			bent[s] = bent[s].Add(o.square[i].Scale(share))
		}
	}
	s := 0
	for k, i := range order {
		o.turnAt = append(o.turnAt, o.far[i])
		for s < samples-1 && count[s+1] < float64(k+1) {
			s++
		}
		between := min(1, max(0, (float64(k+1)-count[s])/max(count[s+1]-count[s], 1e-9)))
		o.bent = append(o.bent, before.Add(bent[s]).Add(bent[s+1].Sub(bent[s]).Scale(between)))
	}
}
