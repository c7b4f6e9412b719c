package job

import (
	"errors"
	"io"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/patterns/machine"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/render"
	"drawdown/render/font"
	"drawdown/render/imprint"
	"drawdown/render/sheet/book"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
)

// LoadMachine reads a machine file and plans the work on every joint. The problems
// are those of the machine file and of all its patterns.
func LoadMachine(name string, stdin io.Reader) (overhaul.Overhaul, problem.List, error) {
	from, err := patterns.Machines.Open(name, stdin)
	if err != nil {
		return overhaul.Overhaul{}, nil, err
	}
	o, problems := planMachine(from)
	return o, problems, nil
}

// planMachine reads a machine file that is open and plans the work.
func planMachine(from source.Source) (overhaul.Overhaul, problem.List) {
	from.Printable = font.Missing
	machine, problems := machine.Read(from)
	if problems.Stops() {
		return overhaul.Overhaul{}, acknowledged(machine.Meant, problems)
	}
	o := machine.Overhaul
	var fingerprints []string
	for _, s := range machine.Strip {
		if s.Pattern != nil {
			p, found := planned(*s.Pattern, "", "")
			problems = append(problems, found...)
			problems = append(problems, again(s, p)...)
			problems = append(problems, ofJoint(machine, s, p)...)
			s.Joint = &p
			fingerprints = append(fingerprints, p.Fingerprint)
		}
		o.Tasks = append(o.Tasks, s.Task)
	}
	if problems.Stops() {
		return overhaul.Overhaul{}, acknowledged(machine.Meant, problems)
	}
	for _, doubt := range o.Doubts() {
		problems = append(problems, warnedAt(machine.Strip[doubt.At.Steps[0]-1].At, doubt))
	}
	o.Fingerprint = machine.FingerprintWith(fingerprints)
	return o, acknowledged(machine.Meant, problems)
}

// Book binds the papers of a machine. Drawn is told of each joint's papers.
func Book(o overhaul.Overhaul, trays book.Trays, ask Printing, drawn func(done, all int)) (files []render.File, notes []finding.Finding, err error) {
	document, notes, err := book.Document(o, book.Request{Request: ask.Request, Trays: trays, Drawn: drawn})
	if err != nil {
		return nil, notes, err
	}
	document.Imprint = imprint.Text(imprintsOf(o)...)
	files, err = ask.files(document, o.Name, "", o.Date)
	return files, notes, err
}

// imprintsOf names the state of the machine file, and that of each joint once.
func imprintsOf(o overhaul.Overhaul) []imprint.Imprint {
	list := []imprint.Imprint{imprintOf(o.Heading)}
	for _, j := range o.Joints() {
		if one := imprintOf(j.Heading); !slices.Contains(list, one) {
			list = append(list, one)
		}
	}
	return list
}

// ofJoint reports a joint of another machine, and one whose gasket the machine
// file does not list.
func ofJoint(m machine.Machine, s machine.Step, p plan.Plan) (problems problem.List) {
	warn := func(code finding.Code, values finding.Values) {
		problems = append(problems, warnedAt(s.JointAt, finding.Warned(code, values)))
	}
	own, other := strings.ToLower(m.Machine), strings.ToLower(p.Machine)
	if !strings.Contains(own, other) && !strings.Contains(other, own) { // P4 is the Fernhollow P4
		warn(machine.OtherMachine, finding.Values{"joint": p.Title, "machine": p.Machine, "own": m.Machine})
	}
	if kind := p.Clamped.Gasket.Kind; kind != "" && kind != "none" && len(s.Gaskets) == 0 && s.Sealant == "" {
		warn(machine.GasketUnlisted, finding.Values{"joint": p.Title, "gasket": finding.Term(kind)})
	}
	return problems
}

// again reports a joint that is to be tightened once more and must not be.
func again(s machine.Step, p plan.Plan) problem.List {
	var found finding.Finding
	if s.Again == "" || !errors.As(overhaul.CheckAgain(p), &found) {
		return nil
	}
	at := s.AgainAt
	at.Severity, at.Found = found.Severity, &found
	return problem.List{at}
}
