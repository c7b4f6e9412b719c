package bench

import (
	"encoding/json"
	"net/http"
	"strings"
	"time"

	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/record"
	"drawdown/geometry/finding"
	"drawdown/patterns/source"
	"drawdown/render/words"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/run"
)

// newRun is the request for a new run.
type newRun struct {
	Of     string `json:"of"`
	Work   string `json:"work"`
	Job    string `json:"job"`
	Number string `json:"number"` // of the machine
	Order  string `json:"order"`
	Note   string `json:"note"`
	Who    string `json:"who"`
	Again  string `json:"again"` // the run that this one checks
}

// postRun starts a run: of a job's joint with the job's files, otherwise of the
// present file.
func (b *Bench) postRun(w http.ResponseWriter, r *http.Request) error {
	var asked newRun
	if err := b.read(w, r, &asked); err != nil {
		return err
	}
	id, err := b.startRun(asked, b.reader(r))
	if err != nil {
		return err
	}
	started(w, "run", id)
	return nil
}

// started answers with the name of a new run or job, and its address.
func started(w http.ResponseWriter, what, id string) {
	w.Header().Set("Location", "/api/"+what+"s/"+id)
	answer(w, http.StatusCreated, map[string]string{what: id})
}

// checkSound refuses a file in which the check finds errors.
func checkSound(made job.Frozen, name string, c *words.Catalogue) error {
	if made.Sound() {
		return nil
	}
	return wrong(http.StatusUnprocessableEntity, NotSound, finding.Values{"name": name, "why": firstProblem(c, made.Problems)})
}

func (b *Bench) startRun(asked newRun, c *words.Catalogue) (id string, err error) {
	direction, check, err := b.workOf(asked)
	if err != nil {
		return "", err
	}
	var made job.Frozen
	if asked.Job != "" {
		made, err = b.jointOfJob(asked.Job, asked.Of)
	} else {
		made, err = b.shop.freeze(asked.Of)
	}
	if err != nil {
		return "", err
	}
	if made.Kind == job.MachineFile {
		return "", wrong(http.StatusUnprocessableEntity, IsMachine, finding.Values{"name": asked.Of})
	}
	if err := checkSound(made, asked.Of, c); err != nil {
		return "", err
	}
	if err := overhaul.CheckAgain(made.Plan); check && err != nil {
		return "", failure{http.StatusUnprocessableEntity, err}
	}
	work := run.New(made.Plan, direction, made.ToAccept())
	work.Of, work.Job, work.Again = made.Name, asked.Job, check
	if work.Early, err = b.startedEarly(asked, made.Name, direction); err != nil {
		return "", err
	}
	frozen, err := json.Marshal(work)
	if err != nil {
		return "", err
	}
	if asked.Job != "" {
		defer b.jobs.forget(asked.Job)
	}
	return b.store.AddRun(record.NewRun{
		Job: asked.Job, Again: asked.Again, Of: made.Name, Title: made.Plan.Title, Work: direction,
		Number: asked.Number, Order: asked.Order, Note: asked.Note, Who: asked.Who,
		Time: b.now(), Program: b.Program, Frozen: frozen, Files: made.Files,
	})
}

// startedEarly names what of a job should have been done before a run of one of its
// joints; nil where that is done, and for a later check.
func (b *Bench) startedEarly(asked newRun, of string, d run.Direction) (*run.Early, error) {
	if asked.Job == "" || asked.Again != "" || asked.Work == again {
		return nil, nil
	}
	b.jobs.Lock()
	defer b.jobs.Unlock()
	one, err := b.job(asked.Job)
	if err != nil {
		return nil, err
	}
	facts, _, err := b.runsOf(one)
	if err != nil {
		return nil, err
	}
	before := one.state.BeforeJoint(of, d, facts)
	if before == nil {
		return nil, nil
	}
	return &run.Early{Before: before.What(), Reason: asked.Note, At: b.now()}, nil
}

// again is the work of a later check: the joint is tightened once more.
const again = "again"

// workOf returns the direction of a run, and whether it is a later check.
func (b *Bench) workOf(asked newRun) (d run.Direction, check bool, err error) {
	d, check = run.Direction(asked.Work), asked.Again != ""
	if asked.Work == again {
		d, check = run.Tighten, true
	}
	if d != run.Loosen && d != run.Tighten {
		allowed := []string{string(run.Loosen), string(run.Tighten), again}
		return d, check, wrong(http.StatusBadRequest, NoDirection, finding.Values{"written": cut(asked.Work), "allowed": allowed})
	}
	if asked.Again != "" {
		_, err = b.store.Run(asked.Again)
	}
	return d, check, err
}

