package card_test

import (
	"strings"
	"testing"

	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/sheettest"
)

func lid(kinds string) string {
	return "drawdown: 1\ntitle: Lid\nkinds: {" + kinds + "}\nfasteners:\n  - {id: A, at: [0, 0], kind: main}\n  - {id: B, at: [80, 0], kind: main}\n" +
		"tighten:\n  stages: [{torque: 20 N·m}]\n  source: works manual\n"
}

// First principles, from the words of the file. Widths of heads given by form
// only: ISO 4014 and ISO 4762.
func TestSockets(t *testing.T) {
	const main, side = "main: {thread: M10, ", ", side: {thread: M8, head: 13 mm}"
	for kinds, want := range map[string]string{
		main + "head: 16 mm}":                                "Sockets: 16 mm.",
		main + "head: 24 mm, nut: 24 mm}":                    "Sockets: 24 mm, two: head and nut.",
		main + "head: 24 mm, nut: 27 mm}":                    "Sockets: 24 mm and 27 mm for the nut.",
		main + "head: hexagon}":                              "Sockets: 16 mm (ISO 4014 M10).",
		main + "head: socket}":                               "Sockets: hexagon key 8 mm (ISO 4762 M10).",
		main + "head: socket, nut: 16 mm}":                   "Sockets: hexagon key 8 mm (ISO 4762 M10) and 16 mm for the nut.",
		main + "nut: 16 mm, into: steel, engagement: 20 mm}": "Sockets: 16 mm.",
		main + "class: '8.8'}":                               "",
	} {
		for _, side := range []card.Sides{card.TightenSide, card.LoosenSide} {
			document, _ := card.Document(planOf(t, lid(kinds)), side, sheettest.English(sheettest.Paper(t, "a3")))
			said := scenetest.Said(document.Pages...)
			if !strings.Contains(said, want) || want == "" && strings.Contains(said, "Sockets") {
				t.Errorf("%s: the card lacks %q, or says more:\n%s", kinds, want, said)
			}
		}
	}
	two := strings.Replace(lid(main+"head: 16 mm}"+side), "id: B, at: [80, 0], kind: main", "id: B, at: [80, 0], kind: side", 1)
	document, _ := card.Document(planOf(t, two), card.TightenSide, sheettest.English(sheettest.Paper(t, "a3")))
	if said := scenetest.Said(document.Pages...); !strings.Contains(said, "Sockets: 16 mm main, 13 mm side.") {
		t.Errorf("two kinds: %s", said)
	}
}

// The card prints the limit that the file states, with figures in the style of
// the language. Without a limit, the card refers to the manual.
func TestLimitOfReuse(t *testing.T) {
	for kind, want := range map[string]map[string]string{
		"main: {thread: M10, length: 90 mm, reuse: inspect, inspect: {length: 92.5 mm}}": {
			"en": "over 92.5 mm is scrap", "de": "über 92,5 mm Ausschuss", "fr": "plus de 92,5 mm", "es": "más de 92,5 mm",
		},
		"main: {thread: M10, length: 90 mm, reuse: inspect}": {
			"en": "limits: see manual", "de": "Grenzwerte: Handbuch", "fr": "le manuel", "es": "el manual",
		},
	} {
		for tag, words := range want {
			ask := sheet.Request{Paper: sheettest.Paper(t, "a3"), Words: sheettest.Language(t, tag)}
			document, _ := card.Document(planOf(t, lid(kind)), card.TightenSide, ask)
			if said := strings.ReplaceAll(scenetest.Said(document.Pages...), "\u00a0", " "); !strings.Contains(said, words) {
				t.Errorf("%s, %s: the card lacks %q:\n%s", kind, tag, words, said)
			}
		}
	}
}

// Bolts turned past yield and a crushed gasket cannot be used again. The card
// says so next to the instruction to slacken all, in every language.
func TestSlackenAllSaysWhatIsScrap(t *testing.T) {
	t.Parallel()
	for tag, want := range map[string][]string{
		"en": {"stretched bolts", "gasket", "Scrap"}, "de": {"Gelängte", "Dichtung", "Schrott"},
		"fr": {"Vis serrées", "joint écrasé", "rebut"}, "es": {"tornillos estirados", "junta", "ya no sirven"},
	} {
		document, _ := card.Document(planOf(t, "p4-head"), card.TightenSide, sheet.Request{Paper: sheettest.Paper(t, "a4"), Words: sheettest.Language(t, tag)})
		said := strings.ReplaceAll(scenetest.Said(document.Pages...), "\u00a0", " ")
		for _, word := range want {
			if !strings.Contains(said, word) {
				t.Errorf("%s: %q does not stand on the card", tag, word)
			}
		}
	}
}
