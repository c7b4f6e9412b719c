// Package waytest has forty invented parts, typical of a workshop, for tests
// and for the sheet on which technicians review drawdown's orders. Only tests
// import it. No part is copied from a real one.
package waytest

import (
	"drawdown/geometry"
	"slices"
)

// Part is a layout of places.
type Part struct {
	Name   string
	Points []geometry.Point
	// Edge is how many of the first places follow each other along a closed
	// edge; 0 for none.
	Edge int
}

// Parts lists them all.
func Parts() []Part {
	var all []Part
	for _, some := range [][]Part{pans(), covers(), flanges(), halves(), heads()} {
		all = append(all, some...)
	}
	return all
}

func edged(name string, edge []point, inner ...point) Part {
	return Part{Name: name, Points: slices.Concat(edge, inner), Edge: len(edge)}
}

// pans returns pans, sumps and lids along a rectangle.
func pans() []Part {
	rect := geometry.Rectangle
	origin := point{}
	return []Part{
		edged("sump of 14", rect(5, 2, 304, 164, origin)),
		edged("long sump of 20", rect(8, 2, 520, 170, origin)),
		edged("square lid of 12", rect(4, 2, 180, 180, origin)),
		edged("small lid of 6", rect(3, 0, 160, 90, origin)),
		edged("lid of 8", rect(3, 1, 190, 140, origin)),
		edged("sump of 16 with two inside", rect(6, 2, 400, 200, origin), at(-70, 0, 70, 0)...),
		edged("plate of 18 with three inside", rect(6, 3, 380, 240, origin), at(-110, 10, 0, -12, 110, 8)...),
		edged("worn sump of 18", off(rect(7, 2, 420, 180, origin), 0.1, 3)),
		edged("pan measured badly", off(rect(6, 2, 360, 180, origin), 0.3, 8)),
		edged("pan without one corner", without(rect(6, 2, 360, 190, origin), 5)),
		edged("pan with uneven pitch", at(-210, 90, -150, 92, -70, 90, 20, 91, 120, 88, 205, 90, 207, 20, 206, -86, 130, -90, 60, -88, -40, -91, -140, -90, -208, -88, -209, -10)),
		edged("narrow pan of 12", rect(5, 1, 360, 80, origin)),
	}
}

// covers returns covers of timing gear, pumps and valves.
func covers() []Part {
	tall := at(-60, 180, 0, 200, 60, 180, 75, 110, 70, 40, 85, -30, 110, -100, 90, -160, 30, -175, -30, -175, -90, -160, -110, -100, -85, -30, -70, 40)
	waist := at(-70, 150, 0, 165, 70, 150, 90, 90, 60, 30, 50, -30, 80, -90, 95, -150, 40, -185, -40, -185, -95, -150, -80, -90, -50, -30, -60, 30, -90, 90)
	return []Part{
		edged("tall timing cover of 14", tall),
		edged("timing cover with a waist", waist),
		edged("timing cover with two inside", tall, at(-8, 60, 12, -70)...),
		edged("oval cover of 10", along(oval(260, 150, 0, 0, 0), 10)),
		edged("irregular oval of 13", off(along(oval(320, 190, 0.08, 0.07, 20), 13), 0.15, 5)),
		edged("irregular oval of 21", off(along(oval(420, 210, 0.1, 0.06, -15), 21), 0.2, 6)),
		edged("pump cover of 7", off(along(oval(150, 130, 0.05, 0.08, 0), 7), 0.1, 2)),
		edged("valve cover of 9", at(-190, 40, -95, 55, 0, 55, 95, 55, 190, 40, 150, -45, 50, -55, -50, -55, -150, -45)),
	}
}

