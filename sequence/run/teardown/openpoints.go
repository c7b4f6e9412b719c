package teardown

import (
	"fmt"
	"hash/fnv"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/sequence/measure"
	"drawdown/sequence/run"
)

// Point is something that is open or outside its limits. A job is closed once
// somebody has accepted each with a reason.
type Point struct {
	Key      string          `json:"point"` // of an entry that accepts it: of
	Finding  finding.Finding `json:"-"`     // worded by the server
	Accepted *run.Mark       `json:"accepted,omitempty"`
}

// pointOf names a point by what it says: what changes is another point.
func pointOf(code finding.Code, values finding.Values) Point {
	sum := fnv.New64a()
	fmt.Fprint(sum, code, values)
	return Point{Key: fmt.Sprintf("%x", sum.Sum64()), Finding: finding.Warned(code, values)}
}

// points lists what is open: in the lists that were begun, of what had to be new, of
// what was condemned, and of what was measured.
func (v View) points(accepted map[string]*run.Mark) []Point {
	taking, building := begun(v.Teardown), begun(v.Rebuild)
	if !taking && !building {
		return nil
	}
	all := v.outside()
	if building {
		all = slices.Concat(all, v.notReplaced(), v.tightenedOnly())
	}
	if taking {
		all = append(all, linesOpen("teardown", v.Teardown)...)
	}
	if building || len(v.Teardown) > 1 {
		all = append(all, linesOpen("rebuild", v.Rebuild)...)
	}
	if building {
		all = append(all, v.notFitted()...)
	}
	all = append(all, v.notMeasured()...)
	for i := range all {
		all[i].Accepted = accepted[all[i].Key]
	}
	return all
}

// begun says whether anything of a list was done, or is being done.
func begun(list []LineNow) bool {
	return slices.ContainsFunc(list, func(l LineNow) bool { return l.State == IsDone || l.State == Underway })
}

func linesOpen(name string, list []LineNow) []Point {
	open := slices.DeleteFunc(slices.Clone(list), func(l LineNow) bool { return l.State == IsDone })
	if len(open) == 0 {
		return nil
	}
	values := finding.Values{"list": name, "count": len(open), "first": open[0].What()}
	point := pointOf(LinesOpen, values)
	var joints []string
	for _, l := range open {
		if l.Joint != "" {
			joints = append(joints, l.Title)
		}
	}
	if named := strings.Join(joints, ""); named != "" && named != open[0].What() {
		values["joints"] = joints // no part of the key: the count and the first step name the point
	}
	return []Point{point}
}

// notFitted lists what had to be new where the work was done, and of which nobody said
// that it is in; of a sealant, that it was not there. What is still to be done is listed
// by its steps.
func (v View) notFitted() []Point {
	var all []Point
	for _, s := range v.Supplies {
		values := finding.Values{"what": finding.Term(s.What), "count": s.Count}
		switch {
		case s.Fitted != nil, !s.UsedOnce() && s.Met(), s.Sort == Lubricant, !v.rebuilt(s):
		case !s.Met():
			values["ready"] = s.Ready
			all = append(all, pointOf(NotReady, values))
		default:
			all = append(all, pointOf(NotFitted, values))
		}
	}
	for _, n := range v.Needs {
		if n.ID == "" && n.Waits() && !v.Named(n) && v.rebuilt(Supply{Joints: []string{n.Joint}}) {
			all = append(all, pointOf(NotReady, finding.Values{"what": finding.Term(n.Kind), "count": n.Count, "ready": n.Ready, "joint": v.titleOf(n.Joint)}))
		}
	}
	return all
}

// notReplaced lists what was condemned and has no successor, or was not repaired.
func (v View) notReplaced() []Point {
	var all []Point
	for _, c := range v.Condemned {
		switch values := (finding.Values{"id": c.ID, "joint": v.titleOf(c.Joint)}); {
		case c.Settled():
		case c.Trouble == run.HoleThread:
			all = append(all, pointOf(HoleOpen, values))
		default:
			values["trouble"] = c.Trouble.Term()
			all = append(all, pointOf(NoReplacement, values))
		}
	}
	return all
}

// outside lists the values whose last reading lies outside the limits.
func (v View) outside() []Point {
	var all []Point
	for _, m := range v.Readings() {
		last := m.Last()
		if !last.Verdict.Outside() {
			continue
		}
		found := slices.DeleteFunc(last.Result.Findings(), func(f finding.Finding) bool { return f.Code != measure.Outside })
		all = append(all, pointOf(ValueOutside, finding.Values{"joint": v.titleOf(m.Joint), "finding": found}))
	}
	return all
}

// notMeasured lists what the files want measured and was not, or not everywhere.
func (v View) notMeasured() []Point {
	var all []Point
	for _, a := range v.asked() {
		if a.taken == a.places {
			continue
		}
		places := a.places
		if places == 1 {
			places = 0 // it has none of its own
		}
		all = append(all, pointOf(NotMeasured, finding.Values{"measure": a.what, "joint": v.titleOf(a.joint), "taken": a.taken, "places": places}))
	}
	return all
}

// placesOf lists where a value is measured: once, where it has no place.
func placesOf(v measure.Value) []measure.Place {
	if len(v.At) == 0 {
		return []measure.Place{{}}
	}
	return v.At
}

// titleOf is the title of a joint, where the job has several.
func (v View) titleOf(of string) string {
	if len(v.Joints) < 2 {
		return ""
	}
	return v.TitleOf(of)
}

// TitleOf is the title of a joint.
func (v View) TitleOf(of string) string {
	for _, j := range v.Joints {
		if j.Of == of {
			return j.Title
		}
	}
	return of
}

// judgeAccept: what is open is accepted with a reason, once.
func judgeAccept(e run.Entry, points []Point) *run.Refusal {
	i := slices.IndexFunc(points, func(p Point) bool { return p.Key == e.Of })
	switch {
	case e.Of == "":
		return &run.Refusal{Finding: finding.Failed(run.FieldMissing, finding.Values{"act": string(e.Act), "field": "of"}), Malformed: true}
	case i < 0:
		return because(NoSuchPoint, finding.Values{"of": e.Of}, nil)
	case strings.TrimSpace(e.Note) == "":
		return because(NoReason, nil, nil)
	}
	return nil
}

// refusedFor refuses to close a job over points that nobody accepted.
func refusedFor(points []Point) *run.Refusal {
	var open []finding.Finding
	for _, p := range points {
		if p.Accepted == nil {
			open = append(open, p.Finding)
		}
	}
	if len(open) == 0 {
		return nil
	}
	return because(PointsOpen, finding.Values{"count": len(open), "points": open}, nil)
}
