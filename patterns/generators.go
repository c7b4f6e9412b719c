package patterns

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"drawdown/geometry"
	"drawdown/sequence"
)

// generator is one way to write many fasteners at once.
type generator struct {
	name   string
	keys   []string
	places func(r *reader, f fields) ([]geometry.Point, bool)
}

// Every generator also takes kind, id (what stands before the numbers 1, 2, …),
// omit (ids that are left out; the others keep theirs), cast (the numbers on
// the part, for its places in the order of their ids) and mark (what is written
// there with chalk or paint, likewise).
var commonKeys = []string{"kind", "id", "omit", "cast", "mark"}

var generators = []generator{
	{"grid", []string{"columns", "rows", "pitch", "centre"}, (*reader).grid},
	{"row", []string{"count", "pitch", "from", "angle"}, (*reader).row},
	{"circle", []string{"count", "diameter", "centre", "first", "turn"}, (*reader).circle},
	{"rectangle", []string{"columns", "rows", "size", "centre"}, (*reader).rectangle},
}

// generatorKeys lists the generators and their own keys.
func generatorKeys() []string {
	var keys []string
	for _, g := range generators {
		keys = append(append(keys, g.name), g.keys...)
	}
	return keys
}

// generator reads {grid: {…}} and its like into the joint.
func (r *reader) generator(item *node, g generator) {
	if _, ok := r.fields(item, "a fastener entry with a "+g.name, g.name); !ok {
		return
	}
	f, ok := r.fields(item.get(g.name), "the "+g.name, append(slices.Clone(g.keys), commonKeys...)...)
	if !ok {
		r.fasteners.broken = true
		return
	}
	kind := r.fastenerKind(f)
	prefix, idOK := r.prefix(f)
	points, ok := g.places(r, f)
	if !ok || !idOK || !r.within(item, points) {
		r.fasteners.broken = true
		return
	}
	if !r.prefixFits(f, prefix, len(points)) {
		r.fasteners.broken = true
		return
	}
	omitted := r.omitted(f, prefix, len(points))
	casts, marks := r.casts(f, len(points)-len(omitted)), r.marks(f, len(points)-len(omitted))
	kept := 0
	for i, at := range points {
		id := prefix + strconv.Itoa(i+1)
		if omitted[id] {
			continue
		}
		fastener := geometry.Fastener{ID: id, Kind: kind, At: at}
		if kept < len(casts) {
			fastener.Cast = casts[kept]
		}
		if kept < len(marks) {
			fastener.Mark = marks[kept]
		}
		kept++
		r.addFastener(item, fastener)
	}
}

// prefix gives what stands before the number; nothing where there is no id.
func (r *reader) prefix(f fields) (string, bool) {
	n := f.get("id")
	if n == nil {
		return "", true
	}
	return r.newID(n, "id", n.text)
}

func (r *reader) prefixFits(f fields, prefix string, count int) bool {
	last := prefix + strconv.Itoa(count)
	if len([]rune(last)) <= maxIDCharacters {
		return true
	}
	r.fail(f.get("id"), fmt.Sprintf("up to %d characters", maxIDCharacters), "the id %s is too long", quoted(last))
	return false
}

// within checks that every place can be drawn.
func (r *reader) within(item *node, points []geometry.Point) bool {
	for i, p := range points {
		if math.Abs(p.X) > maxCoordinateMm || math.Abs(p.Y) > maxCoordinateMm {
			r.fail(item, "up to 100 m", "place %d of %d lies too far away", i+1, len(points))
			return false
		}
	}
	return true
}

func (r *reader) omitted(f fields, prefix string, count int) map[string]bool {
	n := f.get("omit")
	if n == nil {
		return nil
	}
	known := map[string]bool{}
	for i := range count {
		known[prefix+strconv.Itoa(i+1)] = true
	}
	omitted := map[string]bool{}
	for _, item := range r.list(n) {
		switch {
		case item.shape != scalarShape || !known[item.text]:
			r.fail(item, prefix+"1 to "+prefix+strconv.Itoa(count), "omit: %s is no id of %s", item.called(), f.what)
		case omitted[item.text]:
			r.fail(item, "", "omit: %s stands there twice", item.text)
		default:
			omitted[item.text] = true
		}
	}
	return omitted
}

func (r *reader) casts(f fields, count int) []int {
	n := r.forEach(f, "cast", "numbers", count)
	if n == nil {
		return nil
	}
	casts := make([]int, count)
	for i, item := range n.items {
		casts[i], _ = r.whole(item, "cast", 1, maxCastNumber)
	}
	return casts
}

func (r *reader) marks(f fields, count int) []string {
	n := r.forEach(f, "mark", "marks", count)
	if n == nil {
		return nil
	}
	r.notBoth(f)
	marks := make([]string, count)
	for i, item := range n.items {
		marks[i], _ = r.mark(item)
	}
	return marks
}

