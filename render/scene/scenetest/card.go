// Package scenetest dumps scenes as text, checks their layout and what a
// photocopy would lose, and has scenes for testing backends: a full card, and
// pages of many marks, written by hand. Only tests import it. It may import
// scene and font only.
package scenetest

import (
	"fmt"
	"math"
	"strconv"

	"drawdown/render/font"
	"drawdown/render/scene"
)

// Strings is the number of lines of text on a card.
const Strings = 72

// Card is a document of one A4 page with everything that a card has.
func Card() scene.Document {
	c := &canvas{page: scene.Page{Name: "card", Width: 210, Height: 297, Margin: 12}}
	c.title()
	c.part()
	c.stages()
	c.ticks()
	c.notes()
	return scene.Document{
		Title:    "Cylinder head, tightening",
		Subject:  "10 bolts M10×1.5, 40 N·m then 90°",
		Language: "en",
		Pages:    []scene.Page{c.page},
	}
}

// Marks is a page with n numbered circles, each connected to the next.
func Marks(n int) scene.Document {
	c := &canvas{page: scene.Page{Name: "marks", Width: 210, Height: 297, Margin: 10}}
	columns := 1
	for columns*columns*277 < n*190 {
		columns++
	}
	pitch := min(190/float64(columns), 12)
	at := func(i int) scene.Point {
		return scene.Point{X: 10 + pitch*(float64(i%columns)+0.5), Y: 10 + pitch*(float64(i/columns)+0.5)}
	}
	for i := range n {
		if i > 0 {
			a, b := at(i-1), at(i)
			c.line(pitch/30, scene.Accent, 0, a.X, a.Y, b.X, b.Y)
		}
	}
	for i := range n {
		p := at(i)
		c.mark(p, pitch*0.4, strconv.Itoa(i+1), i == 0)
	}
	return scene.Document{Title: "Marks", Language: "en", Pages: []scene.Page{c.page}}
}

type canvas struct{ page scene.Page }

func (c *canvas) add(it scene.Item) { c.page.Items = append(c.page.Items, it) }

func (c *canvas) fill(p scene.Path, fill scene.Ink) { c.add(scene.Shape{Path: p, Fill: fill}) }

func (c *canvas) outline(p scene.Path, fill, stroke scene.Ink, width float64) {
	c.add(scene.Shape{Path: p, Fill: fill, Stroke: stroke, Width: width})
}

func (c *canvas) line(width float64, ink scene.Ink, dash, x1, y1, x2, y2 float64) {
	path := scene.Polyline([]scene.Point{{X: x1, Y: y1}, {X: x2, Y: y2}}, false)
	c.add(scene.Shape{Path: path, Stroke: ink, Width: width, Dash: dash})
}

func (c *canvas) text(x, y, size float64, w scene.Weight, a scene.Anchor, ink scene.Ink, s string) {
	c.add(scene.Text{
		At: scene.Point{X: scene.Rounded(x), Y: scene.Rounded(y)}, Size: size, Width: font.Width(s, w, size),
		Weight: w, Anchor: a, Ink: ink, Content: s,
	})
}

func (c *canvas) mark(p scene.Point, radius float64, number string, first bool) {
	fill, ink := scene.White, scene.Black
	if first {
		fill, ink = scene.Black, scene.White
	}
	c.outline(scene.Circle(p.X, p.Y, radius), fill, scene.Black, radius/9)
	size := radius * 1.25
	if len(number) > 2 {
		size *= 2 / float64(len(number))
	}
	c.text(p.X, p.Y+size*font.CapHeight/2, size, scene.Bold, scene.Middle, ink, number)
}

func (c *canvas) title() {
	c.text(12, 19, 9, scene.Bold, scene.Start, scene.Black, "Cylinder head")
	c.text(12, 26, 3.4, scene.Regular, scene.Start, scene.Grey, "10 main bolts M10×1.5, 4 side bolts M8×1.25 · Zylinderkopf, Öl Ø 12")
	c.fill(scene.Rect(150, 10, 48, 12, 1), scene.Black)
	c.text(174, 18, 5.6, scene.Bold, scene.Middle, scene.White, "TIGHTEN")
	c.text(198, 26, 2.8, scene.Regular, scene.End, scene.Grey, "card 7c1e 90b4 · rev 3 · 2026-03-14")
	c.line(0.5, scene.Black, 0, 12, 29, 198, 29)
}

func (c *canvas) part() {
	c.outline(scene.Rect(22, 38, 166, 70, 4), scene.Tint, scene.Black, 0.45)
	c.line(0.2, scene.Grey, 1.2, 22, 96, 188, 96)
	for i := range 4 {
		x := 47.5 + 38*float64(i)
		c.outline(scene.Circle(x, 67, 14.6), scene.White, scene.Grey, 0.3)
		c.line(0.18, scene.Grey, 1, x-17, 67, x+17, 67)
		c.text(x, 62, 3, scene.Regular, scene.Middle, scene.Grey, fmt.Sprintf("bore %d", i+1))
	}
	order := []int{5, 4, 2, 7, 3, 6, 8, 1, 9, 0}
	at := func(i int) scene.Point {
		return scene.Point{X: 28.5 + 38*float64(order[i]/2), Y: 48 + 38*float64(order[i]%2)}
	}
	for i := range len(order) - 1 {
		c.bow(at(i), at(i+1), 6)
	}
	for i := range order {
		c.mark(at(i), 5, strconv.Itoa(i+1), i == 0)
	}
	for i := range 4 {
		x := 47.5 + 38*float64(i)
		c.outline(scene.Polygon(x, 102, 3.6, 6, 30), scene.White, scene.Black, 0.4)
		c.text(x, 103.3, 3.6, scene.Bold, scene.Middle, scene.Black, strconv.Itoa(11+i))
	}
	up := "Front of the engine ↑ exhaust side"
	c.add(scene.Text{
		At: scene.Point{X: 18, Y: 73}, Size: 3.6, Width: font.Width(up, scene.Regular, 3.6),
		Anchor: scene.Middle, Ink: scene.Black, Upward: true, Content: up,
	})
	for i, s := range []string{"View from above", "Schraube 1 zuerst", "dowel Ø 8", "1 Łódź", "10 Győr"} {
		c.text(26+38*float64(i), 112.5, 2.8, scene.Regular, scene.Start, scene.Grey, s)
	}
}

