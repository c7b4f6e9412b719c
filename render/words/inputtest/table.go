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
	table.TooManyCells:      {"cells": 5, "columns": 3},
	table.MixedDecimals:     {"written": "\"1,5\""},
	table.ReadAs: {"separator": "semicolon", "decimal": "comma", "columns": []finding.Finding{
		finding.Noted(table.ColumnRead, finding.Values{"column": "id", "heading": "\"Feature\""}),
		finding.Noted(table.ColumnRead, finding.Values{"column": "x", "heading": "\"X actual\"", "unit": "mm"}),
	}},
	table.ColumnRead:     {"column": "x", "heading": "\"X actual\"", "unit": "mm"},
	table.ColumnsIgnored: {"columns": []string{"\"Z\"", "\"note\""}},
	table.LinesAbove:     {"count": 2, "lines": []string{"\"Part cover\"", "\"Operator A. Kern\""}},
	table.LineLeftOut:    {"line": 9, "text": "\"Total 4\""},
	table.RowNotMarked:   {"why": finding.Failed(thread.LeftHand, nil)},
})
