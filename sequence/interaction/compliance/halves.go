package compliance

import (
	"cmp"
	"sync"

	"gonum.org/v1/gonum/mat"
)

// halves is the stiffness of a plate in two halves, on either side of a line of
// nodes in the middle that both have at their end. The halves interact only
// through that line: they are calculated in parallel, and a load affects only
// its own half.
type halves struct {
	half         [2]*elements
	block        int // unknowns of a line
	middle, last int // lines
}

// aLoad is a unit load on one of the halves, in unknowns of that half.
type aLoad struct {
	half   int
	shares []share
}

func (m mesh) halves() *halves {
	block := 4 * (min(m.countX, m.countY) + 1)
	last := max(m.countX, m.countY)
	h := &halves{block: block, middle: last / 2, last: last}
	for k, lines := range []int{h.middle + 1, last - h.middle + 1} {
		h.half[k] = newElements(lines*block, m.reach())
		h.half[k].inner -= block
	}
	return h
}

// halfOf is the half of a cell, by the first of its unknowns.
func (h *halves) halfOf(first int) int {
	if first/h.block < h.middle {
		return 0
	}
	return 1
}

// in returns the number of an unknown in a half; the second half is numbered
// from its far end.
func (h *halves) in(half, unknown int) int {
	if half == 0 {
		return unknown
	}
	return (h.last-unknown/h.block)*h.block + unknown%h.block
}

// load returns a load on a cell in the unknowns of its half.
func (h *halves) load(cell [16]int, shares []share) aLoad {
	l := aLoad{half: h.halfOf(cell[0])}
	for _, s := range shares {
		l.shares = append(l.shares, share{h.in(l.half, s.unknown), s.of})
	}
	return l
}

// bare reports whether no element constrains an unknown of a half.
func (h *halves) bare(half, unknown int) bool {
	if e := h.half[half]; unknown < e.inner || !e.bare(unknown) {
		return e.bare(unknown)
	}
	other := h.half[1-half]
	return other.bare(other.inner + unknown - h.half[half].inner)
}

// compliance returns the deflection at each load for a unit load at each other:
// the contribution of each half, and that of the line between them.
func (h *halves) compliance(loads []aLoad) (*mat.SymDense, error) {
	line := newElements(h.block, h.block)
	line.own = make([]float64, h.block)
	for _, e := range h.half {
		for i := range line.own {
			line.own[i] += e.row(e.inner+i, e.inner+i)[0]
		}
	}
	c := mat.NewSymDense(len(loads), nil)
	onLine := make([][]float64, len(loads)) // what reaches the line from each load
	var crew sync.WaitGroup
	var wrong [2]error
	for k := range h.half {
		crew.Go(func() { wrong[k] = h.work(k, loads, c, onLine) })
	}
	crew.Wait()
	if err := cmp.Or(wrong[0], wrong[1]); err != nil {
		return nil, err
	}
	for _, e := range h.half {
		for i := range h.block {
			for j := range i + 1 {
				line.add(i, j, e.row(e.inner+i, e.inner+j)[0])
			}
		}
	}
	if err := line.factor(); err != nil {
		return nil, err
	}
	starts := make([]int, len(loads))
	line.solve(onLine, starts)
	line.products(onLine, starts, func(i, j int, product float64) { c.SetSym(i, j, c.At(i, j)+product) })
	return c, nil
}

// work calculates one half with the loads on it.
func (h *halves) work(half int, loads []aLoad, c *mat.SymDense, onLine [][]float64) error {
	e := h.half[half]
	if err := e.factor(); err != nil {
		return err
	}
	var own [][]share
	var numbers []int // indices of the loads on this half
	for i, l := range loads {
		if l.half == half {
			own, numbers = append(own, l.shares), append(numbers, i)
		}
	}
	halfway, starts := e.spread(own)
	e.solve(halfway, starts)
	e.products(halfway, starts, func(i, j int, product float64) { c.SetSym(numbers[i], numbers[j], product) })
	for i, y := range halfway {
		onLine[numbers[i]] = y[e.inner:]
	}
	return nil
}
