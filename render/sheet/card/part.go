package card

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/render/diagram"
	"drawdown/render/scene"
	"drawdown/render/sheet"
	"drawdown/sequence"
)

func (c *card) request(box scene.Box) diagram.Part {
	return diagram.Part{Plan: c.plan, Order: c.side.Order, Called: c.called, Front: c.words.Sheet.Front, Box: box, SmallEm: c.paper.TextEm}
}

// secondNumbers returns the second numbers: what is cast or written on the
// part, unless that is the large number already, or the number in the order if
// it differs from the cast numbers. A part with neither shows tightening
// numbers on the loosening side, and on the tightening side the ids that the
// tray and condition sheets use. It returns nil if there are none.
//
// A mark on the part is always shown. A fastener without one has none on the
// part either, so nothing takes its place.
func (c *card) secondNumbers() []string {
	of := c.plan.Joint.Fasteners
	small := make([]string, len(of))
	tighten := c.plan.Tighten.Numbers()
	bare := !slices.ContainsFunc(of, onPart)
	for i, f := range of {
		switch {
		case c.cast.Across():
			small[i] = strconv.Itoa(c.numbers[i])
		case f.Cast > 0 && f.Cast != c.called[i]:
			small[i] = strconv.Itoa(f.Cast)
		case f.Cast == 0 && f.Mark != "":
			small[i] = f.Mark
		case c.loosening && bare:
			small[i] = strconv.Itoa(tighten[i])
		case bare && utf8.RuneCountInString(f.ID) <= longestID:
			small[i] = f.ID
		}
	}
	if strings.Join(small, "") == "" {
		return nil
	}
	return small
}

// longestID is the longest id that is drawn beside a mark.
const longestID = 4

// named reports that the second numbers are ids. They help to find a fastener
// on another sheet, but the card works without them.
func (c *card) named() bool {
	return !c.loosening && !slices.ContainsFunc(c.plan.Joint.Fasteners, onPart)
}

func onPart(f geometry.Fastener) bool { return f.Cast > 0 || f.Mark != "" }

// settleNumbers decides where the second numbers go. room is the free height on
// the first page. They go in the tick grid if the numbers need leader lines
// even on a page with only the part. The tick grid takes numbers, not ids.
func (c *card) settleNumbers(room float64) {
	c.crowded = c.numberCap(span{c.paper.Margin, c.paper.Content()}, room) == 0
	if c.crowded && c.named() {
		c.second = nil
	}
}

type drawnPart struct {
	diagram.Drawing
	small   bool             // the second numbers are beside the marks
	details []diagram.Detail // of a part whose numbers did not all fit
}

// part draws the part and its caption between two heights.
func (c *card) part(in span, top, bottom float64) drawnPart {
	d := drawnPart{small: !c.crowded && c.second != nil}
	req := c.request(scene.Box{Left: in.left, Top: top, Right: in.right(), Bottom: bottom - c.captionHeight(in)})
	if d.small {
		req.Beside = c.second
	}
	caption := c.draw(in, &d, &req)
	if c.crowded && len(d.Unplaced) > 0 {
		d.details = c.detailed(req, top, bottom)
		caption = c.captioned(in, &d, &req, max(caption.Lines, c.captionLines(in))) // the caption refers to them
	}
	d.Items = append(d.Items, caption.Below(d.Drawing, bottom-captionAir+0.6)...)
	return d
}

// draw draws the part. A text under it says what did not fit, which takes space
// too.
func (c *card) draw(in span, d *drawnPart, req *diagram.Part) diagram.Legend {
	d.Drawing = diagram.Draw(*req)
	if c.named() && !d.Alike { // ids on different sides, or only some of them, would mislead
		d.small, req.Beside = false, nil
		d.Drawing = diagram.Draw(*req)
	}
	return c.captioned(in, d, req, c.captionLines(in))
}

// captioned returns the caption of a drawing. If it has more lines than
// reserved, the drawing is made smaller.
func (c *card) captioned(in span, d *drawnPart, req *diagram.Part, lines int) diagram.Legend {
	caption := c.caption(in, *d)
	for ; caption.Lines > lines; caption = c.caption(in, *d) {
		req.Box.Bottom -= float64(caption.Lines-lines) * c.paper.Line
		lines = caption.Lines
		d.Drawing = diagram.Draw(*req)
	}
	return caption
}

// whole reports whether everything on the part fits.
func (d drawnPart) whole() bool {
	return len(d.Unplaced)+len(d.Dropped)+d.BesideLeftOut == 0
}

