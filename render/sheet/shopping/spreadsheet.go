package shopping

import (
	"bytes"
	"encoding/csv"
	"strconv"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/sequence/run/teardown"
)

func term(s teardown.Supply) finding.Term { return finding.Term(s.What) }

// heads of the columns, for programs: the same in every language.
var heads = []string{"sort", "what", "size", "class", "count", "ready", "joints", "part", "condemned"}

// CSV is the list as a table: a line for each supply. What a spreadsheet would take
// for a formula has an apostrophe before it.
func CSV(list []teardown.Supply) []byte {
	var to bytes.Buffer
	w := csv.NewWriter(&to)
	w.Write(heads) // the buffer takes all
	for _, s := range list {
		count := ""
		if s.Count > 0 {
			count = strconv.Itoa(s.Count)
		}
		line := []string{string(s.Sort), s.What, s.Size, s.Class, count, strconv.Itoa(s.Ready), strings.Join(s.Joints, " "), s.Part, strings.Join(s.Condemned, "; ")}
		for i, cell := range line {
			if cell != "" && strings.ContainsRune("=+-@\t\r", rune(cell[0])) {
				line[i] = "'" + cell
			}
		}
		w.Write(line)
	}
	w.Flush()
	return to.Bytes()
}
