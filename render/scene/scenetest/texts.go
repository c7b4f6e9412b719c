package scenetest

import (
	"strings"

	"drawdown/render/scene"
)

// Texts returns the texts of pages in order.
func Texts(pages ...scene.Page) []scene.Text {
	var all []scene.Text
	for _, page := range pages {
		for _, it := range page.Items {
			if text, ok := it.(scene.Text); ok {
				all = append(all, text)
			}
		}
	}
	return all
}

// Said returns all text of pages in order, with a space around each line, to
// search for sentences across line ends.
func Said(pages ...scene.Page) string {
	var all strings.Builder
	all.WriteString(" ")
	for _, text := range Texts(pages...) {
		all.WriteString(text.Content + " ")
	}
	return all.String()
}
