// Package stiffness calculates how far a bolt and the parts that it clamps
// deform: under the preload, as the bolt is turned by an angle past yield, and
// as surfaces settle. One function per formula; the source is on its line. It
// imports screw. Not in the model: gaskets, and bending of the joint.
//
// Editions: VDI 2230 Part 1 (2015), ISO 4014 (2011), ASME B18.2.1. Shigley is
// Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th edition
// (2011).
package stiffness
