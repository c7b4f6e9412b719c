package patterns

import (
	"errors"
	"io/fs"
	"strings"

	"drawdown/patterns/problem"
	"drawdown/sequence/plan"
)

var machineKeys = []string{"drawdown", "title", "machine", "revision", "date", "tools", "strip", "cautions"}

// MostSteps bounds the work on one machine.
const MostSteps = 500

// Machine is what a machine file says: the joints of a machine in the order in
// which it is stripped, with what lies between them.
type Machine struct {
	Name     string // stem of the files that are written
	Title    string
	Machine  string
	Revision string
	Date     string
	Cautions []plan.Caution
	Tools    []string // beside wrenches and sockets, which the joints tell
	Strip    []MachineStep

	data []byte // of the file
}

// MachineStep is one step of stripping: a joint, a part that comes out, or a
// note. Just one of Joint, Part and Note is set.
type MachineStep struct {
	Joint   *Source // the pattern file of the joint
	Gaskets []string
	Sealant string
	Again   string // when the joint is checked once more: after the first run, cold

	Part    string   // that comes out here and goes back at the same place of the build
	New     []string // what of it is new when it goes back
	Manual  []string // fasteners of which only the maker's manual has the figures
	Figures []string // what else of the manual the build needs: clearances, limits

	Note  string
	Warns bool             // the note is a caution
	Side  plan.CautionSide // of a note

	Loosen  string // remark to a joint or a part on the way out
	Tighten string // and on the way back
}

// FingerprintWith is the fingerprint of the machine file together with those
// of its joints, so that an old book is known when any file has changed.
func (m Machine) FingerprintWith(joints []string) string {
	return fingerprint([][]byte{m.data, []byte(strings.Join(joints, "\n"))})
}

// machineReader reads a machine file with the means of the pattern reader.
type machineReader struct {
	*reader
	made   Machine
	joints map[string]*node
}

// ReadMachine reads a machine file:
//
//	drawdown: 1
//	title: Strip and rebuild
//	machine: Fernhollow P4 pump engine
//	tools: [hoist, flywheel lock]
//	strip:                                    # in the order of stripping
//	  - {note: Drain oil and coolant}
//	  - p4-cover                              # a joint: a built-in pattern or a path beside this file
//	  - {caution: {loosen: Timing pin in first}}
//	  - {joint: p4-head, gaskets: [head gasket], sealant: none, again: after the first run}
//	  - {part: camshaft, loosen: lift it level, tighten: oil the bearings}
//	  - {part: pulley, new: [pulley bolt], manual: [pulley bolt]}
//	cautions: [Engine cold]
//
// The list holds every problem, in reading order; when Stops says that one of
// them stops the work, the machine is empty.
func ReadMachine(source Source) (Machine, problem.List) {
	m := &machineReader{reader: &reader{source: source}, joints: map[string]*node{}}
	if root := m.parse(newFile(source.File, source.Data), source.Data); root != nil {
		m.version(root)
		m.machine(root)
	}
	problems := m.problems()
	if problems.Stops() {
		return Machine{}, problems
	}
	m.made.data = source.Data
	return m.made, problems
}

func (m *machineReader) machine(root *node) {
	if root.get("fasteners") != nil && root.get("strip") == nil {
		m.fail(root.keyNode("fasteners"), "", "this is the pattern of one joint; drawdown card draws its card")
		return
	}
	f, _ := m.fields(root, "the machine file", machineKeys...)
	if !f.has("drawdown") && !f.mistyped("drawdown") {
		m.fail(root, "", "the file needs drawdown: 1, the version of its format")
	}
	if n := f.need("machine", "Fernhollow P4 pump engine"); n != nil {
		m.made.Machine, _ = m.text(n, "machine")
	}
	if m.made.Title = f.text("title"); m.made.Title == "" {
		m.made.Title = m.made.Machine
	}
	if m.made.Name = m.source.stem; m.made.Name == "" {
		m.made.Name = slug(m.made.Machine)
	}
	m.made.Revision = f.text("revision")
	if n := f.get("date"); n != nil {
		m.made.Date = m.date(n)
	}
	m.readCautions(f)
	m.made.Cautions = m.input.Cautions
	m.made.Tools = m.texts(f, "tools", "a tool")
	m.readStrip(f)
}

const stripExample = "[p4-cover, {note: Timing pin in}, {part: camshaft}, p4-head]"

