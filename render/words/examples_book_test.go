package words

import "drawdown/geometry/finding"

// The code is named in full: package book stands above this one.
var _ = exampleOf(map[finding.Code]finding.Values{
	"book joint": {"joint": "Cylinder head", "what": "the label \"water pump\" found no room on a5"},
})
