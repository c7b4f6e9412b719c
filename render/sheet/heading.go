package sheet

import (
	"fmt"

	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/words"
	"drawdown/sequence/plan"
)

const (
	badgeWidth  = 38.0
	badgeHeight = 12.0
	badgeEm     = 5.4 // size of the word in the badge; a longer word is set smaller
)

// mostTitle is the largest number of lines of a title. It is rarely cut,
// because its last words often distinguish the left part from the right.
const mostTitle = 5

// Heading is at the top of every page of a sheet.
type Heading struct {
	Title    string
	Badge    string // one or two words that name the sheet, readable from a distance
	Solid    bool   // the badge is solid, not outlined
	Subtitle string // subject; up to three lines
	Identity string // distinguishes an old print from a new one
	Sheet    string // which of several similar ones; "" if there is one
}

// bookmark is the name of the sheet on screen.
func (h Heading) bookmark(w *words.Catalogue) string {
	return fmt.Sprintf(w.Sheet.Named, words.Row(h.Title, h.Sheet), h.Badge)
}

// PlanHeading is the heading of a plan's sheet, with the machine and the kinds
// and numbers of fasteners as subtitle.
func PlanHeading(p plan.Plan, w *words.Catalogue, badge string, name func(k plan.Kind) string) Heading {
	parts := []string{p.Machine}
	for _, k := range p.Kinds {
		parts = append(parts, fmt.Sprintf("%d × %s", p.Count(k.Name), name(k)))
	}
	return Heading{Title: p.Title, Badge: badge, Subtitle: words.Row(parts...), Identity: Identity(p, w)}
}

// Draw draws the heading and returns the y of its rule.
func (h Heading) Draw(p *Pen) float64 {
	top := p.Paper.Margin
	room := p.Paper.Content() - badgeWidth - 4
	em, lines := p.Paper.TitleEm, font.Break(h.Title, scene.Bold, p.Paper.TitleEm, room)
	if len(lines) > 2 {
		em, lines = p.Paper.HeadEm, font.Break(h.Title, scene.Bold, p.Paper.HeadEm, room)
	}
	lines = AtMost(lines, mostTitle, scene.Bold, em, room)
	y := top + 7.2
	for k, words := range lines {
		if k > 0 {
			y += em * 1.1
		}
		p.Write(p.Left(), y, em, scene.Bold, scene.Start, scene.Black, words)
	}
	h.badge(p, top)
	subtitle := AtMost(p.Paper.BreakText(h.Subtitle, p.Paper.Content()), 3, scene.Regular, p.Paper.TextEm, p.Paper.Content())
	y = p.Paper.Plain().Set(p, p.Left(), max(y, top+badgeHeight)+5.5, subtitle)
	p.Write(p.Left(), y, p.Paper.TextEm, scene.Regular, scene.Start, scene.Black, font.Fit(h.Identity, scene.Regular, p.Paper.TextEm, p.Paper.Content()))
	y += 2
	p.Rule(p.Left(), y, p.Right(), y, 0.6)
	return y
}

func (h Heading) badge(p *Pen, top float64) {
	x := p.Right() - badgeWidth
	fill, ink := scene.White, scene.Black
	if h.Solid {
		fill, ink = scene.Black, scene.White
	}
	em := badgeEm
	if wide := font.Width(h.Badge, scene.Bold, em); wide > badgeWidth-4 {
		em *= (badgeWidth - 4) / wide
	}
	p.Panel(x+0.4, top+0.4, badgeWidth-0.8, badgeHeight-0.8, 0, fill, 0.8)
	p.Write(x+badgeWidth/2, top+badgeHeight/2+em*font.CapHeight/2, em, scene.Bold, scene.Middle, ink, h.Badge)
}

// Identity distinguishes old and new prints of a plan, and names the view.
func Identity(p plan.Plan, w *words.Catalogue) string {
	parts := []string{fmt.Sprintf(w.Sheet.Card, p.Fingerprint)}
	if p.Revision != "" {
		parts = append(parts, fmt.Sprintf(w.Sheet.Revision, p.Revision))
	}
	parts = append(parts, p.Date)
	if p.View != "" {
		parts = append(parts, fmt.Sprintf(w.Sheet.Seen, w.View(p.View)))
	}
	if p.Mirrored {
		parts = append(parts, w.Sheet.Mirrored)
	}
	if p.Asked != (plan.Asked{}) {
		asked := words.Text(w.Sheet.Ways[string(p.Asked.Way)], w.Sheet.Turns[string(p.Asked.Turn)])
		parts = append(parts, fmt.Sprintf(w.Sheet.Asked, asked))
	}
	return words.Row(parts...)
}
