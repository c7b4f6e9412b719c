package job

import (
	"cmp"
	"errors"
	"io"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/patterns/machine"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/patterns/texts"
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
	o, problems := planMachine(from, nil)
	return o, problems, nil
}

// checkMachine reads a machine file as LoadMachine does, and looks for patterns beside it
// that it does not use.
func checkMachine(name string, stdin io.Reader) (overhaul.Overhaul, problem.List, error) {
	from, err := patterns.Machines.Open(name, stdin)
	if err != nil {
		return overhaul.Overhaul{}, nil, err
	}
	o, problems := planMachine(from, func(m machine.Machine, o overhaul.Overhaul) problem.List { return unusedFiles(name, m, o) })
	return o, problems, nil
}

// planMachine reads a machine file that is open and plans the work. More looks for further
// problems; it may be nil.
func planMachine(from source.Source, more func(machine.Machine, overhaul.Overhaul) problem.List) (overhaul.Overhaul, problem.List) {
	from.Printable = font.Missing
	machine, problems := machine.Read(from)
	if problems.Stops() {
		return overhaul.Overhaul{}, acknowledged(machine.Meant, problems)
	}
	o := machine.Overhaul
	var fingerprints []string
	var joints []reading
	for _, s := range machine.Strip {
		if s.Pattern != nil {
			r := readAndPlanned(*s.Pattern, "", "")
			problems = append(problems, notYet(problems, r.problems)...)
			problems = append(problems, again(s, r.plan)...)
			problems = append(problems, gasketUnlisted(s, r.plan)...)
			s.Joint = &r.plan
			joints, fingerprints = append(joints, r), append(fingerprints, r.plan.Fingerprint)
		}
		o.Tasks = append(o.Tasks, s.Task)
	}
	problems = append(problems, ofOtherMachine(machine, joints)...)
	if problems.Stops() {
		return overhaul.Overhaul{}, acknowledged(machine.Meant, problems)
	}
	for _, doubt := range o.Doubts() {
		problems = append(problems, warnedAt(machine.Strip[doubt.At.Steps[0]-1].At, doubt))
	}
	problems = append(problems, textsOfJoints(machine, o)...)
	problems = append(problems, at(machine.MeasuresAt, o.MeasureDoubts())...)
	problems = append(problems, at(machine.CautionsAt, o.CautionDoubts())...)
	if more != nil {
		problems = append(problems, more(machine, o)...)
	}
	o.Fingerprint = machine.FingerprintWith(fingerprints)
	return o, acknowledged(machine.Meant, problems)
}

// at reports what is found about the things at some places, where something is.
func at(places problem.List, found []*finding.Finding) (problems problem.List) {
	for i, f := range found {
		if f != nil && i < len(places) {
			problems = append(problems, warnedAt(places[i], *f))
		}
	}
	return problems
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

// notYet returns what is not reported of its line already: two banks have the lines of
// one file.
func notYet(reported, more problem.List) problem.List {
	code := func(p problem.Problem) finding.Code {
		if p.Found == nil {
			return p.Code
		}
		return cmp.Or(p.Code, p.Found.Code)
	}
	return slices.DeleteFunc(more, func(p problem.Problem) bool {
		return p.Line > 0 && slices.ContainsFunc(reported, func(r problem.Problem) bool {
			return r.File == p.File && r.Line == p.Line && r.Column == p.Column && code(r) == code(p)
		})
	})
}

// ofOtherMachine reports joints of another machine, at the line of their file, or that
// of the machine file where none is of its machine.
func ofOtherMachine(m machine.Machine, joints []reading) (problems problem.List) {
	own := strings.ToLower(m.Machine)
	for _, r := range joints {
		other := strings.ToLower(r.plan.Machine)
		if strings.Contains(own, other) || strings.Contains(other, own) { // P4 is the Fernhollow P4
			continue
		}
		at := r.places.Machine()
		if slices.ContainsFunc(problems, func(p problem.Problem) bool { return p.File == at.File && p.Line == at.Line }) {
			continue // two banks have the line of one file
		}
		problems = append(problems, warnedAt(at, finding.Warned(machine.OtherMachine, finding.Values{"joint": r.plan.Title, "machine": r.plan.Machine, "own": m.Machine})))
	}
	if len(problems) > 1 && !slices.ContainsFunc(joints, func(r reading) bool {
		return r.plan.Machine != "" && strings.Contains(own, strings.ToLower(r.plan.Machine))
	}) {
		return problem.List{warnedAt(m.MachineAt, *problems[0].Found)}
	}
	return problems
}

// gasketUnlisted reports a joint whose gasket the machine file does not list.
func gasketUnlisted(s machine.Step, p plan.Plan) problem.List {
	kind := p.Clamped.Gasket.Kind
	if kind == "" || kind == "none" || len(s.Gaskets) > 0 || s.Sealant != "" {
		return nil
	}
	return problem.List{warnedAt(s.JointAt, finding.Warned(machine.GasketUnlisted, finding.Values{"joint": p.Title, "gasket": finding.Term(kind)}))}
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

// textsOfJoints compares the texts of a machine file with the joints that they are about:
// the remarks of a joint with it, and all others with those that they name.
func textsOfJoints(m machine.Machine, o overhaul.Overhaul) (problems problem.List) {
	for i, t := range o.Tasks {
		at := m.Strip[i].At
		if t.Joint != nil {
			of := []overhaul.Joint{{Plan: t.Joint}}
			problems = append(problems, againstAll(at, plan.Caution{Text: t.Loosen, Side: plan.CautionLoosen}, of)...)
			problems = append(problems, againstAll(at, plan.Caution{Text: t.Tighten, Side: plan.CautionTighten}, of)...)
			continue
		}
		for _, c := range []plan.Caution{{Text: t.Note, Side: t.Side}, {Text: t.Loosen, Side: plan.CautionLoosen}, {Text: t.Tighten, Side: plan.CautionTighten}} {
			problems = append(problems, againstAll(at, c, jointsNamed(c.Text, o))...)
		}
	}
	for i, c := range o.Cautions {
		if i < len(m.CautionsAt) {
			problems = append(problems, againstAll(m.CautionsAt[i], c, jointsNamed(c.Text, o))...)
		}
	}
	return problems
}

func jointsNamed(text string, o overhaul.Overhaul) []overhaul.Joint {
	return slices.DeleteFunc(o.Joints(), func(j overhaul.Joint) bool { return !texts.About(text, *j.Plan) })
}

// againstAll reports what a text says against every joint that it is about: one that is
// right for one of them may be about this one.
func againstAll(at problem.Problem, c plan.Caution, joints []overhaul.Joint) (problems problem.List) {
	for i, j := range joints {
		found := texts.OfJoint(*j.Plan, c)
		if len(found) == 0 {
			return nil
		}
		for _, f := range found {
			if i == 0 {
				problems = append(problems, warnedAt(at, finding.Warned(machine.TextOfJoint, finding.Values{"title": j.Title, "why": f})))
			}
		}
	}
	return problems
}
