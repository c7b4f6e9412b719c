// Package sequence decides the order of the fasteners of a joint: group after
// group, clusters together, each group by its way. Every function is pure: a
// joint in, a permutation out. The ways themselves, over bare places, are in
// package way.
package sequence

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/family"
	"drawdown/sequence/way"
)

// Way and Turn are the words of package way, which a joint's groups name.
type (
	Way  = way.Way
	Turn = way.Turn
)

const (
	Auto     = way.Auto
	Spiral   = way.Spiral
	Cross    = way.Cross
	RowWay   = way.Row
	Star     = way.Star
	Four     = way.Four
	Circular = way.Circular
	Balanced = way.Balanced
	Cast     = way.Cast
	List     = way.List

	TurnDefault = way.TurnDefault
	TurnLeft    = way.TurnLeft
	TurnRight   = way.TurnRight
)

// Ways and Turns list what a pattern file can name.
var (
	Ways  = way.Ways
	Turns = way.Turns
)

// Rings parts the given fasteners of a joint into rings round their centre,
// inside out, as the ways see them.
func Rings(j geometry.Joint, members []int) [][]int {
	layout := family.Of(j.PointsOf(members)).Layout
	rings := layout.Rings(geometry.Enclose(layout.Points).Centre)
	return geometry.Mapped(rings, func(ring []int) []int { return geometry.Picked(members, ring) })
}

// From returns an order that goes round, begun at another of its members. A row
// has two ends and no way round: its order stays.
func From(j geometry.Joint, order []int, first int) []int {
	at := slices.Index(order, first)
	if at < 0 || geometry.OneLine(j.PointsOf(order)) {
		return order
	}
	return append(slices.Clone(order[at:]), order[:at]...)
}
