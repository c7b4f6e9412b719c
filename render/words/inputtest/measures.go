package inputtest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/measures"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	measures.TooMany:          {"count": 201, "most": 200},
	measures.OtherUnit:        {"key": "to", "written": `"2 bar"`, "unit": "mm"},
	measures.LimitsReversed:   {"from": mm("0.25"), "to": mm("0.15")},
	measures.PlaceUnknown:     {"name": `"T11"`, "meant": "T1", "allowed": []string{"T1", "T2", "cyl 1", "M1"}},
	measures.PlaceOfTwo:       {"name": `"T1"`},
	measures.PlaceTwice:       {"what": `"valve clearance"`, "place": "T1", "first": earlier},
	measures.WantedOutside:    {"wanted": mm("0.30"), "from": mm("0.15"), "to": mm("0.25")},
	measures.WantedIdle:       {},
	measures.ShimsUnwanted:    {},
	measures.ShimsNoLength:    {"unit": "bar"},
	measures.ShimsReversed:    {"from": mm("3.20"), "to": mm("2.00")},
	measures.ShimsThin:        {"from": mm("0")},
	measures.ShimsStep:        {"step": mm("0"), "most": mm("1.20")},
	measures.ShimsTooMany:     {"count": 1201, "most": 1000},
	measures.ShimsUneven:      {"to": mm("3.22"), "last": mm("3.20")},
	measures.ShimsCoarse:      {"step": mm("0.05"), "range": mm("0.04")},
	measures.NoKinds:          {},
	measures.Unusual:          {"what": "bearing clearance", "limit": mm("65"), "least": mm("0.001"), "most": mm("3")},
	measures.OtherSystem:      {"what": "end float", "unit": "in", "own": "mm"},
	measures.LengthTwice:      {"what": "bolt length", "limit": mm("102.1"), "kind": "main", "inspect": unit.Length(101.2)},
	measures.PlaceLeftOut:     {"what": "valve clearance", "place": `"ex 3"`},
	measures.PlaceOfOtherList: {"what": "valve clearance", "place": `"in 3"`},
	measures.PlaceUnlike:      {"what": "intake clearance", "place": `"ex 1"`, "missing": `"in 1"`},
	measures.PlacesOfOther:    {"what": "intake clearance", "places": []string{"ex 1", "ex 2"}},
	measures.PlaceUneven:      {"what": "gap", "place": "S11", "count": 4},
	measures.LimitOnWrongSide: {"what": "warp of the face", "key": "from", "meant": "to"},
	measures.WidthsDiffer:     {"what": "valve clearance", "from": mm("0.35"), "to": mm("0.54"), "otherFrom": mm("0.25"), "otherTo": mm("0.35")},
	measures.SizeOff:          {"what": "head height", "limit": mm("177.7"), "thickness": unit.Length(118)},
	measures.BoreOff:          {"what": "shaft diameter", "limit": mm("23.96"), "label": `"drive shaft"`, "diameter": unit.Length(32)},
	measures.LimitsApart:      {"what": "end float", "from": mm("0.06"), "to": mm("1.8")},
	measures.LengthOff:        {"what": "bolt length", "limit": mm("45.5"), "kind": "main", "length": unit.Length(55)},
	measures.ShimsWide:        {"from": mm("2.00"), "to": mm("30")},
	measures.NothingToJudge:   {"what": "hole depth"},
})

func mm(s string) unit.Reading {
	r, err := unit.ParseReading(s, "mm")
	if err != nil {
		panic(err)
	}
	return r
}
