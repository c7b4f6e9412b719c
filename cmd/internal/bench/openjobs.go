package bench

import (
	"encoding/json"
	"net/http"
	"slices"

	"drawdown/cmd/internal/record"
	"drawdown/geometry/finding"
	"drawdown/sequence/run"
	"drawdown/sequence/run/teardown"
)

// jobState makes the state of a job of its record.
func (b *Bench) jobState(id string) (record.Started, *teardown.State, teardown.Work, error) {
	var work teardown.Work
	started, err := b.store.Job(id)
	if err != nil {
		return started, nil, work, err
	}
	if err := json.Unmarshal(started.Frozen, &work); err != nil {
		return started, nil, work, err
	}
	list, err := b.store.Entries(id, 0)
	return started, work.Replay(entriesOf(list)), work, err
}

func entriesOf(list []record.Kept) []run.Entry {
	entries := make([]run.Entry, len(list))
	for i, e := range list {
		entries[i] = e.Entry
	}
	return entries
}

// takeOnJob puts an entry to a job, if the rules allow it.
func (b *Bench) takeOnJob(id string, e run.Entry) (taken, error) {
	e.Time = b.now()
	e.WrenchFacts = b.wrenchFacts(e.Wrench)
	b.jobs.Lock()
	defer b.jobs.Unlock()
	_, state, _, err := b.jobState(id)
	if err != nil {
		return taken{}, err
	}
	facts, _, err := b.runsOfJob(id)
	if err != nil {
		return taken{}, err
	}
	return takenAs(b.store.Append(id, e, func(int) *run.Refusal { return state.Take(e, facts) }))
}

// runsOfJob gives the runs of a job in the order in which they were started, and
// how each stands.
func (b *Bench) runsOfJob(id string) ([]teardown.RunFact, []*openRun, error) {
	list, err := b.store.Runs(record.Filter{Job: id, Most: mostLines})
	if err != nil {
		return nil, nil, err
	}
	slices.Reverse(list)
	var facts []teardown.RunFact
	var runs []*openRun
	for _, of := range list {
		one, err := b.open.find(of.ID, b.now())
		if err != nil {
			return nil, nil, err
		}
		facts = append(facts, teardown.RunFact{Run: of.ID, Of: of.Of, Direction: of.Work, Again: of.Again, Status: one.view(b.now()).Status})
		runs = append(runs, one)
	}
	return facts, runs, nil
}

// tellJob tells a tightening run what its job knows of what must be ready: the
// condemned of the joint's other runs, and what was said to be ready.
func (b *Bench) tellJob(one *openRun) error {
	if one.work.Job == "" || one.work.Direction != run.Tighten {
		return nil
	}
	_, state, _, err := b.jobState(one.work.Job)
	if err != nil {
		return err
	}
	_, runs, err := b.runsOfJob(one.work.Job)
	if err != nil {
		return err
	}
	one.inJob(run.JobFacts{Condemned: b.condemned(one.work.Of, one, runs), Ready: state.Ready()})
	return nil
}

// condemned lists what the runs of a joint condemned, but for one of them.
func (b *Bench) condemned(of string, but *openRun, runs []*openRun) []run.Condemned {
	var all []run.Condemned
	for _, other := range runs {
		if other == but || other.work.Of != of {
			continue
		}
		if v := other.view(b.now()); v.Status != run.Voided {
			all = append(all, v.Condemned...)
		}
	}
	return all
}

// openJob refuses a job that is closed.
func (b *Bench) openJob(id string) (record.Started, error) {
	started, state, _, err := b.jobState(id)
	if err == nil && state.Closed() {
		err = wrong(http.StatusConflict, JobEnded, finding.Values{"job": id})
	}
	return started, err
}
