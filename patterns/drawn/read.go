// Package drawn converts drawings to patterns and patterns to drawings: which
// line is the edge, and which layer holds what. It may import dxf, writing, and
// the geometry of joints and holes.
package drawn

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/unit"
	"drawdown/patterns/dxf"
	"drawdown/patterns/form"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/patterns/writing"
)

// Options control how a drawing becomes a pattern.
type Options struct {
	dxf.Options
	Holes holes.Rule
}

// Open finds a drawing: "-" is standard input, anything else is a path.
func Open(name string, stdin io.Reader) (source.Source, error) {
	return source.Open(name, stdin, dxf.MostBytes)
}

// Read makes a pattern from a drawing. Round holes are classified by the rule
// of package holes; the outermost closed line is the edge of the part, and the
// others are further paths of it. In a drawing from Write, the layers identify
// everything. The problems name lines of the drawing; warnings say what was
// left out and why.
func Read(from source.Source, ask Options) (writing.Draft, problem.List) {
	drawing, problems := dxf.Read(from.File, from.Data, ask.Options)
	if problems.Stops() {
		return writing.Draft{}, problems
	}
	d := &drawn{Drawing: drawing, rule: ask.Holes, file: from.File, problems: problems}
	d.draft.HolesMm = map[string]float64{}
	d.readLayers()
	d.leaveOtherViews()
	d.readOutline()
	d.readHoles()
	d.checkEdge()
	d.reportSlots()
	d.finish()
	d.problems.SortFrom(d.file)
	return form.Sound(d.draft, d.problems)
}

// drawn is a drawing on its way to a pattern.
type drawn struct {
	dxf.Drawing
	rule     holes.Rule
	file     string
	draft    writing.Draft
	problems problem.List
	ours     bool // written by this program: it holds the part alone
}

func (d *drawn) report(line int, why finding.Finding) {
	d.problems = append(d.problems, d.Problem(d.file, line, why))
}

// readOutline takes the closed lines, the largest first. A circle around
// everything else is the edge of a round part.
func (d *drawn) readOutline() {
	paths := slices.Clone(d.Paths)
	slices.SortStableFunc(paths, func(a, b dxf.Path) int { return cmp.Compare(area(b.Points), area(a.Points)) })
	if edge, found := d.roundEdge(); found {
		circle := d.Circles[edge]
		d.Circles = slices.Delete(slices.Clone(d.Circles), edge, edge+1)
		d.draft.Joint.Outline = append(d.draft.Joint.Outline, dxf.Flat(circle.Centre, circle.DiameterMm))
	}
	for _, p := range paths {
		d.draft.Joint.Outline = append(d.draft.Joint.Outline, p.Points)
	}
}

// area is the area inside a closed path, in either direction.
func area(path []geometry.Point) float64 {
	twice := 0.0
	for i, p := range path {
		q := path[(i+1)%len(path)]
		twice += p.X*q.Y - q.X*p.Y
	}
	return math.Abs(twice) / 2
}

// roundEdge finds the circle around everything, if there are at least two holes
// off its centre.
func (d *drawn) roundEdge() (int, bool) {
	if len(d.Circles) == 0 {
		return 0, false
	}
	e := slices.MaxFunc(d.Circles, func(a, b dxf.Circle) int { return cmp.Compare(a.DiameterMm, b.DiameterMm) })
	edge := slices.Index(d.Circles, e)
	const slack = 1e-6
	within := func(p geometry.Point, radius float64) bool {
		return e.Centre.Distance(p)+radius <= e.DiameterMm/2+slack
	}
	beside := 0
	for i, c := range d.Circles {
		if i == edge || c == e {
			continue
		}
		if !within(c.Centre, c.DiameterMm/2) {
			return 0, false
		}
		if c.Centre.Distance(e.Centre) > c.DiameterMm/2 {
			beside++
		}
	}
	for _, p := range d.Points {
		if !within(p.At, 0) {
			return 0, false
		}
		if p.At.Distance(e.Centre) > slack {
			beside++
		}
	}
	for _, path := range d.Paths {
		if slices.ContainsFunc(path.Points, func(p geometry.Point) bool { return !within(p, 0) }) {
			return 0, false
		}
	}
	return edge, beside >= 2
}

