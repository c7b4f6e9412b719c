package handout

import (
	"fmt"
	"strconv"

	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

// Band is a figure from the soft to the stiff end of what a gasket may be.
type Band struct{ Low, Nominal, High float64 }

// Figures are what one pass to the full load, at most to yield, does, in the plan's order and in
// another: from the edges, or once round a bolt circle.
type Figures struct {
	LowestPercent [2]Band // of the bolt that ends lowest
	UnevenMm      [2]Band // out of true at the worst moment
	// TellsLowest and TellsUneven say that the order is the better one by far at
	// every stiffness, so that the figure may be held up as a reason.
	TellsLowest, TellsUneven bool
}

// WhyDocument lays out the page that tells why, for the part at hand. Where the
// figures are nil, or tell nothing, words take their place.
func WhyDocument(p plan.Plan, figures *Figures, ask Request) scene.Document {
	doc := scene.Document{Title: p.Title, Subject: p.Machine, Language: ask.Words.Language}
	doc.Pages = WhyPages(p, figures, ask)
	sheet.Count(doc.Pages)
	return doc
}

// WhyPages lays the same out; the pages lack their count. On A4 it is one page.
func WhyPages(p plan.Plan, figures *Figures, ask Request) []scene.Page {
	w := &ask.Words.Handout.Why
	y := &why{Request: ask, plan: p, words: w, circle: IsCircle(p)}
	title := w.TitleSpread
	if y.circle {
		title = w.TitleCircle
	}
	subtitle := p.Title
	if p.Machine != "" {
		subtitle += " · " + p.Machine
	}
	heading := sheet.Heading{Title: title, Badge: w.Badge, Solid: true, Subtitle: subtitle, Identity: sheet.Identity(p, ask.Words)}
	lines := font.Break(w.Practice+" "+ask.Words.Sheet.ManualFirst, scene.Regular, sheet.TextEm, ask.Paper.Content())
	y.Run = sheet.NewRun(ask.Paper, ask.Words, heading, sheet.Foot{Lines: lines})
	y.steps()
	y.sections()
	y.back()
	y.figures(figures)
	return y.Pages("1")
}

// IsCircle says whether the main group of a plan lies round one bolt circle,
// where crosswise is the rule and not outwards.
func IsCircle(p plan.Plan) bool {
	return len(p.Groups) > 0 && settled(p, p.Groups[0]) == sequence.Star
}

type why struct {
	Request
	*sheet.Run
	plan   plan.Plan
	words  *words.Why
	circle bool
}

const (
	miniHeight = 33.0
	miniGap    = 4.0
)

// steps draws the part after the first, after more, and after all.
func (y *why) steps() {
	n := len(y.plan.Tighten.Order)
	counts := []int{1}
	for _, count := range []int{max(2, (n+2)/3), (2*n + 2) / 3, n} {
		if count > counts[len(counts)-1] {
			counts = append(counts, count)
		}
	}
	across := len(counts)
	if y.Paper.Narrow() {
		across = min(across, 2)
	}
	width := (y.Paper.Content() - miniGap*float64(across-1)) / float64(across)
	y.Room(7 + miniHeight + 6)
	y.Pen.Head(y.Pen.Left(), y.Y+4, y.words.Steps)
	y.legend(y.Y + 4)
	y.Y += 7
	for k, count := range counts {
		x := y.Pen.Left() + float64(k%across)*(width+miniGap)
		y.mini(scene.Box{Left: x, Top: y.Y, Right: x + width, Bottom: y.Y + miniHeight}, y.plan.Tighten.Order, count, scene.White, scene.Shade)
		y.Pen.Write(x+width/2, y.Y+miniHeight+3.6, sheet.TextEm, scene.Regular, scene.Middle, scene.Black, y.caption(count, n))
		if k%across == across-1 || k == len(counts)-1 {
			y.Y += miniHeight + 7
			if k < len(counts)-1 {
				y.Room(miniHeight + 7)
			}
		}
	}
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

// legend shows what the marks mean, from the right.
func (y *why) legend(at float64) {
	x := y.Pen.Right()
	for _, one := range []struct {
		word string
		fill scene.Ink
	}{{y.words.Loose, scene.White}, {y.words.Tight, scene.Shade}, {y.words.Now, scene.Black}} {
		x -= font.Width(one.word, scene.Regular, sheet.TextEm)
		y.Pen.Text(x, at, one.word)
		x -= 3
		y.Pen.Add(scene.Shape{Path: scene.Circle(x, at-1.1, 1.3), Fill: one.fill, Stroke: scene.Black, Width: 0.4})
		x -= 4.5
	}
}

// mini draws the part small: the bolts worked last black, those before in one
// ink, those to come in another.
func (y *why) mini(box scene.Box, order []int, count int, open, worked scene.Ink) {
	p := y.plan
	p.Joint.Labels, p.Joint.Stations, p.Joint.Front = nil, nil, ""
	for k := range p.Joint.Bores {
		if k == 0 {
			p.Joint.Bores = append(p.Joint.Bores[:0:0], p.Joint.Bores...)
		}
		p.Joint.Bores[k].Label = ""
	}
	looks := map[string]diagram.Look{}
	for k, i := range order {
		look := diagram.Look{Fill: open, Ink: scene.Black}
		switch {
		case k == count-1 && count < len(order):
			look.Fill = scene.Black
		case k < count:
			look.Fill = worked
		}
		looks[p.Joint.Fasteners[i].ID] = look
	}
	d := diagram.Draw(withoutNumbers(diagram.Request{Plan: p, Show: diagram.Words, Words: make([]string, len(order)), Box: box}))
	items := diagram.Relook(d.Items, looks)
	for k, it := range items { // the same bolts stand on the page again and again
		if s, ok := it.(scene.Shape); ok && s.Tag.Name != "" {
			s.Tag.Name += " at " + strconv.Itoa(len(y.Pen.Items)+k)
			items[k] = s
		}
	}
	y.Pen.Add(items...)
}

// withoutNumbers lets the part take the room that a crowded drawing keeps for
// numbers outside their marks: there are none.
func withoutNumbers(req diagram.Request) diagram.Request {
	for _, kept := range []float64{8, 6, 4} {
		larger := req
		larger.Box = req.Box.Grown(kept)
		if _, led := diagram.NumberCap(larger); led {
			return larger
		}
	}
	return req
}

// back tells of loosening, beside the part with the first third let go.
func (y *why) back() {
	width := y.Paper.Content() * 0.62
	texts := y.words.BackText
	if y.circle {
		texts = texts[:1] // the rest is of edges and middle, which a circle has not
	}
	broken := sheet.BreakAll(texts, width)
	height := max(7+broken.Height(), miniHeight*0.9)
	y.Room(height + 3)
	y.Pen.Head(y.Pen.Left(), y.Y+4, y.words.Back)
	at := y.Y + 10
	for _, lines := range broken {
		for _, line := range lines {
			y.Pen.Text(y.Pen.Left(), at, line)
			at += sheet.Line
		}
		at++
	}
	n := len(y.plan.Loosen.Order)
	y.mini(scene.Box{Left: y.Pen.Left() + width + 4, Top: y.Y + 1, Right: y.Pen.Right(), Bottom: y.Y + height}, y.plan.Loosen.Order, max(1, n/3), scene.Shade, scene.White)
	y.Y += height + 3
}

// figures gives what was worked out where it tells something; else what the
// order is for, without a figure.
func (y *why) figures(f *Figures) {
	w := y.words
	if f == nil || !f.TellsLowest && !f.TellsUneven {
		purpose := w.PurposeSpread
		if y.circle {
			purpose = w.PurposeCircle
		}
		y.told(w.Purpose, purpose)
		return
	}
	other := w.Edges
	if y.circle {
		other = w.Round
	}
	say := func(words string, figure [2]Band, format string) string {
		return fmt.Sprintf(words, y.Words.Figure(figure[0].in(format)), y.Words.Figure(figure[1].in(format)), other)
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
	y.told(w.Worked, append(texts, w.Band)...)
}

// told writes sentences under a heading.
func (y *why) told(head string, texts ...string) {
	broken := sheet.BreakAll(texts, y.Paper.Content())
	y.Room(7 + broken.Height())
	y.Pen.Head(y.Pen.Left(), y.Y+4, head)
	at := y.Y + 10
	for _, lines := range broken {
		for _, line := range lines {
			y.Pen.Text(y.Pen.Left(), at, line)
			at += sheet.Line
		}
		at++
	}
	y.Y = at
}

// in writes a band: the middle, and the ends in brackets.
func (b Band) in(format string) string {
	return fmt.Sprintf(format+" ("+format+"–"+format+")", b.Nominal, b.Low, b.High)
}
