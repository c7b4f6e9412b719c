package sheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/render/diagram"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/sequence/plan"
)

// Which says which sides of a card to lay out.
type Which string

const (
	BothSides   Which = "both"
	TightenSide Which = "tighten"
	LoosenSide  Which = "loosen"
)

// Sides lists the choices.
var Sides = []Which{BothSides, TightenSide, LoosenSide}

// Card lays out a plan's card: the tightening side, the loosening side, or
// both, each over as many pages as it needs. The notes tell what found no room
// on this paper.
func Card(p plan.Plan, paper Paper, which Which) (doc scene.Document, notes []string) {
	doc = scene.Document{Title: p.Title, Subject: p.Machine, Language: "en"}
	if which != LoosenSide {
		pages, left := newCard(p, paper, false).pages()
		doc.Pages, notes = append(doc.Pages, pages...), append(notes, left...)
	}
	if which != TightenSide {
		pages, left := newCard(p, paper, true).pages()
		doc.Pages, notes = append(doc.Pages, pages...), append(notes, left...)
	}
	return doc, notes
}

// card is one side of a card while it is laid out.
type card struct {
	plan      plan.Plan
	side      plan.Side
	loosening bool
	paper     Paper
	numbers   []int
	second    []string // second numbers of the fasteners; nil where there are none
	// crowded says that numbers stand on leader lines; the second numbers then
	// stand in the tick grid.
	crowded bool
	covers  map[int][]bool // which fasteners a stage covers, by its number
}

func newCard(p plan.Plan, paper Paper, loosening bool) *card {
	c := &card{plan: p, side: p.Tighten, loosening: loosening, paper: paper, covers: map[int][]bool{}}
	if loosening {
		c.side = p.Loosen
	}
	c.numbers, c.second = c.side.Numbers(), secondNumbers(p, loosening)
	return c
}

// name is the name of a page in file names: tighten, tighten-2.
func (c *card) name(page int) string {
	name := string(TightenSide)
	if c.loosening {
		name = string(LoosenSide)
	}
	if page > 1 {
		name += "-" + strconv.Itoa(page)
	}
	return name
}

// pages lays the side out. The part stands on the first page; stages, tick
// grid and checks follow there as far as the part keeps enough room, else on
// further pages with the same header and foot.
func (c *card) pages() ([]scene.Page, []string) {
	var leaves []*pen
	leaf := func() (p *pen, y, bottom float64) {
		p = &pen{paper: c.paper}
		leaves = append(leaves, p)
		return p, c.header(p) + 2, c.paper.Height - c.paper.Margin - c.footHeight() - 2
	}
	p, y, bottom := leaf()
	first := c.choose(bottom - y)
	drawn := c.part(p, y, bottom-c.height(first))
	y = bottom - c.height(first)
	if !first.has(stagesBlock) {
		p, y, bottom = leaf()
	}
	c.stages(p, y)
	y += c.stagesHeight()
	if !first.has(gridBlock) {
		// What to see to first stands before the grid.
		if first.has(checksBlock) {
			c.checks(p, bottom-c.checksHeight())
			y = bottom
		} else {
			if bottom-y < c.checksHeight() {
				p, y, bottom = leaf()
			}
			c.checks(p, y)
			y += c.checksHeight()
		}
	}
	for bands := c.bands(); len(bands) > 0; {
		n := fitting(bands, bottom-y-gridHead)
		if n == 0 {
			p, y, bottom = leaf()
			n = max(1, fitting(bands, bottom-y-gridHead))
		}
		c.grid(p, y, bands[:n])
		y += gridHeight(bands[:n])
		bands = bands[n:]
	}
	if first.has(gridBlock) {
		c.checks(p, bottom-c.checksHeight())
	}
	return c.finish(leaves), c.left(drawn)
}

func (c *card) finish(leaves []*pen) []scene.Page {
	var pages []scene.Page
	for k, p := range leaves {
		c.foot(p, k+1, len(leaves))
		pages = append(pages, scene.Page{
			Name: c.name(k + 1), Width: c.paper.Width, Height: c.paper.Height, Margin: c.paper.Margin, Items: p.items,
		})
	}
	return pages
}

// blocks is a set of the things that stand under the part.
type blocks uint8

const (
	stagesBlock blocks = 1 << iota
	checksBlock
	gridBlock
)

func (b blocks) has(one blocks) bool { return b&one != 0 }

// height is the height that the blocks need.
func (c *card) height(b blocks) float64 {
	h := 0.0
	if b.has(stagesBlock) {
		h += c.stagesHeight()
	}
	if b.has(checksBlock) {
		h += c.checksHeight()
	}
	if b.has(gridBlock) {
		h += gridHeight(c.bands())
	}
	return h
}

// choose keeps as many blocks as possible on the first page while the part has
// room for numbers of full size, or of the size that it would have alone. A
// part so crowded that its numbers stand on leader lines has the page alone.
func (c *card) choose(room float64) blocks {
	most := c.numberCap(room)
	if c.crowded = most == 0; c.crowded {
		return 0
	}
	for _, b := range []blocks{stagesBlock | checksBlock | gridBlock, stagesBlock | checksBlock, stagesBlock} {
		if height := room - c.height(b); height >= leastPart && c.numberCap(height) >= most {
			return b
		}
	}
	return 0
}

// leastPart is the least height of the drawing of the part.
const leastPart = 46

