package bench

import (
	"fmt"
	"html"
	"net/http"
	"regexp"
	"strings"
	"testing"
	"time"

	"drawdown/cmd/internal/record"
)

const pump = `drawdown: 1
title: Overhaul of the test pump
machine: Test pump
strip:
  - {note: Drain the oil}
  - lid.yaml
  - {part: rotor, new: [seal]}
`

// jobSeen is the part of a job that the tests check.
type jobSeen struct {
	State    string
	Version  int
	Teardown []jobLine
	Rebuild  []jobLine
	Runs     []struct{ Run, Of, Work, State string }
	Ready    []struct {
		Joint, Kind, ID string
		Count, Ready    int
	}
	Findings []struct{ Act, Note, Trouble string }
	Measured []struct{ Value any }
}

type jobLine struct {
	Step              int
	Joint, Part, Note string
	State, Run, By    string
}

func (s *shopfloor) job(body string) string {
	s.t.Helper()
	var made struct{ Job string }
	s.want(http.StatusCreated, s.ask("POST", "/api/jobs", body)).into(s.t, &made)
	return made.Job
}

func (s *shopfloor) jobSeen(id string) (v jobSeen) {
	s.t.Helper()
	s.want(http.StatusOK, s.ask("GET", "/api/jobs/"+id, "")).into(s.t, &v)
	return v
}

func (s *shopfloor) onJob(id, entry string) reply {
	s.t.Helper()
	return s.ask("POST", "/api/jobs/"+id+"/entries", entry)
}

func lines(list []jobLine) string {
	var all []string
	for _, l := range list {
		all = append(all, fmt.Sprintf("%d %s%s%s %s", l.Step, l.Joint, l.Part, l.Note, l.State))
	}
	return strings.Join(all, "; ")
}

// Values and findings of a job, and of its runs, are in one list, compared with
// the limits of the file. First principles: 2.40 + 0.31 − 0.20 = 2.51, the
// nearest of the file's sizes is 2.50, with a clearance of 0.21 mm.
func TestMeasuredOnAJob(t *testing.T) {
	t.Parallel()
	s := served(t)
	id := s.job(`{"of":"p4-engine","number":"P4-7","who":"RA"}`)
	s.want(http.StatusOK, s.onJob(id, `{"entry":"m1","act":"measure","measure":"valve clearance","place":{"station":"T1"},"value":0.31,"unit":"mm","shim":2.40,"who":"RA"}`))
	s.want(http.StatusOK, s.onJob(id, `{"entry":"m2","act":"measure","measure":"compression","place":{"label":"cyl 2"},"value":"10,5","unit":"bar","who":"RA"}`))
	s.want(http.StatusOK, s.onJob(id, `{"entry":"f1","act":"finding","found":"blown through","joint":"p4-head","place":{"at":[-95,0]},"who":"RA"}`))
	for _, wrong := range []string{
		`{"entry":"x","act":"measure","measure":"valve clearance","place":{"station":"T1"},"value":0.31,"unit":"bar","who":"RA"}`,
		`{"entry":"x","act":"measure","measure":"valve clearance","place":{"station":"T99"},"value":0.31,"who":"RA"}`,
		`{"entry":"x","act":"measure","measure":"compression","place":{"label":"cyl 9"},"value":11,"who":"RA"}`,
		`{"entry":"x","act":"finding","found":"crack","place":{"fastener":"M1"},"joint":"p4-sumpf","who":"RA"}`,
		`{"entry":"x","act":"finding","found":"crack","place":{"at":[0,0]},"who":"RA"}`,
	} {
		s.want(http.StatusBadRequest, s.onJob(id, wrong))
	}
	loosen := s.run(fmt.Sprintf(`{"of":"p4-cam-caps","work":"loosen","job":%q}`, id))
	s.want(http.StatusOK, s.enter(loosen, `{"entry":"r1","act":"measure","measure":"valve clearance","place":{"station":"T2"},"value":0.30,"unit":"mm","shim":2.40,"who":"MK"}`))
	var answer struct{ Says []string }
	s.want(http.StatusOK, s.enter(loosen, `{"entry":"r1","act":"measure","measure":"valve clearance","place":{"station":"T2"},"value":0.30,"unit":"mm","shim":2.40,"who":"MK"}`)).into(t, &answer)
	if len(answer.Says) != 1 || answer.Says[0] != "T2: keep the shim of 2.40 mm" {
		t.Errorf("the answer says %q", answer.Says)
	}
	s.want(http.StatusOK, s.enter(loosen, `{"entry":"r2","act":"finding","found":"scoring","place":{"station":"T2"},"who":"MK"}`))
	var v struct {
		Measured []struct {
			Entry, Measure, Limits, Verdict, Joint string
			Value                                  any
			New                                    *struct {
				Size, Clearance float64
				Advice          string
			} `json:"new_shim"`
		}
		Findings []struct{ Found, Joint, Of string }
	}
	s.want(http.StatusOK, s.ask("GET", "/api/jobs/"+id, "")).into(t, &v)
	if len(v.Measured) != 3 || len(v.Findings) != 2 {
		t.Fatalf("%+v", v)
	}
	if m := v.Measured[0]; m.Verdict != "above" || m.Limits != "0.15–0.25 mm" || m.New == nil || m.New.Size != 2.50 || m.New.Clearance != 0.21 || m.New.Advice != "change" {
		t.Errorf("%+v %+v", m, m.New)
	}
	if m := v.Measured[1]; m.Verdict != "below" || m.Value != "10,5" {
		t.Errorf("%+v", m)
	}
	if m := v.Measured[2]; m.Verdict != "within" || m.Joint != "p4-cam-caps" || m.New.Advice != "keep" {
		t.Errorf("%+v", m)
	}
	if f := v.Findings; f[0].Found != "blown through" || f[0].Joint != "p4-head" || f[1].Found != "scoring" || f[1].Of != loosen {
		t.Errorf("%+v", f)
	}
	page := s.want(http.StatusOK, s.ask("GET", "/jobs/"+id, ""))
	for _, said := range []string{"Gasket blown through", "outside the limits", "fit a shim of 2.50 mm instead of 2.40 mm"} {
		if !strings.Contains(html.UnescapeString(string(page.body)), said) {
			t.Errorf("the page does not say %q", said)
		}
	}
	if got := s.want(http.StatusOK, s.ask("GET", "/api/jobs/"+id+".pdf", "")); !contains(got.body[:5], "%PDF") {
		t.Errorf("%.40q", got.body)
	}
}

