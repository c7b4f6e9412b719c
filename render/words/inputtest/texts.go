package inputtest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/texts"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	texts.TextTorque:      {"text": "to 220 N·m", "torque": unit.GivenTorque{Value: 220}, "kind": "rim"},
	texts.TextAngle:       {"text": "turn 60° on", "angle": unit.Angle(60), "kind": "rim"},
	texts.TextDry:         {"text": "Threads dry", "kinds": []string{"pan"}, "lubricants": []string{"engine oil"}},
	texts.TextLubricant:   {"text": "Oil the threads", "lubricants": []string{"molybdenum paste"}},
	texts.TextCount:       {"text": "Fit 12 new main bolts", "stated": 12, "what": "new main bolts", "count": 14},
	texts.TextName:        {"text": "M15 is longer", "name": "M15"},
	texts.TextSize:        {"text": "Use a 14 mm socket", "stated": "14 mm socket", "have": []string{"13 mm", "16 mm"}},
	texts.TextGasket:      {"text": "New paper gasket", "gasket": finding.Term("spiral-wound")},
	texts.TextSide:        {"text": "RIGHT BANK", "other": "Cylinder head, left bank"},
	texts.TextOtherWork:   {"text": "Oil the threads", "side": "loosen"},
	texts.TextOtherKind:   {"text": "Rim bolts M1 to M3 last", "id": "M1", "kind": "rim", "own": "main"},
	texts.TextStageKind:   {"text": "all 8 main bolts", "kind": "main", "kinds": []string{"rim"}},
	texts.TextAngleFrom:   {"text": "150° in all after 30 N·m", "torque": unit.GivenTorque{Value: 30}, "before": unit.GivenTorque{Value: 60}},
	texts.TextCylinders:   {"text": "Harrow V8", "stated": 8, "count": 3, "highest": 3},
	texts.TextsDisagree:   {"text": "The gasket may be used again", "other": "New gasket"},
	texts.TextPlace:       {"text": "intake side at the top", "label": "INTAKE SIDE", "side": "top"},
	texts.TextReuse:       {"text": "New head bolts", "reuse": "yes"},
	texts.TextMachine:     {"text": "Harrow G4 manual", "machine": "Harrow G6 generator"},
	texts.TextGasketAgain: {"text": "Gasket used again", "gasket": finding.Term("composite")},
	texts.TextFirst:       {"text": "F1 and F2 last", "which": "last", "have": []string{"M9", "M10"}},
	texts.TextBefore:      {"text": "Rim bolts before the main bolts", "first": "rim", "second": "main"},
	texts.TextAtSide:      {"text": "2 bell bolts at the pulley end", "names": []string{"B1", "B2"}, "side": "pulley"},
	texts.TextFromSide:    {"text": "Caps 1 to 5 from the pulley end", "name": "cap 5", "side": "pulley"},
	texts.TextWait:        {"text": "within 10 min of the sealant", "stated": unit.Duration(10), "wait": unit.Duration(30)},
	texts.TextHot:         {"text": "Boiler below 600 °C", "stated": 600.0},
	texts.TextPressure:    {"text": "Pressure off: 210 bar", "stated": "210"},
	texts.TextUpsideDown:  {"text": "word TOP downwards"},
	texts.TextAgain:       {"text": "Tighten the bolts again", "kinds": []string{"main"}},
	texts.TextOtherOrder:  {"text": "Loosen in tightening order", "first": "M10", "last": "M1"},
	texts.TextsThrust:     {"text": "Thrust washers at cap 2", "other": "end float at cap 3"},
	texts.TextDesignation: {"text": "manual T3 5.2", "name": "T3", "machine": "Fernhollow T4 tractor engine"},
})
