package diagram

import (
	"drawdown/render/font"
	"drawdown/render/scene"
)

// hopeless is the number of fasteners above which no paper has room for leaders
// and a search would take too long.
const hopeless = 800

// mostLooks limits the search for one drawing, over all its sizes.
const mostLooks = 450_000

func (s *sketch) placeLed(z size) {
	if !z.led {
		return
	}
	var waiting []int
	for i := range s.marks {
		if s.text(i) != "" {
			waiting = append(waiting, i)
		}
	}
	tiers, looks := len(reaches), s.looks
	if len(waiting) > hopeless {
		tiers, looks = 1, 40*len(waiting)
	}
	var fan map[int][]placement
	if s.fans(z) {
		fan = s.fan(waiting, z.em())
	}
	q := newSearch(s.req.Box, len(waiting), tiers, looks, func(item, tier int) []placement {
		i := waiting[item]
		extent := textExtent(s.text(i), scene.Bold, z.em())
		if lane, ok := s.lane(i, extent); ok {
			if tier > 0 {
				return nil // all lanes are in the first tier
			}
			return s.inFanOrLanes(i, extent, lane, fan)
		}
		return s.candidates(i, extent, reaches[tier])
	})
	q.begin(func(p *placement) bool { return p.bent && p.cost == 0 }) // the fan itself
	q.run()
	s.looks = q.looks
	for k, i := range waiting {
		it := &q.items[k]
		if it.chosen == nowhere {
			s.out.Unplaced = append(s.out.Unplaced, i)
			continue
		}
		s.drawLed(i, it.choices[it.chosen], z)
	}
}

func (s *sketch) drawLed(i int, p placement, z size) {
	if p.led {
		tag := scene.Tag{Name: s.name(i), Role: scene.Trail}
		line := []scene.Point{p.from, p.to}
		if p.bent {
			line = []scene.Point{p.from, p.bend, p.to}
		}
		s.add(scene.Shape{Path: scene.Polyline(line, false), Stroke: scene.Grey, Width: 0.25, Tag: tag})
		p.everyLine(func(from, to scene.Point) bool {
			s.space.TakeLine(from, to)
			return true
		})
	}
	s.add(textIn(p, z.em(), scene.Bold, s.text(i), s.name(i)))
	s.space.TakeBox(p.box)
}

// textIn sets a text so that it fills the box of its placement.
func textIn(p placement, em float64, weight scene.Weight, content, name string) scene.Text {
	t := scene.Text{
		Size: em, Weight: weight, Anchor: scene.Middle, Ink: scene.Black, Content: content, Upward: p.upward,
		Tag: scene.Tag{Name: name, Role: scene.Number},
	}
	t.Width = font.Width(content, weight, em)
	covers := t.Box() // about the origin
	t.At = scene.Point{X: p.box.Left - covers.Left, Y: p.box.Top - covers.Top}
	return font.Set(t)
}

func (s *sketch) inFanOrLanes(i int, extent scene.Point, l lane, fan map[int][]placement) []placement {
	var places []placement
	for _, p := range fan[i] {
		if s.fits(i, p, cramped) {
			places = append(places, p)
		}
	}
	return append(places, s.inLanes(i, extent, l)...)
}
