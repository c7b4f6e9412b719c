package way

import (
	"math/rand/v2"
	"slices"
	"testing"

	"drawdown/geometry"
)

// First principles: a head stays a head, measured up to a tenth of the pitch off
// in x and in y.
func TestHeadsMeasuredATenthOff(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 10))
	off := func(pitch float64) float64 { return 0.1 * pitch * (2*r.Float64() - 1) }
	for _, pitch := range [][2]float64{{95, 90}, {60, 110}, {100, 63}, {92, 64}, {80, 80}} {
		for columns := 2; columns <= 8; columns++ {
			for rows := 1; rows <= 3; rows++ {
				head := geometry.Grid(columns, rows, pitch[0], pitch[1], geometry.Point{X: 31, Y: -17})
				if len(head) == 4 { // four corners are no head
					continue
				}
				want, changed := Places(head, Auto, TurnDefault), 0
				for range 40 {
					measured := moved(head, func(p geometry.Point) geometry.Point {
						return geometry.Point{X: p.X + off(pitch[0]), Y: p.Y + off(pitch[min(1, rows-1)])}
					})
					if !slices.Equal(want, Places(measured, Auto, TurnDefault)) {
						changed++
					}
				}
				if changed > 0 {
					t.Errorf("grid %d×%d at %v: the order changed in %d of 40", columns, rows, pitch, changed)
				}
			}
		}
	}
}
