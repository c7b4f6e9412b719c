// Package fixes holds what a person corrects in a trace: shapes to drop or to
// take for something, holes to add, diameters, the piece of the picture and the
// part to look at. It may import geometry and its holes.
package fixes

import (
	"drawdown/geometry"
	"drawdown/geometry/holes"
)

// Place names a shape: by its id on the proof, or by a place in the picture, in
// pixels from the top left corner.
type Place struct {
	ID    string
	Pixel geometry.Point // where ID is empty
}

// Take says what a shape is for.
type Take struct {
	Place
	Use holes.Use
}

// Add is a hole that the trace did not find.
type Add struct {
	Pixel geometry.Point // in the picture, where InMm is false
	At    geometry.Point // in mm, as the pattern has it, where InMm is true
	InMm  bool
	// DiameterMm is 0 where the edge in the picture, or the usual size, gives it.
	DiameterMm float64
	Use        holes.Use
}

// Size is a diameter that a person measured.
type Size struct {
	Place
	DiameterMm float64
}

// Fixes are the corrections of one scan.
type Fixes struct {
	Drop  []Place
	Takes []Take
	Adds  []Add
	Sizes []Size
	// Crop is the piece of the picture to look at, in pixels, y downwards; empty
	// for all of it.
	Crop geometry.Box
	// Part is which part on the glass to take, by size: 0 and 1 for the largest.
	Part int
}

// Count is how many shapes the fixes are about.
func (f Fixes) Count() int { return len(f.Drop) + len(f.Takes) + len(f.Adds) + len(f.Sizes) }