// The shopping list of a job contains what its machine file names, ticked as it
// arrives.
func TestShoppingList(t *testing.T) {
	t.Parallel()
	s := served(t)
	id := s.job(`{"of":"p4-engine","who":"RA"}`)
	s.want(http.StatusOK, s.onJob(id, `{"entry":"r1","act":"ready","kind":"head gasket","who":"RA"}`))
	s.want(http.StatusOK, s.onJob(id, `{"entry":"r2","act":"ready","kind":"main","joint":"p4-head","value":4,"who":"RA"}`))
	s.want(http.StatusBadRequest, s.onJob(id, `{"entry":"r3","act":"ready","kind":"rubber band","who":"RA"}`))
	table := string(s.want(http.StatusOK, s.ask("GET", "/api/jobs/"+id+".shopping.csv", "")).body)
	for _, line := range []string{"gasket,head gasket,,,1,1,p4-head,,", "fastener,main,M10×1.5 × 120 mm,10.9,10,4,p4-head,,", "part,pulley bolt,,,,0,,crankshaft pulley,"} {
		if !strings.Contains(table, line+"\n") {
			t.Errorf("%q is not in\n%s", line, table)
		}
	}
	if got := s.want(http.StatusOK, s.ask("GET", "/api/jobs/"+id+".shopping.pdf", "")); !contains(got.body[:5], "%PDF") {
		t.Errorf("%.40q", got.body)
	}
	s.want(http.StatusNotFound, s.ask("GET", "/api/jobs/"+id+".shopping.doc", ""))
	s.want(http.StatusNotFound, s.ask("GET", "/api/jobs/J99.shopping.pdf", ""))
	page := html.UnescapeString(string(s.want(http.StatusOK, s.ask("GET", "/jobs/"+id, "")).body))
	for _, said := range []string{"1 × head gasket · Cylinder head", "pulley bolt · crankshaft pulley", "Shopping list (PDF)"} {
		if !strings.Contains(page, said) {
			t.Errorf("the page does not say %q", said)
		}
	}
}

