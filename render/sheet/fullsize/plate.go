// Package fullsize draws a part in millimetres of paper, at its true size or
// reduced, for sheets that a part or its fasteners are laid on: its lines, a
// spot for each fastener, and words where there is room.
package fullsize

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/sheet/tile"
	"drawdown/render/words"
)

// Plate is a drawing while it fills. Spots must be known before words are set.
type Plate struct {
	Drawing tile.Contents
	// NoRoom lists the words that found no room.
	NoRoom []string

	joint   geometry.Joint
	reduced float64
	seams   tile.Seams
	words   *words.Catalogue
	lines   []segment
	groups  []scene.Point     // middles of the groups
	spots   []scene.Box       // the room of each
	edges   [][][]scene.Point // their lines
	texts   []scene.Box
}

type segment struct {
	a, b scene.Point
	box  scene.Box
}

// New draws the lines of the part: edge, bores, dowels. One millimetre of paper
// is that many of the part. No word is set across a seam.
func New(j geometry.Joint, reduced float64, w *words.Catalogue, seams tile.Seams) *Plate {
	p := &Plate{joint: j, reduced: reduced, words: w, seams: seams}
	p.edge()
	for _, b := range j.Bores {
		p.bore(b)
	}
	for _, d := range j.Dowels {
		p.dowel(d)
	}
	return p
}

// mostNamed is how many words a note names.
const mostNamed = 8

// Notes tell which words found no room.
func Notes(noRoom []string) []string {
	n := len(noRoom)
	switch {
	case n == 0:
		return nil
	case n <= mostNamed:
		return []string{fmt.Sprintf("%d words found no room: %s", n, strings.Join(noRoom, ", "))}
	}
	return []string{fmt.Sprintf("%d words found no room: %s and %d more", n, strings.Join(noRoom[:mostNamed], ", "), n-mostNamed)}
}

// Print lays a drawing out over sheets. The legend is asked for with how many
// words found no room.
func Print(draw func(tile.Seams) *Plate, ask tile.Sheets, legend func(noRoom int) []string) (pages []scene.Page, notes []string, err error) {
	ask.Legend = legend(0)
	again := func(s tile.Seams) tile.Contents {
		p := draw(s)
		p.Drawing.NoRoom = p.NoRoom
		return p.Drawing
	}
	pages, notes, d, err := tile.Join(again, ask)
	if n := len(d.NoRoom); n > 0 {
		ask.Legend = legend(n)
		pages, notes, d, err = tile.Join(again, ask)
	}
	return pages, append(Notes(d.NoRoom), notes...), err
}

// At is where a place of the part lies.
func (p *Plate) At(q geometry.Point) scene.Point {
	return scene.Point{X: q.X / p.reduced, Y: -q.Y / p.reduced}
}

// Length is how long a length of the part is.
func (p *Plate) Length(mm float64) float64 { return mm / p.reduced }

func (p *Plate) line(path scene.Path, ink scene.Ink, width, dash float64) {
	p.Drawing.Lines = append(p.Drawing.Lines, scene.Shape{Path: path, Stroke: ink, Width: width, Dash: dash})
	for _, run := range path.Flatten() {
		for k := 1; k < len(run); k++ {
			a, b := run[k-1], run[k]
			p.lines = append(p.lines, segment{a, b, scene.Box{Left: math.Min(a.X, b.X), Top: math.Min(a.Y, b.Y), Right: math.Max(a.X, b.X), Bottom: math.Max(a.Y, b.Y)}.Grown(0.01)})
		}
	}
}

// edge draws the outline; without one a dashed line round the fasteners.
func (p *Plate) edge() {
	for _, path := range p.joint.Outline {
		points := make([]scene.Point, len(path))
		for k, q := range path {
			points[k] = p.At(q)
		}
		p.line(scene.Polyline(points, true), scene.Black, 0.3, 0)
	}
	if len(p.joint.Outline) > 0 {
		return
	}
	const distance = 20.0 // enough for any head
	points := p.joint.Points()
	rim := geometry.Enclose(points)
	if len(points) >= 5 && geometry.OneCircle(points, rim.Centre) {
		c := p.At(rim.Centre)
		p.line(scene.Circle(c.X, c.Y, p.Length(rim.Radius+distance)), scene.Grey, 0.2, 2)
		return
	}
	p.line(p.around(geometry.Hull(points), distance), scene.Grey, 0.2, 2)
}

