package bench

import (
	"bytes"
	"errors"
	"net/http"
	"slices"
	"strings"
	"time"

	"drawdown/cmd/internal/bench/gate"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/record"
	"drawdown/geometry/finding"
	"drawdown/render/page"
	"drawdown/render/sheet/lettered"
	"drawdown/sequence/run"
)

// mostRecent is how many records the first page shows.
const mostRecent = 12

// frame fills in the parts common to all pages.
func (b *Bench) frame(r *http.Request) page.Frame {
	f := page.Frame{Words: b.reader(r), Path: r.URL.Path, Now: b.now().Local(), Joined: sessionOf(r).Sort == gate.Tablet}
	if kept, err := r.Cookie(page.SchemeCookie); err == nil && slices.Contains(page.Schemes, page.Scheme(kept.Value)) {
		f.Scheme = page.Scheme(kept.Value)
	}
	return f
}

// show sends a page, once it is complete.
func (b *Bench) show(w http.ResponseWriter, r *http.Request, status int, write func(to *bytes.Buffer) error) error {
	var text bytes.Buffer
	if err := write(&text); err != nil {
		return err
	}
	b.keepLanguage(w, r)
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	w.Write(text.Bytes()) // ignore the error: a reader who has gone needs no answer
	return nil
}

func (b *Bench) homePage(w http.ResponseWriter, r *http.Request) error {
	v := page.HomeView{Frame: b.frame(r), Folder: b.shop.folder}
	open, err := b.store.Runs(record.Filter{Open: true, Most: mostLines})
	if err != nil {
		return err
	}
	recent, err := b.store.Runs(record.Filter{Most: mostRecent + len(open)})
	if err != nil {
		return err
	}
	recent = slices.DeleteFunc(recent, func(s record.Subject) bool { return s.Ended == "" })
	if v.Open, err = b.runLines(open); err != nil {
		return err
	}
	if v.Recent, err = b.runLines(recent[:min(len(recent), mostRecent)]); err != nil {
		return err
	}
	if v.Jobs, err = b.waitingJobs(open); err != nil {
		return err
	}
	for _, one := range b.shop.all() {
		v.Patterns = append(v.Patterns, patternLine(one))
	}
	return b.show(w, r, http.StatusOK, func(to *bytes.Buffer) error { return page.Home(to, v) })
}

// waitingJobs returns the open jobs of machines, and those of a joint without an open
// run.
func (b *Bench) waitingJobs(open []record.Subject) ([]page.JobLine, error) {
	jobs, err := b.store.Jobs(record.Filter{Open: true, Most: mostLines})
	var all []page.JobLine
	for _, j := range jobs {
		if !slices.ContainsFunc(open, func(r record.Subject) bool { return r.Job == j.ID && r.Of == j.Of }) {
			all = append(all, page.JobLine{Job: j.ID, Title: j.Title, Number: j.Number, Order: j.Order, By: j.LastBy, At: j.Last})
		}
	}
	return all, err
}

func (b *Bench) jobPage(w http.ResponseWriter, r *http.Request) error {
	v := page.JobView{Frame: b.frame(r), ID: r.PathValue("id")}
	out, err := b.jobOut(v.ID, v.Words)
	if err != nil {
		return err
	}
	v.Job, v.Number, v.Order, v.Note, v.By, v.Started = out.View, out.Number, out.Order, out.Note, out.Who, out.Started
	runs, err := b.store.Runs(record.Filter{Job: v.ID, Most: mostLines})
	if err != nil {
		return err
	}
	if v.Runs, err = b.runLines(runs); err != nil {
		return err
	}
	v.Newer = b.newerThan(v.ID)
	return b.show(w, r, http.StatusOK, func(to *bytes.Buffer) error { return page.Job(to, v) })
}

