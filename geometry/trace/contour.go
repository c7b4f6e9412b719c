package trace

// crack is a place on the border between two pixels, with the direction from
// inside to outside.
type crack struct{ x, y, outX, outY float64 }

// contour walks round a patch along the borders of its pixels, the patch on
// the right hand, and gives the middle of each border passed. Only the outer
// border is walked: what lies inside the patch is not looked at.
func (m *mask) contour(b blob) []crack {
	var cracks []crack
	// The walk begins at the top left corner of the first pixel and goes right.
	x, y, dx, dy := b.x, b.y, 1, 0
	for {
		// The border from (x, y) to (x+dx, y+dy); outside is to the left.
		cracks = append(cracks, crack{float64(x) + float64(dx)/2, float64(y) + float64(dy)/2, float64(dy), -float64(dx)})
		x, y = x+dx, y+dy
		// The two pixels in front of the corner, left and right of the way.
		l := m.has(x+(dx+dy-1)/2, y+(dy-dx-1)/2, b.part)
		r := m.has(x+(dx-dy-1)/2, y+(dy+dx-1)/2, b.part)
		switch {
		case l && (r || b.part): // a corner is crossed by the part only
			dx, dy = dy, -dx
		case r:
			// straight on
		default:
			dx, dy = -dy, dx
		}
		if x == b.x && y == b.y && dx == 1 && dy == 0 {
			return cracks
		}
	}
}
