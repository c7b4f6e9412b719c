package card_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/patterns"
	"drawdown/render/font"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/sheet/card"
	"drawdown/render/sheet/sheettest"
	"drawdown/render/words"
)

// chalked is a cover with holes numbered in chalk around the edge, the two
// large ones in the middle last.
const chalked = `drawdown: 1
title: Oil pump cover
machine: Fernhollow P4 pump engine
date: 2026-05-04
kinds:
  M8 middle: {thread: M8, class: "8.8", lubricant: dry, hole: 8.4 mm}
  M6 cover: {thread: M6, class: "8.8", lubricant: dry, hole: 6.6 mm}
fasteners:
  - {id: "1", mark: "1", at: [0, 0], kind: M6 cover}
  - {id: "2", mark: "2", at: [62, 0], kind: M6 cover}
  - {id: "3", mark: "3", at: [128, -8], kind: M6 cover}
  - {id: "4", mark: "4", at: [196, -3], kind: M6 cover}
  - {id: "5", mark: "5", at: [234, 47], kind: M6 cover}
  - {id: "6", mark: "6", at: [232, 107], kind: M6 cover}
  - {id: "7", mark: "7", at: [196, 152], kind: M6 cover}
  - {id: "8", mark: "8", at: [128, 160], kind: M6 cover}
  - {id: "9", mark: "9", at: [63, 157], kind: M6 cover}
  - {id: "10", mark: "10", at: [9, 152], kind: M6 cover}
  - {id: "11", mark: "11", at: [-26, 105], kind: M6 cover}
  - {id: "12", at: [-26, 49], kind: M6 cover}
  - {id: "13", mark: A, at: [90, 80], kind: M8 middle}
  - {id: "14", mark: B, at: [154, 73], kind: M8 middle}
tighten:
  stages:
    - {of: [M8 middle], torque: 10 N·m}
    - {of: [M8 middle], torque: 20 N·m}
    - {of: [M6 cover], torque: 4.5 N·m}
    - {of: [M6 cover], torque: 9 N·m}
  source: engine manual
`

// First principles: the chalk mark on the part is shown small beside the number
// of the order, on both sides. A hole without a mark has none on the card
// either, because a number from drawdown would look like one.
func TestMarksStandOnTheCard(t *testing.T) {
	t.Parallel()
	p := planOf(t, chalked)
	for _, side := range []card.Sides{card.TightenSide, card.LoosenSide} {
		document, _ := card.Document(p, side, sheettest.English(sheettest.Paper(t, "a4")))
		var small []string
		said := false
		for _, text := range scenetest.Texts(document.Pages...) {
			if text.Tag.Role == scene.Number && text.Weight == scene.Regular {
				small = append(small, text.Content)
			}
			said = said || strings.Contains(text.Content, "Small number: mark on the part.")
		}
		slices.Sort(small)
		if got, want := strings.Join(small, " "), "1 10 11 2 3 4 5 6 7 8 9 A B"; got != want || !said {
			t.Errorf("%s: small numbers %s, want %s; said in the caption: %v", side, got, want, said)
		}
	}
}

// If a caption does not fit on the part, the tick grid names its second numbers
// in full.
func TestSmallNumbersHaveAShortName(t *testing.T) {
	t.Parallel()
	const room = 9*3.5 - 3 // of the column that names the stages
	for _, tag := range words.Languages() {
		w := sheettest.Language(t, tag).Card.Part
		for _, name := range []string{w.Cast, w.Mark, w.Tightening} {
			if got := font.Width(name, scene.Regular, sheet.Papers[1].TextEm); got > room {
				t.Errorf("%s: %q is %.1f mm wide, over %.1f", tag, name, got, room)
			}
		}
	}
}

