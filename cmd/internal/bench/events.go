package bench

import (
	"encoding/json"
	"fmt"
	"net/http"
	"strconv"
	"time"

	"drawdown/sequence/run"
)

// event is an entry as sent in the events; its id is the version.
type event struct {
	run.Entry
	Version int `json:"version"`
}

// getEvents sends each entry of a run as it is kept, starting after
// Last-Event-ID. Without that it starts with the next.
func (b *Bench) getEvents(w http.ResponseWriter, r *http.Request) error {
	one, err := b.open.find(r.PathValue("id"), b.now())
	if err != nil {
		return err
	}
	known, _ := one.since()
	last := len(known)
	if asked, err := strconv.Atoi(lastEvent(r)); err == nil && asked >= 0 {
		last = min(asked, last)
	}
	if r.Method == http.MethodHead {
		return nil
	}
	one.readers.Add(1)
	defer one.readers.Add(-1)
	to := http.NewResponseController(w)
	to.SetReadDeadline(time.Time{}) // nothing more is read, and the request lasts as long as the page
	w.Header().Set("Content-Type", "text/event-stream")
	w.WriteHeader(http.StatusOK)
	beat := time.NewTicker(b.Limits.Beat)
	defer beat.Stop()
	for {
		kept, changed := one.since()
		for ; last < len(kept); last++ {
			if sendOne(w, kept[last], last+1) != nil {
				return nil // the answer has begun, so just end it: the reader asks again
			}
		}
		to.SetWriteDeadline(time.Now().Add(b.Limits.AnswerTime))
		if to.Flush() != nil {
			return nil
		}
		select {
		case <-changed:
		case <-beat.C:
			if _, err := fmt.Fprint(w, ": here\n\n"); err != nil || !b.stillIn(r) {
				return nil
			}
		case <-r.Context().Done():
			return nil
		case <-b.stopping:
			return nil
		}
	}
}

// lastEvent returns the last event that a browser has: it sends that when it
// reconnects, and a new page has it in its address.
func lastEvent(r *http.Request) string {
	if id := r.Header.Get("Last-Event-ID"); id != "" {
		return id
	}
	return r.URL.Query().Get("after")
}

// stillIn reports whether a reader's session is still valid.
func (b *Bench) stillIn(r *http.Request) bool {
	_, in := b.who(r)
	return in
}

// sendOne writes an entry.
func sendOne(w http.ResponseWriter, e run.Entry, version int) error {
	data, err := json.Marshal(event{e, version})
	if err == nil {
		_, err = fmt.Fprintf(w, "id: %d\nevent: entry\ndata: %s\n\n", version, data)
	}
	return err
}
