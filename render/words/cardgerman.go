package words

var germanCard = Card{
	Tighten:        "ANZIEHEN",
	Loosen:         "LÖSEN",
	Stages:         "Stufen",
	TickAsYouGo:    "Jeden Schritt abhaken",
	Before:         "Vor dem Beginn",
	BeforeOverleaf: "Vor dem Beginn: siehe nächste Seite.",
	Order:          "Folge",
	Bolt:           "Schraube",

	Stage: Stage{
		None: "Die Datei nennt keine Stufen: Diese Karte zeigt nur die Reihenfolge. Werte dem Herstellerhandbuch entnehmen.",

		All:    "alle %d",
		AllOf:  "alle %s",
		FromTo: "%d–%d",

		Slacken:          "zurückdrehen",
		BreakLoose:       "losbrechen",
		Settle:           "setzen lassen",
		Out:              "heraus",
		ToItsPlace:       "an ihren Platz",
		Scrap:            "auf die Ablage, dann Schrott",
		SomeToTheirPlace: "an ihren Platz; prüfen, welche wieder eingebaut werden",
		Share:            "%s %%, berechnet",

		Crosswise:          "über Kreuz",
		InASpiral:          "spiralförmig",
		MiddleOutwards:     "von der Mitte nach außen",
		CentreOutwards:     "von der Mitte nach außen",
		RoundClockwise:     "reihum im Uhrzeigersinn",
		RoundAnticlockwise: "reihum gegen den Uhrzeigersinn",
	},

	Part: Part{
		Unplaced:          Plural{"%d Nummer hat auf diesem Blatt keinen Platz.", "%d Nummern haben auf diesem Blatt keinen Platz."},
		OnDetails:         "Alle Nummern stehen auf den Ausschnitten danach.",
		Detail:            "Ausschnitt %d von %d",
		SmallNumber:       "Kleine Zahl: %s.",
		Cast:              "eingegossen",
		Mark:              "Zeichen am Teil",
		SmallName:         "Klein: Name auf Ablage und Befund.",
		Tightening:        "Anziehfolge",
		TighteningAsCast:  "Anziehfolge, wie eingegossen",
		Arrows:            "Von Schwarz zum Doppelring: den Pfeilen nach.",
		ArrowsThenNumbers: "Von Schwarz zum Doppelring: den Pfeilen nach, sonst nach Nummern.",
		Numbers:           "Von Schwarz zum Doppelring: nach Nummern.",
		NoSpringLoad:      "Gestrichelt: keine Federlast.",
		Dowel:             "Kreis mit Kreuz: Passstift.",
		Rings:             "Grau: jeder zweite Ring, fürs Auge.",
	},

	Checks: Checks{
		BeforeLoosening: []string{
			"Teil kalt. Entleert. Kein Druck mehr darin.",
			"Ablage bereit: jedes Teil an seinen Platz, in gleicher Lage.",
			"Stufe für Stufe: erst alle einer Stufe, dann die nächste.",
			"Handschuhe und Schutzbrille an: Kanten schneiden, Bruchstücke fliegen.",
		},

		AllFasteners:    "alle Schrauben",
		ForKinds:        "%s: %s.",
		UsedOnce:        "nur NEUE einbauen; nie zweimal verwenden",
		InspectFirst:    "vor dem Wiedereinbau Länge messen, Gewinde prüfen; Grenzwerte: Handbuch",
		InspectStud:     "Gewinde von Stiftschraube und Mutter prüfen; Grenzwerte: Handbuch",
		MayGoBack:       "wiederverwendbar, wenn sauber und unbeschädigt",
		Dry:             "Gewinde und Kopfauflage sauber und trocken",
		Lubricated:      "Gewinde und Kopfauflage reinigen, dann %s",
		InState:         "nur reinigen, nichts auftragen: %s",
		TappedHoles:     "Gewindebohrungen sauber und trocken: Eingeschlossenes Öl sprengt das Teil.",
		ScrewedInByHand: "Alle vor Stufe 1 von Hand eingeschraubt.",
		ScrewedIn:       "Zuerst alle von Hand eingeschraubt.",
		Last:            "Teil kalt. Handschuhe an: Bearbeitete Kanten schneiden.",

		Sockets:    "Einsätze: %s.",
		HeldNut:    " und %s für die Mutter",
		Wrench:     "geprüfter Drehmomentschlüssel für %s",
		AngleGauge: "Winkelscheibe",
		And:        "; ",
		Span:       "%s bis %s",

		Lubricants: map[string]string{
			"engine oil": "Motoröl", "motor oil": "Motoröl", "oil": "Öl", "oiled": "Öl", "light oil": "dünnflüssiges Öl",
			"grease": "Fett", "copper grease": "Kupferfett", "copper paste": "Kupferpaste", "nickel paste": "Nickelpaste", "anti seize": "Antiseize-Paste",
			"molybdenum disulfide paste": "Molybdändisulfidpaste", "molybdenum disulfide grease": "Molybdändisulfidfett",
			"mos2 paste": "MoS2-Paste", "moly paste": "Molybdänpaste", "moly grease": "Molybdänfett", "assembly paste": "Montagepaste",
			"graphite paste": "Graphitpaste", "wax": "Wachs", "ptfe coating": "PTFE-Beschichtung", "dry film lubricant": "Gleitlack",
			"thread locker": "Schraubensicherung", "thread locking compound": "Schraubensicherung",
			"thread sealant": "Gewindedichtmittel", "sealant": "Dichtmittel",
		},
		States: map[string]string{
			"as delivered": "Lieferzustand", "phosphated": "phosphatiert", "black oxide": "brüniert", "dry": "trocken", "zinc plated": "verzinkt", "zinc plated and oiled": "verzinkt und geölt",
		},
	},

	TighteningTrouble: Trouble{
		Title: "Wenn eine Schraube sich weiterdreht, ohne fester zu werden",
		Steps: []string{
			"Halt. Die Stufe nicht zu Ende führen.",
			"Alle in der Lösefolge zurückdrehen.",
			"Nach ausgerissenem Gewinde, gelängter Schraube, Schmutz suchen.",
			"Ihre Anziehnummer hier eintragen und der Aufsicht melden:",
		},
	},
	LooseningTrouble: Trouble{
		Title: "Wenn eine Schraube festsitzt oder abzureißen droht",
		Steps: []string{
			"Halt. Ein wenig wieder hineindrehen.",
			"Rostlöser, einwirken lassen, hin und her drehen. Teil nur erwärmen, wo das Handbuch es erlaubt.",
			"Wenn sie abreißt: Stumpf stehen lassen, in der Reihenfolge weiter.",
			"Ihre Nummer hier eintragen und der Aufsicht melden:",
		},
	},

	Figures:   "Werte: %s.",
	WorkedOut: "Werte mit ≈ sind berechnet: Werte aus einem Handbuch gehen vor.",
	NoSource:  "Werte: ohne Quellenangabe, gelten daher als berechnet (≈): Werte aus einem Handbuch gehen vor.",

	Assumed: Assumed{
		Torque:      "%s: 100 %% sind %s, ergibt %s kN",
		Span:        "%s bis %s",
		Taken:       "angenommen: %s",
		Yield:       "Streckgrenze %s MPa, der Prüfspannung gleichgesetzt",
		Proof:       "keine Prüfkraft in %s: %s %% von Rp0,2",
		YieldShare:  "%s %% der Streckgrenze (VDI 2230)",
		Friction:    "Reibung %s–%s, %s (%s)",
		AnyFriction: "Schmierung nicht angegeben: Reibung %s–%s",
		Exact:       "Reibung ohne Streuung",
		Face:        "Kopfauflage %s (%s)",
		FaceOfHead:  "Kopfauflage %s (Kopf mit %s)",
		Hole:        "Bohrung %s (%s)",
	},
}