// jobPlaces shows where on a joint of a job something can be.
func (b *Bench) jobPlaces(w http.ResponseWriter, r *http.Request) error {
	id, of := r.PathValue("id"), r.PathValue("joint")
	made, err := b.jointOfJob(id, of)
	if err != nil {
		return err
	}
	v := page.PlacingView{Frame: b.frame(r)}
	if v.Joint, err = page.JointOf(made.Plan, run.Tighten, v.Words); err != nil {
		return err
	}
	out, err := b.jobOut(id, v.Words)
	if err != nil {
		return err
	}
	v.Findings = out.FindingsOf(of)
	for i := range v.Findings {
		v.Letters = append(v.Letters, lettered.Letter(i))
	}
	return b.show(w, r, http.StatusOK, func(to *bytes.Buffer) error { return page.Placing(to, v) })
}

func patternLine(one shelved) page.PatternLine {
	return page.PatternLine{
		Name: one.Name, Title: one.Title, Machine: one.Machine, Fasteners: one.Fasteners,
		IsMachine: one.Kind == job.MachineFile, Builtin: one.Builtin, Sound: one.Sound,
	}
}

// runLines returns the lines of runs in a list. Progress only matters while a
// run is open.
func (b *Bench) runLines(list []record.Subject) ([]page.RunLine, error) {
	var all []page.RunLine
	for _, of := range list {
		line := page.RunLine{
			Run: of.ID, Title: of.Title, Number: of.Number, Order: of.Order, Direction: of.Work, Again: of.Again != "",
			Status: statusOfRun(of), By: of.LastBy, At: of.Last,
		}
		if line.Status != run.Open { // a correction follows it
			line.By, line.At = of.EndedBy, of.EndedAt
		}
		if line.Status == run.Open {
			if err := b.howFar(&line); err != nil {
				return nil, err
			}
		}
		all = append(all, line)
	}
	return all, nil
}

func statusOfRun(of record.Subject) run.Status {
	switch of.Ended {
	case run.Seal:
		return run.Sealed
	case run.Void:
		return run.Voided
	}
	return run.Open
}

// howFar fills in the progress of an open run.
func (b *Bench) howFar(line *page.RunLine) error {
	one, err := b.open.find(line.Run, b.now())
	if err != nil {
		return err
	}
	v := one.view(b.now())
	line.Machine, line.Done, line.Of = v.Machine, v.Now.Done.Steps, v.Now.Done.Steps+v.Now.Open.Steps
	for _, t := range v.Troubles {
		if t.Settled == nil {
			line.Troubles++
		}
	}
	return nil
}

func (b *Bench) patternPage(w http.ResponseWriter, r *http.Request) error {
	made, err := b.shop.freeze(r.PathValue("name"))
	if err != nil {
		return err
	}
	v := page.PatternView{Frame: b.frame(r), PatternLine: patternLine(shelve(made))}
	v.Findings = checked(made, v.Words)
	if made.Sound() && made.Kind == job.PatternFile {
		if v.Joint, err = page.JointOf(made.Plan, run.Tighten, v.Words); err != nil {
			return err
		}
		if v.Prints, err = b.printsOf("/patterns/"+made.Name, made.Name, made.Plan.Fingerprint); err != nil {
			return err
		}
	}
	open, err := b.store.Runs(record.Filter{Open: true, Joint: made.Name, Most: mostLines})
	if err != nil {
		return err
	}
	open = slices.DeleteFunc(open, func(s record.Subject) bool { return s.Of != made.Name })
	if v.Open, err = b.runLines(open); err != nil {
		return err
	}
	return b.show(w, r, http.StatusOK, func(to *bytes.Buffer) error { return page.Pattern(to, v) })
}

// printsOf returns when each sheet was last printed, here or in a run, and
// whether from another state of the file than the given one.
func (b *Bench) printsOf(path, name, fingerprint string) ([]page.Print, error) {
	const most = 300
	noted, err := b.store.Prints(most)
	if err != nil {
		return nil, err
	}
	var all []page.Print
	for _, s := range sheets {
		one := page.Print{Sheet: s.name, Address: path + "/" + s.name + ".pdf"}
		for _, p := range noted { // the latest first
			if p.Sheet == s.name && b.printedOf(p) == name {
				one.At, one.Stale = p.Time, p.Fingerprint != fingerprint
				break
			}
		}
		all = append(all, one)
	}
	return all, nil
}

