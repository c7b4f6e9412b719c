package handout

import (
	"fmt"
	"slices"
	"strings"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence"
	"drawdown/sequence/interaction"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/plan"
)

// WhyPages lays out the page that explains the order of this part. The pages do
// not have their count yet. On A4 it is one page. If the figures are nil, or
// show nothing, words replace them.
func WhyPages(p plan.Plan, figures *interaction.Reason, ask Request) []scene.Page {
	w := &ask.Words.Handout.Why
	y := &why{Request: ask, plan: p, words: w, layout: w.Spread, circle: IsCircle(p)}
	if y.circle {
		y.layout = w.Circle
	}
	heading := sheet.Heading{Title: y.layout.Title, Badge: w.Badge, Solid: true, Subtitle: words.Row(p.Title, p.Machine), Identity: sheet.Identity(p, ask.Words)}
	lines := ask.Paper.BreakText(words.Text(w.Practice, ask.Words.Sheet.ManualFirst), ask.Paper.Content())
	y.Run = sheet.NewRun(ask.Paper, ask.Words, heading, sheet.Foot{Lines: lines})
	y.steps()
	if y.Paper.Low() { // the sections have a separate page
		y.tell(figures)
		y.sections()
	} else {
		y.sections()
		y.tell(figures)
	}
	return y.Pages("1")
}

// IsCircle reports whether the main group of a plan is on one bolt circle,
// where the rule is crosswise rather than outwards.
func IsCircle(p plan.Plan) bool {
	return len(p.Groups) > 0 && p.UsualWay(p.Groups[0]) == sequence.Star
}

type why struct {
	Request
	*sheet.Run
	plan   plan.Plan
	words  *words.Why
	layout words.WhyLayout
	circle bool
}

const (
	mostMini    = 40.0 // height of a small drawing of the part
	narrowMini  = 26.0 // the same on small paper
	lowMini     = 18.0 // and on small landscape paper
	miniGap     = 4.0
	miniCaption = 7.0
)

func (y *why) steps() {
	n := len(y.plan.Tighten.Order)
	counts := []int{1}
	for _, count := range []int{max(2, (n+2)/3), (2*n + 2) / 3, n} {
		if count > counts[len(counts)-1] {
			counts = append(counts, count)
		}
	}
	part, most := newMini(y.plan), mostMini
	switch {
	case y.Paper.Low():
		most = lowMini
	case y.Paper.Wide(), y.Paper.Narrow():
		most = narrowMini
	}
	across := len(counts)
	width := (y.Paper.Content() - miniGap*float64(across-1)) / float64(across)
	height := part.height(width, most)
	y.Room(7 + height + miniCaption)
	y.Pen.Head(y.Pen.Left(), y.Y+4, y.words.Steps)
	y.legend(y.Y + 4)
	y.Y += 7
	for k, count := range counts {
		x := y.Pen.Left() + float64(k)*(width+miniGap)
		y.mini(scene.Box{Left: x, Top: y.Y, Right: x + width, Bottom: y.Y + height}, y.plan.Tighten.Order, count, true)
		y.Pen.Write(x+width/2, y.Y+height+3.6, y.Paper.TextEm, scene.Regular, scene.Middle, scene.Black, y.caption(count, n))
	}
	y.Y += height + miniCaption
}

func (y *why) caption(count, of int) string {
	switch count {
	case of:
		return fmt.Sprintf(y.words.AfterAll, of)
	case 1:
		return y.words.AfterOne
	}
	return fmt.Sprintf(y.words.AfterMany, count, of)
}

func (y *why) legend(at float64) {
	x := y.Pen.Right()
	for _, one := range []struct {
		word string
		state
	}{{y.words.Loose, state{}}, {y.words.Tight, state{tight: true}}, {y.words.Now, state{tight: true, now: true}}} {
		x -= font.Width(one.word, scene.Regular, y.Paper.TextEm)
		y.Pen.Text(x, at, one.word)
		x -= 3
		y.Pen.Add(one.drawn(0, scene.Point{X: x, Y: at - 1.1}, 1.1)...)
		x -= 4.5
	}
}

