package job

import (
	"fmt"
	"slices"
	"strings"

	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// Differences lists the changes in a newer state of the files, joint by joint;
// none if the fingerprint is the same. A change that affects no figure and no
// order, such as a caution, only appears as the fingerprint.
func (f Frozen) Differences(newer Frozen) []run.Difference {
	if f.fingerprint() == newer.fingerprint() {
		return nil
	}
	list := []run.Difference{{What: run.ChangedFile, Before: f.fingerprint(), After: newer.fingerprint()}}
	differ := func(joint string, what run.Changed, before, after string) {
		if before != after {
			list = append(list, run.Difference{Joint: joint, What: what, Before: before, After: after})
		}
	}
	before, after := f.jointNames(), newer.jointNames()
	differ("", run.ChangedList, strings.Join(before, ", "), strings.Join(after, ", "))
	for _, name := range after {
		if !slices.Contains(before, name) {
			continue
		}
		was, _ := f.Joint(name)
		is, _ := newer.Joint(name)
		differ(name, run.ChangedRevision, was.Plan.Revision, is.Plan.Revision)
		differ(name, run.ChangedBolts, idsOf(was.Plan), idsOf(is.Plan))
		differ(name, run.ChangedLoosen, workOf(was.Plan, was.Plan.Loosen), workOf(is.Plan, is.Plan.Loosen))
		differ(name, run.ChangedTighten, workOf(was.Plan, was.Plan.Tighten), workOf(is.Plan, is.Plan.Tighten))
	}
	return list
}

func (f Frozen) fingerprint() string {
	if f.Kind == MachineFile {
		return f.Overhaul.Fingerprint
	}
	return f.Plan.Fingerprint
}

func (f Frozen) jointNames() []string {
	if f.Kind != MachineFile {
		return []string{f.Name}
	}
	var names []string
	for _, j := range f.Overhaul.Joints() {
		names = append(names, j.Name)
	}
	return names
}

func idsOf(p plan.Plan) string {
	var ids []string
	for _, f := range p.Joint.Fasteners {
		ids = append(ids, f.ID)
	}
	return strings.Join(ids, ",")
}

// workOf writes the order of a side and the figures of its stages.
func workOf(p plan.Plan, side plan.Side) string {
	stages := []string{strings.Join(p.IDs(side.Order), ",")}
	for _, s := range side.Stages {
		figure := string(s.Do)
		switch s.Do {
		case plan.Tighten:
			figure = s.Torque.String()
		case plan.Advance:
			figure = "+" + s.Angle.String()
		case plan.Lengthen:
			figure = "+" + s.Stretch.String()
		case plan.BackOff, plan.TurnBack:
			figure = "−" + s.Angle.String()
		case plan.Wait:
			figure = s.Wait.String()
		}
		stages = append(stages, strings.TrimSpace(fmt.Sprint(strings.Join(s.Kinds, ","), " ", figure)))
	}
	return strings.Join(stages, "; ")
}
