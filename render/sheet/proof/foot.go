package proof

import (
	"fmt"
	"math"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/trace"
	"drawdown/render/font"
	"drawdown/render/scene"
)

// bar draws a bar of a round length of the part, to hold a rule against.
func (l *layout) bar() {
	y := l.frame.Bottom + 6
	length := 50.0
	for length*l.scale > l.width()-40 {
		length /= 2
	}
	for length*l.scale < shortestBar {
		length *= 2
	}
	x1, x2 := margin, margin+length*l.scale
	line := func(path scene.Path) { l.add(scene.Shape{Path: path, Stroke: scene.Black, Width: thin}) }
	line(segment(x1, y, x2, y))
	line(segment(x1, y-1.5, x1, y+1.5))
	line(segment(x2, y-1.5, x2, y+1.5))
	l.write(x2+3, y+1.1, textEm, scene.Bold, scene.Start, fmt.Sprintf(l.words().Bar, l.figure("%g", length)))
	l.lastY = y + 3
}

// foot explains the marks, gives the sizes, and names what is in doubt.
func (l *layout) foot() {
	y := l.lastY + line
	last := l.Page.Height - margin - 0.5
	room := int((last-y)/line) + 1
	w := l.words()
	lines := []string{w.Legend}
	lines = append(lines, l.sizes())
	if words := l.distances(); words != "" {
		lines = append(lines, words)
	}
	more := 0
	var doubts []string
	for _, d := range l.in.Found.Doubts {
		doubts = append(doubts, fmt.Sprintf(w.Look, l.in.Words.Say(d)))
	}
	for _, s := range l.in.Found.Shapes {
		for _, d := range s.Doubts {
			doubts = append(doubts, fmt.Sprintf(w.LookAt, s.ID, l.figure("%.1f mm", s.DiameterMm), l.in.Words.Say(d)))
		}
	}
	if l.in.Found.Specks > 0 {
		doubts = append(doubts, fmt.Sprintf(w.Specks, l.figure("%.1f", l.in.Found.SpeckMm), l.figure("%.1f", l.in.Found.SmallestMm), l.in.Found.Specks))
	}
	if l.lost > 0 {
		doubts = append([]string{fmt.Sprintf(w.NoRoom, l.lost)}, doubts...)
	}
	for _, d := range doubts {
		broken := font.Break(d, scene.Regular, textEm, l.width())
		if len(lines)+len(broken) > room-1 {
			more++
			continue
		}
		lines = append(lines, broken...)
	}
	if more > 0 {
		lines = append(lines, fmt.Sprintf(w.More, more))
	}
	for _, words := range lines[:min(len(lines), room)] {
		l.write(margin, y, textEm, scene.Regular, scene.Start, font.Fit(words, scene.Regular, textEm, l.width()))
		y += line
	}
}

// sizes lists the groups of holes: 6 bolt holes 8.4 mm; 2 dowels 6.0 mm.
func (l *layout) sizes() string {
	words := ""
	for g, mm := range l.in.Found.GroupsMm {
		n, role := 0, trace.Role("")
		for _, s := range l.in.Found.Shapes {
			if s.Group == g {
				n, role = n+1, s.Role
			}
		}
		if words != "" {
			words += " · "
		}
		words += fmt.Sprintf(l.words().Size, n, l.figure("%.1f mm", mm), l.words().Roles[string(role)])
	}
	for _, s := range l.in.Found.Shapes {
		if s.Role == trace.Port && !s.Round() {
			words += " · " + fmt.Sprintf(l.words().Opening, s.ID)
		}
	}
	return strings.TrimPrefix(words, " · ")
}

// distances names the longest distance between two round holes and the longest
// one across it, so that a caliper can tell whether the scale is right.
func (l *layout) distances() string {
	var holes []trace.Shape
	for _, s := range l.in.Found.Shapes {
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
