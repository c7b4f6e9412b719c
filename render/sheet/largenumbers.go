package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"drawdown/render/words"
	"drawdown/sequence/plan"
)

// CastNumbers says which large numbers of a sheet are those cast on the part.
type CastNumbers struct {
	kinds     []string // the kinds with cast numbers; none: the numbers are the order
	all       bool     // these are all kinds
	stretches []plan.Stretch
	words     *words.Part
}

// CastNumbersOf returns the cast numbers of one side of a plan.
func CastNumbersOf(p plan.Plan, s plan.Side, w *words.Catalogue) CastNumbers {
	n := CastNumbers{stretches: p.Stretches(s), words: &w.Card.Part}
	n.kinds, n.all = p.CalledByCast()
	return n
}

// There reports that some large numbers are cast on the part.
func (n CastNumbers) There() bool { return len(n.kinds) > 0 }

// Across reports that the order does not follow the cast numbers, so that
// another number must show it.
func (n CastNumbers) Across() bool { return n.There() && n.stretches == nil }

// Large explains the large numbers; "" if they are the order.
func (n CastNumbers) Large() string {
	switch {
	case n.all:
		return n.words.LargeCast
	case n.There():
		return fmt.Sprintf(n.words.LargeCastOf, strings.Join(n.kinds, ", "))
	}
	return ""
}

// Follow explains how to follow the order, with arrows or without.
func (n CastNumbers) Follow(arrows bool) string {
	along := n.Along()
	switch {
	case along != "" && arrows:
		return fmt.Sprintf(n.words.Along, along) + " " + n.words.AlongArrows
	case along != "":
		return fmt.Sprintf(n.words.Along, along)
	case arrows:
		return n.words.Arrows
	case n.Across():
		return n.words.BySmall
	}
	return n.words.Numbers
}

// Along says from which cast number to which the order runs: 14 down to 1. It
// is "" if the large numbers are the order, or the order does not follow them.
func (n CastNumbers) Along() string {
	if !n.There() {
		return ""
	}
	var all []string
	for _, s := range n.stretches {
		all = append(all, n.stretch(s))
	}
	return strings.Join(all, n.words.Then)
}

// Loosened says in which order the numbers come out, if that follows them.
func (n CastNumbers) Loosened() string {
	if along := n.Along(); along != "" {
		return fmt.Sprintf(n.words.Loosened, along)
	}
	return ""
}

func (n CastNumbers) stretch(s plan.Stretch) string {
	switch {
	case s.From < s.To:
		return fmt.Sprintf(n.words.Up, s.From, s.To)
	case s.From > s.To:
		return fmt.Sprintf(n.words.Down, s.From, s.To)
	}
	return strconv.Itoa(s.From)
}
