package texts

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"drawdown/geometry"
	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

// The two sides of an engine: in a title, and, in any other text, only with the
// word for a bank, since "left" alone is used for much else.
var (
	leftInTitle  = expression.Lazily(`(?i)\b(?:left|links|linke[rsn]?|gauche|izquierd[ao])\b`)
	rightInTitle = expression.Lazily(`(?i)\b(?:right|rechts|rechte[rsn]?|droite|derech[ao])\b`)
	leftBank     = bankOn(`left|linke[rsn]?|gauche|izquierd[ao]`)
	rightBank    = bankOn(`right|rechte[rsn]?|droite|derech[ao]`)
)

func bankOn(side string) expression.Lazy {
	const bank = `(?:bank|cylinder bank|cylinder head|head|zylinderbank|zylinderkopf|zylinderreihe|rangée|culasse|bancada|culata)`
	return expression.Lazily(`(?i)\b(?:` + side + `)[- ]?(?:hand )?` + bank + `\b|\b` + bank + `,? (?:` + side + `)\b`)
}

// side is left, right, or empty if a text names neither or both.
type side string

func sideOf(text string, left, right expression.Lazy) side {
	switch l, r := left.MatchString(text), right.MatchString(text); {
	case l && !r:
		return "left"
	case r && !l:
		return "right"
	}
	return ""
}

// labelledOtherwise finds a label of the part that names the other bank than
// the title.
func (f facts) labelledOtherwise() []finding.Finding {
	for _, l := range f.Joint.Labels {
		if found := f.otherSide(l.Text); found != nil {
			return []finding.Finding{finding.Warned(TextSide, finding.Values{"text": f.Title, "other": l.Text})}
		}
	}
	return nil
}

// filedOtherwise finds a file whose name has the other bank than its title.
func (f facts) filedOtherwise() []finding.Finding {
	words := strings.NewReplacer("-", " ", "_", " ", ".", " ").Replace(f.Name)
	title, file := sideOf(f.Title, leftInTitle, rightInTitle), sideOf(words, leftInTitle, rightInTitle)
	if title == "" || file == "" || title == file {
		return nil
	}
	return []finding.Finding{finding.Warned(TextSide, finding.Values{"text": f.Title, "other": f.Name})}
}

// sideAt matches the place of a side of the engine in the picture: intake side
// at the top.
var sideAt = expression.Lazily(`(?i)(\pL+)(?: side| end)? (?:at|on|to|towards) (?:the )?(top|bottom|left|right)\b`)

// sidesOfView finds a view that places a side of the engine elsewhere than its
// label.
func (f facts) sidesOfView() []finding.Finding {
	box := geometry.Bounds(f.Joint.Points())
	middle := box.Min.Add(box.Max).Scale(0.5)
	towards := map[string]geometry.Point{"top": {Y: 1}, "bottom": {Y: -1}, "left": {X: -1}, "right": {X: 1}}
	for _, m := range sideAt.FindAllStringSubmatch(f.View, -1) {
		for _, l := range f.Joint.Labels {
			off := l.At.Sub(middle).Dot(towards[strings.ToLower(m[2])])
			if slices.Contains(stemsOf(l.Text), strings.ToLower(m[1])) && off < -max(box.Width(), box.Height())/20 {
				return []finding.Finding{finding.Warned(TextPlace, finding.Values{"text": f.View, "label": l.Text, "side": m[2]})}
			}
		}
	}
	return nil
}

// otherSide finds a text that names the other bank than the title.
func (f facts) otherSide(text string) []finding.Finding {
	title := sideOf(f.Title, leftInTitle, rightInTitle)
	if named := sideOf(text, leftBank, rightBank); title == "" || named == "" || named == title || otherBank.MatchString(text) {
		return nil
	}
	return []finding.Finding{finding.Warned(TextSide, finding.Values{"text": text, "other": f.Title})}
}

var otherBank = expression.Lazily(`(?i)\b(other|own|after|before|first|also|both|like|same|as|not|unlike|than|wie|gleich\w*|nicht|comme|même|pas|como|mismo\w*|no|andere\w*|eigene\w*|nach|vor|beide|autre|après|avant|otra|después|antes)\b`)

