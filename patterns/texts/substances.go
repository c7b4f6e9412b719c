package texts

import (
	"slices"
	"strings"

	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
)

// stuff is something that goes on threads: the expressions for it in texts, and
// in the file.
type stuff struct{ inText, inFile expression.Lazy }

const threadsBeside = `(?:threads?|bolts?|studs?|screws?|nuts?|heads|gewinde|\w*schrauben|filets?|filetages?|vis|écrous|goujons|roscas?|tornillos?|tuercas?)`

var stuffs = []stuff{
	{expression.Lazily(`(?i)\boil (?:all |the |their |new |bolt )*` + threadsBeside + `\b|\b` + threadsBeside + `\b[^.;:]*\boiled\b|\boiled (?:bolt )?` + threadsBeside + `\b|\b(?:engine|motor) oil on\b|` +
		`\b\w*(?:gewinde|schrauben)\b[^.;:]*\b(?:ölen|geölt)|\bhuiler (?:les )?(?:filets|filetages|vis)|\baceitar (?:las |los )?(?:roscas|tornillos)`), expression.Lazily(`(?i)oil`)},
	{beside(`moly\w*|mos2|mos₂|molibdeno|molybdène`), expression.Lazily(`(?i)mol[yi]|mos2|mos₂|assembly paste`)},
	{beside(`copper (?:paste|grease)|anti-?seize|kupferpaste|graisse au cuivre|grasa de cobre`), expression.Lazily(`(?i)copper|seize|nickel`)},
	{beside(`thread ?lock\w*|locker|locking compound|locking fluid|schraubensicherung|frein-?filet|fijador de roscas`), expression.Lazily(`(?i)lock`)},
	{beside(`gear oil|hydraulic oil|transmission oil|getriebeöl|hydrauliköl`), expression.Lazily(`gear|hydraulic|transmission`)},
	{beside(`graphite|graphit|grafito`), expression.Lazily(`(?i)graphite`)},
	{beside(`greased?|grease|fett|gefettet|graisse|graissés|grasa`), expression.Lazily(`(?i)grease|paste|seize|mol[yi]|mos`)},
}

// beside matches a substance in a clause about threads; what locks threads has
// them in its name.
func beside(name string) expression.Lazy {
	return expression.Lazily(`(?i)\b` + threadsBeside + `\b[^.;:]*\b(?:` + name + `)|\b(?:` + name + `)[^.;:]*\b` + threadsBeside + `\b|\bwith (?:` + name + `)`)
}

// notOnThreads are words that mean a text is about something else, or wants the
// substance off.
var notOnThreads = expression.Lazily(`(?i)\b(wip\w*|remov\w*|free|degreas\w*|no|not|without|never|off|old|drain\w*|fill\w*|sump|pan|pump|filter|bearing\w*|journal\w*|lobe\w*|tappet\w*|shell\w*|lip|seal|ring|piston|ohne|kein\w*|nicht|entfern\w*|alte\w*|sans|pas|ôter|sin|quitar|penetrat\w*|soak\w*|rust\w*)\b`)

// lubricants finds a text that wants another lubricant on the threads than the
// file states for every kind.
func (f facts) lubricants(text string) []finding.Finding {
	for _, sentence := range sentencesOf(text) {
		if found := f.lubricantOf(text, sentence); found != nil {
			return found
		}
	}
	return nil
}

func (f facts) lubricantOf(whole, text string) []finding.Finding {
	if ofOthers.MatchString(text) || denied.MatchString(text) || notOnThreads.MatchString(text) {
		return nil
	}
	stated := f.kindSizes(func(k plan.Kind) string { return k.Lubricant })
	if stated == nil || slices.ContainsFunc(stated, func(s string) bool { return s == asDelivered || strings.Contains(strings.ToLower(text), s) }) {
		return nil
	}
	for _, s := range stuffs {
		if s.inText.MatchString(text) && !slices.ContainsFunc(stated, s.inFile.MatchString) && !slices.ContainsFunc(stated, screw.Sets) {
			return []finding.Finding{finding.Warned(TextLubricant, finding.Values{"text": whole, "lubricants": stated})}
		}
	}
	return nil
}

