// Package screw calculates a bolt as a screw: its friction, the torque that
// gives a preload, and the scatter. One function per formula; the source is on
// its line. It imports the head and the strength of the bolt.
//
// Target and AtTorque take a Bolt, in which zero values are unknown, and return
// a result that names its assumptions and sources. Complete returns the bolt
// with every value filled in, for the packages that build on it. Not in the
// model: temperature, the twist of the bolt itself, and relief of the torsion
// once the wrench is off.
//
// Editions: VDI 2230 Part 1 (2015), ISO 16047 (2005). Shigley is Budynas and
// Nisbett, Shigley's Mechanical Engineering Design, 9th edition (2011).
package screw