// A machine is taken apart and put together: each list follows its order, parts
// are ticked once and in order, joints follow their runs.
func TestJobOnAMachine(t *testing.T) {
	t.Parallel()
	jobOnAMachine(t, served(t))
}

func jobOnAMachine(t *testing.T, s *shopfloor) {
	s.write("pump.yaml", pump)
	id := s.job(`{"of":"pump","number":"TP-7","who":"RA"}`)
	v := s.jobSeen(id)
	if got, want := lines(v.Teardown), "1 Drain the oil todo; 2 lid todo; 3 rotor todo"; got != want {
		t.Errorf("teardown %s, want %s", got, want)
	}
	if got, want := lines(v.Rebuild), "4 rotor todo; 5 lid todo; 6 Drain the oil todo"; got != want {
		t.Errorf("rebuild %s, want %s", got, want)
	}
	s.want(http.StatusConflict, s.onJob(id, `{"entry":"p3","act":"part","step":3,"who":"RA"}`)) // the oil first
	s.want(http.StatusOK, s.onJob(id, `{"entry":"p1","act":"part","step":1,"who":"RA"}`))
	s.want(http.StatusConflict, s.onJob(id, `{"entry":"p1b","act":"part","step":1,"who":"MK"}`))
	s.want(http.StatusConflict, s.onJob(id, `{"entry":"p3b","act":"part","step":3,"who":"RA"}`)) // the joint first
	s.want(http.StatusOK, s.onJob(id, `{"entry":"p3c","act":"part","step":3,"note":"it was off","who":"RA"}`))
	s.want(http.StatusConflict, s.onJob(id, `{"entry":"u","act":"undo","of":"p1","who":"RA"}`)) // a later one is done
	s.want(http.StatusOK, s.onJob(id, `{"entry":"u2","act":"undo","of":"p3c","who":"RA"}`))
	s.want(http.StatusOK, s.onJob(id, `{"entry":"f","act":"finding","note":"scored","who":"RA"}`))
	for _, wrong := range []string{`{"entry":"x","act":"part","step":2,"who":"RA"}`, `{"entry":"x","act":"part","step":9,"who":"RA"}`, `{"entry":"x","act":"done","step":1,"who":"RA"}`, `{"entry":"x","act":"part","step":4}`, `{`} {
		s.want(http.StatusBadRequest, s.onJob(id, wrong))
	}
	loosen := s.run(fmt.Sprintf(`{"of":"lid","work":"loosen","job":%q}`, id))
	s.want(http.StatusUnprocessableEntity, s.ask("POST", "/api/runs", fmt.Sprintf(`{"of":"p4-head","work":"loosen","job":%q}`, id)))
	v = s.jobSeen(id)
	if got, want := lines(v.Teardown), "1 Drain the oil done; 2 lid underway; 3 rotor todo"; got != want || v.Teardown[1].Run != loosen || v.Teardown[0].By != "RA" {
		t.Errorf("teardown %s, want %s", got, want)
	}
	s.want(http.StatusConflict, s.onJob(id, `{"entry":"c","act":"close","who":"RA"}`)) // a run is open
	s.want(http.StatusOK, s.enter(loosen, `{"entry":"v","act":"void","note":"wrong machine","who":"RA"}`))
	s.want(http.StatusConflict, s.onJob(id, `{"entry":"c1","act":"close","who":"RA"}`)) // steps are open
	var open struct {
		Points []struct{ Point, Text string } `json:"to_accept"`
	}
	s.want(http.StatusOK, s.ask("GET", "/api/jobs/"+id, "")).into(t, &open)
	if len(open.Points) != 2 || open.Points[0].Text != "teardown: 2 steps are not done. The first: Lid" {
		t.Errorf("%+v", open.Points)
	}
	s.want(http.StatusBadRequest, s.onJob(id, `{"entry":"k0","act":"accept","note":"all of it","who":"RA"}`)) // which?
	s.want(http.StatusConflict, s.onJob(id, fmt.Sprintf(`{"entry":"k0","act":"accept","of":%q,"who":"RA"}`, open.Points[0].Point)))
	for n, p := range open.Points {
		s.want(http.StatusOK, s.onJob(id, fmt.Sprintf(`{"entry":"k%d","act":"accept","of":%q,"note":"the machine is scrapped","who":"RA"}`, n+1, p.Point)))
	}
	s.want(http.StatusOK, s.onJob(id, `{"entry":"c2","act":"close","who":"RA"}`))
	s.want(http.StatusConflict, s.onJob(id, `{"entry":"n","act":"note","note":"x","who":"RA"}`))
	s.want(http.StatusOK, s.onJob(id, `{"entry":"k","act":"correct","of":"p1","note":"it was MK","who":"RA"}`))
	s.want(http.StatusConflict, s.ask("POST", "/api/runs", fmt.Sprintf(`{"of":"lid","work":"loosen","job":%q}`, id)))
	if v := s.jobSeen(id); v.State != "closed" || len(v.Findings) != 1 || v.Runs[0].State != "void" {
		t.Errorf("%+v", v)
	}
	var list []record.Subject
	if s.ask("GET", "/api/jobs?machine=TP-7", "").into(t, &list); len(list) != 1 {
		t.Errorf("%d jobs", len(list))
	}
	s.want(http.StatusOK, s.ask("GET", "/api/jobs/"+id+".json", ""))
	if got := s.want(http.StatusOK, s.ask("GET", "/api/jobs/"+id+".pdf", "")); !contains(got.body[:5], "%PDF") {
		t.Errorf("%.40q", got.body)
	}
	s.want(http.StatusNotFound, s.ask("GET", "/api/jobs/"+id+".csv", ""))
	s.want(http.StatusNotFound, s.onJob("J9", `{"entry":"n","act":"note","note":"x","who":"RA"}`))
}

