package dxf

import (
	"math"
	"strconv"
	"strings"

	"drawdown/geometry/finding"
)

// pair is a group: a code that says what the value is, and the value.
type pair struct {
	code int
	text string
	line int // of the value; in a binary drawing, its place in bytes
}

// source hands out the groups of a drawing. After an error, and at the end of
// the file, it hands out no more.
type source interface {
	next() (pair, bool)
	fault() *fault
}

// fault is what is wrong with a drawing, and where.
type fault struct {
	line  int
	found finding.Finding
	text  string // of the line
}

const (
	highestCode  = 1071
	lowestCode   = -5 // of other uses of groups; never in a file
	longestShown = 60
)

// lines reads the groups of a drawing in text: a line with the code, a line
// with the value.
type lines struct {
	rest string
	line int
	bad  *fault
}

func (l *lines) fault() *fault { return l.bad }

func (l *lines) take() (string, bool) {
	if l.rest == "" {
		return "", false
	}
	l.line++
	text, rest, _ := strings.Cut(l.rest, "\n")
	l.rest = rest
	return strings.TrimSuffix(text, "\r"), true
}

func (l *lines) next() (pair, bool) {
	if l.bad != nil {
		return pair{}, false
	}
	code, ok := l.take()
	if !ok || l.rest == "" && strings.TrimSpace(code) == "" {
		return pair{}, false
	}
	number, err := strconv.Atoi(strings.TrimSpace(code))
	if err != nil || number < lowestCode || number > highestCode {
		l.bad = &fault{l.line, finding.Failed(NoGroupCode, finding.Values{"written": shown(code), "most": highestCode}), code}
		return pair{}, false
	}
	value, ok := l.take()
	if !ok {
		l.bad = &fault{l.line, finding.Failed(ValueMissing, finding.Values{"code": number}), code}
		return pair{}, false
	}
	return pair{number, strings.TrimRight(value, " \t"), l.line}, true
}

// shown quotes a text for a message.
func shown(text string) string {
	text = strings.TrimSpace(strings.ToValidUTF8(text, "?"))
	if letters := []rune(text); len(letters) > longestShown {
		text = string(letters[:longestShown]) + "…"
	}
	return strconv.Quote(text)
}

// furthest bounds every number of a drawing, in its own unit: past it no
// double tells one micrometre from the next.
const furthest = 1e12

// number reads the value of a group as a finite number.
func (p pair) number() (float64, *fault) {
	v, err := strconv.ParseFloat(strings.TrimSpace(p.text), 64)
	if err != nil || math.IsNaN(v) || math.Abs(v) > furthest {
		return 0, &fault{p.line, finding.Failed(NoNumber, finding.Values{"code": p.code, "written": shown(p.text)}), p.text}
	}
	return v, nil
}

// whole reads the value of a group as a whole number.
func (p pair) whole() (int, *fault) {
	v, err := strconv.Atoi(strings.TrimSpace(p.text))
	if err != nil || v < math.MinInt32 || v > math.MaxInt32 {
		return 0, &fault{p.line, finding.Failed(NoWhole, finding.Values{"code": p.code, "written": shown(p.text)}), p.text}
	}
	return v, nil
}
