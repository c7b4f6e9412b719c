// Package sheettest has what the tests of all sheets share: papers, languages,
// requests, and the check of a layout. Only tests import it.
package sheettest

import (
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/render/scene"
	"drawdown/render/scene/scenetest"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/render/words/wordstest"
)

// Papers are all papers, each upright and on its side.
func Papers() []sheet.Paper {
	var all []sheet.Paper
	for _, upright := range sheet.Papers {
		all = append(all, upright, upright.Landscape())
	}
	return all
}

// Paper finds a paper by its name.
func Paper(t testing.TB, name string) sheet.Paper {
	t.Helper()
	paper, err := sheet.FindPaper(name)
	if err != nil {
		t.Fatal(err)
	}
	return paper
}

// Language finds the words of a language.
func Language(t testing.TB, tag string) *words.Catalogue {
	t.Helper()
	language, err := words.Find(tag)
	if err != nil {
		t.Fatal(err)
	}
	return language
}

// English asks for a sheet in English.
func English(paper sheet.Paper) sheet.Request {
	return sheet.Request{Paper: paper, Words: words.English()}
}

// InTurn gives all papers, upright and on their sides. A plain run takes each of
// so many, so that as many parts, one a turn, meet all.
func InTurn(turn, each int) []sheet.Paper {
	var some []sheet.Paper
	for k, paper := range Papers() {
		if testkit.Full() || (k+turn)%each == 0 {
			some = append(some, paper)
		}
	}
	return some
}

// Requests ask for a sheet on every paper, upright and on its side, in every
// language. A plain run takes two of them a turn: eight parts, one a turn, meet each
// paper in each language, and sixteen both ways.
func Requests(turn int) []sheet.Request {
	var all []sheet.Request
	for k, upright := range sheet.Papers {
		for side, paper := range []sheet.Paper{upright, upright.Landscape()} {
			for n, language := range wordstest.All() {
				again := turn / 2 // every other paper a turn
				inTurn := (k+turn)%2 == 0 && (again+turn%2+k/2*2)%len(words.Languages()) == n && (again/len(words.Languages())+k/2)%2 == side
				if testkit.Full() || inTurn {
					all = append(all, sheet.Request{Paper: paper, Words: language})
				}
			}
		}
	}
	return all
}

// Check reports every fault of a document's layout.
func Check(t testing.TB, what string, ask sheet.Request, pages []scene.Page) {
	t.Helper()
	for _, page := range pages {
		for _, fault := range scenetest.CheckLayout(page) {
			t.Errorf("%s on %s, %g wide, in %s: %s", what, ask.Paper.Name, ask.Paper.Width, ask.Words.Language, fault)
		}
	}
}