// printedOf names the pattern of a print.
func (b *Bench) printedOf(p record.Kept) string {
	if p.On == record.ShopID {
		return p.Note
	}
	if one, err := b.open.find(p.On, b.now()); err == nil {
		return one.of.Of
	}
	return ""
}

func (b *Bench) runPage(w http.ResponseWriter, r *http.Request) error {
	v, err := b.runView(r)
	if err != nil {
		return err
	}
	return b.show(w, r, http.StatusOK, func(to *bytes.Buffer) error { return page.Run(to, v) })
}

// runLive sends what an entry changes on the page of a run.
func (b *Bench) runLive(w http.ResponseWriter, r *http.Request) error {
	v, err := b.runView(r)
	if err != nil {
		return err
	}
	return b.show(w, r, http.StatusOK, func(to *bytes.Buffer) error { return page.RunLive(to, v) })
}

// runPaper sends the steps that can be entered from paper.
func (b *Bench) runPaper(w http.ResponseWriter, r *http.Request) error {
	v, err := b.runView(r)
	if err != nil {
		return err
	}
	return b.show(w, r, http.StatusOK, func(to *bytes.Buffer) error { return page.RunPaper(to, v) })
}

func (b *Bench) runView(r *http.Request) (page.RunView, error) {
	v := page.RunView{Frame: b.frame(r), ID: r.PathValue("id")}
	one, err := b.open.find(v.ID, b.now())
	if err != nil {
		return v, err
	}
	if err := b.tellJob(one); err != nil {
		return v, err
	}
	if v.Joint, err = b.drawn(one, v.Frame); err != nil {
		return v, err
	}
	v.Run = one.view(b.now())
	if v.Run.Status == run.Open && v.Run.Now.Done.Steps == 0 {
		v.Newer = b.newerFor(one)
	}
	list, err := b.store.Entries(v.ID, 0)
	if err != nil {
		return v, err
	}
	v.Entries = entriesOf(list[:min(len(list), v.Run.Version)])
	v.Number, v.Order, v.JobNote, v.Again = one.of.Number, one.of.Order, one.of.Note, one.of.Again != ""
	if one.of.Job != "" {
		if of, err := b.store.Job(one.of.Job); err == nil {
			v.Number, v.Order, v.JobNote = first(v.Number, of.Number), first(v.Order, of.Order), first(v.JobNote, of.Note)
		}
	}
	v.Prints, err = b.printsOf("/runs/"+v.ID, one.of.Of, one.work.Fingerprint)
	return v, err
}