// No caption is shortened, however long, and no stage box breaks off its
// numbers.
func TestCaptionAndStagesAreWhole(t *testing.T) {
	t.Parallel()
	cast := strings.NewReplacer(`mark: A`, "cast: 13", `mark: B`, "cast: 14", `mark: "`, `cast: "`).Replace(chalked)
	for k := range 12 {
		cast = strings.Replace(cast, fmt.Sprintf(`cast: "%d"`, k+1), fmt.Sprintf("cast: %d", k+1), 1)
	}
	for n, text := range []string{chalked, cast} {
		p := planOf(t, text)
		for m, tag := range words.Languages() {
			for _, paper := range sheettest.InTurn(2*n+m, 8) {
				w := sheettest.Language(t, tag)
				document, _ := card.Document(p, card.BothSides, sheet.Request{Paper: paper, Words: w})
				first := 0
				for _, page := range document.Pages {
					for _, fault := range scenetest.CheckLayout(page) {
						t.Errorf("%s on %s, %g wide: %s", tag, paper.Name, paper.Width, fault)
					}
				}
				for _, text := range scenetest.Texts(document.Pages...) {
					if strings.HasSuffix(text.Content, "…") && !wholeLine(text, paper) {
						t.Errorf("%s on %s, %g wide: %q is cut off", tag, paper.Name, paper.Width, text.Content)
					}
					if strings.HasSuffix(" "+text.Content, " 1–2") {
						first++
					}
				}
				if first != 2 {
					t.Errorf("%s on %s, %g wide: %d stage boxes end with 1–2, want 2", tag, paper.Name, paper.Width, first)
				}
			}
		}
	}
}

// The number to write down is the one on the part and in the order of this
// side, not the one of the other side.
func TestWriteItsNumber(t *testing.T) {
	t.Parallel()
	for _, p := range []string{chalked, "p4-head"} {
		document, _ := card.Document(planOf(t, p), card.LoosenSide, sheettest.English(sheettest.Paper(t, "a4")))
		found := false
		for _, text := range scenetest.Texts(document.Pages...) {
			found = found || strings.HasPrefix(text.Content, "Write its number here")
		}
		if !found {
			t.Error("the loosening card does not say which number to write")
		}
	}
}

// First principles: ids on varying sides of their marks can be taken for those
// of the neighbours. On a card all are on one side, or there are none.
func TestNamesStandOnOneSide(t *testing.T) {
	t.Parallel()
	named := 0
	for n, name := range patterns.Builtin() {
		p := planOf(t, name)
		for _, paper := range sheettest.InTurn(n, 4) {
			document, _ := card.Document(p, card.TightenSide, sheettest.English(paper))
			for _, page := range document.Pages {
				if sides, n := sidesOfSmall(page); n > 0 {
					named++
					if len(sides) == 0 {
						t.Errorf("%s on %s, %g wide: page %s: %d ids stand on different sides", name, paper.Name, paper.Width, page.Name, n)
					}
				}
			}
		}
	}
	if named < testkit.Samples(10, 40) {
		t.Errorf("only %d drawings have ids", named) // value from our own output: 11 parts, 4 or 8 papers
	}
}

// sidesOfSmall returns the sides of their marks on which all small numbers of a
// page are, and how many there are.
func sidesOfSmall(page scene.Page) (common []string, count int) {
	marks, middle := map[string]scene.Point{}, scene.Point{}
	for _, it := range page.Items {
		if shape, ok := it.(scene.Shape); ok && shape.Tag.Role == scene.Mark && shape.Tag.Core {
			marks[shape.Tag.Name] = shape.Path.Bounds().Centre()
		}
	}
	for _, at := range marks {
		middle.X += at.X / float64(len(marks))
		middle.Y += at.Y / float64(len(marks))
	}
	common = []string{"above", "below", "left", "right", "in", "out"}
	for _, text := range scenetest.Texts(page) {
		at, marked := marks[text.Tag.Name]
		if text.Tag.Role != scene.Number || text.Tag.Core || !marked {
			continue
		}
		count++
		c := text.Box().Centre()
		x, y := c.X-at.X, c.Y-at.Y
		out := x*(at.X-middle.X) + y*(at.Y-middle.Y)
		on := map[string]bool{
			"above": y < 0 && -y > math.Abs(x), "below": y > 0 && y > math.Abs(x),
			"left": x < 0 && -x > math.Abs(y), "right": x > 0 && x > math.Abs(y), "in": out < 0, "out": out > 0,
		}
		common = slices.DeleteFunc(common, func(side string) bool { return !on[side] })
	}
	return common, count
}
