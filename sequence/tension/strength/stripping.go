package strength

import (
	"cmp"
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
)

// Engagement is a bolt in a tapped part. Zero values are unknown, and are
// replaced by an assumption that the result reports.
type Engagement struct {
	Thread   thread.Thread
	Class    Class
	Length   unit.Length // from the first to the last engaged turn; idleTurns of it carry no load
	Material string      // of the tapped part, as written; required
	Boss     unit.Length // diameter of the tapped part, or width across flats of a nut; 0: wide
	Insert   *Insert     // thread insert; nil: none
	Least    unit.Length // diameter of the bolt's smallest section; 0: that of its thread
	Preload  unit.Force  // required; 0: only what breaks first is reported
}

// Insert is a thread insert with its own outer thread in the tapped part.
type Insert struct {
	Outer   unit.Length // major diameter of the outer thread
	PitchMm float64     // of the outer thread; 0: that of the bolt
}

// Stripping says which thread fails and how long the engagement must be.
type Stripping struct {
	BoltBreaks unit.Force // in its smallest section, in pure tension
	BoltStrips unit.Force
	PartStrips unit.Force // the thread of the tapped part, or the outer one of the insert
	First      Failure
	Margin     float64 // least of the three divided by Preload; 0 if none was stated

	Effective  unit.Length // length that carries load
	ForBolt    unit.Length // engagement from which the bolt breaks before a thread strips
	ForPreload unit.Length // engagement that just bears Preload; 0 if none was stated
	Holds      bool        // both threads bear Preload
	Factors    Alexander
	ShearRatio float64 // of the bolt's thread: shear divided by tensile strength

	Assumptions []finding.Finding
	Sources     []string
}

// Failure is what fails first, as a term of the trade.
type Failure string

const (
	BoltBreaks Failure = "bolt breaks"
	BoltStrips Failure = "bolt strips"
	PartStrips Failure = "part strips"
)

// Alexander holds the reduction of the strength of threads by dilation and
// bending.
type Alexander struct {
	Dilation    float64 // C1, of both
	BoltBending float64 // C2, of the bolt's thread
	PartBending float64 // C3, of the tapped thread
}

// idleTurns are the turns at the ends of an engagement that carry no load: VDI
// 2230-1, section 5.5.5, mges = meff + 0.8 P (value from memory).
const idleTurns = 0.8

// judgedEqual is the relative difference up to which two loads count as equal,
// so that exactly the required engagement holds.
const judgedEqual = 1e-9

// Strip calculates the strength of the engaged threads. The error says what is
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
	least := float64(cmp.Or(e.Least, unit.Length(h.thread.StressDiameterMm())))
	r.BoltBreaks = unit.Force(float64(h.bolt.Tensile) * math.Pi / 4 * least * least) // VDI 2230-1, section 5.5.5: FmS = Rm As
	r.BoltStrips, r.PartStrips = h.strips(r.Effective)
	r.First = r.first(h)
	r.ForBolt = h.lengthFor(r.BoltBreaks) + h.idle()
	if e.Preload > 0 {
		r.ForPreload = h.lengthFor(e.Preload) + h.idle()
		r.Holds = min(r.BoltStrips, r.PartStrips) >= e.Preload*(1-judgedEqual)
		r.Margin = float64(min(r.BoltBreaks, r.BoltStrips, r.PartStrips) / e.Preload)
	}
	r.Sources = []string{"VDI 2230 Part 1, section 5.5.5, after Alexander, and FED-STD-H28 (stripping)", h.limitsSource(), h.material.Source + " (shear strength)"}
	return r, nil
}

func (r Stripping) first(h hold) Failure {
	bolt, part := h.strips(1) // for any length, even if none is left to carry load
	switch {
	case min(r.BoltStrips, r.PartStrips) >= r.BoltBreaks*(1-judgedEqual):
		return BoltBreaks
	case bolt <= part:
		return BoltStrips
	}
	return PartStrips
}

// UpTo rounds a required length up to a tenth of a millimetre.
func UpTo(l unit.Length) unit.Length { return unit.Length(math.Ceil(float64(l)*10) / 10) }