// readHoles classifies the round holes and the points.
func (d *drawn) readHoles() {
	circles := make([]holes.Circle, len(d.Circles))
	for i, c := range d.Circles {
		circles[i] = holes.Circle{Centre: c.Centre, DiameterMm: c.DiameterMm}
	}
	var kept []holes.Circle
	dropped := map[holes.Why][]int{}
	for i, why := range holes.Merge(circles) {
		if why == holes.Hole {
			kept = append(kept, circles[i])
		} else {
			dropped[why] = append(dropped[why], d.Circles[i].Line)
		}
	}
	d.warnAtFirst(DrawnAgain, dropped[holes.Repeated])
	d.warnAtFirst(RoundSmaller, dropped[holes.RoundAnother])
	d.warnAtFirst(ThroughCentres, dropped[holes.Construction])
	diameters := make([]float64, len(kept))
	for i, c := range kept {
		diameters[i] = c.DiameterMm
	}
	const sameSizeMm = 0.05
	sizes := d.rule.Sort(diameters, sameSizeMm)
	for _, size := range sizes {
		d.size(size, kept)
	}
	if unsure, found := d.rule.Unsure(sizes); found {
		d.report(0, unsure)
		d.draft.Cautions = append(d.draft.Cautions, unsure) // it must be on the card as well
	}
	d.points(circles)
}

// warnAtFirst reports a warning at the first of some lines.
func (d *drawn) warnAtFirst(code finding.Code, lines []int) {
	if len(lines) > 0 {
		d.report(slices.Min(lines), finding.Warned(code, finding.Values{"count": len(lines)}))
	}
}

// size adds the holes of one size.
func (d *drawn) size(size holes.Size, kept []holes.Circle) {
	j := &d.draft.Joint
	number := writing.Number(size.DiameterMm)
	if size.Use == holes.Other {
		d.report(0, finding.Warned(SmallerThanAsked, finding.Values{"count": len(size.Of), "diameter": number, "range": fmt.Sprint(d.rule.Fasteners)}))
	}
	d.draft.Notes = append(d.draft.Notes, finding.Noted(HolesTaken, finding.Values{"diameter": number, "count": len(size.Of), "use": string(size.Use)}))
	var places []geometry.Point
	for _, i := range size.Of {
		c := kept[i]
		switch size.Use {
		case holes.Bore:
			j.Bores = append(j.Bores, geometry.Bore{Centre: c.Centre, Diameter: c.DiameterMm})
		case holes.Dowel:
			j.Dowels = append(j.Dowels, geometry.Dowel{Centre: c.Centre, Diameter: c.DiameterMm})
		case holes.Fastener:
			places = append(places, c.Centre)
		}
	}
	if len(places) > 0 {
		kind := "hole " + number
		d.draft.HolesMm[kind] = size.DiameterMm
		d.fasteners(kind, places)
	}
}

// checkEdge reports fasteners outside the edge of the part. Closed lines that
// leave out most fasteners are openings, and none of them is the edge.
func (d *drawn) checkEdge() {
	j := &d.draft.Joint
	var outside []string
	for _, f := range j.Fasteners {
		if !slices.ContainsFunc(j.Outline, func(path []geometry.Point) bool { return geometry.Inside(f.At, path) }) {
			outside = append(outside, f.ID)
		}
	}
	switch {
	case len(j.Outline) == 0 || len(outside) == 0:
	case 2*len(outside) > len(j.Fasteners):
		d.report(0, finding.Warned(OnlyOpenings, finding.Values{"count": len(j.Outline)}))
		j.Outline = nil
	default:
		d.report(0, finding.Warned(OutsideEdge, finding.Values{"count": len(outside), "ids": outside}))
	}
}

// points adds the points that are not centre marks of circles.
func (d *drawn) points(circles []holes.Circle) {
	const outermost = 1e9 // so that a circle around the point comes first
	all := slices.Clone(circles)
	for _, p := range d.Points {
		all = append(all, holes.Circle{Centre: p.At, DiameterMm: outermost})
	}
	var places []geometry.Point
	marks, repeated := []int{}, []int{}
	for i, why := range holes.Merge(all)[len(circles):] {
		switch line := d.Points[i].Line; why {
		case holes.RoundAnother:
			marks = append(marks, line)
		case holes.Repeated:
			repeated = append(repeated, line)
		default:
			places = append(places, d.Points[i].At)
		}
	}
	d.warnAtFirst(CentreMarks, marks)
	d.warnAtFirst(MarkedAgain, repeated)
	if len(places) > 0 {
		d.draft.Notes = append(d.draft.Notes, finding.Noted(PointsTaken, finding.Values{"count": len(places)}))
		d.fasteners(form.ImpliedKind, places)
	}
}

