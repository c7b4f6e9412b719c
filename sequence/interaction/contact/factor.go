package contact

import "gonum.org/v1/gonum/floats"

// factor is L·diag(d)·Lᵀ of a symmetric matrix, grown a row at a time. The rows
// of L lie one after the other, without their unit diagonal.
//
// mat.Cholesky does the same with an allocation a call, which takes longer than
// the whole work on ten bolts.
type factor struct {
	l, d []float64
	n    int
}

func (f *factor) reset() { f.cut(0) }

// cut leaves the first n rows.
func (f *factor) cut(n int) { f.l, f.d, f.n = f.l[:n*(n-1)/2], f.d[:n], n }

func (f *factor) row(i int) []float64 { return f.l[i*(i-1)/2 : i*(i+1)/2] }

// handedOn is the length from which a sum is worth a call of the library.
const handedOn = 8

// grow adds row n of the matrix, given as the row of member against the
// members before it.
func (f *factor) grow(row []float64, members []int, member int) {
	start := len(f.l)
	for _, k := range members[:f.n] {
		f.l = append(f.l, row[k])
	}
	y := f.l[start:]
	pivot := row[member]
	rows := f.l
	for i := range y { // forward substitution gives d·L; a short sum is done before it is handed on
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

// backward overwrites x with L⁻ᵀx, of as many rows as x has.
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
