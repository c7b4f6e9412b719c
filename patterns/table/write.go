package table

import (
	"bytes"
	"encoding/csv"
	"slices"
	"strconv"

	"drawdown/geometry"
	"drawdown/patterns/writing"
)

// Write writes the fasteners as a table: id, x, y in mm, kind, number cast, and
// the marks on the part if there are any. No cell is a formula.
func Write(j geometry.Joint) []byte {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	heading := []string{"id", "x mm", "y mm", "kind", "cast"}
	marked := slices.ContainsFunc(j.Fasteners, func(f geometry.Fastener) bool { return f.Mark != "" })
	if marked {
		heading = append(heading, "mark")
	}
	w.Write(heading) // writes to a buffer never fail
	for _, f := range j.Fasteners {
		cast := ""
		if f.Cast > 0 {
			cast = strconv.Itoa(f.Cast)
		}
		row := []string{textCell(f.ID), writing.Number(f.At.X), writing.Number(f.At.Y), textCell(f.Kind), cast}
		if marked {
			row = append(row, textCell(f.Mark))
		}
		w.Write(row)
	}
	w.Flush()
	return b.Bytes()
}
