package survey_test

import (
	"fmt"
	"math"

	"drawdown/geometry/survey"
)

// A 3-4-5 triangle.
func ExampleSolve() {
	solution, err := survey.Solve(survey.Network{
		Holes: 3,
		Readings: []survey.Reading{
			{From: 0, To: 1, Distance: 40}, {From: 0, To: 2, Distance: 30}, {From: 1, To: 2, Distance: 50},
		},
		Level: [2]int{0, 1},
		Above: []int{2},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range solution.Points {
		fmt.Printf("%.2f %.2f\n", math.Abs(p.X), p.Y)
	}
	// Output:
	// 0.00 0.00
	// 40.00 0.00
	// 0.00 30.00
}
