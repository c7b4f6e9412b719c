package service

import (
	"math"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/strength"
)

// Expansion of bolts per kelvin: VDI 2230-1, table A9 (values from memory).
const steelBolt, austeniticBolt = 11.5e-6, 16.5e-6

// expansions holds those of parts per kelvin, by a word of the material: VDI
// 2230-1, table A9, and Shigley 9th ed., table 3-3 (values from memory). The
// first word that fits counts.
var expansions = []struct {
	word      string
	perKelvin float64
}{
	{"stainless", 16.5e-6}, {"nut", 11.5e-6}, {"washer", 11.5e-6}, {"steel", 11.5e-6},
	{"grey cast iron", 10.5e-6}, {"ductile iron", 12.5e-6},
	{"aluminium", 23e-6}, {"magnesium", 26e-6}, {"titanium", 8.9e-6}, {"brass", 18.7e-6}, {"bronze", 17.6e-6}, {"copper", 16.8e-6},
}

// expansionOf is the expansion of a material as written; none is steel, as for
// its stiffness.
func expansionOf(material string) (perKelvin float64, known bool) {
	if material == "" {
		return steelBolt, true
	}
	m, err := strength.ParseMaterial(material)
	if err != nil {
		return 0, false
	}
	for _, e := range expansions {
		if strings.Contains(m.Name, e.word) {
			return e.perKelvin, true
		}
	}
	return 0, false // a stated modulus
}

// heat is what the warmth adds to the preload of a kind; false if an expansion
// is unknown.
func (w *work) heat(k Kind, s springs) (adds Forces, known bool) {
	t := w.plan.Clamped.Service.Temperature
	if t == nil {
		return Forces{}, true
	}
	growsMm, known := w.grows(k, *t)
	if !known {
		return Forces{}, false
	}
	at := func(gasket float64) float64 { return growsMm / s.all(gasket) } // VDI 2230-1, section 5.4.2.3: ΔFVth, without the fall of the moduli
	b := bounds.Of(at(s.gasket.Low), at(s.gasket.Nominal), at(s.gasket.High))
	return Forces{unit.Force(b.Low), unit.Force(b.Nominal), unit.Force(b.High)}, true
}

// grows is how much more the parts grow than the bolt, in mm.
func (w *work) grows(k Kind, t plan.Temperature) (mm float64, known bool) {
	ofBolt := steelBolt
	if k.answer.Result.Strength.Austenitic {
		ofBolt = austeniticBolt
	}
	for _, layer := range k.answer.Grip.Layers {
		ofPart, known := expansionOf(layer.Material)
		if !known {
			w.open(NoExpansion, finding.Values{"material": layer.Material})
			return 0, false
		}
		l := float64(layer.Thickness)
		mm += l * (ofPart*float64(t.Part-t.Assembled) - ofBolt*float64(t.Bolt-t.Assembled))
		w.assume(Expansion, finding.Values{"material": materialTerm(layer.Material), "part": 1e6 * ofPart, "bolt": 1e6 * ofBolt})
	}
	return mm, true
}

func materialTerm(text string) finding.Term {
	if m, err := strength.ParseMaterial(text); err == nil {
		return m.Term()
	}
	return "steel"
}

// Yield is the share of the yield stress that a bolt uses when it is hot and
// under load, with the torsion of tightening still in it.
type Yield struct {
	Cold, Nominal, High float64

	most unit.Force // preload when tightened, at low friction, that just does not yield hot; 0: none
}

// yields fills in how near the bolt comes to yield.
func (w *work) yields(k *Kind, adds Forces, load unit.Force, s springs) {
	r := k.answer.Result
	n := w.introduced()
	extra := func(heat unit.Force, gasket float64) unit.Force {
		return max(0, heat) + load*unit.Force(s.share(n, gasket)) // VDI 2230-1, section 5.3: FSA = Φn FA
	}
	used := func(cold unit.Force, friction float64, more unit.Force) float64 {
		yield := float64(r.Strength.Yield) * r.LeastSectionMm2
		both := float64(cold / screw.PreloadAtYieldShare(1, r.Strength.Yield, k.answer.Bolt.Bolt.Thread, r.Least, friction, r.Equation))
		pull := float64(cold) / yield
		after := float64(cold+more) / yield
		return math.Sqrt(max(0, both*both-pull*pull) + after*after) // VDI 2230-1, section 5.5.2, with all of the torsion
	}
	c := k.cold
	k.Yield = &Yield{
		Cold:    used(c.Nominal.Force, c.Nominal.Thread, 0),
		Nominal: used(c.Nominal.Force, c.Nominal.Thread, extra(adds.Nominal, s.gasket.Nominal)),
		High:    used(c.High.Force, c.High.Thread, extra(adds.High, s.gasket.High)),
	}
	low, high := unit.Force(0), c.High.Force
	more := extra(adds.High, s.gasket.High)
	for range 40 { // halves the range
		if middle := (low + high) / 2; used(middle, c.High.Thread, more) <= 1 {
			low = middle
		} else {
			high = middle
		}
	}
	k.Yield.most = low
	w.assume(TorsionStays, nil)
}

// Fatigue is the alternating stress of a bolt under a load that comes and goes.
type Fatigue struct {
	Amplitude unit.Stress
	Limit     unit.Stress // that it bears for ever; its thread is rolled before hardening
}

// fatigue fills in the alternating stress of the bolt.
func (w *work) fatigue(k *Kind, load unit.Force, s springs) {
	if load == 0 {
		return
	}
	r := k.answer.Result
	amplitude := float64(load) * s.share(w.introduced(), s.gasket.High) / (2 * r.StressAreaMm2) // VDI 2230-1, section 5.5.3: σa = (FSAo − FSAu)/(2 AS)
	k.Fatigue = &Fatigue{
		Amplitude: unit.Stress(amplitude),
		Limit:     unit.Stress(0.85 * (150/k.answer.Bolt.Bolt.Thread.MajorMm + 45)), // the same: σASV = 0.85 (150/d + 45)
	}
	w.rests("VDI 2230 Part 1, section 5.5.3 (fatigue)")
}
