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

// What can be found of the prints of a file.
const (
	PrintStale   finding.Code = "print stale"     // prints, n, stated: there is one of revision, date
	PrintOlder   finding.Code = "print older"     // prints, n, revision, date: of the prints
	PrintsUnread finding.Code = "prints not read" // folder, why
	mostPrints                = 2000              // files of a folder that are looked into
)

// imprintOf is what a print of the file says of it.
func imprintOf(h plan.Heading) imprint.Imprint {
	return imprint.Imprint{Pattern: h.Name, Fingerprint: h.Fingerprint, Revision: h.Revision, Date: h.Date}
}

// StalePrints finds the prints in a folder that another state of the file was drawn
// from: a warning where revision and date are the same, a note where they tell.
func StalePrints(file, folder string, h plan.Heading) (found problem.List) {
	now := imprintOf(h)
	if now.Fingerprint == "" {
		return nil // the file is not sound: nothing is known of its state
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
// state, in the order of their names.
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

// filesLikePrints returns the regular files with the ending of a print; those
// with the name of the pattern first, so that they are looked into in a full
// folder.
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

// imprintsIn returns what a file says of itself; nothing where it cannot be
// read.
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
