package job

import (
	"io"

	"drawdown/geometry/unit"
	"drawdown/patterns"
	"drawdown/patterns/problem"
	"drawdown/patterns/wrenches"
	"drawdown/sequence/figures"
	"drawdown/sequence/tension/wrench"
)

// Span is a figure over the span of friction, least first.
type Span struct{ Low, Nominal, High float64 }

// SpanOf puts the figures at the two ends of the friction in order.
func SpanOf[T ~float64](atLow, nominal, atHigh T) Span {
	return Span{float64(min(atLow, nominal, atHigh)), float64(nominal), float64(max(atLow, nominal, atHigh))}
}

// PoundsForce gives a force in lbf.
func PoundsForce(f unit.Force) float64 {
	pound, err := unit.ParseForce("1 lbf")
	if err != nil {
		panic(err) // the unit is known
	}
	return float64(f / pound)
}

// Kinds reads the fastener kinds of a pattern, to be asked about, in the order of the
// file.
func Kinds(name string, stdin io.Reader) (title string, kinds []figures.Ask, problems problem.List, err error) {
	source, err := patterns.Open(name, stdin)
	if err != nil {
		return "", nil, nil, err
	}
	input, problems := patterns.Read(source)
	for _, k := range input.Kinds {
		kinds = append(kinds, figures.Ask{Bolt: k.Figures()})
	}
	return input.Title, kinds, problems, nil
}

// Wrenches reads the shop's list of wrenches.
func Wrenches(path string, stdin io.Reader) ([]wrench.Wrench, problem.List, error) {
	source, err := wrenches.Open(path, stdin)
	if err != nil {
		return nil, nil, err
	}
	list, problems := wrenches.Read(source)
	return list, problems, nil
}

// WrenchAnswer is what to set, and the range in which it may be set.
type WrenchAnswer struct {
	wrench.Result
	Least, Most unit.Torque // usable of the wrench; without one: where the scale of one may end
}

// WorkOutWrench works out the setting and the wrench to take.
func WorkOutWrench(work wrench.Work) (WrenchAnswer, error) {
	r, err := wrench.Set(work)
	if err != nil {
		return WrenchAnswer{}, err
	}
	a := WrenchAnswer{Result: r, Least: r.Setting, Most: r.Setting / wrench.LeastUsable}
	if r.Wrench != nil {
		a.Least, a.Most = r.Wrench.UsableNm()
	}
	return a, nil
}
