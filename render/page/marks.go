package page

import (
	"cmp"
	"fmt"
	"html/template"
	"slices"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/words"
	"drawdown/sequence/run"
)

// MarkState is how a fastener's mark is drawn: by shape and word, not by
// colour.
type MarkState string

const (
	MarkToDo    MarkState = "todo"    // open, with its number
	MarkNext    MarkState = "next"    // filled, with a ring
	MarkDone    MarkState = "done"    // a tick and a small number
	MarkHolding MarkState = "holding" // an earlier stage is done: a bar below the number
	MarkTrouble MarkState = "trouble" // a triangle and a word
	MarkUnsure  MarkState = "unsure"  // the same
	MarkOut     MarkState = "out"     // left out: crossed out
)

// Part is the part as shown on a page.
type Part struct {
	Label  string
	Box    string
	Ground template.HTML
	Marks  []ShownMark
	Still  bool   // a picture without touch areas
	Figure string // of the next step, beside its mark
	Beside Spot   // its position
	Flags  []Flag // where something was found
}

// Flag is the letter of what was found, at its place in the picture.
type Flag struct {
	Spot
	Letter string
}

// ShownMark is the mark of a fastener in its state.
type ShownMark struct {
	Mark
	State MarkState
	Says  string // the word of its trouble
	Label string // for a screen reader
	Step  int    // its next step; 0: none
	Said  string // description when it is selected
	Word  Spot   // position of the word, also of one that is not saved yet
}

// Part returns the part with the state of each mark.
func (v RunView) Part() Part {
	part := Part{Label: v.Text().Run.Part, Box: v.Joint.Box, Ground: v.Joint.Ground, Still: !v.IsOpen()}
	for _, m := range v.Joint.Marks {
		one := v.shownMark(m)
		if one.State == MarkNext && !part.Still && m.Beside != nil {
			part.Figure, part.Beside = v.shortFigure(*v.next()), *m.Beside
		}
		part.Marks = append(part.Marks, one)
	}
	return part
}

// Part returns the part as it is before the work.
func (v PatternView) Part() Part { return AtRest(v.Frame, v.Joint) }

// AtRest returns a joint as it is before the work.
func AtRest(f Frame, j Joint) Part {
	part := Part{Label: f.Text().Pattern.Part, Box: j.Box, Ground: j.Ground, Still: true}
	for _, m := range j.Marks {
		part.Marks = append(part.Marks, ShownMark{Mark: m, State: MarkToDo, Word: j.wordSpot(m, "", scene.NoBox)})
	}
	return part
}

func (v RunView) shownMark(m Mark) ShownMark {
	t := v.Text()
	one := ShownMark{Mark: m}
	steps := v.stepsOf(m.ID)
	one.State = v.markState(m.ID, steps)
	last := run.Step{}
	for _, s := range steps {
		if over(s) {
			last = s
		} else if one.Step == 0 {
			one.Step = s.Number
		}
	}
	said, blocks := t.Run.States[string(one.State)], ""
	if trouble, found := v.openTrouble(m.ID); found {
		one.Says = t.Trouble.Short[troubleName(trouble)]
		said, blocks = t.Trouble.Names[troubleName(trouble)], v.blockWords(trouble)
	}
	by := ""
	if last.By != "" {
		by = fmt.Sprintf(t.Run.StateBy, last.By, v.when(last.At))
	}
	if one.Says != "" { // in visual order
		one.Label = words.Row(m.Number+" "+one.Says, m.ID, v.Joint.kinds[m.ID])
	} else {
		one.Label = words.Row(v.fastener([]string{m.ID}), v.Joint.kinds[m.ID], said)
	}
	one.Word = v.Joint.wordSpot(m, cmp.Or(one.Says, t.Run.SavingShort), v.figureBox())
	one.Said = words.Row(said, blocks, by)
	return one
}

// figureBox is the box of the next step's figure beside its mark, or NoBox.
func (v RunView) figureBox() scene.Box {
	next := v.next()
	i := slices.IndexFunc(v.Joint.Marks, func(m Mark) bool { return next != nil && slices.Contains(next.IDs, m.ID) })
	if i < 0 || v.Joint.Marks[i].Beside == nil {
		return scene.NoBox
	}
	return scene.BoxAbout(scene.Point(*v.Joint.Marks[i].Beside), font.Width(v.shortFigure(*next), scene.Bold, besideHeight)+2, besideHeight)
}

