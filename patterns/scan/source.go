package scan

import (
	"embed"
	"io"

	"drawdown/patterns/source"
)

//go:embed scans/*.jpg
var files embed.FS

var builtin = &source.Shelf{Sort: "scan", Files: files, Folder: "scans", Ending: ".jpg", Most: mostFileBytes}

// Builtin lists the names of the built-in scans, sorted.
func Builtin() []string { return builtin.Names() }

// Open finds a scan as source.Shelf.Open does.
func Open(name string, stdin io.Reader) (source.Source, error) { return builtin.Open(name, stdin) }
