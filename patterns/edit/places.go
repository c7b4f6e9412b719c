package edit

import (
	"math"
	"strconv"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/source"
)

const mmPerInch = 25.4

// inches reports whether bare lengths of the file are in inches. A file has the
// units of the one that it extends.
func (p *pattern) inches() bool {
	const longest = 16
	at, from := &p.content, p.from
	for range longest {
		if units := at.At(Path{"units"}); units != nil {
			return units.Text == "in"
		}
		base := at.At(Path{"extends"})
		if base == nil {
			break
		}
		var next source.Source
		var err error
		if next, err = from.Beside(base.Text); err != nil {
			break
		}
		_, content, err := parse(newText(next.Data))
		if err != nil {
			break
		}
		at, from = &content, next
	}
	return false
}

func (p *pattern) bareUnit() string {
	if p.inches() {
		return "in"
	}
	return "mm"
}

// number writes a length without its unit: to a thousandth of a millimetre.
func (p *pattern) number(mm float64) Value {
	v, digits := mm, 1000.0
	if p.inches() {
		v, digits = mm/mmPerInch, 100_000
	}
	v = math.Round(v*digits)/digits + 0 // no -0
	return Text(strconv.FormatFloat(v, 'f', -1, 64))
}

func (p *pattern) point(at geometry.Point) Value {
	return Value{Kind: List, Of: []Value{p.number(at.X), p.number(at.Y)}}
}

// lengthMm returns the length at a path.
func (p *pattern) lengthMm(path Path) (float64, bool) {
	mm, err := unit.ParseLength(p.at(path), p.bareUnit())
	return float64(mm), err == nil
}

func (p *pattern) pointMm(path Path) (geometry.Point, bool) {
	x, okX := p.lengthMm(path.Item(0))
	y, okY := p.lengthMm(path.Item(1))
	return geometry.Point{X: x, Y: y}, okX && okY
}

// leastStep is the step of the numbers that are written.
const leastStep = 0.0005

// setPoint writes the coordinates that differ.
func (p *pattern) setPoint(path Path, to geometry.Point) error {
	now, ok := p.pointMm(path)
	if !ok {
		return p.set(path, p.point(to))
	}
	for i, by := range []float64{to.X - now.X, to.Y - now.Y} {
		if math.Abs(by) < leastStep {
			continue
		}
		if err := p.set(path.Item(i), p.point(to).Of[i]); err != nil {
			return err
		}
	}
	return nil
}

// where returns the place of a fastener.
func (p *pattern) where(id string) (geometry.Point, error) {
	if e, own, _ := p.find(id); own && e.generator == "" {
		if at, ok := p.pointMm(e.path.Then("at")); ok {
			return at, nil
		}
	}
	if at, ok := p.pointMm(Path{"change", p.below(id), "at"}); ok {
		return at, nil
	}
	f, err := p.fastener(id)
	return f.At, err
}

// place gives a fastener its place.
func (p *pattern) place(id string, to geometry.Point) error {
	path, err := p.alone(id)
	if err != nil {
		return err
	}
	return p.setPoint(path.Then("at"), to)
}

// moveTo gives a fastener the place of an operation.
func (p *pattern) moveTo(op Operation) error {
	if op.At == nil && op.X+op.Y == "" {
		return finding.Failed(LacksValue, finding.Values{"do": string(op.Do), "key": "at"})
	}
	if op.At != nil {
		return p.place(op.IDs[0], pointOf(*op.At))
	}
	to, err := p.where(op.IDs[0])
	if err != nil {
		return err
	}
	typed := unit.Within(unit.Sensible.Coordinate, func(s string) (unit.Length, error) { return unit.ParseLength(s, p.bareUnit()) })
	for i, mm := range []*float64{&to.X, &to.Y} {
		s := []string{op.X, op.Y}[i]
		if s == "" {
			continue
		}
		length, err := typed(s)
		if err != nil {
			return err
		}
		*mm = float64(length)
	}
	return p.place(op.IDs[0], to)
}

// alone returns the path of the keys of a single fastener, after listing those
// of its grid, row, circle or rectangle one by one.
func (p *pattern) alone(id string) (Path, error) {
	e, own, err := p.find(id)
	switch {
	case err != nil:
		return nil, err
	case !own:
		return Path{"change", p.below(id)}, nil
	case e.generator == "":
		return e.path, nil
	}
	if err := p.single(id); err != nil {
		return nil, err
	}
	e, _, err = p.find(id)
	return e.path, err
}

func (p *pattern) nudge(op Operation) error {
	for _, id := range op.IDs {
		at, err := p.where(id)
		if err != nil {
			return err
		}
		if err := p.place(id, at.Add(pointOf(*op.By))); err != nil {
			return err
		}
	}
	return nil
}

// shift moves all fasteners of an entry.
func (p *pattern) shift(op Operation) error {
	e, own, err := p.find(op.IDs[0])
	switch {
	case err != nil:
		return err
	case !own:
		return finding.Failed(Elsewhere, finding.Values{"id": op.IDs[0]})
	}
	key := map[string]string{"": "at", "row": "from"}[e.generator]
	if key == "" && e.generator != "" {
		key = "centre"
	}
	path := e.values().Then(key)
	now, _ := p.pointMm(path) // without one it is 0, 0
	return p.setPoint(path, now.Add(pointOf(*op.By)))
}

func (p *pattern) align(op Operation) error {
	if len(op.IDs) < 2 {
		return finding.Failed(TooFew, finding.Values{"do": string(op.Do), "least": 2})
	}
	first, err := p.where(op.IDs[0])
	if err != nil {
		return err
	}
	for _, id := range op.IDs[1:] {
		at, err := p.where(id)
		if err != nil {
			return err
		}
		if op.Text == "x" {
			at.X = first.X
		} else {
			at.Y = first.Y
		}
		if err := p.place(id, at); err != nil {
			return err
		}
	}
	return nil
}
