package bench

import (
	"log"
	"net/http"
	"slices"

	"drawdown/cmd/internal/job"
	"drawdown/patterns"
	"drawdown/render/words"
	"drawdown/sequence/run"
	"drawdown/sequence/tension/wrench"
)

// wrenches reads the shop's present lists of wrenches. A list with errors is
// ignored; its errors are in the log.
func (b *Bench) wrenches() []wrench.Wrench {
	_, lists, err := job.ShopNames(b.shop.root)
	if err != nil {
		log.Printf("wrenches: %v", err)
	}
	var all []wrench.Wrench
	for _, name := range lists {
		from, err := patterns.OpenIn(b.shop.root, name)
		if err != nil {
			continue // deleted meanwhile
		}
		list, problems := job.WrenchesIn(name, from.Data)
		if problems.Stops() {
			log.Printf("wrenches: %s", firstProblem(words.English(), problems))
		}
		all = append(all, list...)
	}
	return all
}

// wrenchFacts returns what the shop's lists state about a wrench, by its
// number; it is nil without a number.
func (b *Bench) wrenchFacts(number string) *run.WrenchFacts {
	if number == "" {
		return nil
	}
	all := b.wrenches()
	i := slices.IndexFunc(all, func(w wrench.Wrench) bool { return w.Number == number })
	if i < 0 {
		return &run.WrenchFacts{}
	}
	return factsOf(all[i])
}

func factsOf(w wrench.Wrench) *run.WrenchFacts {
	least, most := w.UsableNm()
	return &run.WrenchFacts{Listed: true, FromNm: float64(least), ToNm: float64(most), Tolerance: w.ToleranceShare(), Calibrated: w.Calibrated}
}

// wrenchOut is a wrench of the shop that has a number.
type wrenchOut struct {
	Number     string  `json:"number"`
	Name       string  `json:"name"`
	FromNm     float64 `json:"from_Nm"`
	ToNm       float64 `json:"to_Nm"`
	Calibrated string  `json:"calibrated,omitempty"`
}

func (b *Bench) getWrenches(w http.ResponseWriter, r *http.Request) error {
	list := []wrenchOut{}
	for _, one := range b.wrenches() {
		if one.Number != "" {
			facts := factsOf(one)
			list = append(list, wrenchOut{one.Number, one.Name, facts.FromNm, facts.ToNm, facts.Calibrated})
		}
	}
	answer(w, http.StatusOK, list)
	return nil
}

// getPeople lists the people in the record, to choose from.
func (b *Bench) getPeople(w http.ResponseWriter, r *http.Request) error {
	list, err := b.store.People()
	if err != nil {
		return err
	}
	answer(w, http.StatusOK, listed(list))
	return nil
}

// getTime sends the server's clock, which a tablet uses to count down a wait.
func (b *Bench) getTime(w http.ResponseWriter, r *http.Request) error {
	answer(w, http.StatusOK, map[string]any{"time": b.now()})
	return nil
}
