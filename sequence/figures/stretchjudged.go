package figures

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/stiffness"
)

// Stretched is the preload at a stretch asked for.
type Stretched struct {
	Low, Nominal, High unit.Force // over the range of lengths and modulus
}

// measuredWarm is the difference of temperature for which the error of a
// measured stretch is given.
const measuredWarm = 10 // K

// belowYield keeps an aim at yield from counting as beyond it by rounding.
const belowYield = 1 - 1e-9

// stretched calculates the preload at a stretch; the torque for it is then only
// that for its nominal value.
func (a *Answer) stretched() error {
	if a.Ask.Stretch == 0 {
		return nil
	}
	s, err := stiffness.Stretch(a.Bolt.Bolt, a.Grip)
	if err != nil {
		return err
	}
	low, nominal, high, err := s.Preload(a.Ask.Stretch)
	if err != nil {
		return err
	}
	a.Stretched = &Stretched{low, nominal, high}
	a.Bolt.Bolt.YieldShare, a.Bolt.Bolt.ProofShare, a.Bolt.Bolt.Preload = 0, 0, min(nominal, s.Yields()*belowYield)
	a.Assumptions = append(a.Assumptions, cold(s))
	a.Sources = append(a.Sources, s.Joint.Sources...)
	return nil
}

// cold reports that bolt and gauge are assumed to be as warm as at the first
// measurement, and what a difference would change.
func cold(s stiffness.Stretching) finding.Finding {
	grown := s.Grown(measuredWarm)
	return finding.Noted(SameTemperature, finding.Values{
		"kelvin": measuredWarm, "grown": grown, "preload": unit.Force(float64(grown) / float64(s.Joint.Elongation)),
	})
}

// judgeStretches judges stretches against yield, and their preload against
// threads and bearing face.
func (j *judge) judgeStretches() {
	for _, stage := range j.Stages {
		if stage.Do != Lengthen || !j.hasThread() || j.strongest || len(j.Grip.Layers) == 0 {
			continue
		}
		s, err := stiffness.Stretch(j.Bolt.Bolt, j.Grip)
		if err != nil {
			j.warn(stage.Number, GripUnfit, finding.Values{"why": err})
			return
		}
		values := finding.Values{"stretch": stage.Stretch, "bolt": j.named(), "yield": s.AtYield(), "most": s.Longest(), "grip": s.Joint.Grip}
		_, _, high, err := s.Preload(stage.Stretch)
		switch {
		case err != nil:
			j.warn(stage.Number, StretchBreaks, values)
			continue
		case stage.Stretch > s.AtYield():
			j.warn(stage.Number, StretchPastYield, values)
		}
		j.reaches(high)
	}
}

// longer calculates the stretch at the nominal preload.
func (a *Answer) longer() error {
	s, err := stiffness.Stretch(a.Bolt.Bolt, a.Grip)
	if err != nil || a.Broken() {
		return err
	}
	least, nominal, most := s.OfPreload(a.final(), a.Result.Nominal.Thread)
	a.LongerAt = a.final()
	a.Longer = [3]unit.Length{least, nominal, most}
	return nil
}
