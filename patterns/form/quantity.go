package form

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
)

const (
	MostCoordinateMm   = 100_000
	maxQuantityLetters = 60
)

// QuantityText gives the text of a plain value that can be a quantity.
func (r *Reader) QuantityText(n *nodes.Node, what string) (string, bool) {
	if n.Shape != nodes.Scalar || n.Null || len(n.Text) > maxQuantityLetters {
		r.Fail(n, "", "%s is a quantity, not %s", what, n.Called())
		return "", false
	}
	return n.Text, true
}

// Unreadable reports what a quantity's parser says: what is wrong, and what is
// allowed. What may be empty where the parser names its subject itself.
func (r *Reader) Unreadable(n *nodes.Node, severity problem.Severity, what string, err error) {
	var why finding.Finding
	if errors.As(err, &why) {
		r.ReportFinding(n, severity, what, why)
		return
	}
	message, allowed := err.Error(), ""
	if head, tail, ok := strings.Cut(message, "; allowed: "); ok {
		message, allowed = head, tail
	}
	if what != "" {
		message = what + ": " + message
	}
	r.Report(n.File, n.Line, n.Column, severity, allowed, message)
}

// LengthMm reads a length or a coordinate; a bare number is in the file's units.
func (r *Reader) LengthMm(n *nodes.Node, what string) (float64, bool) {
	v, ok := Parsed(r, n, what, func(s string) (unit.Length, error) { return unit.ParseLength(s, r.BareUnit) })
	if ok && math.Abs(float64(v)) > MostCoordinateMm {
		r.Fail(n, "up to 100 m", "%s: %s is too far away", what, problem.Quoted(n.Text))
		return 0, false
	}
	return float64(v), ok
}

// SizeMm reads a length above zero.
func (r *Reader) SizeMm(n *nodes.Node, what string) (float64, bool) {
	v, ok := r.LengthMm(n, what)
	if ok && v <= 0 {
		r.Fail(n, "more than 0", "%s: %s is no size", what, problem.Quoted(n.Text))
		return 0, false
	}
	return v, ok
}

// PointMm reads [x, y].
func (r *Reader) PointMm(n *nodes.Node, what string) (geometry.Point, bool) {
	if n.Shape != nodes.List || len(n.Items) != 2 {
		r.Fail(n, "", "%s is a place [x, y], for example [-47.5, 90], not %s", what, n.Found())
		return geometry.Point{}, false
	}
	x, okX := r.LengthMm(n.Items[0], what+" x")
	y, okY := r.LengthMm(n.Items[1], what+" y")
	return geometry.Point{X: x, Y: y}, okX && okY
}

// AngleDeg reads an angle with its unit.
func (r *Reader) AngleDeg(n *nodes.Node, what string) (float64, bool) {
	v, ok := Parsed(r, n, what, unit.ParseAngle)
	return float64(v), ok
}

// Number reads a plain number without a unit.
func (r *Reader) Number(n *nodes.Node, what string) (float64, bool) {
	s, ok := r.QuantityText(n, what)
	if !ok {
		return 0, false
	}
	s = strings.Replace(strings.TrimSpace(s), ",", ".", 1)
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || strings.Trim(s, "0123456789.+-eE") != "" || math.IsInf(v, 0) {
		r.Fail(n, "", "%s: %s is not a number", what, problem.Quoted(n.Text))
		return 0, false
	}
	return v, true
}

// Whole reads a whole number from low to high.
func (r *Reader) Whole(n *nodes.Node, what string, low, high int) (int, bool) {
	v, err := strconv.Atoi(strings.TrimSpace(n.Text))
	if n.Shape != nodes.Scalar || err != nil || v < low || v > high {
		r.Fail(n, fmt.Sprintf("whole numbers from %d to %d", low, high), "%s is %s", what, n.Called())
		return 0, false
	}
	return v, true
}
