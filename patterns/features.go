package patterns

import (
	"fmt"

	"drawdown/geometry"
)

// maxOutlinePoints is far more than any drawing of a part needs.
const maxOutlinePoints = 100_000

// readOutline reads one closed path, or a list of them.
func (r *reader) readOutline(f fields) {
	const example = "[[-222, 74], [222, 74], [222, -106]]"
	n := f.get("outline")
	if n == nil {
		return
	}
	items := r.trueList(n, "outline", example)
	if len(items) == 0 {
		return
	}
	paths := []*node{n}
	if first := items[0]; first.shape == listShape && len(first.items) > 0 && first.items[0].shape == listShape {
		paths = items
	}
	total := 0
	for _, path := range paths {
		if total += len(path.items); total > maxOutlinePoints {
			r.fail(n, fmt.Sprintf("up to %d points", maxOutlinePoints), "the outline has too many points")
			return
		}
		if points, ok := r.path(path, example); ok {
			r.input.Joint.Outline = append(r.input.Joint.Outline, points)
		}
	}
}

func (r *reader) path(n *node, example string) ([]geometry.Point, bool) {
	if n.shape != listShape || len(n.items) < 3 {
		r.fail(n, "", "a path of the outline has at least 3 points, for example %s, not %s", example, counted(n))
		return nil, false
	}
	points := make([]geometry.Point, len(n.items))
	allOK := true
	for i, item := range n.items {
		var ok bool
		points[i], ok = r.pointMm(item, "a point of the outline")
		allOK = allOK && ok
	}
	return points, allOK
}

// readFeatures reads what is drawn on the part besides its fasteners.
func (r *reader) readFeatures(file fields) {
	n := file.get("features")
	if n == nil {
		return
	}
	var front *node
	for _, item := range r.trueList(n, "features", "[{bore: [0, 0], diameter: 76}]") {
		f, ok := r.fields(item, "a feature", "bore", "dowel", "diameter", "label", "at", "front")
		if !ok {
			continue
		}
		switch {
		case f.has("front"):
			if front != nil {
				r.fail(item, "", "front stands here twice; it stood first %s", front.placeSeenFrom(item))
			}
			front = item
			r.front(f)
		case f.has("bore"):
			r.bore(f)
		case f.has("dowel"):
			r.dowel(f)
		case f.has("label"):
			r.label(f)
		case f.mistyped("front", "bore", "dowel", "label"):
			// Reported already.
		default:
			r.fail(item, "bore, dowel, label, front", "the feature is none of these")
		}
	}
}

func (r *reader) front(f fields) {
	r.refuse(f, "front stands alone", "bore", "dowel", "diameter", "label", "at")
	if n := f.get("front"); n != nil {
		word, _ := r.choice(n, "front", "left", "right", "top", "bottom")
		r.input.Joint.Front = geometry.Front(word)
	}
}

func (r *reader) bore(f fields) {
	r.refuse(f, "a bore has its place behind bore", "dowel", "at")
	centre, ok1 := f.point("bore")
	diameter, ok2 := f.size("diameter", "76")
	label := f.text("label")
	if ok1 && ok2 {
		r.input.Joint.Bores = append(r.input.Joint.Bores, geometry.Bore{Centre: centre, Diameter: diameter, Label: label})
	}
}

func (r *reader) dowel(f fields) {
	r.refuse(f, "a dowel has a place and a diameter", "label", "at")
	centre, ok1 := f.point("dowel")
	diameter, ok2 := f.size("diameter", "8")
	if ok1 && ok2 {
		r.input.Joint.Dowels = append(r.input.Joint.Dowels, geometry.Dowel{Centre: centre, Diameter: diameter})
	}
}

func (r *reader) label(f fields) {
	r.refuse(f, "a label has a text and a place", "diameter")
	text := f.text("label")
	n := f.need("at", "[0, -98]")
	if n == nil {
		return
	}
	if at, ok := r.pointMm(n, "at"); ok {
		r.input.Joint.Labels = append(r.input.Joint.Labels, geometry.Label{Text: text, At: at})
	}
}

// readStations reads the places of parts that go back where they came from.
func (r *reader) readStations(file fields) {
	n := file.get("stations")
	if n == nil {
		return
	}
	first := map[string]*node{}
	for _, item := range r.trueList(n, "stations", "[{id: T1, at: [0, 20]}]") {
		f, ok := r.fields(item, "a station", "id", "at", "label")
		if !ok {
			continue
		}
		s := geometry.Station{Label: f.text("label")}
		id, at := f.need("id", "T1"), f.need("at", "[0, 20]")
		if id == nil || at == nil {
			continue
		}
		var idOK, atOK bool
		s.ID, idOK = r.newID(id, "id", id.text)
		s.At, atOK = r.pointMm(at, "at")
		if earlier := first[s.ID]; earlier != nil && idOK {
			r.fail(item, "", "the station %s stands here twice; it stood first %s", s.ID, earlier.placeSeenFrom(item))
			continue
		}
		first[s.ID] = item
		if idOK && atOK {
			r.input.Joint.Stations = append(r.input.Joint.Stations, s)
		}
	}
}
