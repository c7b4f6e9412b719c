package dxf

import (
	"math"
	"strconv"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// pair is a group: a code that gives the type of the value, and the value.
type pair struct {
	code int
	text string
	line int // of the value; in a binary drawing, its offset in bytes
}

// begins reports whether the group begins the part of a drawing with that name.
func (p pair) begins(word string) bool { return p.code == 0 && p.text == word }

// source returns the groups of a drawing; it is false at the end of the file
// and on an error.
type source interface {
	next() (pair, bool, *fault)
}

// fault is an error in a drawing, and its place.
type fault struct {
	line  int
	found finding.Finding
	text  string // of the line
}

func faultAt(line int, text string, code finding.Code, values finding.Values) *fault {
	return &fault{line, finding.Failed(code, values), text}
}

const (
	highestCode = 1071
	lowestCode  = -5 // of other uses of groups; never in a file
)

// lines reads the groups of a text drawing: a line with the code, then a line
// with the value.
type lines struct {
	rest string
	line int
}

func (l *lines) take() (string, bool) {
	if l.rest == "" {
		return "", false
	}
	l.line++
	text, rest, _ := strings.Cut(l.rest, "\n")
	l.rest = rest
	return strings.TrimSuffix(text, "\r"), true
}

func (l *lines) next() (pair, bool, *fault) {
	code, ok := l.take()
	if !ok || l.rest == "" && strings.TrimSpace(code) == "" {
		return pair{}, false, nil
	}
	number, err := strconv.Atoi(strings.TrimSpace(code))
	if err != nil || number < lowestCode || number > highestCode {
		return pair{}, false, faultAt(l.line, code, NoGroupCode, finding.Values{"written": shown(code), "most": highestCode})
	}
	value, ok := l.take()
	if !ok {
		return pair{}, false, faultAt(l.line, code, ValueMissing, finding.Values{"code": number})
	}
	return pair{number, strings.TrimRight(value, " \t"), l.line}, true, nil
}

// shown quotes a text for a message.
func shown(text string) string {
	return problem.Quoted(strings.TrimSpace(strings.ToValidUTF8(text, "?")))
}

// furthest limits every number of a drawing, in its own unit: beyond it no
// float64 resolves one micrometre.
const furthest = 1e12

// number reads the value of a group as a finite number.
func (r *reader) number(p pair) float64 {
	// Some programs write the decimal comma of their country.
	v, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(p.text), ",", ".", 1), 64)
	if err != nil || math.IsNaN(v) || math.Abs(v) > furthest {
		r.stop(faultAt(p.line, p.text, NoNumber, finding.Values{"code": p.code, "written": shown(p.text)}))
		return 0
	}
	return v
}

// whole reads the value of a group as a whole number.
func (r *reader) whole(p pair) int {
	v, err := strconv.Atoi(strings.TrimSpace(p.text))
	if err != nil || v < math.MinInt32 || v > math.MaxInt32 {
		r.stop(faultAt(p.line, p.text, NoWhole, finding.Values{"code": p.code, "written": shown(p.text)}))
		return 0
	}
	return v
}
