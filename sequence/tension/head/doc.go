// Package head describes the head of a bolt and what is under it: forms and
// widths, clearance holes, washers, the ring it turns on and the pressure
// there. It imports strength, sizes and units.
//
// Editions: ISO 4014 (2011), ISO 4762, ISO 4162, ISO 7089, ISO 273 (1979), ASME
// B18.2.1, ASME B18.2.8. Tables are values from memory where marked.
package head
