package texts

import (
	"slices"
	"strings"

	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

var (
	ofThrust    = expression.Lazily(`(?i)\b(?:thrust|end float|end play|axial\w*|passlager|längslager|butée|jeu axial|juego axial|axiales)\b`)
	numberOfCap = expression.Lazily(`(?i)\b(?:caps?|bearings?|\w*lagerdeckel|\w*lager|deckel|chapeaux?|palier|tapas?|cojinete)\s+(\d{1,2})\b`)
)

// thrustText is a text about the bearing that holds a shaft along its axis, with the
// number of its cap: there is one on a shaft (first principles).
type thrustText struct{ text, number string }

func thrustIn(text string) (t thrustText, found bool) {
	if !strings.ContainsAny(text, digits) || !ofThrust.MatchString(text) {
		return t, false
	}
	numbers := numberOfCap.FindAllStringSubmatch(text, -1)
	if len(numbers) != 1 {
		return t, false
	}
	return thrustText{text, numbers[0][1]}, true
}

// thrusts finds a caution that has the thrust bearing of the shaft at another cap than an
// earlier one, a note or a value to measure.
func thrusts(p plan.Plan, caution int) []finding.Finding {
	own, found := thrustIn(p.Cautions[caution].Text)
	if !found {
		return nil
	}
	var texts []string
	for _, m := range p.Measures {
		texts = append(texts, m.What)
	}
	for _, s := range slices.Concat(p.Tighten.Stages, p.Loosen.Stages) {
		texts = append(texts, s.Note)
	}
	for _, c := range p.Cautions[:caution] {
		texts = append(texts, c.Text)
	}
	for _, text := range texts {
		if other, is := thrustIn(text); is && other.number != own.number {
			return []finding.Finding{finding.Warned(TextsThrust, finding.Values{"text": own.text, "other": other.text})}
		}
	}
	return nil
}
