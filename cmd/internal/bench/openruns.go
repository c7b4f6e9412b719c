package bench

import (
	"encoding/json"
	"sync"
	"sync/atomic"
	"time"

	"drawdown/cmd/internal/record"
	"drawdown/render/page"
	"drawdown/sequence/run"
)

// mostOpen is how many runs stay in memory. A run that is not used gives way to
// another; its record is read again when needed.
const mostOpen = 200

// openRuns holds the runs in use, each with the state of its record.
type openRuns struct {
	store *record.Store

	mu  sync.Mutex
	all map[string]*openRun
}

func newOpenRuns(store *record.Store) *openRuns {
	return &openRuns{store: store, all: map[string]*openRun{}}
}

// openRun is the state of one run. Entries are judged by a state that may be
// ahead of the disk; what is shown is on the disk.
type openRun struct {
	store *record.Store
	id    string
	of    record.Subject
	work  run.Work
	used  time.Time

	readers atomic.Int32 // of its events, which wait on this run

	mu      sync.Mutex
	state   *run.State
	losses  int                   // of the store when the state was read for a judge
	job     *run.JobFacts         // what its job knows; nil: nothing
	kept    []run.Entry           // those on the disk, as far as known here
	changed chan struct{}         // closed, and made anew, when kept or state changes
	drawn   map[string]page.Joint // by language
}

// find returns a run, from its record if it is not in memory.
func (o *openRuns) find(id string, now time.Time) (*openRun, error) {
	o.mu.Lock()
	defer o.mu.Unlock()
	if one, open := o.all[id]; open {
		one.used = now
		return one, nil
	}
	started, err := o.store.Run(id)
	if err != nil {
		return nil, err
	}
	one := &openRun{store: o.store, id: id, of: started.Subject, used: now, changed: make(chan struct{})}
	if err := json.Unmarshal(started.Frozen, &one.work); err != nil {
		return nil, err
	}
	one.replay(nil)
	if err := one.read(); err != nil {
		return nil, err
	}
	o.makeRoom()
	o.all[id] = one
	return one, nil
}

// makeRoom drops the run that has been unused longest, among those whose events
// nobody reads.
func (o *openRuns) makeRoom() {
	for len(o.all) >= mostOpen {
		oldest := ""
		for id, one := range o.all {
			if one.readers.Load() == 0 && (oldest == "" || one.used.Before(o.all[oldest].used)) {
				oldest = id
			}
		}
		if oldest == "" {
			return
		}
		delete(o.all, oldest)
	}
}

// read reads new entries from the disk, written by this process or by another.
// The caller holds the lock, or has sole access.
func (one *openRun) read() error {
	list, err := one.store.Entries(one.id, len(one.kept))
	if err != nil {
		return err
	}
	one.keep(entriesOf(list)...)
	return nil
}

// keep records entries that are on the disk. The caller holds the lock, or has
// sole access.
func (one *openRun) keep(entries ...run.Entry) {
	one.kept = append(one.kept, entries...)
	if one.state.Version() < len(one.kept) {
		one.replay(one.kept)
	}
}

// replay sets the state to that after the entries. The caller holds the lock,
// or has sole access.
func (one *openRun) replay(entries []run.Entry) {
	one.state = one.work.Replay(entries)
	if one.job != nil {
		one.state.InJob(*one.job)
	}
}

// inJob passes to the state what its job knows.
func (one *openRun) inJob(facts run.JobFacts) {
	one.mu.Lock()
	defer one.mu.Unlock()
	one.job = &facts
	one.state.InJob(facts)
}

// tell wakes those who wait for a change. The caller holds the lock.
func (one *openRun) tell() {
	close(one.changed)
	one.changed = make(chan struct{})
}

// take adds an entry to the record, if the rules allow it, and returns when it
// is on the disk.
func (one *openRun) take(e run.Entry) (record.Answer, error) {
	applied := false
	a, err := one.store.Append(one.id, e, func(before record.Before) (*run.Refusal, error) {
		refusal, err := one.judge(before, e)
		applied = refusal == nil && err == nil
		return refusal, err
	})
	one.mu.Lock()
	defer one.mu.Unlock()
	switch {
	case err != nil && applied:
		one.replay(one.kept)
	case err != nil || a.Version <= len(one.kept):
		return a, err
	case a.Refusal == nil && !a.Again && a.Version == len(one.kept)+1:
		one.keep(e)
	case one.read() != nil: // answer all the same; the run is read later
		one.replay(one.kept)
	}
	one.tell()
	return a, err
}

// judge judges an entry by the state of the record, before anything else is
// written.
func (one *openRun) judge(before record.Before, e run.Entry) (*run.Refusal, error) {
	one.mu.Lock()
	defer one.mu.Unlock()
	if one.state.Version() != before.Version || one.losses != before.Losses {
		list, err := before.Entries()
		if err != nil {
			return nil, err
		}
		one.replay(entriesOf(list))
		one.losses = before.Losses
	}
	return one.state.Take(e), nil
}

// view returns the present state of the run, once all of it is on the disk.
func (one *openRun) view(now time.Time) run.View {
	one.mu.Lock()
	defer one.mu.Unlock()
	for {
		state, v := one.state, one.state.At(now)
		for one.state == state && v.Version > len(one.kept) {
			one.wait()
		}
		if one.state == state {
			return v
		}
	}
}

// picture returns the picture of the joint in a language, if it is already
// drawn.
func (one *openRun) picture(language string) (page.Joint, bool) {
	one.mu.Lock()
	defer one.mu.Unlock()
	made, there := one.drawn[language]
	return made, there
}

func (one *openRun) keepPicture(language string, made page.Joint) {
	one.mu.Lock()
	defer one.mu.Unlock()
	if one.drawn == nil {
		one.drawn = map[string]page.Joint{}
	}
	one.drawn[language] = made
}

// wait releases the lock until something changes.
func (one *openRun) wait() {
	changed := one.changed
	one.mu.Unlock()
	<-changed
	one.mu.Lock()
}

// since returns the entries on the disk, and a channel that is closed when
// there are more.
func (one *openRun) since() (kept []run.Entry, changed <-chan struct{}) {
	one.mu.Lock()
	defer one.mu.Unlock()
	return one.kept, one.changed
}
