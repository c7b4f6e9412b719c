package trace

// crack is a place on the border between two pixels, with the direction from
// inside to outside.
type crack struct{ x, y, outX, outY float64 }

// contour walks round a patch along the borders of its pixels, the patch on
// the right hand, and gives the middle of each border passed. Only the outer
// border is walked: what lies inside the patch is not looked at.
func (m *mask) contour(b blob) []crack {
	inside := func(p [2]int) bool { return m.has(p[0], p[1], b.part) }
	var cracks []crack
	// The walk begins at the top left corner of the first pixel and goes right.
	x, y, dx, dy := b.x, b.y, 1, 0
	startX, startY := x, y
	for {
		// The border from (x, y) to (x+dx, y+dy); outside is to the left.
		cracks = append(cracks, crack{float64(x) + float64(dx)/2, float64(y) + float64(dy)/2, float64(dy), -float64(dx)})
		x, y = x+dx, y+dy
		left, right := ahead(x, y, dx, dy)
		l, r := inside(left), inside(right)
		switch {
		case l && (r || b.part): // a corner is crossed by the part only
			dx, dy = dy, -dx
		case r:
			// straight on
		default:
			dx, dy = -dy, dx
		}
		if x == startX && y == startY && dx == 1 && dy == 0 {
			return cracks
		}
	}
}

// ahead gives the two pixels in front of a corner, left and right of the way.
func ahead(x, y, dx, dy int) (left, right [2]int) {
	switch {
	case dx > 0:
		return [2]int{x, y - 1}, [2]int{x, y}
	case dx < 0:
		return [2]int{x - 1, y}, [2]int{x - 1, y - 1}
	case dy > 0:
		return [2]int{x, y}, [2]int{x - 1, y}
	}
	return [2]int{x - 1, y - 1}, [2]int{x, y - 1}
}
