package judge

import (
	"fmt"
	"strconv"
	"strings"
)

// Why says a finding in one plain sentence, for a learner as for a shop. It is
// the only place where findings become English.
func (f Finding) Why() string {
	switch f.Rule {
	case Unknown:
		return fmt.Sprintf("%s: there is no fastener %s%s", steps(f.Steps), some(quoted(f.IDs)), meant(f.Against))
	case Twice:
		return fmt.Sprintf("%s is there twice, at steps %d and %d", f.IDs[0], f.Steps[0], f.Steps[1])
	case Missing:
		return fmt.Sprintf("left out: %s", some(f.IDs))
	case GroupOrder:
		return f.whyGroups()
	case Together:
		return fmt.Sprintf("%s %s together, but here they are parted (%s)", and(f.IDs), f.word("go down", "come off"), steps(f.Steps))
	case Unloaded:
		return fmt.Sprintf("%s (step %d): no spring presses there, so it %s, %s %s (step %d)", f.decider(), f.deciderStep(),
			f.word("goes on first", "comes off last"), f.word("before", "after"), f.Against[0], f.AgainstSteps[0])
	case Middle:
		return fmt.Sprintf("%s %s, which is not in the middle; in the middle: %s", f.word("begins with", "ends with"), f.IDs[0], some(f.Against))
	case Outwards:
		return f.whyOutwards()
	case OneSide:
		return fmt.Sprintf("%d in succession on one side of the middle, %s (%s); the trade's orders for this layout have %g at the most", int(f.Figure), steps(f.Steps), some(f.IDs), f.Allowed)
	case Neighbours:
		return fmt.Sprintf("%s between neighbours, first %s to %s (steps %d and %d); the trade's orders for this layout have %g at the most",
			stepsGo(f.Figure), f.first(), f.second(), f.early(), f.late(), f.Allowed)
	case Across:
		return fmt.Sprintf("%d of %d steps do not go across the circle, first %s to %s (steps %d and %d)",
			int(f.Figure), f.Of, f.first(), f.second(), f.early(), f.late())
	case Balance:
		return fmt.Sprintf("after step %d (%s) what is %s pulls to one side like %.1f fasteners at the edge; the trade's orders for this layout stay at %.1f", f.Steps[0], f.IDs[0],
			f.word("tight", "still tight"), f.Figure, f.Allowed)
	case Saddle:
		return fmt.Sprintf("after step %d (%s) two opposite sides are %s and those between are not: it bends the part like %.1f fasteners at the edge; %.1f are allowed", f.Steps[0], f.IDs[0],
			f.word("tight", "still tight"), f.Figure, f.Allowed)
	case Travel:
		return fmt.Sprintf("the wrench goes %.0f mm from place to place; drawdown's own order needs %.0f mm", f.Figure, f.Allowed)
	}
	return string(f.Rule)
}

func (f Finding) whyGroups() string {
	does := f.word("go on before", "come off after")
	if len(f.IDs) == 1 {
		does = f.word("goes on before", "comes off after")
	}
	return fmt.Sprintf("%s (%s) %s %s; group by group, the %s ones first",
		some(f.IDs), steps(f.Steps), does, some(f.Against), f.word("large", "small"))
}

func (f Finding) whyOutwards() string {
	back := stepsGo(f.Figure)
	if f.Side == Loosen {
		return fmt.Sprintf("%s (step %d) comes off before %s (step %d), which lies further out; %s against the way inwards", f.IDs[0], f.Steps[0], f.Against[0], f.AgainstSteps[0], back)
	}
	return fmt.Sprintf("%s (step %d) lies further in than %s (step %d) before it; %s back inwards", f.IDs[0], f.Steps[0], f.Against[0], f.AgainstSteps[0], back)
}

// first and second are the pair that a finding names first, as it is worked.
func (f Finding) first() string  { return f.word(f.Against[0], f.IDs[0]) }
func (f Finding) second() string { return f.word(f.IDs[0], f.Against[0]) }
func (f Finding) early() int     { return min(f.Steps[0], f.AgainstSteps[0]) }
func (f Finding) late() int      { return max(f.Steps[0], f.AgainstSteps[0]) }

// word picks what fits the side of the work.
func (f Finding) word(tighten, loosen string) string {
	if f.Side == Loosen {
		return loosen
	}
	return tighten
}

// decider and deciderStep are that one of a cluster's fasteners which decides: the
// first to go on, the last to come off.
func (f Finding) decider() string { return f.IDs[f.deciding()] }

func (f Finding) deciderStep() int { return f.Steps[f.deciding()] }

func (f Finding) deciding() int {
	if f.Side == Loosen {
		return len(f.IDs) - 1
	}
	return 0
}

func meant(names []string) string {
	if len(names) == 0 {
		return ""
	}
	return " (did you mean " + names[0] + "?)"
}

func stepsGo(n float64) string {
	if n == 1 {
		return "1 step goes"
	}
	return fmt.Sprintf("%g steps go", n)
}

func quoted(names []string) []string {
	all := make([]string, len(names))
	for k, name := range names {
		all[k] = strconv.Quote(name)
	}
	return all
}

// some lists a few names and how many more there are.
func some(names []string) string {
	const shown = 6
	if len(names) <= shown+1 {
		return strings.Join(names, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(names[:shown], ", "), len(names)-shown)
}

func and(names []string) string {
	if len(names) == 2 {
		return names[0] + " and " + names[1]
	}
	return some(names)
}

// steps names step numbers, a run of them by its ends.
func steps(numbers []int) string {
	if len(numbers) == 1 {
		return fmt.Sprintf("step %d", numbers[0])
	}
	last := len(numbers) - 1
	if last > 1 && numbers[last]-numbers[0] == last {
		return fmt.Sprintf("steps %d to %d", numbers[0], numbers[last])
	}
	words := make([]string, len(numbers))
	for k, n := range numbers {
		words[k] = fmt.Sprint(n)
	}
	return "steps " + and(words)
}
