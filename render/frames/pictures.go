package frames

import (
	"strconv"

	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/sequence/plan"
)

// Picture is one picture of a film and how long it stands.
type Picture struct {
	Page    scene.Page
	Seconds float64
}

// The screen has the sides of a projector's, 16 to 9, in millimetres; its type
// is large enough for the last row.
const (
	screenWidth  = 254.0
	screenHeight = 142.9
	screenMargin = 6.0
	panelWidth   = 68.0
	titleEm      = 8.0
	numberEm     = 40.0
	nameEm       = 11.0
	figureEm     = 9.0
	smallEm      = 5.0
)

// How long pictures stand, in seconds.
const (
	startSeconds = 2
	stepSeconds  = 1.2
	endSeconds   = 4
)

// Pictures lays the order out as a film: each fastener once, with all that its
// stages do to it. The drawing of the part stays, only the marks change.
func Pictures(ask Request) []Picture {
	f := newFilm(ask)
	pictures := []Picture{{f.page(-1), startSeconds}}
	for k := range f.side.Order {
		pictures = append(pictures, Picture{f.page(k), stepSeconds})
	}
	return append(pictures, Picture{f.page(len(f.side.Order)), endSeconds})
}

type film struct {
	Request
	side plan.Side
	part []scene.Item
}

func newFilm(ask Request) *film {
	f := &film{Request: ask, side: ask.side()}
	box := scene.Box{Left: screenMargin, Top: 22, Right: screenWidth - screenMargin - panelWidth - 4, Bottom: screenHeight - screenMargin - 10}
	f.part = diagram.Draw(diagram.Request{Plan: ask.Plan, Order: f.side.Order, Front: ask.Words.Sheet.Front, Box: box}).Items
	return f
}

// page lays one picture out: at is the step, −1 before the first, and the
// count of steps after the last.
func (f *film) page(at int) scene.Page {
	page := scene.Page{Name: "order-" + strconv.Itoa(at+1), Width: screenWidth, Height: screenHeight, Margin: screenMargin}
	add := func(items ...scene.Item) { page.Items = append(page.Items, items...) }
	add(line(screenMargin, screenMargin+titleEm*0.8, titleEm, scene.Bold, scene.Start, f.Plan.Title, screenWidth-2*screenMargin-panelWidth))
	add(line(screenWidth-screenMargin, screenMargin+titleEm*0.8, titleEm, scene.Bold, scene.End, f.direction(), panelWidth))
	add(f.marked(at)...)
	add(f.panel(at)...)
	add(f.progress(at)...)
	return page
}

func line(x, y, em float64, w scene.Weight, a scene.Anchor, content string, room float64) scene.Item {
	return font.Set(scene.Text{
		At: scene.Point{X: x, Y: y}, Size: em, Weight: w, Anchor: a, Ink: scene.Black, Content: font.Fit(font.Clean(content), w, em, room),
	})
}

// marked gives the part with its marks as they are at a step: white before,
// black now, grey afterwards.
func (f *film) marked(at int) []scene.Item {
	looks := map[string]diagram.Look{}
	for k, i := range f.side.Order {
		look := diagram.Look{Fill: scene.White, Ink: scene.Black}
		switch {
		case k == at:
			look = diagram.Look{Fill: scene.Black, Ink: scene.White}
		case k < at:
			look.Fill = scene.Shade
		}
		looks[f.Plan.Joint.Fasteners[i].ID] = look
	}
	return diagram.Relook(f.part, looks)
}

// panel tells the step in words: its number, large, the fastener, and what each
// of its stages does.
func (f *film) panel(at int) []scene.Item {
	x, room := screenWidth-screenMargin-panelWidth/2, panelWidth-2.0
	middle := func(y, em float64, w scene.Weight, content string) scene.Item {
		return line(x, y, em, w, scene.Middle, content, room)
	}
	if at < 0 || at >= len(f.side.Order) {
		text := f.Words.Handout.Showing.Start
		if at >= 0 {
			text = f.Words.Handout.Showing.Done
		}
		var items []scene.Item
		for k, words := range font.Break(text, scene.Bold, figureEm, room) {
			items = append(items, middle(60+float64(k)*figureEm*1.2, figureEm, scene.Bold, words))
		}
		return items
	}
	fastener := f.Plan.Joint.Fasteners[f.side.Order[at]]
	name := fastener.ID
	if kind := f.kind(fastener.Kind); kind != "" {
		name += " · " + kind
	}
	items := []scene.Item{
		middle(52, numberEm, scene.Bold, strconv.Itoa(at+1)),
		middle(66, nameEm, scene.Regular, name),
	}
	y := 80.0
	for _, figure := range f.figures(f.side.Order[at]) {
		if y > screenHeight-24 {
			items = append(items, middle(y, smallEm, scene.Regular, "…"))
			break
		}
		items = append(items, middle(y, figureEm, scene.Bold, figure))
		y += figureEm * 1.25
	}
	return items
}

// figures lists what the stages do to a fastener, each with its number.
func (f *film) figures(fastener int) []string {
	var all []string
	for k := range f.side.Stages {
		stage := &f.side.Stages[k]
		for _, i := range stage.Fasteners {
			if i == fastener {
				all = append(all, strconv.Itoa(stage.Number)+":  "+f.figure(stage))
			}
		}
	}
	return all
}

// progress draws how far the order has come.
func (f *film) progress(at int) []scene.Item {
	const height = 3.0
	y, width := screenHeight-screenMargin-height, screenWidth-2*screenMargin
	done := width * float64(min(max(at+1, 0), len(f.side.Order))) / float64(len(f.side.Order))
	items := []scene.Item{scene.Shape{Path: scene.Rect(screenMargin, y, width, height, 0), Fill: scene.Shade}}
	if done > 0 {
		items = append(items, scene.Shape{Path: scene.Rect(screenMargin, y, done, height, 0), Fill: scene.Accent})
	}
	return items
}
