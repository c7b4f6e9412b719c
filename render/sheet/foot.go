package sheet

import (
	"fmt"
	"slices"

	"drawdown/render/font"
	"drawdown/render/scene"
)

// Foot is at the bottom of every page of a sheet: lines about the source of the
// figures, and on the last page the fields to sign.
type Foot struct {
	Lines []string // already wrapped to the width of the paper
	Sign  []string // names of the fields to sign; none: nothing to sign
}

// Foot returns a foot that says that the maker's manual comes first, with the
// named fields to sign.
func (r Request) Foot(sign ...string) Foot {
	return Foot{Lines: r.Paper.BreakText(r.Words.Sheet.ManualFirst, r.Paper.Content()), Sign: sign}
}

const signHeight = 9.0

// Height is the height of the foot including its rule.
func (f Foot) Height(paper Paper) float64 {
	return 3 + float64(len(f.Lines))*paper.Line + float64(f.rows(paper))*signHeight + 2
}

// rows is the number of rows of fields to sign: one, or two on narrow paper. A
// foot without any keeps the space of the page count.
func (f Foot) rows(paper Paper) int {
	if paper.Narrow() && len(f.Sign) > 2 {
		return 2
	}
	return 1
}

func (f Foot) draw(p *Pen, last bool) {
	y := p.Paper.Height - p.Paper.Margin - f.Height(p.Paper)
	if !p.ruledAbove(y) {
		p.Rule(p.Left(), y, p.Right(), y, 0.3)
	}
	at := p.Paper.Plain().Set(p, p.Left(), y+4.4, f.Lines)
	switch {
	case len(f.Sign) == 0:
	case last:
		f.sign(p, at+4)
	default:
		p.Write(p.Left(), at+4, p.Paper.TextEm, scene.Regular, scene.Start, scene.Black, p.Words.Sheet.SignOnLast)
	}
}

// oneLine is the distance, in millimetres, within which two lines across the
// page look like one drawn twice.
const oneLine = 5.0

// ruledAbove reports whether a line across the page, such as the last of a
// table, is so close above that another would double it.
func (p *Pen) ruledAbove(y float64) bool {
	return slices.ContainsFunc(p.Items, func(it scene.Item) bool {
		s, ok := it.(scene.Shape)
		if !ok || s.Stroke == scene.None {
			return false
		}
		b := s.Path.Bounds()
		return b.Height() == 0 && b.Left == p.Left() && b.Right == p.Right() && b.Top > y-oneLine
	})
}

func (f Foot) sign(p *Pen, y float64) {
	rows := f.rows(p.Paper)
	inRow := (len(f.Sign) + rows - 1) / rows
	width := p.Paper.Content() / float64(inRow)
	for k, words := range f.Sign {
		x, at := p.Left()+width*float64(k%inRow), y+signHeight*float64(k/inRow)
		p.Text(x, at, words)
		from := x + font.Width(words, scene.Regular, p.Paper.TextEm) + 1.5
		to := x + width - 3
		if k%inRow == inRow-1 || k == len(f.Sign)-1 {
			to = p.Right()
		}
		p.Rule(from, at+0.6, to, at+0.6, 0.25)
	}
}

// Count writes the page count into the free corner of every page of a sheet or
// book.
func Count(pages []scene.Page) {
	for k := range pages {
		p := &pages[k]
		p.Items = append(p.Items, font.Set(scene.Text{
			At: scene.Point{X: p.Width - p.Margin, Y: p.Height - p.Margin - 1}, Size: typeOn(p.Width, p.Height).TextEm, Anchor: scene.End, Ink: scene.Black,
			Content: fmt.Sprintf("%d / %d", k+1, len(pages)),
		}))
	}
}