// around draws a line at a distance round a hull: its corners are arcs.
func (p *Plate) around(hull []geometry.Point, distance float64) scene.Path {
	var points []scene.Point
	const step = math.Pi / 24
	n := len(hull)
	for k, here := range hull {
		before, next := hull[(k+n-1)%n], hull[(k+1)%n]
		from, to := 0.0, 2*math.Pi
		if n > 1 {
			in, out := here.Sub(before), next.Sub(here)
			from = math.Atan2(in.Y, in.X) - math.Pi/2
			to = math.Atan2(out.Y, out.X) - math.Pi/2
			for to < from {
				to += 2 * math.Pi
			}
		}
		steps := max(1, int(math.Ceil((to-from)/step)))
		for i := range steps + 1 {
			s, c := math.Sincos(from + (to-from)*float64(i)/float64(steps))
			points = append(points, p.At(geometry.Point{X: here.X + distance*c, Y: here.Y + distance*s}))
		}
	}
	return scene.Polyline(points, true)
}

// bore draws a large hole with the ends of its centre lines.
func (p *Plate) bore(b geometry.Bore) {
	c, r := p.At(b.Centre), p.Length(b.Diameter/2)
	p.line(scene.Circle(c.X, c.Y, r), scene.Grey, 0.25, 0)
	tick := math.Min(4, r/3)
	var lines scene.Path
	for _, d := range [][2]float64{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
		lines.MoveTo(c.X+d[0]*(r-tick), c.Y+d[1]*(r-tick))
		lines.LineTo(c.X+d[0]*(r+tick/2), c.Y+d[1]*(r+tick/2))
	}
	p.line(lines, scene.Grey, 0.2, 0)
}

// dowel draws a locating pin: a circle with a cross over it.
func (p *Plate) dowel(d geometry.Dowel) {
	c, r := p.At(d.Centre), p.Length(d.Diameter/2)
	path := scene.Circle(c.X, c.Y, r)
	cross(&path, c, r+1.5)
	p.line(path, scene.Grey, 0.25, 0)
}

func cross(path *scene.Path, c scene.Point, arm float64) {
	path.MoveTo(c.X-arm, c.Y)
	path.LineTo(c.X+arm, c.Y)
	path.MoveTo(c.X, c.Y-arm)
	path.LineTo(c.X, c.Y+arm)
}

// Cross is a cross-hair.
func Cross(c scene.Point, arm float64) scene.Path {
	var path scene.Path
	cross(&path, c, arm)
	return path
}

// free says whether a box meets no seam, no text and no spot but its own;
// strictly, no line either.
func (p *Plate) free(b scene.Box, own int, strictly bool) bool {
	if p.seams.Cross(b) {
		return false
	}
	for i, s := range p.spots {
		if i != own && b.Meets(s) {
			return false
		}
	}
	for _, t := range p.texts {
		if b.Meets(t) {
			return false
		}
	}
	if strictly {
		for _, s := range p.lines {
			if b.Meets(s.box) && b.Cut(s.a, s.b) {
				return false
			}
		}
	}
	return true
}

// nudges are the steps by which a word may leave its place, the shortest first.
var nudges = func() []scene.Point {
	var all []scene.Point
	for y := -30.0; y <= 30; y += 3 {
		for x := -45.0; x <= 45; x += 5 {
			all = append(all, scene.Point{X: x, Y: y})
		}
	}
	slices.SortStableFunc(all, func(a, b scene.Point) int {
		return int(a.X*a.X+3*a.Y*a.Y) - int(b.X*b.X+3*b.Y*b.Y)
	})
	return all
}()

