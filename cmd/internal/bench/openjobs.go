package bench

import (
	"encoding/json"
	"net/http"
	"slices"
	"sync"

	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/record"
	"drawdown/geometry/finding"
	"drawdown/render/words"
	"drawdown/sequence/run"
	"drawdown/sequence/run/teardown"
)

// openJobs holds the jobs that were asked for, each with the state of its
// record. The lock is held while a job is in use.
type openJobs struct {
	sync.Mutex
	all map[string]*openJob
}

// openJob is a job in the state of its record.
type openJob struct {
	started record.Started // with the files of the last adopted revision
	work    teardown.Work
	state   *teardown.State
	runs    []record.Subject // in the order of their start

	newer   []run.Difference // in the shop's files as last looked at
	newerAt uint64           // the stamp of the folder then; 0: never
}

// forget makes a job be read again, after its record has changed.
func (o *openJobs) forget(id string) {
	o.Lock()
	defer o.Unlock()
	delete(o.all, id)
}

// job returns a job, from its record if it is not in memory. The caller holds
// the lock.
func (b *Bench) job(id string) (*openJob, error) {
	if one, open := b.jobs.all[id]; open {
		return one, nil
	}
	one := &openJob{}
	var err error
	if one.started, err = b.store.Job(id); err != nil {
		return nil, err
	}
	if err := json.Unmarshal(one.started.Frozen, &one.work); err != nil {
		return nil, err
	}
	list, err := b.store.Entries(id, 0)
	if err != nil {
		return nil, err
	}
	one.state = one.work.Replay(entriesOf(list))
	if adopted := one.state.Adopted(); adopted != nil {
		one.started.Files = adopted.Revision.Files
	}
	if one.runs, err = b.store.Runs(record.Filter{Job: id, Most: mostLines}); err != nil {
		return nil, err
	}
	slices.Reverse(one.runs)
	if len(b.jobs.all) >= mostOpen {
		clear(b.jobs.all)
	}
	b.jobs.all[id] = one
	return one, nil
}

func entriesOf(list []record.Kept) []run.Entry {
	entries := make([]run.Entry, len(list))
	for i, e := range list {
		entries[i] = e.Entry
	}
	return entries
}

// takeOnJob adds an entry to a job, if the rules allow it.
func (b *Bench) takeOnJob(id string, e run.Entry, c *words.Catalogue) (taken, error) {
	e.Time = b.now()
	e.WrenchFacts, e.Revision = b.wrenchFacts(e.Wrench), nil
	b.jobs.Lock()
	defer b.jobs.Unlock()
	one, err := b.job(id)
	if err != nil {
		return taken{}, err
	}
	facts, _, err := b.runsOf(one)
	if err != nil {
		return taken{}, err
	}
	var points []teardown.Point
	if e.Act == run.Accept || e.Act == run.Close {
		v, err := b.seenIn(one)
		if err != nil {
			return taken{}, err
		}
		points = v.Points
	}
	if e.Act == run.Adopt {
		if e.Revision, err = b.newer(one, c); err != nil {
			return taken{}, err
		}
	}
	answer, err := takenAs(b.store.Append(id, e, func(before record.Before) (*run.Refusal, error) {
		if err := one.catchUp(before); err != nil {
			return nil, err
		}
		return one.state.Take(e, facts, points...), nil
	}))
	if err != nil || e.Act == run.Adopt {
		delete(b.jobs.all, id) // what was applied may not be on the disk
	}
	return answer, err
}

// catchUp brings the state up to date with the record.
func (one *openJob) catchUp(before record.Before) error {
	if one.state.Version() == before.Version {
		return nil
	}
	list, err := before.Entries()
	if err == nil {
		one.state = one.work.Replay(entriesOf(list))
	}
	return err
}

// newer returns the present changes in the file of a job, and stores them.
func (b *Bench) newer(one *openJob, c *words.Catalogue) (*run.Revision, error) {
	differences, made, err := b.differences(one)
	if err != nil || len(differences) == 0 {
		return nil, err
	}
	if err := checkSound(made, one.started.Of, c); err != nil {
		return nil, err
	}
	sums, err := b.store.PutFiles(made.Files)
	return &run.Revision{Differences: differences, Files: sums}, err
}

