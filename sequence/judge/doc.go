// Package judge holds an order against the rules of the trade: every fastener
// once, the middle first, outwards from there, no long run on one side, no
// saddle, neighbours not in succession where that can be helped. Places and an
// order in, findings and figures out. The package is pure, and it judges no
// maker: a maker's own order is described and never called wrong.
//
// The rules are common practice; no source gives figures for them. The yardstick
// is the objective of package way and the places themselves, never an order of
// drawdown's. What the family of the layout allows is:
//
//	row                   from the middle, on alternate sides
//	filled rows           ring by ring outwards, going round each; few rows by columns too
//	one circle            each followed by one across, or four that share the circle
//	circles               the inner first, each as one
//	perimeter, curve      the pull of one fastener, the saddle of a pair, outwards by distance
//	separate flanges      a pair on each by turns
//	free                  as a curve
//
// On any closed layout four crosswise and then round is accepted as practised.
// All limits are in thresholds.go.
//
// Each group is judged for itself, and the order of the groups besides.
// A cluster counts as one place, its centroid. A loosening order is judged as
// the reverse of a tightening order.
package judge
