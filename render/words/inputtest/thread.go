package inputtest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
)

var _ = exampleOf(map[finding.Code]finding.Values{
	thread.Unreadable:        {"written": "M10x9", "why": finding.Failed(thread.NoSuchPitch, finding.Values{"pitch": "9", "size": "10", "coarse": "1.5", "fine": []string{"1.25", "1"}})},
	thread.NoThread:          {},
	thread.LeftHand:          {},
	thread.NoInchSize:        {"written": "5/3"},
	thread.NoUnifiedThread:   {"wanted": "3/8-17 UNC", "allowed": []string{"3/8-16 UNC", "3/8-24 UNF"}},
	thread.HalfUnifiedThread: {"wanted": "3/8", "allowed": []string{"3/8-16 UNC", "3/8-24 UNF"}},
	thread.NoNumberedSize:    {"number": "3", "allowed": []string{"No. 4", "No. 5"}},
	thread.NoUnifiedSize:     {"size": "0.9", "allowed": []string{"1/4", "5/16"}},
	thread.NoMetricSize:      {"size": "13", "allowed": []string{"M12", "M14"}},
	thread.NoSuchPitch:       {"pitch": "9", "size": "10", "coarse": "1.5", "fine": []string{"1.25", "1"}},
})
