package cli

import "drawdown/patterns/problem"

// batchOut is what card --json prints for many patterns.
type batchOut struct {
	Drawn  int       `json:"drawn"`
	Failed int       `json:"failed"`
	Cards  []cardOut `json:"cards"` // in the order of the command line
}

// cardOut is what came of one of them.
type cardOut struct {
	Pattern  string       `json:"pattern"`
	Status   Status       `json:"status"` // as the exit status for it alone
	Files    []string     `json:"files"`
	Warnings []string     `json:"warnings"`
	Problems problem.List `json:"problems"`
	Error    string       `json:"error,omitempty"` // what went wrong beside the problems
}

func batchJSON(all []*batchPattern) batchOut {
	out := batchOut{Cards: []cardOut{}}
	for _, one := range all {
		c := cardOut{
			Pattern: one.file, Status: one.status, Files: listed(one.paths),
			Warnings: listed(one.notes), Problems: said(one.problems),
		}
		if one.err != nil {
			c.Error = saidError(one.err)
		}
		if one.status == Done {
			out.Drawn++
		} else {
			out.Failed++
		}
		out.Cards = append(out.Cards, c)
	}
	return out
}
