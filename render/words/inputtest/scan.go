package inputtest

import (
	"drawdown/geometry/finding"
	"drawdown/patterns/dxf"
	"drawdown/patterns/scan"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	scan.EmptyScan:        {"file": "cover.png"},
	scan.ScanTooLarge:     {"file": "cover.png", "most": 200},
	scan.TooManyPixels:    {"file": "cover.png", "width": 1000000, "height": 1000000, "most": 200},
	scan.TooMuchMemory:    {"file": "cover.png", "size": 900, "most": 200},
	scan.Damaged:          {"file": "cover.png", "format": "GIF", "why": finding.Failed(dxf.Tilted, nil)},
	scan.IsPDF:            {"file": "cover.png"},
	scan.OtherPicture:     {"file": "cover.png", "format": "GIF"},
	scan.NoPicture:        {"file": "cover.png"},
	scan.NotAPhoto:        {},
	scan.OddlyPacked:      {"file": "lid.png"},
	scan.PhotoOddlyPacked: {},
	scan.PhotoTooLarge:    {"width": 9000, "height": 9000, "most": 50},
	scan.Unreadable:       {"file": "cover.png", "why": finding.Failed(dxf.Tilted, nil)},
})
