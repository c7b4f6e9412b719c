package overhaul

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
)

// sisters are the steps of one name at the two banks, by their numbers.
type sisters struct{ left, right int }

// sisterSteps pairs the steps whose names differ in the side alone.
func (o Overhaul) sisterSteps() (pairs []sisters) {
	type key struct {
		joint bool
		name  string
	}
	seen := map[key]map[string]int{}
	for i, t := range o.Tasks {
		words, side := bare(t.name())
		if side == "" {
			continue
		}
		k := key{t.Joint != nil, strings.Join(words, " ")}
		if seen[k] == nil {
			seen[k] = map[string]int{}
		}
		if _, there := seen[k][side]; there {
			continue
		}
		seen[k][side] = i
		left, hasLeft := seen[k]["left"]
		right, hasRight := seen[k]["right"]
		if hasLeft && hasRight {
			pairs = append(pairs, sisters{left, right})
		}
	}
	return pairs
}

// sistersAmiss compares the steps of the two banks.
func (o Overhaul) sistersAmiss() (found []finding.Finding) {
	pairs := o.sisterSteps()
	for i, p := range pairs {
		left, right := o.Tasks[p.left], o.Tasks[p.right]
		found = append(found, about(p.left, lacks(left, right), massDiffers(left, right))...)
		found = append(found, about(p.right, lacks(right, left))...)
		for _, q := range pairs[:i] {
			if (p.left < q.left) != (p.right < q.right) && !slices.ContainsFunc([]int{p.left, p.right, q.left, q.right}, o.tooEarly) {
				at, first, second := p.right, o.Tasks[min(p.left, q.left)].name(), o.Tasks[max(p.left, q.left)].name()
				found = append(found, about(at, warned(SistersOrder, finding.Values{
					"first": first, "second": second,
					"later": o.Tasks[max(p.right, q.right)].name(), "earlier": o.Tasks[min(p.right, q.right)].name(),
				}))...)
			}
		}
	}
	return found
}

// tooEarly says that a step is reported for its place already.
func (o Overhaul) tooEarly(task int) bool {
	return o.partTooEarly(task) != nil || o.behindOther(task) != nil
}

// needs lists what is listed at a step.
func (t Task) needs() []string { return slices.Concat(t.Gaskets, t.New, t.Manual, t.Figures) }

// lacks looks for what is listed at one bank and not at the other: by the name of its
// side, or because the other lists nothing at all.
func lacks(t, sister Task) *finding.Finding {
	if len(t.needs()) == 0 && len(sister.New) > 0 && t.Part != "" {
		return warned(SisterLacks, finding.Values{"name": t.name(), "sister": sister.name(), "item": sister.New[0]})
	}
	for _, item := range sister.needs() {
		words, side := bare(item)
		listed := slices.ContainsFunc(t.needs(), func(own string) bool {
			w, _ := bare(own)
			return slices.Equal(w, words)
		})
		if len(t.needs()) > 0 && side != "" && !listed {
			return warned(SisterLacks, finding.Values{"name": t.name(), "sister": sister.name(), "item": item})
		}
	}
	return nil
}

// itemOfOtherSide looks for a gasket, a new part or a bolt that is named after the
// other bank.
func (t Task) itemOfOtherSide() *finding.Finding {
	for _, item := range t.needs() {
		if !ofOneSide(item, t.name()) {
			return warned(ItemOfOtherSide, finding.Values{"item": item, "name": t.name()})
		}
	}
	return nil
}

// partOfOneSide looks for a part of one bank whose sister never comes off, though the
// joints of both are opened.
func (o Overhaul) partOfOneSide(task int) *finding.Finding {
	t := o.Tasks[task]
	words, side := bare(t.Part)
	if side == "" {
		return nil
	}
	var own, others string
	for i, other := range o.Tasks {
		if w, _ := bare(other.Part); i != task && other.Part != "" && slices.Equal(w, words) {
			return nil // or this one twice, which is reported
		}
		if other.Joint != nil && holdsPart(other.Joint.Title, t) {
			switch _, of := bare(other.Joint.Title); of {
			case side:
				own = other.Joint.Title
			default:
				others = other.Joint.Title
			}
		}
	}
	if own == "" || others == "" {
		return nil
	}
	return warned(SisterMissing, finding.Values{"part": t.Part, "title": others})
}

var mass = expression.Lazily(`(?i)(\d+(?:[.,]\d+)?) ?(?:kg|lb)\b`)

// massDiffers compares the masses of two sister parts: one is twice the other.
func massDiffers(left, right Task) *finding.Finding {
	for _, texts := range [][2]string{{left.Loosen, right.Loosen}, {left.Tighten, right.Tighten}} {
		a, b := masses(texts[0]), masses(texts[1])
		if len(a) == 1 && len(b) == 1 && math.Max(a[0], b[0]) >= 2*math.Min(a[0], b[0]) {
			return warned(MassesDiffer, finding.Values{"text": texts[0], "name": left.name(), "other": texts[1], "sister": right.name()})
		}
	}
	return nil
}

// ownMassDiffers compares what a part weighs on its way out and back.
func (t Task) ownMassDiffers() *finding.Finding {
	out, back := masses(t.Loosen), masses(t.Tighten)
	if len(out) != 1 || len(back) != 1 || out[0] == back[0] {
		return nil
	}
	return warned(MassesDiffer, finding.Values{"text": t.Loosen, "name": t.name(), "other": t.Tighten, "sister": t.name()})
}

func masses(text string) (all []float64) {
	for _, m := range mass.FindAllStringSubmatch(text, -1) {
		n, _ := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
		all = append(all, n)
	}
	return all
}

// gasketNowhere looks for a gasket of a joint whose file says that it has none.
func (t Task) gasketNowhere() *finding.Finding {
	if t.Joint == nil || t.Joint.Clamped.Gasket.Kind != "none" {
		return nil
	}
	i := slices.IndexFunc(t.Gaskets, func(g string) bool {
		return slices.ContainsFunc(tokens(g), func(w string) bool { return isGasketWord(w) && !slices.Contains(rings, w) })
	})
	if i < 0 {
		return nil
	}
	return warned(GasketNowhere, finding.Values{"gasket": t.Gaskets[i], "title": t.Joint.Title})
}
