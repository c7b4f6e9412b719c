package contact

import "gonum.org/v1/gonum/floats"

// factor is L·diag(d)·Lᵀ of a symmetric matrix, extended row by row. The rows
// of L are stored one after the other, without their unit diagonal.
//
// mat.Cholesky does the same but allocates in each call, which takes longer
// than all other work on ten bolts.
type factor struct {
	l, d []float64
	n    int
}

func (f *factor) reset() { f.cut(0) }

// cut keeps the first n rows.
func (f *factor) cut(n int) { f.l, f.d, f.n = f.l[:n*(n-1)/2], f.d[:n], n }

func (f *factor) row(i int) []float64 { return f.l[i*(i-1)/2 : i*(i+1)/2] }

// handedOn is the length from which a sum is passed to the library.
const handedOn = 8

// grow adds row n of the matrix, given as the row of member over the members
// before it.
func (f *factor) grow(row []float64, members []int, member int) {
	start := len(f.l)
	for _, k := range members[:f.n] {
		f.l = append(f.l, row[k])
	}
	y := f.l[start:]
	pivot := row[member]
	rows := f.l
	for i := range y { // forward substitution gives d·L; short sums are done here
		sum := 0.0
		if row := rows[:i]; i < handedOn {
			for k, v := range row {
				sum += v * y[k]
			}
		} else {
			sum = floats.Dot(row, y[:i])
		}
		y[i] -= sum
		rows = rows[i:]
	}
	for i, d := range f.d {
		scaled := y[i] / d
		pivot -= y[i] * scaled
		y[i] = scaled
	}
	f.d = append(f.d, pivot)
	f.n++
}

// backward overwrites x with L⁻ᵀx, for as many rows as x has.
func (f *factor) backward(x []float64) {
	for i := len(x) - 1; i > 0; i-- {
		floats.AddScaled(x[:i], -x[i], f.row(i))
	}
}

// solve overwrites x with the solution of the whole system.
func (f *factor) solve(x []float64) {
	for i := range f.n {
		x[i] -= floats.Dot(f.row(i), x[:i])
	}
	for i := range f.n {
		x[i] /= f.d[i]
	}
	f.backward(x)
}
