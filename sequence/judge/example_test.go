package judge_test

import (
	"fmt"
	"strings"

	"drawdown/geometry"
	"drawdown/sequence/judge"
)

// A learner begins at an end of a row of five.
func ExampleOrder() {
	var row geometry.Joint
	for k, at := range geometry.Row(5, 60, geometry.Point{}, 0) {
		row.Fasteners = append(row.Fasteners, geometry.Fastener{ID: fmt.Sprintf("C%d", k+1), At: at})
	}
	report := judge.Order(judge.Input{Joint: row, Order: strings.Fields("C1 C3 C4 C2 C5")})
	fmt.Println(report.Verdict)
	for _, f := range report.Findings {
		fmt.Printf("%s: %s\n", f.Severity, f.Why())
	}
	// Output:
	// not the trade's order
	// departs: begins with C1, which is not in the middle; in the middle: C3
	// departs: C3 (step 2) lies further in than C1 (step 1) before it; 3 steps go back inwards
}
