// Package patterns holds the built-in pattern files and opens and reads pattern
// files. Its subpackages do the work, each with one subject: source finds
// files, nodes parses text into lines and nodes, form reads keys and
// quantities, meaning makes a checked plan.Input of them. table, drawn,
// measured, machine and wrenches read the other files; writing writes a
// pattern.
//
// The functions that read the keys document them. In the whole file, unknown
// and repeated keys are errors, and so is a key without a value. A length
// without a unit is in the file's units (mm or in); torques, angles and times
// always need a unit.
package patterns

import (
	"embed"
	"io"
	"os"

	"drawdown/patterns/meaning"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/sequence/plan"
)

//go:embed *.yaml surveys/*.yaml machines/*.yaml
var builtin embed.FS

// The built-in files.
var (
	patterns = shelf("pattern", ".")
	Surveys  = shelf("survey", "surveys")
	Machines = shelf("machine", "machines")
)

func shelf(sort, folder string) *source.Shelf {
	return &source.Shelf{Sort: sort, Files: builtin, Folder: folder, Ending: ".yaml", Most: source.MostBytes}
}

func init() {
	for _, s := range []*source.Shelf{patterns, Surveys, Machines} {
		s.Bases = patterns
	}
	patterns.Other, Machines.Other = Machines, patterns
}

// Builtin lists the names of the built-in patterns, sorted.
func Builtin() []string { return patterns.Names() }

// BuiltinText returns the file of a built-in pattern, with line feeds.
func BuiltinText(name string) ([]byte, bool) { return patterns.Text(name) }

// Unknown reports that there is no built-in pattern with a name, and which may
// be meant.
func Unknown(name string) error { return patterns.Unknown(name) }

// Open finds a pattern like Shelf.Open.
func Open(name string, stdin io.Reader) (source.Source, error) { return patterns.Open(name, stdin) }

// OpenIn finds a file in a folder like Shelf.OpenIn.
func OpenIn(folder *os.Root, name string) (source.Source, error) {
	return patterns.OpenIn(folder, name)
}

// FromBytes returns a source for text from elsewhere, such as a page's editor.
// It may extend built-in patterns, but no file.
func FromBytes(file string, data []byte) source.Source { return patterns.FromBytes(file, data) }

// Read reads a pattern and everything that it extends: see meaning.Read.
func Read(from source.Source) (plan.Input, problem.List) {
	input, _, problems := meaning.Read(from)
	return input, problems
}