// mini draws the part small after count bolts of an order have been tightened,
// or loosened.
func (y *why) mini(box scene.Box, order []int, count int, tightening bool) {
	states := map[int]state{}
	for k, i := range order {
		states[i] = state{tight: tightening == (k < count), now: k == count-1 && count < len(order)}
	}
	y.Pen.Add(newMini(y.plan).draw(box, func(fastener int) state { return states[fastener] })...)
}

// telling is a heading with sentences, and perhaps a picture beside them.
type telling struct {
	head    string
	texts   []string
	picture bool // of the part with the first third loosened
}

// tell lays out the texts: about loosening, and about figures or the purpose of
// the order. On landscape paper they are side by side.
func (y *why) tell(figures *interaction.Reason) {
	back, width := telling{y.words.Back, y.words.BackText, true}, y.Paper.Content()
	if y.circle {
		back.texts = back.texts[:1] // the rest is about edges and middle, which a circle does not have
	}
	rows := [][]telling{{back}, {y.figures(figures)}}
	if y.Paper.Wide() {
		rows, width = [][]telling{slices.Concat(rows...)}, (width-2*miniGap)/2
	}
	for _, row := range rows {
		height := 0.0
		for _, one := range row {
			height = max(height, y.tellingHeight(one, width))
		}
		y.Room(height)
		for k, one := range row {
			y.put(one, y.Pen.Left()+float64(k)*(width+2*miniGap), width)
		}
		y.Y += height
	}
}

// lines wraps the sentences of a telling, leaving space for its picture.
func (t telling) lines(y sheet.Type, width float64) sheet.Broken {
	if t.picture {
		width *= 0.62
	}
	return y.BreakAll(t.texts, width)
}

func (y *why) tellingHeight(t telling, width float64) float64 {
	height, most := 7+t.lines(y.Paper.Type, width).Height(y.Paper.Line), narrowMini
	if y.Paper.Low() {
		most = lowMini
	}
	if t.picture {
		height = max(height, newMini(y.plan).height(0.38*width-miniGap, most)+1)
	}
	return height + 3
}

func (y *why) put(t telling, left, width float64) {
	y.Pen.Head(left, y.Y+4, t.head)
	at := y.Y + 10
	for _, text := range t.lines(y.Paper.Type, width) {
		at = y.Pen.Lines(left, at, text) + 1
	}
	if t.picture {
		order := y.plan.Loosen.Order
		box := scene.Box{Left: left + 0.62*width + miniGap, Top: y.Y + 1, Right: left + width, Bottom: y.Y + y.tellingHeight(t, width) - 3}
		y.mini(box, order, max(1, len(order)/3), false)
	}
}

// figures reports the calculated figures if they show something; otherwise the
// purpose of the order, without figures.
func (y *why) figures(f *interaction.Reason) telling {
	w, left := y.words, y.springs()
	if f == nil || !f.TellsLowest && !f.TellsUneven {
		return telling{head: w.Purpose, texts: append([]string{y.layout.Purpose}, left...)}
	}
	say := func(words string, figure [2]bounds.Band, format string) string {
		in := func(b bounds.Band) string { // the middle, and the range in brackets
			return y.Words.Figure(fmt.Sprintf(format+" ("+format+"–"+format+")", b.Nominal, b.Low, b.High))
		}
		return fmt.Sprintf(words, in(figure[0]), in(figure[1]), y.layout.Other)
	}
	var texts []string
	if f.TellsLowest {
		texts = append(texts, say(w.Lowest, f.LowestPercent, "%.0f"))
	}
	if f.TellsUneven {
		texts = append(texts, say(w.Uneven, f.UnevenMm, "%.2f"))
		if !f.TellsLowest {
			texts = append(texts, w.NoGain)
		}
	}
	return telling{head: w.Worked, texts: append(append(texts, w.Band), left...)}
}

// springs says what drawings and figures leave out if only some caps are under
// spring load.
func (y *why) springs() []string {
	var free []string
	for _, c := range y.plan.Joint.Clusters {
		if y.plan.Unloaded(c) {
			free = append(free, c.Name)
		}
	}
	if len(free) == 0 {
		return nil
	}
	words := y.words.Springs
	if y.plan.Joint.UnloadedFirstOff {
		words = y.words.SpringsFirstOff
	}
	return []string{fmt.Sprintf(words, strings.Join(free, ", "))}
}
