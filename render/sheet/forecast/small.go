package forecast

import (
	"fmt"
	"math"
	"strconv"
	"unicode/utf8"

	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence/interaction/prediction"
)

const (
	smallWidth = 48.0 // least width of a picture of a pass
	smallGap   = 4.0

	eachPassHead   = 10.0
	titleHeight    = 6.0
	besidePictures = 60.0 // of a page: for heading, foot, and text
)

// smallHeights are the heights of a picture of a pass to try, lowest first: a
// tall part needs the height.
var smallHeights = []float64{52, 72, 92}

func (l *layout) eachPass(run *sheet.Run, passes []prediction.ForecastPass) {
	if len(passes) == 0 {
		return
	}
	rows := l.rows(run.Pen.Paper, passes)
	run.Room(eachPassHead + rows.height + titleHeight) // the heading is kept with what follows
	run.Y += 2
	run.Pen.Head(run.Pen.Left(), run.Y+5, l.ask.Words.Forecast.EachPass)
	run.Y += eachPassHead - 2
	for k, pass := range passes {
		if k%rows.across == 0 {
			run.Room(rows.height + titleHeight)
		}
		x := run.Pen.Left() + float64(k%rows.across)*(rows.width+smallGap)
		l.small(run.Pen, pass, scene.Box{Left: x, Top: run.Y + titleHeight, Right: x + rows.width, Bottom: run.Y + 4 + rows.height})
		if k%rows.across == rows.across-1 || k == len(passes)-1 {
			run.Y += rows.height + titleHeight
		}
	}
}

// rows is the arrangement of the pictures of passes: number side by side, width
// and height of each.
type rows struct {
	across        int
	width, height float64
	legible       legible
}

// legible says how readable a picture is.
type legible int

const (
	figuresOutside legible = iota // the marks are too small for their figures
	partHidden                    // the marks leave too little of the part
	plain
)

// rows picks the most readable arrangement in which all pictures fit on a page,
// and of these the lowest.
func (l *layout) rows(paper sheet.Paper, passes []prediction.ForecastPass) (best rows) {
	taken, page := math.Inf(1), paper.Height-2*paper.Margin-besidePictures
	most := min(max(1, int((paper.Content()+smallGap)/(smallWidth+smallGap))), len(passes))
	for across := most; across > 0; across-- {
		for _, height := range smallHeights {
			width := (paper.Content() - smallGap*float64(across-1)) / float64(across)
			r := l.row(passes, rows{across: across, width: width, height: height})
			takes := math.Ceil(float64(len(passes))/float64(across)) * (r.height + titleHeight)
			if best.across == 0 || r.legible > best.legible && takes <= page || r.legible == best.legible && takes < taken {
				best, taken = r, takes
			}
		}
	}
	return best
}

// row reduces the height by what the part leaves empty, unless the pictures
// would become less readable, and sets how readable they are. Figures outside
// the marks can use the whole height.
func (l *layout) row(passes []prediction.ForecastPass, r rows) rows {
	box := scene.Box{Right: r.width, Bottom: r.height - 2}
	whole, idle := l.legible(passes, box)
	if whole > figuresOutside && idle > 0 {
		less := box
		less.Bottom -= idle
		if again, _ := l.legible(passes, less); again >= whole {
			box, whole = less, again
		}
	}
	r.height, r.legible = box.Height()+2, whole
	return r
}

// legible returns how readable pictures in a box are, and the height that they
// all leave empty: none if figures are outside the marks.
func (l *layout) legible(passes []prediction.ForecastPass, box scene.Box) (least legible, idle float64) {
	least, idle = plain, box.Height()
	for _, pass := range passes {
		ask := l.smallPart(pass, box)
		if ask.Led() {
			return figuresOutside, 0
		}
		d := diagram.Draw(ask)
		idle = min(idle, slack(d.Items, box)-1)
		if d.Hidden {
			least = partHidden
		}
	}
	return least, idle
}

func (l *layout) small(p *sheet.Pen, pass prediction.ForecastPass, box scene.Box) {
	title := fmt.Sprintf(l.ask.Words.Forecast.Pass, pass.Number, l.passWords(pass))
	p.Write(box.Left, box.Top-2, p.Paper.TextEm, scene.Bold, scene.Start, scene.Black, font.Fit(title, scene.Bold, p.Paper.TextEm, box.Right-box.Left))
	items := l.smallDrawing(pass, box).Items
	if pass.Number == len(l.f.Passes) { // during the work nothing counts as low yet
		items = diagram.Relook(items, l.lowLooks(pass))
	}
	// The same bolts are on the page several times.
	p.Add(scene.Renamed(items, " after pass "+strconv.Itoa(pass.Number))...)
}

// smallDrawing draws the part after a pass. A bolt that no pass has turned yet
// has a dash in its mark, but not if figures are beside the marks, where a dash
// would make a range of them.
func (l *layout) smallDrawing(pass prediction.ForecastPass, box scene.Box) diagram.Drawing {
	ask := l.smallPart(pass, box)
	outside := ask.Led()
	for i, turned := range pass.Turned {
		if outside && !turned {
			ask.Words[i] = ""
		}
	}
	return diagram.Draw(ask)
}

func (l *layout) smallPart(pass prediction.ForecastPass, box scene.Box) diagram.Part {
	return diagram.Part{
		Plan: l.plan.Bare(), Show: diagram.Words, Words: leastWords(pass.Turned, pass.Percent), Widest: l.widest(), Modest: true,
		Box: box, Thick: noticeable(pass.Turned, pass.Percent),
	}
}

// widest is the widest figure of all passes, so that the part looks the same
// after each.
func (l *layout) widest() (widest string) {
	for _, pass := range l.f.Passes {
		for _, figure := range leastWords(pass.Turned, pass.Percent) {
			if utf8.RuneCountInString(figure) > utf8.RuneCountInString(widest) {
				widest = figure
			}
		}
	}
	return widest
}
