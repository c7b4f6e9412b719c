package overhaul

import (
	"math"
	"strconv"
	"strings"

	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

const heaviestEach = 60 // kg that one person lifts off an engine (common practice, no source)

var (
	people = expression.Lazily(`(?i)\b(\d|two|three|four|zwei|drei|vier|deux|trois|quatre|dos|tres|cuatro) (?:people|persons|men|mechanics|leute|personen|mann|personnes|personas)\b`)
	number = map[string]float64{"two": 2, "three": 3, "four": 4, "zwei": 2, "drei": 3, "vier": 4, "deux": 2, "trois": 3, "quatre": 4, "dos": 2, "tres": 3, "cuatro": 4}
	// gear matches what a hoist may carry.
	gear  = expression.Lazily(`(?i)\b(?:hoist|crane|slings?|shackles?|lifting \pL+|jack|kran|hebezeug|schlingen|palan|grue|élingues|grúa|polipasto|eslingas)\b[^.;]{0,30}?\b(\d+(?:[.,]\d+)?) ?(kg|t)\b`)
	heavy = expression.Lazily(`(?i)\b(\d+(?:[.,]\d+)?) ?(kg|t)\b`)
)

func kilograms(figure, in string) float64 {
	v, _ := strconv.ParseFloat(strings.Replace(figure, ",", ".", 1), 64) // only digits
	if strings.EqualFold(in, "t") {
		const perTonne = 1000
		v *= perTonne
	}
	return v
}

// LiftedWrong looks in a text for a load that is too much for the people who lift it, or
// for the gear that it hangs from.
func LiftedWrong(text string) *finding.Finding {
	all := heavy.FindAllStringSubmatch(text, -1)
	if m := people.FindStringSubmatch(text); m != nil && len(all) == 1 {
		n := number[strings.ToLower(m[1])]
		if n == 0 {
			n, _ = strconv.ParseFloat(m[1], 64)
		}
		if each := kilograms(all[0][1], all[0][2]) / max(n, 1); each > heaviestEach {
			return warned(TooHeavy, finding.Values{"text": text, "each": strconv.FormatFloat(math.Round(each), 'f', -1, 64) + " kg"})
		}
	}
	g := gear.FindStringSubmatch(text)
	if g == nil || len(all) != 2 {
		return nil
	}
	load := all[0]
	if load[0] == g[1]+" "+g[2] || strings.HasSuffix(g[0], load[0]) {
		load = all[1]
	}
	if kilograms(load[1], load[2]) > kilograms(g[1], g[2]) {
		return warned(GearTooWeak, finding.Values{"text": text, "load": load[0], "gear": strings.TrimSpace(g[1] + " " + g[2])})
	}
	return nil
}

func (t Task) liftedWrong() *finding.Finding {
	for _, text := range []string{t.Note, t.Loosen, t.Tighten} {
		if f := LiftedWrong(text); f != nil {
			return f
		}
	}
	return nil
}

// massUnlikeJoint looks for a part that weighs something else than its joint says.
func (o Overhaul) massUnlikeJoint(t Task) *finding.Finding {
	if t.Part == "" {
		return nil
	}
	own := heavy.FindAllString(t.Loosen, -1)
	for _, j := range o.Joints() {
		if len(own) != 1 || !holdsPart(j.Title, t) || !ofOneSide(j.Title, t.Part) {
			continue
		}
		for _, c := range j.Cautions {
			all := heavy.FindAllStringSubmatch(c.Text, -1)
			if c.Side == plan.CautionTighten || len(all) != 1 || gear.MatchString(c.Text) {
				continue
			}
			if m := heavy.FindStringSubmatch(own[0]); kilograms(m[1], m[2]) != kilograms(all[0][1], all[0][2]) {
				return warned(MassUnlikeJoint, finding.Values{"text": t.Loosen, "other": c.Text})
			}
		}
	}
	return nil
}

// CautionDoubts looks for what is lifted wrong in the cautions for the whole machine; the
// result has the same order as these.
func (o Overhaul) CautionDoubts() []*finding.Finding {
	found := make([]*finding.Finding, len(o.Cautions))
	for i, c := range o.Cautions {
		found[i] = LiftedWrong(c.Text)
	}
	return found
}
