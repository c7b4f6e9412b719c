// Package table reads and writes tables that a spreadsheet can open: points, and
// the answers of a class. It may import form, nodes, meaning, writing, geometry
// and its holes.
package table

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"regexp"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"

	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/source"
)

// sheet is a table that is read row by row.
type sheet struct {
	*form.Reader
	file   *nodes.File
	in     *csv.Reader
	text   string // of the table, without a line that states the separator
	stated rune   // the separator that the first line states; 0: none
}

func newSheet(from source.Source) sheet {
	s := sheet{Reader: form.NewReader(from), file: nodes.NewFile(from.File, from.Data)}
	s.text = s.file.Text
	if m := statedSeparator.FindStringSubmatch(s.text); m != nil {
		s.stated, _ = utf8.DecodeRuneInString(m[1])
		s.text = "\n" + s.text[len(m[0]):] // an empty line keeps the numbers of the others
	}
	return s
}

// statedSeparator matches the first line of a table that states its separator.
var statedSeparator = regexp.MustCompile(`^(?i)"?sep=(\t|[;,|])"?[;,|\t ]*(?:\n|$)`)

// asUTF8 returns the bytes of a text in UTF-8. Bytes that are not are taken for
// Windows-1252, which spreadsheets and measuring machines write.
func asUTF8(data []byte) []byte {
	if utf8.Valid(data) || bytes.IndexByte(data, 0) >= 0 {
		return data
	}
	decoded, err := charmap.Windows1252.NewDecoder().Bytes(data)
	if err != nil {
		return data
	}
	return decoded
}

// open starts reading; it is false if the bytes are no text.
func (s *sheet) open() bool {
	if !s.IsText(s.file, s.Source.Data) {
		return false
	}
	sign := s.stated
	if sign == 0 {
		sign = separator(s.file.Lines)
	}
	s.start(s.text, sign)
	s.in.Comment = '#'
	return true
}

// start begins to read a text.
func (s *sheet) start(text string, sign rune) {
	s.in = csv.NewReader(strings.NewReader(text))
	s.in.Comma, s.in.FieldsPerRecord = sign, -1
	s.in.TrimLeadingSpace = sign != '\t' // it would take an empty cell for blanks
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
