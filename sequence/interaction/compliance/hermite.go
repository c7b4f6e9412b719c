package compliance

// cubics are the Hermite shape functions on 0…1 as coefficients of 1, ξ, ξ²,
// ξ³: position and slope at the near end, position and slope at the far end.
// Slopes are scaled by the element length, so that all unknowns are in mm.
var cubics = [4][4]float64{{1, 0, -3, 2}, {0, 1, -2, 1}, {0, 0, 3, -2}, {0, 0, -1, 1}}

// hermiteAt returns the shape functions at a position in the element, 0…1.
func hermiteAt(xi float64) (n [4]float64) {
	for p, c := range cubics {
		n[p] = c[0] + xi*(c[1]+xi*(c[2]+xi*c[3]))
	}
	return n
}

// derivative differentiates a polynomial the given number of times.
func derivative(c [4]float64, times int) [4]float64 {
	for range times {
		c = [4]float64{c[1], 2 * c[2], 3 * c[3], 0}
	}
	return c
}

// productOverUnit returns the integral of a product of polynomials over 0…1.
func productOverUnit(a, b [4]float64) (sum float64) {
	for i := range a {
		for j := range b {
			sum += a[i] * b[j] / float64(i+j+1)
		}
	}
	return sum
}

// hermiteProducts returns ∫ N⁽ᵃ⁾ N⁽ᵇ⁾ over an element of the length, for the a-th
// and b-th derivatives.
func hermiteProducts(a, b int, length float64) (h [4][4]float64) {
	scale := length
	for range a + b {
		scale /= length
	}
	for p := range h {
		for q := range h {
			h[p][q] = scale * productOverUnit(derivative(cubics[p], a), derivative(cubics[q], b))
		}
	}
	return h
}
