package page

import (
	"strings"
	"testing"

	"drawdown/patterns/patterntest"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/words"
	"drawdown/sequence/run"
)

// A word at a mark covers no other mark, and no word of the part if there is
// room (p4-head: except at the side bolts, where EXHAUST SIDE is below).
func TestWordHidesNothing(t *testing.T) {
	t.Parallel()
	j, err := JointOf(patterntest.Plan(t, "p4-head"), run.Tighten, words.English())
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range j.Marks {
		for _, word := range words.English().Page.Trouble.Short {
			most := strings.Count(m.ID, "F")
			if hidden := j.hiddenBy(roomOf(j, m, word, scene.NoBox), m.ID, scene.NoBox); hidden > most {
				t.Errorf("%q at %s hides %d", word, m.ID, hidden)
			}
		}
	}
}

// The figure of the next step has priority: beside M8, the word of M3,
// opposite, makes room for it.
func TestWordLeavesTheFigure(t *testing.T) {
	t.Parallel()
	j, err := JointOf(patterntest.Plan(t, "p4-head"), run.Tighten, words.English())
	if err != nil {
		t.Fatal(err)
	}
	at := map[string]Mark{}
	for _, m := range j.Marks {
		at[m.ID] = m
	}
	figure := scene.BoxAbout(scene.Point(*at["M8"].Beside), font.Width("+90°", scene.Bold, besideHeight), besideHeight)
	if roomOf(j, at["M3"], "unsure", figure).Meets(figure) {
		t.Error("the word stands over the figure")
	}
}

func roomOf(j Joint, m Mark, word string, figure scene.Box) scene.Box {
	at := j.wordSpot(m, word, figure)
	return scene.BoxAbout(scene.Point{X: at.X, Y: at.Y - 0.36*wordEm}, font.Width(word, scene.Bold, wordEm), wordEm)
}