// Rule 8: parts condemned while loosening are listed among those that must be
// ready, and tightening waits for them.
func TestCondemnedMustBeReady(t *testing.T) {
	t.Parallel()
	s := served(t)
	id, tighten := condemnedMustBeReady(t, s)
	s.end()
	s.start()
	condemnedAgain(s, id, tighten)
}

func condemnedMustBeReady(t *testing.T, s *shopfloor) (id, tighten string) {
	id = s.job(`{"of":"lid"}`)
	if got := lines(s.jobSeen(id).Teardown) + "; " + lines(s.jobSeen(id).Rebuild); got != "1 lid todo; 2 lid todo" {
		t.Errorf("lines %s", got)
	}
	loosen := s.run(fmt.Sprintf(`{"of":"lid","work":"loosen","job":%q}`, id))
	s.want(http.StatusOK, s.enter(loosen, `{"entry":"b","act":"trouble","step":1,"trouble":"broken","who":"RA"}`))
	v := s.jobSeen(id)
	broken := s.state(loosen).Steps[0].ID
	if len(v.Ready) != 1 || v.Ready[0].ID != broken || v.Ready[0].Joint != "lid" || v.Ready[0].Ready != 0 || len(v.Findings) != 1 || v.Findings[0].Trouble != "broken" {
		t.Fatalf("%+v", v)
	}
	tighten = s.run(fmt.Sprintf(`{"of":"lid","work":"tighten","job":%q}`, id))
	s.want(http.StatusOK, s.enter(tighten, `{"entry":"ok","act":"accept","who":"RA"}`))
	s.want(http.StatusConflict, s.enter(tighten, `{"entry":"early","act":"done","step":1,"who":"RA"}`))
	s.clock.pass(time.Minute)
	s.want(http.StatusOK, s.onJob(id, fmt.Sprintf(`{"entry":"r","act":"ready","place":{"fastener":%q},"who":"RA"}`, broken)))
	if v := s.jobSeen(id); v.Ready[0].Ready != 1 {
		t.Errorf("%+v", v.Ready)
	}
	return id, tighten
}

// condemnedAgain continues when what was ready no longer is.
func condemnedAgain(s *shopfloor, id, tighten string) {
	s.done(tighten, 1)
	s.want(http.StatusOK, s.onJob(id, `{"entry":"u","act":"undo","of":"r","who":"RA"}`))
	s.want(http.StatusConflict, s.enter(tighten, `{"entry":"d2","act":"done","step":2,"who":"RA"}`))
}

