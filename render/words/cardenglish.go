package words

var englishCard = Card{
	Tighten:        "TIGHTEN",
	Loosen:         "LOOSEN",
	Stages:         "Stages",
	TickAsYouGo:    "Tick as you go",
	Before:         "Before you start",
	BeforeOverleaf: "Before you start: see the next page.",
	Order:          "order",
	Bolt:           "bolt",

	Stage: Stage{
		None: "The file gives no stages: this card shows the order only. Take the figures from the maker’s manual.",

		All:    "all %d",
		AllOf:  "all %s",
		FromTo: "%d–%d",

		Slacken:          "slacken",
		BreakLoose:       "break loose",
		Settle:           "let it settle",
		Out:              "out",
		ToItsPlace:       "to its own place",
		Scrap:            "to the tray, then scrap",
		SomeToTheirPlace: "to its own place; see which go back",
		Share:            "%s %%, worked out",

		Crosswise:          "crosswise",
		InASpiral:          "in a spiral",
		MiddleOutwards:     "middle outwards",
		CentreOutwards:     "centre outwards",
		RoundClockwise:     "one by one, clockwise",
		RoundAnticlockwise: "one by one, anticlockwise",
	},

	Part: Part{
		Unplaced:          Plural{"%d number found no room on this paper.", "%d numbers found no room on this paper."},
		OnDetails:         "All numbers stand on the details that follow.",
		Detail:            "Detail %d of %d",
		SmallNumber:       "Small number: %s.",
		Cast:              "cast",
		Mark:              "mark on the part",
		SmallName:         "Small: the bolt’s name on tray and condition sheet.",
		Tightening:        "tightening",
		TighteningAsCast:  "tightening, as cast on the part",
		Arrows:            "From black to the double ring: follow the arrows.",
		ArrowsThenNumbers: "From black to the double ring: follow the arrows, else go by number.",
		Numbers:           "From black to the double ring: go by number.",
		NoSpringLoad:      "Dashed: no spring load.",
		Dowel:             "Crossed circle: dowel.",
		Rings:             "Grey: every second ring, to guide the eye.",
	},

	Checks: Checks{
		BeforeLoosening: []string{
			"Part cold. Drained. No pressure left in it.",
			"Tray ready: every part to its own place, the same way round.",
			"Stage by stage: all of a stage before the next begins.",
			"Gloves and glasses on: edges cut, a bolt that breaks flies.",
		},

		AllFasteners:    "all fasteners",
		ForKinds:        "%s: %s.",
		UsedOnce:        "NEW ones; never use them twice",
		InspectFirst:    "measure the length, look at the threads before they go back; limits: the manual",
		InspectStud:     "look at the threads of stud and nut; limits: the manual",
		MayGoBack:       "may go back when clean and undamaged",
		Dry:             "threads and under the heads clean and dry",
		Lubricated:      "clean threads and under the heads, then %s",
		InState:         "clean, then left as they are: %s",
		TappedHoles:     "Tapped holes clean and dry: trapped oil cracks the part.",
		ScrewedInByHand: "All screwed in by hand before stage 1.",
		ScrewedIn:       "All screwed in by hand first.",
		Last:            "Part cold. Gloves on: machined edges cut.",

		Sockets:    "Sockets: %s.",
		HeldNut:    " and %s for the nut",
		Wrench:     "calibrated torque wrench for %s",
		AngleGauge: "angle gauge",
		And:        "; ",
		Span:       "%s to %s",

		// Left as the file has them.
		Lubricants: map[string]string{
			"engine oil": "engine oil", "motor oil": "motor oil", "oil": "oil", "oiled": "oiled", "light oil": "light oil",
			"grease": "grease", "copper grease": "copper grease", "copper paste": "copper paste", "nickel paste": "nickel paste", "anti seize": "anti-seize",
			"molybdenum disulfide paste": "molybdenum disulfide paste", "molybdenum disulfide grease": "molybdenum disulfide grease",
			"mos2 paste": "MoS2 paste", "moly paste": "moly paste", "moly grease": "moly grease", "assembly paste": "assembly paste",
			"graphite paste": "graphite paste", "wax": "wax", "ptfe coating": "PTFE coating", "dry film lubricant": "dry film lubricant",
			"thread locker": "thread locker", "thread locking compound": "thread locking compound",
			"thread sealant": "thread sealant", "sealant": "sealant",
		},
		States: map[string]string{
			"as delivered": "as delivered", "phosphated": "phosphated", "black oxide": "black oxide", "dry": "dry", "zinc plated": "zinc plated", "zinc plated and oiled": "zinc plated and oiled",
		},
	},

	TighteningTrouble: Trouble{
		Title: "If a bolt turns on without getting tighter",
		Steps: []string{
			"Stop. Do not finish the stage.",
			"Slacken all in the loosening order.",
			"Look for a pulled thread, a stretched bolt, dirt.",
			"Write its tightening number here and tell the lead:",
		},
	},
	LooseningTrouble: Trouble{
		Title: "If a bolt will not turn, or may break",
		Steps: []string{
			"Stop. Turn it back in a little.",
			"Soak it, wait, work it to and fro. Warm the part only where the manual allows it.",
			"If it snaps: leave the stub, go on in the order.",
			"Write its number here and tell the lead:",
		},
	},

	Figures:   "Figures: %s.",
	WorkedOut: "Figures marked ≈ were worked out: a figure from a manual goes before them.",
	NoSource:  "Figures: no source stated, so they count as worked out (≈): a figure from a manual goes before them.",

	Assumed: Assumed{
		Torque:      "%s: 100 %% is %s, which gives %s kN",
		Span:        "%s to %s",
		Taken:       "assumed: %s",
		Yield:       "yield stress %s MPa, as the proof stress",
		Proof:       "no proof load in %s: %s %% of Rp0.2",
		YieldShare:  "%s %% of the yield stress (VDI 2230)",
		Friction:    "friction %s–%s for %s (%s)",
		AnyFriction: "lubricant not stated: friction %s–%s",
		Exact:       "friction without scatter",
		Face:        "face under the head %s (%s)",
		FaceOfHead:  "face under the head %s (head of %s)",
		Hole:        "hole %s (%s)",
	},
}
