package dxf

import (
	"math"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

// place is where and how to draw an entity.
type place struct {
	to     affine
	layer  string   // the entity's layer; for layer 0 in a block, that of the INSERT
	within []string // the blocks around it, from the outermost in
	line   int      // of the entity or of the outermost INSERT; 0 if neither is known yet
}

// deepest limits the nesting of blocks.
const deepest = 32

// draw reads one entity of the drawing, or counts it as left out.
func (r *reader) draw(e entity, at place) {
	if r.bad != nil {
		return
	}
	if r.drawn++; r.drawn > mostDrawn {
		r.stop(faultAt(e.line, e.kind, TooManyThings, finding.Values{"most": mostDrawn}))
		return
	}
	var why finding.Code
	at.layer, why = r.layerOf(e, at.layer)
	if at.line == 0 {
		at.line = e.line
	}
	if e.kind != "INSERT" {
		r.onLayer[strings.ToLower(at.layer)]++
	}
	switch {
	case r.wholeOf(e, 67, 0) == 1:
		why = PaperSpace
	case r.wholeOf(e, 60, 0) == 1:
		why = Invisible
	}
	draw, known := drawers[e.kind]
	if why != "" || !known {
		r.leaveOut(why, e)
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
	draw(r, e, at)
}

// flat3D lists the entities whose places do not depend on their extrusion.
var flat3D = map[string]bool{"LINE": true, "POINT": true, "ELLIPSE": true, "SPLINE": true}

var drawers map[string]func(r *reader, e entity, at place)

func init() { // in init, because insert calls draw again
	drawers = map[string]func(*reader, entity, place){
		"CIRCLE": (*reader).circle, "ARC": (*reader).arc, "ELLIPSE": (*reader).ellipse, "POINT": (*reader).point, "LINE": (*reader).line,
		"LWPOLYLINE": (*reader).lightPolyline, "POLYLINE": (*reader).polyline, "TEXT": (*reader).writing, "INSERT": (*reader).insert,
		"SPLINE": (*reader).spline,
	}
}

// plane returns the plane of an entity: that of the paper, or the paper seen
// from behind.
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

func (r *reader) xy(e entity, x, y int) geometry.Point {
	return geometry.Point{X: r.needed(e, x), Y: r.needed(e, y)}
}

// round reads the circle of a CIRCLE or an ARC; it is false without a radius.
func (r *reader) round(e entity) (centre geometry.Point, radius float64, ok bool) {
	centre, radius = r.xy(e, 10, 20), r.needed(e, 40)
	if !(radius > 0) {
		r.leaveOut(BadRadius, e)
	}
	return centre, radius, radius > 0
}

func (r *reader) circle(e entity, at place) {
	centre, radius, ok := r.round(e)
	if !ok {
		return
	}
	if factor, even := at.to.even(); even {
		r.addCircle(at.to.place(centre), 2*radius*factor, at.layer, at.line)
		return
	}
	r.addPiece(piece{points: circleOf(centre, radius).in(at.to).flatten(0, 2*math.Pi), round: true, closed: true, layer: at.layer, line: at.line})
}

func (r *reader) addCircle(centre geometry.Point, diameter float64, layer string, line int) {
	if r.bad == nil && diameter > 0 {
		r.drawing.Circles = append(r.drawing.Circles, Circle{centre, diameter, layer, line})
	}
}

func (r *reader) arc(e entity, at place) {
	centre, radius, ok := r.round(e)
	from, to := r.needed(e, 50)*math.Pi/180, r.needed(e, 51)*math.Pi/180
	if ok {
		r.addCurve(circleOf(centre, radius), from, to, at)
	}
}

func (r *reader) ellipse(e entity, at place) {
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
	r.addCurve(ellipse{centre, major, minor}, from, to, at)
}

// addCurve adds a curve that runs anticlockwise from one parameter to the
// other.
func (r *reader) addCurve(curve ellipse, from, to float64, at place) {
	const turn, slack = 2 * math.Pi, 1e-9
	sweep := math.Mod(to-from, turn)
	if sweep <= slack {
		sweep += turn
	}
	points := curve.in(at.to).flatten(from, sweep)
	r.addPiece(piece{points: points, round: true, closed: sweep >= turn-slack, layer: at.layer, line: at.line})
}

func (r *reader) point(e entity, at place) {
	p := at.to.place(r.xy(e, 10, 20))
	r.drawing.Points = append(r.drawing.Points, Point{p, at.layer, at.line})
}

func (r *reader) line(e entity, at place) {
	from, to := at.to.place(r.xy(e, 10, 20)), at.to.place(r.xy(e, 11, 21))
	r.addPiece(piece{points: []geometry.Point{from, to}, layer: at.layer, line: at.line})
}

func (r *reader) writing(e entity, at place) {
	p := r.xy(e, 10, 20)
	if r.wholeOf(e, 72, 0) != 0 || r.wholeOf(e, 73, 0) != 0 {
		p = geometry.Point{X: r.numberOf(e, 11, p.X), Y: r.numberOf(e, 21, p.Y)}
	}
	r.drawing.Texts = append(r.drawing.Texts, Text{at.to.place(p), r.letters.read(e.text(1)), at.layer, at.line})
}

func (r *reader) lightPolyline(e entity, at place) {
	for _, p := range e.pairs {
		last := len(e.vertices) - 1
		switch {
		case p.code == 10:
			e.vertices = append(e.vertices, vertex{at: geometry.Point{X: r.number(p)}})
		case p.code == 20 && last >= 0:
			e.vertices[last].at.Y = r.number(p)
		case p.code == 42 && last >= 0:
			e.vertices[last].bulge = r.number(p)
		}
	}
	r.corners(e, r.wholeOf(e, 70, 0)&1 != 0, at)
}

func (r *reader) polyline(e entity, at place) {
	flags := r.wholeOf(e, 70, 0)
	const in3D, mesh, faces = 8, 16, 64
	if flags&(mesh|faces) != 0 {
		r.leaveOut(IsMesh, e)
		return
	}
	if flags&in3D != 0 {
		if flat, _ := r.plane(e); flat == mirrored {
			at.to = at.to.after(mirrored) // its places are not in its plane: undo
		}
	}
	r.corners(e, flags&1 != 0, at)
}

// corners draws a polyline.
func (r *reader) corners(e entity, closed bool, at place) {
	all := e.vertices
	if len(all) < 2 {
		r.leaveOut(FewCorners, e)
		return
	}
	points := []geometry.Point{at.to.place(all[0].at)}
	round := true
	last := len(all)
	if !closed {
		last--
	}
	for i := range last {
		p, q, b := all[i].at, all[(i+1)%len(all)].at, all[i].bulge
		const straight = 1e-9
		if math.Abs(b) > straight && p != q {
			arc, t0, sweep := bulge(p, q, b)
			flat := arc.in(at.to).flatten(t0, sweep)
			points = append(points, flat[1:len(flat)-1]...)
		} else if p != q {
			round = false
		}
		points = append(points, at.to.place(q))
	}
	if closed {
		points[len(points)-1] = points[0]
	}
	r.addPiece(piece{points: points, round: round, closed: closed, layer: at.layer, line: at.line})
}