// Texts that belong to the other work: things to do before a part comes off,
// and with new parts.
var (
	ofLoosening  = expression.Lazily(`(?i)\bbefore (?:the |any |a )?[\pL\d ]{1,30}\b(?:come|comes|is|are) (?:taken |lifted |turned )?(?:off|out|loose|loosened|removed)\b|^(?:drain (?:the|off|all|oil|coolant|water|fuel|engine|it)\b|mark the old |soak )|\bbefore (?:the )?first (?:bolt|nut|stud|screw|cap)\s*(?:[;.,]|$)|\bbefore (?:the )?first (?:bolt|nut|stud|screw|cap)\b[^.;]*\b(?:loose\w*|turned|off|out)\b|^(?:the )?(?:oil|coolant|water|fuel) drained\b|^(?:the )?(?:steam|gas|air|water|line|valves?) (?:shut|closed|vented|drained)\b|\bbefore (?:removal|removing|loosening|dismantling|strip-down)\b|^pressure off\b|^mark (?:the |all |each )*(?:caps?|rods?|shells?)\b|^(?:öl|kühlmittel|kühlwasser) (?:ablassen|abgelassen)|^(?:huile vidangée|vidanger)|^(?:vaciar|aceite vaciado)|^(?:vor dem (?:lösen|ausbau)|avant (?:la dépose|le desserrage)|antes de (?:aflojar|desmontar))`)
	ofTightening = expression.Lazily(`(?i)^(?:fit |use |always )?new (?:\pL+ ){0,3}?(?:gaskets?|bolts|nuts|seals?|o-rings?)(?:$|[,;])|^(?:fit|refit|renew) |^oil the (?:threads|bolts)|^oil the [\pL ]+ before [\pL ]+ (?:go|goes|is|are)(?: set| put)? (?:on|in|down)\b|^(?:apply |a )?(?:thin )?bead of sealant|^(?:new )?sealant |^(?:o-ring|gasket|seals?)\b[^.;]*\bnew\b|^threads? (?:oiled|dry|greased|clean)(?:$|[,;])|\b(?:battery|power|pressure|steam) on(?:$|[,;.])|^(?:neue|frische) (?:\pL+ )?\w*dichtung|^dichtmasse|^dichtung neu|^(?:joint neuf|nouveau joint)|^(?:junta nueva|nueva junta)|^(?:before|when) (?:fitting|tightening|refitting|assembly)\b`)
	ofBoth       = expression.Lazily(`(?i)\b(again|then|refit\w*|back in|later|penetrat\w*|soak\w*|old|stay\w*)\b`)
)

// comesOff matches what is taken off: take the caps off, head lifted.
var comesOff = expression.Lazily(`(?i)^(?:(?:take|lift|pull) (?:all |the )*(\pL+)(?: straight)? (?:off|out)\b|(\pL+) (?:off|lifted|taken off)\b)`)

// takesOff reports whether a text takes off the part in the title.
func (f facts) takesOff(text string) bool {
	m := comesOff.FindStringSubmatch(text)
	return m != nil && slices.Contains(stemsOf(f.Title), strings.TrimSuffix(strings.ToLower(m[1]+m[2]), "s"))
}

// otherWork finds a caution that belongs to the other direction of the work.
func (f facts) otherWork(c plan.Caution) []finding.Finding {
	looks := func(of, other expression.Lazy) bool { return of.MatchString(c.Text) && !other.MatchString(c.Text) }
	switch {
	case c.Side == plan.CautionTighten && f.takesOff(c.Text) && !ofBoth.MatchString(c.Text):
	case c.Side == plan.CautionTighten && looks(ofLoosening, ofTightening) && !ofBoth.MatchString(c.Text):
	case c.Side == plan.CautionLoosen && looks(ofTightening, ofLoosening) && !ofBoth.MatchString(c.Text):
	default:
		return nil
	}
	return []finding.Finding{finding.Warned(TextOtherWork, finding.Values{"text": c.Text, "side": string(c.Side)})}
}

// lettersOf returns the letters before the number in the designation of a
// machine, such as the G of G6 or the V of V8; it is empty for other words. A
// regular expression for it would take more memory than all others together.
func lettersOf(word string) string {
	after := strings.TrimLeftFunc(word, unicode.IsUpper)
	letters := word[:len(word)-len(after)]
	number := strings.TrimPrefix(after, "-")
	tail := strings.TrimLeft(number, "0123456789")
	digits := len(number) - len(tail)
	long := func(n int) bool { return n >= 1 && n <= 4 }
	if !long(utf8.RuneCountInString(letters)) || !long(digits) || utf8.RuneCountInString(tail) > 1 || strings.ContainsFunc(tail, isNoLetter) {
		return ""
	}
	return letters
}

func isNoLetter(r rune) bool { return !unicode.IsLetter(r) }

// otherMachine finds a text with another model of the same maker than the machine.
func (f facts) otherMachine(text string) []finding.Finding {
	machine := wordsOf(f.Machine)
	if len(machine) < 2 {
		return nil
	}
	words := wordsOf(text)
	for i, w := range machine[1:] {
		own := lettersOf(w.as)
		if own == "" || strings.Contains(" "+text+" ", w.as) {
			continue
		}
		for k := 1; k < len(words); k++ {
			if lettersOf(words[k].as) == own && words[k-1].low == machine[i].low {
				return []finding.Finding{finding.Warned(TextMachine, finding.Values{"text": text, "machine": f.Machine})}
			}
		}
	}
	return nil
}

// designation finds a title or a source with a designation of the machine's letters and
// another number: manual T3 for the T4.
func (f facts) designation(text string) []finding.Finding {
	for _, w := range wordsOf(f.Machine) {
		own := lettersOf(w.as)
		if own == "" || slices.Contains(otherLetters, own) || strings.Contains(text, w.as) {
			continue
		}
		for _, said := range wordsOf(text) {
			if lettersOf(said.as) == own && !f.ids[said.as] && len(f.otherMachine(text)) == 0 {
				return []finding.Finding{finding.Warned(TextDesignation, finding.Values{"text": text, "name": said.as, "machine": f.Machine})}
			}
		}
	}
	return nil
}

// otherLetters begin designations of other things: threads, papers, drawings.
var otherLetters = list("M A UN G R ISO DIN EN")
