package geometry

import "math"

// cells files points in a grid of square cells, about one a point, so that
// what lies near a point is found without looking at all others.
type cells struct {
	points        []Point
	low           Point
	side          float64
	columns, rows int
	first         []int // of each cell, in member; one more at the end
	member        []int // indices of points, cell by cell
}

func newCells(points []Point) *cells {
	box := Bounds(points)
	// A row of points has no area; it is filed as a strip.
	width, height := math.Max(box.Width(), box.Height()/64), math.Max(box.Height(), box.Width()/64)
	c := &cells{points: points, low: box.Min, side: math.Sqrt(width*height/float64(max(1, len(points)))) + 1e-9}
	c.columns, c.rows = int(box.Width()/c.side)+1, int(box.Height()/c.side)+1
	c.first = make([]int, c.columns*c.rows+1)
	for _, p := range points {
		c.first[c.cell(p)+1]++
	}
	for k := 1; k < len(c.first); k++ {
		c.first[k] += c.first[k-1]
	}
	next := make([]int, len(c.first))
	copy(next, c.first)
	c.member = make([]int, len(points))
	for i, p := range points {
		k := c.cell(p)
		c.member[next[k]] = i
		next[k]++
	}
	return c
}

func (c *cells) place(p Point) (column, row int) {
	return int((p.X - c.low.X) / c.side), int((p.Y - c.low.Y) / c.side)
}

func (c *cells) cell(p Point) int {
	column, row := c.place(p)
	return row*c.columns + column
}

// nearest gives the nearest neighbour of a point; its own index where it is
// alone. The cells about it are searched ring by ring: what lies in ring n is
// more than n-1 cells away.
func (c *cells) nearest(i int) int {
	found, best := i, math.Inf(1)
	column, row := c.place(c.points[i])
	for ring := 0; ring <= max(c.columns, c.rows) && best > float64(ring-1)*c.side; ring++ {
		for y := max(0, row-ring); y <= min(c.rows-1, row+ring); y++ {
			step := 1
			if y != row-ring && y != row+ring {
				step = max(1, 2*ring) // only the ends of the rows between
			}
			for x := column - ring; x <= column+ring; x += step {
				found, best = c.nearer(i, x, y, found, best)
			}
		}
	}
	return found
}

// nearer gives the point of one cell that is nearer to point i than best, and
// its distance; found and best where there is none.
func (c *cells) nearer(i, x, y, found int, best float64) (int, float64) {
	if x < 0 || x >= c.columns {
		return found, best
	}
	cell := y*c.columns + x
	for _, k := range c.member[c.first[cell]:c.first[cell+1]] {
		if d := c.points[i].Distance(c.points[k]); k != i && d < best {
			found, best = k, d
		}
	}
	return found, best
}
