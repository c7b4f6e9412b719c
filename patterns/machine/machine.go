// Package machine reads machine files: the joints of a machine in teardown
// order, with the steps between them. It may import form, nodes, meant, measures and
// sequence/overhaul.
package machine

import (
	"cmp"
	"errors"
	"io/fs"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/meant"
	"drawdown/patterns/measures"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/sequence/measure"
	"drawdown/sequence/overhaul"
)

var machineKeys = []string{"drawdown", "title", "machine", "revision", "date", "tools", "strip", "measure", meant.Key, "cautions"}

var stepKeys = []string{"joint", "part", "note", "caution", "gaskets", "sealant", "again", "new", "manual", "figures", "loosen", "tighten"}

// MostSteps bounds the work on one machine.
const MostSteps = 500

// Machine is what a machine file says.
type Machine struct {
	overhaul.Overhaul // without its tasks: their joints are not planned yet
	Strip             []Step
	MachineAt         problem.Problem   // where the name of the machine stands, as At of a Step
	CautionsAt        []problem.Problem // likewise, of each caution
	MeasuresAt        []problem.Problem // likewise, of each value to measure
	Meant             []meant.Entry     // the warnings that the file acknowledges

	data []byte // of the file
}

// Step is one step of stripping: a joint, a part that comes out, or a note.
type Step struct {
	overhaul.Task
	Pattern *source.Source  // of the joint, which is not planned yet
	At      problem.Problem // where the step stands; severity and what is found are left to the caller
	AgainAt problem.Problem // where Again stands, likewise
	JointAt problem.Problem // where the joint is named, likewise
}

// FingerprintWith is the fingerprint of the machine file together with those
// of its joints, so that an old book is known when any file has changed.
func (m Machine) FingerprintWith(joints []string) string {
	return source.Fingerprint([][]byte{m.data, []byte(strings.Join(joints, "\n"))})
}

// reader reads a machine file with the means of the pattern reader.
type reader struct {
	*form.Reader
	made   Machine
	joints map[string]*nodes.Node
	parts  map[string]*nodes.Node
}

// Read reads a machine file:
//
//	drawdown: 1
//	title: Strip and rebuild
//	machine: Fernhollow P4 pump engine
//	tools: [hoist, flywheel lock]
//	strip:                                    # in teardown order
//	  - {note: Drain oil and coolant}
//	  - p4-cover                              # a joint: a built-in pattern or a path beside this file
//	  - {caution: {loosen: Timing pin in first}}
//	  - {joint: p4-manifold, gaskets: [manifold gasket], sealant: none, again: after the first run}
//	  - {part: camshaft, loosen: lift it level, tighten: oil the bearings}
//	  - {part: pulley, new: [pulley bolt], manual: [pulley bolt]}
//	measure: [{what: compression, at: [cyl 1, cyl 2], unit: bar, from: 11}]
//	meant: {steps: the left head stays on}
//	cautions: [Engine cold]
//
// Where a problem stops the work the machine is empty but for what it means.
func Read(from source.Source) (Machine, problem.List) {
	m := &reader{Reader: form.NewReader(from), joints: map[string]*nodes.Node{}, parts: map[string]*nodes.Node{}}
	if root := m.Root(nodes.Format{Keys: slices.Concat(machineKeys, stepKeys, measures.Keys)}); root != nil {
		m.Version(root)
		m.machine(root)
	}
	m.made.data = from.Data
	made, problems := form.Sound(m.made, m.List())
	made.Meant = m.made.Meant
	return made, problems
}

func (m *reader) machine(root *nodes.Node) {
	if root.Get("fasteners") != nil && root.Get("strip") == nil {
		m.Fail(root.KeyNode("fasteners"), IsPattern, nil)
		return
	}
	f, ok := m.Fields(root, finding.Term("the machine file"), machineKeys...)
	if !ok {
		return
	}
	f.Versioned()
	m.made.Machine = f.NeedText("machine", "Fernhollow P4 pump engine")
	if n := f.Get("machine"); n != nil {
		m.made.MachineAt = n.Place()
	}
	m.made.Title = cmp.Or(f.Text("title"), m.made.Machine)
	m.made.Name = m.Source.Name(m.made.Machine)
	m.made.Revision = f.Text("revision")
	m.made.Date = f.Date()
	m.made.Cautions = f.Cautions()
	m.made.Tools = m.texts(f, "tools", finding.Term("a tool"))
	m.readStrip(f)
	var values []*nodes.Node
	m.made.Measures, values = measures.Read(f, m.measured, nil)
	for _, at := range values {
		m.made.MeasuresAt = append(m.made.MeasuresAt, at.Place())
	}
	if at := f.Node.Get("cautions"); at != nil && len(at.Items) == len(m.made.Cautions) {
		for _, item := range at.Items {
			m.made.CautionsAt = append(m.made.CautionsAt, item.Place())
		}
	}
	m.made.Meant = meant.Read(f, meant.OfMachine)
}

// measured takes any name as the place of a value: a machine file has no picture.
func (m *reader) measured(n *nodes.Node) (measure.Place, bool) {
	name, ok := m.Text(n, finding.Term("a place"))
	return measure.Place{Label: name}, ok
}

const stripExample = "[p4-cover, {note: Timing pin in}, {part: camshaft}, p4-head]"