// Texts that want new fasteners, and texts that want old ones again.
var (
	newInText   = expression.Lazily(`(?i)\b(?:new|neue[rns]?|nouve(?:lles|aux)|nuevos|nuevas) (?:\pL+ ){0,2}?` + threadsBeside + `\b|` + threadsBeside + `\b[^.;:]*\b(?:renewed|replaced|used once)\b|\b(?:renew|replace|discard)\b[^.;:]*\b` + threadsBeside)
	againInText = expression.Lazily(`(?i)` + threadsBeside + `\b[^.;:]*\b(?:may be (?:re-?used|used (?:again|twice))|(?:are|is) (?:re-?used|used again)|go back)\b|\bre-?use (?:the |all |old |same )*(?:\pL+ ){0,2}?` + threadsBeside +
		`\b|\b(?:use|fit) (?:the |all |old |same )*(?:\pL+ ){0,2}?` + threadsBeside + `(?: in)? again\b|\w*(?:schrauben|muttern)\b[^.;:]*\b(?:wieder ?(?:zu)?verwend|erneut verwend|noch ?mals verwend)` +
		`|\b(?:réutiliser|réemployer) (?:les )?` + threadsBeside + `|` + threadsBeside + `\b[^.;:]*\bréutilis|\b(?:reutilizar|volver a usar) (?:los |las )?` + threadsBeside + `|` + threadsBeside + `\b[^.;:]*\breutiliz` +
		`|\b(?:clean|oil|refit|fit|wash) (?:the |all |\d+ )*old (?:\pL+ ){0,2}?` + threadsBeside)
	// usedAgain wants fasteners on again that were taken off, even if only some of them.
	usedAgain = expression.Lazily(`(?i)` + threadsBeside + `\b[^.;:]*\b(?:use|fit|refit) them again\b`)
	// oldInText wants old fasteners on again, unless they go away.
	oldInText = expression.Lazily(`(?i)^\W*(?:the |all |\d+ )*old (?:\pL+ ){0,2}?(?:bolts|studs|screws|nuts)\b`)
	goesAway  = expression.Lazily(`(?i)\b(?:off|out|away|discard\w*|scrap\w*|mark\w*|compare\w*|measure\w*|count\w*|bin|come|left|raus|heraus|weg|ab|schrott|vergleichen|messen)\b`)
	notAlways = expression.Lazily(`(?i)\b(?:if|where|when|damaged|worn|stretched|longer|doubt|not|never|no|wenn|falls|nicht|si|no|ne|pas)\b`)
)

// reuse finds a text that wants new fasteners although those of every kind are
// reused, or the reverse.
func (f facts) reuse(text string) []finding.Finding {
	reuse := f.kindSizes(func(k plan.Kind) string { return string(k.Reuse) })
	if len(reuse) == 1 && reuse[0] == string(plan.ReuseOnce) && usedAgain.MatchString(text) && !denied.MatchString(text) {
		return []finding.Finding{finding.Warned(TextReuse, finding.Values{"text": text, "reuse": reuse[0]})}
	}
	if len(reuse) != 1 || notAlways.MatchString(text) || denied.MatchString(text) || ofOthers.MatchString(strings.ReplaceAll(strings.ToLower(text), "old ", "")) {
		return nil
	}
	once := reuse[0] == string(plan.ReuseOnce)
	if once && strings.Contains(strings.ToLower(text), "old ") && oldInText.MatchString(text) && !goesAway.MatchString(text) {
		return []finding.Finding{finding.Warned(TextReuse, finding.Values{"text": text, "reuse": reuse[0]})}
	}
	if newInText.MatchString(text) && !once && reuse[0] == string(plan.ReuseYes) || againInText.MatchString(text) && once {
		return []finding.Finding{finding.Warned(TextReuse, finding.Values{"text": text, "reuse": reuse[0]})}
	}
	return nil
}

var (
	newGasket   = expression.Lazily(`(?i)\bnew (?:[\pL-]+ ){0,2}?gasket|\bneue \w*dichtung|\bnouveau joint|\bjoint neuf|\bjunta nueva|\bnueva junta`)
	gasketAgain = expression.Lazily(`(?i)\bgasket\b[^.;]*\b(?:(?:used|fitted) again|re-?used)|\bre-?use the (?:old )?gasket|dichtung\b[^.;]*wiederverwend|joint\b[^.;]*réutilis|junta\b[^.;]*(?:reutiliz|otra vez)`)
)

// disagrees finds an earlier caution of the same side that states the opposite.
func disagrees(p plan.Plan, i int) []finding.Finding {
	c := p.Cautions[i]
	renewed, again := newGasket.MatchString(c.Text), gasketAgain.MatchString(c.Text)
	if !renewed && !again || notAlways.MatchString(c.Text) {
		return nil
	}
	for _, other := range p.Cautions[:i] {
		sides := c.Side == other.Side || c.Side == plan.CautionBoth || other.Side == plan.CautionBoth
		opposite := renewed && gasketAgain.MatchString(other.Text) || again && newGasket.MatchString(other.Text)
		if sides && opposite && !notAlways.MatchString(other.Text) {
			return []finding.Finding{finding.Warned(TextsDisagree, finding.Values{"text": c.Text, "other": other.Text})}
		}
	}
	return nil
}

