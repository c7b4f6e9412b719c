package patterns

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/problem"
)

const (
	maxCoordinateMm    = 100_000
	maxQuantityLetters = 60
)

// quantityText gives the text of a plain value that can be a quantity.
func (r *reader) quantityText(n *node, what string) (string, bool) {
	if n.shape != scalarShape || n.null || len(n.text) > maxQuantityLetters {
		r.fail(n, "", "%s is a quantity, not %s", what, n.called())
		return "", false
	}
	return n.text, true
}

// unreadable reports what a quantity's parser says: what is wrong, and what is
// allowed. What may be empty where the parser names its subject itself.
func (r *reader) unreadable(n *node, severity problem.Severity, what string, err error) {
	var why finding.Finding
	if errors.As(err, &why) {
		r.reportFinding(n, severity, what, why)
		return
	}
	message, allowed := err.Error(), ""
	if head, tail, ok := strings.Cut(message, "; allowed: "); ok {
		message, allowed = head, tail
	}
	if what != "" {
		message = what + ": " + message
	}
	r.report(n.file, n.line, n.column, severity, allowed, message)
}

// lengthMm reads a length or a coordinate; a bare number is in the file's units.
func (r *reader) lengthMm(n *node, what string) (float64, bool) {
	s, ok := r.quantityText(n, what)
	if !ok {
		return 0, false
	}
	v, err := unit.ParseLength(s, r.bareUnit)
	if err != nil {
		r.unreadable(n, problem.Error, what, err)
		return 0, false
	}
	if math.Abs(float64(v)) > maxCoordinateMm {
		r.fail(n, "up to 100 m", "%s: %s is too far away", what, quoted(s))
		return 0, false
	}
	return float64(v), true
}

// sizeMm reads a length above zero.
func (r *reader) sizeMm(n *node, what string) (float64, bool) {
	v, ok := r.lengthMm(n, what)
	if ok && v <= 0 {
		r.fail(n, "more than 0", "%s: %s is no size", what, quoted(n.text))
		return 0, false
	}
	return v, ok
}

// pointMm reads [x, y].
func (r *reader) pointMm(n *node, what string) (geometry.Point, bool) {
	if n.shape != listShape || len(n.items) != 2 {
		r.fail(n, "", "%s is a place [x, y], for example [-47.5, 90], not %s", what, n.found())
		return geometry.Point{}, false
	}
	x, okX := r.lengthMm(n.items[0], what+" x")
	y, okY := r.lengthMm(n.items[1], what+" y")
	return geometry.Point{X: x, Y: y}, okX && okY
}

// angleDeg reads an angle with its unit.
func (r *reader) angleDeg(n *node, what string) (float64, bool) {
	s, ok := r.quantityText(n, what)
	if !ok {
		return 0, false
	}
	v, err := unit.ParseAngle(s)
	if err != nil {
		r.unreadable(n, problem.Error, what, err)
		return 0, false
	}
	return float64(v), true
}

// number reads a plain number without a unit.
func (r *reader) number(n *node, what string) (float64, bool) {
	s, ok := r.quantityText(n, what)
	if !ok {
		return 0, false
	}
	s = strings.Replace(strings.TrimSpace(s), ",", ".", 1)
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || strings.Trim(s, "0123456789.+-eE") != "" || math.IsInf(v, 0) {
		r.fail(n, "", "%s: %s is not a number", what, quoted(n.text))
		return 0, false
	}
	return v, true
}

// whole reads a whole number from low to high.
func (r *reader) whole(n *node, what string, low, high int) (int, bool) {
	v, err := strconv.Atoi(strings.TrimSpace(n.text))
	if n.shape != scalarShape || err != nil || v < low || v > high {
		r.fail(n, fmt.Sprintf("whole numbers from %d to %d", low, high), "%s is %s", what, n.called())
		return 0, false
	}
	return v, true
}
