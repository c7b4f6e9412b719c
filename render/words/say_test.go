package words

import (
	"errors"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// First principles: each kind of brace and of value, in two languages.
func TestSay(t *testing.T) {
	values := finding.Values{
		"set": unit.Torque(41.2), "load": unit.Force(28_460), "share": 0.875, "one": 1, "bolts": 3, "side": "loosen", "long": unit.Length(9.5),
		"ids": []string{"M1", "M2", "M3"}, "many": []string{"1", "2", "3", "4", "5", "6", "7", "8"},
		"made": finding.Term("cast aluminium"), "why": finding.Failed("inner", finding.Values{"n": 2}), "none": "", "io": errors.New("disk full"),
	}
	for _, tt := range []struct{ sentence, english, german string }{
		{"{set}", "41 N·m", "41\u00a0N·m"},
		{"{set:.2 N·m}", "41.20 N·m", "41,20\u00a0N·m"},
		{"{load}, {load:.0 N}, {load:2g kN}", "28.5 kN, 28460 N, 28 kN", "28,5\u00a0kN, 28460\u00a0N, 28\u00a0kN"},
		{"{share:.0 %} {share:+.1}", "88 % +0.9", "88\u00a0% +0,9"},
		{"{one|# bolt|# bolts} {bolts|# bolt|# bolts}", "1 bolt 3 bolts", "1 bolt 3 bolts"},
		{"{side|loosen=off {bolts}|on}", "off 3", "off 3"},
		{"{made|steel=hard|soft}", "soft", "soft"},
		{"a{?long: of {long}}{!long: of any}{?none: {none}}{?gone: x}{!gone: y}", "a of 9.5 mm y", "a of 9,5\u00a0mm y"},
		{"{ids}; {ids:or}", "M1, M2 and M3; M1, M2 or M3", "M1, M2 und M3; M1, M2 oder M3"},
		{"{many}", "1, 2, 3, 4, 5, 6 and 2 more", "1, 2, 3, 4, 5, 6 und 2 weitere"},
		{"{many:all}", "1, 2, 3, 4, 5, 6, 7 and 8", "1, 2, 3, 4, 5, 6, 7 und 8"},
		{"{many:,}", "1, 2, 3, 4, 5, 6, 7, 8", "1, 2, 3, 4, 5, 6, 7, 8"},
		{"{made}: {why}", "cast aluminium: two 2", "Aluminiumguss: zwei 2"},
		{"{io}", "disk full", "disk full"},
	} {
		for c, want := range map[*Catalogue]string{
			saying("en", ".", "and", "or", "and", "two {n}", "cast aluminium"):   tt.english,
			saying("de", ",", "und", "oder", "und", "zwei {n}", "Aluminiumguss"): tt.german,
		} {
			c.Findings["it"] = tt.sentence
			if c.Language == "de" {
				c.List.More = Plural{"und %d weitere", "und %d weitere"}
			}
			if got := c.Say(finding.Warned("it", values)); got != want {
				t.Errorf("%s %q: %q, want %q", c.Language, tt.sentence, got, want)
			}
		}
	}
}

func saying(language, decimal, and, or, more, inner, made string) *Catalogue {
	return &Catalogue{Language: language, Decimal: decimal, List: List{And: and, Or: or, More: Plural{more + " %d more", more + " %d more"}},
		Terms: map[string]string{"cast aluminium": made}, Findings: map[string]string{"inner": inner}}
}

// Errors keep their code when wrapped, and the words find it.
func TestSayOfErrors(t *testing.T) {
	const code finding.Code = "too large"
	c := saying("en", ".", "and", "or", "and", "", "")
	c.Findings["too large"] = "{n} is too large"
	err := errors.Join(finding.Failed(code, finding.Values{"n": 7}))
	if got := c.Error(err); got != "7 is too large" || !errors.Is(err, code) {
		t.Errorf("%q, is %v", got, errors.Is(err, code))
	}
}