// differences compares the present file of a job with the one that it uses.
func (b *Bench) differences(one *openJob) ([]run.Difference, job.Frozen, error) {
	made, err := b.shop.freeze(one.started.Of)
	if err != nil {
		return nil, made, err
	}
	before, err := b.thawed(one.started.Of, one.started.Files)
	return before.Differences(made), made, err
}

// newerThan lists the present changes in the files of a job; none if the file is
// gone. The files are only planned again when something in the folder has changed.
func (b *Bench) newerThan(id string) []run.Difference {
	b.jobs.Lock()
	defer b.jobs.Unlock()
	one, err := b.job(id)
	if err != nil {
		return nil
	}
	stamp := b.shop.stamped() // taken first: a change after it is seen the next time
	if one.newerAt == stamp {
		return one.newer
	}
	differences, _, err := b.differences(one)
	if err != nil {
		return nil
	}
	one.newer, one.newerAt = differences, stamp
	return differences
}

// newerFor lists what a newer file changes in the work of a run: one that its job has
// not adopted, or adopted only after the run was started.
func (b *Bench) newerFor(one *openRun) []run.Difference {
	if one.work.Job == "" {
		return nil
	}
	other := run.ChangedLoosen
	if one.work.Direction == run.Loosen {
		other = run.ChangedTighten
	}
	all := slices.Concat(b.adoptedSince(one), b.newerThan(one.work.Job))
	return slices.DeleteFunc(all, func(d run.Difference) bool { return d.Joint != one.work.Of || d.What == other })
}

func (b *Bench) adoptedSince(one *openRun) []run.Difference {
	b.jobs.Lock()
	defer b.jobs.Unlock()
	of, err := b.job(one.work.Job)
	if err != nil {
		return nil
	}
	return of.state.AdoptedSince(one.of.Started)
}

// runsOf returns the runs of a job, and the state of each.
func (b *Bench) runsOf(one *openJob) ([]teardown.RunFact, []*openRun, error) {
	var facts []teardown.RunFact
	var runs []*openRun
	for _, of := range one.runs {
		open, err := b.open.find(of.ID, b.now())
		if err != nil {
			return nil, nil, err
		}
		facts = append(facts, teardown.RunFact{Run: of.ID, Of: of.Of, Direction: of.Work, Again: of.Again, Status: open.view(b.now()).Status})
		runs = append(runs, open)
	}
	return facts, runs, nil
}

// tellJob passes to a tightening run what its job knows about the parts to have
// ready: those condemned in the joint's other runs, and those recorded as
// ready.
func (b *Bench) tellJob(one *openRun) error {
	if one.work.Job == "" || one.work.Direction != run.Tighten {
		return nil
	}
	b.jobs.Lock()
	defer b.jobs.Unlock()
	of, err := b.job(one.work.Job)
	if err != nil {
		return err
	}
	var others []*openRun
	for _, other := range of.runs {
		if other.Of != one.work.Of || other.ID == one.id {
			continue
		}
		open, err := b.open.find(other.ID, b.now())
		if err != nil {
			return err
		}
		others = append(others, open)
	}
	one.inJob(b.factsFor(one, of, others))
	return nil
}

// factsFor returns what a job knows for one of its runs.
func (b *Bench) factsFor(one *openRun, of *openJob, runs []*openRun) run.JobFacts {
	others := slices.DeleteFunc(slices.Clone(runs), func(r *openRun) bool { return r.id == one.id })
	facts := run.FactsOf(b.viewsOf(one.work.Of, others))
	facts.Measured = append(facts.Measured, of.state.MeasuredOn(one.work.Of)...)
	facts.Ready = of.state.ReadyFor(one.work.Of)
	facts.Out = of.state.OutOfJoint(one.work.Of)
	return facts
}

// viewsOf shows the runs of a joint.
func (b *Bench) viewsOf(of string, runs []*openRun) []run.View {
	var all []run.View
	for _, other := range runs {
		if other.work.Of == of {
			all = append(all, other.view(b.now()))
		}
	}
	return all
}

// openJob refuses a closed job.
func (b *Bench) openJob(id string) (record.Started, error) {
	b.jobs.Lock()
	defer b.jobs.Unlock()
	one, err := b.job(id)
	if err != nil {
		return record.Started{}, err
	}
	if one.state.Closed() {
		return one.started, wrong(http.StatusConflict, JobEnded, finding.Values{"job": id})
	}
	return one.started, nil
}