// thawed reads again what a run or a job was started from.
func (b *Bench) thawed(name string, files map[string]string) (job.Frozen, error) {
	kept := source.Kept{}
	for file, sum := range files {
		data, err := b.store.File(sum)
		if err != nil {
			return job.Frozen{}, err
		}
		kept[file] = data
	}
	return job.Thaw(kept, name)
}

// runOut is a run as sent by GET: the run, its state, and the server's texts.
type runOut struct {
	Run      string    `json:"run"`
	Number   string    `json:"number,omitempty"`
	Order    string    `json:"order,omitempty"`
	Note     string    `json:"note,omitempty"`
	Who      string    `json:"who,omitempty"`
	Again    string    `json:"again,omitempty"` // the run that this one checks
	Started  time.Time `json:"started"`
	Time     time.Time `json:"time"` // the server's clock, for waits
	ToAccept []worded  `json:"to_accept"`
	Flags    []flagged `json:"flags,omitempty"`
	run.View
}

// worded is a finding in the reader's language.
type worded struct {
	Code finding.Code `json:"code"`
	Text string       `json:"text"`
}

// flagged is a recorded value that needs attention.
type flagged struct {
	worded
	run.Mark
	Step int `json:"step,omitempty"`
}

func (b *Bench) getRun(w http.ResponseWriter, r *http.Request) error {
	id, ending, exported := strings.Cut(r.PathValue("file"), ".")
	if exported {
		return b.exportRun(w, r, id, ending)
	}
	one, err := b.open.find(id, b.now())
	if err != nil {
		return err
	}
	if err := b.tellJob(one); err != nil {
		return err
	}
	answer(w, http.StatusOK, b.runOut(one, b.reader(r)))
	return nil
}

func (b *Bench) runOut(one *openRun, c *words.Catalogue) runOut {
	now := b.now()
	v := one.view(now)
	out := runOut{
		Run: one.id, Number: one.of.Number, Order: one.of.Order, Note: one.of.Note, Who: one.of.Who, Again: one.of.Again,
		Started: one.of.Started, Time: now, ToAccept: []worded{}, View: v,
	}
	for _, f := range v.ToAccept {
		out.ToAccept = append(out.ToAccept, worded{f.Code, c.Say(f)})
	}
	for _, f := range v.Flags {
		out.Flags = append(out.Flags, flagged{worded{f.Finding.Code, c.Say(f.Finding)}, f.Mark, f.Step})
	}
	return out
}

// getRuns lists runs: by machine, joint, person, wrench, job, from, to and open.
func (b *Bench) getRuns(w http.ResponseWriter, r *http.Request) error {
	return search(w, r, b.store.Runs)
}

// search lists the records that match the filter of the request.
func search(w http.ResponseWriter, r *http.Request, from func(record.Filter) ([]record.Subject, error)) error {
	f, err := filterOf(r)
	if err != nil {
		return err
	}
	list, err := from(f)
	if err != nil {
		return err
	}
	answer(w, http.StatusOK, listed(list))
	return nil
}

// listed turns a nil list into an empty one, for JSON.
func listed[T any](list []T) []T { return append([]T{}, list...) }

// filterOf reads the filter of a list.
func filterOf(r *http.Request) (record.Filter, error) {
	q := r.URL.Query()
	text := func(key string) string { return firstRunes(strings.TrimSpace(q.Get(key)), longestName) }
	f := record.Filter{
		Machine: text("machine"), Joint: text("joint"), Person: text("person"), Wrench: text("wrench"), Job: text("job"), Before: text("before"),
		Open: q.Get("open") != "", Most: mostLines,
	}
	var err error
	if f.From, err = day(text("from")); err != nil {
		return f, err
	}
	to, err := day(text("to"))
	f.To = record.EndOfDay(to)
	return f, err
}

// day reads a date in the shop's time zone.
func day(text string) (time.Time, error) {
	if text == "" {
		return time.Time{}, nil
	}
	t, err := time.ParseInLocation(time.DateOnly, text, time.Local)
	if err != nil {
		return t, wrong(http.StatusBadRequest, NoDate, finding.Values{"written": text})
	}
	return t, nil
}
