package patterns_test

import (
	"fmt"

	"drawdown/patterns"
)

func ExampleRead() {
	source := patterns.FromBytes("lid.yaml", []byte(`drawdown: 1
title: Lid
fasteners:
  - circle: {count: 6, diameter: 120, id: L}
tighten:
  stages: [{torque: 20}]
`))
	_, problems := patterns.Read(source)
	fmt.Print(said(problems).Detail())
	// Output:
	// lid.yaml:6:21: error: torque: "20": the unit is missing; write for example 20 N·m, 15 lbf·ft, 180 lbf·in, 2 kgf·m
	//     6 |   stages: [{torque: 20}]
	//       |                     ^
}
