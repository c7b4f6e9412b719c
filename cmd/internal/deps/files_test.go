package deps

import (
	"fmt"
	"maps"
	"path"
	"slices"
	"strings"
	"testing"
)

// mostFiles limits the number of files of a package, not counting tests, to
// keep it easy to survey.
const mostFiles = 22

// Every package is easy to survey, and its package comment states what it
// decides.
func TestRooms(t *testing.T) {
	all := rooms(t)
	for _, folder := range slices.Sorted(maps.Keys(all)) {
		for _, fault := range roomFaults(all[folder]) {
			t.Error(fault)
		}
	}
}

func roomFaults(r room) (faults []string) {
	if len(r.files) > mostFiles {
		faults = append(faults, fmt.Sprintf("%s has %d files; part it by subject, %d at most", r.folder, len(r.files), mostFiles))
	}
	for _, file := range r.files {
		if doc := file.Doc.Text(); strings.HasPrefix(doc, "Package "+file.Name.Name+" ") || file.Name.Name == "main" && doc != "" {
			return faults
		}
	}
	return append(faults, r.folder+" has no package comment that says what it decides")
}

func TestRoomFaultsAreFound(t *testing.T) {
	r := roomOf(t, "geometry/a.go", "package geometry")
	for k := range mostFiles {
		r.files[fmt.Sprint(k, ".go")] = r.files["a.go"]
	}
	if got := roomFaults(r); len(got) != 2 {
		t.Errorf("%d files without a comment: %q, want 2 faults", len(r.files), got)
	}
	if got := roomFaults(roomOf(t, "geometry/a.go", "// Package geometry decides.\npackage geometry")); len(got) != 0 {
		t.Errorf("a sound room: %q", got)
	}
}

// inManyRooms lists the file names that mean the same in every package.
var inManyRooms = []string{
	"doc.go",      // the package comment
	"findings.go", // the codes of the package's findings
	"limits.go",   // the limits of what the package accepts
}

// families lists folders whose packages do the same for different things, so
// that knowing the files of one helps with the others.
var families = []string{
	"cmd/internal",     // a command from its flags over its pipeline to what it prints
	"patterns",         // readers and writers, each of its format
	"render/sheet",     // sheets, each with its heading, foot and tables
	"sequence/tension", // formulas of the bolt, by subject
}

// oneSubject lists the words that mean one thing in the whole tree: files with
// these names are about it, in each layer.
var oneSubject = map[string]string{
	"band.go":       "a figure with the ends it may lie between",
	"cells.go":      "a grid of cells, to find what is near",
	"clusters.go":   "fasteners that go down together",
	"compensate.go": "what a bolt is given more, for what its neighbours take",
	"figure.go":     "how a figure is written",
	"flange.go":     "a round flange",
	"friction.go":   "friction in the thread and under the head",
	"gasket.go":     "what is squeezed between two parts",
	"group.go":      "a set of fasteners that is worked together",
	"joint.go":      "a part with its fasteners",
	"kind.go":       "fasteners that are alike",
	"language.go":   "the language of a call or of a document",
	"lubricant.go":  "what goes on the threads",
	"mechanics.go":  "what is worked out of a fastener",
	"order.go":      "the order of fasteners",
	"outline.go":    "the edge of a part",
	"parse.go":      "a quantity or a thread from its text",
	"part.go":       "the part that is held",
	"path.go":       "a line to be drawn",
	"pen.go":        "what draws on a page",
	"plate.go":      "a flat part",
	"predict.go":    "what each bolt keeps",
	"print.go":      "how a thing is written out",
	"regular.go":    "regular layouts",
	"row.go":        "fasteners in a row",
	"say.go":        "how a thing is said",
	"scatter.go":    "the scatter of a preload",
	"stages.go":     "the stages of the work",
	"table.go":      "a table",
	"text.go":       "a line of type",
	"torque.go":     "torque",
	"write.go":      "what goes into a file",
	"yield.go":      "yield of a fastener",
}

// A file's name states its subject wherever it is. Two packages may have files
// of the same name only if
//   - one of them is the package of that name: book.go in the packages of words is about the package book
//   - they belong to one family
//   - the lists above state that the name is about one thing
func TestFileNamesAreSubjects(t *testing.T) {
	names := map[string][]string{}
	for folder, r := range rooms(t) {
		for name := range r.files {
			names[name] = append(names[name], folder)
		}
	}
	for _, fault := range nameFaults(names) {
		t.Error(fault)
	}
}

// nameFaults lists the names that occur in several packages, with these
// packages.
func nameFaults(names map[string][]string) (faults []string) {
	for _, name := range slices.Sorted(maps.Keys(names)) {
		folders := slices.Sorted(slices.Values(names[name]))
		inRoom := func(folder string) bool { return path.Base(folder) == strings.TrimSuffix(name, ".go") }
		if len(folders) < 2 || slices.Contains(inManyRooms, name) || oneSubject[name] != "" || slices.ContainsFunc(folders, inRoom) || isFamily(folders) {
			continue
		}
		faults = append(faults, fmt.Sprintf("%s stands in %s; name each by its subject", name, strings.Join(folders, ", ")))
	}
	return faults
}

// isFamily reports whether all packages are in one family.
func isFamily(folders []string) bool {
	return slices.ContainsFunc(families, func(family string) bool {
		return !slices.ContainsFunc(folders, func(folder string) bool { return !within(folder, path.Clean(family)) })
	})
}

func TestNameFaultsAreFound(t *testing.T) {
	got := nameFaults(map[string][]string{
		"nearest.go": {"geometry/trace", "patterns/problem"},
		"torque.go":  {"geometry/unit", "render/sheet"},
		"foot.go":    {"render/sheet", "render/sheet/card"},
		"book.go":    {"render/sheet/book", "render/words"},
		"doc.go":     {"geometry", "sequence"},
		"read.go":    {"patterns/dxf", "patterns/scan"},
		"ring.go":    {"geometry"},
	})
	if len(got) != 1 || !strings.HasPrefix(got[0], "nearest.go") {
		t.Errorf("%q, want one fault, about nearest.go", got)
	}
}
