package overhaul

import (
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

// First principles: what covers a part comes off before it, and what is put in for the
// work comes out again. Which parts cover which is common practice, no source.
func TestStepsInTheLanguagesOfTheCards(t *testing.T) {
	t.Parallel()
	joint := func(title string) Task { return Task{Joint: jointOf(title, nil)} }
	out := func(text string) Task { return Task{Note: text, Side: plan.CautionLoosen} }
	back := func(text string) Task { return Task{Note: text, Side: plan.CautionTighten} }
	for what, c := range map[string]struct {
		tasks []Task
		want  finding.Code
	}{
		"main caps before the sump":           {[]Task{joint("Hauptlagerdeckel"), joint("Ölwanne")}, PartBehind},
		"main caps after the sump":            {[]Task{joint("Ölwanne"), joint("Hauptlagerdeckel")}, ""},
		"the head under its camshaft":         {[]Task{joint("Culasse, rangée gauche"), joint("Arbre à cames, rangée gauche")}, PartBehind},
		"the head of the other bank":          {[]Task{joint("Culasse, rangée gauche"), joint("Arbre à cames, rangée droite")}, ""},
		"a strainer":                          {[]Task{{Part: "colador"}, joint("Cárter de aceite")}, PartBehind},
		"a pump in front of the engine":       {[]Task{{Part: "oil pump"}, joint("Oil sump")}, ""},
		"a camshaft sensor":                   {[]Task{{Part: "camshaft sensor"}, joint("Cam cover")}, ""},
		"the camshaft under its cover":        {[]Task{{Part: "camshaft"}, {Part: "valve cover"}}, PartBehind},
		"the chain later, its sprocket first": {[]Task{{Part: "camshaft sprocket"}, joint("Camshaft caps"), {Part: "timing chain"}}, ""},
		"oil drained late":                    {[]Task{joint("Ölwanne"), out("Öl ablassen")}, DrainedLate},
		"drained again":                       {[]Task{out("Oil drained"), joint("Oil sump"), out("Rest of the oil drained")}, ""},
		"coolant filled early":                {[]Task{joint("Culata"), back("Refrigerante: llenar")}, ""},
		"coolant filled before the head":      {[]Task{joint("Culata"), back("Llenar refrigerante")}, DrainedLate},
		"turned on its stand":                 {[]Task{joint("Culasse"), out("Moteur retourné sur son support")}, TurnedOnce},
		"turned and turned back":              {[]Task{joint("Culasse"), out("Moteur retourné sur son support"), back("Moteur tourné sur son support")}, ""},
		"turned by hand":                      {[]Task{joint("Culasse"), out("Crankshaft turned twice by hand")}, ""},
		"a rag":                               {[]Task{out("Öffnungen mit Lappen verschlossen")}, StopperStays},
		"a rag that comes out":                {[]Task{out("Öffnungen mit Lappen verschlossen"), back("Lappen heraus")}, ""},
		"ports open again":                    {[]Task{out("Orifices bouchés, bouché avec un chiffon"), back("Orifices ouverts, orifice ouvert")}, ""},
		"a drain plug":                        {[]Task{back("Drain plug in")}, ""},
		"filled on the way out":               {[]Task{{Part: "Ölpumpe", Loosen: "mit Öl gefüllt"}}, TextOfOther},
		"oiled against rust":                  {[]Task{{Part: "crankshaft", Loosen: "oiled against rust"}}, ""},
		"drained on the way back":             {[]Task{{Part: "pump", Tighten: "drained into a tray"}}, TextOfOther},
		"what it weighs out and back":         {[]Task{{Part: "pump", Loosen: "35 kg", Tighten: "slung, 53 kg"}}, MassesDiffer},
		"two of a title":                      {[]Task{joint("Cover"), joint("Cover")}, TitleTwice},
	} {
		o := Overhaul{Tasks: c.tasks}
		o.Machine = "P4"
		if found := o.Doubts(); c.want == "" && len(found) > 0 || c.want != "" && (len(found) != 1 || found[0].Code != c.want) {
			t.Errorf("%s: %v; want %q", what, found, c.want)
		}
	}
}

// First principles: what is listed at one bank is listed at the other.
func TestBanksAreAlike(t *testing.T) {
	t.Parallel()
	part := func(name string, listed ...string) Task { return Task{Part: name, New: listed} }
	left, right := part("left cover", "left gasket"), part("right cover", "right gasket")
	for what, c := range map[string]struct {
		tasks []Task
		want  finding.Code
	}{
		"as it should be":         {[]Task{left, right}, ""},
		"the gasket of the other": {[]Task{part("Deckel links", "Dichtung rechts"), part("Deckel rechts", "Dichtung rechts")}, ItemOfOtherSide},
		"one lists nothing":       {[]Task{left, part("right cover")}, SisterLacks},
		"a part of one side":      {[]Task{part("left engine mount", "mount bolt")}, ""},
		"one more on one side":    {[]Task{part("left cover", "left gasket", "oil filler seal"), right}, ""},
		"the order of one side":   {[]Task{left, part("left coils"), part("right coils"), right}, SistersOrder},
		"one camshaft":            {[]Task{{Joint: jointOf("Camshaft caps, left bank", nil)}, part("left camshaft"), {Joint: jointOf("Camshaft caps, right bank", nil)}}, SisterMissing},
		"nearly of a mass":        {[]Task{{Part: "left head", Loosen: "32 kg"}, {Part: "right head", Loosen: "34 kg"}}, ""},
		"a tenth of the mass":     {[]Task{{Part: "left head", Loosen: "32 kg"}, {Part: "right head", Loosen: "3.2 kg"}}, MassesDiffer},
	} {
		o := Overhaul{Tasks: c.tasks}
		if found := o.Doubts(); c.want == "" && len(found) > 0 || c.want != "" && (len(found) != 1 || found[0].Code != c.want) {
			t.Errorf("%s: %v; want %q", what, found, c.want)
		}
	}
}

// First principles: a bank that is a mirror image has its front on the other side, and
// the next joint of this bank is a mirror image, too.
func TestPlacesOfTheBanks(t *testing.T) {
	t.Parallel()
	at := func(title, label string, x float64, front geometry.Front) Task {
		return Task{Joint: jointOf(title, func(p *plan.Plan) {
			p.Joint = geometry.Joint{
				Fasteners: []geometry.Fastener{{ID: "A", At: geometry.Point{X: x}}, {ID: "B", At: geometry.Point{X: -x, Y: 5}}, {ID: "C", At: geometry.Point{Y: 9}}},
				Bores:     []geometry.Bore{{Label: label}}, Front: front,
			}
		})}
	}
	left, right := at("Head, left bank", "cyl 1", 10, "left"), at("Head, right bank", "cyl 2", -10, "right")
	for what, c := range map[string]struct {
		tasks []Task
		want  finding.Code
	}{
		"mirrored":              {[]Task{left, right, at("Caps, left bank", "", 4, ""), at("Caps, right bank", "", -4, "")}, ""},
		"the caps are not":      {[]Task{left, right, at("Caps, left bank", "", 4, ""), at("Caps, right bank", "", 4, "")}, BanksDiffer},
		"none is":               {[]Task{left, at("Head, right bank", "cyl 2", 10, "left"), at("Caps, left bank", "", 4, ""), at("Caps, right bank", "", 4, "")}, ""},
		"the front stays":       {[]Task{left, at("Head, right bank", "cyl 2", -10, "left")}, FrontUnturned},
		"cylinders of one bank": {[]Task{left, at("Head, right bank", "cyl 1", -10, "right")}, CylindersShared},
	} {
		o := Overhaul{Tasks: c.tasks}
		if found := o.Doubts(); c.want == "" && len(found) > 0 || c.want != "" && (len(found) != 1 || found[0].Code != c.want) {
			t.Errorf("%s: %v; want %q", what, found, c.want)
		}
	}
}