func first(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

// drawn returns the picture of a run's joint in a language. It is only drawn
// once.
func (b *Bench) drawn(one *openRun, f page.Frame) (page.Joint, error) {
	if made, there := one.picture(f.Language()); there {
		return made, nil
	}
	frozen, err := b.frozenOf(one.id)
	if err != nil {
		return page.Joint{}, err
	}
	made, err := page.JointOf(frozen.Plan, one.work.Direction, f.Words)
	if err == nil {
		one.keepPicture(f.Language(), made)
	}
	return made, err
}

func (b *Bench) recordsPage(w http.ResponseWriter, r *http.Request) error {
	f, err := filterOf(r)
	if err != nil {
		return err
	}
	q := r.URL.Query()
	v := page.RecordsView{Frame: b.frame(r), Asked: page.RecordsAsked{
		Machine: f.Machine, Joint: f.Joint, Person: f.Person, From: strings.TrimSpace(q.Get("from")), To: strings.TrimSpace(q.Get("to")),
	}}
	f.Most = mostOnPage + 1
	list, err := b.store.Runs(f)
	if err != nil {
		return err
	}
	if len(list) > mostOnPage {
		list = list[:mostOnPage]
		q.Set("before", list[mostOnPage-1].ID)
		v.Next = "/records?" + q.Encode()
	}
	if v.Runs, err = b.runLines(list); err != nil {
		return err
	}
	return b.show(w, r, http.StatusOK, func(to *bytes.Buffer) error { return page.Records(to, v) })
}

func (b *Bench) recordPage(w http.ResponseWriter, r *http.Request) error {
	of, err := b.runView(r)
	if err != nil {
		return err
	}
	head, err := b.store.Head()
	if err != nil {
		return err
	}
	if of.Run.Job != "" {
		in, err := b.jobOut(of.Run.Job, of.Words)
		if err != nil {
			return err
		}
		of.Run = in.View.Since(of.Run)
	}
	v := page.RecordView{RunView: of, Head: head.Hash}
	return b.show(w, r, http.StatusOK, func(to *bytes.Buffer) error { return page.Record(to, v) })
}

func (b *Bench) settingsPage(w http.ResponseWriter, r *http.Request) error {
	return b.show(w, r, http.StatusOK, func(to *bytes.Buffer) error { return page.Settings(to, page.SettingsView{Frame: b.frame(r)}) })
}

func (b *Bench) sharePage(w http.ResponseWriter, r *http.Request) error {
	v := page.ShareView{Frame: b.frame(r), Certificate: authorityPath, On: b.share != nil}
	if v.On {
		v.Addresses, v.Fingerprint = b.share.addresses(), b.share.certificates.Fingerprint()
		if code, until, waits := b.gate.Latest(); waits {
			v.Code, v.Ends, v.QR = code, until, squares(b.joinAddress(code))
		}
	}
	for _, s := range b.gate.Sessions() {
		if s.Sort == gate.Tablet {
			v.Devices = append(v.Devices, page.Device{ID: s.ID, Name: s.Device, Address: s.Address, Since: s.Begun})
		}
	}
	return b.show(w, r, http.StatusOK, func(to *bytes.Buffer) error { return page.Share(to, v) })
}

func (b *Bench) joinPage(w http.ResponseWriter, r *http.Request) error {
	v := page.JoinView{Frame: b.frame(r), Code: firstRunes(r.URL.Query().Get("code"), longestCode)}
	return b.show(w, r, http.StatusOK, func(to *bytes.Buffer) error { return page.Join(to, v) })
}

// joinAgain asks for a code once more, or states how long to wait.
func (b *Bench) joinAgain(w http.ResponseWriter, r *http.Request, why error) error {
	v := page.JoinView{Frame: b.frame(r), Wrong: errors.Is(why, gate.WrongCode)}
	var found finding.Finding
	if errors.As(why, &found) && found.Code == gate.WaitForCode {
		minutes, _ := found.Values["minutes"].(int)
		v.Locked = time.Duration(minutes)*time.Minute - time.Second // the page rounds up to a whole minute
	}
	status, _ := statusOf(why)
	if !v.Wrong && v.Locked == 0 {
		return why
	}
	return b.show(w, r, status, func(to *bytes.Buffer) error { return page.Join(to, v) })
}

// problems maps the status of an answer to the problem shown on the page.
var problems = map[int]page.Problem{
	http.StatusUnauthorized: page.NoKey, http.StatusMisdirectedRequest: page.OtherHost, http.StatusNotFound: page.NotFound,
	http.StatusRequestEntityTooLarge: page.TooMuch, http.StatusRequestTimeout: page.TooMuch, http.StatusTooManyRequests: page.TooMuch,
	http.StatusInternalServerError: page.Failed, http.StatusInsufficientStorage: page.Failed,
}

// message shows a page with what is wrong, or how to sign in.
func (b *Bench) message(w http.ResponseWriter, r *http.Request, status int, why error) {
	v := page.MessageView{Frame: b.frame(r), Problem: page.NotAllowed}
	if known, there := problems[status]; there {
		v.Problem = known
	}
	if v.Problem != page.NoKey {
		v.Detail = v.Words.Error(why)
	} else if _, err := r.Cookie(b.cookieName(r)); err == nil {
		v.Problem = page.Ended
	}
	if err := b.show(w, r, status, func(to *bytes.Buffer) error { return page.Message(to, v) }); err != nil {
		http.Error(w, v.Detail, status)
	}
}
