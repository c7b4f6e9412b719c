package card

import (
	"fmt"

	"drawdown/render/diagram"
	"drawdown/render/scene"
	"drawdown/render/sheet"
)

// Where numbers find no room on the part, it is drawn again in details on pages
// of their own: a tick box is no use for a bolt that nobody can find.

const (
	detailHead = 20.0 // with the place of the detail
	placeWidth = 46.0 // of the small drawing that shows it
)

func (c *card) detailed(req diagram.Part, top, bottom float64) []diagram.Detail {
	return diagram.Details(req, scene.Box{
		Left: c.paper.Margin, Top: top + detailHead, Right: c.paper.Width - c.paper.Margin,
		Bottom: bottom - captionHeight(c.detailCaption(req).Lines),
	})
}

func (c *card) detailCaption(req diagram.Part) diagram.Legend {
	return diagram.NewLegend(req.KindNames(), c.words.Card.Part.Numbers, c.paper.Margin, c.paper.Width-c.paper.Margin)
}

func (f *pages) drawDetails(details []diagram.Detail) {
	c := f.c
	whole := c.request(scene.Box{})
	caption := c.detailCaption(whole)
	for k, d := range details {
		f.Turn()
		p := f.Pen
		p.Head(p.Left(), f.Y+4, fmt.Sprintf(c.words.Card.Part.Detail, k+1, len(details)))
		p.Add(d.Place(whole, scene.Box{Left: p.Right() - placeWidth, Top: f.Y, Right: p.Right(), Bottom: f.Y + detailHead - 2})...)
		p.Add(d.Items...)
		p.Add(caption.Items(f.Bottom - captionHeight(caption.Lines) + 0.6 + sheet.Line)...)
	}
}
