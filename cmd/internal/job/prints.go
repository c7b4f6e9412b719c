package job

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
	"drawdown/render"
	"drawdown/render/imprint"
	"drawdown/sequence/plan"
)

// Findings about the prints of a file.
const (
	PrintStale   finding.Code = "print stale"     // prints, n, stated: there is one of revision, date
	PrintOlder   finding.Code = "print older"     // prints, n, revision, date: of the prints
	PrintsUnread finding.Code = "prints not read" // folder, why
	mostPrints                = 2000              // most files of a folder that are read
)

// imprintOf returns the imprint that a print of the file carries.
func imprintOf(h plan.Heading) imprint.Imprint {
	return imprint.Imprint{Pattern: h.Name, Fingerprint: h.Fingerprint, Revision: h.Revision, Date: h.Date}
}

// StalePrints finds the prints in a folder that were drawn from another state
// of the file: a warning if revision and date are the same, a note if they show
// the difference.
func StalePrints(file, folder string, h plan.Heading) (found problem.List) {
	now := imprintOf(h)
	if now.Fingerprint == "" {
		return nil // the file has errors, so its state is unknown
	}
	states, prints, err := otherPrints(folder, now)
	if err != nil {
		unread := problem.Of(finding.Noted(PrintsUnread, finding.Values{"folder": folder, "why": err}))
		unread.File = file
		return problem.List{unread}
	}
	for _, then := range states {
		values := finding.Values{"prints": prints[then], "n": len(prints[then]), "revision": then.Revision, "date": then.Date, "stated": then.Revision != "" || then.Date != ""}
		one := problem.Of(finding.Noted(PrintOlder, values))
		if then.Revision == now.Revision && then.Date == now.Date {
			one = problem.Of(finding.Warned(PrintStale, values))
		}
		one.File = file
		found = append(found, one)
	}
	return found
}

// otherPrints returns the prints of the same pattern from other states, by
// state, sorted by name.
func otherPrints(folder string, now imprint.Imprint) (states []imprint.Imprint, prints map[imprint.Imprint][]string, err error) {
	names, err := filesLikePrints(folder, now.Pattern)
	prints = map[imprint.Imprint][]string{}
	for _, name := range names {
		path := filepath.Join(folder, name)
		for _, then := range imprintsIn(path) {
			if then.Pattern != now.Pattern || then.Fingerprint == now.Fingerprint {
				continue
			}
			if prints[then] == nil {
				states = append(states, then)
			}
			if path := filepath.ToSlash(path); !slices.Contains(prints[then], path) {
				prints[then] = append(prints[then], path)
			}
		}
	}
	return states, prints, err
}

// filesLikePrints returns the regular files with the extension of a print;
// those with the name of the pattern come first, so that they are read even in
// a full folder.
func filesLikePrints(folder, pattern string) (names []string, err error) {
	entries, err := os.ReadDir(folder)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	var others []string
	for _, e := range entries {
		ending := render.Format(strings.TrimPrefix(filepath.Ext(e.Name()), "."))
		switch {
		case !e.Type().IsRegular() || !slices.Contains(render.Formats, ending):
		case strings.HasPrefix(e.Name(), pattern):
			names = append(names, e.Name())
		default:
			others = append(others, e.Name())
		}
	}
	names = append(names, others...)
	return names[:min(len(names), mostPrints)], err
}

// imprintsIn returns the imprints in a file; none if it cannot be read.
func imprintsIn(path string) []imprint.Imprint {
	file, err := os.Open(path)
	if err != nil {
		return nil
	}
	defer file.Close()
	about, err := file.Stat()
	if err != nil || !about.Mode().IsRegular() {
		return nil
	}
	found, _ := imprint.Read(file, about.Size())
	return found
}
