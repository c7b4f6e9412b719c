package deps

import (
	"fmt"
	"slices"
	"strings"
)

const module = "drawdown/"

// spokenByAll is what every package may import: the way to report findings.
const spokenByAll = "geometry/finding"

// source is one Go file: its folder, from the project's root, and its imports.
type source struct {
	folder  string
	name    string
	imports []string
}

func (s source) isTest() bool { return strings.HasSuffix(s.name, "_test.go") }

func (s source) ofTests() bool { return s.isTest() || isKit(s.folder) }

// isKit reports whether a folder contains helpers that only tests import.
func isKit(folder string) bool {
	return strings.HasSuffix(folder, "test") || strings.HasSuffix(folder, "testkit")
}

// faults lists every import that the lists do not allow, and every package that
// is missing from them or no longer exists.
func faults(sources []source) []string {
	var found []string
	seen := map[string]bool{}
	for _, s := range sources {
		if _, placed := arrows[s.folder]; !placed && !seen[s.folder] {
			found = append(found, fmt.Sprintf("package %s is not placed: list in arrows what it may import", s.folder))
		}
		seen[s.folder] = true
		for _, path := range s.imports {
			if why := fault(s, path); why != "" {
				found = append(found, fmt.Sprintf("%s/%s imports %s: %s", s.folder, s.name, path, why))
			}
		}
	}
	for folder := range arrows {
		if !seen[folder] {
			found = append(found, fmt.Sprintf("package %s is listed in arrows, but there is none", folder))
		}
	}
	slices.Sort(found)
	return found
}

// fault returns why a file may not import a path; it is empty if it may.
func fault(s source, path string) string {
	if path == "C" {
		return "the program is one file without cgo"
	}
	if !s.ofTests() {
		if why := neverFault(s.folder, path); why != "" {
			return why
		}
	}
	switch {
	case path == module+spokenByAll:
	case strings.HasPrefix(path, module):
		if !s.isTest() && !slices.Contains(arrows[s.folder], strings.TrimPrefix(path, module)) {
			return "arrows has no such arrow"
		}
	case isOutside(path):
		return outsideFault(s, path)
	}
	return ""
}

func neverFault(folder, path string) string {
	for _, r := range never {
		if within(folder, r.in) && (r.but == "" || !within(folder, r.but)) && !within(path, "drawdown/"+spokenByAll) && slices.ContainsFunc(r.no, func(no string) bool { return within(path, no) }) {
			return r.because
		}
	}
	return ""
}

func outsideFault(s source, path string) string {
	if slices.ContainsFunc(inTestsOnly, func(of string) bool { return within(path, of) }) {
		if s.ofTests() {
			return ""
		}
		return "only tests may use it"
	}
	for of, folders := range outside {
		if !within(path, of) {
			continue
		}
		if s.ofTests() || slices.ContainsFunc(folders, func(f string) bool { return within(s.folder, f) }) {
			return ""
		}
		return "only " + strings.Join(folders, ", ") + " may use it"
	}
	return "the module is not placed: list in outside who may use it"
}

// isOutside reports whether a path belongs to an outside module and not to the
// standard library: then its first element is a host name.
func isOutside(path string) bool {
	host, _, _ := strings.Cut(path, "/")
	return strings.Contains(host, ".")
}

// within reports whether a path is the folder or below it.
func within(path, folder string) bool {
	return path == folder || strings.HasPrefix(path, folder+"/")
}
