package words

var spanishCard = Card{
	Tighten:        "APRETAR",
	Loosen:         "AFLOJAR",
	Stages:         "Etapas",
	TickAsYouGo:    "Marcar cada paso",
	Before:         "Antes de empezar",
	BeforeOverleaf: "Antes de empezar: véase la página siguiente.",
	Order:          "orden",
	Bolt:           "tornillo",

	Stage: Stage{
		None: "El archivo no da etapas: esta ficha solo muestra el orden. Tomar los valores del manual del fabricante.",

		All:    "los %d",
		AllOf:  "todos: %s",
		FromTo: "%d–%d",

		Slacken:          "aflojar",
		BreakLoose:       "soltar el apriete",
		Settle:           "dejar asentar",
		Out:              "fuera",
		ToItsPlace:       "a su propio sitio",
		Scrap:            "a la bandeja, luego a la chatarra",
		SomeToTheirPlace: "a su propio sitio; ver cuáles se reutilizan",
		Share:            "%s %%, calculado",

		Crosswise:          "en cruz",
		InASpiral:          "en espiral",
		MiddleOutwards:     "del centro hacia fuera",
		CentreOutwards:     "del centro hacia fuera",
		RoundClockwise:     "uno tras otro, sentido horario",
		RoundAnticlockwise: "uno tras otro, sentido antihorario",
	},

	Part: Part{
		Unplaced:          Plural{"%d número no cabe en este papel.", "%d números no caben en este papel."},
		OnDetails:         "Todos los números están en los detalles que siguen.",
		Detail:            "Detalle %d de %d",
		SmallNumber:       "Número pequeño: %s.",
		Cast:              "n.º de fundición",
		Mark:              "marca en la pieza",
		SmallName:         "Pequeño: nombre en bandeja y hoja de estado.",
		Tightening:        "apriete",
		TighteningAsCast:  "apriete, como en la fundición",
		Arrows:            "Del negro al doble anillo: seguir las flechas.",
		ArrowsThenNumbers: "Del negro al doble anillo: seguir las flechas o, si no, los números.",
		Numbers:           "Del negro al doble anillo, por números.",
		NoSpringLoad:      "A trazos: sin carga de muelle.",
		Dowel:             "Círculo con cruz: pasador.",
		Rings:             "Gris: un anillo de cada dos, para guiar la vista.",
	},

	Checks: Checks{
		BeforeLoosening: []string{
			"Pieza fría. Vaciada. Sin presión en su interior.",
			"Bandeja lista: cada pieza a su sitio y en la misma posición.",
			"Etapa por etapa: acabar una antes de empezar la siguiente.",
			"Guantes y gafas de protección: los cantos cortan, un tornillo roto salta.",
		},

		AllFasteners:    "todos los tornillos",
		ForKinds:        "%s: %s.",
		UsedOnce:        "poner NUEVOS; no usarlos dos veces",
		InspectFirst:    "medir la longitud y revisar la rosca antes de reutilizar; límites: el manual",
		InspectStud:     "revisar las roscas de espárrago y tuerca; límites: el manual",
		MayGoBack:       "se reutilizan si están limpios y sin daños",
		Dry:             "rosca y asiento de la cabeza limpios y secos",
		Lubricated:      "limpiar rosca y asiento de la cabeza; después, %s",
		InState:         "limpiar; no añadir nada: %s",
		TappedHoles:     "Agujeros roscados limpios y secos: el aceite atrapado agrieta la pieza.",
		ScrewedInByHand: "Todos enroscados a mano antes de la etapa 1.",
		ScrewedIn:       "Todos enroscados primero a mano.",
		Last:            "Pieza fría. Guantes puestos: los cantos mecanizados cortan.",

		Sockets:    "Vasos: %s.",
		HeldNut:    " y %s para la tuerca",
		Wrench:     "llave dinamométrica calibrada, para %s",
		AngleGauge: "goniómetro",
		And:        "; ",
		Span:       "%s a %s",

		Lubricants: map[string]string{
			"engine oil": "aceite de motor", "motor oil": "aceite de motor", "oil": "aceite", "oiled": "aceite", "light oil": "aceite ligero",
			"grease": "grasa", "copper grease": "grasa de cobre", "copper paste": "pasta de cobre", "nickel paste": "pasta de níquel", "anti seize": "pasta antigripante",
			"molybdenum disulfide paste": "pasta de disulfuro de molibdeno", "molybdenum disulfide grease": "grasa de disulfuro de molibdeno",
			"mos2 paste": "pasta de MoS2", "moly paste": "pasta de molibdeno", "moly grease": "grasa de molibdeno", "assembly paste": "pasta de montaje",
			"graphite paste": "pasta de grafito", "wax": "cera", "ptfe coating": "recubrimiento de PTFE", "dry film lubricant": "lubricante de película seca",
			"thread locker": "fijador de roscas", "thread locking compound": "fijador de roscas",
			"thread sealant": "sellador de roscas", "sealant": "sellador",
		},
		States: map[string]string{
			"as delivered": "como se suministran", "phosphated": "fosfatados", "black oxide": "pavonados", "dry": "seco", "zinc plated": "cincados", "zinc plated and oiled": "cincados y aceitados",
		},
	},

	TighteningTrouble: Trouble{
		Title: "Si un tornillo gira sin apretar más",
		Steps: []string{
			"Parar. No acabar la etapa.",
			"Aflojar todos en el orden de aflojado.",
			"Buscar una rosca arrancada, un tornillo estirado, suciedad.",
			"Anotar aquí su número de apriete y avisar al responsable:",
		},
	},
	LooseningTrouble: Trouble{
		Title: "Si un tornillo no gira o puede romperse",
		Steps: []string{
			"Parar. Volver a enroscarlo un poco.",
			"Aceite penetrante, esperar, moverlo a un lado y a otro. Calentar la pieza solo si el manual lo permite.",
			"Si se rompe: dejar el resto dentro y seguir con el orden.",
			"Anotar aquí su número y avisar al responsable:",
		},
	},

	Figures:   "Valores: %s.",
	WorkedOut: "Los valores con ≈ son calculados: prevalece el de un manual.",
	NoSource:  "Valores: sin fuente indicada, cuentan como calculados (≈): prevalece el de un manual.",

	Assumed: Assumed{
		Torque:      "%s: el 100 %% es %s, que da %s kN",
		Span:        "entre %s y %s",
		Taken:       "supuesto: %s",
		Yield:       "límite elástico %s MPa, igualado a la tensión de prueba",
		Proof:       "sin carga de prueba en %s: %s %% de Rp0,2",
		YieldShare:  "%s %% del límite elástico (VDI 2230)",
		Friction:    "rozamiento %s–%s, %s (%s)",
		AnyFriction: "lubricante no indicado: rozamiento %s–%s",
		Exact:       "rozamiento sin dispersión",
		Face:        "asiento de la cabeza %s (%s)",
		FaceOfHead:  "asiento de la cabeza %s (cabeza de %s)",
		Hole:        "agujero %s (%s)",
	},
}
