package texts

import (
	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/sequence/overhaul"
)

var (
	tightenAgain = expression.Lazily(`(?i)\bre-?(?:tighten|torque)\w*\b|\btighten(?:ed)?\b[^.;]*\b(?:again|once more|a second time)\b|\b(?:nachziehen|nachgezogen|nachzuziehen)\b|\b(?:erneut|noch ?mals|noch einmal) (?:an|fest)ziehen\b|` +
		`\bresserr(?:er|age)\b|\bserrer (?:de nouveau|à nouveau|encore)|\breapretar\b|\breapriete\b|\bapretar (?:otra vez|de nuevo)|\bvolver a apretar\b`)
	// slackened is what makes it a first tightening: backed off, or with new bolts.
	slackened = expression.Lazily(`(?i)\b(?:back\w*|slack\w*|loosen\w*|undo\w*|new|gasket|leak\w*|gelöst|lösen|neue[nr]?|desserr\w*|neu(?:f|ves?)|aflojar|nuev\w*)\b`)
)

// tightenedAgain finds a text that has fasteners tightened once more that must not be.
func (f facts) tightenedAgain(text string) []finding.Finding {
	if !tightenAgain.MatchString(text) || slackened.MatchString(text) || denied.MatchString(text) || ofOthers.MatchString(text) {
		return nil
	}
	said := f
	if named := f.mentions(wordsOf(text)); len(named) == 1 {
		said = f.only(named[0].kind)
	}
	if err := overhaul.CheckAgain(said.Plan); err != nil {
		return []finding.Finding{finding.Warned(TextAgain, finding.Values{"text": text, "kinds": overhaul.NotAgain(said.Plan)})}
	}
	return nil
}
