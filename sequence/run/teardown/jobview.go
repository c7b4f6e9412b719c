package teardown

import (
	"time"

	"drawdown/sequence/measure"
	"drawdown/sequence/run"
)

// Status is how far a job is.
type Status string

const (
	Open   Status = "open"
	Closed Status = "closed"
)

// Progress is how far a line is.
type Progress string

const (
	ToDo     Progress = "todo"
	Underway Progress = "underway" // a run of the joint is open
	IsDone   Progress = "done"
	IsOut    Progress = "out" // the part is at the machine shop
)

// View is a job at one moment.
type View struct {
	Of          string               `json:"of"`
	Title       string               `json:"title"`
	Machine     string               `json:"machine,omitempty"`
	Fingerprint string               `json:"fingerprint"`
	Status      Status               `json:"state"`
	Version     int                  `json:"version"`
	Teardown    []LineNow            `json:"teardown"`
	Rebuild     []LineNow            `json:"rebuild"`
	Runs        []RunFact            `json:"runs"`
	Measures    []measure.Value      `json:"measures,omitempty"` // to take on the whole machine
	Joints      []Joint              `json:"joints"`             // with theirs
	Needs       []Need               `json:"ready"`              // what must be ready before the joints are tightened
	Supplies    []Supply             `json:"supplies"`           // beside fasteners
	Findings    []run.Entry          `json:"findings"`           // also those of the runs, by the server
	Measured    []Measured           `json:"measured"`
	Notes       []run.Entry          `json:"notes,omitempty"`
	HandOvers   []run.Entry          `json:"hand_overs,omitempty"`
	Adopted     []run.Entry          `json:"adopted,omitempty"`
	SentOut     []SentOut            `json:"sent_out,omitempty"`  // to the machine shop
	Condemned   []Condemned          `json:"condemned,omitempty"` // in the runs, by the server
	Said        []run.Entry          `json:"-"`                   // that something is ready or fitted, as far as it counts
	Points      []Point              `json:"-"`                   // what is open or outside its limits; worded by the server
	Opened      map[string]time.Time `json:"-"`                   // by joint: when it was last opened, in the runs
	Confirmed   map[string]*run.Mark `json:"-"`                   // gaskets that a run says are there, by joint, with its seal
	ClosedBy    *run.Mark            `json:"closed,omitempty"`
}

// LineNow is a line with its state: for a joint the run that says so.
type LineNow struct {
	Line
	State Progress  `json:"state"`
	Run   string    `json:"run,omitempty"`
	Entry string    `json:"entry,omitempty"` // by which it is done
	By    string    `json:"by,omitempty"`
	At    time.Time `json:"at,omitzero"`

	Source run.Source `json:"source,omitempty"` // as an entry says
	Day    string     `json:"day,omitempty"`
}

// Need is what must be ready, with the joint that it is for.
type Need struct {
	Joint  string    `json:"joint"`
	Fitted *run.Mark `json:"fitted,omitempty"` // who sealed the run in which it went in
	run.Need
}

// View shows the job; needs are those of its joints, by the runs of the job.
func (s *State) View(runs []RunFact, needs []Need) View {
	v := View{
		Of: s.work.Of, Title: s.work.Title, Machine: s.work.Machine, Fingerprint: s.work.Fingerprint,
		Status: Open, Version: s.Version(), Measures: s.work.Measures, Joints: append([]Joint{}, s.work.Joints...), Supplies: append([]Supply{}, s.supplies()...), Runs: append([]RunFact{}, runs...), Needs: append([]Need{}, needs...),
		Teardown: s.now(s.work.Teardown, run.Loosen, runs), Rebuild: s.now(s.work.Rebuild, run.Tighten, runs),
		Findings: []run.Entry{}, Measured: []Measured{},
	}
	lists := map[run.Act]*[]run.Entry{
		run.Find: &v.Findings, run.Remark: &v.Notes, run.Correct: &v.Notes, run.HandOver: &v.HandOvers, run.Adopt: &v.Adopted,
	}
	for _, e := range s.order {
		if list := lists[e.Act]; list != nil {
			*list = append(*list, *e)
		}
		if e.Act == run.Measure {
			result, _ := s.result(*e) // an entry of an older program may name what is not there
			v.Measured = append(v.Measured, Measured{*e, result})
		}
	}
	v.SentOut = s.sentOut()
	for _, e := range s.order {
		if (e.Act == run.Ready || e.Act == run.Fitted) && !s.undone[e.ID] {
			v.Said = append(v.Said, *e)
		}
	}
	if s.closed != nil {
		v.Status, v.ClosedBy = Closed, &run.Mark{Entry: s.closed.ID, By: s.closed.Who, At: s.closed.Time, Note: s.closed.Note}
	}
	return v
}

