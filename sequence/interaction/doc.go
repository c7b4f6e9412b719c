// Package interaction predicts what tightening one bolt does to the others: the
// part bends, the gasket gives, and bolts that were tightened before lose or gain
// load.
//
// The joint is M = diag(own) + C: the flexibility of each bolt and its members, and
// that of part and gasket. Nuts are turned by force or by travel; bolts can go slack.
//
// Passes by torque have closed forms, F = L⁻ᵀ·T and T = Lᵀ·F with
// M = L·diag(d)·Lᵀ in tightening order, by which orders are searched. They hold while every bolt stays in
// contact; elsewhere Nuts finds the contacts. Forces are in N, lengths in mm,
// stiffness of a foundation in MPa/mm, which is N/mm³.
//
// Limits of the model. The gasket is a linear spring of its stiffness on
// loading: its hardening, its hysteresis and its creep (5 to 20 % with time on
// soft gaskets, engineering estimate) are left out, and so are embedding, parts
// that are not flat, friction that changes from pass to pass, bolts beyond
// yield, temperature, shear in thick parts, friction in the plane of the joint,
// and gaskets that hold the part down. Gasket stiffness is known within a
// factor of two to three, and losses are inverse to it: read the range, never
// the middle alone. On soft and raised-face joints allow another 5 to 10 points.
// The formulas are checked against closed forms and against a separate
// prototype; no measured joint has been compared. Trust which bolts end low, the
// class, the number of passes, and which order keeps the part level. Trust the
// percentage of one bolt less, and without measured stretch no target above the
// one that the maker states.
//
// Sources: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, 2nd
// ed. (1959); Hetényi, Beams on Elastic Foundation (1946); Bogner, Fox and
// Schmit (1965); Abramowitz and Stegun (1964); Bibel and Ezell (1992); Júdice and
// Pires, Computers and Operations Research 21 (1994) 587; Murty, Linear Algebra
// and its Applications 5 (1972) 65. Titles of books and papers are given from
// memory; the formulas were derived or checked anew.
package interaction
