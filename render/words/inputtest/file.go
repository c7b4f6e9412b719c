package inputtest

import (
	"io/fs"

	"drawdown/geometry/finding"
)

// Of files the command line speaks, which stands above; its codes are written
// out here.
var _ = exampleOf(map[finding.Code]finding.Values{
	"folder is a file":       {"file": "cover.yaml"},
	"folder not made":        {"folder": "cards", "why": fs.ErrPermission},
	"folder not named":       {},
	"folder looks like file": {"file": "card.pdf"},
	"wrench list folder":     {"file": "lists"},
	"file is a folder":       {"file": "out/p4-head.pdf"},
	"file not regular":       {"file": "out/p4-head.pdf"},
	"file read-only":         {"file": "out/p4-head.pdf"},
	"name too long":          {"name": "a-very-long-name.yaml"},
	"file not written":       {"file": "out/p4-head.pdf", "why": fs.ErrPermission},
	"file not read":          {"file": "cover.yaml", "why": fs.ErrPermission},
	"file missing":           {"file": "p4-head.yaml", "builtin": "p4-head"},
	"file behind a file":     {"file": "cover.yaml/lid.yaml", "above": "cover.yaml"},
	"output not written":     {"why": fs.ErrPermission},
	"wrench list missing":    {"file": "shop.yaml"},
	"folder without files":   {"folder": "shop", "allowed": []string{".yaml", ".yml"}},
	"machine files unused":   {"files": []string{"rods.yaml", "mains.yaml"}},
	"date ahead":             {"date": "2062-03-14", "today": "2026-11-30"},
	"meant":                  {"why": finding.Warned("date ahead", finding.Values{"date": "2062-03-14", "today": "2026-11-30"}), "reason": `"as the maker has it"`},
	"meant or not":           {"why": finding.Warned("date ahead", finding.Values{"date": "2062-03-14", "today": "2026-11-30"}), "example": "meant: {order: …}"},
	"meant, unused":          {"name": "order"},
	"print stale":            {"prints": []string{"out/p4-head.pdf"}, "n": 1, "revision": "2", "date": "2026-03-01", "stated": true},
	"print older":            {"prints": []string{"out/p4-head-loosen.png", "out/p4-head-tighten.png"}, "n": 2, "revision": "1", "date": "2025-11-30"},
	"prints not read":        {"folder": "out", "why": fs.ErrPermission},
	"cards of one name":      {"clashes": []finding.Finding{finding.Failed("card of two patterns", finding.Values{"patterns": []string{"a.yaml", "b.yaml"}, "name": "cover"})}},
	"card of two patterns":   {"patterns": []string{"a.yaml", "b.yaml"}, "name": "cover"},
})
