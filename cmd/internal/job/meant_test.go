package job

import (
	"slices"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/patterns/meaning"
	"drawdown/patterns/meant"
	"drawdown/patterns/problem"
	"drawdown/sequence/figures"
)

// Every name acknowledges a warning, so that none in a file is useless.
func TestEveryNameThatMayBeMeantHasAWarning(t *testing.T) {
	t.Parallel()
	used := map[meant.Name]bool{}
	all := slices.Concat(meant.OfPattern, meant.OfMachine)
	for _, name := range mayBeMeant {
		used[name] = true
		if !slices.Contains(all, name) {
			t.Errorf("%q is not in the list of names", name)
		}
	}
	for _, name := range all {
		if !used[name] {
			t.Errorf("no warning is called %q", name)
		}
	}
}

// First principles: an acknowledged warning becomes a note that quotes the
// reason; errors, and warnings that cannot be acknowledged, stay unchanged; a
// reason without its warning is reported, except one in a file below.
func TestWarningsThatAreMeant(t *testing.T) {
	t.Parallel()
	list := func() problem.List {
		return problem.List{
			problem.Of(finding.Warned(meaning.OddPlace, nil)), problem.Of(finding.Warned(meaning.CastGap, nil)),
			problem.Of(finding.Warned(figures.TorqueBreaks, nil)),
		}
	}
	stops := problem.Of(finding.Failed(meaning.ClusterInGroups, nil))
	own := meant.Entry{Name: meant.OffItsPlace, Reason: "one way", Own: true}
	for name, c := range map[string]struct {
		entries []meant.Entry
		more    problem.List
		want    []finding.Code
	}{
		"nothing":         {nil, nil, []finding.Code{MayBeMeant, MayBeMeant, figures.TorqueBreaks}},
		"one":             {[]meant.Entry{own}, nil, []finding.Code{IsMeant, MayBeMeant, figures.TorqueBreaks}},
		"nothing met":     {[]meant.Entry{{Name: meant.Clusters, Reason: "so", Own: true}}, nil, []finding.Code{MayBeMeant, MayBeMeant, figures.TorqueBreaks, MeantUnused}},
		"beside an error": {[]meant.Entry{own, {Name: meant.Clusters, Reason: "so", Own: true}}, problem.List{stops}, []finding.Code{IsMeant, MayBeMeant, figures.TorqueBreaks, meaning.ClusterInGroups}},
		"of a file below": {[]meant.Entry{{Name: meant.Hole, Reason: "so"}}, nil, []finding.Code{MayBeMeant, MayBeMeant, figures.TorqueBreaks}},
	} {
		var got []finding.Code
		for _, p := range acknowledged(c.entries, append(list(), c.more...)) {
			got = append(got, p.Found.Code)
			if p.Found.Code == IsMeant && (p.Severity != finding.Note || p.Code != meaning.OddPlace) {
				t.Errorf("%s: %+v", name, p)
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}
