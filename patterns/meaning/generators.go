package meaning

import (
	"math"
	"slices"
	"strconv"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/sequence"
)

// generator is one way to state many fasteners at once.
type generator struct {
	name   string
	keys   []string
	places func(r *reader, f form.Fields) ([]geometry.Point, bool) // with no places if only their number can be read
}

// Every generator also takes kind, id (the prefix of the numbers 1, 2, …), omit
// (ids that are left out; the others keep theirs), cast (the numbers on the
// part, in the order of the ids) and mark (what is written there with chalk or
// paint, in the same order).
var commonKeys = []string{"kind", "id", "omit", "cast", "mark"}

var generators = []generator{
	{"grid", []string{"columns", "rows", "pitch", "centre"}, (*reader).grid},
	{"row", []string{"count", "pitch", "from", "angle"}, (*reader).row},
	{"circle", []string{"count", "diameter", "centre", "first", "turn"}, (*reader).circle},
	{"rectangle", []string{"columns", "rows", "size", "centre"}, (*reader).rectangle},
}

// generatorKeys lists the generators and their keys.
func generatorKeys() []string {
	var keys []string
	for _, g := range generators {
		keys = append(append(keys, g.name), g.keys...)
	}
	return keys
}

// generator reads {grid: {…}} and similar entries into the joint. It returns
// false if the entry cannot be read.
func (r *reader) generator(item *nodes.Node, g generator) bool {
	r.Fields(item, finding.Failed(EntryWith, finding.Values{"generator": g.name}), g.name)
	f, ok := r.Fields(item.Get(g.name), finding.Term("the "+g.name), append(slices.Clone(g.keys), commonKeys...)...)
	if !ok {
		return false
	}
	kind := r.fastenerKind(f)
	prefix, idOK := r.prefix(f)
	points, ok := g.places(r, f)
	if !ok && idOK && len(points) > 0 {
		for i := range points {
			id := prefix + strconv.Itoa(i+1)
			r.fasteners.unplaced[id] = geometry.Fastener{ID: id, Kind: kind}
		}
		r.kinds.used[kind] = true
		return true
	}
	if !ok || !idOK || !r.within(item, points) || !r.prefixFits(f, prefix, len(points)) {
		return false
	}
	omitted := r.omitted(f, prefix, len(points))
	count := len(points) - len(omitted)
	casts, marks := r.forEach(f, "cast", "numbers", count), r.forEach(f, "mark", "marks", count)
	if marks != nil {
		r.NotBoth(f)
	}
	kept := 0
	for i, at := range points {
		fastener := geometry.Fastener{ID: prefix + strconv.Itoa(i+1), Kind: kind, At: at}
		if omitted[fastener.ID] {
			if g.name == "circle" {
				r.gaps = append(r.gaps, gap{item, geometry.Centroid(points), at})
			}
			continue
		}
		if casts != nil {
			fastener.Cast = r.Cast(casts[kept])
		}
		if marks != nil {
			fastener.Mark = r.Mark(marks[kept])
		}
		kept++
		r.addFastener(item, fastener)
	}
	return true
}

// prefix returns the prefix of the numbers; it is empty without an id.
func (r *reader) prefix(f form.Fields) (string, bool) {
	n := f.Get("id")
	if n == nil {
		return "", true
	}
	return r.NewID(n, "id", n.Text)
}

func (r *reader) prefixFits(f form.Fields, prefix string, count int) bool {
	last := prefix + strconv.Itoa(count)
	if len([]rune(last)) <= form.MostIDCharacters {
		return true
	}
	r.Fail(f.Get("id"), form.LongID, finding.Values{"id": problem.Quoted(last), "most": form.MostIDCharacters})
	return false
}

// within checks that every place can be drawn.
func (r *reader) within(item *nodes.Node, points []geometry.Point) bool {
	for i, p := range points {
		if max(math.Abs(p.X), math.Abs(p.Y)) > unit.Sensible.Coordinate.Most {
			r.Fail(item, PlaceTooFar, finding.Values{"number": i + 1, "count": len(points)})
			return false
		}
	}
	return true
}

