// Package screw is a bolt as a screw: the friction it turns against, the torque
// that gives a preload, and how widely that scatters. One function a formula;
// the source stands on its line. It imports the head and the strength of the
// bolt.
//
// Target and AtTorque take a Bolt, in which zero values are unknown, and give a
// result that names its assumptions and sources. Complete gives the bolt with
// nothing left open, for the rooms that build on it. Not in the model:
// temperature, the twist of the bolt itself, and relief of the torsion once the
// wrench is off.
//
// Editions: VDI 2230 Part 1 (2015), ISO 16047 (2005). Shigley is Budynas and
// Nisbett, Shigley's Mechanical Engineering Design, 9th edition (2011).
package screw
