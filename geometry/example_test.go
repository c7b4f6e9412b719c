package geometry_test

import (
	"fmt"

	"drawdown/geometry"
)

// By rows, the top left first.
func ExampleGrid() {
	for _, p := range geometry.Grid(3, 2, 95, 90, geometry.Point{X: 10, Y: 5}) {
		fmt.Print(p, " ")
	}
	// Output: {-85 50} {10 50} {105 50} {-85 -40} {10 -40} {105 -40}
}

// Clockwise from the top, as bolt circles are numbered (ASME PCC-1).
func ExampleCircle() {
	for _, p := range geometry.Circle(4, 240, geometry.Point{X: 10, Y: 5}, 90, true) {
		fmt.Print(p, " ")
	}
	// Output: {10 125} {130 5} {10 -115} {-110 5}
}

// Fourteen bolts round a sump: five along top and bottom, two more on each end.
func ExampleRectangle() {
	bolts := geometry.Rectangle(5, 2, 300, 165, geometry.Point{})
	fmt.Println(len(bolts), bolts[0], bolts[4], bolts[5], bolts[13])
	// Output: 14 {-150 82.5} {150 82.5} {150 27.5} {-150 27.5}
}

// The other bank: left and right are swapped, including the front.
func ExampleJoint_Mirrored() {
	bank := geometry.Joint{
		Fasteners: []geometry.Fastener{{ID: "M1", At: geometry.Point{X: -95, Y: 45}}},
		Front:     geometry.FrontLeft,
	}
	other := bank.Mirrored(geometry.AxisX)
	fmt.Println(other.Fasteners[0].ID, other.Fasteners[0].At, other.Front)
	// Output: M1 {95 45} right
}

// The centre of a circle does not move if a bolt is missing.
func ExampleEnclose() {
	bolts := geometry.Circle(8, 240, geometry.Point{X: 30, Y: 20}, 90, true)[:7]
	disc := geometry.Enclose(bolts)
	fmt.Printf("%.3f %.3f radius %.3f mm\n", disc.Centre.X, disc.Centre.Y, disc.Radius)
	// Output: 30.000 20.000 radius 120.000 mm
}

// A hole measured half a millimetre too high is moved back to its row.
func ExampleNewLayout() {
	holes := geometry.Grid(5, 2, 95, 90, geometry.Point{})
	holes[3].Y += 0.5
	layout := geometry.NewLayout(holes)
	fmt.Println(layout.Regular, layout.Columns, layout.Rows)
	fmt.Printf("%.1f %.1f\n", layout.Points[3].Y, layout.Points[0].Y)
	fmt.Println(layout.Rings(geometry.Enclose(layout.Points).Centre))
	// Output:
	// true 5 2
	// 45.1 45.1
	// [[2 7] [1 3 6 8] [0 4 5 9]]
}
