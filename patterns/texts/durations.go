package texts

import (
	"strings"

	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
)

var (
	durationInText = expression.Lazily(`(?i)\b(\d+(?:[.,]\d+)?) ?(s|sec|seconds?|sekunden|secondes|segundos|min|minutes?|minuten|minutos|h|hours?|stunden?|heures?|horas?)\b`)
	within         = expression.Lazily(`(?i)\b(?:within|inside|in less than|innerhalb(?: von)?|binnen|dans les|en moins de|en menos de|dentro de)\s*$`)
)

// digits are in every text that states a figure: an expression that needs one is not even
// compiled for others, which would take memory.
const digits = "0123456789"

// stated is a duration in a text.
type stated struct {
	unit.Duration
	most bool // at most that long
}

func durationsIn(text string) (all []stated) {
	if !strings.ContainsAny(text, digits) {
		return nil
	}
	for _, at := range durationInText.FindAllStringSubmatchIndex(text, -1) {
		of := "h"
		switch strings.ToLower(text[at[4]:at[5]])[0] {
		case 's':
			if of = "s"; strings.HasPrefix(strings.ToLower(text[at[4]:at[5]]), "st") {
				of = "h"
			}
		case 'm':
			of = "min"
		}
		if d, err := unit.ParseDuration(strings.Replace(text[at[2]:at[3]], ",", ".", 1) + " " + of); err == nil {
			all = append(all, stated{d, within.MatchString(text[:at[0]])})
		}
	}
	return all
}

// noteOfWait finds a note with another duration than the wait that it is of.
func noteOfWait(s plan.Stage) []finding.Finding {
	said := durationsIn(s.Note)
	if s.Do != plan.Wait || len(said) != 1 || said[0].most || said[0].Duration == s.Wait {
		return nil
	}
	return []finding.Finding{finding.Warned(TextWait, finding.Values{"text": s.Note, "stated": said[0].Duration, "wait": s.Wait})}
}

// within finds a text that wants something done sooner than a wait before a stage lasts.
func (f facts) within(text string, before int) []finding.Finding {
	for _, said := range durationsIn(text) {
		for _, s := range f.Tighten.Stages[:before] {
			if said.most && s.Do == plan.Wait && s.Wait > said.Duration {
				return []finding.Finding{finding.Warned(TextWait, finding.Values{"text": text, "stated": said.Duration, "wait": s.Wait})}
			}
		}
	}
	return nil
}

// closing returns the number of stages before the one after which every fastener has
// been tightened once.
func (f facts) closing() int {
	touched := map[int]bool{}
	for i, s := range f.Tighten.Stages {
		for _, k := range s.Fasteners {
			touched[k] = true
		}
		if len(touched) == len(f.Joint.Fasteners) {
			return i
		}
	}
	return len(f.Tighten.Stages)
}
