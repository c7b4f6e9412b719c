package wrench

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Wrench is a torque wrench of the shop, in the unit of its scale.
type Wrench struct {
	Name     string
	Min, Max float64
	Division float64 // of the scale; 0: the usual one for its size
	Unit     unit.TorqueUnit
	Length   unit.Length // middle of the grip to middle of the drive; 0: that of the work

	Number     string // as written on it; "": none
	Calibrated string // date of the last calibration, year-month-day; "": unknown
}

// Work is a torque to apply to a fastener.
type Work struct {
	Torque       unit.Torque
	Length       unit.Length // of the wrench; required with an adapter
	Adapter      unit.Length // middle of the drive to middle of the fastener; 0: none
	AdapterAngle unit.Angle  // from the centre line of the wrench: 0° straight out, 90° no correction
	Wrenches     []Wrench    // of the shop; none: only the setting is calculated
	Again        bool        // the fastener has been tightened before

	Unit unit.TorqueUnit // of the scale if no wrench is listed
}

// Result is what to set and on which wrench.
type Result struct {
	Setting unit.Torque      // exact
	Wrench  *Wrench          // nil if none was listed
	Scale   unit.GivenTorque // Setting on the scale of Wrench, otherwise in the requested unit
	Given   unit.Torque      // torque on the fastener with Scale set

	Length     unit.Length // of the wrench, used for Setting; 0 without an adapter
	LengthFrom finding.Term
	Skipped    []string // wrenches of the list without a length for the adapter

	Least, Most unit.Torque // usable range of the wrench; without one: where its scale may end

	RoundingShare  float64     // Given divided by the requested torque, minus 1
	ToleranceShare float64     // of the wrench, in both directions (ISO 6789)
	Low, High      unit.Torque // on the fastener, with the tolerance

	Notes       []finding.Finding
	Assumptions []finding.Finding
	Sources     []string
}

// Source of the length of a wrench, as a term of the trade.
const (
	LengthStated finding.Term = "as stated"
	LengthOfList finding.Term = "from the list of wrenches"
)

// Set calculates the setting with an adapter, and picks the best wrench of the
// shop: the smallest with the setting in its usable range. With an adapter,
// wrenches of unknown length are left out. The error says why none fits, and
// which wrench would.
func Set(w Work) (Result, error) {
	if !(w.Torque > 0 && !math.IsInf(float64(w.Torque), 1)) {
		return Result{}, finding.Failed(NoTorque, finding.Values{"torque": w.Torque})
	}
	if len(w.Wrenches) == 0 {
		if err := checkAdapter(w.Length, w.Adapter, w.AdapterAngle); err != nil {
			return Result{}, err
		}
		return w.set(nil, nil), nil
	}
	skipped, err := w.withoutLength()
	if err != nil {
		return Result{}, err
	}
	wrench, err := w.choose(skipped)
	if err != nil {
		return Result{}, err
	}
	return w.set(wrench, skipped), nil
}

// lacksLength reports that the wrench cannot be judged with the adapter.
func (w Work) lacksLength(wrench *Wrench) bool { return w.Adapter > 0 && w.length(wrench) == 0 }

// withoutLength names the wrenches to leave out. The error says that none is
// left.
func (w Work) withoutLength() (skipped []string, err error) {
	for i := range w.Wrenches {
		if w.lacksLength(&w.Wrenches[i]) {
			skipped = append(skipped, w.Wrenches[i].Name)
		}
	}
	if len(skipped) == len(w.Wrenches) {
		return nil, finding.Failed(NoneHasLength, finding.Values{"adapter": w.Adapter, "names": skipped})
	}
	return skipped, nil
}

func (w Work) set(wrench *Wrench, skipped []string) Result {
	r := Result{Setting: w.setting(wrench), Wrench: wrench, Skipped: skipped}
	if w.Adapter > 0 {
		r.Length, r.LengthFrom = w.length(wrench), LengthStated
		if wrench != nil && wrench.Length != 0 {
			r.LengthFrom = LengthOfList
		}
	}
	r.Scale = rounded(r.Setting, w.Unit)
	r.ToleranceShare = Tolerance(float64(r.Setting))
	r.Least, r.Most = r.Setting, r.Setting/LeastUsable
	if wrench != nil {
		r.Least, r.Most = wrench.UsableNm()
		r.Scale = wrench.onScale(r.Setting)
		r.ToleranceShare = wrench.ToleranceShare()
	}
	r.Given = r.Scale.Nm()
	if w.Adapter > 0 {
		r.Given = FastenerTorque(r.Scale.Nm(), w.length(wrench), w.Adapter, w.AdapterAngle)
	}
	r.RoundingShare = float64(r.Given/w.Torque) - 1
	r.Low, r.High = r.Given*unit.Torque(1-r.ToleranceShare), r.Given*unit.Torque(1+r.ToleranceShare)
	r.Notes, r.Assumptions = w.notes(r), w.assumptions(r)
	r.Sources = []string{"ISO 6789 (tolerance and usable range)"}
	if w.Adapter > 0 {
		r.Sources = append(r.Sources, "US Army TM 1-1500-204-23-9 (adapter)")
	}
	return r
}

