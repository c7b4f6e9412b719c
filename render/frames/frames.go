// Package frames lays out the order for a projector: the part as one drawing
// with the steps in words, for a page that plays them, and a series of pictures
// for a film. Backends paint them and lay out nothing. It may import plan,
// diagram, scene, font and words.
package frames

import (
	"drawdown/render/diagram"
	"drawdown/render/scene"
	"drawdown/render/words"
	"drawdown/sequence/plan"
	"slices"
)

// Work selects what to show.
type Work struct {
	Plan      plan.Plan
	Words     *words.Catalogue
	Loosening bool
	// NoRoom is called with how many of all numbers did not fit on the part;
	// nil: not called.
	NoRoom func(left, of int)
}

func (r Work) side() plan.Side {
	if r.Loosening {
		return r.Plan.Loosen
	}
	return r.Plan.Tighten
}

func (r Work) direction() string {
	if r.Loosening {
		return r.Words.Handout.Showing.Loosening
	}
	return r.Words.Handout.Showing.Tightening
}

// Action is one step of the work, in words.
type Action struct {
	ID     string `json:"id,omitempty"`     // of the fastener; "" for a wait
	Number int    `json:"number,omitempty"` // in the order, or cast on the part; 0 for a wait
	Kind   string `json:"kind,omitempty"`
	Stage  int    `json:"stage,omitempty"` // from 1; 0 if the plan has no stages
	Figure string `json:"figure,omitempty"`
	Note   string `json:"note,omitempty"`
}

// Playback is the work on one side.
type Playback struct {
	Title, Subtitle, Direction string
	Part                       scene.Page // the part with its numbers
	Stages                     int
	// Members lists the ids of each stage's fasteners, by stage from 1; index 0
	// is for a plan without stages.
	Members [][]string
	Steps   []Action
}

// Width and Height of the part's drawing for a page, in millimetres.
const (
	partWidth  = 190.0
	partHeight = 120.0
	partMargin = 2.0
)

// Lay lays out the work.
func Lay(ask Work) Playback {
	p, side := ask.Plan, ask.side()
	box := scene.Box{Right: partWidth, Bottom: partHeight}.Grown(-partMargin)
	show := Playback{
		Title: p.Title, Subtitle: p.Machine, Direction: ask.direction(), Stages: len(side.Stages),
		Part: scene.Page{
			Name: "part", Width: partWidth, Height: partHeight, Margin: partMargin,
			Items: ask.part(box),
		},
		Members: [][]string{p.IDs(side.Order)},
	}
	for _, stage := range side.Stages {
		show.Members = append(show.Members, p.IDs(stage.Fasteners))
	}
	show.Steps = ask.steps()
	return show
}

func (r Work) part(box scene.Box) []scene.Item {
	d := diagram.Draw(diagram.Part{Plan: r.Plan, Order: r.side().Order, Called: r.Plan.Called(r.side()), Front: r.Words.Sheet.Front, Box: box, Thick: slices.Repeat([]bool{true}, len(r.Plan.Joint.Fasteners))}) // the marks get a thick edge once tight
	if r.NoRoom != nil {
		r.NoRoom(len(d.Unplaced), len(r.side().Order))
	}
	return d.Items
}

// steps lists the steps of the side. Without stages they follow the order.
func (r Work) steps() []Action {
	p, side := r.Plan, r.side()
	numbers := map[string]int{}
	for i, n := range p.Called(side) {
		numbers[p.Joint.Fasteners[i].ID] = n
	}
	var steps []Action
	if len(side.Stages) == 0 {
		for _, i := range side.Order {
			f := p.Joint.Fasteners[i]
			steps = append(steps, Action{ID: f.ID, Number: numbers[f.ID], Kind: r.kind(f.Kind)})
		}
		return steps
	}
	for _, s := range p.Steps(side) {
		step := Action{Stage: s.Stage.Number, Figure: r.figure(s.Stage), Note: r.note(s.Stage)}
		if s.Fastener != nil {
			step.ID, step.Number, step.Kind = s.Fastener.ID, numbers[s.Fastener.ID], r.kind(s.Fastener.Kind)
		}
		steps = append(steps, step)
	}
	return steps
}

func (r Work) kind(name string) string {
	if len(r.Plan.Kinds) < 2 {
		return ""
	}
	return name
}

func (r Work) figure(s *plan.Stage) string {
	approx := ""
	if s.WorkedOut {
		approx = "≈ "
	}
	switch s.Do {
	case plan.Tighten:
		return approx + r.Words.Figure(s.Torque.String())
	case plan.Advance:
		return approx + "+" + r.Words.Figure(s.Angle.String())
	case plan.Lengthen:
		return approx + "+" + r.Words.Figure(s.Stretch.String())
	case plan.BackOff, plan.TurnBack:
		return "−" + r.Words.Figure(s.Angle.String())
	case plan.Remove:
		return r.Words.Handout.Showing.Out
	}
	return r.Words.Figure(s.Wait.String())
}

func (r Work) note(s *plan.Stage) string {
	w := r.Words.Handout.Showing
	workedOut := ""
	if s.WorkedOut {
		workedOut = w.WorkedOut
	}
	does := map[plan.Action]string{plan.BackOff: w.BackOff, plan.TurnBack: w.TurnBack, plan.Wait: w.Wait}
	return words.Row(does[s.Do], workedOut, r.Words.ByTurns(s.ByTurns), r.Words.Until(s.Until), s.Note)
}
