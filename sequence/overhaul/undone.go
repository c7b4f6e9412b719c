package overhaul

import (
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

// Words for how a machine lies, and for what closes an opening, in the languages of
// the cards.
var (
	turnWords  = []string{"turn", "turned", "tilt", "tilted", "gedreht", "drehen", "gekippt", "wenden", "tourné", "tourner", "retourné", "retourner", "girado", "girar", "volteado"}
	lyingWords = []string{"stand", "upright", "upside", "upward", "montagebock", "bock", "aufrecht", "support", "chevalet", "soporte", "caballete"}
	shutWords  = []string{"closed", "close", "plugged", "stuffed", "stopped", "verschlossen", "verstopft", "verschließen", "bouché", "bouchée", "fermé", "fermée", "tapado", "tapada", "cerrado", "cerrada"}
	stoppers   = []string{"rag", "cloth", "plug", "bung", "stopper", "lappen", "tuch", "stopfen", "chiffon", "bouchon", "trapo", "tapón", "tapone"}
	openWords  = []string{"out", "off", "open", "opened", "unplugged", "clear", "free", "aus", "raus", "heraus", "offen", "frei", "entfernt", "ouvert", "retiré", "enlevé", "libre", "fuera", "quitado", "abierto"}
	ports      = []string{"port", "hole", "opening", "öffnung", "öffnungen", "kanäle", "orifice", "conduit", "orificio", "conducto"}
)

// turnedOnce looks for a machine that is turned on its stand between two joints on one
// side of the work, and is not between the same two on the other.
func (o Overhaul) turnedOnce(task int) *finding.Finding {
	t := o.Tasks[task]
	if t.Note == "" || t.Side == plan.CautionBoth {
		return nil
	}
	first, last := task, task
	for first > 0 && o.Tasks[first-1].Joint == nil {
		first--
	}
	for last+1 < len(o.Tasks) && o.Tasks[last+1].Joint == nil {
		last++
	}
	turns := func(side plan.CautionSide) (n int, text string) {
		for _, near := range o.Tasks[first : last+1] {
			for _, clause := range near.clausesOn(side) {
				if said := tokens(clause); hasAny(said, turnWords) && hasAny(said, lyingWords) {
					n, text = n+1, strings.TrimSpace(clause)
				}
			}
		}
		return n, text
	}
	here, text := turns(t.Side)
	there, _ := turns(otherSide(t.Side))
	if here != 1 || there != 0 || !slices.ContainsFunc(t.clausesOn(t.Side), func(c string) bool { return strings.TrimSpace(c) == text }) {
		return nil
	}
	return warned(TurnedOnce, finding.Values{"text": text, "side": string(otherSide(t.Side))})
}

func otherSide(side plan.CautionSide) plan.CautionSide {
	if side == plan.CautionLoosen {
		return plan.CautionTighten
	}
	return plan.CautionLoosen
}

// stopperStays looks for an opening that is closed with a rag or a plug which no step
// of the rebuild takes out.
func (o Overhaul) stopperStays(t Task) *finding.Finding {
	for _, clause := range t.clauses() {
		said := tokens(clause)
		if !hasAny(said, shutWords) || !hasAny(said, stoppers) {
			continue
		}
		out := slices.ContainsFunc(o.Tasks, func(t Task) bool {
			return slices.ContainsFunc(t.clauses(), func(c string) bool {
				words := tokens(c)
				return hasAny(words, openWords) && (hasAny(words, stoppers) || hasAny(words, ports)) && !hasAny(words, shutWords)
			})
		})
		if !out {
			return warned(StopperStays, finding.Values{"text": strings.TrimSpace(clause)})
		}
	}
	return nil
}

// Words of what is done on one side of the work alone.
var (
	goingIn  = []string{"filled", "oiled", "lubricated", "gefüllt", "geölt", "eingeölt", "rempli", "remplie", "huilé", "huilée", "lubrifié", "llenado", "llena", "aceitado", "engrasado"}
	goingOut = []string{"drained", "photo", "scrap", "abgelassen", "schrott", "vidangé", "vidangée", "rebut", "vaciado", "chatarra", "foto"}
	keeping  = []string{"rust", "penetrating", "corrosion", "rost", "rostschutz", "kriechöl", "rouille", "dégrippant", "óxido"}
)

// textOfOther looks for a text of a part that is of the other side of the work: filled
// with oil, on the way out.
func (t Task) textOfOther() *finding.Finding {
	for _, side := range []plan.CautionSide{plan.CautionLoosen, plan.CautionTighten} {
		own, other := goingOut, goingIn
		if side == plan.CautionTighten {
			own, other = goingIn, goingOut
		}
		said := tokens(t.Remark(side))
		if wrong := side == plan.CautionLoosen && oiledFirst(said) || side == plan.CautionTighten && takenOut(said); t.Part != "" && wrong && !hasAny(said, keeping) {
			return warned(TextOfOther, finding.Values{"text": t.Remark(side), "side": string(side)})
		}
		if t.Part != "" && hasAny(said, other) && !hasAny(said, own) && !hasAny(said, keeping) {
			return warned(TextOfOther, finding.Values{"text": t.Remark(side), "side": string(side)})
		}
	}
	return nil
}

var (
	oiling  = []string{"oil", "lubricate", "grease"}
	pulling = []string{"pull", "lift", "draw", "take"}
	outOf   = []string{"out", "off"}
	later   = []string{"then", "before", "after", "again", "back"}
	oilable = []string{"bearing", "bearings", "journal", "journals", "lobe", "lobes", "lip", "lips", "shells"}
)

// oiledFirst reports whether a text begins with oiling what runs in oil: oil the bearings.
func oiledFirst(said []string) bool {
	return len(said) > 1 && slices.Contains(oiling, said[0]) && hasAny(said, oilable) && !hasAny(said, later)
}

// takenOut reports whether a text begins with taking something out, in one of four
// languages: pull it straight out.
func takenOut(said []string) bool {
	if len(said) < 2 || hasAny(said, later) {
		return false
	}
	end := said[len(said)-1]
	return slices.Contains(pulling, said[0]) && slices.Contains(outOf, end) || slices.Contains([]string{"herausziehen", "ausbauen", "abziehen"}, end) ||
		slices.Contains([]string{"déposer", "extraire", "extraer", "sacar"}, said[0])
}
