package survey

import (
	"math"

	"drawdown/geometry"
)

// Lopsided says that the holes named above or below the level line decide the
// side by little: they lie near the line, and most of the others on the other
// side of it. Who named one by sight may have been wrong, and then the part is
// mirrored. Against counts the others there, of all that lie off the line; far is
// the one of them that lies the furthest off.
func (n Network) Lopsided(s Solution) (against, of, far int, found bool) {
	named := append(append([]int(nil), n.Above...), n.Below...)
	if len(named) == 0 || s.Straight {
		return 0, 0, 0, false
	}
	free := map[int]bool{}
	for _, l := range s.Loose {
		free[l.Hole] = l.Why == Free
	}
	side, furthest, height := 1.0, 0.0, 0.0
	if len(n.Above) == 0 {
		side = -1
	}
	for _, h := range named {
		height = math.Max(height, math.Abs(s.Points[h].Y))
	}
	for h, p := range s.Points {
		if free[h] || h == n.Level[0] || h == n.Level[1] {
			continue
		}
		of++
		if side*p.Y < 0 {
			against++
			if math.Abs(p.Y) > furthest {
				far, furthest = h, math.Abs(p.Y)
			}
		}
	}
	const near = 0.2 // of how far the others lie on the other side
	return against, of, far, 2*against > of && height < near*furthest
}

// Round gives the way in which the holes run round the part, in the order of
// their numbers: the first ones of them that go round it one way, more than half
// of all and more than half of the turn. Not ok where they do not.
func (s Solution) Round() (clockwise, ok bool) {
	free := map[int]bool{}
	for _, l := range s.Loose {
		free[l.Hole] = l.Why == Free
	}
	var at []geometry.Point
	for h, p := range s.Points {
		if !free[h] {
			at = append(at, p)
		}
	}
	if len(at) < 3 || s.Straight {
		return false, false
	}
	middle := geometry.Enclose(at).Centre
	total, run := 0.0, 1
	for k := 1; k < len(at); k++ {
		step := math.Remainder(at[k].AngleFrom(middle)-at[k-1].AngleFrom(middle), 360)
		if total*step < 0 || math.Abs(step) > 179 || math.Abs(total+step) > 361 {
			break
		}
		total, run = total+step, run+1
	}
	return total < 0, math.Abs(total) > 180 && 2*run > len(at)
}
