package strength

import (
	"fmt"
	"math"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
)

// Engagement is a bolt in the part that holds its thread. Zero values are
// unknown, and are replaced by an assumption that the result names.
type Engagement struct {
	Thread   thread.Thread
	Class    Class
	Length   unit.Length // from the first to the last engaged turn; idleTurns of it carry nothing
	Material string      // of the tapped part, as written; required
	Boss     unit.Length // diameter of the tapped part, or width across flats of a nut; not stated: wide
	Insert   *Insert     // thread insert; nil: none
	Preload  unit.Force  // that is asked of the joint; 0: only what breaks first is told
}

// Insert is a thread insert that sits in the tapped part with a thread of its
// own outside.
type Insert struct {
	Outer   unit.Length // major diameter of the outer thread
	PitchMm float64     // of the outer thread; 0: that of the bolt
}

// Stripping tells which thread fails and how long the engagement must be.
type Stripping struct {
	BoltBreaks unit.Force // in its stress area, pulled straight
	BoltStrips unit.Force
	PartStrips unit.Force // the thread of the tapped part, or the outer one of the insert
	First      Failure
	Margin     float64 // least of the three over Preload; 0 where none was stated

	Effective  unit.Length // what is left of Engagement.Length to carry
	ForBolt    unit.Length // engagement from which on the bolt breaks before a thread strips
	ForPreload unit.Length // engagement that just bears Preload; 0 where none was stated
	Factors    Alexander
	ShearRatio float64 // of the bolt's thread: shear over tensile strength

	Notes       []string
	Assumptions []string
	Sources     []string
}

// Failure names what fails first.
type Failure string

const (
	BoltBreaks Failure = "the bolt breaks"
	BoltStrips Failure = "the bolt's thread strips"
	PartStrips Failure = "the tapped thread strips"
)

// Alexander holds what widening and bending leave of the strength of threads.
type Alexander struct {
	Dilation    float64 // C1, of both
	BoltBending float64 // C2, of the bolt's thread
	PartBending float64 // C3, of the tapped thread
}

// idleTurns are the turns at the ends of an engagement that do not carry: VDI
// 2230-1, section 5.5.5, mges = meff + 0.8 P (value from memory).
const idleTurns = 0.8

// judgedEqual is the share within which two loads are the same, so that an
// engagement of just the length needed is judged to hold.
const judgedEqual = 1e-9

// Strip works out the strength of the engaged threads. The error says what is
// missing or does not fit, and what is allowed.
func Strip(e Engagement) (Stripping, error) {
	h, err := completeHold(e)
	if err != nil {
		return Stripping{}, err
	}
	r := Stripping{
		Assumptions: h.assumed,
		Effective:   max(e.Length-h.idle(), 0), Factors: h.factors(), ShearRatio: h.bolt.shearRatio(),
	}
	r.BoltBreaks = unit.Force(float64(h.bolt.Tensile) * h.thread.StressAreaMm2()) // VDI 2230-1, section 5.5.5: FmS = Rm As
	r.BoltStrips, r.PartStrips = h.strips(r.Effective)
	r.First = r.first(h)
	r.ForBolt = h.lengthFor(r.BoltBreaks) + h.idle()
	if e.Preload > 0 {
		r.ForPreload = h.lengthFor(e.Preload) + h.idle()
		r.Margin = float64(min(r.BoltBreaks, r.BoltStrips, r.PartStrips) / e.Preload)
	}
	r.Notes = r.notes(e, h)
	r.Sources = []string{"VDI 2230 Part 1, section 5.5.5, after Alexander, and FED-STD-H28 (stripping)", h.limitsSource(), h.material.Source + " (shear strength)"}
	return r, nil
}

func (r Stripping) first(h hold) Failure {
	bolt, part := h.strips(1) // of any length, even where none is left to carry
	switch {
	case min(r.BoltStrips, r.PartStrips) >= r.BoltBreaks*(1-judgedEqual):
		return BoltBreaks
	case bolt <= part:
		return BoltStrips
	}
	return PartStrips
}

func (r Stripping) notes(e Engagement, h hold) []string {
	var lines []string
	if r.First != BoltBreaks {
		lines = append(lines, fmt.Sprintf("%s before the bolt breaks; an engagement of %.1f mm in %s would hold the bolt", r.First, UpTo(r.ForBolt), h.material.Name))
	}
	if min(r.BoltStrips, r.PartStrips) < e.Preload*(1-judgedEqual) {
		lines = append(lines, fmt.Sprintf("the engagement of %v does not hold %.1f kN; allowed: at least %.1f mm", e.Length, float64(e.Preload)/1000, UpTo(r.ForPreload)))
	}
	return lines
}

// upTo rounds a needed length up to a tenth of a millimetre.
func UpTo(l unit.Length) float64 { return math.Ceil(float64(l)*10) / 10 }

// hold is an engagement with nothing left open.
type hold struct {
	thread   thread.Thread // of the bolt
	limits   thread.Limits
	outer    thread.Thread // in the tapped part: that of the bolt or of the insert
	outside  thread.Limits
	bolt     Class
	material Material
	dilation float64
	assumed  []string
}

func completeHold(e Engagement) (hold, error) {
	h := hold{thread: e.Thread, limits: e.Thread.Limits(), bolt: e.Class, dilation: 1}
	for _, step := range []func(Engagement) error{h.settleBolt, h.settlePart, h.settleInsert, h.settleLength, h.settleBoss} {
		if err := step(e); err != nil {
			return hold{}, err
		}
	}
	return h, nil
}

