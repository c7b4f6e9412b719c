package inputtest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/patterns/table"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	table.TooManyAnswers:    {"most": 200},
	table.ColumnTwice:       {"column": "\"order\""},
	table.PositionOutOfTurn: {"column": "\"order\"", "next": 2},
	table.UnknownColumn:     {"column": "\"order\"", "meant": "M2"},
	table.ColumnMissing:     {"column": "\"order\""},
	table.OrderAndPositions: {},
	table.SheetMissing:      {"count": 3},
	table.StudentMissing:    {},
	table.TooManyColumns:    {},
	table.EmptyPosition:     {"name": "M1"},
	table.AnsweredTwice:     {"student": "\"Ana\"", "line": 7},
	table.UnknownUnit:       {"column": "\"order\"", "allowed": []string{"cast", "mark"}},
	table.PlacesMissing:     {"allowed": []string{"left", "right"}},
	table.CellMissing:       {"column": "\"order\""},
	table.NoAnswers:         {"example": "[M1, M2]"},
	table.NoPoints:          {},
	table.TooManyPoints:     {"most": 200},
	table.BareQuote:         {},
	table.StrayQuote:        {},
	table.RowNotMarked:      {"why": finding.Failed(thread.LeftHand, nil)},
})
