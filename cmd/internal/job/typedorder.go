package job

import (
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/meant"
	"drawdown/patterns/problem"
	"drawdown/sequence"
	"drawdown/sequence/judge"
	"drawdown/sequence/plan"
)

// Words that replace the ids of an order.
const (
	FilesOrder = "file" // the file's own
	CastOrder  = "cast" // by the numbers on the part
)

// Judge checks an order against the rules of the trade: ids or cast numbers as
// typed, or one of the words above. The error is a finding, for a list that
// cannot be read.
// The file's own order is described like a maker's if the file acknowledges it.
func Judge(p plan.Plan, side judge.Side, order string, acknowledged problem.List) (judge.Report, error) {
	list, err := orderIDs(p, side, order)
	if err != nil {
		return judge.Report{}, err
	}
	in := judge.ForPlan(p, side, list)
	// The numbers on the part are the maker's, whatever the file uses.
	in.Makers = in.Makers || isWord(order, CastOrder) || isWord(order, FilesOrder) && meansOrder(acknowledged)
	in.Nearest = problem.Nearest
	return judge.Order(in), nil
}

func orderIDs(p plan.Plan, side judge.Side, order string) ([]string, error) {
	switch {
	case isWord(order, FilesOrder) && side == judge.Loosen:
		return p.IDs(p.Loosen.Order), nil
	case isWord(order, FilesOrder):
		return p.IDs(p.Tighten.Order), nil
	case isWord(order, CastOrder):
		return judge.CastOrder(p, side)
	}
	if way := sequence.Way(strings.ToLower(strings.TrimSpace(order))); slices.Contains(sequence.Ways, way) && !hasFastener(p, order) {
		return nil, finding.Failed(judge.WayNotAnOrder, finding.Values{"way": string(way)})
	}
	return judge.ReadList(p.Joint, order)
}

// meansOrder reports whether a file acknowledges its order among its problems.
func meansOrder(problems problem.List) bool {
	return slices.ContainsFunc(problems, func(p problem.Problem) bool {
		name := mayBeMeant[p.Code]
		return p.Severity == finding.Note && p.Found != nil && p.Found.Code == IsMeant && (name == meant.Order || name == meant.SmallFirst)
	})
}

func hasFastener(p plan.Plan, id string) bool {
	return slices.ContainsFunc(p.Joint.Fasteners, func(f geometry.Fastener) bool { return isWord(id, f.ID) })
}

func isWord(order, word string) bool { return strings.EqualFold(strings.TrimSpace(order), word) }
