package outputtest

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Of wrong calls the command line speaks, which stands above; its codes are
// written out here.
var _ = exampleOf(map[finding.Code]finding.Values{
	"flag unknown value":    {"flag": "way", "written": "sprial", "meant": "spiral", "allowed": []string{"auto", "spiral"}},
	"flag value missing":    {"flag": "paper", "words": []string{"a4", "letter"}},
	"flag value unreadable": {"flag": "dpi", "written": "x", "sort": "int"},
	"flag not there":        {"command": "card", "flag": "--papr", "meant": "--paper", "flags": []string{"--help", "--paper"}},
	"flags together":        {"flags": []string{"--yield", "--proof"}, "allowed": []string{"--yield", "--proof", "--preload"}},
	"flag needs other":      {"flag": "angle", "other": "snug", "example": "40Nm"},
	"flag for sheets":       {"flag": "paper", "other": ""},
	"flag above zero":       {"flag": "preload", "written": "0kN"},
	"flag turn missing":     {"written": "90+"},
	"flag turn none":        {"written": "90+0", "turn": unit.Angle(0)},
	"call see help":         {"help": "help card"},
	"call unknown command":  {"name": "crad", "meant": "card", "commands": []string{"card", "book"}},
	"call flag first":       {"flag": "--json"},
	"call pattern first":    {"name": "p4-head"},
	"call one at a time":    {"sort": "survey", "written": "b"},
	"call takes no name":    {"command": "version", "written": "x"},
	"call which":            {"sort": "scan", "example": "p4-pump-gasket"},
	"call empty name":       {},
	"call stdin once":       {},
	"call two checks":       {},
	"call needs name":       {"flag": "out", "example": "drawdown patterns p4-cover -o mine"},
	"call not with new":     {},
	"call only with new":    {"flag": "grid"},
	"call json of list":     {},
	"call which shell":      {"shells": []string{"bash", "zsh"}},
	"call which bolt":       {},
	"call kind of file":     {},
	"call kind lacks":       {"flag": "thread"},
	"call port range":       {"written": "70000", "most": 65534},
	"call which torque":     {},
	"call edited file":      {"path": "out/cover.yaml"},
	"call over itself":      {"path": "out/cover.yaml", "sort": "survey"},
	"new which layout":      {},
	"new says nothing":      {"flag": "diameter", "other": "row"},
	"new no rows":           {},
	"new short top":         {"n": 1},
	"new too many":          {"most": 10_000},
	"new no counts":         {"written": "3"},
	"new no count":          {"written": "x", "most": 10_000},
	"new no lengths":        {"written": "300"},
	"trace no resolution":   {"written": "3", "least": 50, "most": 10_000},
	"trace known unread":    {},
	"trace known same":      {"id": "F1"},
	"trace corners count":   {"written": "1,2:3,4", "n": 2},
	"trace no pixel":        {"written": "7"},
	"call two files":        {},
	"schema unknown file":   {"name": "\"patern\"", "meant": "pattern", "allowed": []string{"pattern", "machine"}},
})