func (h *hold) settleBolt(e Engagement) error {
	if h.bolt.Tensile == 0 {
		h.bolt.Tensile = HardeningWhereUnknown * h.bolt.Yield
		h.assumed = append(h.assumed, fmt.Sprintf("tensile strength of the bolt %.0f MPa (%.1f times its yield stress), assumed", float64(h.bolt.Tensile), HardeningWhereUnknown))
	}
	if !(e.Preload >= 0 && !math.IsInf(float64(e.Preload), 1)) {
		return fmt.Errorf("preload %.4g N; allowed: 0 or more", float64(e.Preload))
	}
	return nil
}

func (h *hold) settlePart(e Engagement) error {
	if e.Material == "" {
		return fmt.Errorf("the material of the tapped part is missing; allowed: %s", MaterialList())
	}
	m, err := ParseMaterial(e.Material)
	if err != nil {
		return err
	}
	if m.Shear == 0 {
		return fmt.Errorf("the shear strength of %s is unknown; allowed: %s", m.Name, MaterialList())
	}
	h.material = m
	h.assumed = append(h.assumed, fmt.Sprintf("%s with a shear strength of %.0f MPa (%s), assumed", m.Name, float64(m.Shear), m.Source))
	return nil
}

func (h *hold) settleBoss(e Engagement) error {
	if e.Boss == 0 {
		h.assumed = append(h.assumed, "tapped part wide around the thread, assumed")
		return nil
	}
	ratio := float64(e.Boss) / h.outer.MajorMm
	if !(ratio >= leastDilationRatio-1e-9) {
		return fmt.Errorf("a tapped part of %v around %s is too thin to be judged; allowed: from %v on", e.Boss, h.outer.Name, unit.Length(leastDilationRatio*h.outer.MajorMm))
	}
	h.dilation = dilation(ratio)
	return nil
}

func (h *hold) settleInsert(e Engagement) error {
	h.outer, h.outside = h.thread, h.limits
	if e.Insert == nil {
		return nil
	}
	pitch := e.Insert.PitchMm
	if pitch == 0 {
		pitch = h.thread.PitchMm
		h.assumed = append(h.assumed, fmt.Sprintf("insert with the pitch of the bolt outside, %v mm, assumed", pitch))
	}
	least, most := unit.Length(h.thread.MajorMm), unit.Length(3*h.thread.MajorMm)
	if !(e.Insert.Outer > least && e.Insert.Outer <= most) {
		return fmt.Errorf("an insert of %v does not go with %s; allowed: above %v up to %v", e.Insert.Outer, h.thread.Name, least, most)
	}
	if !(pitch > 0 && pitch <= float64(e.Insert.Outer)/4) {
		return fmt.Errorf("a pitch of %v mm does not go with an insert of %v; allowed: above 0 up to %v", pitch, e.Insert.Outer, e.Insert.Outer/4)
	}
	h.outer = thread.Thread{Name: fmt.Sprintf("insert %v × %v", e.Insert.Outer, pitch), MajorMm: float64(e.Insert.Outer), PitchMm: pitch}
	h.outside = h.outer.Limits()
	return nil
}

// idle gives the length of the engagement that carries nothing.
func (h hold) idle() unit.Length {
	return unit.Length(idleTurns * max(h.thread.PitchMm, h.outer.PitchMm))
}

func (h *hold) settleLength(e Engagement) error {
	if most := unit.Length(10 * h.thread.MajorMm); !(e.Length > 0 && e.Length <= most) {
		return fmt.Errorf("engagement %v; allowed for %s: above 0 up to %v", e.Length, h.thread.Name, most)
	}
	h.assumed = append(h.assumed, fmt.Sprintf("%v of the engagement, %g P, does not carry (VDI 2230), assumed", h.idle(), idleTurns))
	return nil
}

// sheared gives the loads of both threads without Alexander's factors.
func (h hold) sheared(effective unit.Length) (bolt, part float64) {
	return float64(h.bolt.Shear()) * BoltShearAreaMm2(h.thread, h.limits, effective), float64(h.material.Shear) * NutShearAreaMm2(h.outer, h.outside, effective)
}

// factors do not depend on the length, as both loads are in proportion to it.
func (h hold) factors() Alexander {
	bolt, part := h.sheared(1)
	ratio := part / bolt // VDI 2230-1, section 5.5.5: RS = τBM ASGM/(τBS ASGS)
	return Alexander{h.dilation, boltBending(ratio), nutBending(ratio)}
}

// strips gives the loads at which the bolt's thread and that of the tapped part
// shear off.
func (h hold) strips(effective unit.Length) (bolt, part unit.Force) {
	f := h.factors()
	bolt0, part0 := h.sheared(effective)
	return unit.Force(bolt0 * f.Dilation * f.BoltBending), unit.Force(part0 * f.Dilation * f.PartBending)
}

// lengthFor gives the effective length at which neither thread strips below the
// load. Both loads are in proportion to the length.
func (h hold) lengthFor(load unit.Force) unit.Length {
	bolt, part := h.strips(1)
	return unit.Length(load / min(bolt, part))
}

func (h hold) limitsSource() string {
	if h.thread.Unified() {
		return "ASME B1.1, 2A in 2B (limits of the thread)"
	}
	return "ISO 965-1, 6g in 6H (limits of the thread)"
}