func (c *canvas) bow(a, b scene.Point, out float64) {
	length := max(1, math.Abs(b.X-a.X)+math.Abs(b.Y-a.Y))
	nx, ny := (b.Y-a.Y)/length*out, -(b.X-a.X)/length*out
	var p scene.Path
	p.MoveTo(a.X, a.Y)
	p.CurveTo(scene.Point{X: a.X*2/3 + b.X/3 + nx, Y: a.Y*2/3 + b.Y/3 + ny}, scene.Point{X: a.X/3 + b.X*2/3 + nx, Y: a.Y/3 + b.Y*2/3 + ny}, b)
	c.add(scene.Shape{Path: p, Stroke: scene.Accent, Width: 0.45})
	m := scene.Point{X: (a.X+b.X)/2 + nx*0.75, Y: (a.Y+b.Y)/2 + ny*0.75}
	c.fill(scene.Polygon(m.X, m.Y, 1.4, 3, 17), scene.Accent)
}

func (c *canvas) stages() {
	figures := [][3]string{{"Stage 1", "40 N·m", "≈ 30 lbf·ft"}, {"Stage 2", "90°", "≈ 4 × ¼ turn"}, {"Stage 3", "+ 45°", "bolts 1 – 10"}}
	for i, f := range figures {
		x := 12 + 63*float64(i)
		c.outline(scene.Rect(x, 117, 60, 26, 2), scene.White, scene.Black, 0.4)
		c.fill(scene.Rect(x, 117, 60, 7, 2), scene.Shade)
		c.text(x+3, 122, 4, scene.Bold, scene.Start, scene.Black, f[0])
		c.text(x+3, 134, 8, scene.Bold, scene.Start, scene.Black, f[1])
		c.text(x+3, 140, 3.4, scene.Regular, scene.Start, scene.Grey, f[2])
	}
	c.outline(scene.Circle(127, 133, 6), scene.White, scene.Black, 0.3)
	c.fill(scene.Wedge(127, 133, 6, 90), scene.Accent)
	c.outline(scene.Circle(190, 133, 6), scene.White, scene.Black, 0.3)
	c.fill(scene.Wedge(190, 133, 6, 45), scene.Accent)
}

func (c *canvas) ticks() {
	for row := range 5 {
		y := 152 + 9*float64(row)
		c.text(12, y+4.5, 3.4, scene.Regular, scene.Start, scene.Black, []string{"Stage 1, hand tight", "Stage 2, torque", "Stage 3, first turn", "Stage 4, second turn", "Checked by"}[row])
		for i := range 14 {
			fill := scene.White
			if row == 3 && i > 9 {
				fill = scene.Shade
			}
			c.outline(scene.Rect(56+10*float64(i), y, 6, 6, 0.6), fill, scene.Black, 0.35)
		}
	}
	for i := range 14 {
		c.text(59+10*float64(i), 150.5, 3, scene.Bold, scene.Middle, scene.Black, strconv.Itoa(i+1))
	}
}

func (c *canvas) notes() {
	notes := []string{
		"Before you start", "If it goes wrong",
		"New bolts every time. Oil the threads and the washers, not the holes.",
		"Příliš žluťoučký kůň · Zażółć gęślą jaźń · Árvíztűrő tükörfúrógép",
		"Pijamalı hasta yağız şoföre · Țară și știință · Ķēniņš, ąžuolas, õhk",
		"Ξεσκεπάζω την ψυχοφθόρα · Съешь ещё этих мягких булок · Ґанок, ћуран",
		"Þór, ðað, Ærø, Åse, façade, œuvre, señor, ğ, ß, ĳ, Ŵŷ, Għaż",
		"Blow the blind holes dry: 0.5 ml of oil cracks the block at 2 × 10³ bar.",
		"µ = 0.12 ± 0.02, F = 38 kN, M10 (8.8), −5 °C … +40 °C, ½ turn → stop.",
		"Brackets (round), back\\slash, \"quotes\" ‘single’ “double”, <tag> & more.",
		"A bolt that turns on without getting tighter has yielded: take it out.",
		"The maker's manual comes first.", "Name", "Wrench no.", "Date", "Second signature",
	}
	c.fill(scene.Rect(12, 198, 186, 66, 2), scene.Tint)
	for i, s := range notes {
		y := 206 + 5.4*float64(i-1)
		switch {
		case i < 2:
			c.text(16+93*float64(i), 204, 4, scene.Bold, scene.Start, scene.Black, s)
		case i < 12:
			c.outline(scene.Rect(16, y-2.6, 2.8, 2.8, 0), scene.White, scene.Black, 0.25)
			c.text(21, y, 3.2, scene.Regular, scene.Start, scene.Black, s)
		default:
			x := 12 + 47*float64(i-12)
			c.line(0.3, scene.Black, 0, x, 278, x+42, 278)
			c.text(x, 282, 2.8, scene.Regular, scene.Start, scene.Grey, s)
		}
	}
}