// numberCap is the height of the numbers that the part would get, up to what a
// card needs; 0 where they would stand outside their marks.
func (c *card) numberCap(height float64) float64 {
	if height < leastPart {
		return -1
	}
	enough := 5 * min(1, c.paper.Width/210) // 5 mm on A4, in proportion on smaller paper
	if len(c.side.Order) > 20 {
		enough = 3.0
	}
	capMm, led := diagram.NumberCap(c.request(scene.Box{
		Left: c.paper.Margin, Top: 0, Right: c.paper.Width - c.paper.Margin, Bottom: height - c.captionHeight(),
	}))
	if led {
		return 0
	}
	return min(capMm, enough)
}

func (c *card) request(box scene.Box) diagram.Request {
	return diagram.Request{Plan: c.plan, Order: c.side.Order, Box: box}
}

// secondNumbers gives the second numbers: on the loosening side the tightening
// numbers, or the cast numbers where the part has them; on the tightening side
// the cast numbers. Nil where there are none.
func secondNumbers(p plan.Plan, loosening bool) []string {
	small := make([]string, len(p.Joint.Fasteners))
	tighten := p.Tighten.Numbers()
	some := false
	for i, f := range p.Joint.Fasteners {
		switch {
		case f.Cast > 0 && (loosening || f.Cast != tighten[i]):
			small[i] = strconv.Itoa(f.Cast)
		case loosening:
			small[i] = strconv.Itoa(tighten[i])
		}
		some = some || small[i] != ""
	}
	if !some {
		return nil
	}
	return small
}

// captionHeight leaves room for two lines under the part, one on wide paper.
func (c *card) captionHeight() float64 {
	if c.paper.content() < 150 {
		return 3 + 2*line
	}
	return 3 + line
}

// part draws the part and its caption between two heights.
func (c *card) part(p *pen, top, bottom float64) diagram.Drawing {
	req := c.request(scene.Box{Left: p.left(), Top: top, Right: p.right(), Bottom: bottom - c.captionHeight()})
	if !c.crowded {
		req.Beside = c.second
	}
	d := diagram.Draw(req)
	p.add(d.Items...)
	c.caption(p, d, bottom-c.captionHeight()+line+0.6)
	return d
}

// caption says how to read the drawing, with a sample of each kind's mark.
func (c *card) caption(p *pen, d diagram.Drawing, y float64) {
	x := p.left()
	if len(c.plan.Kinds) > 1 {
		for i, k := range c.plan.Kinds {
			p.add(diagram.Sample(i, scene.Point{X: x + 1.6, Y: y - 1.1}, 1.4))
			p.text(x+4.4, y, k.Name)
			x += 4.4 + font.Width(k.Name, scene.Regular, textEm) + 3
		}
	}
	lines := int((c.captionHeight() - 3) / line)
	if words := font.Break(c.reading(d), scene.Regular, textEm, p.right()-x); len(words) > 1 && lines > 1 {
		// The second line may begin under the samples.
		p.text(x, y, words[0])
		rest := strings.Join(words[1:], " ")
		p.text(p.left(), y+line, font.Fit(rest, scene.Regular, textEm, p.paper.content()))
		return
	}
	p.text(x, y, font.Fit(c.reading(d), scene.Regular, textEm, p.right()-x))
}

func (c *card) reading(d diagram.Drawing) string {
	words := ""
	if n := len(d.Unplaced); n > 0 {
		words = fmt.Sprintf("%d numbers found no room on this paper. ", n)
	}
	if !c.crowded && c.second != nil {
		words += "Small number: " + c.smallMeans() + ". "
	}
	switch {
	case d.WholePath:
		words += "Begin at black, follow the arrows. "
	case d.Path:
		words += "Begin at black, follow the arrows; where there is none, go by number. "
	default:
		words += "Begin at black, go by number. "
	}
	if slices.ContainsFunc(c.plan.Joint.Clusters, func(cl geometry.Cluster) bool { return cl.Unloaded }) {
		words += "Dashed: no spring load. "
	}
	if d.Rings {
		words += "Grey: every second ring, to guide the eye. "
	}
	return words
}

func (c *card) smallMeans() string {
	for _, f := range c.plan.Joint.Fasteners {
		if f.Cast > 0 {
			return "cast"
		}
	}
	return "tightening"
}

// left tells what found no room.
func (c *card) left(d diagram.Drawing) []string {
	var notes []string
	side := c.name(1)
	if n := len(d.Unplaced); n > 0 {
		notes = append(notes, fmt.Sprintf("%s side: %d of %d numbers found no room on %s; print it on larger paper", side, n, len(c.numbers), c.paper.Name))
	}
	for _, word := range d.Dropped {
		notes = append(notes, fmt.Sprintf("%s side: the label %q found no room on %s", side, word, c.paper.Name))
	}
	if d.BesideLeftOut > 0 {
		notes = append(notes, fmt.Sprintf("%s side: %d small numbers found no room on %s", side, d.BesideLeftOut, c.paper.Name))
	}
	return notes
}

// gridHead is the height of the grid's heading.
const gridHead = 7.0

func gridHeight(bands []band) float64 {
	if len(bands) == 0 {
		return 0
	}
	h := gridHead
	for _, b := range bands {
		h += b.height() + bandGap
	}
	return h
}

// fitting counts the bands that fit into a height.
func fitting(bands []band, height float64) int {
	n := 0
	for n < len(bands) && height >= bands[n].height() {
		height -= bands[n].height() + bandGap
		n++
	}
	return n
}

func (c *card) grid(p *pen, y float64, bands []band) {
	if len(bands) == 0 {
		return
	}
	p.head(p.left(), y+4, wordTick)
	y += gridHead
	for _, b := range bands {
		c.drawBand(p, b, y)
		y += b.height() + bandGap
	}
}
