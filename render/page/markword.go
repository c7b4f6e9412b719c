package page

import (
	"drawdown/render/font"
	"drawdown/render/scene"
)

const (
	wordEm  = 3.8 // of a word at a mark, in millimetres
	wordGap = 0.2 // between it and other things
)

// wordSpot finds the position of a word at a mark: below, above or beside it,
// where it covers no other mark and no word of the part. Otherwise it takes the
// position that covers least. The figure of the next step has priority.
func (j Joint) wordSpot(m Mark, word string, figure scene.Box) Spot {
	width := font.Width(word, scene.Bold, wordEm) + 2*wordGap
	const height = wordEm + 2*wordGap
	down, up := 1.05*m.R+height/2, 1.4*m.R+height/2 // its triangle is above it
	across := 1.1*m.R + width/2
	ways := []Spot{
		{0, down}, {0, -up}, {-across, 0}, {across, m.R / 2}, {-width / 3, down}, {width / 3, down}, {-across, m.R / 2}, {across, -m.R / 2}, {m.R/10 - width/2, -(1.02*m.R + height/2)}, // beside its triangle
	}
	best, least := Spot{}, -1
	for _, way := range ways {
		room := scene.BoxAbout(scene.Point{X: m.X + way.X, Y: m.Y + way.Y}, width, height)
		if hidden := j.hiddenBy(room, m.ID, figure); least < 0 || hidden < least {
			best, least = way, hidden
		}
	}
	return Spot{scene.Rounded(m.X + best.X), scene.Rounded(m.Y + best.Y + 0.36*wordEm)}
}

// hiddenBy counts what a word in a box covers. A mark counts as several words
// of the part, and being cut off as a mark.
func (j Joint) hiddenBy(room scene.Box, but string, figure scene.Box) int {
	const mark = 5
	hidden := 0
	if !j.seen.Holds(room) {
		hidden += mark
	}
	if figure.Meets(room) {
		hidden += mark
	}
	for _, m := range j.Marks {
		if m.ID != but && m.meets(room) {
			hidden += mark
		}
	}
	for _, label := range j.labels {
		if label.Meets(room) {
			hidden++
		}
	}
	return hidden
}
