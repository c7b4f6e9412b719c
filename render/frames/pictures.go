package frames

import (
	"fmt"
	"iter"
	"slices"
	"strconv"

	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/sequence/plan"
)

// Picture is one picture of a film and how long it is shown.
type Picture struct {
	Page    scene.Page
	Seconds float64
}

// The screen has the 16:9 format of a projector, in millimetres; its type is
// readable from the last row.
const (
	screenWidth  = 254.0
	screenHeight = 142.9
	screenMargin = 6.0
	panelWidth   = 68.0
	titleEm      = 8.0
	numberEm     = 40.0
	nameEm       = 11.0
	figureEm     = 13.0
	stageEm      = 8.0
	wordsEm      = 9.0
	smallEm      = 5.0
)

// Display times in seconds.
const (
	startSeconds = 2
	stepSeconds  = 1.2
	againSeconds = 0.5 // for a fastener that an earlier stage has shown
	stageSeconds = 2.5 // for a whole stage in one picture, and for a wait
	endSeconds   = 4
)

// mostSteps is the largest number of pictures of a film that shows every stage
// bolt by bolt. In longer films a stage whose fasteners were all shown before
// is one picture.
const mostSteps = 150

// Pictures lays out the work as a film, stage by stage. A fastener is shown
// longer the first time. The drawing of the part stays the same; only the marks
// change. What does not fit is known before the first picture.
func Pictures(ask Work) iter.Seq[Picture] {
	box := scene.Box{Left: screenMargin, Top: 22, Right: screenWidth - screenMargin - panelWidth - 4, Bottom: screenHeight - screenMargin - 10}
	f := &film{Work: ask, side: ask.side()}
	f.part = ask.part(box)
	f.scenes = f.play()
	seconds := []float64{startSeconds}
	for _, s := range f.scenes {
		seconds = append(seconds, s.seconds)
	}
	seconds = append(seconds, endSeconds)
	return func(yield func(Picture) bool) {
		for k, stands := range seconds {
			if !yield(Picture{f.page(k - 1), stands}) {
				return
			}
		}
	}
}

type film struct {
	Work
	side   plan.Side
	part   []scene.Item
	scenes []filmScene
}

// filmScene is the content of one picture: a fastener in a stage, or all of
// them.
type filmScene struct {
	stage   *plan.Stage // nil if the plan has no stages
	now     []int       // fasteners; none during a wait
	done    []int       // before, in this stage
	seconds float64
}

func (f *film) play() []filmScene {
	if len(f.side.Stages) == 0 {
		return boltByBolt(nil, f.side.Order, stepSeconds)
	}
	steps := len(f.Plan.Steps(f.side))
	shown := map[int]bool{}
	var all []filmScene
	for k := range f.side.Stages {
		stage := &f.side.Stages[k]
		again := !slices.ContainsFunc(stage.Fasteners, func(i int) bool { return !shown[i] })
		switch {
		case len(stage.Fasteners) == 0:
			all = append(all, filmScene{stage: stage, seconds: stageSeconds})
		case again && steps > mostSteps:
			all = append(all, filmScene{stage: stage, now: stage.Fasteners, seconds: stageSeconds})
		case again:
			all = append(all, boltByBolt(stage, stage.Fasteners, againSeconds)...)
		default:
			all = append(all, boltByBolt(stage, stage.Fasteners, stepSeconds)...)
		}
		for _, i := range stage.Fasteners {
			shown[i] = true
		}
	}
	return all
}

func boltByBolt(stage *plan.Stage, fasteners []int, seconds float64) []filmScene {
	var all []filmScene
	for k := range fasteners {
		all = append(all, filmScene{stage: stage, now: fasteners[k : k+1], done: fasteners[:k], seconds: seconds})
	}
	return all
}

// page lays out one picture. at is the index of the scene, −1 before the first,
// and their number after the last.
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

