// Package strength has the strength of metal: the classes of bolts, the
// materials of parts, and the threads that hold one in the other. One function
// per formula; the source is on its line. It imports only sizes and units.
//
// Editions: VDI 2230 Part 1 (2015), ISO 898-1 (2013), ISO 898-2 (2012), SAE
// J429, ISO 3506-1 (1997), ISO 965-1 (2013), ASME B1.1, FED-STD-H28.
package strength