// Words sets the words on the part and the front arrow.
func (p *Plate) Words() {
	p.front()
	for _, b := range p.joint.Bores {
		p.word(b.Label, p.At(b.Centre), scene.Grey)
	}
	for _, l := range p.joint.Labels {
		p.word(l.Text, p.At(l.At), scene.Black)
	}
}

// wordEm is the size of the words on the part.
const wordEm = sheet.HeadEm

func (p *Plate) word(content string, at scene.Point, ink scene.Ink) {
	if content == "" {
		return
	}
	p.place(tile.Piece{Name: content, Items: []scene.Item{font.Set(scene.Text{
		At: scene.Point{X: at.X, Y: at.Y + wordEm*font.CapHeight/2}, Size: wordEm, Anchor: scene.Middle, Ink: ink, Content: content,
	})}})
}

// place puts a word where it stands or nearby.
func (p *Plate) place(word tile.Piece) {
	p.placeWhere(word, func(scene.Box) bool { return true })
}

// placeWhere does so where the place is a good one; else in any that is free.
func (p *Plate) placeWhere(word tile.Piece, good func(scene.Box) bool) {
	b := word.Bounds().Grown(0.6)
	anywhere := func(scene.Box) bool { return true }
	for _, will := range []func(scene.Box) bool{good, anywhere} {
		for _, strictly := range []bool{true, false} {
			for _, step := range nudges {
				there := b.Moved(step)
				if will(there) && p.free(there, -1, strictly) {
					p.texts = append(p.texts, there)
					word = word.Moved(step)
					word.Items = p.cleared(word.Items)
					p.Drawing.Words = append(p.Drawing.Words, word)
					return
				}
			}
		}
	}
	p.NoRoom = append(p.NoRoom, word.Name)
}

// arrow is a solid arrow head: the middle of its base, and which way.
func arrow(base, way scene.Point, length, half float64) scene.Shape {
	across := scene.Point{X: -way.Y * half, Y: way.X * half}
	return scene.Shape{Fill: scene.Black, Path: scene.Polyline([]scene.Point{
		{X: base.X + across.X, Y: base.Y + across.Y},
		{X: base.X + way.X*length, Y: base.Y + way.Y*length},
		{X: base.X - across.X, Y: base.Y - across.Y},
	}, true)}
}

// ways is where on paper the front lies.
var ways = map[geometry.Front]scene.Point{
	geometry.FrontLeft: {X: -1}, geometry.FrontRight: {X: 1}, geometry.FrontTop: {Y: -1}, geometry.FrontBottom: {Y: 1},
}

// front puts the word FRONT and an arrow beside the part. A view that has no
// front gets its top marked, since the sheets have no other way up.
func (p *Plate) front() {
	way, known := ways[p.joint.Front]
	content := p.words.Sheet.Front
	if !known {
		way, content = scene.Point{Y: -1}, p.words.Tile.Top
	}
	b := p.Drawing.Bounds()
	c := b.Centre()
	const near, length, half = 3.0, 6.0, 3.0
	base := scene.Point{X: c.X + way.X*(b.Width()/2+near), Y: c.Y + way.Y*(b.Height()/2+near)}
	word := scene.Text{Size: wordEm, Weight: scene.Bold, Anchor: scene.Middle, Ink: scene.Black, Content: content}
	const air, high = length + 1.5, wordEm * font.CapHeight
	word.At = scene.Point{X: base.X + way.X*air, Y: base.Y + way.Y*air}
	switch {
	case way.X != 0:
		word.Upward = true
		word.At.X += math.Max(0, way.X) * high
	default:
		word.At.Y += math.Max(0, way.Y) * high
	}
	piece := tile.Piece{Name: word.Content, Items: []scene.Item{arrow(base, way, length, half), font.Set(word)}}
	p.texts = append(p.texts, piece.Bounds())
	p.Drawing.Words = append(p.Drawing.Words, piece)
}
