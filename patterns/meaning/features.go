package meaning

import (
	"fmt"

	"drawdown/geometry"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
)

// readOutline reads one closed path, or a list of them.
func (r *reader) readOutline(f form.Fields) {
	const example = "[[-222, 74], [222, 74], [222, -106]]"
	n := f.Get("outline")
	if n == nil {
		return
	}
	items := r.TrueList(n, "outline", example)
	if len(items) == 0 {
		return
	}
	paths := []*nodes.Node{n}
	if first := items[0]; first.Shape == nodes.List && len(first.Items) > 0 && first.Items[0].Shape == nodes.List {
		paths = items
	}
	total := 0
	for _, path := range paths {
		if total += len(path.Items); total > form.MostOutlinePoints {
			r.Fail(n, fmt.Sprintf("up to %d points", form.MostOutlinePoints), "the outline has too many points")
			return
		}
		if points, ok := r.path(path, example); ok {
			r.input.Joint.Outline = append(r.input.Joint.Outline, points)
		}
	}
}

func (r *reader) path(n *nodes.Node, example string) ([]geometry.Point, bool) {
	if n.Shape != nodes.List || len(n.Items) < 3 {
		r.Fail(n, "", "a path of the outline has at least 3 points, for example %s, not %s", example, counted(n))
		return nil, false
	}
	points := make([]geometry.Point, len(n.Items))
	allOK := true
	for i, item := range n.Items {
		var ok bool
		points[i], ok = r.PointMm(item, "a point of the outline")
		allOK = allOK && ok
	}
	return points, allOK
}

// readFeatures reads what is drawn on the part besides its fasteners.
func (r *reader) readFeatures(file form.Fields) {
	n := file.Get("features")
	if n == nil {
		return
	}
	var front *nodes.Node
	for _, item := range r.TrueList(n, "features", "[{bore: [0, 0], diameter: 76}]") {
		f, ok := r.Fields(item, "a feature", "bore", "dowel", "diameter", "label", "at", "front")
		if !ok {
			continue
		}
		switch {
		case f.Has("front"):
			if front != nil {
				r.Fail(item, "", "front stands here twice; it stood first %s", front.PlaceSeenFrom(item))
			}
			front = item
			r.front(f)
		case f.Has("bore"):
			r.bore(f)
		case f.Has("dowel"):
			r.dowel(f)
		case f.Has("label"):
			r.label(f)
		case f.Mistyped("front", "bore", "dowel", "label"):
			// Reported already.
		default:
			r.Fail(item, "bore, dowel, label, front", "the feature is none of these")
		}
	}
}

func (r *reader) front(f form.Fields) {
	f.Refuse("front stands alone", "bore", "dowel", "diameter", "label", "at")
	if n := f.Get("front"); n != nil {
		word, _ := r.Choice(n, "front", "left", "right", "top", "bottom")
		r.input.Joint.Front = geometry.Front(word)
	}
}

func (r *reader) bore(f form.Fields) {
	f.Refuse("a bore has its place behind bore", "dowel", "at")
	centre, ok1 := f.Point("bore")
	diameter, ok2 := f.Size("diameter", "76")
	label := f.Text("label")
	if ok1 && ok2 {
		r.input.Joint.Bores = append(r.input.Joint.Bores, geometry.Bore{Centre: centre, Diameter: diameter, Label: label})
	}
}

func (r *reader) dowel(f form.Fields) {
	f.Refuse("a dowel has a place and a diameter", "label", "at")
	centre, ok1 := f.Point("dowel")
	diameter, ok2 := f.Size("diameter", "8")
	if ok1 && ok2 {
		r.input.Joint.Dowels = append(r.input.Joint.Dowels, geometry.Dowel{Centre: centre, Diameter: diameter})
	}
}

func (r *reader) label(f form.Fields) {
	f.Refuse("a label has a text and a place", "diameter")
	text := f.Text("label")
	n := f.Need("at", "[0, -98]")
	if n == nil {
		return
	}
	if at, ok := r.PointMm(n, "at"); ok {
		r.input.Joint.Labels = append(r.input.Joint.Labels, geometry.Label{Text: text, At: at})
	}
}

// readStations reads the places of parts that go back where they came from.
func (r *reader) readStations(file form.Fields) {
	n := file.Get("stations")
	if n == nil {
		return
	}
	first := map[string]*nodes.Node{}
	for _, item := range r.TrueList(n, "stations", "[{id: T1, at: [0, 20]}]") {
		f, ok := r.Fields(item, "a station", "id", "at", "label")
		if !ok {
			continue
		}
		s := geometry.Station{Label: f.Text("label")}
		id, at := f.Need("id", "T1"), f.Need("at", "[0, 20]")
		if id == nil || at == nil {
			continue
		}
		var idOK, atOK bool
		s.ID, idOK = r.NewID(id, "id", id.Text)
		s.At, atOK = r.PointMm(at, "at")
		if earlier := first[s.ID]; earlier != nil && idOK {
			r.Fail(item, "", "the station %s stands here twice; it stood first %s", s.ID, earlier.PlaceSeenFrom(item))
			continue
		}
		first[s.ID] = item
		if idOK && atOK {
			r.input.Joint.Stations = append(r.input.Joint.Stations, s)
		}
	}
}
