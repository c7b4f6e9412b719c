package job

import (
	"io"
	"time"

	"drawdown/patterns"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/patterns/wrenches"
	"drawdown/sequence/figures"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/wrench"
)

// Kinds reads the fastener kinds of a pattern with their stages, to be asked
// about, in the order of the file, and the plan that they are in.
func Kinds(name string, stdin io.Reader) (p plan.Plan, kinds []figures.Ask, problems problem.List, err error) {
	source, err := patterns.Open(name, stdin)
	if err != nil {
		return plan.Plan{}, nil, nil, err
	}
	r := readAndPlanned(source, "", "")
	for _, k := range r.input.Kinds {
		kinds = append(kinds, figures.Ask{Bolt: r.plan.Bolt(k)})
	}
	return r.plan, kinds, r.problems, nil
}

// Wrenches reads the shop's list of wrenches, as of today.
func Wrenches(path string, stdin io.Reader, today time.Time) ([]wrench.Wrench, problem.List, error) {
	from, err := source.Open(path, stdin, source.MostBytes)
	if err != nil {
		return nil, nil, err
	}
	list, problems := wrenches.Read(from, today)
	return list, problems, nil
}

// WrenchesIn reads the shop's list of wrenches from the bytes of its file.
func WrenchesIn(file string, data []byte) ([]wrench.Wrench, problem.List) {
	return wrenches.Read(patterns.FromBytes(file, data), time.Time{})
}
