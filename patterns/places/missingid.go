package places

import (
	"slices"
	"strconv"

	"drawdown/geometry/finding"
	"drawdown/patterns/nodes"
)

// numberedIDs holds the fasteners whose ids have the same letters.
type numberedIDs struct {
	letters string
	from    map[int]*nodes.Node // by number
	listed  bool                // one by one
}

// missingIDs warns of the one number missing from the ids of fasteners that are
// listed one by one: K1 to K4 and K6. A line was probably lost. If a file
// leaves out fasteners of another, the numbers are missing on purpose.
func (c check) missingIDs() {
	if c.Omits {
		return
	}
	for _, ids := range c.numberedIDs() {
		count := len(ids.from)
		if !ids.listed || count < fewestOfSeries || ids.from[1] == nil || ids.from[count+1] == nil {
			continue
		}
		n := 2
		for ids.from[n] != nil {
			n++
		}
		if n <= count {
			c.Warn(ids.from[n-1], IDMissing, finding.Values{"id": ids.letters + strconv.Itoa(n), "before": ids.letters + strconv.Itoa(n-1)})
		}
	}
}

func (c check) numberedIDs() (all []*numberedIDs) {
	for i, f := range c.Joint.Fasteners {
		m := lettersAndNumber.FindStringSubmatch(f.ID)
		if m == nil {
			continue
		}
		at := slices.IndexFunc(all, func(ids *numberedIDs) bool { return ids.letters == m[1] })
		if at < 0 {
			at = len(all)
			all = append(all, &numberedIDs{m[1], map[int]*nodes.Node{}, true})
		}
		n, _ := strconv.Atoi(m[2])
		all[at].from[n] = c.Fasteners[i]
		all[at].listed = all[at].listed && c.Fasteners[i].Shape == nodes.Map && c.Fasteners[i].Get("at") != nil
	}
	return all
}
