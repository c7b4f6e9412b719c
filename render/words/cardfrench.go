package words

var frenchCard = Card{
	Tighten:        "SERRER",
	Loosen:         "DESSERRER",
	Stages:         "Étapes",
	TickAsYouGo:    "Cocher au fur et à mesure",
	Before:         "Avant de commencer",
	BeforeOverleaf: "Avant de commencer : voir page suivante.",
	Order:          "ordre",
	Bolt:           "vis",

	Stage: Stage{
		None: "Le fichier ne donne pas d’étapes : cette fiche ne montre que l’ordre. Prendre les valeurs dans le manuel du constructeur.",

		All:    "les %d",
		AllOf:  "toutes : %s",
		FromTo: "%d–%d",

		Slacken:          "desserrer",
		BreakLoose:       "débloquer",
		Settle:           "laisser se tasser",
		Out:              "sortir",
		ToItsPlace:       "à sa propre place",
		Scrap:            "sur le plateau, puis rebut",
		SomeToTheirPlace: "à sa propre place ; voir lesquelles resservent",
		Share:            "%s %%, calculé",

		Crosswise:          "en croix",
		InASpiral:          "en spirale",
		MiddleOutwards:     "du milieu vers l’extérieur",
		CentreOutwards:     "du centre vers l’extérieur",
		RoundClockwise:     "de proche en proche, sens horaire",
		RoundAnticlockwise: "de proche en proche, sens antihoraire",
	},

	Part: Part{
		Unplaced:          Plural{"%d numéro ne tient pas sur ce papier.", "%d numéros ne tiennent pas sur ce papier."},
		OnDetails:         "Tous les numéros sont sur les détails qui suivent.",
		Detail:            "Détail %d sur %d",
		SmallNumber:       "Petit numéro : %s.",
		Cast:              "n° de fonderie",
		Mark:              "repère sur pièce",
		SmallName:         "En petit : nom de la vis sur plateau et fiche d’état.",
		Tightening:        "serrage",
		TighteningAsCast:  "serrage, comme venu de fonderie",
		Arrows:            "Du noir au double cercle : suivre les flèches.",
		ArrowsThenNumbers: "Du noir au double cercle : suivre les flèches, sinon les numéros.",
		Numbers:           "Du noir au double cercle, par numéros.",
		NoSpringLoad:      "En tirets : sans charge de ressort.",
		Dowel:             "Cercle barré d’une croix : goupille.",
		Rings:             "Gris : un cercle sur deux, pour guider l’œil.",
	},

	Checks: Checks{
		BeforeLoosening: []string{
			"Pièce froide. Vidangée. Plus de pression dedans.",
			"Plateau prêt : chaque pièce à sa place, dans le même sens.",
			"Étape par étape : finir l’une avant de commencer la suivante.",
			"Gants et lunettes de protection : les arêtes coupent, un éclat de vis peut sauter.",
		},

		AllFasteners:    "toutes les vis",
		ForKinds:        "%s : %s.",
		UsedOnce:        "monter des NEUVES ; ne jamais les réutiliser",
		InspectFirst:    "mesurer la longueur, contrôler le filetage avant remontage ; limites : le manuel",
		InspectStud:     "contrôler les filets du goujon et de l’écrou ; limites : le manuel",
		MayGoBack:       "réutilisables si propres et intactes",
		Dry:             "filets et dessous de tête propres et secs",
		Lubricated:      "nettoyer filets et dessous de tête, puis %s",
		InState:         "nettoyer, ne rien ajouter : %s",
		TappedHoles:     "Trous taraudés propres et secs : l’huile emprisonnée fend la pièce.",
		ScrewedInByHand: "Toutes vissées à la main avant l’étape 1.",
		ScrewedIn:       "Toutes d’abord vissées à la main.",
		Last:            "Pièce froide. Gants mis : les arêtes usinées coupent.",

		Sockets:    "Douilles : %s.",
		HeldNut:    " et %s pour l’écrou",
		Wrench:     "clé dynamométrique étalonnée, pour %s",
		AngleGauge: "rapporteur d’angle",
		And:        " ; ",
		Span:       "%s à %s",

		Lubricants: map[string]string{
			"engine oil": "huile moteur", "motor oil": "huile moteur", "oil": "huile", "oiled": "huile", "light oil": "huile fluide",
			"grease": "graisse", "copper grease": "graisse au cuivre", "copper paste": "pâte au cuivre", "nickel paste": "pâte au nickel", "anti seize": "pâte antigrippage",
			"molybdenum disulfide paste": "pâte au bisulfure de molybdène", "molybdenum disulfide grease": "graisse au bisulfure de molybdène",
			"mos2 paste": "pâte au MoS2", "moly paste": "pâte au molybdène", "moly grease": "graisse au molybdène", "assembly paste": "pâte de montage",
			"graphite paste": "pâte graphitée", "wax": "cire", "ptfe coating": "revêtement PTFE", "dry film lubricant": "vernis de glissement",
			"thread locker": "frein filet", "thread locking compound": "frein filet",
			"thread sealant": "étanchéité filetage", "sealant": "pâte d’étanchéité",
		},
		States: map[string]string{
			"as delivered": "état de livraison", "phosphated": "phosphatées", "black oxide": "brunies", "dry": "sec", "zinc plated": "zinguées", "zinc plated and oiled": "zinguées et huilées",
		},
	},

	TighteningTrouble: Trouble{
		Title: "Si une vis tourne sans serrer davantage",
		Steps: []string{
			"Arrêter. Ne pas finir l’étape.",
			"Tout desserrer dans l’ordre de desserrage.",
			"Chercher un filet arraché, une vis allongée, de la saleté.",
			"Noter ici son numéro de serrage et avertir le responsable :",
		},
	},
	LooseningTrouble: Trouble{
		Title: "Si une vis ne tourne pas ou risque de casser",
		Steps: []string{
			"Arrêter. La revisser un peu.",
			"Dégrippant, attendre, travailler dans les deux sens. Ne chauffer la pièce que si le manuel le permet.",
			"Si elle casse : laisser le tronçon, continuer dans l’ordre.",
			"Noter ici son numéro et avertir le responsable :",
		},
	},

	Figures:   "Valeurs : %s.",
	WorkedOut: "Les valeurs marquées ≈ sont calculées : celle d’un manuel prime.",
	NoSource:  "Valeurs : sans source indiquée, donc considérées comme calculées (≈) : celle d’un manuel prime.",

	Assumed: Assumed{
		Torque:      "%s : 100 %% vaut %s, ce qui donne %s kN",
		Span:        "de %s à %s",
		Taken:       "supposé : %s",
		Yield:       "limite d’élasticité %s MPa, prise égale à la contrainte d’épreuve",
		Proof:       "pas de charge d’épreuve dans %s : %s %% de Rp0,2",
		YieldShare:  "%s %% de la limite d’élasticité (VDI 2230)",
		Friction:    "frottement %s–%s, %s (%s)",
		AnyFriction: "lubrifiant non indiqué : frottement %s–%s",
		Exact:       "frottement sans dispersion",
		Face:        "appui sous tête %s (%s)",
		FaceOfHead:  "appui sous tête %s (tête de %s)",
		Hole:        "trou %s (%s)",
	},
}
