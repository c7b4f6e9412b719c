package job

import (
	"io"

	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/patterns/machine"
	"drawdown/patterns/problem"
	"drawdown/render"
	"drawdown/render/font"
	"drawdown/render/sheet/book"
	"drawdown/sequence/overhaul"
)

// LoadMachine reads a machine file and plans the work on every joint. The problems
// are those of the machine file and of all its patterns.
func LoadMachine(name string, stdin io.Reader) (overhaul.Overhaul, problem.List, error) {
	source, err := patterns.Machines.Open(name, stdin)
	if err != nil {
		return overhaul.Overhaul{}, nil, err
	}
	source.Printable = font.Missing
	machine, problems := machine.Read(source)
	if problems.Stops() {
		return overhaul.Overhaul{}, problems, nil
	}
	o := machine.Overhaul
	var fingerprints []string
	for _, s := range machine.Strip {
		if s.Pattern != nil {
			p, found := planned(*s.Pattern, "", "")
			problems = append(problems, found...)
			s.Joint = &p
			fingerprints = append(fingerprints, p.Fingerprint)
		}
		o.Tasks = append(o.Tasks, s.Task)
	}
	if problems.Stops() {
		return overhaul.Overhaul{}, problems, nil
	}
	o.Fingerprint = machine.FingerprintWith(fingerprints)
	return o, problems, nil
}

// Book binds the papers of a machine. Drawn is told of each joint's papers.
func Book(o overhaul.Overhaul, trays book.Trays, ask Printing, drawn func(done, all int)) (files []render.File, notes []finding.Finding, err error) {
	document, notes, err := book.Document(o, book.Request{Request: ask.Request, Trays: trays, Drawn: drawn})
	if err != nil {
		return nil, notes, err
	}
	files, err = ask.files(document, o.Name, "", o.Date)
	return files, notes, err
}