func (w Work) setting(wrench *Wrench) unit.Torque {
	if w.Adapter == 0 {
		return w.Torque
	}
	return Setting(w.Torque, w.length(wrench), w.Adapter, w.AdapterAngle)
}

func (w Work) length(wrench *Wrench) unit.Length {
	if wrench != nil && wrench.Length != 0 {
		return wrench.Length
	}
	return w.Length
}

// choose returns the smallest wrench that fits. The error also names those that
// were left out before.
func (w Work) choose(skipped []string) (*Wrench, error) {
	var best *Wrench
	var why []finding.Finding
	for i := range w.Wrenches {
		wrench := &w.Wrenches[i]
		if err := wrench.check(); err != nil {
			return nil, err
		}
		if w.lacksLength(wrench) {
			continue
		}
		if err := checkAdapter(w.length(wrench), w.Adapter, w.AdapterAngle); err != nil {
			return nil, finding.Failed(OfWrench, finding.Values{"name": wrench.Name, "why": err})
		}
		setting := w.setting(wrench)
		least, most := wrench.UsableNm()
		if setting < least || setting > most {
			why = append(why, finding.Noted(OutOfRange, finding.Values{
				"name": wrench.Name, "least": least.OnScale(wrench.Unit), "most": most.OnScale(wrench.Unit), "setting": setting.OnScale(wrench.Unit),
			}))
			continue
		}
		if best == nil || wrench.maxNm() < best.maxNm() {
			best = wrench
		}
	}
	if best == nil {
		return nil, w.noneFits(why, skipped)
	}
	return best, nil
}

// noneFits reports what the wrenches of the list lack and, if the lever is
// known, which scales would have the setting.
func (w Work) noneFits(ranges []finding.Finding, skipped []string) error {
	values := finding.Values{"torque": w.Torque, "ranges": ranges, "skipped": skipped, "least": 0., "most": unit.GivenTorque{}}
	if w.Adapter == 0 || w.Length > 0 {
		at := w.setting(nil).In(w.Unit)
		values["least"], values["most"] = at, unit.GivenTorque{Value: fourFigures(at / LeastUsable), Unit: w.Unit}
	}
	return finding.Failed(NoneFits, values)
}

// LeastUsable is the share of its maximum from which a wrench is accurate: ISO
// 6789:2003, section 5.1.5.2, tested at 20, 60 and 100 %.
const LeastUsable = 0.2

// UsableNm returns the torques between which the wrench keeps its tolerance.
func (w Wrench) UsableNm() (least, most unit.Torque) {
	low := math.Max(w.Min, LeastUsable*w.Max)
	return unit.GivenTorque{Value: low, Unit: w.Unit}.Nm(), unit.Torque(w.maxNm())
}

// ToleranceShare is its relative tolerance, in both directions (ISO 6789).
func (w Wrench) ToleranceShare() float64 { return Tolerance(w.maxNm()) }

func (w Wrench) maxNm() float64 { return float64(unit.GivenTorque{Value: w.Max, Unit: w.Unit}.Nm()) }

func (w Wrench) check() error {
	if !(w.Min >= 0 && w.Max > w.Min && !math.IsInf(w.Max, 1)) {
		return finding.Failed(RangeFalls, finding.Values{"name": w.Name, "min": w.Min, "max": unit.GivenTorque{Value: w.Max, Unit: w.Unit}})
	}
	if !(w.Division >= 0 && w.Division <= w.Max/2) {
		return finding.Failed(DivisionRange, finding.Values{"name": w.Name, "division": unit.GivenTorque{Value: w.Division, Unit: w.Unit}})
	}
	return nil
}

// onScale rounds to the nearest division of the scale, within its range.
func (w Wrench) onScale(setting unit.Torque) unit.GivenTorque {
	if w.Division == 0 {
		return rounded(setting, w.Unit)
	}
	steps := max(math.Round(setting.In(w.Unit)/w.Division), 1)
	if steps*w.Division > w.Max*(1+1e-9) {
		steps--
	}
	return unit.GivenTorque{Value: tidy(steps * w.Division), Unit: w.Unit}
}

// rounded returns a torque as read from scales; one that is too small is not
// rounded.
func rounded(t unit.Torque, on unit.TorqueUnit) unit.GivenTorque {
	if scale := t.OnScale(on); scale.Value > 0 {
		return scale
	}
	return unit.GivenTorque{Value: t.In(on), Unit: on}
}

// fourFigures rounds a calculated figure.
func fourFigures(v float64) float64 {
	if v <= 0 {
		return 0
	}
	unit := math.Pow(10, math.Floor(math.Log10(v))-3)
	return tidy(math.Round(v/unit) * unit)
}

// tidy removes rounding noise from a figure of a scale.
func tidy(v float64) float64 { return math.Round(v*1e6) / 1e6 }

// Tolerance returns the relative tolerance of an adjustable click wrench (type
// II, class A), in both directions, by its maximum in N·m.
func Tolerance(maxNm float64) float64 {
	if maxNm <= 10 {
		return 0.06 // ISO 6789:2003, table 3: ±6 % to 10 N·m
	}
	return 0.04 // ISO 6789:2003, table 3: ±4 % above
}