func (r *reader) omitted(f form.Fields, prefix string, count int) map[string]bool {
	n := f.Get("omit")
	if n == nil {
		return nil
	}
	known := map[string]bool{}
	for i := range count {
		known[prefix+strconv.Itoa(i+1)] = true
	}
	omitted := map[string]bool{}
	for _, item := range r.Several(n) {
		switch {
		case item.Shape != nodes.Scalar || !known[item.Text]:
			r.Fail(item, OmitUnknown, finding.Values{"found": item.Called(), "what": f.What, "from": prefix + "1", "to": prefix + strconv.Itoa(count)})
		case omitted[item.Text]:
			r.Fail(item, OmitTwice, finding.Values{"id": item.Text})
		default:
			omitted[item.Text] = true
		}
	}
	return omitted
}

// forEach returns a generator's list that has one value for each place.
func (r *reader) forEach(f form.Fields, key string, of finding.Term, count int) []*nodes.Node {
	n := f.Get(key)
	if n == nil {
		return nil
	}
	if n.Shape != nodes.List || len(n.Items) != count {
		r.Fail(n, NotForEach, finding.Values{"key": key, "count": count, "of": of, "what": f.What, "found": n.Counted()})
		return nil
	}
	return n.Items
}

func (r *reader) grid(f form.Fields) ([]geometry.Point, bool) {
	columns, ok1 := f.Places("columns", 1, "5")
	rows, ok2 := f.Places("rows", 1, "2")
	pitchX, pitchY, ok3 := f.Two("pitch", "[95, 90]", true)
	centre, ok4 := f.Point("centre")
	if !ok1 || !ok2 || !f.FewEnough(columns*rows) {
		return nil, false
	}
	if !ok3 || !ok4 {
		return make([]geometry.Point, columns*rows), false
	}
	return geometry.Grid(columns, rows, pitchX, pitchY, centre), true
}

func (r *reader) row(f form.Fields) ([]geometry.Point, bool) {
	count, ok1 := f.Places("count", 1, "5")
	pitch, ok2 := f.Size("pitch", "60", unit.Sensible.Distance)
	from, ok3 := f.Point("from")
	angleDeg, ok4 := f.Angle("angle", 0)
	if !ok1 {
		return nil, false
	}
	if !ok2 || !ok3 || !ok4 {
		return make([]geometry.Point, count), false
	}
	return geometry.Row(count, pitch, from, angleDeg), true
}

// circle starts at the top and runs clockwise, as bolt circles are numbered
// (ASME PCC-1), unless the file says otherwise.
func (r *reader) circle(f form.Fields) ([]geometry.Point, bool) {
	count, ok1 := f.Places("count", 1, "16")
	diameter, ok2 := f.Size("diameter", "240", unit.Sensible.Distance)
	centre, ok3 := f.Point("centre")
	firstDeg, ok4 := f.Angle("first", 90)
	turn, ok5 := r.turn(f)
	if !ok1 {
		return nil, false
	}
	if !ok2 || !ok3 || !ok4 || !ok5 {
		return make([]geometry.Point, count), false
	}
	return geometry.Circle(count, diameter, centre, firstDeg, turn != sequence.TurnLeft), true
}

func (r *reader) rectangle(f form.Fields) ([]geometry.Point, bool) {
	columns, ok1 := f.Places("columns", 2, "5")
	rows, ok2 := f.Places("rows", 0, "2")
	width, height, ok3 := f.Two("size", "[300, 160]", false)
	centre, ok4 := f.Point("centre")
	if !ok1 || !ok2 || !f.FewEnough(2*(columns+rows)) {
		return nil, false
	}
	if !ok3 || !ok4 {
		return make([]geometry.Point, 2*(columns+rows)), false
	}
	return geometry.Rectangle(columns, rows, width, height, centre), true
}
