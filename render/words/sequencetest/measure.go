package sequencetest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/measure"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	measure.Unread:     {"what": "valve clearance", "written": "0.3 or so"},
	measure.WrongUnit:  {"what": "valve clearance", "written": "bar", "unit": "mm"},
	measure.WrongPlace: {"what": "valve clearance", "place": "C1", "allowed": []string{"T1", "T2"}},
	measure.NoShims:    {"what": "camshaft end float"},
	measure.Outside:    {"what": "valve clearance", "place": "T1", "reading": mm("0.31"), "limits": unit.Written("0.15–0.25 mm")},
	measure.ShimKept:   {"what": "valve clearance", "place": "T1", "size": mm("2.40")},
	measure.ShimToFit:  {"what": "valve clearance", "place": "T1", "fitted": mm("2.40"), "size": mm("2.50"), "clearance": mm("0.21")},
	measure.ShimBeyond: {"what": "valve clearance", "place": "T1", "size": mm("3.20"), "clearance": mm("0.35"), "limits": unit.Written("0.15–0.25 mm")},
})

func mm(s string) unit.Reading {
	r, err := unit.ParseReading(s, "mm")
	if err != nil {
		panic(err)
	}
	return r
}
