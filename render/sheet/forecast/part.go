package forecast

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/prediction"
)

const (
	leastPart  = 52.0
	fairPart   = 60.0  // never made smaller than this
	enoughPart = 110.0 // up to this height the drawing takes all that is left of a page
	captionGap = 6.0
)

// part draws the joint after a pass, with the least share of each bolt in its
// mark and its number beside it. The edges of the marks show low bolts.
func (l *layout) part(run *sheet.Run, pass prediction.ForecastPass) diagram.Drawing {
	w, low := l.ask.Words.Forecast, l.lowSays(pass)
	inside, beside := words.Text(w.InMark, low, w.Small), words.Text(w.AtMark, low)
	longest := run.Pen.Paper.BreakAll([]string{inside, beside}, run.Pen.Paper.Content()).Most()
	below := captionGap + float64(longest)*run.Pen.Paper.Line
	p := run.Pen
	box := scene.Box{Left: p.Left(), Top: 0, Right: p.Right(), Bottom: leastPart - 2}
	_, box = l.fitted(pass, box)
	least := box.Height() + 2
	run.Room(least + below)
	p = run.Pen
	free := run.Bottom - run.Y - below
	box = scene.Box{Left: p.Left(), Top: run.Y + 2, Right: p.Right(), Bottom: run.Y + max(least, l.partHeight(free, pass))}
	d, box := l.fitted(pass, l.roomInMarks(pass, box, run.Y+max(least, min(free, enoughPart))))
	l.ask.Missing.Note(len(d.Unplaced), len(l.names))
	p.Add(diagram.Relook(d.Items, l.lowLooks(pass))...)
	caption := inside
	if !d.besides {
		caption = beside
	}
	run.Y = box.Bottom + captionGap - 5
	run.Sentence(caption)
	run.Sentence(l.ask.Words.NoRoomFor(d.Dropped))
	return d.Drawing
}

// fitted draws the part into a box and reduces the box by the space that the
// part leaves empty, unless the figures would no longer fit into their marks.
func (l *layout) fitted(pass prediction.ForecastPass, box scene.Box) (partDrawing, scene.Box) {
	d := l.drawn(pass.Turned, pass.Percent, box)
	idle := slack(d.Items, box) - 1
	if idle <= 0 {
		return d, box
	}
	less := box
	less.Bottom -= idle
	if again := l.drawn(pass.Turned, pass.Percent, less); again.Led == d.Led && again.besides == d.besides {
		return again, less
	}
	return d, box
}

// roomInMarks gives the drawing the rest of the page if the figures fit into
// their marks only that way; what follows goes to the next page.
func (l *layout) roomInMarks(pass prediction.ForecastPass, box scene.Box, bottom float64) scene.Box {
	larger := box
	larger.Bottom = max(box.Bottom, bottom)
	if !l.drawn(pass.Turned, pass.Percent, box).besides && l.drawn(pass.Turned, pass.Percent, larger).besides {
		return larger
	}
	return box
}

// partHeight is the height of the drawing on a page with free space: smaller if
// that leaves room for what follows: the targets, or the first passes.
func (l *layout) partHeight(free float64, pass prediction.ForecastPass) float64 {
	next := eachPassHead + smallHeights[0] + titleHeight
	switch {
	case pass.ToTargets():
		next = l.targetsHeight(l.ask.Paper.Content())
	case len(l.f.Passes) == 1:
		next = 0
	}
	if free-next < leastPart {
		next = 0
	}
	return min(free-next, enoughPart)
}

// partDrawing is the drawn part; besides reports that numbers are beside the
// marks instead of with the figures.
type partDrawing struct {
	diagram.Drawing
	besides bool
}

// drawn draws the part with a percentage in each mark. If the marks are too
// small for that, or a number could be taken for a neighbour's, number and
// percentage are together.
func (l *layout) drawn(turned []bool, percent []bounds.Band, box scene.Box) partDrawing {
	words := leastWords(turned, percent)
	ask := diagram.Part{Plan: l.plan, Show: diagram.Words, Words: words, Beside: l.names, Front: l.ask.Words.Sheet.Front, Box: box, SmallEm: l.ask.Paper.TextEm, Thick: noticeable(turned, percent)}
	if _, led := diagram.NumberCap(ask); !led {
		if d := diagram.Draw(ask); toldApart(d.Items, l.names) {
			return partDrawing{d, true}
		}
	}
	for i := range words {
		ask.Words[i] = l.names[i] + ": " + words[i]
	}
	ask.Beside = nil
	return partDrawing{diagram.Draw(ask), false}
}

func leastWords(turned []bool, percent []bounds.Band) []string {
	least := make([]string, len(percent))
	for i, b := range percent {
		least[i] = "–"
		if turned[i] {
			least[i] = strconv.Itoa(wholePercent(b.Low))
		}
	}
	return least
}

