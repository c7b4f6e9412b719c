package inputtest

import (
	"drawdown/geometry/finding"
	"drawdown/patterns/edit"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	edit.Unreadable:  {},
	edit.NoPart:      {"path": "kinds / side"},
	edit.Entangled:   {"path": "kinds / side"},
	edit.NoFastener:  {"id": "M11"},
	edit.IDTaken:     {"id": "M3"},
	edit.NoOperation: {"written": "dance"},
	edit.LacksValue:  {"do": "move", "key": "at"},
	edit.ErrorsFirst: {},
	edit.Elsewhere:   {"id": "M3"},
	edit.TextChanged: {},
	edit.NotRegular:  {},
	edit.TooFew:      {"do": "align", "least": 2},
})
