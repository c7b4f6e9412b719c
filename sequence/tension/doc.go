// Package tension is the mechanics of one bolt: what its material withstands,
// what friction it turns against, and what a torque, an angle or a wrench does
// to it. One function a formula; the source stands on its line.
//
//   - Target and AtTorque: torque and preload, by friction or nut factor K.
//   - StiffnessOf and TurnOn: stiffness of the joint, torque and angle, beyond
//     yield too.
//   - Strip, PressureUnderHead and Settle: threads, bearing faces, settlement.
//   - ScatterOf and FlangeScatter: the spread of the preload by the way to
//     tighten.
//   - SetWrench: what to set, with an adapter, on which wrench.
//
// Each takes a description in which zero values are unknown, and returns a
// result that names its assumptions and sources. Not in the model: gaskets,
// bending of the joint, temperature, the twist of the bolt itself, and relief
// of the torsion once the wrench is off.
//
// Editions: VDI 2230 Part 1 (2015), ISO 16047 (2005), ISO 898-1 (2013), ISO
// 898-2 (2012), SAE J429, ISO 3506-1 (1997), ISO 4014 (2011), ISO 273 (1979),
// ISO 965-1 (2013), ISO 6789 (2003), EN 1591-1 (2001), ASME B18.2.1, ASME
// B18.2.8, ASME B1.1, FED-STD-H28. Shigley is Budynas and Nisbett, Shigley's
// Mechanical Engineering Design, 9th edition (2011).
package tension
