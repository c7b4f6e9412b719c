package space

import (
	"math"

	"drawdown/render/scene"
)

// Cells divides a box on the page into cells, so that things are compared only
// with what is near them. Things outside the box belong to the cells at its
// edge.
type Cells struct {
	box        scene.Box
	cell       float64 // side of a cell, in millimetres
	cols, rows int
}

// NewCells divides a box into cells of a given side, in millimetres.
func NewCells(box scene.Box, cell float64) Cells {
	return Cells{
		box: box, cell: cell,
		cols: max(1, int(math.Ceil(box.Width()/cell))),
		rows: max(1, int(math.Ceil(box.Height()/cell))),
	}
}

func (g Cells) Count() int { return g.cols * g.rows }

func (g Cells) column(x float64) int { return max(0, min(int((x-g.box.Left)/g.cell), g.cols-1)) }
func (g Cells) row(y float64) int    { return max(0, min(int((y-g.box.Top)/g.cell), g.rows-1)) }

// InBox calls visit for the cells that a box touches until it returns false,
// and reports whether all were visited.
func (g Cells) InBox(b scene.Box, visit func(cell int) (goOn bool)) bool {
	left, right := g.column(b.Left), g.column(b.Right)
	for y := g.row(b.Top); y <= g.row(b.Bottom); y++ {
		for x := left; x <= right; x++ {
			if !visit(y*g.cols + x) {
				return false
			}
		}
	}
	return true
}

// OnLine visits the cells that a straight line touches, with some clearance
// around it.
func (g Cells) OnLine(from, to scene.Point, air float64, visit func(cell int) (goOn bool)) bool {
	if from.Y > to.Y {
		from, to = to, from
	}
	first, last := g.row(from.Y-air), g.row(to.Y+air)
	low, high := min(from.X, to.X), max(from.X, to.X)
	for y := first; y <= last; y++ {
		left, right := low, high
		if dy := to.Y - from.Y; dy > 1e-9 && first < last {
			// The part of the line in this row.
			top, foot := g.box.Top+float64(y)*g.cell-air, g.box.Top+float64(y+1)*g.cell+air
			a := from.X + (to.X-from.X)*max(0, min(1, (top-from.Y)/dy))
			z := from.X + (to.X-from.X)*max(0, min(1, (foot-from.Y)/dy))
			left, right = min(a, z), max(a, z)
		}
		for x := g.column(left - air); x <= g.column(right+air); x++ {
			if !visit(y*g.cols + x) {
				return false
			}
		}
	}
	return true
}
