package meaning

import (
	"cmp"
	"slices"
	"strconv"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
	"drawdown/sequence"
)

// wayOfCasting returns the way of a group for which the file names none: by the
// numbers on the part if all its fasteners have one. If only some have one, the
// numbers set no order, and a warning says so.
func (r *reader) wayOfCasting(at *nodes.Node, kinds []string) sequence.Way {
	members := sequence.Group{Kinds: kinds}.Members(r.input.Joint)
	if len(members) < 2 {
		return sequence.Auto // a single fastener has no order
	}
	if sequence.Numbered(r.input.Joint, members) {
		return sequence.Cast
	}
	var without []string
	for _, i := range members {
		if f := r.input.Joint.Fasteners[i]; f.Cast == 0 {
			without = append(without, f.ID)
		}
	}
	if !r.ordered && 0 < len(without) && len(without) < len(members)-len(without) {
		at = r.nodeOf(geometry.Fastener{ID: without[0]}) // point at those without a number
	}
	if len(without) < len(members) && !r.fasteners.faulty && !r.kindsOdd() {
		r.Warn(at, CastsIdle, finding.Values{"count": len(members) - len(without), "ids": without, "all": len(members)})
	}
	return sequence.Auto
}

// checkCasts checks the numbers on the part for groups that use them.
func (r *reader) checkCasts() {
	for i, g := range r.input.Groups {
		if g.Way == sequence.Cast {
			r.checkCast(r.groups[i], g.Kinds)
			r.checkGaps(g.Kinds)
		}
	}
	if r.ordered || !r.fasteners.placed() {
		return
	}
	for _, kind := range r.usedKinds() {
		kinds := []string{kind}
		at := r.nodeOf(r.of(kinds)[0])
		if r.wayOfCasting(at, kinds) == sequence.Cast && r.checkCast(at, kinds) {
			r.checkGaps(kinds)
		}
	}
}

// checkCast checks that every fastener of the group has its own number.
func (r *reader) checkCast(at *nodes.Node, kinds []string) bool {
	if !r.fasteners.placed() {
		return true
	}
	var without []string
	var twice []finding.Finding
	var second *nodes.Node
	first := map[int]string{}
	for _, f := range r.of(kinds) {
		switch earlier, taken := first[f.Cast]; {
		case f.Cast == 0:
			without = append(without, f.ID)
		case taken:
			second = cmp.Or(second, r.nodeOf(f))
			twice = append(twice, finding.Failed(CastShared, finding.Values{"first": earlier, "second": f.ID, "cast": f.Cast}))
		default:
			first[f.Cast] = f.ID
		}
	}
	if len(without) > 0 {
		r.Fail(at, NoCast, finding.Values{"ids": without})
	}
	if len(twice) > 0 {
		if !r.ordered {
			at = second
		}
		r.Fail(at, CastTwice, finding.Values{"twice": twice})
	}
	return len(without)+len(twice) == 0
}

// checkGaps warns of a number greater than the number of fasteners, and so of a
// missing one: a slip, or a fastener missing from the list. A casting may
// number several kinds in one series.
func (r *reader) checkGaps(kinds []string) {
	members, all := r.of(kinds), r.of(nil)
	if r.fasteners.faulty || r.kindsOdd() || unbroken(members, len(all)) && r.castsBelow(members) || unbroken(all, len(all)) {
		return
	}
	has := map[int]bool{}
	var beyond []finding.Finding
	at := (*nodes.Node)(nil)
	for _, f := range members {
		has[f.Cast] = true
		if f.Cast > len(members) {
			beyond = append(beyond, finding.Noted(CastOn, finding.Values{"id": f.ID, "cast": f.Cast}))
			at = r.nodeOf(f)
		}
	}
	var missing []string
	for n := 1; n <= len(members); n++ {
		if !has[n] {
			missing = append(missing, strconv.Itoa(n))
		}
	}
	left := func(cast string) bool { return r.omittedCast[cast] }
	if at != nil && slices.ContainsFunc(missing, func(cast string) bool { return !left(cast) }) {
		r.Warn(at, CastGap, finding.Values{"count": len(members), "beyond": beyond, "missing": missing})
	}
}

// castsBelow reports whether the numbers of the fasteners begin with 1, or can go on from
// others: those have numbers too, or are just as many as the numbers below.
func (r *reader) castsBelow(members []geometry.Fastener) bool {
	if len(members) == 0 {
		return true
	}
	all := r.of(nil)
	numbered := slices.DeleteFunc(slices.Clone(all), func(f geometry.Fastener) bool { return f.Cast == 0 })
	lowest := slices.MinFunc(members, func(a, b geometry.Fastener) int { return a.Cast - b.Cast }).Cast
	return lowest == 1 || len(numbered) > len(members) || lowest-1 == len(all)-len(members)
}

// unbroken reports whether the numbers of the fasteners follow each other and
// end at the highest.
func unbroken(fasteners []geometry.Fastener, highest int) bool {
	numbers := geometry.Mapped(fasteners, func(f geometry.Fastener) int { return f.Cast })
	slices.Sort(numbers)
	for i, n := range numbers {
		if n == 0 || n > highest || i > 0 && n != numbers[i-1]+1 {
			return false
		}
	}
	return true
}

// of returns the fasteners of the kinds, or all of them if there are no kinds.
func (r *reader) of(kinds []string) []geometry.Fastener {
	return slices.DeleteFunc(slices.Clone(r.input.Joint.Fasteners), func(f geometry.Fastener) bool {
		return len(kinds) > 0 && !slices.Contains(kinds, f.Kind)
	})
}
