package job

import (
	"slices"

	"drawdown/sequence/run"
	"drawdown/sequence/tension/wrench"
)

// WrenchFacts returns what the shop's list states about a wrench, by its
// number, to be stored with an entry that names it.
func WrenchFacts(list []wrench.Wrench, number string) *run.WrenchFacts {
	i := slices.IndexFunc(list, func(w wrench.Wrench) bool { return w.Number == number && number != "" })
	if i < 0 {
		return &run.WrenchFacts{}
	}
	w := list[i]
	least, most := w.UsableNm()
	return &run.WrenchFacts{
		Listed: true, FromNm: float64(least), ToNm: float64(most),
		Tolerance: wrench.Tolerance(float64(most)), Calibrated: w.Calibrated,
	}
}
