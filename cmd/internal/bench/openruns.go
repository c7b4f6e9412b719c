package bench

import (
	"encoding/json"
	"sync"
	"time"

	"drawdown/cmd/internal/record"
	"drawdown/render/page"
	"drawdown/sequence/run"
)

// mostOpen is how many runs stay in memory. A run that is not asked for gives its
// place to another; its record is read again when it is needed.
const mostOpen = 200

// openRuns are the runs that are followed now, each with its state: what its
// record comes to.
type openRuns struct {
	store *record.Store

	mu  sync.Mutex
	all map[string]*openRun
}

func newOpenRuns(store *record.Store) *openRuns {
	return &openRuns{store: store, all: map[string]*openRun{}}
}

// openRun is the state of one run. Entries are judged by a state that may be ahead
// of the disk; what is shown of it is on the disk.
type openRun struct {
	store *record.Store
	id    string
	of    record.Subject
	work  run.Work
	used  time.Time

	mu      sync.Mutex
	state   *run.State
	job     *run.JobFacts         // what its job knows; nil: nothing
	kept    int                   // version that is on the disk
	changed chan struct{}         // closed, and made anew, when kept or state changes
	drawn   map[string]page.Joint // by language
}

// find gives a run, from its record where it is not in memory.
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
	if err := one.load(); err != nil {
		return nil, err
	}
	o.makeRoom()
	o.all[id] = one
	return one, nil
}

// makeRoom lets the run go that was not asked for longest.
func (o *openRuns) makeRoom() {
	for len(o.all) >= mostOpen {
		oldest := ""
		for id, one := range o.all {
			if oldest == "" || one.used.Before(o.all[oldest].used) {
				oldest = id
			}
		}
		delete(o.all, oldest)
	}
}

// load makes the state of what is on the disk. Whoever calls holds the lock, or
// is alone.
func (one *openRun) load() error {
	list, err := one.store.Entries(one.id, 0)
	if err != nil {
		return err
	}
	one.state, one.kept = one.work.Replay(entriesOf(list)), len(list)
	if one.job != nil {
		one.state.InJob(*one.job)
	}
	return nil
}

// inJob tells the state what its job knows.
func (one *openRun) inJob(facts run.JobFacts) {
	one.mu.Lock()
	defer one.mu.Unlock()
	one.job = &facts
	one.state.InJob(facts)
}

// tell wakes who waits for a change. Whoever calls holds the lock.
func (one *openRun) tell() {
	close(one.changed)
	one.changed = make(chan struct{})
}

// take puts an entry to the record, if the rules allow it, and returns when it is
// on the disk.
func (one *openRun) take(e run.Entry) (record.Answer, error) {
	applied := false
	a, err := one.store.Append(one.id, e, func(version int) *run.Refusal {
		one.mu.Lock()
		defer one.mu.Unlock()
		if one.state.Version() != version { // an entry before this one did not reach the disk
			if err := one.load(); err != nil {
				panic(err) // the record tells the sender that nothing was kept
			}
		}
		refusal := one.state.Take(e)
		applied = refusal == nil
		return refusal
	})
	one.mu.Lock()
	defer one.mu.Unlock()
	switch {
	case err != nil && applied:
		if again := one.load(); again != nil {
			return a, again
		}
	case err != nil || a.Refusal != nil || a.Version <= one.kept:
		return a, err
	case one.state.Version() < a.Version: // the state was read anew before this entry was on the disk
		if err := one.load(); err != nil {
			return a, err
		}
	default:
		one.kept = a.Version
	}
	one.tell()
	return a, err
}

// view shows the run as it is now, once all that is in it is on the disk.
func (one *openRun) view(now time.Time) run.View {
	one.mu.Lock()
	defer one.mu.Unlock()
	for {
		state, v := one.state, one.state.At(now)
		for one.state == state && v.Version > one.kept {
			one.wait()
		}
		if one.state == state {
			return v
		}
	}
}

// picture gives the picture of the joint in a language, if it is drawn.
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

// wait gives the lock away until something changes.
func (one *openRun) wait() {
	changed := one.changed
	one.mu.Unlock()
	<-changed
	one.mu.Lock()
}

// since gives what is on the disk, and what is closed when that changes.
func (one *openRun) since() (kept int, changed <-chan struct{}) {
	one.mu.Lock()
	defer one.mu.Unlock()
	return one.kept, one.changed
}
