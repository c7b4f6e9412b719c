package interaction

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"gonum.org/v1/gonum/stat"
)

// FrictionScatter is what friction in thread and under the head adds.
type FrictionScatter struct {
	SDPercent float64 // of the preload at a torque; engineering estimate: 10 lubricated, 20 dry
	Draws     int     // of the whole work; 0: 1000
	Seed      uint64  // the same seed gives the same draws
}

const usualDraws, mostDraws = 1000, 1_000_000

// Scattered is where the forces end when friction scatters, in percent of the
// targets.
type Scattered struct {
	ByFastener []Band // 5th percentile, median, 95th percentile
	SD         float64
}

// ScatterByFriction works the passes again and again from a loose joint, each time with
// a friction of its own for each bolt, which stays the same over the passes.
func (j *Joint) ScatterByFriction(passes []Pass, targets []float64, f FrictionScatter) (Scattered, error) {
	if err := j.checkTargets(targets); err != nil {
		return Scattered{}, err
	}
	if !(f.SDPercent >= 0 && f.SDPercent <= 50) {
		return Scattered{}, fmt.Errorf("friction scatter %g %%; allowed: 0 to 50 %%", f.SDPercent)
	}
	if f.Draws < 0 || f.Draws > mostDraws {
		return Scattered{}, fmt.Errorf("%d draws; allowed: 1 to %d", f.Draws, mostDraws)
	}
	if f.Draws == 0 {
		f.Draws = usualDraws
	}
	random := rand.New(rand.NewPCG(f.Seed, f.Seed))
	ends := make([][]float64, j.Len())
	var all []float64
	for range f.Draws {
		nuts := j.Loose()
		if err := nuts.workScattered(passes, drawn(random, j.Len(), f.SDPercent/100)); err != nil {
			return Scattered{}, err
		}
		for i, percent := range Percent(nuts.force, targets) {
			ends[i] = append(ends[i], percent)
			all = append(all, percent)
		}
	}
	s := Scattered{SD: SpreadOf(all).SD}
	for _, list := range ends {
		slices.Sort(list)
		quantile := func(p float64) float64 { return stat.Quantile(p, stat.Empirical, list, nil) }
		s.ByFastener = append(s.ByFastener, Band{quantile(0.05), quantile(0.5), quantile(0.95)})
	}
	return s, nil
}

// drawn gives each bolt the preload that its friction makes of a torque, as a
// share of the nominal one.
func drawn(random *rand.Rand, n int, sd float64) []float64 {
	list := make([]float64, n)
	for i := range list {
		list[i] = max(0.1, 1+sd*random.NormFloat64()) // a bolt never turns without friction, nor sticks fast
	}
	return list
}

func (s *Nuts) workScattered(passes []Pass, share []float64) error {
	for _, pass := range passes {
		for _, step := range pass {
			if step.Fastener >= 0 && step.Fastener < len(share) {
				step.ForceN *= share[step.Fastener]
			}
			if err := s.Do(step); err != nil {
				return err
			}
		}
	}
	return nil
}
