package bench

import (
	"net/http"

	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
)

// exportRun gives the whole record of a run.
func (b *Bench) exportRun(w http.ResponseWriter, r *http.Request, id, ending string) error {
	return wrong(http.StatusNotFound, NoFormat, finding.Values{"written": cut(ending), "allowed": []string{"json", "csv", "pdf"}})
}

// frozenOf reads again what a run was started from.
func (b *Bench) frozenOf(id string) (job.Frozen, error) {
	started, err := b.store.Run(id)
	if err != nil {
		return job.Frozen{}, err
	}
	return b.thawed(started.Of, started.Files)
}

// exportJob gives the whole record of a job.
func (b *Bench) exportJob(w http.ResponseWriter, r *http.Request, id, ending string) error {
	return wrong(http.StatusNotFound, NoFormat, finding.Values{"written": cut(ending), "allowed": []string{"json", "pdf"}})
}
