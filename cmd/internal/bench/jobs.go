package bench

import (
	"encoding/json"
	"net/http"
	"slices"
	"strings"
	"time"

	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/record"
	"drawdown/geometry/finding"
	"drawdown/render/words"
	"drawdown/sequence/run"
	"drawdown/sequence/run/teardown"
)

// newJob is the request for a new job.
type newJob struct {
	Of     string `json:"of"`
	Number string `json:"number"` // of the machine
	Order  string `json:"order"`
	Note   string `json:"note"`
	Who    string `json:"who"`
}

// postJob starts a job on a machine, or on one joint, with the present files.
func (b *Bench) postJob(w http.ResponseWriter, r *http.Request) error {
	var asked newJob
	if err := b.read(w, r, &asked); err != nil {
		return err
	}
	id, err := b.startJob(asked, b.reader(r))
	if err != nil {
		return err
	}
	started(w, "job", id)
	return nil
}

func (b *Bench) startJob(asked newJob, c *words.Catalogue) (id string, err error) {
	made, err := b.shop.freeze(asked.Of)
	if err == nil {
		err = checkSound(made, asked.Of, c)
	}
	if err != nil {
		return "", err
	}
	work := jobWork(made)
	frozen, err := json.Marshal(work)
	if err != nil {
		return "", err
	}
	return b.store.AddJob(record.NewJob{
		Of: made.Name, Title: work.Title, Number: asked.Number, Order: asked.Order, Note: asked.Note, Who: asked.Who,
		Time: b.now(), Program: b.Program, Frozen: frozen, Files: made.Files,
	})
}

func jobWork(made job.Frozen) teardown.Work {
	if made.Kind == job.MachineFile {
		return teardown.OfMachine(made.Name, made.Overhaul, made.Warnings())
	}
	return teardown.OfJoint(made.Name, made.Plan, made.Warnings())
}

// jointOfJob reads a joint from the files of the job.
func (b *Bench) jointOfJob(id, of string) (job.Frozen, error) {
	started, err := b.openJob(id)
	if err != nil {
		return job.Frozen{}, err
	}
	made, err := b.thawed(started.Of, started.Files)
	if err != nil {
		return made, err
	}
	joint, names := made.Joint(of)
	if joint == nil {
		return made, wrong(http.StatusUnprocessableEntity, NotInJob, finding.Values{"of": cut(of), "job": id, "allowed": names})
	}
	return *joint, nil
}

// jobOut is a job as sent by GET.
type jobOut struct {
	Job      string    `json:"job"`
	Number   string    `json:"number,omitempty"`
	Order    string    `json:"order,omitempty"`
	Note     string    `json:"note,omitempty"`
	Who      string    `json:"who,omitempty"`
	Started  time.Time `json:"started"`
	Warnings []worded  `json:"warnings"`
	Points   []point   `json:"to_accept"` // what is open or outside its limits, before the job is closed
	teardown.View
}

// point is something that is open on a job, in the reader's language.
type point struct {
	worded
	teardown.Point
}

func (b *Bench) getJob(w http.ResponseWriter, r *http.Request) error {
	id, ending, exported := strings.Cut(r.PathValue("file"), ".")
	if form, list := strings.CutPrefix(ending, "shopping."); list {
		return b.exportShopping(w, r, id, form)
	} else if ending == "machine-shop.pdf" {
		return b.exportMachineShop(w, r, id)
	} else if exported {
		return b.exportJob(w, r, id, ending)
	}
	out, err := b.jobOut(id, b.reader(r))
	if err != nil {
		return err
	}
	answer(w, http.StatusOK, out)
	return nil
}

func (b *Bench) jobOut(id string, c *words.Catalogue) (jobOut, error) {
	b.jobs.Lock()
	defer b.jobs.Unlock()
	one, err := b.job(id)
	if err != nil {
		return jobOut{}, err
	}
	view, err := b.seenIn(one)
	if err != nil {
		return jobOut{}, err
	}
	started := one.started
	out := jobOut{
		Job: id, Number: started.Number, Order: started.Order, Note: started.Note, Who: started.Who, Started: started.Started,
		Warnings: []worded{}, Points: []point{}, View: view,
	}
	for _, f := range one.work.Warnings {
		out.Warnings = append(out.Warnings, worded{f.Code, c.Say(f)})
	}
	for _, p := range view.Points {
		out.Points = append(out.Points, point{worded{p.Finding.Code, c.Say(p.Finding)}, p})
	}
	return out, nil
}

// needsOf lists what must be ready for each joint: according to its tightening
// run, if there is one.
func (b *Bench) needsOf(one *openJob, runs []*openRun) []teardown.Need {
	var all []teardown.Need
	for _, j := range one.work.Joints {
		if tightening := b.tighteningOf(j.Of, runs); tightening != nil {
			tightening.inJob(b.factsFor(tightening, one, runs))
			for _, n := range tightening.view(b.now()).Needs {
				all = append(all, teardown.Need{Joint: j.Of, Need: n})
			}
			continue
		}
		all = append(all, one.work.JointNeeds(j.Of, run.FactsOf(b.viewsOf(j.Of, runs)).Condemned, one.state.ReadyFor(j.Of))...)
	}
	return all
}

// tighteningOf returns the latest valid tightening run of a joint, or nil.
func (b *Bench) tighteningOf(of string, runs []*openRun) *openRun {
	for _, r := range slices.Backward(runs) {
		if r.work.Of == of && r.work.Direction == run.Tighten && r.of.Again == "" && r.view(b.now()).Status != run.Voided {
			return r
		}
	}
	return nil
}

// getJobs lists jobs, with the same filters as runs.
func (b *Bench) getJobs(w http.ResponseWriter, r *http.Request) error {
	return search(w, r, b.store.Jobs)
}

// postJobEntry receives one entry for a job.
func (b *Bench) postJobEntry(w http.ResponseWriter, r *http.Request) error {
	e, err := b.readEntry(w, r)
	if err != nil {
		return err
	}
	out, err := b.takeOnJob(r.PathValue("id"), e, b.reader(r))
	if err != nil {
		return err
	}
	answer(w, http.StatusOK, out)
	return nil
}
