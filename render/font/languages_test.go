package font

import "testing"

// Pangrams and alphabets of Europe's national languages (public-domain
// sentences, from memory): the typeface has every letter.
var languages = map[string]string{
	"Albanian":      "Ç ç Ë ë Unë mund të ha qelq dhe nuk më gjen gjë.",
	"Basque":        "Ñ ñ Kristala jan dezaket, ez dit minik ematen.",
	"Belarusian":    "Я магу есці шкло, яно мне не шкодзіць. Ў ў І і",
	"Bosnian":       "Ja mogu jesti staklo i ne boli me. Đ đ Č č Ć ć Š š Ž ž",
	"Bulgarian":     "Мога да ям стъкло, то не ми вреди. Щ щ Ъ ъ Ю ю",
	"Catalan":       "Puc menjar vidre, que no em fa mal. L·l ç à è ï",
	"Croatian":      "Ja mogu jesti staklo, i to mi ne šteti. Dž Lj Nj",
	"Czech":         "Příliš žluťoučký kůň úpěl ďábelské ódy",
	"Danish":        "Quizdeltagerne spiste jordbær med fløde, mens cirkusklovnen Åse",
	"Dutch":         "Pa’s wijze lynx bezag vroom het fikse aquaduct ĳ Ĳ ë",
	"Estonian":      "Põdur Zagrebi tšellomängija-följetonist Ciqo külmetas kehvas garaažis",
	"Faroese":       "Ð ð Á á Í í Ó ó Ú ú Ý ý Æ æ Ø ø",
	"Finnish":       "Törkylempijävongahdus",
	"French":        "Portez ce vieux whisky au juge blond qui fume: « œuf », ÿ Ÿ Æ",
	"German":        "Zwölf Boxkämpfer jagen Viktor quer über den großen Sylter Deich",
	"Greek":         "Ξεσκεπάζω την ψυχοφθόρα βδελυγμία ΐ ΰ Ά Έ Ή Ί Ό Ύ Ώ",
	"Hungarian":     "Árvíztűrő tükörfúrógép",
	"Icelandic":     "Kæmi ný öxi hér ykist þjófum nú bæði víl og ádrepa",
	"Irish":         "D’fhuascail Íosa Úrmhac na hÓighe Beannaithe pór Éava agus Ádhaimh",
	"Italian":       "Quel vituperabile xenofobo zelante assaggia il whisky: è à ù ò ì",
	"Latvian":       "Glāžšķūņa rūķīši dzērumā čiepj Baha koncertflīģeļu vākus",
	"Lithuanian":    "Įlinkdama fechtuotojo špaga sublykčiojusi pragręžė apvalų arbūzą",
	"Luxembourgish": "Ech kann Glas iessen, daat deet mir nët wei. Ë ë",
	"Macedonian":    "Ѓ ѓ Ќ ќ Ѕ ѕ Џ џ Љ љ Њ њ Ј ј",
	"Maltese":       "Ċ ċ Ġ ġ Ħ ħ Ż ż",
	"Montenegrin":   "Š š Ž ž Đ đ",
	"Norwegian":     "Vår sære Zulu fra badeøya spilte jo whist og quickstep i min taxi",
	"Polish":        "Zażółć gęślą jaźń",
	"Portuguese":    "Luís argüia à Júlia que «brações, fé, chá, óxido, pôr, zângão»",
	"Romanian":      "Muzicologă în bej vând whisky și tequila, preț fix. Ț ț Ş ş",
	"Russian":       "Съешь же ещё этих мягких французских булок, да выпей чаю",
	"Sami":          "Č č Đ đ Ŋ ŋ Š š Ŧ ŧ Ž ž",
	"Serbian":       "Ђ ђ Ј ј Љ љ Њ њ Ћ ћ Џ џ",
	"Slovak":        "Kŕdeľ ďatľov učí koňa žrať kôru",
	"Slovene":       "V kožuščku hudobnega fanta stopiclja mizar",
	"Spanish":       "El pingüino Wenceslao hizo kilómetros bajo exhaustiva lluvia ¿ñ? ¡Ñ!",
	"Swedish":       "Flygande bäckasiner söka hwila på mjuka tuvor",
	"Turkish":       "Pijamalı hasta yağız şoföre çabucak güvendi İ ı Ğ ğ",
	"Ukrainian":     "Чуєш їх, доцю, га? Кумедна ж ти, прощайся без ґольфів! Є Ї Ґ",
	"Welsh":         "Ŵ ŵ Ŷ ŷ Ẁ ẁ Ẃ ẃ Ẅ ẅ Ỳ ỳ",
	"the trade":     "20 N·m ±5 % 90° ≈ Ø10 M10×1.5 15 lbf·ft ½ ¾ µ → − – — … €",
}

func TestEuropeanLanguages(t *testing.T) {
	for name, text := range languages {
		if missing, found := Missing(text); found {
			t.Errorf("%s: the typeface lacks %c (U+%04X)", name, missing, missing)
		}
	}
}

// Letters written as a base and an accent are composed, not dropped.
func TestComposedLetters(t *testing.T) {
	if got := Clean("Zy\u0142o\u0301w"); got != "Zyłów" {
		t.Errorf("got %q", got)
	}
	if missing, found := Missing("鋼 bolt"); !found || missing != '鋼' {
		t.Errorf("missing %q, %v", missing, found)
	}
}
