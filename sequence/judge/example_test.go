package judge_test

import (
	"fmt"
	"strings"

	"drawdown/geometry"
	"drawdown/sequence/judge"
)

// A learner begins at one end of a row of five.
func ExampleOrder() {
	var row geometry.Joint
	for k, at := range geometry.Row(5, 60, geometry.Point{}, 0) {
		row.Fasteners = append(row.Fasteners, geometry.Fastener{ID: fmt.Sprintf("C%d", k+1), At: at})
	}
	report := judge.Order(judge.Input{Joint: row, Order: strings.Fields("C1 C3 C4 C2 C5")})
	fmt.Println(report.Verdict)
	for _, f := range report.Findings {
		fmt.Printf("%s: %s\n", f.Severity, f.Found().Code)
	}
	// Output:
	// not the trade's order
	// departs: order not from middle
	// departs: order goes inwards
}