// fasteners adds the fasteners of one kind, row by row from the top left. Their
// ids begin with the kind's letter.
func (d *drawn) fasteners(kind string, places []geometry.Point) {
	const rowMm = 1.0 // tolerance for holes meant to be level
	slices.SortStableFunc(places, func(a, b geometry.Point) int { return cmp.Compare(b.Y, a.Y) })
	for begin, k := 0, 1; k <= len(places); k++ {
		if k == len(places) || places[begin].Y-places[k].Y > rowMm {
			slices.SortStableFunc(places[begin:k], func(a, b geometry.Point) int { return cmp.Compare(a.X, b.X) })
			begin = k
		}
	}
	taken, kinds := map[string]bool{}, map[string]bool{}
	for _, f := range d.draft.Joint.Fasteners {
		taken[f.ID], kinds[f.Kind] = true, true
	}
	prefix := "Z"
	if n := len(kinds); n < 26 {
		prefix = string(rune('A' + n))
	}
	number := 0
	for _, at := range places {
		id := ""
		for id == "" || taken[id] {
			number++
			id = fmt.Sprintf("%s%d", prefix, number)
		}
		taken[id] = true
		d.draft.Joint.Fasteners = append(d.draft.Joint.Fasteners, geometry.Fastener{ID: id, Kind: kind, At: at})
	}
}

// finish checks the result and writes notes for the reader of the file.
func (d *drawn) finish() {
	n := len(d.draft.Joint.Fasteners)
	switch {
	case n == 0:
		d.report(0, finding.Failed(NoFasteners, nil))
	case n > form.MostFasteners:
		d.report(0, finding.Failed(TooManyFasteners, finding.Values{"count": n, "most": form.MostFasteners}))
	}
	if len(d.Texts) > 0 {
		d.report(d.Texts[0].Line, finding.Warned(TextsLeftOut, finding.Values{"count": len(d.Texts)}))
	}
	corners := 0
	for _, path := range d.draft.Joint.Outline {
		corners += len(path)
	}
	if corners > form.MostOutlinePoints {
		d.report(0, finding.Failed(LongOutline, finding.Values{"count": corners, "most": form.MostOutlinePoints}))
	}
	box := geometry.Bounds(d.places())
	furthest := max(-box.Min.X, -box.Min.Y, box.Max.X, box.Max.Y)
	if furthest > unit.Sensible.Coordinate.Most {
		d.report(0, finding.Failed(FarAway, finding.Values{"metres": furthest / 1000}))
	}
	d.draft.Title = titleOf(d.file)
	d.draft.Notes = append([]finding.Finding{
		finding.Noted(OfDrawing, finding.Values{"file": filepath.Base(d.file), "unit": string(d.Unit), "width": box.Width(), "height": unit.Length(box.Height())}),
		d.layersRead(),
		finding.Noted(ByRule, nil),
		finding.Noted(Lacks, nil),
	}, d.draft.Notes...)
}

// places returns all places of the pattern.
func (d *drawn) places() []geometry.Point {
	j := d.draft.Joint
	all := j.Points()
	for _, path := range j.Outline {
		all = append(all, path...)
	}
	for _, b := range j.Bores {
		all = append(all, b.Centre)
	}
	for _, one := range j.Dowels {
		all = append(all, one.Centre)
	}
	return all
}

// titleOf makes a title from a file name, or returns "".
func titleOf(file string) string {
	stem := strings.TrimSuffix(filepath.Base(file), filepath.Ext(file))
	stem = strings.Join(strings.FieldsFunc(stem, func(c rune) bool { return c == '_' || c < ' ' || unicode.IsSpace(c) }), " ")
	if file == "<stdin>" || stem == "" {
		return ""
	}
	first := []rune(stem)
	return strings.ToUpper(string(first[:1])) + string(first[1:])
}
