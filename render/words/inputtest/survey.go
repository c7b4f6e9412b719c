package inputtest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
	"drawdown/geometry/unit"
)

func between(from, to string) finding.Finding {
	return finding.Noted(survey.Between, finding.Values{"from": from, "to": to})
}

var _ = exampleOf(map[finding.Code]finding.Values{
	survey.WrongReading:      {"from": "B", "to": "D", "off": unit.Length(8.01), "way": "long", "taken": "outside"},
	survey.RivalReadings:     {"readings": []finding.Finding{between("A", "B"), between("C", "D")}},
	survey.Free:              {"hole": "E", "next": []finding.Finding{between("E", "A"), between("E", "C")}},
	survey.Weak:              {"hole": "E", "error": unit.Length(2.49), "next": []finding.Finding{between("E", "C")}},
	survey.Disputed:          {"hole": "E", "error": unit.Length(2.49), "readings": []finding.Finding{between("E", "A"), between("E", "B"), between("E", "C")}, "next": []finding.Finding{between("E", "D")}},
	survey.BadDiameter:       {"hole": "E", "stated": unit.Length(10), "fits": unit.Length(8.02), "count": 6},
	survey.DiameterOrReading: {"hole": "E", "stated": unit.Length(10), "fits": unit.Length(8.02), "count": 6},
	survey.TwoPlaces:         {"hole": "D", "x": unit.Length(71.34), "y": unit.Length(-36.2), "next": []finding.Finding(nil)},
	survey.MirrorFits:        {},
	survey.OneLine:           {},
	survey.Unchecked:         {"readings": []finding.Finding{between("A", "B"), between("A", "C")}},
	survey.Agreement:         {"rms": unit.Length(0.015), "reading": unit.Length(0.06), "expected": unit.Length(0.01), "stated": "stated", "fine": true, "rounded": unit.Length(0.01)},
	survey.WayRound:          {"way": "anticlockwise", "first": "A"},
	survey.LopsidedSide:      {"side": "above", "named": []string{"3"}, "against": 2, "holes": 3, "far": "4"},
	survey.NoNetwork:         {},
	survey.AccuracyCoarse:    {"stated": unit.Length(5), "rms": unit.Length(0.01), "digit": unit.Length(0.01)},
	survey.AccuracyFine:      {"stated": unit.Length(0.005), "rms": unit.Length(0.3), "digit": unit.Length(0.01)},
	survey.AccuracyOfDigit:   {"stated": unit.Length(5), "rms": unit.Length(0), "digit": unit.Length(0.01)},
	survey.Between:           {"from": "A", "to": "B"},
	survey.GridLayout:        {"columns": 3, "rows": 2, "count": 0, "x": 72.0, "y": 84.5},
	survey.RectangleLayout:   {"columns": 5, "rows": 2, "count": 0, "x": 300.0, "y": 160.0},
	survey.CircleLayout:      {"columns": 0, "rows": 0, "count": 16, "x": 240.0, "y": 0.0},
	survey.RowLayout:         {"columns": 0, "rows": 0, "count": 5, "x": 60.0, "y": 0.0},
})
