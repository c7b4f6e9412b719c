package nodes

import (
	"bytes"
	"strings"

	"drawdown/patterns/problem"
)

// File is one file in the chain of extends, split into lines for the snippets.
type File struct {
	Name  string
	Level int // 0: the file that is read; 1: the one it extends, and so on
	Text  string
	Lines []string
	long  map[int][]rune // long lines that were shown before
}

// lineEnds are the line breaks of YAML 1.1, as counted by the parser.
var lineEnds = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u0085", "\n", "\u2028", "\n", "\u2029", "\n")

// NewFile splits a file into lines.
func NewFile(name string, data []byte) *File {
	text := lineEnds.Replace(string(bytes.TrimPrefix(data, []byte("\uFEFF"))))
	return &File{Name: name, Text: text, Lines: strings.Split(text, "\n"), long: map[int][]rune{}}
}

// lastLine is the number of the last line with content.
func (f *File) lastLine() int {
	n := len(f.Lines)
	if n > 1 && f.Lines[n-1] == "" {
		n--
	}
	return n
}

func (f *File) excerpt(line, column int) (string, int) {
	if line < 1 || line > len(f.Lines) {
		return "", 0
	}
	const short = 1000
	text := f.Lines[line-1]
	if len(text) < short {
		return problem.Excerpt([]rune(text), column)
	}
	if f.long[line] == nil {
		f.long[line] = []rune(text)
	}
	return problem.Excerpt(f.long[line], column)
}

// clamp limits a position to the file.
func (f *File) clamp(line, column int) (int, int) {
	line = min(max(line, 1), f.lastLine())
	return line, min(max(column, 1), len([]rune(f.Lines[line-1]))+1)
}

// within converts a position from the parser, which continues past the end of
// the file.
func (f *File) within(line, column int) (int, int) {
	if line > f.lastLine() || line > 0 && column > len(f.Lines[line-1])+1 {
		return f.clamp(line, column)
	}
	return line, column
}

// Place returns the position of a node, for a problem found later.
func (n *Node) Place() problem.Problem {
	place := problem.Problem{File: n.File.Name}
	place.Line, place.Column = n.File.within(n.Line, n.Column)
	place.Snippet, place.Mark = n.File.excerpt(place.Line, place.Column)
	return place
}
