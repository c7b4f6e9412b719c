package bench

import (
	"fmt"
	"net/http"
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

// jobSeen is what the tests look at of a job.
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

// A machine comes apart and goes together: the lists run each their way, parts are
// ticked once and in order, joints follow their runs.
func TestJobOnAMachine(t *testing.T) {
	t.Parallel()
	s := served(t)
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
	s.want(http.StatusOK, s.onJob(id, `{"entry":"p3c","act":"part","step":3,"who":"RA"}`))
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

// Rule 8: what loosening condemned is listed under what must be ready, and
// tightening waits until it is.
func TestCondemnedMustBeReady(t *testing.T) {
	t.Parallel()
	s := served(t)
	id := s.job(`{"of":"lid"}`)
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
	tighten := s.run(fmt.Sprintf(`{"of":"lid","work":"tighten","job":%q}`, id))
	s.want(http.StatusOK, s.enter(tighten, `{"entry":"ok","act":"accept","who":"RA"}`))
	s.want(http.StatusConflict, s.enter(tighten, `{"entry":"early","act":"done","step":1,"who":"RA"}`))
	s.clock.pass(time.Minute)
	s.want(http.StatusOK, s.onJob(id, fmt.Sprintf(`{"entry":"r","act":"ready","place":{"fastener":%q},"who":"RA"}`, broken)))
	if v := s.jobSeen(id); v.Ready[0].Ready != 1 {
		t.Errorf("%+v", v.Ready)
	}
	s.end()
	s.start()
	s.done(tighten, 1)
	s.want(http.StatusOK, s.onJob(id, `{"entry":"u","act":"undo","of":"r","who":"RA"}`))
	s.want(http.StatusConflict, s.enter(tighten, `{"entry":"d2","act":"done","step":2,"who":"RA"}`))
}
