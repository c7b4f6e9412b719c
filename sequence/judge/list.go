package judge

import (
	"strconv"
	"strings"
	"unicode"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

// ReadList reads an order as typed: ids, or the numbers cast on the part,
// separated by commas, semicolons or white space. It returns ids. A name that
// no fastener has is kept, for Order to report. Case matters only if ids differ
// by case alone. A list that mixes ids with cast numbers is an error, and so is
// a cast number that is on the part twice.
func ReadList(j geometry.Joint, text string) ([]string, error) {
	names := strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ';' || unicode.IsSpace(r) })
	if len(names) == 0 {
		return nil, finding.Failed(NoNames, nil)
	}
	known := newNames(j)
	var anID, aCast string
	for _, name := range names {
		if _, ok := known.id(name); ok {
			anID = name
		} else if known.cast[name] != nil {
			aCast = name
		}
	}
	if anID != "" && aCast != "" {
		return nil, finding.Failed(MixedNames, finding.Values{"id": anID, "cast": aCast})
	}
	order := make([]string, len(names))
	for k, name := range names {
		order[k] = name
		if id, ok := known.id(name); ok {
			order[k] = id
		} else if with := known.cast[name]; len(with) > 1 {
			return nil, finding.Failed(CastNotOne, finding.Values{"cast": name, "ids": with})
		} else if len(with) == 1 {
			order[k] = with[0]
		}
	}
	return order, nil
}

// names are the possible names of the fasteners of a joint.
type names struct {
	exact  map[string]bool
	folded map[string][]string // ids by lower case
	cast   map[string][]string // ids by the number on the part
}

func newNames(j geometry.Joint) names {
	n := names{map[string]bool{}, map[string][]string{}, map[string][]string{}}
	for _, f := range j.Fasteners {
		small := strings.ToLower(f.ID)
		n.exact[f.ID] = true
		n.folded[small] = append(n.folded[small], f.ID)
		if f.Cast != 0 {
			number := strconv.Itoa(f.Cast)
			n.cast[number] = append(n.cast[number], f.ID)
		}
	}
	return n
}

// id returns the id that a name means.
func (n names) id(name string) (string, bool) {
	if n.exact[name] {
		return name, true
	}
	if alike := n.folded[strings.ToLower(name)]; len(alike) == 1 {
		return alike[0], true
	}
	return "", false
}
