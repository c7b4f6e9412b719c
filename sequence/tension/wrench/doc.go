// Package wrench calculates what to set on a torque wrench: with an adapter, on
// its scale, and on which wrench of the shop. It imports only units.
//
// Edition: ISO 6789 (2003).
package wrench
