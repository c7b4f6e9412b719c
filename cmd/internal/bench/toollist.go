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

// wrenches reads the shop's lists of wrenches as they are now. A list with errors
// counts for nothing: the log has what is wrong.
func (b *Bench) wrenches() []wrench.Wrench {
	_, lists, err := job.ShopNames(b.shop.root)
	if err != nil {
		log.Printf("wrenches: %v", err)
	}
	var all []wrench.Wrench
	for _, name := range lists {
		from, err := patterns.OpenIn(b.shop.root, name)
		if err != nil {
			continue // gone meanwhile
		}
		list, problems := job.WrenchesIn(name, from.Data)
		if problems.Stops() {
			log.Printf("wrenches: %s", firstProblem(words.English(), problems))
		}
		all = append(all, list...)
	}
	return all
}

// wrenchFacts is what the shop's lists say of a wrench by its number; nil where no
// number is given.
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

// getPeople lists who is named in the record, to be chosen from.
func (b *Bench) getPeople(w http.ResponseWriter, r *http.Request) error {
	list, err := b.store.People()
	if err != nil {
		return err
	}
	answer(w, http.StatusOK, listed(list))
	return nil
}

// getTime sends the server's clock, by which a tablet counts a wait down.
func (b *Bench) getTime(w http.ResponseWriter, r *http.Request) error {
	answer(w, http.StatusOK, map[string]any{"time": b.now()})
	return nil
}