// stepsOf returns the valid steps of a fastener.
func (v RunView) stepsOf(id string) []run.Step {
	var all []run.Step
	for _, s := range v.Run.Steps {
		if !s.Old && slices.Contains(s.IDs, id) {
			all = append(all, s)
		}
	}
	return all
}

func (v RunView) markState(id string, steps []run.Step) MarkState {
	if t, found := v.openTrouble(id); found {
		if t.Trouble == "" {
			return MarkUnsure
		}
		return MarkTrouble
	}
	next, now := v.next(), v.workedOn()
	left, done, out := 0, 0, 0
	inStage := false // done in the current stage
	for _, s := range steps {
		switch {
		case s.State == run.LeftOut:
			out++
		case over(s):
			done++
			inStage = inStage || now != nil && s.Stage == now.Stage && s.Round == now.Round
		default:
			left++
		}
	}
	switch {
	case next != nil && slices.Contains(next.IDs, id):
		return MarkNext
	case left == 0 && done == 0 && out > 0:
		return MarkOut
	case left == 0 || inStage:
		return MarkDone
	case done > 0:
		return MarkHolding
	}
	return MarkToDo
}

// workedOn returns the step of the current stage: the next one, or if a trouble
// blocks everything the first open one; nil if none is open.
func (v RunView) workedOn() *run.Step {
	if next := v.next(); next != nil {
		return next
	}
	i := slices.IndexFunc(v.Run.Steps, func(s run.Step) bool { return !s.Old && !over(s) })
	if i < 0 {
		return nil
	}
	return &v.Run.Steps[i]
}

// openTrouble returns the latest unsettled trouble of a fastener.
func (v RunView) openTrouble(id string) (run.TroubleSeen, bool) {
	for _, t := range slices.Backward(v.Run.Troubles) {
		if t.Settled == nil && slices.Contains(t.IDs, id) {
			return t, true
		}
	}
	return run.TroubleSeen{}, false
}

// troubleName is the kind of trouble, or the word for an interrupted angle.
func troubleName(t run.TroubleSeen) string {
	if t.Trouble == "" {
		return "unsure"
	}
	return string(t.Trouble)
}

const (
	wordEm  = 3.8 // of a word at a mark, in millimetres
	wordGap = 0.2 // between it and other things
)

// wordSpot finds the position of a word at a mark: below, above or beside it,
// where it covers no other mark and no word of the part. Otherwise it takes the
// position that covers least. The figure of the next step has priority.
func (j Joint) wordSpot(m Mark, word string, figure scene.Box) Spot {
	width := font.Width(word, scene.Bold, wordEm) + 2*wordGap
	const height = wordEm + 2*wordGap
	down, up := 1.05*m.R+height/2, 1.4*m.R+height/2 // its triangle is above it
	across := 1.1*m.R + width/2
	ways := []Spot{
		{0, down}, {0, -up}, {-across, 0}, {across, m.R / 2}, {-width / 3, down}, {width / 3, down}, {-across, m.R / 2}, {across, -m.R / 2}, {m.R/10 - width/2, -(1.02*m.R + height/2)}, // beside its triangle
	}
	best, least := Spot{}, -1
	for _, way := range ways {
		room := scene.BoxAbout(scene.Point{X: m.X + way.X, Y: m.Y + way.Y}, width, height)
		if hidden := j.hiddenBy(room, m.ID, figure); least < 0 || hidden < least {
			best, least = way, hidden
		}
	}
	return Spot{scene.Rounded(m.X + best.X), scene.Rounded(m.Y + best.Y + 0.36*wordEm)}
}

// hiddenBy counts what a word in a box covers. A mark counts as several words
// of the part, and being cut off as a mark.
func (j Joint) hiddenBy(room scene.Box, but string, figure scene.Box) int {
	const mark = 5
	hidden := 0
	if !j.seen.Holds(room) {
		hidden += mark
	}
	if figure.Meets(room) {
		hidden += mark
	}
	for _, m := range j.Marks {
		if m.ID != but && m.meets(room) {
			hidden += mark
		}
	}
	for _, label := range j.labels {
		if label.Meets(room) {
			hidden++
		}
	}
	return hidden
}
