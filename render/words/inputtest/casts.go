package inputtest

import (
	"drawdown/geometry/finding"
	"drawdown/patterns/meaning"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	meaning.CastsIdle: {"count": 13, "all": 14, "ids": []string{"M7"}},
	meaning.CastGap: {"count": 14, "missing": []string{"14"}, "beyond": []finding.Finding{
		finding.Noted(meaning.CastOn, finding.Values{"id": "M7", "cast": 15})}},
	meaning.CastOn: {"id": "M7", "cast": 15},
})
