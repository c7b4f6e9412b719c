// Package judge holds an order against the rules of the trade: every fastener
// once, the middle first, outwards from there, no long run on one side,
// neighbours not in succession where that can be helped. Places and an order
// in, findings and figures out. The package is pure, and it judges no maker:
// a maker's own order is described and never called wrong.
//
// The rules are common practice; no source gives figures for them. What a
// layout allows is therefore taken from the orders that the trade has for it,
// in either sense of rotation:
//
//	places on one line          row
//	one bolt circle             star (the cross-pattern of ASME PCC-1)
//	all else                    spiral and cross; row too for a long grid of two or three rows
//
// An order is measured as these are, and a figure that none of them reaches is
// a finding. How far beyond makes a remark or a departure stands with each
// rule, in rules.go.
//
// Each group is judged for itself, and the order of the groups besides.
// A cluster counts as one place, its centroid. A loosening order is judged as
// the reverse of a tightening order.
package judge
