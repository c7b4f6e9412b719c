package inputtest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/trace"
	"drawdown/geometry/unit"
)

func resolution(across, down float64) finding.Finding {
	return finding.Noted(trace.Resolution, finding.Values{"across": across, "down": down})
}

var _ = exampleOf(map[finding.Code]finding.Values{
	trace.Torn:             {"round": 0.81},
	trace.NotRound:         {"shortest": unit.Length(8.1), "longest": unit.Length(8.7)},
	trace.Faint:            {"contrast": 0.42},
	trace.Coarse:           {"pixels": 9.3},
	trace.Long:             {"width": unit.Length(7), "length": unit.Length(12)},
	trace.PerhapsPort:      {},
	trace.Dirt:             {},
	trace.Open:             {"round": 0.76},
	trace.Alone:            {},
	trace.SizeOpen:         {"holes": 4, "diameter": unit.Length(6), "bolts": "none"},
	trace.OnlyEdge:         {"diameter": unit.Length(8.4), "round": 0.91, "levels": 34},
	trace.OneRoute:         {},
	trace.InnerEdge:        {"inner": unit.Length(9), "outer": unit.Length(15.5)},
	trace.Filled:           {"inner": unit.Length(4.5)},
	trace.Gap:              {"by": "row", "diameter": unit.Length(8.4), "seen": 0.4},
	trace.SecondPart:       {"size": 0.4, "x": 812.0, "y": 455.0, "part": 2},
	trace.CutOff:           {},
	trace.Lens:             {"off": unit.Length(0.5)},
	trace.SheetCrooked:     {"off": unit.Length(0.21)},
	trace.OtherSheet:       {"times": 0.972},
	trace.KnownDiffer:      {"off": unit.Length(0.35)},
	trace.OtherStated:      {"stated": resolution(150, 0), "named": resolution(300, 302), "times": 0.5},
	trace.OtherKnown:       {"times": 1.034, "stated": resolution(150, 0)},
	trace.TakenForBores:    {"holes": 1, "diameter": unit.Length(52), "bolts": "8-9 mm"},
	trace.TakenForPorts:    {"holes": 2, "diameter": unit.Length(6), "bolts": "8-9 mm"},
	trace.NotNumbered:      {"holes": 2, "diameter": unit.Length(6), "bolts": "none"},
	trace.Origin:           {"width": 1200, "height": 900, "scale": finding.Noted(trace.ScaleFromFile, finding.Values{"resolution": resolution(150, 0)})},
	trace.HoldProof:        {},
	trace.ScaleFromCorners: {"width": unit.Length(297), "height": unit.Length(210), "distances": 1},
	trace.ScaleFromSheet:   {"width": unit.Length(297), "height": unit.Length(210), "distances": 1, "of": "paper", "barrel": 0.021},
	trace.NoSheet:          {"of": "target"},
	trace.ScaleNamed:       {"resolution": resolution(300, 302)},
	trace.ScaleFromFile:    {"resolution": resolution(150, 0)},
	trace.ScaleFromKnown:   {"distances": 2},
	trace.Resolution:       {"across": 300.0, "down": 302.0},
	trace.NoScale:          {"unbelieved": 72.0},
	trace.NoRoughScale:     {"unbelieved": 0.0},
	trace.NoHole:           {"hole": "F9", "allowed": []string{"F1", "F2", "B1"}},
	trace.KnownShort:       {"least": 50},
	trace.NoRectangle:      {},
	trace.CornersMixed:     {},
	trace.CornersFlat:      {},
	trace.HorizonSeen:      {},
	trace.PixelSize:        {"pixel": unit.Length(1.27), "least": unit.Length(0.002), "most": unit.Length(0.6)},
	trace.SmallPicture:     {"width": 30, "height": 30, "least": 64},
	trace.NoContrast:       {"contrast": 12.0, "least": 24},
	trace.TooMuchGrain:     {},
	trace.NoPart:           {},
	trace.TooManyShapes:    {"shapes": 2400, "most": 2000},
	trace.RaggedEdge:       {},
	trace.NoFastener:       {},
	trace.Fixed:            {"fixes": 3},
	trace.NothingAt:        {"x": 812.0, "y": 455.0},
	trace.NoSuchPart:       {"part": 3},
	"fixes no place":       {"key": "drop", "found": "a map", "example": "[F3, [812, 455]]"},
	"fixes no pixels":      {"count": 4, "found": "a text"},
	"fixes small crop":     {"least": 64},
	"fixes too many":       {"count": 2400, "most": 2000},
	trace.WhichBolts:       {"sizes": []unit.Length{12.5, 8}},
	trace.TitleLetter:      {"letter": "☃"},
})
