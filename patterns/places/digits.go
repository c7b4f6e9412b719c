package places

import (
	"slices"
	"strconv"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
)

// exchangedDigits warns of a fastener one of whose coordinates has two digits exchanged:
// with them in order it is that of two others of its kind, which all share theirs.
func (c check) exchangedDigits() {
	if _, found := geometry.FindOdd(c.Joint.Points()); found {
		return // which is said
	}
	unpaired, _, lost := c.lost()
	of := map[string][]int{}
	for i, f := range c.Joint.Fasteners {
		of[f.Kind] = append(of[f.Kind], i)
	}
	for i, f := range c.Joint.Fasteners {
		if !written(c.Fasteners[i]) || lost && i == unpaired {
			continue
		}
		for _, axis := range []func(geometry.Point) float64{func(p geometry.Point) float64 { return p.X }, func(p geometry.Point) float64 { return p.Y }} {
			own := axis(f.At)
			alone := func(k int) bool { return c.others(of[f.Kind], k, axis, axis(c.Joint.Fasteners[k].At)) == 0 }
			if !alone(i) || slices.ContainsFunc(of[f.Kind], func(k int) bool { return k != i && alone(k) }) {
				continue
			}
			for _, meant := range exchanges(own) {
				const enough = 2
				if c.others(of[f.Kind], i, axis, meant) >= enough {
					c.Warn(c.Fasteners[i], DigitsExchanged, finding.Values{"id": f.ID, "written": own, "meant": meant})
					return
				}
			}
		}
	}
}

// written reports whether a fastener has its place in the file, and not by a generator.
func written(n *nodes.Node) bool { return n.Shape == nodes.Map && n.Get("at") != nil }

// others counts the fasteners of a list but one that are as far from the axis.
func (c check) others(list []int, but int, axis func(geometry.Point) float64, as float64) (n int) {
	for _, k := range list {
		if v := axis(c.Joint.Fasteners[k].At); k != but && (v == as || v == -as) {
			n++
		}
	}
	return n
}

// exchanges returns a figure with each two neighbouring digits exchanged.
func exchanges(figure float64) (all []float64) {
	said := []byte(strconv.FormatFloat(figure, 'f', -1, 64))
	digit := func(c byte) bool { return c >= '0' && c <= '9' }
	for k := 1; k < len(said); k++ {
		if digit(said[k]) && digit(said[k-1]) && said[k] != said[k-1] {
			other := append([]byte{}, said...)
			other[k], other[k-1] = other[k-1], other[k]
			v, _ := strconv.ParseFloat(string(other), 64) // of the same digits
			all = append(all, v)
		}
	}
	return all
}
