package dxf

import (
	"math"
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

// insert draws a block in its place, once or in rows and columns.
func (r *reader) insert(e entity, at place, layer string) {
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
		r.stop(&fault{lineOf(e, at), finding.Failed(BlockInItself, finding.Values{"name": shown(name)}), name})
		return
	case len(at.within) >= deepest:
		r.stop(&fault{lineOf(e, at), finding.Failed(BlocksTooDeep, finding.Values{"most": deepest}), name})
		return
	}
	columns, rows := max(1, r.wholeOf(e, 70, 1)), max(1, r.wholeOf(e, 71, 1))
	if columns > mostDrawn/rows {
		r.stop(&fault{e.line, finding.Failed(TooManyCopies, finding.Values{"columns": columns, "rows": rows, "most": mostDrawn}), name})
		return
	}
	angle := r.numberOf(e, 50, 0) * math.Pi / 180
	cos, sin := math.Cos(angle), math.Sin(angle)
	turned := affine{p: geometry.Point{X: cos, Y: sin}, q: geometry.Point{X: -sin, Y: cos}, move: r.xy(e, 10, 20)}
	sizes := affine{p: geometry.Point{X: r.numberOf(e, 41, 1)}, q: geometry.Point{Y: r.numberOf(e, 42, 1)}}
	stepX, stepY := r.numberOf(e, 44, 0), r.numberOf(e, 45, 0)
	base := affine{p: geometry.Point{X: 1}, q: geometry.Point{Y: 1}, move: geometry.Point{X: -b.base[0], Y: -b.base[1]}}
	inner := place{layer: layer, within: append(slices.Clone(at.within), key), line: lineOf(e, at)}
	for row := range rows {
		for column := range columns {
			if r.drawn++; r.drawn > mostDrawn { // counted for empty blocks, too
				r.stop(&fault{lineOf(e, at), finding.Failed(BlocksUnfold, finding.Values{"most": mostDrawn}), name})
				return
			}
			step := scaled(1)
			step.move = geometry.Point{X: float64(column) * stepX, Y: float64(row) * stepY}
			inner.to = at.to.after(turned).after(step).after(sizes).after(base)
			for _, one := range b.entities {
				r.draw(one, inner)
				if r.bad != nil {
					return
				}
			}
		}
	}
}
