package inputtest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	unit.NoQuantity:       {"written": "wide", "examples": []string{"110 mm", "4.25 in"}},
	unit.NoTorque:         {"written": "tight", "examples": []string{"20 N·m", "15 lbf·ft"}},
	unit.NoUnit:           {"written": "20", "examples": []string{"20 N·m", "15 lbf·ft"}},
	unit.Unknown:          {"written": "5 furlong", "unit": "furlong", "allowed": []string{"mm", "in"}},
	unit.Unreadable:       {"written": "43/8 in", "why": finding.Failed(unit.ImproperFraction, finding.Values{"fraction": "43/8"})},
	unit.TooLarge:         {"written": "1e308 in"},
	unit.NotSensible:      {"written": "1e-9 N·m", "end": "least", "least": unit.Written("0.0001 N·m"), "most": unit.Written("100000 N·m")},
	unit.DoubtfulComma:    {"number": "1,000", "thousands": "1000", "decimal": "1.000"},
	unit.ThousandsSigns:   {"number": "1,234.5"},
	unit.ImproperFraction: {"fraction": "43/8"},
	unit.NotAsked:         {"unit": "furlong", "allowed": []string{"mm", "kN", "MPa", "N·m"}},
	unit.NoStiffness:      {"written": "0 MPa/mm", "least": 0.01, "most": 1e6, "unit": "MPa/mm", "examples": []string{"120 MPa/mm", "50-250 MPa/mm"}},
	unit.TooManyFigures:   {"written": "1-2-3-4 MPa/mm", "example": "50-250 MPa/mm"},
	unit.NoDecimal:        {"written": "0.15 or so", "most": 6},
	unit.NoGauge:          {"written": "furlong", "allowed": unit.GaugeNames()},
	unit.FallingFigures:   {"written": "250-50 MPa/mm", "example": "50-250 MPa/mm"},
})
