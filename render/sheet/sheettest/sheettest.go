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

// Requests ask for a sheet on every paper, upright and on its side, in every
// language. A plain run takes a quarter of them, by turns: each paper in one
// language, so that four parts, one a turn, meet each paper in each language.
func Requests(turn int) []sheet.Request {
	var all []sheet.Request
	for k, paper := range Papers() {
		for n, language := range wordstest.All() {
			if testkit.Full() || (k+turn)%len(words.Languages()) == n {
				all = append(all, sheet.Request{Paper: paper, Words: language})
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
