// Package overhaul joins the plans of a machine's joints into the whole work:
// the teardown order, the steps between the joints, the parts to prepare before
// the rebuild, and the check passes after it. It sees plans and the sizes of
// heads and keys, and no paper.
package overhaul

import (
	"slices"

	"drawdown/sequence/measure"
	"drawdown/sequence/plan"
)

// Overhaul is the whole work on a machine.
type Overhaul struct {
	plan.Heading
	Tools []string // beside wrenches and sockets, which the joints tell
	Tasks []Task   // in teardown order; the build goes backwards
	// Measures are the values to take on the whole machine.
	Measures []measure.Value
}

// Task is one thing to do: a joint, a part that comes out or goes back,
// or a note. Just one of Joint, Part and Note is set.
type Task struct {
	Joint   *plan.Plan
	Gaskets []string // new ones, for the joint
	Sealant string
	Again   string // when the joint is checked once more

	Part    string
	New     []string // what of the part is new when it goes back
	Manual  []string // its fasteners of which only the maker's manual has the figures
	Figures []string // what else of the manual is needed when it goes back

	Note  string
	Warns bool             // the note is a caution
	Side  plan.CautionSide // of the note; both where it is empty

	Loosen  string // remark to the joint or part on the way out
	Tighten string // and on the way back
}

// Joint is a joint with its number in teardown order, from 1.
type Joint struct {
	Number int
	*plan.Plan
	Task Task
}

// Joints lists the joints in teardown order.
func (o Overhaul) Joints() []Joint {
	var joints []Joint
	for _, s := range o.Tasks {
		if s.Joint != nil {
			joints = append(joints, Joint{len(joints) + 1, s.Joint, s})
		}
	}
	return joints
}

// TasksOf returns the tasks of one side in working order: stripping as they
// stand, building backwards. Notes for the other side are left out.
func (o Overhaul) TasksOf(side plan.CautionSide) []Task {
	var tasks []Task
	for _, t := range o.Tasks {
		if t.Note == "" || t.Side == plan.CautionBoth || t.Side == side {
			tasks = append(tasks, t)
		}
	}
	if side == plan.CautionTighten {
		slices.Reverse(tasks)
	}
	return tasks
}

// Remark is what the task says of one side.
func (t Task) Remark(side plan.CautionSide) string {
	if side == plan.CautionTighten {
		return t.Tighten
	}
	return t.Loosen
}

// Before lists the tasks of one side that stand between the joint before and
// this one, in working order, so that its card can show them. The tasks after
// the last joint belong to no card.
func (o Overhaul) Before(joint *plan.Plan, side plan.CautionSide) []Task {
	var tasks []Task
	for _, t := range o.TasksOf(side) {
		switch {
		case t.Joint == joint:
			return tasks
		case t.Joint != nil:
			tasks = nil
		default:
			tasks = append(tasks, t)
		}
	}
	return nil
}
