package compliance

import (
	"math"
	"math/cmplx"
)

// eulerGamma is Euler's constant γ (Abramowitz and Stegun, table 1.1).
const eulerGamma = 0.57721566490153286

// seriesBelow is where the asymptotic series of kei, with decreasing terms,
// replaces the power series, with increasing terms. Both are accurate to 1e-11
// there.
const seriesBelow = 10

// Kei is the Kelvin function kei of order 0 for x ≥ 0: the shape of a thin
// plate on an elastic foundation under a point load. For other x it is NaN.
func Kei(x float64) float64 {
	switch {
	case !(x >= 0):
		return math.NaN()
	case x == 0:
		return -math.Pi / 4 // Abramowitz and Stegun 9.9.12, at its limit
	case x < seriesBelow:
		return keiSeries(x)
	}
	return keiAsymptotic(x)
}

// keiSeries sums the power series of ber, bei and kei.
func keiSeries(x float64) float64 {
	quarter := x * x / 4
	term := 1.0 // (x²/4)^k / (k!)²
	digamma := -eulerGamma
	var ber, bei, rest float64
	for k := 0; k == 0 || k < 4 || math.Abs(term) > 1e-18; k++ {
		if k > 0 {
			term *= quarter / float64(k*k)
			digamma += 1 / float64(k) // ψ(k+1)
		}
		sign := 1.0
		if k/2%2 == 1 {
			sign = -1
		}
		if k%2 == 0 {
			ber += sign * term // Abramowitz and Stegun 9.9.10
		} else {
			bei += sign * term            // the same
			rest += sign * digamma * term // 9.9.12
		}
	}
	return -math.Log(x/2)*bei - math.Pi/4*ber + rest // Abramowitz and Stegun 9.9.12
}

// keiAsymptotic returns kei as the imaginary part of K₀ on the ray of 45°.
func keiAsymptotic(x float64) float64 {
	z := cmplx.Rect(x, math.Pi/4)
	sum, term := complex(1, 0), complex(1, 0)
	for k := 1; k < 40; k++ {
		odd := float64(2*k - 1)
		next := term * complex(-odd*odd/(8*float64(k)), 0) / z
		if cmplx.Abs(next) >= cmplx.Abs(term) || cmplx.Abs(next) < 1e-18 {
			break
		}
		term = next
		sum += term
	}
	k0 := cmplx.Sqrt(complex(math.Pi/2, 0)/z) * cmplx.Exp(-z) * sum // Abramowitz and Stegun 9.7.2
	return imag(k0)                                                 // 9.9.2: ker x + i kei x = K₀(x e^{iπ/4})
}
