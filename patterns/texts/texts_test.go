package texts

import (
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

// head is the joint of these tests: 6 main bolts M10 × 120 (16 mm), 3 side bolts
// M8 × 45 (13 mm), 9 in all, 3 cylinders, 2 dowels, engine oil, T1 to T3, B1 to B3.
func head(t *testing.T) plan.Plan {
	return build(t, func(in *plan.Input) {
		in.Clamped.Gasket.Kind = "multi-layer steel"
		in.Joint.Labels = []geometry.Label{{Text: "LEFT BANK"}}
	})
}

// First principles: a statement about the joint is true, or causes a question;
// some of the fasteners, other parts and numbers that are no counts are
// ignored.
func TestTextsAgainstTheFile(t *testing.T) {
	t.Parallel()
	p := head(t)
	for text, want := range map[string]finding.Code{
		// counts
		"Fit 6 new main bolts": "", "Fit 8 new main bolts": TextCount, "The six main bolts are long": "", "All nine bolts new": "", "All ten bolts new": TextCount,
		"All twelve nuts": TextCount, "the 3 side bolts last": "", "the 4 side bolts last": TextCount, "Two main bolts at the corner": "", "both bolts of a cap": "",
		"Two old bolts kept": "", "the last two bolts stay in": "", "Two people lift it": "", "all 4 M8 bolts": TextCount, "all 3 M8 bolts": "", "two bolts per cap": "",
		"two sizes of bolts": "", "the 45 mm bolts": "", "Fit 10 new 120 mm bolts": TextCount, "both dowels in": "", "the three dowels": TextCount, "6 bolts of 120 mm": "",
		"Alle zehn Schrauben ölen": TextCount, "Alle neun Schrauben ölen": "", "toutes les dix vis": TextCount, "once all bolts are in": "", "class 8 nuts": "",
		"Fit 6 main and 3 side bolts": "", "two turns by hand": "", "Fit nine new head bolts": "", "Fit eight new head bolts": TextCount, "12 stud bolts of the manifold": "",
		// names
		"T3 is 5 mm longer": "", "T4 is 5 mm longer": TextName, "first B2, B3 and B9": TextName, "cylinder 3 at the rear": "", "cyl 5 is out of true": TextName,
		"cylinders 1, 2 and 4": TextName, "cylinders 1 to 3": "", "cylinder 4 on the other bank": "", "T40 bit": "", "stage 9 twice": TextName, "stage 1 twice": "",
		"bolt 9 last": "", "bolt 12 last": TextName, "bolts 20 mm apart": "", "T1-T3 first": "", "Piston 1 at the top": "", "class A2-70": "", "V6 head": "",
		// sizes
		"All M10 bolts oiled": "", "All M12 bolts oiled": TextSize, "M10x1.5 threads": "", "M10x1.25": TextSize, "M8 jacking screws": "", "M12 jacking screws": "", "M8 x 45": "", "M8 x 50": TextSize,
		"Use a 16 mm socket": "", "use a 14 mm socket": TextSize, "16er Nuss": "", "15er Nuss": TextSize, "the 120 mm bolts": "", "the 110 mm bolts": TextSize, "bolts 45 mm long": "",
		"bolts 40 mm long": TextSize, "class 10.9": "", "class 12.9 bolts": TextSize, "12.9 bolts": TextSize, "8.8 screws": "", "sealant 3 mm wide": "", "M14 spark plugs": "",
		// lubricants
		"Oil the threads": "", "Threads with molybdenum paste": TextLubricant, "Thread locker on the bolts": TextLubricant, "Oil the bearings": "", "remove old thread locker from the bolts": "",
		"copper paste on the threads": TextLubricant,
		// gaskets
		"New gasket, dry": "", "New paper gasket": TextGasket, "Neue Papierdichtung": TextGasket, "New MLS gasket": "", "New cork gasket": TextGasket,
		// sides and machines
		"Left bank of the engine": "", "Right bank of the engine": TextSide, "Right bank has its own card": "", "label at the right": "", "Same figures as on the left bank": "", "gasket marked R, not the one of the right bank": "", "left head": "", "right cylinder head": TextSide,
		"Fernhollow V8 manual": TextMachine, "Fernhollow V6 manual": "", "V8 of another maker": "",
	} {
		found := cautioned(p, plan.Caution{Text: text})
		if want == "" && len(found) > 0 || want != "" && (len(found) != 1 || found[0].Code != want) {
			t.Errorf("%q: %v; want %q", text, found, want)
		}
	}
	for reuse, wrong := range map[plan.Reuse]string{plan.ReuseYes: "New bolts, oiled", plan.ReuseOnce: "The bolts may be used again"} {
		for k := range p.Kinds {
			p.Kinds[k].Reuse = reuse
		}
		for _, text := range []string{"New bolts, oiled", "The bolts may be used again", "New bolts if damaged", "New gasket"} {
			if found := cautioned(p, plan.Caution{Text: text}); finding.Has(found, TextReuse) != (text == wrong) {
				t.Errorf("%q with reuse %s: %v", text, reuse, found)
			}
		}
	}
	p.Title = "Cylinder head, right bank"
	if found := Title(p); len(found) != 1 || found[0].Code != TextSide {
		t.Errorf("a title against a label: %v", found)
	}
}

// First principles: work before a part comes off is loosening, and new parts
// are fitted while tightening.
func TestCautionsOfTheOtherWork(t *testing.T) {
	t.Parallel()
	p := head(t)
	for text, of := range map[string]plan.CautionSide{
		"Measure the end float before the caps come off": plan.CautionLoosen, "Drain the oil": plan.CautionLoosen, "Mark it before removal": plan.CautionLoosen,
		"New gasket": plan.CautionTighten, "Oil the threads": plan.CautionTighten, "Bead of sealant 3 mm wide": plan.CautionTighten, "Fit both dowels first": plan.CautionTighten,
	} {
		for _, side := range []plan.CautionSide{plan.CautionTighten, plan.CautionLoosen, plan.CautionBoth} {
			found := cautioned(p, plan.Caution{Text: text, Side: side})
			if finding.Has(found, TextOtherWork) != (side != of && side != plan.CautionBoth) {
				t.Errorf("%q under %q: %v", text, side, found)
			}
		}
	}
	for _, text := range []string{"Soak the nuts the evening before", "Manifold cold before a nut is touched", "Timing pin stays in until the head is off", "Mark rod and cap"} {
		if found := cautioned(p, plan.Caution{Text: text, Side: plan.CautionLoosen}); len(found) > 0 {
			t.Errorf("%q: %v", text, found)
		}
	}
}