// The page of a job names the machine, starts its runs, and shows the later
// changes of its file. Adopting these is an entry with the differences: later
// runs use the newer file, the others keep the old one.
func TestAdoptANewerFile(t *testing.T) {
	t.Parallel()
	s := served(t)
	id := s.job(`{"of":"lid","number":"TP-7","who":"RA"}`)
	before := s.run(fmt.Sprintf(`{"of":"lid","work":"tighten","job":%q}`, id))
	s.want(http.StatusConflict, s.onJob(id, `{"entry":"a1","act":"adopt","who":"RA"}`)) // it is the same
	s.write("lid.yaml", strings.Replace(lid, "torque: 20", "torque: 25", 1))
	shown := s.want(http.StatusOK, s.ask("GET", "/jobs/"+id, "")).body
	for _, want := range []string{"machine TP-7", "started by RA", `name="work" value="loosen"`, "/runs/" + before, "25 N·m"} {
		if !contains(shown, want) {
			t.Errorf("the page lacks %s", want)
		}
	}
	older := func(when string) {
		if shown := s.want(http.StatusOK, s.ask("GET", "/runs/"+before, "")).body; !contains(shown, `id="newer"`) || !contains(shown, "/jobs/"+id+"#newer") {
			t.Errorf("%s the page of the run does not name the newer file", when)
		}
	}
	older("before it is adopted")
	first := s.want(http.StatusOK, s.onJob(id, `{"entry":"a2","act":"adopt","who":"RA"}`))
	older("after it was adopted")
	if again := s.want(http.StatusOK, s.onJob(id, `{"entry":"a2","act":"adopt","who":"RA"}`)); string(again.body) != string(first.body) {
		t.Errorf("sent twice: %s, then %s", first, again)
	}
	s.want(http.StatusConflict, s.onJob(id, `{"entry":"a3","act":"adopt","who":"RA"}`))
	s.end()
	s.start()
	var v struct {
		Adopted []struct {
			Revision struct {
				Differences []struct{ Joint, What, Before, After string }
			}
		}
	}
	s.want(http.StatusOK, s.ask("GET", "/api/jobs/"+id, "")).into(t, &v)
	if len(v.Adopted) != 1 || len(v.Adopted[0].Revision.Differences) != 2 {
		t.Fatalf("adopted %+v", v.Adopted)
	}
	if d := v.Adopted[0].Revision.Differences[1]; d.Joint != "lid" || d.What != "tightening" || !strings.Contains(d.Before, "20 N·m") || !strings.Contains(d.After, "25 N·m") {
		t.Errorf("difference %+v", d)
	}
	after := s.run(fmt.Sprintf(`{"of":"lid","work":"tighten","job":%q}`, id))
	for run, want := range map[string]string{before: "20 N·m", after: "25 N·m"} {
		steps := s.want(http.StatusOK, s.ask("GET", "/api/runs/"+run, "")).body
		if !contains(steps, want) {
			t.Errorf("%s is not at %s", run, want)
		}
	}
	if verdict, err := s.bench.store.Verify(""); err != nil || len(verdict.Faults) > 0 {
		t.Errorf("%v %v", verdict, err)
	}
}

// The first page shows who made the last entry, and a job that waits for its next
// run.
func TestFirstPage(t *testing.T) {
	t.Parallel()
	s := served(t)
	job := s.job(`{"of":"lid","number":"TP-7","order":"2214","who":"RA"}`)
	if page := s.want(http.StatusOK, s.ask("GET", "/", "")).body; !contains(page, "/jobs/"+job) || !contains(page, "RA, ") {
		t.Error("no waiting job")
	}
	id := s.run(fmt.Sprintf(`{"of":"lid","work":"loosen","job":%q,"who":"RA"}`, job))
	s.want(http.StatusOK, s.enter(id, `{"entry":"d1","act":"done","step":1,"who":"MK"}`))
	if page := s.want(http.StatusOK, s.ask("GET", "/", "")).body; contains(page, `"/jobs/`+job) || !contains(page, "MK, ") || contains(page, "RA, ") {
		t.Errorf("the job still waits, or MK is not named")
	}
}