func (c *card) caption(in span, d drawnPart) diagram.Legend {
	return diagram.NewLegend(c.request(scene.Box{}).KindNames(), c.reading(d), c.paper.TextEm, c.paper.Line, in.left, in.right())
}

func (c *card) reading(d drawnPart) string {
	w := c.words.Card.Part
	var parts []string
	switch n := len(d.Unplaced); {
	case n > 0 && len(d.details) > 0:
		parts = append(parts, w.OnDetails)
	case n > 0:
		parts = append(parts, w.Unplaced.Of(n))
	}
	if by := c.castOrder(); by != "" && !c.loosening {
		parts = append(parts, by)
	}
	if large := c.cast.Large(); large != "" {
		parts = append(parts, large)
	}
	if d.small {
		parts = append(parts, c.smallSays())
	}
	parts = append(parts, c.cast.Follow(d.Path))
	if slices.ContainsFunc(c.plan.Joint.Clusters, c.plan.Unloaded) {
		parts = append(parts, w.NoSpringLoad)
	}
	if len(c.plan.Joint.Dowels) > 0 {
		parts = append(parts, w.Dowel)
	}
	if len(d.Dropped) > 0 {
		parts = append(parts, c.words.NoRoomFor(d.Dropped))
	}
	if n := d.BesideLeftOut; n > 0 {
		parts = append(parts, w.SmallUnplaced.Of(n))
	}
	return strings.Join(parts, " ")
}

// castOrder says that the order is the cast one, and for which kinds if not for
// all.
func (c *card) castOrder() string {
	var kinds []string
	groups := 0
	for _, g := range c.plan.Groups {
		if g.Way == sequence.Cast {
			kinds, groups = append(kinds, g.Kinds...), groups+1
		}
	}
	switch {
	case groups == 0:
		return ""
	case groups == len(c.plan.Groups):
		return c.words.Card.Part.CastOrder
	}
	return fmt.Sprintf(c.words.Card.Part.CastOrderOf, strings.Join(kinds, ", "))
}

func (c *card) smallSays() string {
	if c.named() {
		return c.words.Card.Part.SmallName
	}
	return fmt.Sprintf(c.words.Card.Part.SmallNumber, c.smallMeans())
}

func (c *card) smallMeans() string {
	w, of := c.words.Card.Part, c.plan.Joint.Fasteners
	switch {
	case c.cast.Across():
		return c.words.Card.Order
	case slices.ContainsFunc(of, func(f geometry.Fastener) bool { return f.Cast == 0 && f.Mark != "" }):
		return w.Mark
	case slices.ContainsFunc(of, onPart):
		return w.Cast
	}
	return w.Tightening
}

func (c *card) left(d drawnPart) []string {
	var notes []string
	say := func(code finding.Code, values finding.Values) string {
		values["where"], values["paper"] = c.name(), c.paper.Name
		return c.words.Say(finding.Warned(code, values))
	}
	n := len(d.Unplaced)
	if len(d.details) > 0 {
		n = 0
		for _, detail := range d.details {
			n += len(detail.Unplaced)
		}
	}
	c.missing.Note(n, len(c.numbers))
	if n > 0 {
		notes = append(notes, say(sheet.NumbersNoRoom, finding.Values{"left": n, "of": len(c.numbers)}))
	}
	for _, word := range d.Dropped {
		notes = append(notes, say(sheet.LabelNoRoom, finding.Values{"label": word}))
	}
	if d.BesideLeftOut > 0 {
		notes = append(notes, say(sheet.SmallNoRoom, finding.Values{"left": d.BesideLeftOut}))
	}
	return notes
}

// If the numbers do not fit on the part, it is drawn again in sections on
// separate pages: a tick box is useless if the bolt cannot be found.

const (
	detailHead = 20.0 // with the overview of the section
	placeWidth = 46.0 // of the overview
)

func (c *card) detailed(req diagram.Part, top, bottom float64) []diagram.Detail {
	return diagram.Details(req, scene.Box{
		Left: c.paper.Margin, Top: top + detailHead, Right: c.paper.Width - c.paper.Margin,
		Bottom: bottom - c.captionOf(c.detailCaption(req).Lines),
	})
}

func (c *card) detailCaption(req diagram.Part) diagram.Legend {
	return diagram.NewLegend(req.KindNames(), c.words.Card.Part.Numbers, c.paper.TextEm, c.paper.Line, c.paper.Margin, c.paper.Width-c.paper.Margin)
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
		p.Add(caption.Items(f.Bottom - c.captionOf(caption.Lines) + 0.6 + c.paper.Line)...)
	}
}
