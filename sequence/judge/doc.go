// Package judge judges an order by the rules of the trade: every fastener once,
// the middle first, outwards from there, no long run on one side, no saddle, no
// neighbours in succession if that can be avoided. Places and an order in,
// findings and figures out. The package is pure. A maker's own order is described
// and never called wrong.
//
// The rules are common practice; no source gives figures for them. The limits
// come from the objective of package way and the places themselves, never from
// drawdown's own order. For each family of layout they are:
//
//	row                   from the middle, on alternate sides
//	filled rows           ring by ring outwards, going round each; few rows by columns too
//	one circle            each followed by one across, or four that share the circle
//	circles               the inner first, each as one
//	perimeter, curve      the pull of one fastener, the saddle of a pair, outwards by distance
//	separate flanges      a pair on each by turns
//	free                  as a curve
//
// On any closed layout, four crosswise and then round is accepted as common.
// All limits are in thresholds.go.
//
// Each group is judged separately, and so is the order of the groups.
// A cluster counts as one place, its centroid. A loosening order is judged as
// the reverse of a tightening order.
package judge