// The list of records spans as many pages as needed, within the filter.
func TestRecordsGoOn(t *testing.T) {
	t.Parallel()
	s := served(t)
	for n := range mostOnPage + 3 {
		s.run(fmt.Sprintf(`{"of":"lid","work":"loosen","number":"TP-%d"}`, n%2))
	}
	seen := map[string]bool{}
	path := "/records?machine=TP"
	for pages := 1; path != ""; pages++ {
		page := string(s.want(http.StatusOK, s.ask("GET", path, "")).body)
		for _, link := range regexp.MustCompile(`"/records/(R\d+)"`).FindAllStringSubmatch(page, -1) {
			seen[link[1]] = true
		}
		next := regexp.MustCompile(`href="(/records\?before[^"]*)"`).FindStringSubmatch(page)
		if path = ""; next != nil {
			path = html.UnescapeString(next[1])
		}
		if pages > 2 {
			t.Fatal("more pages than there are")
		}
	}
	if len(seen) != mostOnPage+3 {
		t.Errorf("%d runs were listed, want %d", len(seen), mostOnPage+3)
	}
	if page := s.want(http.StatusOK, s.ask("GET", "/records?machine=TP-1&before=R50", "")).body; contains(page, "TP-0") || contains(page, "R50") {
		t.Error("the second page has what was not asked for")
	}
}

// What is ready for the tightening run is ready for its job, too, and an
// interrupted angle is listed among the findings.
func TestReadyInTheRun(t *testing.T) {
	t.Parallel()
	s := served(t)
	s.write("lid.yaml", strings.Replace(lid, "{thread: M8}", "{thread: M8, reuse: once}", 1)+"  source: works manual 4.2\n")
	job := s.job(`{"of":"lid"}`)
	id := s.run(fmt.Sprintf(`{"of":"lid","work":"tighten","job":%q}`, job))
	if v := s.jobSeen(job); len(v.Ready) != 1 || v.Ready[0].Ready != 0 {
		t.Fatalf("%+v", v.Ready)
	}
	s.enter(id, `{"entry":"ok","act":"accept","who":"RA"}`)
	s.want(http.StatusOK, s.enter(id, `{"entry":"r","act":"ready","who":"RA"}`))
	if v := s.jobSeen(job); v.Ready[0].Ready != v.Ready[0].Count {
		t.Errorf("%+v", v.Ready)
	}
	if page := s.want(http.StatusOK, s.ask("GET", "/jobs/"+job, "")).body; contains(page, `data-act="ready"`) {
		t.Error("the page still asks for it")
	}
}

// A joint of the machine file in the shop's folder comes before the built-in one of its
// name. When that file changes, the page of the job says so, and adopting it is an
// entry. From first principles.
func TestAdoptANewerJointOfAMachine(t *testing.T) {
	t.Parallel()
	s := served(t)
	s.write("pump.yaml", strings.Replace(pump, "lid.yaml", "p4-cover", 1))
	text := func(figure string) string {
		return strings.Replace(strings.Replace(lid, "torque: 20", "torque: "+figure, 1), "title: Lid", "title: Own cover", 1)
	}
	s.write("p4-cover.yaml", text("20"))
	id := s.job(`{"of":"pump","who":"RA"}`)
	if page := s.want(http.StatusOK, s.ask("GET", "/jobs/"+id, "")).body; !contains(page, "Own cover") || contains(page, `id="newer"`) {
		t.Fatal("the joint is not that of the shop, or something newer is told")
	}
	s.write("p4-cover.yaml", text("25"))
	if page := s.want(http.StatusOK, s.ask("GET", "/jobs/"+id, "")).body; !contains(page, `id="newer"`) || !contains(page, "25 N·m") {
		t.Fatal("the newer file is not told")
	}
	s.want(http.StatusOK, s.onJob(id, `{"entry":"a","act":"adopt","who":"RA"}`))
	after := s.run(fmt.Sprintf(`{"of":"p4-cover","work":"tighten","job":%q}`, id))
	if steps := s.want(http.StatusOK, s.ask("GET", "/api/runs/"+after, "")).body; !contains(steps, "25 N·m") {
		t.Error("the run does not go by what was adopted")
	}
}
