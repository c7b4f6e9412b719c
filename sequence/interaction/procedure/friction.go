package procedure

import (
	"math"
	"math/rand/v2"
	"slices"

	"gonum.org/v1/gonum/stat"

	"drawdown/geometry/finding"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/contact"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
)

// FrictionScatter is the effect of friction in thread and under the head.
type FrictionScatter struct {
	SDPercent []float64 // by fastener, of the preload at a torque
	Draws     int       // of the whole work
	Seed      uint64    // the same seed gives the same draws
	Stick     float64   // of Nuts
}

// usualFrictionSD is the scatter of the preload at a torque with a lubricant,
// in percent (engineering estimate; 20 % dry).
const usualFrictionSD = 10

// Friction is how the preload scatters at a torque.
type Friction struct {
	ByFastener []float64 // SD in percent
	SDPercent  float64   // of all kinds not tightened by an angle: the figure that is reported
	Usual      bool      // no kind has a range of friction: the usual scatter is used
}

// FrictionOf returns the scatter of the preload at a torque for every fastener,
// from the friction of its kind. The range from the preload at the highest
// friction to that at the lowest is taken as four standard deviations. A kind
// with a single figure, or none, has the usual scatter.
func FrictionOf(p plan.Plan) Friction {
	f := Friction{Usual: true}
	byKind := map[string]float64{}
	for _, kind := range p.Kinds {
		byKind[kind.Name] = frictionSD(kind)
		if byKind[kind.Name] == 0 {
			byKind[kind.Name] = usualFrictionSD
		} else if p.Count(kind.Name) > 0 {
			f.Usual = false
		}
	}
	// Friction matters little if a kind is finally tightened by an angle.
	onAngle := OnAngle(hundreds(p))
	var byTorque []float64
	for _, fastener := range p.Joint.Fasteners {
		f.ByFastener = append(f.ByFastener, byKind[fastener.Kind])
		if !slices.Contains(onAngle, fastener.Kind) {
			byTorque = append(byTorque, byKind[fastener.Kind])
		}
	}
	if len(byTorque) == 0 {
		byTorque = f.ByFastener
	}
	f.SDPercent = bounds.SpreadOf(byTorque).Mean
	return f
}

// Origin of the scatter of the preload at a torque.
const (
	FrictionUsual  finding.Code = "friction usual"  // sd: in percent
	FrictionSpans  finding.Code = "friction spans"  // sd
	FrictionMiddle finding.Code = "friction middle" // a torque gives the preload at its middle friction, in every pass
)

// Says reports the figure and its origin.
func (f Friction) Says() finding.Finding {
	code := FrictionSpans
	if f.Usual {
		code = FrictionUsual
	}
	return finding.Noted(code, finding.Values{"sd": f.SDPercent})
}

// frictionSD is 0 if the friction has no range.
func frictionSD(kind plan.Kind) float64 {
	bolt, err := BoltOf(kind)
	if err != nil {
		return 0
	}
	r, err := screw.AtTorque(bolt, 1) // at any torque: preload is proportional to it
	if err != nil {
		return 0
	}
	const standardDeviations = 4
	return min(mostSDPercent, 100*math.Abs(float64(r.Low.Preload-r.High.Preload))/float64(r.Nominal.Preload)/standardDeviations)
}

// mostSDPercent limits the scatter: beyond it a bolt would often have no
// friction at all.
const mostSDPercent = 50

// Scattered is the distribution of the final forces with random friction, in
// percent of the targets.
type Scattered struct {
	ByFastener []bounds.Band // 5th percentile, median, 95th percentile
	Lowest     bounds.Band   // the same, of the lowest bolt of each joint
	SD         float64       // of all bolts of all joints
}

// ScatterByFriction performs the passes repeatedly from a loose joint, each
// time with random friction for each bolt, which stays the same over the
// passes.
func ScatterByFriction(j *contact.Joint, passes []contact.Pass, targets []float64, f FrictionScatter) (Scattered, error) {
	random := rand.New(rand.NewPCG(f.Seed, f.Seed))
	ends := make([][]float64, j.Len())
	var all, lowest []float64
	for range f.Draws {
		nuts := j.Loose()
		nuts.Stick = f.Stick
		if err := workScattered(nuts, passes, drawn(random, f.SDPercent)); err != nil {
			return Scattered{}, err
		}
		end := bounds.Percent(nuts.Forces(), targets)
		lowest = append(lowest, slices.Min(end))
		for i, percent := range end {
			ends[i] = append(ends[i], percent)
			all = append(all, percent)
		}
	}
	s := Scattered{SD: bounds.SpreadOf(all).SD, Lowest: usualSpan(lowest)}
	for _, list := range ends {
		s.ByFastener = append(s.ByFastener, usualSpan(list))
	}
	return s, nil
}

// usualSpan returns the 5th percentile, the median and the 95th percentile.
func usualSpan(list []float64) bounds.Band {
	slices.Sort(list)
	quantile := func(p float64) float64 { return stat.Quantile(p, stat.Empirical, list, nil) }
	return bounds.Band{Low: quantile(0.05), Nominal: quantile(0.5), High: quantile(0.95)}
}

// drawn returns the preload of each bolt with random friction at a torque, as a
// share of the nominal one.
func drawn(random *rand.Rand, sdPercent []float64) []float64 {
	list := make([]float64, len(sdPercent))
	for i, sd := range sdPercent {
		list[i] = max(0.1, 1+sd/100*random.NormFloat64()) // friction is never zero or infinite
	}
	return list
}

func workScattered(s *contact.Nuts, passes []contact.Pass, share []float64) error {
	for _, step := range slices.Concat(passes...) {
		step.ForceN *= share[step.Fastener]
		if err := s.Do(step); err != nil {
			return err
		}
	}
	return nil
}
