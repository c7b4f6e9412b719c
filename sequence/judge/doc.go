// Package judge judges an order by the rules of the trade: every fastener once,
// start in the middle, work outwards, no long run on one side, no saddle, no
// neighbours in succession where avoidable. It takes places and an order, and
// returns findings and figures. The package is pure. A maker's own order is
// described, never called wrong.
//
// The rules are common practice; no source gives figures for them. The limits
// come from the objective of package way and from the places, never from
// drawdown's own order. The rules for each family of layout are:
//
//	row                   from the middle, on alternate sides
//	filled rows           ring by ring outwards, around each; few rows also by columns
//	one circle            each followed by one across, or quarter by quarter
//	circles               the inner first, each as one circle
//	perimeter, curve      pull of one fastener, saddle of a pair, outwards by distance
//	separate flanges      a pair on each in turn
//	free                  as a curve
//
// On any closed layout, four crosswise and then around is accepted as common.
// All limits are in thresholds.go.
//
// Each group is judged separately, and so is the order of the groups. A cluster
// counts as one place, its centroid. A loosening order is judged as the reverse
// of a tightening order.
package judge
