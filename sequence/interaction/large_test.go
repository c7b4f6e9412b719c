package interaction

import (
	"errors"
	"strconv"
	"testing"

	"drawdown/patterns/patterntest"
	"drawdown/sequence/interaction/prediction"
)

// large is a joint with side rows and columns of bolts on a gasket.
func large(side int) string {
	n := strconv.Itoa(side)
	return `drawdown: 1
title: Large joint
kinds: {b: {thread: M12, class: "8.8", length: 50 mm, grip: 30 mm, into: cast iron, engagement: 18 mm, head: 18 mm, hole: 13.5 mm, lubricant: engine oil}}
fasteners: [{grid: {columns: ` + n + `, rows: ` + n + `, pitch: [60, 55], id: M}}]
joint: {part: {material: steel, thickness: 30 mm}, gasket: {kind: paper}}
tighten: {stages: [{torque: 20 N·m}, {torque: 40 N·m}, {torque: 80 N·m}], source: works manual}
`
}

// 32 rows and columns are too many for a prediction.
func TestTooManyBolts(t *testing.T) {
	_, err := Predict(patterntest.Plan(t, large(32)), Question{})
	if !errors.Is(err, prediction.TooManyBolts) {
		t.Error(err)
	}
}

// BenchmarkLargeJoint predicts joints of 100 and 400 bolts, alone and compared
// with other ways to do the work.
func BenchmarkLargeJoint(b *testing.B) {
	for _, side := range []int{10, 20} {
		p := patterntest.Plan(b, large(side))
		for name, search := range map[string]bool{"alone": false, "compared": true} {
			b.Run(strconv.Itoa(side*side)+" "+name, func(b *testing.B) {
				for b.Loop() {
					if _, err := Predict(p, Question{Search: search}); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
