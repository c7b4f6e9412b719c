package meaning

import (
	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/relabel"
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
	r.part.Outlines = n
	before, total := r.Count(), 0
	defer func() { r.part.OutlineUnread = r.ErrorsSince(before) }()
	for _, path := range paths {
		if total += len(path.Items); total > form.MostOutlinePoints {
			r.Fail(n, LongOutline, finding.Values{"most": form.MostOutlinePoints})
			return
		}
		if points, ok := r.path(path, example); ok {
			r.input.Joint.Outline = append(r.input.Joint.Outline, points)
			r.part.Outline = append(r.part.Outline, path)
		}
	}
}

func (r *reader) path(n *nodes.Node, example string) ([]geometry.Point, bool) {
	if n.Shape != nodes.List || len(n.Items) < 3 {
		r.Fail(n, ShortPath, finding.Values{"example": example, "found": n.Counted()})
		return nil, false
	}
	points := make([]geometry.Point, len(n.Items))
	allOK := true
	for i, item := range n.Items {
		var ok bool
		points[i], ok = r.PointMm(item, finding.Term("a point of the outline"))
		allOK = allOK && ok
	}
	return points, allOK
}

// readFeatures reads the features of the part besides its fasteners.
func (r *reader) readFeatures(file form.Fields) {
	var front *nodes.Node
	for f := range file.Maps("features", "[{bore: [0, 0], diameter: 76}]", finding.Term("a feature"), "bore", "dowel", "diameter", "label", "at", "front", "through") {
		switch {
		case f.Has("front"):
			if front != nil {
				r.Fail(f.Node, FrontTwice, finding.Values{"first": front.Stood(f.Node)})
			}
			front, r.part.Front = f.Node, f.Node
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
			r.Fail(f.Node, NoFeature, finding.Values{"allowed": []string{"bore", "dowel", "label", "front"}})
		}
	}
}

func (r *reader) front(f form.Fields) {
	f.Refuse(FrontStandsAlone, "bore", "dowel", "diameter", "label", "at", "through")
	r.input.Joint.Front = form.Word(f, "front", geometry.FrontLeft, geometry.FrontRight, geometry.FrontTop, geometry.FrontBottom)
}

func (r *reader) bore(f form.Fields) {
	f.Refuse(BorePlace, "dowel", "at")
	centre, ok1 := f.Point("bore")
	diameter, ok2 := f.Size("diameter", "76", unit.Sensible.Bore)
	label := r.labelled(f, relabel.Labels)
	through, _ := form.Given(f.Get("through"), "through", f.YesNo)
	if ok1 && ok2 {
		r.input.Joint.Bores = append(r.input.Joint.Bores, geometry.Bore{Centre: centre, Diameter: diameter, Label: label, Through: through})
		r.part.Bores = append(r.part.Bores, f.Node)
	}
}

func (r *reader) dowel(f form.Fields) {
	f.Refuse(DowelParts, "label", "at", "through")
	centre, ok1 := f.Point("dowel")
	diameter, ok2 := f.Size("diameter", "8", unit.Sensible.Dowel)
	if ok1 && ok2 {
		r.input.Joint.Dowels = append(r.input.Joint.Dowels, geometry.Dowel{Centre: centre, Diameter: diameter})
		r.part.Dowels = append(r.part.Dowels, f.Node)
	}
}

func (r *reader) label(f form.Fields) {
	f.Refuse(LabelParts, "diameter", "through")
	text := r.labelled(f, relabel.Labels)
	if at, ok := f.NeedPoint("at", "[0, -98]"); ok {
		r.input.Joint.Labels = append(r.input.Joint.Labels, geometry.Label{Text: text, At: at})
		r.part.Labels = append(r.part.Labels, f.Node)
	}
}

// labelled reads a label and returns it with the changes of the files above.
func (r *reader) labelled(f form.Fields, sort relabel.Sort) string {
	text := f.Text("label")
	if text == "" {
		return ""
	}
	return r.names.Of(sort, text, f.Node.Get("label"))
}

// readStations reads the stations: places of parts that must return to the same
// place.
func (r *reader) readStations(file form.Fields) {
	first := map[string]*nodes.Node{}
	for f := range file.Maps("stations", "[{id: T1, at: [0, 20]}]", finding.Term("a station"), "id", "at", "label") {
		label := r.labelled(f, relabel.AtStation)
		id, idOK := f.NeedID("T1")
		if idOK {
			id = r.names.Of(relabel.Stations, id, f.Node)
		}
		at, atOK := f.NeedPoint("at", "[0, 20]")
		if earlier := first[id]; earlier != nil && idOK {
			r.Fail(f.Node, StationTwice, finding.Values{"id": id, "first": earlier.Stood(f.Node)})
			continue
		}
		first[id] = f.Node
		if idOK && atOK {
			r.input.Joint.Stations = append(r.input.Joint.Stations, geometry.Station{ID: id, At: at, Label: label})
			r.part.Stations = append(r.part.Stations, f.Node)
		}
	}
}
