package figures

import (
	"cmp"
	"math"
	"strings"
	"sync"

	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/strength"
)

// completeHead warns of a head that does not match its thread or its hole, and
// then continues with the standard one.
func (j *judge) completeHead() {
	b := &j.Bolt.Bolt
	if b.Hole != 0 && float64(b.Hole) < b.Thread.MajorMm {
		size, _, _ := strings.Cut(b.Thread.Name, "×")
		j.warn(0, HoleTooSmall, finding.Values{"size": size, "hole": b.Hole})
		b.Hole = 0
	}
	j.completeFace()
	_, err := screw.Complete(*b)
	if err == nil {
		return
	}
	stated := b.HeadAcross != 0 || b.WasherFace != 0 || b.Hole != 0
	b.HeadForm, b.HeadAcross, b.WasherFace, b.Hole = "", 0, 0, 0
	j.completeFace()
	if _, still := screw.Complete(*b); stated && still == nil {
		j.warn(0, HeadUnfit, finding.Values{"why": err})
	}
}

// judgeHole warns of a hole too narrow for the thread, and of one made for a
// larger thread.
func (j *judge) judgeHole() {
	hole, t := j.asked.Hole, j.Bolt.Bolt.Thread
	d := unit.Length(t.MajorMm)
	if hole < d || finding.Has(j.found, HeadUnfit) {
		return // there is no hole, or it has been reported
	}
	size, _, _ := strings.Cut(t.Name, "×")
	usual, standard := head.Hole(t)
	values := finding.Values{"size": size, "hole": hole, "usual": usual, "standard": standard}
	switch larger, wide := head.LargerForHole(t, hole); {
	case hole < leastClearance*d:
		j.warn(0, HoleWithoutClearance, values)
	case wide:
		name, _, _ := strings.Cut(larger.Name, "×")
		values["larger"], values["across"] = name, unit.Length(0)
		if across, _, err := head.HexagonAcross(larger); err == nil && across == j.asked.HeadAcross {
			values["across"] = across
		}
		j.warn(0, HoleOfLarger, values)
	}
}

// judgeOtherHead warns of a hexagon head of the width of a larger thread, by a fifth wider
// than its own and not of the heavy series.
func (j *judge) judgeOtherHead() {
	const wider = 1.2
	t := j.Bolt.Bolt.Thread
	own, _, err := head.HexagonAcross(t)
	across := j.asked.HeadAcross
	form := j.asked.HeadForm
	if err != nil || t.Unified() || form != "" && form != head.Hexagon || across < wider*own || across == heavyAcross[t.MajorMm] || finding.Has(j.found, AcrossOdd) || finding.Has(j.found, HeadUnfit) {
		return
	}
	for _, size := range []string{"M5", "M6", "M8", "M10", "M12", "M14", "M16", "M18", "M20", "M22", "M24", "M27", "M30", "M33", "M36"} {
		other, err := thread.Parse(size)
		if err != nil {
			continue
		}
		if of, _, err := head.HexagonAcross(other); err == nil && of == across && other.MajorMm > t.MajorMm {
			name, _, _ := strings.Cut(t.Name, "×")
			j.warn(0, AcrossOfOther, finding.Values{"across": across, "thread": name, "own": own, "other": size})
			return
		}
	}
}

// heavyAcross holds the widths of the heavy series by nominal diameter (EN 14399, values
// from memory).
var heavyAcross = map[float64]unit.Length{12: 22, 16: 27, 20: 32, 22: 36, 24: 41, 27: 46, 30: 50, 36: 60}

// judgeAcross warns of a head or a nut whose width belongs to another thread.
// Of the forms of heads, only the hexagon has such widths.
func (j *judge) judgeAcross() {
	across := j.asked.HeadAcross
	if form := j.asked.HeadForm; form != "" && form != head.Hexagon {
		across = 0
	}
	d := unit.Length(j.Bolt.Bolt.Thread.MajorMm)
	for _, part := range []struct {
		of            string
		across, least unit.Length
	}{{"head", across, leastAcross * d}, {"nut", j.NutAcross, leastNutAcross * d}} {
		if part.across > 0 && !(part.of == "head" && finding.Has(j.found, HeadUnfit)) && (part.across < part.least || part.across > mostAcross*d) {
			j.warn(0, AcrossOdd, finding.Values{
				"of": part.of, "across": part.across, "thread": j.Bolt.Bolt.Thread.Name, "least": part.least, "most": mostAcross * d,
			})
		}
	}
}

// completeFace uses the usual bearing face if neither the bolt nor a standard
// has one.
func (j *judge) completeFace() {
	b := &j.Bolt.Bolt
	if b.HeadAcross != 0 || b.WasherFace != 0 {
		return
	}
	face := usualFace
	if b.HeadForm == head.Flange {
		face = usualFlange
	}
	if _, _, err := head.Face(b.Thread, cmp.Or(b.HeadForm, head.Hexagon)); err != nil {
		b.WasherFace = unit.Length(face * b.Thread.MajorMm)
	}
}

// judgePressure judges the pressure on the bearing face by the material under
// it, or by the strongest of the usual ones if that is unknown.
func (j *judge) judgePressure() {
	bolt, err := screw.Complete(j.Bolt.Bolt)
	if j.preload == 0 || err != nil || finding.Has(j.found, HeadUnfit) {
		return // or the sizes are reported, and the standard ones stand in for them
	}
	material, known := j.underHead()
	if !known && !j.headStated() {
		return // neither head nor part is known
	}
	r, err := head.UnderHead(bolt.Bearing, j.preload, material.Name)
	if err != nil || r.Used <= 1 {
		return
	}
	if known {
		j.warn(0, PressureTooHigh, finding.Values{
			"washer": bolt.Bearing.Washer != nil, "pressure": r.Pressure, "material": material.Term(), "limit": r.Limit, "face": strength.UpTo(r.Face),
		})
		return
	}
	j.warn(0, PressureAnywhere, finding.Values{
		"face": j.Bolt.Bolt.WasherFace, "across": j.Bolt.Bolt.HeadAcross, "form": finding.Term(j.Bolt.Bolt.HeadForm), "hole": j.Bolt.Bolt.Hole,
		"pressure": unit.Stress(math.Round(float64(r.Pressure)/50) * 50), "preload": j.preload, "limit": r.Limit,
	})
}

// headStated reports whether anything is stated about what presses on the part.
// A standard head on a standard hole may not be there at all.
func (b Bolt) headStated() bool {
	return b.Bolt.HeadForm != "" || b.Bolt.HeadAcross > 0 || b.Bolt.WasherFace > 0 || b.Bolt.Washer != "" || b.Bolt.Hole > 0
}

// underHead returns the material under the head; if unknown, the strongest of
// the usual ones.
func (j *judge) underHead() (m strength.Material, known bool) {
	if m, err := strength.ParseMaterial(j.under()); err == nil && m.LimitingPressure > 0 {
		return m, true
	}
	return hardestMaterial(), false
}

// under returns the material under the head as written; "" if not stated.
func (b Bolt) under() string {
	if len(b.Grip.Layers) > 0 {
		return cmp.Or(b.Grip.Layers[0].Material, b.Under)
	}
	return b.Under
}

// hardestMaterial is the material with the highest limiting pressure.
var hardestMaterial = sync.OnceValue(func() strength.Material {
	var hardest strength.Material
	for _, name := range strength.Materials() {
		if m, err := strength.ParseMaterial(name); err == nil && m.LimitingPressure > hardest.LimitingPressure {
			hardest = m
		}
	}
	return hardest
})
