package advice

import (
	"fmt"
	"slices"
	"strings"

	"drawdown/sequence"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/judge"
)

// VerdictKind is what a comparison comes to.
type VerdictKind string

const (
	MendFile VerdictKind = "mend the file" // a stage does nothing, so nothing is judged
	LeaveIt  VerdictKind = "leave it"      // the plan is as good as any
	NoCure   VerdictKind = "no cure"       // no way that was tried makes the joint even
	AskFor   VerdictKind = "ask for"       // one is worth asking the maker for
)

// Verdict is whether to change the plan, and why. Percentages are of the lowest
// bolt at the end, at the low end of the band: the worst, most often the soft gasket.
type Verdict struct {
	Kind                      VerdictKind
	Way                       string // name of the best trial, which may be the file's own
	OwnLowest, BestLowest     float64
	OwnNominal, BestNominal   float64             // the same on the nominal gasket
	BeforeRepeats             float64             // what OwnLowest was before the file's own repeats of its last torque; 0: it has none that count
	FrictionSD                float64             // that torque brings, percent
	Repeats                   int                 // of the last pass until the softest gasket is even; 0: none, or nobody can say
	StillStrong               bool                // the best helps, and leaves the joint far from even all the same
	OwnUnevenMm, BestUnevenMm float64             // both 0 unless the best lies clearly more uneven on the way
	PassedOver                bool                // an order that departs from the trade's rules would do clearly better
	Rules                     judge.Verdict       // on the order of the best; empty where it is the file's
	Falls                     []procedure.Fall    // for MendFile
	Hundreds                  []procedure.Hundred // the last torque of each kind, or that an angle ends it
}

// AsksForRepeat says whether what is worth asking for gives the last torque again.
func (v Verdict) AsksForRepeat() bool {
	return v.Kind == AskFor && slices.Contains([]string{OneMorePass, LastTwice, Recipe}, v.Way)
}

// Again lists the kinds that can be given their last torque once more, with it.
func (v Verdict) Again() (list []procedure.Hundred) { return by(v.Hundreds, procedure.ByLastTorque) }

// OnAngle lists the kinds that an angle ends, which are never turned again.
func (v Verdict) OnAngle() (kinds []string) { return KindsOnAngle(v.Hundreds) }

func KindsOnAngle(hundreds []procedure.Hundred) (kinds []string) {
	for _, h := range by(hundreds, procedure.ByMeanAtAngle) {
		kinds = append(kinds, h.Kind)
	}
	return kinds
}

func by(hundreds []procedure.Hundred, by procedure.HundredBy) (list []procedure.Hundred) {
	for _, h := range hundreds {
		if h.By == by {
			list = append(list, h)
		}
	}
	return list
}

// String says it in whole English sentences.
func (v Verdict) String() string {
	switch v.Kind {
	case MendFile:
		return procedure.LookFirst(v.Falls)
	case LeaveIt:
		reason := fmt.Sprintf("at the worst the lowest bolt keeps %.0f %%", v.OwnLowest)
		if v.BeforeRepeats > 0 {
			reason = fmt.Sprintf("its own repeat of the last torque lifts the lowest bolt from %.0f to %.0f %% at the worst", v.BeforeRepeats, v.OwnLowest)
		}
		return fmt.Sprintf("Leave the plan as it is: %s, and torque scatter of about %.0f %% SD hides the rest.", reason, v.FrictionSD)
	case NoCure:
		which := "order or stages"
		if v.PassedOver {
			which += " that keep to the trade's rules"
		}
		words := fmt.Sprintf("No other %s cure this joint: the lowest bolt may end at %.0f %%", which, v.OwnLowest)
		if v.Way != OwnWay {
			words += fmt.Sprintf(", and with %s at %.0f %%", v.phrase(), v.BestLowest)
		}
		return words + ". " + v.goRound() + " The maker's sequence stands."
	}
	words := fmt.Sprintf("Worth asking the maker for: %s. At the worst it lifts the lowest bolt from %.0f to %.0f %%, nominally from %.0f to %.0f %%.", v.phrase(), v.OwnLowest, v.BestLowest, v.OwnNominal, v.BestNominal)
	if v.StillStrong {
		words += " That is still far from even. " + v.goRound()
	}
	if v.BestUnevenMm > 0 {
		words += fmt.Sprintf(" But on the way the part lies uneven by %.2f mm instead of %.2f mm.", v.BestUnevenMm, v.OwnUnevenMm)
	}
	return words + " Until then the maker's sequence stands."
}

// WhyNotAgain says why kinds that an angle ends are left alone; empty where there
// are none.
func (v Verdict) WhyNotAgain() string {
	kinds := v.OnAngle()
	if len(kinds) == 0 {
		return ""
	}
	return fmt.Sprintf("Never turn %s again: an angle ends the work there. Its torque once more would only click, since the angle has left more than that; a second angle would stretch the bolts beyond what the maker allows.", strings.Join(kinds, ", "))
}

// goRound is what helps any joint (common practice, no source).
func (v Verdict) goRound() string {
	words := "Go round at the last torque until no nut turns any more"
	if v.Repeats > 0 {
		words += fmt.Sprintf(" (on the softest gasket %d more passes)", v.Repeats)
	}
	return words + ", or measure stretch."
}

// phrase says what the best trial changes.
func (v Verdict) phrase() string {
	switch way := v.Way; {
	case way == Recipe:
		return "a snug pass, the stages from the centre out, and the last torque twice round"
	case way == LastTwice:
		var again []string
		for _, h := range v.Again() {
			again = append(again, fmt.Sprintf("%v on %s", h.Torque, h.Kind))
		}
		return strings.Join(again, " and ") + " once more"
	case strings.HasPrefix(way, "search"):
		return "another order, found by search for " + strings.TrimPrefix(way, "search: ")
	case slices.Contains(SensibleWays, sequence.Way(way)):
		return "the order " + way
	}
	return v.Way
}

// Snug is what the first stage buys, with it and without.
type Snug struct {
	OwnUnevenMm, WithoutUnevenMm float64
	OwnLowest, WithoutLowest     float64 // percent
	SameUneven, SameLowest       bool    // as far as anyone can tell
}

// String says it in an English sentence.
func (s Snug) String() string {
	const stays = " It stays in the plan: it brings the faces together, which is not in the model."
	uneven := fmt.Sprintf("the part would lie uneven by %.2f mm instead of %.2f mm", s.WithoutUnevenMm, s.OwnUnevenMm)
	lowest := fmt.Sprintf("the lowest bolt would end at %.0f instead of %.0f %%", s.WithoutLowest, s.OwnLowest)
	switch {
	case s.SameUneven && s.SameLowest:
		return "Without the first stage the bolts would end the same and the part would lie as even." + stays
	case s.SameLowest:
		return "Without the first stage " + uneven + "; the bolts would end the same." + stays
	case s.SameUneven:
		return "Without the first stage " + lowest + "." + stays
	}
	return "Without the first stage " + uneven + ", and " + lowest + "." + stays
}