// noticeable reports which of the bolts turned by a pass end noticeably low.
func noticeable(turned []bool, percent []bounds.Band) []bool {
	low := make([]bool, len(percent))
	for i, b := range percent {
		low[i] = turned[i] && advice.ClassOf(float64(wholePercent(b.Low))) == advice.Noticeable
	}
	return low
}

func wholePercent(f float64) int { return int(f + 0.5) }

// lowLooks are the looks of bolts that are low after a pass: a thick edge for
// noticeably, black for strongly. The printed figure decides, so that equal
// figures look equal.
func (l *layout) lowLooks(pass prediction.ForecastPass) map[string]diagram.Look {
	looks := map[string]diagram.Look{}
	for i, b := range pass.Percent {
		if !pass.Turned[i] {
			continue
		}
		switch id := l.plan.Joint.Fasteners[i].ID; advice.ClassOf(float64(wholePercent(b.Low))) {
		case advice.Noticeable:
			looks[id] = diagram.Look{Fill: scene.White, Ink: scene.Black, Thick: true}
		case advice.Strong:
			looks[id] = inBlack
		}
	}
	return looks
}

// lowSays explains the looks of low bolts in use.
func (l *layout) lowSays(pass prediction.ForecastPass) string {
	thick, black := "", ""
	for _, look := range l.lowLooks(pass) {
		if look.Thick {
			thick = l.ask.Words.Forecast.ThickEdge
		}
		if look.Fill == scene.Black {
			black = l.ask.Words.Forecast.BlackMark
		}
	}
	return words.Text(thick, black)
}

// inBlack is a mark that differs from all others.
var inBlack = diagram.Look{Fill: scene.Black, Ink: scene.White}

func (l *layout) frame(pass prediction.ForecastPass, frame prediction.Frame) scene.Page {
	run := l.run()
	p, w := run.Pen, l.ask.Words.Forecast
	id := l.plan.Joint.Fasteners[frame.Fastener].ID
	step := fmt.Sprintf(w.Step, pass.Number, l.passWords(pass), l.names[frame.Fastener])
	p.Write(p.Left(), run.Y+8, sheet.FigureEm, scene.Bold, scene.Start, scene.Black, font.Fit(step, scene.Bold, sheet.FigureEm, p.Paper.Content()))
	p.Text(p.Left(), run.Y+14, fmt.Sprintf(w.StepUneven, l.ask.Words.Value(frame.UnevenMm, ".2")))
	caption := font.Break(w.InMarkNow, scene.Regular, p.Paper.TextEm, p.Paper.Content())
	top := run.Bottom - 1 - p.Paper.Line*float64(len(caption)-1)
	d := l.drawn(frame.Turned, frame.Percent, scene.Box{Left: p.Left(), Top: run.Y + 18, Right: p.Right(), Bottom: top - 5})
	l.ask.Missing.Note(len(d.Unplaced), len(l.names))
	p.Add(diagram.Relook(d.Items, map[string]diagram.Look{id: inBlack})...)
	p.Lines(p.Left(), top, caption)
	page := run.Pages("step")[0]
	page.Bookmarks = []scene.Bookmark{{Title: step}}
	return page
}

// clearlyNearer is how much closer a number must be to its own mark than to any
// other, in millimetres, not to be taken for a neighbour's.
const clearlyNearer = 1.5

func toldApart(items []scene.Item, beside []string) bool {
	marks := map[string]scene.Box{}
	for _, it := range items {
		if s, ok := it.(scene.Shape); ok && s.Tag.Role == scene.Mark && s.Tag.Core {
			marks[s.Tag.Name] = s.Path.Bounds()
		}
	}
	for _, it := range items {
		text, ok := it.(scene.Text)
		own, marked := marks[text.Tag.Name]
		if !ok || !marked || text.Tag.Core || !slices.Contains(beside, text.Content) {
			continue
		}
		near := gap(text.Box(), own)
		for name, mark := range marks {
			if name != text.Tag.Name && gap(text.Box(), mark) < near+clearlyNearer {
				return false
			}
		}
	}
	return true
}

// gap is the distance of a text from the round mark inside a box.
func gap(text, mark scene.Box) float64 {
	c := mark.Centre()
	x := math.Max(0, math.Max(text.Left-c.X, c.X-text.Right))
	y := math.Max(0, math.Max(text.Top-c.Y, c.Y-text.Bottom))
	return math.Hypot(x, y) - mark.Width()/2
}

// slack is the height that a drawing leaves empty in its box, above and below.
func slack(items []scene.Item, box scene.Box) float64 {
	b := scene.Bounds(items)
	return math.Max(0, box.Height()-(max(b.Bottom, box.Top)-min(b.Top, box.Bottom)))
}
