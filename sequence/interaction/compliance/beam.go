package compliance

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Beam is a beam with two free ends on a foundation, which is per millimetre of
// its length, in N/mm².
type Beam struct{ BendingNmm2, FoundationMPa, LengthMm float64 }

const (
	beamElementShare = 0.1  // of the characteristic length 1/λ: an error below 1e-6
	mostBeamElements = 4000 // with more, a unit is wrong
)

// Compliance returns the deflection of the beam at each place along it for a
// unit load at each other, in mm/N. It uses finite elements with a node at each
// place.
func (b Beam) Compliance(alongMm []float64) (*mat.SymDense, error) {
	if err := b.check(alongMm); err != nil {
		return nil, err
	}
	lambda := beamLambda(b.BendingNmm2, b.FoundationMPa)
	nodes := b.nodes(alongMm, beamElementShare/lambda)
	e := newElements(2*len(nodes), 3)
	for n := range len(nodes) - 1 {
		length := nodes[n+1] - nodes[n]
		bend, hold := hermiteProducts(2, 2, length), hermiteProducts(0, 0, length)
		slope := length * lambda // slopes are scaled by 1/λ, in every element
		scale := [4]float64{1, slope, 1, slope}
		for p := range 4 {
			for q := range 4 {
				e.add(2*n+p, 2*n+q, (b.BendingNmm2*bend[p][q]+b.FoundationMPa*hold[p][q])*scale[p]*scale[q])
			}
		}
	}
	loads := make([][]share, len(alongMm))
	for i, x := range alongMm {
		loads[i] = []share{{2 * nearestNode(nodes, x), 1}}
	}
	return e.compliance(loads)
}

// nodes puts a node at each end and at each load, and others between them.
func (b Beam) nodes(alongMm []float64, farthest float64) []float64 {
	stops := append([]float64{0, b.LengthMm}, alongMm...)
	slices.Sort(stops)
	nodes := []float64{0}
	for _, stop := range stops {
		from := nodes[len(nodes)-1]
		gap := stop - from
		if gap <= nodeShare*b.LengthMm {
			continue
		}
		count := max(2, math.Ceil(gap/farthest))
		for n := 1.0; n <= count; n++ {
			nodes = append(nodes, from+gap*n/count)
		}
	}
	return nodes
}

// nodeShare is the share of the length within which two loads use the same
// node.
const nodeShare = 1e-6

func nearestNode(nodes []float64, x float64) int {
	n, _ := slices.BinarySearch(nodes, x)
	if n == len(nodes) || n > 0 && x-nodes[n-1] < nodes[n]-x {
		n--
	}
	return n
}

func (b Beam) check(alongMm []float64) error {
	if len(alongMm) == 0 {
		return errNoFasteners
	}
	if err := positive(quantity{"bending stiffness", b.BendingNmm2, "N·mm²"}, quantity{"foundation", b.FoundationMPa, "N/mm²"}, quantity{"length of the row", b.LengthMm, "mm"}); err != nil {
		return err
	}
	if reach := 1 / beamLambda(b.BendingNmm2, b.FoundationMPa); b.LengthMm > mostBeamElements*beamElementShare*reach {
		return finding.Failed(RowTooLong, finding.Values{"length": unit.Length(b.LengthMm), "reach": unit.Length(reach), "times": int(mostBeamElements * beamElementShare)})
	}
	for i, x := range alongMm {
		if !(x >= 0 && x <= b.LengthMm) {
			return finding.Failed(OffTheRow, finding.Values{"number": i + 1, "at": unit.Length(x), "length": unit.Length(b.LengthMm)})
		}
	}
	return nil
}
