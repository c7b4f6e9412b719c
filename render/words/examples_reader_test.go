package words

import (
	"drawdown/geometry/finding"
	"drawdown/patterns/source"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	source.NotThere:  {"sort": "pattern", "name": `"p4-hed"`, "meant": "p4-head", "all": []string{"p4-head", "p4-sump"}},
	source.OtherSort: {"sort": "pattern", "name": "fernhollow-p4"},
	source.IsFolder:  {"sort": "pattern", "path": "covers"},
})