// flanges returns circles, and flanges that are not plain circles.
func flanges() []Part {
	d := at(-70, 110, -70, 55, -70, 0, -70, -55, -70, -110, 0, -118, 55, -95, 92, -50, 105, 0, 92, 50, 55, 95, 0, 118)
	circle := geometry.Circle
	origin := point{}
	return []Part{
		edged("D-shaped flange of 12", d),
		edged("triangle of 9", along(at(0, 140, -130, -85, 130, -85), 9)),
		edged("triangle of 6", along(at(-20, 120, -120, -75, 115, -90), 6)),
		edged("pipe flange of 8", circle(8, 240, origin, 90, true)),
		edged("flange of 16, two missing", without(circle(16, 320, origin, 90, true), 4, 9)),
		edged("flange of 7 measured off", off(circle(7, 200, origin, 90, true), 0.1, 11)),
		{Name: "circles of 8 and 12", Points: slices.Concat(circle(8, 160, origin, 90, true), circle(12, 320, origin, 75, true))},
		{Name: "circles of 6 and 6 with a middle bolt", Points: slices.Concat(at(0, 0), circle(6, 110, origin, 90, true), circle(6, 230, origin, 60, true))},
		edged("kidney port of 11", at(-120, 10, -90, 70, -30, 95, 30, 95, 90, 70, 120, 10, 80, -35, 40, -10, 0, 0, -40, -10, -80, -35)),
	}
}

// halves returns gearbox halves, plenums and manifolds.
func halves() []Part {
	gearbox := at(-240, 60, -180, 120, -90, 140, 10, 130, 100, 100, 190, 85, 260, 50, 265, -30, 190, -70, 95, -80, 0, -110, -100, -130, -190, -110, -245, -30)
	l := at(-150, 150, -80, 155, -10, 150, -5, 80, 0, 10, 70, 5, 145, 0, 150, -70, 145, -140, 70, -145, 0, -150, -75, -148, -150, -145, -155, -70, -152, 5, -150, 80)
	return []Part{
		edged("gearbox half of 14", gearbox),
		edged("gearbox half with three inside", gearbox, at(-120, 10, 0, 5, 120, 10)...),
		edged("L-shaped housing of 16", l),
		edged("plenum of 11", at(-220, 50, -110, 62, 0, 65, 110, 62, 220, 50, 215, -48, 105, -60, -5, -64, -112, -60, -218, -50, -222, 0)),
		{Name: "manifold of four pairs", Points: at(-138, 32, -138, -32, -46, 32, -46, -32, 46, 32, 46, -32, 138, 32, 138, -32)},
		{Name: "two flanges of four", Points: slices.Concat(shifted(geometry.Circle(4, 90, point{}, 45, true), -150, 0), shifted(geometry.Circle(4, 90, point{}, 45, true), 150, 20))},
		{Name: "three flanges of three", Points: slices.Concat(shifted(geometry.Circle(3, 80, point{}, 90, true), -220, 0), geometry.Circle(3, 80, point{}, 90, true), shifted(geometry.Circle(3, 80, point{}, 90, true), 220, 0))},
	}
}

// heads returns heads of two and three rows. The side row of the last has the
// same bolts as the others and goes with them, from the middle outwards. If it
// had smaller screws, as side rows usually do, it would be a separate kind,
// which the pattern file puts after the head bolts.
func heads() []Part {
	grid := geometry.Grid
	origin := point{}
	staggered := slices.Concat(geometry.Row(5, 90, point{X: -180, Y: 80}, 0), geometry.Row(4, 90, point{X: -135}, 0), geometry.Row(5, 90, point{X: -180, Y: -80}, 0))
	return []Part{
		{Name: "head of 10 measured off", Points: off(grid(5, 2, 95, 90, origin), 0.1, 4)},
		{Name: "head of three rows", Points: grid(6, 3, 80, 70, origin)},
		{Name: "head of staggered rows", Points: staggered},
		{Name: "head with a side row, all bolts alike", Points: slices.Concat(grid(5, 2, 95, 90, origin), geometry.Row(4, 95, point{X: -142.5, Y: -90}, 0))},
	}
}
