package dxf

import (
	"math"
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

// insert draws a block at its place, once or in rows and columns.
func (r *reader) insert(e entity, at place) {
	name := r.letters.read(e.text(2))
	key := strings.ToLower(name)
	b := r.blocks[key]
	switch {
	case b == nil:
		r.leaveOut(BlockMissing, e)
		return
	case b.outside:
		r.leaveOut(FromOtherFile, e)
		return
	case slices.Contains(at.within, key):
		r.stop(faultAt(at.line, name, BlockInItself, finding.Values{"name": shown(name)}))
		return
	case len(at.within) >= deepest:
		r.stop(faultAt(at.line, name, BlocksTooDeep, finding.Values{"most": deepest}))
		return
	}
	columns, rows := max(1, r.wholeOf(e, 70, 1)), max(1, r.wholeOf(e, 71, 1))
	if columns > mostDrawn/rows {
		r.stop(faultAt(e.line, name, TooManyCopies, finding.Values{"columns": columns, "rows": rows, "most": mostDrawn}))
		return
	}
	angle := r.numberOf(e, 50, 0) * math.Pi / 180
	cos, sin := math.Cos(angle), math.Sin(angle)
	turned := affine{p: geometry.Point{X: cos, Y: sin}, q: geometry.Point{X: -sin, Y: cos}, move: r.xy(e, 10, 20)}
	sizes := affine{p: geometry.Point{X: r.numberOf(e, 41, 1)}, q: geometry.Point{Y: r.numberOf(e, 42, 1)}}
	stepX, stepY := r.numberOf(e, 44, 0), r.numberOf(e, 45, 0)
	inner := at
	inner.within = append(slices.Clone(at.within), key)
	for row := range rows {
		for column := range columns {
			if r.drawn++; r.drawn > mostDrawn { // count empty blocks, too
				r.stop(faultAt(at.line, name, BlocksUnfold, finding.Values{"most": mostDrawn}))
			}
			step := moved(geometry.Point{X: float64(column) * stepX, Y: float64(row) * stepY})
			inner.to = at.to.after(turned).after(step).after(sizes).after(moved(b.base.Scale(-1)))
			for _, one := range b.entities {
				r.draw(one, inner)
			}
			if r.bad != nil {
				return
			}
		}
	}
}
