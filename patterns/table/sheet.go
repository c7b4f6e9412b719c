// Package table reads and writes tables that a spreadsheet can open: points, and
// the answers of a class. It may import form, nodes, meaning and geometry.
package table

import (
	"encoding/csv"
	"errors"
	"io"
	"strings"
	"unicode/utf8"

	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/source"
)

// sheet is a table that is read row by row.
type sheet struct {
	*form.Reader
	file *nodes.File
	in   *csv.Reader
}

func newSheet(from source.Source) sheet {
	return sheet{Reader: form.NewReader(from), file: nodes.NewFile(from.File, from.Data)}
}

// open starts reading; it is false if the bytes are no text.
func (s *sheet) open() bool {
	if !s.IsText(s.file, s.Source.Data) {
		return false
	}
	s.in = csv.NewReader(strings.NewReader(s.file.Text))
	s.in.Comma, s.in.Comment, s.in.FieldsPerRecord, s.in.TrimLeadingSpace = separator(s.file.Lines), '#', -1, true
	return true
}

// row returns the cells of the next row, or none after the last. It returns
// false for a line that is no row: then the lines after it cannot be separated
// either.
func (s *sheet) row() (cells []string, ok bool) {
	cells, err := s.in.Read()
	if err == nil || errors.Is(err, io.EOF) {
		return cells, true
	}
	line, column, code := 1, 1, StrayQuote
	var parse *csv.ParseError
	if errors.As(err, &parse) {
		line, column = parse.Line, parse.Column
	}
	if errors.Is(err, csv.ErrBareQuote) {
		code = BareQuote
	}
	s.Report(s.file, line, column, finding.Failed(code, nil))
	return nil, false
}

// separator returns the separator of the columns in the first line with points.
func separator(lines []string) rune {
	for _, line := range lines {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		for _, sign := range "\t;" {
			if strings.ContainsRune(line, sign) {
				return sign
			}
		}
		return ','
	}
	return ','
}

// cell makes a node from a cell, to give messages its place.
func (s *sheet) cell(i int, text string) *nodes.Node {
	line, at := s.in.FieldPos(i)
	column := at
	if line >= 1 && line <= len(s.file.Lines) && at-1 <= len(s.file.Lines[line-1]) {
		column = utf8.RuneCountInString(s.file.Lines[line-1][:at-1]) + 1
	}
	return &nodes.Node{Shape: nodes.Scalar, Text: textOf(strings.TrimSpace(text)), File: s.file, Line: line, Column: column}
}
