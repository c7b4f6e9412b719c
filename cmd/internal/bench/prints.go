package bench

import (
	"cmp"
	"crypto/rand"
	"net/http"
	"slices"
	"strings"

	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/record"
	"drawdown/geometry/finding"
	"drawdown/render"
	"drawdown/render/sheet"
	"drawdown/render/sheet/card"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
	"drawdown/sequence/run/teardown"
)

// sheets lists what can be printed of a joint, with the functions of the
// command line.
var sheets = []printed{
	{"card", func(p plan.Plan, _ []run.Entry, ask job.Printing) ([]render.File, []string, error) {
		return job.Card(p, card.BothSides, ask)
	}},
	{"tray", func(p plan.Plan, _ []run.Entry, ask job.Printing) ([]render.File, []string, error) {
		return job.Tray(p, false, false, ask)
	}},
	{"condition", job.ConditionWith},
}

type printed struct {
	name string
	draw func(p plan.Plan, found []run.Entry, ask job.Printing) ([]render.File, []string, error)
}

// nobodyNamed replaces the name of the person who printed a sheet, if the page
// does not have it.
const nobodyNamed = "?"

// usualDPI has no effect on PDF.
const usualDPI = 300

// getPatternPrint sends a sheet of a pattern in its present state, and records
// the print.
func (b *Bench) getPatternPrint(w http.ResponseWriter, r *http.Request) error {
	made, err := b.shop.freeze(r.PathValue("name"))
	if err != nil {
		return err
	}
	if !made.Sound() || made.Kind == job.MachineFile {
		return wrong(http.StatusUnprocessableEntity, NotSound, finding.Values{"name": made.Name, "why": firstProblem(b.reader(r), made.Problems)})
	}
	return b.print(w, r, made.Plan, nil, func(e run.Entry) error {
		e.Note = made.Name
		_, err := b.store.Append(record.ShopID, e, nil)
		return err
	})
}

// getRunPrint sends a sheet of what a run was started from, and records the
// print.
func (b *Bench) getRunPrint(w http.ResponseWriter, r *http.Request) error {
	one, err := b.open.find(r.PathValue("id"), b.now())
	if err != nil {
		return err
	}
	made, err := b.frozenOf(one.id)
	if err != nil {
		return err
	}
	found, err := b.foundOn(one)
	if err != nil {
		return err
	}
	return b.print(w, r, made.Plan, found, func(e run.Entry) error {
		if one.view(b.now()).Status != run.Open {
			return nil // a sealed record takes no prints; the sheet states which state it shows
		}
		_, err := b.takeOn(one, e)
		return err
	})
}

// foundOn is what was found on the joint of a run: in the run, or anywhere in its job.
func (b *Bench) foundOn(one *openRun) ([]run.Entry, error) {
	if one.work.Job == "" {
		var v teardown.View
		v.AddRun(one.id, one.view(b.now()))
		return v.FindingsOf(one.work.Of), nil
	}
	b.jobs.Lock()
	defer b.jobs.Unlock()
	of, err := b.job(one.work.Job)
	if err != nil {
		return nil, err
	}
	v, err := b.seenIn(of)
	return v.FindingsOf(one.work.Of), err
}

// seenIn is a job with what its runs saw. Whoever calls holds the lock.
func (b *Bench) seenIn(one *openJob) (teardown.View, error) {
	facts, runs, err := b.runsOf(one)
	if err != nil {
		return teardown.View{}, err
	}
	v := one.state.View(facts, b.needsOf(one, runs))
	for _, of := range runs {
		v.AddRun(of.id, of.view(b.now()))
	}
	one.state.AddPoints(&v)
	return v, nil
}

// print draws a sheet and notes it before it leaves the house.
func (b *Bench) print(w http.ResponseWriter, r *http.Request, p plan.Plan, found []run.Entry, note func(run.Entry) error) error {
	name, isPDF := strings.CutSuffix(r.PathValue("sheet"), ".pdf")
	at := slices.IndexFunc(sheets, func(s printed) bool { return s.name == name })
	if at < 0 || !isPDF {
		return wrong(http.StatusNotFound, NoRoute, finding.Values{"path": cut(r.URL.Path)})
	}
	if r.Header.Get("Sec-Fetch-Site") == "cross-site" {
		return wrong(http.StatusForbidden, OtherSite, nil)
	}
	ask, err := b.printing(r)
	if err != nil {
		return err
	}
	files, _, err := sheets[at].draw(p, found, ask)
	if err != nil {
		return failure{http.StatusUnprocessableEntity, err}
	}
	if r.Method == http.MethodHead {
		return nil // nothing was printed
	}
	who := cmp.Or(firstRunes(strings.TrimSpace(r.URL.Query().Get("who")), longestWho), nobodyNamed)
	if err := note(run.Entry{ID: rand.Text(), Act: run.Printed, Who: who, Time: b.now(), Sheet: name, Fingerprint: p.Fingerprint}); err != nil {
		return err
	}
	download(w, "inline", files[0].Name, "application/pdf")
	w.Write(files[0].Data) // ignore the error: a reader who has gone needs no answer
	return nil
}

// printing returns the form of a sheet: PDF, in the reader's language, on the
// requested paper.
func (b *Bench) printing(r *http.Request) (job.Printing, error) {
	paper, err := sheet.FindPaper(cmp.Or(r.URL.Query().Get("paper"), "a4"))
	if err != nil {
		return job.Printing{}, wrong(http.StatusBadRequest, NoPaper, finding.Values{"written": cut(r.URL.Query().Get("paper")), "allowed": sheet.PaperNames()})
	}
	return job.Printing{Request: sheet.Request{Words: b.reader(r), Paper: paper}, Formats: []render.Format{render.PDF}, DPI: usualDPI}, nil
}
