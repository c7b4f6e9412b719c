package outputtest

import (
	"io/fs"

	"drawdown/geometry/finding"
)

// The record is kept by the commands, which stand above; its codes are written
// out here.
var _ = exampleOf(map[finding.Code]finding.Values{
	"record in use":           {"folder": "shop"},
	"record on a network":     {"folder": "shop", "system": "NFS"},
	"record newer":            {"file": "shop/record.db", "version": 4, "known": 1},
	"record older":            {"folder": "shop"},
	"record missing":          {"folder": "shop"},
	"record address":          {"why": fs.ErrInvalid},
	"record away":             {"name": "db.example:5432/records", "why": fs.ErrClosed},
	"record not synced":       {"name": "db.example:5432/records"},
	"record not in database":  {"name": "db.example:5432/records"},
	"record in database":      {"name": "db.example:5432/records"},
	"record not a store":      {"file": "notes.txt", "why": fs.ErrInvalid},
	"record not kept":         {"why": fs.ErrPermission},
	"record disk full":        {"folder": "shop"},
	"record not read":         {"why": fs.ErrPermission},
	"record folder not made":  {"folder": "shop", "why": fs.ErrPermission},
	"record no user folder":   {"why": fs.ErrNotExist},
	"job nothing sent out":    {"job": "J3"},
	"record no such run":      {"id": "R12"},
	"record no such photo":    {"sum": "7c1e90b4"},
	"record no such person":   {"who": "RA"},
	"record entry id taken":   {"id": "4f1c"},
	"record entry id missing": {},
	"record entry id long":    {"most": 100},
	"record not a hash":       {"written": "7c1e"},
	"record backup there":     {"file": "backup.db"},
	"record backup unsound":   {"file": "backup.db", "faults": []finding.Finding{finding.Failed("record entry changed", finding.Values{"place": 12})}},
	"record entry changed":    {"place": 12},
	"record entry missing":    {"place": 12},
	"record index changed":    {"place": 12},
	"record start changed":    {"id": "R12"},
	"record file changed":     {"sum": "7c1e90b4"},
	"record file missing":     {"place": 12, "sum": "7c1e90b4"},
	"record name changed":     {"count": 2},
	"record rewritten or cut": {"hash": "7c1e90b47c1e90b4", "place": 12},
	"record database damaged": {"why": "row 3 missing from index"},
	"call records act":        {"written": "lst", "acts": []string{"list", "show"}},
	"call records needs":      {"act": "show", "example": "R12"},
	"call records alone":      {"act": "list", "written": "R12"},
	"call records flag":       {"act": "list", "flag": "format"},
	"call no day":             {"flag": "from", "written": "March"},
	"records sound":           {"entries": 480, "head": "7c1e90b4", "met": 12},
	"records proves":          {},
	"records backed up":       {"file": "backup.db"},
	"records restored":        {"folder": "shop", "aside": "shop/before-restore-20261130-120000"},
	"records erased":          {"who": "RA"},
	"records none listed":     {},
})
