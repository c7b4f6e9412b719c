package proof

import (
	"fmt"
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/trace"
	"drawdown/render/scene"
	"drawdown/render/words"
)

func (l *layout) bar() {
	y := l.frame.Bottom + 6
	length := 50.0
	for length*l.scale > l.Paper.Content()-40 {
		length /= 2
	}
	for length*l.scale < shortestBar {
		length *= 2
	}
	x1, x2 := l.Left(), l.Left()+length*l.scale
	l.Rule(x1, y, x2, y, thin)
	l.Rule(x1, y-1.5, x1, y+1.5, thin)
	l.Rule(x2, y-1.5, x2, y+1.5, thin)
	l.Write(x2+3, y+1.1, l.Paper.TextEm, scene.Bold, scene.Start, scene.Black, fmt.Sprintf(l.words().Bar, l.figure("%g", length)))
	l.lastY = y + 3
}

func (l *layout) foot() {
	y := l.lastY + l.Paper.Line
	last := l.Page.Height - l.Paper.Margin - 0.5
	room := int((last-y)/l.Paper.Line) + 1
	w := l.words()
	broken := func(words string) []string { return l.Paper.BreakText(words, l.Paper.Content()) }
	lines := slices.Concat(broken(w.Legend), broken(l.sizes()), broken(l.distances()))
	more := 0
	var doubts []string
	for _, d := range l.Found.Doubts {
		doubts = append(doubts, fmt.Sprintf(w.Look, l.Words.Say(d)))
	}
	for _, s := range l.Found.Shapes {
		for _, d := range s.Doubts {
			if d.Code == trace.SizeOpen {
				continue // the sizes are listed above
			}
			doubts = append(doubts, fmt.Sprintf(w.LookAt, s.ID, l.figure("%.1f mm", s.DiameterMm), l.Words.Say(d)))
		}
	}
	if l.Found.Specks > 0 {
		doubts = append(doubts, fmt.Sprintf(w.Specks, l.figure("%.1f", l.Found.SpeckMm), l.figure("%.1f", l.Found.SmallestMm), l.Found.Specks))
	}
	if l.lost > 0 {
		doubts = append([]string{fmt.Sprintf(w.NoRoom, l.lost)}, doubts...)
	}
	for _, d := range doubts {
		if says := broken(d); len(lines)+len(says) <= room-1 {
			lines = append(lines, says...)
		} else {
			more++
		}
	}
	if more > 0 {
		lines = append(lines, fmt.Sprintf(w.More, more))
	}
	l.Paper.Plain().Set(l.Pen, l.Left(), y, lines[:min(len(lines), room)])
}

// sizes lists the groups of holes: 6 bolt holes 8.4 mm; 2 dowels 6.0 mm.
func (l *layout) sizes() string {
	var sizes []string
	for _, size := range l.Found.Sizes() {
		sizes = append(sizes, fmt.Sprintf(l.words().Size, size.Holes, l.figure("%.1f mm", size.DiameterMm), l.words().Roles[string(size.Role)]))
	}
	for _, s := range l.Found.Shapes {
		if s.Role == trace.Port && !s.Round() {
			sizes = append(sizes, fmt.Sprintf(l.words().Opening, s.ID))
		}
	}
	return words.Row(sizes...)
}

// distances names the longest distance between two round holes and the longest
// one across it, so that a caliper can tell whether the scale is right.
func (l *layout) distances() string {
	var holes []trace.Shape
	for _, s := range l.Found.Shapes {
		if s.Round() && len(s.Doubts) == 0 && s.Role != trace.Bore && len(holes) < mostCompared {
			holes = append(holes, s)
		}
	}
	longest := func(score func(d geometry.Point) float64) (a, b trace.Shape) {
		most := -1.0
		for i, p := range holes {
			for _, q := range holes[i+1:] {
				if v := score(q.At.Sub(p.At)); v > most {
					a, b, most = p, q, v
				}
			}
		}
		return a, b
	}
	if len(holes) < 2 {
		return ""
	}
	words := func(a, b trace.Shape) string {
		return fmt.Sprintf(l.words().Distance, a.ID, b.ID, l.figure("%.1f", a.At.Distance(b.At)))
	}
	a, b := longest(func(d geometry.Point) float64 { return math.Hypot(d.X, d.Y) })
	along := b.At.Sub(a.At)
	// Two distances that are far from parallel tell the scale of both axes.
	c, d := longest(func(d geometry.Point) float64 { return math.Abs(along.X*d.Y - along.Y*d.X) })
	if c.ID == a.ID && d.ID == b.ID {
		return fmt.Sprintf(l.words().Caliper, words(a, b))
	}
	return fmt.Sprintf(l.words().Caliper, words(a, b)+", "+words(c, d))
}

// mostCompared bounds the holes whose distances are compared.
const mostCompared = 200
