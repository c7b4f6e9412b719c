// Package tension is the mechanics of one bolt: what its material withstands,
// what friction it turns against, which torque gives which preload, and which
// torque may be set. One function a formula; the source stands on its line.
//
// Editions: VDI 2230 Part 1 (2015), ISO 16047 (2005), ISO 898-1 (2013), SAE
// J429, ISO 3506-1 (1997), ISO 4014 (2011), ISO 273 (1979), ASME B18.2.1,
// ASME B18.2.8. Shigley is Budynas and Nisbett, Shigley's Mechanical
// Engineering Design, 9th edition (2011).
package tension
