package plan

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// First principles: a side shows its own cautions and those for both.
func TestCautionsOfASide(t *testing.T) {
	in := cylinderHead(t)
	in.Cautions = []Caution{{"a", CautionLoosen}, {"b", CautionBoth}, {"c", CautionTighten}}
	p := build(t, in)
	for side, want := range map[CautionSide][]string{
		CautionTighten: {"b", "c"}, CautionLoosen: {"a", "b"}, CautionBoth: {"a", "b", "c"},
	} {
		if diff := cmp.Diff(want, p.CautionsFor(side)); diff != "" {
			t.Errorf("%q: %s", side, diff)
		}
	}
}

// First principles of the four languages: an article or a conjunction does not
// end a sentence; a preposition does if it belongs to a word before it.
func TestCautionCutOff(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]string{
		"Cam lobes of cylinder 1 away from": "from",
		"Oil the threads and":               "and",
		"Bolts tightened to":                "to",
		"Clear of the":                      "the",
		"New gasket,":                       ",",
		"Tools:":                            ":",
		"Gewinde geölt und":                 "und",
		"Dichtflächen frei von":             "von",
		"Huiler les filets et":              "et",
		"Aceitar las roscas y":              "y",
		"Two old bolts kept to turn the crankshaft with":      "",
		"Shells stay with it to be looked at":                 "",
		"New studs screwed in by hand, no further":            "",
		"Start at bank A":                                     "",
		"Schrauben ziehen nicht an":                           "",
		"Stift vor dem Lösen der Deckel rein, dann geht’s ab": "",
		"Thread cut with a tap and die":                       "",
		"New gasket":                                          "",
		"Oil no hotter than 30 °C.":                           "",
		"Only in the oil that it came with":                   "",
	} {
		if got := (Caution{Text: text}).CutOff(); got != want {
			t.Errorf("%q ends with %q, want %q", text, got, want)
		}
	}
}
