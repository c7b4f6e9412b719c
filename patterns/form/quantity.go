package form

import (
	"errors"
	"math"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
)

const maxQuantityLetters = 60

// QuantityText returns the text of a plain value that can be a quantity.
func (r *Reader) QuantityText(n *nodes.Node, what any) (string, bool) {
	if n.Shape != nodes.Scalar || n.Null || len(n.Text) > maxQuantityLetters {
		r.Fail(n, NoQuantity, finding.Values{"what": what, "found": n.Called()})
		return "", false
	}
	return n.Text, true
}

// Unreadable reports an error from a lower package about a value. what is nil
// if the error names its subject itself.
func (r *Reader) Unreadable(n *nodes.Node, severity finding.Severity, what any, err error) {
	why := Told(err)
	if what != nil {
		why = finding.Failed(Unreadable, finding.Values{"what": what, "why": why})
	}
	why.Severity = severity
	r.Report(n.File, n.Line, n.Column, why)
}

// Told returns the finding in an error, or one with the system's message.
func Told(err error) finding.Finding {
	var why finding.Finding
	if !errors.As(err, &why) {
		why = finding.Failed(SystemSays, finding.Values{"text": err.Error()})
	}
	return why
}

// LengthMm reads a length; a bare number is in the file's units.
func (r *Reader) LengthMm(n *nodes.Node, what any, limits unit.Limits) (float64, bool) {
	v, ok := Parsed(r, n, what, unit.Within(limits, func(s string) (unit.Length, error) { return unit.ParseLength(s, r.BareUnit) }))
	return float64(v), ok
}

// CoordinateMm reads a coordinate of a place.
func (r *Reader) CoordinateMm(n *nodes.Node, what any) (float64, bool) {
	return r.LengthMm(n, what, unit.Sensible.Coordinate)
}

// PointMm reads [x, y].
func (r *Reader) PointMm(n *nodes.Node, what any) (geometry.Point, bool) {
	if n.Shape != nodes.List || len(n.Items) != 2 {
		r.Fail(n, NoPlace, finding.Values{"what": what, "found": n.Found()})
		return geometry.Point{}, false
	}
	x, okX := r.CoordinateMm(n.Items[0], coordinate(what, "x"))
	y, okY := r.CoordinateMm(n.Items[1], coordinate(what, "y"))
	return geometry.Point{X: x, Y: y}, okX && okY
}

func coordinate(of any, axis string) finding.Finding {
	return finding.Failed(Coordinate, finding.Values{"of": of, "axis": axis})
}

// AngleDeg reads an angle with its unit.
func (r *Reader) AngleDeg(n *nodes.Node, what any) (float64, bool) {
	v, ok := Parsed(r, n, what, unit.Within(unit.Sensible.Orientation, unit.ParseAngle))
	return float64(v), ok
}

// Number reads a plain number without a unit.
func (r *Reader) Number(n *nodes.Node, what any, limits unit.Limits) (float64, bool) {
	s, ok := r.QuantityText(n, what)
	if !ok {
		return 0, false
	}
	s = strings.Replace(strings.TrimSpace(s), ",", ".", 1)
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || strings.Trim(s, "0123456789.+-eE") != "" || math.IsInf(v, 0) {
		r.Fail(n, NoNumber, finding.Values{"what": what, "written": problem.Quoted(n.Text)})
		return 0, false
	}
	if err := limits.Check(n.Text, v); err != nil {
		r.Unreadable(n, finding.Error, what, err)
		return 0, false
	}
	return v, true
}

// Whole reads an integer from low to high.
func (r *Reader) Whole(n *nodes.Node, what any, low, high int) (int, bool) {
	v, err := strconv.Atoi(strings.TrimSpace(n.Text))
	if n.Shape != nodes.Scalar || err != nil || v < low || v > high {
		r.Fail(n, NoWhole, finding.Values{"what": what, "found": n.Called(), "low": low, "high": high})
		return 0, false
	}
	return v, true
}
