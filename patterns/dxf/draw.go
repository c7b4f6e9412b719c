package dxf

import (
	"math"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

// place is where the things of a block come to stand.
type place struct {
	to     affine
	layer  string   // of the INSERT: what lies on layer 0 takes it
	within []string // the blocks that it lies in, from the outside
	line   int      // of the outermost INSERT in the file; 0 outside of blocks
}

// deepest is how many blocks may lie in each other.
const deepest = 32

// draw takes one thing of the drawing, or counts it as left out.
func (r *reader) draw(e entity, at place) {
	if r.bad != nil {
		return
	}
	if r.drawn++; r.drawn > mostDrawn {
		r.stop(&fault{e.line, finding.Failed(TooManyThings, finding.Values{"most": mostDrawn}), e.kind})
		return
	}
	layer, why := r.layerOf(e, at)
	switch {
	case r.wholeOf(e, 67, 0) == 1:
		why = PaperSpace
	case r.wholeOf(e, 60, 0) == 1:
		why = Invisible
	}
	if why != "" {
		r.leaveOut(why, e)
		return
	}
	draw, known := drawers[e.kind]
	if !known {
		r.leaveOut("", e)
		return
	}
	if !flat3D[e.kind] {
		flat, ok := r.plane(e)
		if !ok {
			r.leaveOut(Tilted, e)
			return
		}
		at.to = at.to.after(flat)
	}
	draw(r, e, at, layer)
}

// flat3D are the things whose places do not depend on their extrusion.
var flat3D = map[string]bool{"LINE": true, "POINT": true, "ELLIPSE": true, "SPLINE": true}

var drawers map[string]func(r *reader, e entity, at place, layer string)

func init() { // here, because insert calls draw again
	drawers = map[string]func(*reader, entity, place, string){
		"CIRCLE": (*reader).circle, "ARC": (*reader).arc, "ELLIPSE": (*reader).ellipse, "POINT": (*reader).point, "LINE": (*reader).line,
		"LWPOLYLINE": (*reader).lightPolyline, "POLYLINE": (*reader).polyline, "TEXT": (*reader).writing, "INSERT": (*reader).insert,
		"SPLINE": (*reader).spline,
	}
}

// layerOf gives the layer of a thing, and why it is not to be drawn.
func (r *reader) layerOf(e entity, at place) (name string, why finding.Code) {
	name = r.letters.read(e.text(8))
	if name == "" {
		name = "0"
	}
	if name == "0" && at.layer != "" {
		name = at.layer
	}
	l, known := r.layers[strings.ToLower(name)]
	if !known {
		const most = 100_000 // layers
		if len(r.names) < most {
			r.addLayer(layer{name: name})
		}
	}
	asked := len(r.ask.Layers) == 0
	for _, one := range r.ask.Layers {
		asked = asked || strings.EqualFold(one, name)
	}
	switch {
	case e.kind == "INSERT" && len(r.ask.Layers) > 0:
		return name, "" // what it holds has layers of its own
	case !asked:
		return name, NotAsked
	case len(r.ask.Layers) > 0:
		return name, ""
	case l.frozen:
		return name, OnFrozen
	case l.off && e.kind != "INSERT": // off hides what lies on the layer, not what the block holds
		return name, OnOff
	}
	return name, ""
}

// plane gives the plane of a thing: that of the paper, or it seen from behind.
func (r *reader) plane(e entity) (affine, bool) {
	x, y, z := r.numberOf(e, 210, 0), r.numberOf(e, 220, 0), r.numberOf(e, 230, 1)
	const slack = 1e-6 // of the length of the normal
	if math.Hypot(x, y) > slack*math.Abs(z) || z == 0 {
		return affine{}, false
	}
	if z < 0 {
		return mirrored, true
	}
	return scaled(1), true
}

// lineOf is the line that a message names.
func lineOf(e entity, at place) int {
	if at.line > 0 {
		return at.line
	}
	return e.line
}

func (r *reader) xy(e entity, x, y int) geometry.Point {
	return geometry.Point{X: r.needed(e, x), Y: r.needed(e, y)}
}

func (r *reader) circle(e entity, at place, layer string) {
	centre, radius := r.xy(e, 10, 20), r.needed(e, 40)
	if r.bad == nil && !(radius > 0) {
		r.leaveOut(BadRadius, e)
		return
	}
	if factor, even := at.to.even(); even {
		r.addCircle(at.to.place(centre), 2*radius*factor, layer, lineOf(e, at))
		return
	}
	r.addPiece(piece{points: circleOf(centre, radius).in(at.to).flatten(0, 2*math.Pi), round: true, closed: true, layer: layer, line: lineOf(e, at)})
}

func (r *reader) addCircle(centre geometry.Point, diameter float64, layer string, line int) {
	if r.bad == nil && diameter > 0 {
		r.drawing.Circles = append(r.drawing.Circles, Circle{centre, diameter, layer, line})
	}
}

func (r *reader) arc(e entity, at place, layer string) {
	centre, radius := r.xy(e, 10, 20), r.needed(e, 40)
	from, to := r.needed(e, 50)*math.Pi/180, r.needed(e, 51)*math.Pi/180
	if r.bad == nil && !(radius > 0) {
		r.leaveOut(BadRadius, e)
		return
	}
	r.addCurve(circleOf(centre, radius).in(at.to), from, to, layer, lineOf(e, at))
}

func (r *reader) ellipse(e entity, at place, layer string) {
	centre, major := r.xy(e, 10, 20), r.xy(e, 11, 21)
	ratio, from, to := r.needed(e, 40), r.numberOf(e, 41, 0), r.numberOf(e, 42, 2*math.Pi)
	flat, ok := r.plane(e)
	if !ok {
		r.leaveOut(Tilted, e)
		return
	}
	minor := geometry.Point{X: -major.Y, Y: major.X}.Scale(ratio)
	if flat == mirrored {
		minor = minor.Scale(-1)
	}
	r.addCurve(ellipse{centre, major, minor}.in(at.to), from, to, layer, lineOf(e, at))
}

// addCurve adds a curve that runs anticlockwise from one parameter to another.
func (r *reader) addCurve(curve ellipse, from, to float64, layer string, line int) {
	const turn, slack = 2 * math.Pi, 1e-9
	sweep := math.Mod(to-from, turn)
	if sweep <= slack {
		sweep += turn
	}
	r.addPiece(piece{points: curve.flatten(from, sweep), round: true, closed: sweep >= turn-slack, layer: layer, line: line})
}

func (r *reader) point(e entity, at place, layer string) {
	p := at.to.place(r.xy(e, 10, 20))
	if r.bad == nil {
		r.drawing.Points = append(r.drawing.Points, Point{p, layer, lineOf(e, at)})
	}
}

func (r *reader) line(e entity, at place, layer string) {
	r.addPiece(piece{points: []geometry.Point{at.to.place(r.xy(e, 10, 20)), at.to.place(r.xy(e, 11, 21))}, layer: layer, line: lineOf(e, at)})
}

func (r *reader) writing(e entity, at place, layer string) {
	p := r.xy(e, 10, 20)
	if r.wholeOf(e, 72, 0) != 0 || r.wholeOf(e, 73, 0) != 0 {
		p = geometry.Point{X: r.numberOf(e, 11, p.X), Y: r.numberOf(e, 21, p.Y)}
	}
	if r.bad == nil {
		r.drawing.Texts = append(r.drawing.Texts, Text{at.to.place(p), r.letters.read(e.text(1)), layer, lineOf(e, at)})
	}
}

func (r *reader) lightPolyline(e entity, at place, layer string) {
	var all []vertex
	for _, p := range e.pairs {
		switch {
		case p.code == 10:
			all = append(all, vertex{x: r.number(p)})
		case p.code == 20 && len(all) > 0:
			all[len(all)-1].y = r.number(p)
		case p.code == 42 && len(all) > 0:
			all[len(all)-1].bulge = r.number(p)
		}
	}
	r.corners(all, r.wholeOf(e, 70, 0)&1 != 0, e, at, layer)
}

func (r *reader) polyline(e entity, at place, layer string) {
	flags := r.wholeOf(e, 70, 0)
	const in3D, mesh, faces = 8, 16, 64
	if flags&(mesh|faces) != 0 {
		r.leaveOut(IsMesh, e)
		return
	}
	if flags&in3D != 0 {
		if flat, _ := r.plane(e); flat == mirrored {
			at.to = at.to.after(mirrored) // its places are not of its plane: undo
		}
	}
	r.corners(e.vertices, flags&1 != 0, e, at, layer)
}

// corners draws a polyline.
func (r *reader) corners(all []vertex, closed bool, e entity, at place, layer string) {
	if len(all) < 2 {
		r.leaveOut(FewCorners, e)
		return
	}
	points := []geometry.Point{at.to.place(geometry.Point{X: all[0].x, Y: all[0].y})}
	round := true
	last := len(all)
	if !closed {
		last--
	}
	for i := range last {
		from, to := all[i], all[(i+1)%len(all)]
		p, q := geometry.Point{X: from.x, Y: from.y}, geometry.Point{X: to.x, Y: to.y}
		const straight = 1e-9
		if math.Abs(from.bulge) > straight && p != q {
			arc, t0, sweep := bulge(p, q, from.bulge)
			flat := arc.in(at.to).flatten(t0, sweep)
			points = append(points, flat[1:len(flat)-1]...)
		} else if p != q {
			round = false
		}
		points = append(points, at.to.place(q))
	}
	if closed && len(points) > 1 {
		points[len(points)-1] = points[0]
	}
	r.addPiece(piece{points: points, round: round, closed: closed, layer: layer, line: lineOf(e, at)})
}
