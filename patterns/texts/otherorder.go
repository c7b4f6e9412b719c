package texts

import (
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

var (
	sameOrder = expression.Lazily(`(?i)\bsame (?:order|sequence) (?:as|for)\b[^.;]*\b(?:tightening|loosening)|\bin (?:the )?tightening (?:order|sequence)\b|\bin the (?:order|sequence) of tightening\b|\b(?:in der )?(?:gleichen|selben) reihenfolge wie beim (?:anziehen|lösen)|\bin (?:der )?anzugsreihenfolge\b|` +
		`\bmême ordre que (?:pour le |au |le )?(?:serrage|desserrage)|\bdans l[’']ordre de serrage\b|\b(?:mismo orden que|orden de apriete)\b`)
	turnedRound = expression.Lazily(`(?i)\b(?:reverse\w*|opposite|backwards?|umgekehrte?r?|inverse|contraire|inverso|contrario|contra)\b`)
	outwards    = expression.Lazily(`(?i)\bfrom the (?:cent(?:re|er)|middle|inside) (?:out|to the (?:ends|edges?|outside))\w*|\bvon (?:der )?(?:mitte|innen) nach (?:außen|aussen)\b|\bdu (?:centre|milieu) vers (?:l[’']extérieur|les bords|les extrémités)|\bdel? (?:centro|medio) hacia (?:fuera|afuera|los extremos)`)
	inwards     = expression.Lazily(`(?i)\bfrom the (?:outside|ends|edges?) (?:in\w*|to the (?:cent(?:re|er)|middle))|\bvon (?:außen|aussen) nach (?:innen|der mitte)\b|\bde l[’']extérieur vers (?:le centre|le milieu|l[’']intérieur)|\bde fuera hacia (?:dentro|el centro)`)
)

// otherOrder finds a text that describes another order than the file has on its side.
func (f facts) otherOrder(text string, side plan.Side, other plan.Side) []finding.Finding {
	own := f.orderOf(side)
	if len(own) < fewestOfLetters || denied.MatchString(text) {
		return nil
	}
	named := f.mentions(wordsOf(text))
	if len(named) > 0 {
		kind := named[0].kind.Name
		own = slices.DeleteFunc(own, func(i int) bool { return f.Joint.Fasteners[i].Kind != kind })
	}
	if len(own) < fewestOfLetters {
		return nil
	}
	first, last := f.Joint.Fasteners[own[0]], f.Joint.Fasteners[own[len(own)-1]]
	middle := f.middle()
	nearFirst := first.At.Distance(middle) < last.At.Distance(middle)-nearMm
	nearLast := last.At.Distance(middle) < first.At.Distance(middle)-nearMm
	reversed := slices.Clone(f.orderOf(other))
	slices.Reverse(reversed)
	switch {
	case sameOrder.MatchString(text) && !turnedRound.MatchString(text) && len(reversed) > 0 && slices.Equal(f.orderOf(side), reversed):
	case outwards.MatchString(text) && nearLast:
	case inwards.MatchString(text) && nearFirst:
	default:
		return nil
	}
	return []finding.Finding{finding.Warned(TextOtherOrder, finding.Values{"text": text, "first": first.ID, "last": last.ID})}
}

const nearMm = 1.

// orderOf lists the fasteners in the order in which one side first comes to them.
func (f facts) orderOf(side plan.Side) []int {
	s := f.stepsOf(side)
	all := slices.DeleteFunc(f.every(nil), func(i int) bool { return s.first[i] == 0 })
	return s.at("first", s.first, len(all), all)
}

func (f facts) middle() geometry.Point {
	box := geometry.Bounds(f.Joint.Points())
	return box.Min.Add(box.Max).Scale(0.5)
}