func (m *reader) readStrip(f form.Fields) {
	n := f.Need("strip", stripExample)
	if n == nil {
		return
	}
	items := m.TrueList(n, "strip", stripExample)
	if len(items) > MostSteps {
		m.Fail(n, TooManySteps, finding.Values{"count": len(items), "most": MostSteps})
		return
	}
	joints := 0
	for _, item := range items {
		step, ok := m.step(item)
		m.made.Strip = append(m.made.Strip, step)
		if step.Pattern != nil || !ok {
			joints++ // a broken step may have been meant as one
		}
	}
	if len(items) > 0 && joints == 0 {
		m.Fail(n, NoJoint, finding.Values{"example": stripExample})
	}
}

// step reads one step: the name of a joint, or a map with joint, part, note or
// caution.
func (m *reader) step(item *nodes.Node) (Step, bool) {
	step := Step{At: item.Place()}
	if item.Shape == nodes.Scalar {
		return step, m.joint(&step, item)
	}
	f, ok := m.Fields(item, finding.Term("a step of strip"), stepKeys...)
	if !ok {
		return step, false
	}
	before := m.Count()
	key := f.Which("joint", "part", "note", "caution")
	n := f.Node.Get(key)
	if key == "" || n == nil {
		return step, false
	}
	switch key {
	case "joint":
		m.joint(&step, n)
		step.Gaskets = m.texts(f, "gaskets", finding.Term("a gasket"))
		step.Sealant, step.Again = f.Text("sealant"), f.Text("again")
		if again := f.Get("again"); again != nil {
			step.AgainAt = again.Place()
		}
	case "part":
		step.Part, _ = m.Text(n, finding.Term("a part"))
		m.checkPart(n)
		step.New, step.Manual = m.texts(f, "new", finding.Term("a new part")), m.texts(f, "manual", finding.Term("a fastener"))
		step.Figures = m.texts(f, "figures", finding.Term("a figure"))
	default:
		read := m.NoteText
		if key == "caution" {
			read = m.Caution
		}
		c, _ := read(n)
		m.checkNoJoint(n, key)
		step.Note, step.Side, step.Warns = c.Text, c.Side, key == "caution"
	}
	m.remarks(&step, f, key)
	return step, !m.ErrorsSince(before)
}

// joint finds the pattern of a joint. A joint comes apart once.
func (m *reader) joint(step *Step, n *nodes.Node) bool {
	name := strings.TrimSpace(n.Text)
	if n.Shape != nodes.Scalar || n.Null || name == "" {
		m.Fail(n, NoJointName, finding.Values{"found": n.Called()})
		return false
	}
	if earlier := m.joints[name]; earlier != nil {
		m.Fail(n, JointTwice, finding.Values{"name": problem.Quoted(name), "line": earlier.Line})
		return false
	}
	m.joints[name] = n
	found, err := m.Source.Named(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		meant, all := m.Source.Meant(name)
		m.Fail(n, NoPattern, finding.Values{"name": problem.Quoted(name), "meant": meant, "allowed": all})
		return false
	case err != nil:
		m.Fail(n, JointUnreadable, finding.Values{"name": problem.Quoted(name), "why": form.Told(source.Reason(err))})
		return false
	}
	found.Printable = m.Source.Printable
	step.Pattern, step.JointAt = &found, n.Place()
	return true
}

// checkPart warns of a part that comes out twice, and of one that is a joint.
func (m *reader) checkPart(n *nodes.Node) {
	if earlier := m.parts[n.Text]; earlier != nil {
		m.Warn(n, PartTwice, finding.Values{"name": problem.Quoted(n.Text), "line": earlier.Line})
		return
	}
	m.parts[n.Text] = n
	m.checkNoJoint(n, "part")
}

// checkNoJoint warns of the name of a pattern where no joint is read: its card
// would not be in the book.
func (m *reader) checkNoJoint(n *nodes.Node, key string) {
	if n.Shape != nodes.Scalar || n.Null || strings.ContainsAny(n.Text, " \t") {
		return
	}
	if _, err := m.Source.Beside(n.Text); err == nil {
		m.Warn(n, PartIsJoint, finding.Values{"name": n.Text, "key": key})
	}
}

// texts reads a text or a list of them.
func (m *reader) texts(f form.Fields, key string, what any) (all []string) {
	n := f.Get(key)
	if n == nil {
		return nil
	}
	for _, item := range m.Several(n) {
		if text, ok := m.Text(item, what); ok {
			all = append(all, text)
		}
	}
	return all
}

// remarks reads what is to be seen to when a joint is opened or closed, or a
// part goes out or back. Notes have their side in themselves.
func (m *reader) remarks(step *Step, f form.Fields, key string) {
	if key == "joint" || key == "part" {
		step.Loosen, step.Tighten = f.Text("loosen"), f.Text("tighten")
	}
	for _, other := range f.Node.Entries {
		switch name := other.Key.Text; {
		case key != "joint" && key != "part" && slices.Contains([]string{"loosen", "tighten"}, name):
			m.Fail(other.Key, NoteOfOneSide, finding.Values{"key": key, "example": "{" + key + ": {" + name + ": text}}"})
		case key != "joint" && slices.Contains([]string{"gaskets", "sealant", "again"}, name):
			m.Fail(other.Key, OfJoints, finding.Values{"key": name, "owner": key})
		case key != "part" && slices.Contains([]string{"new", "manual", "figures"}, name):
			m.Fail(other.Key, OfParts, finding.Values{"key": name, "owner": key})
		}
	}
}
