package words

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/patterns/table"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	table.TooManyAnswers:    {"most": 200},
	table.ColumnTwice:       {"column": "M1"},
	table.PositionOutOfTurn: {"column": "M1", "next": 2},
	table.UnknownColumn:     {"column": "M1", "meant": "M2"},
	table.ColumnMissing:     {"column": "M1"},
	table.OrderAndPositions: {},
	table.SheetMissing:      {"count": 3},
	table.StudentMissing:    {},
	table.TooManyColumns:    {},
	table.EmptyPosition:     {"name": "M1"},
	table.AnsweredTwice:     {"student": "M1", "line": 7},
	table.UnknownUnit:       {"column": "M1", "allowed": []string{"cast", "mark"}},
	table.PlacesMissing:     {"allowed": []string{"left", "right"}},
	table.CellMissing:       {"column": "M1"},
	table.NoAnswers:         {"example": "[M1, M2]"},
	table.NoPoints:          {},
	table.TooManyPoints:     {"most": 200},
	table.BareQuote:         {},
	table.StrayQuote:        {},
	table.RowNotMarked:      {"why": finding.Failed(thread.LeftHand, nil)},
})