func (m *machineReader) readStrip(f fields) {
	n := f.need("strip", stripExample)
	if n == nil {
		return
	}
	items := m.trueList(n, "strip", stripExample)
	if len(items) > MostSteps {
		m.fail(n, "", "strip has %d steps; at most %d make a book", len(items), MostSteps)
		return
	}
	joints := 0
	for _, item := range items {
		step, ok := m.step(item)
		if ok {
			m.made.Strip = append(m.made.Strip, step)
		}
		if step.Joint != nil || !ok {
			joints++ // a broken step may have been meant as one
		}
	}
	if len(items) > 0 && joints == 0 {
		m.fail(n, "", "strip names no joint; write the name of a pattern, for example %s", stripExample)
	}
}

// step reads one step: the name of a joint, or a map with joint, part, note or
// caution.
func (m *machineReader) step(item *node) (MachineStep, bool) {
	step := MachineStep{}
	if item.shape == scalarShape {
		return step, m.joint(&step, item)
	}
	f, ok := m.fields(item, "a step of strip", "joint", "part", "note", "caution", "gaskets", "sealant", "again", "new", "manual", "figures", "loosen", "tighten")
	if !ok {
		return step, false
	}
	before := len(m.found)
	key := f.which("joint", "part", "note", "caution")
	n := f.node.get(key)
	if key == "" || n == nil {
		return step, false
	}
	switch key {
	case "joint":
		m.joint(&step, n)
		m.jointDetails(&step, f)
	case "part":
		step.Part, _ = m.text(n, "a part")
		step.New, step.Manual = m.texts(f, "new", "a new part"), m.texts(f, "manual", "a fastener")
		step.Figures = m.texts(f, "figures", "a figure")
	default:
		c, _ := m.caution(n)
		step.Note, step.Side, step.Warns = c.Text, c.Side, key == "caution"
	}
	m.remarks(&step, f, key)
	return step, !m.errorsSince(before)
}

// joint finds the pattern of a joint. A joint comes apart once.
func (m *machineReader) joint(step *MachineStep, n *node) bool {
	name := strings.TrimSpace(n.text)
	if n.shape != scalarShape || n.null || name == "" {
		m.fail(n, "", "a joint is the name of a pattern, such as p4-head or covers/front.yaml, not %s", n.called())
		return false
	}
	if earlier := m.joints[name]; earlier != nil {
		m.fail(n, "", "the joint %s stands here twice; it stood first on line %d", quoted(name), earlier.line)
		return false
	}
	m.joints[name] = n
	source, err := openBase(name, m.source)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		m.fail(n, "a path relative to this file, or "+alternatives(Builtin()),
			"there is no pattern and no file %s%s", quoted(name), problem.DidYouMean(bareName(name), Builtin()))
		return false
	case err != nil:
		m.fail(n, "", "the joint %s cannot be read: %s", quoted(name), reason(err))
		return false
	}
	source.Printable = m.source.Printable
	step.Joint = &source
	return true
}

func (m *machineReader) jointDetails(step *MachineStep, f fields) {
	step.Gaskets = m.texts(f, "gaskets", "a gasket")
	step.Sealant, step.Again = f.text("sealant"), f.text("again")
}

// texts reads a text or a list of them.
func (m *machineReader) texts(f fields, key, what string) (all []string) {
	n := f.get(key)
	if n == nil {
		return nil
	}
	for _, item := range m.list(n) {
		if text, ok := m.text(item, what); ok {
			all = append(all, text)
		}
	}
	return all
}

// remarks reads what is to be seen to when a joint is opened or closed, or a
// part goes out or back. Notes have their side in themselves.
func (m *machineReader) remarks(step *MachineStep, f fields, key string) {
	note := key == "note" || key == "caution"
	for _, side := range []plan.CautionSide{plan.CautionLoosen, plan.CautionTighten} {
		if note && f.has(string(side)) {
			m.fail(f.node.keyNode(string(side)), "", "a %s for one side is {%s: {%s: text}}", key, key, side)
		}
	}
	if !note {
		step.Loosen, step.Tighten = f.text("loosen"), f.text("tighten")
	}
	for _, only := range []string{"gaskets", "sealant", "again"} {
		if key != "joint" && f.has(only) {
			m.fail(f.node.keyNode(only), "", "%s belongs to a joint, not to a %s", only, key)
		}
	}
	for _, only := range []string{"new", "manual", "figures"} {
		if key != "part" && f.has(only) {
			m.fail(f.node.keyNode(only), "", "%s belongs to a part, not to a %s", only, key)
		}
	}
}
