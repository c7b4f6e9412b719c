package page

import (
	"html/template"
	"math"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/svg"
	"drawdown/render/words"
	"drawdown/sequence/measure"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// Joint is what the pages show of a joint regardless of entries: the part as on
// paper, the number of each fastener, the boxes of the stages. Drawing takes a
// while, so the server keeps it while a run is open, one per language.
type Joint struct {
	Box    string        // viewBox of the part
	Ground template.HTML // the part without its marks
	Marks  []Mark
	Stages []StageBox
	Scale  string // of the picture: x and y of the part's zero, and its scale, for places that are tapped; "" if unknown
	Places []SeenAt

	Threads string // of the kinds: main M10×1.5 · bolt M8×1.25

	joint   geometry.Joint
	threads map[string]string // of the fasteners, by their ids: M10×1.5
	spots   map[string]Spot   // of stations and bores, in mm of the part
	numbers map[string]string // of the fasteners, by id
	kinds   map[string]string // by fastener id; empty if there is one kind
	seen    scene.Box         // of the picture
	labels  []scene.Box       // words of the part
}

// Mark is the mark of a fastener on the part, in millimetres of the picture.
type Mark struct {
	ID      string
	Number  string
	X, Y, R float64       // of the largest circle inside
	Em      float64       // of the number in it
	Base    float64       // baseline of that number
	Path    string        // its edge
	Outside bool          // the number is outside
	Led     template.HTML // the number and its leader, if outside
	Hit     float64       // radius of the touch area
	Beside  *Spot         // middle of a free area for a figure; nil if there is none
}

// Spot is a point in the picture, in millimetres.
type Spot struct{ X, Y float64 }

// Size of the drawing, in millimetres. Type has the same size as on paper, so a
// smaller box gives larger type on a screen.
const (
	pictureWidth  = 132.0
	pictureHeight = 92.0
	pictureMargin = 3.0
)

// JointOf draws a joint for the work in a direction.
func JointOf(p plan.Plan, d run.Direction, c *words.Catalogue) (Joint, error) {
	side := sideOf(p, d)
	called := p.Called(side)
	shown := p
	shown.Joint.Stations = measuredStations(p)
	drawn := diagram.Draw(diagram.Part{
		Plan: shown, Order: side.Order, Called: called, Front: c.Sheet.Front, NoArrows: true,
		Box: scene.Box{Right: pictureWidth, Bottom: pictureHeight}.Grown(-pictureMargin),
	})
	j := Joint{joint: p.Joint, threads: map[string]string{}, numbers: map[string]string{}, kinds: map[string]string{}, Stages: stageBoxes(p, d, c)}
	for i, f := range p.Joint.Fasteners {
		j.numbers[f.ID], j.threads[f.ID] = strconv.Itoa(called[i]), p.KindOf(i).ThreadName()
		if len(p.Kinds) > 1 {
			j.kinds[f.ID] = f.Kind
		}
	}
	var threads []string
	for _, k := range p.Kinds {
		name := ""
		if len(p.Kinds) > 1 {
			name = k.Name + " "
		}
		if k.Thread != nil {
			threads = append(threads, name+c.Figure(k.ThreadName()))
		}
	}
	j.Threads = words.Row(threads...)
	j.Places, j.spots = placesOf(p)
	err := j.draw(drawn, p.IDs(side.Order))
	j.Scale = scaleOf(p, j.Marks)
	return j, err
}

// measuredStations gives stations at which a value is measured the name by which its
// form asks for it, in place of their label: there is no room for both.
func measuredStations(p plan.Plan) []geometry.Station {
	all := slices.Clone(p.Joint.Stations)
	for i, st := range all {
		measured := slices.ContainsFunc(p.Measures, func(v measure.Value) bool { return v.Has(measure.Place{Station: st.ID}) })
		if measured {
			all[i].Label = st.ID
		}
	}
	return all
}

func sideOf(p plan.Plan, d run.Direction) plan.Side {
	if d == run.Loosen {
		return p.Loosen
	}
	return p.Tighten
}

// draw separates the drawing into the background and a mark per fastener, in
// working order.
func (j *Joint) draw(drawn diagram.Drawing, order []string) error {
	page := scene.Page{Width: pictureWidth, Height: pictureHeight, Items: drawn.Items}
	if err := font.Check(page); err != nil {
		return err
	}
	var ground []scene.Item
	of := map[string][]scene.Item{}
	for _, it := range drawn.Items {
		if name, marks := markOf(it); marks {
			of[name] = append(of[name], it)
		} else {
			ground = append(ground, it)
			if text, is := it.(scene.Text); is {
				j.labels = append(j.labels, text.Box())
			}
		}
	}
	var b strings.Builder
	if err := svg.WriteItems(&b, ground); err != nil {
		return err
	}
	j.Ground = template.HTML(b.String())
	for _, id := range order {
		m := Mark{ID: id, Number: j.numbers[id], Outside: drawn.Led}
		if err := m.draw(of[id]); err != nil {
			return err
		}
		j.Marks = append(j.Marks, m)
	}
	j.spreadHits()
	j.seen = scene.Bounds(drawn.Items).Grown(ringRoom)
	j.Box = viewBox(j.seen)
	for i := range j.Marks {
		j.Marks[i].Beside = j.beside(i, j.seen)
	}
	return nil
}

// markOf reports whether an item belongs to a fastener's mark, and which
// fastener.
func markOf(it scene.Item) (name string, marks bool) {
	var tag scene.Tag
	switch it := it.(type) {
	case scene.Shape:
		tag = it.Tag
	case scene.Text:
		tag = it.Tag
	}
	return tag.Name, tag.Name != "" && (tag.Role == scene.Mark || tag.Role == scene.Number)
}

// ringRoom is kept free around the part for the ring of the next fastener.
const ringRoom = 3.0

// draw takes the edge and an outside number from the items of a mark. The ring
// of the last mark on paper is left out: on screen a ring means the next.
func (m *Mark) draw(items []scene.Item) error {
	var led []scene.Item
	for _, it := range items {
		switch it := it.(type) {
		case scene.Shape:
			switch {
			case it.Tag.Core:
				b := it.Path.Bounds()
				m.Path = svg.Path(it.Path)
				m.X, m.Y, m.R = scene.Rounded((b.Left+b.Right)/2), scene.Rounded((b.Top+b.Bottom)/2), scene.Rounded(math.Min(b.Width(), b.Height())/2)
			case it.Tag.Role != scene.Mark:
				led = append(led, it)
			}
		case scene.Text:
			if m.Outside || !it.Tag.Core {
				led = append(led, it)
				continue
			}
			m.Em, m.Base = it.Size, it.At.Y
		}
	}
	var b strings.Builder
	err := svg.WriteItems(&b, led)
	m.Led = template.HTML(b.String())
	return err
}

// LittleEm and LittleBase set the small number under a tick.
func (m Mark) LittleEm() float64   { return scene.Rounded(m.R * 0.8) }
func (m Mark) LittleBase() float64 { return scene.Rounded(m.Y + m.R*0.82) }

// Around is the viewBox of the mark with its ring.
func (m Mark) Around() string {
	return viewBox(scene.BoxAbout(scene.Point{X: m.X, Y: m.Y}, 3.6*m.R, 3.6*m.R))
}

// spreadHits sets the touch area of each mark: half way to its neighbour, at
// most the width of a thumb.
func (j *Joint) spreadHits() {
	const thumb = 9.0
	for i := range j.Marks {
		m := &j.Marks[i]
		nearest := 2 * thumb
		for k, other := range j.Marks {
			if k != i {
				nearest = math.Min(nearest, math.Hypot(other.X-m.X, other.Y-m.Y))
			}
		}
		m.Hit = scene.Rounded(math.Max(m.R, nearest/2))
	}
}

// Space for a figure beside a mark, such as 103.5 N·m in capitals of 5 mm.
const (
	besideWidth  = 32.0
	besideHeight = 7.0
)

// beside looks for free space below, above, right and left of a mark that no
// other mark needs.
func (j *Joint) beside(i int, seen scene.Box) *Spot {
	m := j.Marks[i]
	down, across := 1.5*m.R+besideHeight/2, 1.6*m.R+besideWidth/2
	for _, way := range []Spot{{0, down}, {0, -down}, {across, 0}, {-across, 0}} {
		at := Spot{scene.Rounded(m.X + way.X), scene.Rounded(m.Y + way.Y)}
		room := scene.BoxAbout(scene.Point{X: at.X, Y: at.Y}, besideWidth, besideHeight)
		free := room.Left >= seen.Left && room.Right <= seen.Right && room.Top >= seen.Top && room.Bottom <= seen.Bottom
		for k, other := range j.Marks {
			free = free && (k == i || !other.meets(room))
		}
		if free {
			return &at
		}
	}
	return nil
}

// meets reports whether the circle around a mark overlaps a box.
func (m Mark) meets(b scene.Box) bool {
	x, y := math.Max(b.Left, math.Min(m.X, b.Right)), math.Max(b.Top, math.Min(m.Y, b.Bottom))
	return math.Hypot(m.X-x, m.Y-y) < 1.2*m.R
}

func viewBox(b scene.Box) string {
	var all []string
	for _, v := range []float64{b.Left, b.Top, b.Width(), b.Height()} {
		all = append(all, millimetres(v))
	}
	return strings.Join(all, " ")
}

func millimetres(v float64) string { return strconv.FormatFloat(scene.Rounded(v), 'f', -1, 64) }

// number is the number of a fastener, or all numbers of several.
func (j Joint) number(ids []string) string {
	var all []string
	for _, id := range ids {
		all = append(all, j.numbers[id])
	}
	return strings.Join(all, "+")
}
