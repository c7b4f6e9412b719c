package card

import (
	"math"

	"drawdown/render/scene"
	"drawdown/render/sheet"
)

// wedgeIcon draws an angle as a sector of a circle from the top: filled to turn
// further, open to turn back. Whole turns show the full circle.
func wedgeIcon(deg float64, filled bool) func(p *sheet.Pen, x, y float64) {
	return func(p *sheet.Pen, x, y float64) {
		p.Add(scene.Shape{Path: scene.Circle(x, y, iconRadius), Fill: scene.White, Stroke: scene.Black, Width: 0.35})
		sweep := math.Mod(deg, 360)
		if sweep == 0 {
			sweep = math.Copysign(359.9, deg)
		}
		wedge := scene.Shape{Path: scene.Wedge(x, y, iconRadius, sweep), Stroke: scene.Black, Width: 0.5}
		if filled {
			wedge.Fill = scene.Accent
		}
		p.Add(wedge)
		if !filled {
			turnArrow(p, x, y, sweep)
		}
	}
}

func turnArrow(p *sheet.Pen, x, y, sweep float64) {
	const size = 1.9
	s, c := math.Sincos(sweep * math.Pi / 180)
	tip := scene.Point{X: x + iconRadius*s, Y: y - iconRadius*c}
	way := math.Copysign(1, sweep)
	back := scene.Point{X: -c * way * size, Y: -s * way * size}
	out := scene.Point{X: s * size * 0.55, Y: -c * size * 0.55}
	p.Add(scene.Shape{Path: scene.Polyline([]scene.Point{
		tip, {X: tip.X + back.X + out.X, Y: tip.Y + back.Y + out.Y}, {X: tip.X + back.X - out.X, Y: tip.Y + back.Y - out.Y},
	}, true), Fill: scene.Black})
}

func clockIcon(p *sheet.Pen, x, y float64) {
	p.Add(scene.Shape{Path: scene.Circle(x, y, iconRadius), Fill: scene.White, Stroke: scene.Black, Width: 0.5})
	hands := scene.Polyline([]scene.Point{{X: x, Y: y - iconRadius*0.7}, {X: x, Y: y}, {X: x + iconRadius*0.5, Y: y + iconRadius*0.25}}, false)
	p.Add(scene.Shape{Path: hands, Stroke: scene.Black, Width: 0.5})
}

func outIcon(p *sheet.Pen, x, y float64) {
	p.Panel(x-1.6, y-2.6, 3.2, 1.6, 0, scene.Black, 0)
	p.Panel(x-0.8, y-1, 1.6, 3, 0, scene.Black, 0)
	var hole scene.Path
	hole.Stroke(x-iconRadius, y+2.8, x-1.5, y+2.8)
	hole.LineTo(x-1.5, y+iconRadius)
	hole.Stroke(x+iconRadius, y+2.8, x+1.5, y+2.8)
	hole.LineTo(x+1.5, y+iconRadius)
	p.Add(scene.Shape{Path: hole, Stroke: scene.Black, Width: 0.4})
	for _, side := range []float64{-1, 1} {
		tip := scene.Point{X: x + side*2.9, Y: y - iconRadius}
		p.Add(scene.Shape{Path: scene.Polyline([]scene.Point{tip, {X: tip.X - 1, Y: tip.Y + 1.6}, {X: tip.X + 1, Y: tip.Y + 1.6}}, true), Fill: scene.Black})
		p.Rule(tip.X, tip.Y+1.6, tip.X, y+1.4, 0.4)
	}
}

// stretchIcon draws a bolt between two arrows that pull it.
func stretchIcon(p *sheet.Pen, x, y float64) {
	p.Panel(x-0.7, y-1.6, 1.4, 3.2, 0, scene.Black, 0)
	for _, way := range []float64{-1, 1} {
		tip := y + way*iconRadius
		p.Rule(x, y+way*1.6, x, tip-way*1.4, 0.5)
		p.Add(scene.Shape{Path: scene.Polyline([]scene.Point{{X: x, Y: tip}, {X: x - 1.1, Y: tip - way*1.6}, {X: x + 1.1, Y: tip - way*1.6}}, true), Fill: scene.Black})
	}
}