// hold is an engagement with nothing left open.
type hold struct {
	thread   thread.Thread // of the bolt
	limits   thread.Limits
	outer    thread.Thread // in the tapped part: that of the bolt or of the insert
	outside  thread.Limits
	bolt     Class
	material Material
	dilation float64
	assumed  []finding.Finding
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

func (h *hold) assume(a finding.Finding) { h.assumed = append(h.assumed, a) }

func (h *hold) settleBolt(e Engagement) error {
	if h.bolt.Tensile == 0 {
		h.bolt.Tensile = h.bolt.Hardened()
		h.assume(AssumedTensile(h.bolt))
	}
	if !(e.Preload >= 0 && !math.IsInf(float64(e.Preload), 1)) {
		return finding.Failed(NoPreload, finding.Values{"preload": e.Preload})
	}
	return nil
}

func (h *hold) settlePart(e Engagement) error {
	if e.Material == "" {
		return finding.Failed(NoTappedPart, finding.Values{"allowed": Materials()})
	}
	m, err := ParseMaterial(e.Material)
	if err != nil {
		return err
	}
	if m.Shear == 0 {
		return finding.Failed(ShearUnknown, finding.Values{"material": m.Term(), "allowed": Materials()})
	}
	h.material = m
	h.assume(finding.Noted(ShearAssumed, finding.Values{"material": m.Term(), "shear": m.Shear, "source": finding.Term(m.Source)}).From(m.Source))
	return nil
}

func (h *hold) settleBoss(e Engagement) error {
	if e.Boss == 0 {
		h.assume(finding.Noted(BossAssumed, nil))
		return nil
	}
	h.dilation = dilation(float64(e.Boss) / h.outer.MajorMm)
	return CheckBoss(h.outer, e.Boss)
}

// CheckBoss reports a boss that is too thin around the thread for its strength
// to be known.
func CheckBoss(t thread.Thread, boss unit.Length) error {
	least := unit.Length(leastDilationRatio * t.MajorMm)
	if !(boss >= least-1e-9) {
		return finding.Failed(BossTooThin, finding.Values{"boss": boss, "thread": t.Name, "least": least})
	}
	return nil
}

func (h *hold) settleInsert(e Engagement) error {
	h.outer, h.outside = h.thread, h.limits
	if e.Insert == nil {
		return nil
	}
	pitch := cmp.Or(e.Insert.PitchMm, h.thread.PitchMm)
	if e.Insert.PitchMm == 0 {
		h.assume(finding.Noted(InsertPitchAssumed, finding.Values{"pitch": unit.Length(pitch)}))
	}
	least, most := unit.Length(h.thread.MajorMm), unit.Length(3*h.thread.MajorMm)
	if !(e.Insert.Outer > least && e.Insert.Outer <= most) {
		return finding.Failed(InsertRange, finding.Values{"insert": e.Insert.Outer, "thread": h.thread.Name, "least": least, "most": most})
	}
	if !(pitch > 0 && pitch <= float64(e.Insert.Outer)/4) {
		return finding.Failed(InsertPitchRange, finding.Values{"pitch": unit.Length(pitch), "insert": e.Insert.Outer, "most": e.Insert.Outer / 4})
	}
	h.outer = thread.Thread{Name: e.Insert.Outer.String(), MajorMm: float64(e.Insert.Outer), PitchMm: pitch}
	h.outside = h.outer.Limits()
	return nil
}

// idle returns the length of the engagement that carries no load.
func (h hold) idle() unit.Length {
	return unit.Length(idleTurns * max(h.thread.PitchMm, h.outer.PitchMm))
}

func (h *hold) settleLength(e Engagement) error {
	if most := unit.Length(10 * h.thread.MajorMm); !(e.Length > 0 && e.Length <= most) {
		return finding.Failed(EngagementRange, finding.Values{"engagement": e.Length, "thread": h.thread.Name, "most": most})
	}
	h.assume(finding.Noted(IdleTurnsAssumed, finding.Values{"length": h.idle(), "turns": idleTurns}).From("VDI 2230-1, section 5.5.5"))
	return nil
}

// sheared returns the loads of both threads without Alexander's factors.
func (h hold) sheared(effective unit.Length) (bolt, part float64) {
	return float64(h.bolt.Shear()) * BoltShearAreaMm2(h.thread, h.limits, effective), float64(h.material.Shear) * NutShearAreaMm2(h.outer, h.outside, effective)
}

// factors does not depend on the length, because both loads are proportional to
// it.
func (h hold) factors() Alexander {
	bolt, part := h.sheared(1)
	ratio := part / bolt // VDI 2230-1, section 5.5.5: RS = τBM ASGM/(τBS ASGS)
	return Alexander{h.dilation, boltBending(ratio), nutBending(ratio)}
}

// strips returns the loads at which the thread of the bolt and that of the
// tapped part shear off.
func (h hold) strips(effective unit.Length) (bolt, part unit.Force) {
	f := h.factors()
	bolt0, part0 := h.sheared(effective)
	return unit.Force(bolt0 * f.Dilation * f.BoltBending), unit.Force(part0 * f.Dilation * f.PartBending)
}

// lengthFor returns the effective length at which neither thread strips below
// the load. Both loads are proportional to the length.
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
