package bench

import (
	"encoding/json"
	"io"
	"net/http"

	"drawdown/cmd/internal/record"
	"drawdown/sequence/run"
)

// taken is the answer to an entry that was kept.
type taken struct {
	Version int    `json:"version"`
	Head    string `json:"head"` // of the chain, including the entry
	// Says lists the meaning of a value: outside its limits, a shim to fit.
	Says []string `json:"says,omitempty"`
}

// postRunEntry receives one entry for a run.
func (b *Bench) postRunEntry(w http.ResponseWriter, r *http.Request) error {
	e, err := b.readEntry(w, r)
	if err != nil {
		return err
	}
	one, err := b.open.find(r.PathValue("id"), b.now())
	if err != nil {
		return err
	}
	out, err := b.takeOn(one, e)
	if err != nil {
		return err
	}
	for _, m := range one.view(b.now()).Readings {
		if m.Entry == e.ID {
			out.Says = b.reader(r).SayAll(m.Findings())
		}
	}
	answer(w, http.StatusOK, out)
	return nil
}

// takeOn adds the server's facts to an entry, and the entry to the run.
func (b *Bench) takeOn(one *openRun, e run.Entry) (taken, error) {
	e.Time = b.now()
	e.WrenchFacts, e.Revision = b.wrenchFacts(e.Wrench), nil
	if err := b.tellJob(one); err != nil {
		return taken{}, err
	}
	return takenAs(one.take(e))
}

// takenAs returns the answer to the sender of an entry.
func takenAs(a record.Answer, err error) (taken, error) {
	switch {
	case err != nil:
		return taken{}, err
	case a.Refusal != nil:
		return taken{}, refused{*a.Refusal}
	}
	return taken{Version: a.Version, Head: a.Head}, nil
}

// readEntry reads an entry. If it is no JSON the answer gives the place of the
// error.
func (b *Bench) readEntry(w http.ResponseWriter, r *http.Request) (run.Entry, error) {
	text, err := io.ReadAll(http.MaxBytesReader(w, r.Body, b.Limits.Body))
	if err != nil {
		return run.Entry{}, bodyUnread(err)
	}
	var fields map[string]json.RawMessage
	if err := readJSON(text, &fields); err != nil {
		return run.Entry{}, err
	}
	e, refusal := run.ReadEntry(text)
	if refusal != nil {
		return e, refused{*refusal}
	}
	return e, nil
}