// forEach gives the list of a generator that says something for each place.
func (r *reader) forEach(f fields, key, of string, count int) *node {
	n := f.get(key)
	if n != nil && (n.shape != listShape || len(n.items) != count) {
		r.fail(n, "", "%s is a list of %d %s, one for each place of %s, not %s", key, count, of, f.what, counted(n))
		return nil
	}
	return n
}

func counted(n *node) string {
	if n.shape == listShape {
		return strconv.Itoa(len(n.items))
	}
	return n.called()
}

// count reads a number of places.
func (f fields) count(key string, low int, example string) (int, bool) {
	n := f.need(key, example)
	if n == nil {
		return 0, false
	}
	return f.r.whole(n, key, low, maxFasteners)
}

// point reads a place that may be missing: [0, 0] then.
func (f fields) point(key string) (geometry.Point, bool) {
	if !f.has(key) {
		return geometry.Point{}, true
	}
	n := f.get(key)
	if n == nil {
		return geometry.Point{}, false
	}
	return f.r.pointMm(n, key)
}

// angle reads an angle in degrees that may be missing.
func (f fields) angle(key string, fallback float64) (float64, bool) {
	if !f.has(key) {
		return fallback, true
	}
	n := f.get(key)
	if n == nil {
		return 0, false
	}
	return f.r.angleDeg(n, key)
}

// size reads a length above zero that must be there.
func (f fields) size(key, example string) (float64, bool) {
	n := f.need(key, example)
	if n == nil {
		return 0, false
	}
	return f.r.sizeMm(n, key)
}

// two reads [along x, along y] of sizes; one number counts for both.
func (f fields) two(key, example string, oneForBoth bool) (x, y float64, ok bool) {
	n := f.need(key, example)
	if n == nil {
		return 0, 0, false
	}
	if n.shape == scalarShape && oneForBoth {
		x, ok = f.r.sizeMm(n, key)
		return x, x, ok
	}
	if n.shape != listShape || len(n.items) != 2 {
		f.r.fail(n, "", "%s is two lengths, along x and along y, for example %s, not %s", key, example, n.found())
		return 0, 0, false
	}
	x, okX := f.r.sizeMm(n.items[0], key)
	y, okY := f.r.sizeMm(n.items[1], key)
	return x, y, okX && okY
}

// fewEnough checks the number of places before any is made.
func (f fields) fewEnough(count int) bool {
	if count > maxFasteners {
		f.r.fail(f.node, fmt.Sprintf("up to %d", maxFasteners), "%s has %d places", f.what, count)
		return false
	}
	return true
}

func (r *reader) grid(f fields) ([]geometry.Point, bool) {
	columns, ok1 := f.count("columns", 1, "5")
	rows, ok2 := f.count("rows", 1, "2")
	pitchX, pitchY, ok3 := f.two("pitch", "[95, 90]", true)
	centre, ok4 := f.point("centre")
	if !ok1 || !ok2 || !ok3 || !ok4 || !f.fewEnough(columns*rows) {
		return nil, false
	}
	return geometry.Grid(columns, rows, pitchX, pitchY, centre), true
}

func (r *reader) row(f fields) ([]geometry.Point, bool) {
	count, ok1 := f.count("count", 1, "5")
	pitch, ok2 := f.size("pitch", "60")
	from, ok3 := f.point("from")
	angleDeg, ok4 := f.angle("angle", 0)
	if !ok1 || !ok2 || !ok3 || !ok4 {
		return nil, false
	}
	return geometry.Row(count, pitch, from, angleDeg), true
}

// circle starts at the top and runs clockwise, as bolt circles are numbered
// (ASME PCC-1), where the file says nothing else.
func (r *reader) circle(f fields) ([]geometry.Point, bool) {
	count, ok1 := f.count("count", 1, "16")
	diameter, ok2 := f.size("diameter", "240")
	centre, ok3 := f.point("centre")
	firstDeg, ok4 := f.angle("first", 90)
	clockwise, ok5 := true, true
	if n := f.get("turn"); n != nil {
		var turn string
		turn, ok5 = r.turnWord(n)
		clockwise = turn == string(sequence.TurnRight)
	}
	if !ok1 || !ok2 || !ok3 || !ok4 || !ok5 {
		return nil, false
	}
	return geometry.Circle(count, diameter, centre, firstDeg, clockwise), true
}

func (r *reader) rectangle(f fields) ([]geometry.Point, bool) {
	columns, ok1 := f.count("columns", 2, "5")
	rows, ok2 := f.count("rows", 0, "2")
	width, height, ok3 := f.two("size", "[300, 160]", false)
	centre, ok4 := f.point("centre")
	if !ok1 || !ok2 || !ok3 || !ok4 || !f.fewEnough(2*(columns+rows)) {
		return nil, false
	}
	return geometry.Rectangle(columns, rows, width, height, centre), true
}