// marked returns the part with its marks at a scene: black now, grey if done in
// this stage, white before. Fasteners of other stages are grey once a stage has
// tightened them.
func (f *film) marked(at int) []scene.Item {
	grey, now := map[int]bool{}, map[int]bool{}
	for _, s := range f.scenes[:min(max(at+1, 0), len(f.scenes))] {
		for _, i := range slices.Concat(s.done, s.now) {
			grey[i] = true
		}
	}
	if at >= 0 && at < len(f.scenes) {
		s := f.scenes[at]
		if s.stage != nil {
			for _, i := range s.stage.Fasteners {
				grey[i] = slices.Contains(s.done, i)
			}
		}
		for _, i := range s.now {
			now[i] = true
		}
	}
	looks := map[string]diagram.Look{}
	for _, i := range f.side.Order {
		look := diagram.Look{Fill: scene.White, Ink: scene.Black}
		switch {
		case now[i]:
			look = diagram.Look{Fill: scene.Black, Ink: scene.White}
		case grey[i]:
			look.Fill, look.Thick = scene.Shade, true
		}
		looks[f.Plan.Joint.Fasteners[i].ID] = look
	}
	return diagram.Relook(f.part, looks)
}

func (f *film) panel(at int) []scene.Item {
	x, room := screenWidth-screenMargin-panelWidth/2, panelWidth-2.0
	middle := func(y, em float64, w scene.Weight, content string) scene.Item {
		return line(x, y, em, w, scene.Middle, content, room)
	}
	if at < 0 || at >= len(f.scenes) {
		text := f.Words.Handout.Showing.Start
		if at >= 0 {
			text = f.Words.Handout.Showing.Done
		}
		var items []scene.Item
		for k, words := range font.Break(text, scene.Bold, wordsEm, room) {
			items = append(items, middle(60+float64(k)*wordsEm*1.2, wordsEm, scene.Bold, words))
		}
		return items
	}
	s := f.scenes[at]
	number, name := f.named(s)
	em := numberEm * min(1, room/font.Width(number, scene.Bold, numberEm))
	items := []scene.Item{middle(64, em, scene.Bold, number)}
	if name != "" {
		items = append(items, middle(78, nameEm, scene.Regular, name))
	}
	if s.stage == nil {
		return items
	}
	stage := fmt.Sprintf(f.Words.Handout.Showing.Stage, s.stage.Number, len(f.side.Stages))
	items = append(items, middle(29, stageEm, scene.Bold, stage), middle(96, figureEm, scene.Bold, f.figure(s.stage)))
	lines := font.Break(font.Clean(f.note(s.stage)), scene.Regular, smallEm, room)
	for k, words := range lines[:min(len(lines), 4)] {
		items = append(items, middle(105+float64(k)*smallEm*1.25, smallEm, scene.Regular, words))
	}
	return items
}

func (f *film) named(s filmScene) (number, name string) {
	numbers := f.Plan.Called(f.side)
	switch len(s.now) {
	case 0:
		return "–", ""
	case 1:
		fastener := f.Plan.Joint.Fasteners[s.now[0]]
		name = fastener.ID
		if kind := f.kind(fastener.Kind); kind != "" {
			name += " · " + kind
		}
		return strconv.Itoa(numbers[s.now[0]]), name
	}
	least, most := numbers[s.now[0]], numbers[s.now[0]]
	for _, i := range s.now {
		least, most = min(least, numbers[i]), max(most, numbers[i])
	}
	return fmt.Sprintf("%d–%d", least, most), ""
}

func (f *film) progress(at int) []scene.Item {
	const height = 3.0
	y, width := screenHeight-screenMargin-height, screenWidth-2*screenMargin
	done := width * float64(min(max(at+1, 0), len(f.scenes))) / float64(max(1, len(f.scenes)))
	items := []scene.Item{scene.Shape{Path: scene.Rect(screenMargin, y, width, height, 0), Fill: scene.Shade}}
	if done > 0 {
		items = append(items, scene.Shape{Path: scene.Rect(screenMargin, y, done, height, 0), Fill: scene.Accent})
	}
	return items
}
