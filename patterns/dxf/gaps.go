package dxf

import (
	"math"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// UsualGap is the size of gaps that are closed unless another is asked for.
// Common practice, no source: far below the size of any feature of a part.
const UsualGap unit.Length = 0.5

// GapSizes holds the sizes that may be asked for.
var GapSizes = unit.Limits{Least: 0, Most: 10, From: "0 mm", To: "10 mm"}

// bridges returns a short piece for each gap between two loose ends that are
// nearest to one another and at most mostMm apart.
func bridges(pieces []piece, mostMm float64) []piece {
	if mostMm <= gapMm {
		return nil
	}
	n := newNet(pieces)
	var loose []int
	for _, ends := range n.ends {
		if len(ends) == 1 {
			loose = append(loose, ends[0])
		}
	}
	squares := geometry.Squares{Side: mostMm}
	for k, end := range loose {
		squares.Add(n.at(end), k)
	}
	nearest := make([]int, len(loose))
	for k, end := range loose {
		nearest[k] = -1
		least := mostMm
		squares.Find(n.at(end), func(other int) bool {
			if d := n.at(end).Distance(n.at(loose[other])); other != k && d <= least && !n.tooShort(end, loose[other], d) {
				nearest[k], least = other, d
			}
			return false
		})
	}
	var found []piece
	for k, other := range nearest {
		if other > k && nearest[other] == k {
			a, b := n.at(loose[k]), n.at(loose[other])
			p := pieces[loose[k]/2]
			found = append(found, piece{points: []geometry.Point{a, b}, round: true, layer: p.layer, line: p.line, bridgesMm: a.Distance(b)})
		}
	}
	return found
}

// tooShort reports whether two ends are of one piece that is no longer than a
// few such gaps: a short stroke does not close on itself.
func (n *net) tooShort(end, other int, gap float64) bool {
	if end/2 != other/2 {
		return false
	}
	length := 0.0
	points := n.pieces[end/2].points
	for i := range points[1:] {
		length += points[i].Distance(points[i+1])
	}
	const fewest = 6 // gaps: the sides of the smallest figure that is worth closing
	return length < fewest*gap
}

// mostGaps limits how many gaps are reported one by one.
const mostGaps = 12

// noteGaps reports the gaps that are part of a closed path.
func (r *reader) noteGaps(pieces []piece, n *net) {
	for i, p := range pieces {
		if p.bridgesMm == 0 || n.pruned[i] {
			continue
		}
		if r.gaps++; r.gaps <= mostGaps {
			at := p.points[0].Add(p.points[1]).Scale(0.5)
			round := func(v float64) unit.Length { return unit.Length(math.Round(v*100)/100 + 0) }
			r.notes = append(r.notes, note{p.line, finding.Warned(GapClosed, finding.Values{"size": unit.Length(p.bridgesMm), "x": round(at.X), "y": round(at.Y)})})
		}
	}
}

func (r *reader) noteMoreGaps() {
	if more := r.gaps - mostGaps; more > 0 {
		r.notes = append(r.notes, note{0, finding.Warned(MoreGaps, finding.Values{"count": more})})
	}
}