// gasketsOnce are gaskets that take the shape of their faces and seal once.
var gasketsOnce = expression.Lazily(`steel|spiral|composite|fibre|cork|paper`)

var (
	beforeGasket = expression.Lazily(`(?i)(\pL+)[ -]gasket`)
	gasketNouns  = list("gasket dichtung joint junta")
	// ofTheGasket may stand before the word and name no other part.
	ofTheGasket = list("the old this same used new wound steel layer composite fibre metal paper cork sheet copper joint head")
)

// gasketAgain finds a text that uses such a gasket again.
func (f facts) gasketAgain(text string) []finding.Finding {
	if low := strings.ToLower(text); !slices.ContainsFunc(gasketNouns, func(w string) bool { return strings.Contains(low, w) }) {
		return nil
	}
	if m := beforeGasket.FindStringSubmatch(text); m != nil && !slices.Contains(ofTheGasket, strings.ToLower(m[1])) && !slices.Contains(stemsOf(f.Title), strings.ToLower(m[1])) {
		return nil // of another part
	}
	if !gasketsOnce.MatchString(f.Clamped.Gasket.Kind) || !gasketAgain.MatchString(text) || notAlways.MatchString(text) {
		return nil
	}
	return []finding.Finding{finding.Warned(TextGasketAgain, finding.Values{"text": text, "gasket": finding.Term(f.Clamped.Gasket.Kind)})}
}

// gasketWords match kinds of gaskets in a text, and in the key joint.
var gasketWords = []struct{ inText, inFile expression.Lazy }{
	{expression.Lazily(`(?i)spiral[- ]?wound|spiraldichtung|spiralée?|espirometálica`), expression.Lazily(`spiral`)},
	{expression.Lazily(`(?i)\b(?:paper|fib(?:re|er)|papier|faser|papel|fibra)[- ]?(?:sheet )?(?:gaskets?|dichtung\w*)|joints? en (?:papier|fibre)|juntas? de (?:papel|fibra)`), expression.Lazily(`fibre|composite`)},
	{expression.Lazily(`(?i)\bcomposite (?:\pL+ )?gaskets?|\b(?:verbund|weichstoff)dichtung\w*|joints? composites?|juntas? compuestas?`), expression.Lazily(`composite`)},
	{expression.Lazily(`(?i)\bcopper (?:\pL+ )?gaskets?|\bkupferdichtung\w*|joints? en cuivre|juntas? de cobre`), expression.Lazily(`copper`)},
	{expression.Lazily(`(?i)\bcork\b|\bkork\w*|\bliège\b|\bcorcho\b`), expression.Lazily(`cork`)},
	{expression.Lazily(`(?i)\bO-?rings?\b`), expression.Lazily(`O-ring`)},
	{expression.Lazily(`(?i)\b(?:multi-?layer(?:ed)?[- ]steel|MLS|steel gaskets?|metal gaskets?|mehrlagen\w*)\b`), expression.Lazily(`steel|spiral`)},
	{expression.Lazily(`(?i)\b(?:bead of sealant|liquid gasket|sealant bead|dichtraupe|flüssigdichtung)\b`), expression.Lazily(`sealant|fibre|composite|cork|O-ring|steel|spiral|none`)},
}

var topDown = expression.Lazily(`\b(?:TOP|OBEN|HAUT|ARRIBA)\b[^.;,]*\b(?:down|downwards|(?i:nach unten|vers le bas|hacia abajo))\b`)

// upsideDown finds a mark TOP that points downwards.
func upsideDown(text string) []finding.Finding {
	if !strings.ContainsAny(text, "TOH") || !topDown.MatchString(text) {
		return nil
	}
	return []finding.Finding{finding.Warned(TextUpsideDown, finding.Values{"text": text})}
}

var gasketInText = expression.Lazily(`(?i)\b(?:new|fresh|neue) (?:\pL+ ){0,2}?(?:gasket|dichtung)\b|\bgasket (?:dry|new)\b`)

// gaskets finds a text with another gasket than that of the joint.
func (f facts) gaskets(text string) []finding.Finding {
	gasket := f.Clamped.Gasket.Kind
	if gasket == "" || notOnThreads.MatchString(text) && !strings.Contains(strings.ToLower(text), "gasket") {
		return nil
	}
	other := gasket == "none" && gasketInText.MatchString(text)
	for _, w := range gasketWords {
		if w.inText.MatchString(text) {
			if w.inFile.MatchString(gasket) {
				return nil
			}
			other = true
		}
	}
	if !other {
		return nil
	}
	return []finding.Finding{finding.Warned(TextGasket, finding.Values{"text": text, "gasket": finding.Term(gasket)})}
}
