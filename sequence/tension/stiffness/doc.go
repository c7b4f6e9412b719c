// Package stiffness is how far a bolt and what it clamps give way: under the
// preload, as the bolt is turned on by an angle beyond yield, and as surfaces
// settle. One function a formula; the source stands on its line. It imports the
// screw below it. Not in the model: gaskets, and bending of the joint.
//
// Editions: VDI 2230 Part 1 (2015), ISO 4014 (2011), ASME B18.2.1. Shigley is
// Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th edition
// (2011).
package stiffness