// now returns the lines of a list with their state. A joint is done once a run
// of it in that direction is sealed; the latest run is named.
func (s *State) now(list []Line, d run.Direction, runs []RunFact) []LineNow {
	all := make([]LineNow, len(list))
	for i, line := range list {
		all[i] = LineNow{Line: line, State: ToDo}
		if done := s.partDone(line.Number); done != nil {
			all[i].State, all[i].Entry, all[i].By, all[i].At, all[i].Source, all[i].Day = IsDone, done.ID, done.Who, done.Time, done.Source, done.Day
		}
		for _, r := range runs {
			if line.Joint == "" || r.Of != line.Joint || r.Direction != d || r.Status == run.Voided || r.Again != "" {
				continue
			}
			all[i].Run = r.Run
			if all[i].State = Underway; r.Status == run.Sealed {
				all[i].State = IsDone
			}
		}
		if d == run.Tighten && s.isOut(line) {
			all[i].State = IsOut
		}
	}
	return all
}

// JointNeeds lists what a joint needs ready, where no tightening run of it says so
// yet.
func (w Work) JointNeeds(of string, loosened []run.Condemned, ready []run.Entry) []Need {
	var needs []Need
	for _, j := range w.Joints {
		if j.Of != of {
			continue
		}
		asked := run.Work{Of: j.Of, Direction: run.Tighten, Kinds: j.Kinds, Gasket: j.Gasket, Job: "job"}.Start()
		asked.InJob(run.JobFacts{Condemned: loosened, Ready: ready})
		for _, n := range asked.At(time.Time{}).Needs {
			needs = append(needs, Need{Joint: of, Need: n})
		}
	}
	return needs
}

// AddRun puts what was found and measured in a run to that of its job.
func (v *View) AddRun(id string, of run.View) {
	for _, f := range of.Findings {
		v.Findings = append(v.Findings, run.Entry{ID: f.Entry, Act: run.Find, Who: f.By, Time: f.At, Note: f.Note, Found: f.Found, Place: f.Place, Photo: f.Photo, Step: f.Step, Of: id, Joint: of.Of})
	}
	for _, t := range of.Troubles {
		v.Findings = append(v.Findings, run.Entry{ID: t.Entry, Act: reported(t), Who: t.By, Time: t.At, Note: t.Note, Trouble: t.Trouble, Photo: t.Photo, Step: t.Step, Of: id, Joint: of.Of, Place: placeOf(t.IDs)})
	}
	for _, m := range of.Readings {
		e := run.Entry{ID: m.Entry, Act: run.Measure, Who: m.By, Time: m.At, Note: m.Note, Place: m.Place, Measure: m.Measure, Value: m.Value, Unit: m.Unit, Shim: m.Fitted, Step: m.Step, Of: id, Joint: of.Of}
		v.Measured = append(v.Measured, Measured{Entry: e, Result: m.Result})
	}
	v.addCondemned(id, of)
	v.addOpened(of)
	v.addFitted(of)
}

// AddPoints lists what is open, when all runs are added.
func (s *State) AddPoints(v *View) { v.Points = v.points(s.acceptedPoints()) }

// acceptedPoints are the points that somebody accepted, by their keys.
func (s *State) acceptedPoints() map[string]*run.Mark {
	accepted := map[string]*run.Mark{}
	for _, e := range s.order {
		if e.Act == run.Accept && !s.undone[e.ID] {
			accepted[e.Of] = &run.Mark{Entry: e.ID, By: e.Who, At: e.Time, Note: e.Note}
		}
	}
	return accepted
}

// reported is the act by which a trouble came up.
func reported(t run.TroubleSeen) run.Act {
	if t.Trouble == "" {
		return run.Unsure
	}
	return run.Report
}

func placeOf(ids []string) *run.Place {
	if len(ids) != 1 {
		return nil
	}
	return &run.Place{Fastener: ids[0]}
}
