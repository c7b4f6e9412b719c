package scenetest

import (
	"strings"

	"drawdown/render/scene"
)

// Texts returns the texts of pages, in their order.
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

// Said returns all that stands on pages, in their order, with blanks about each
// line, so that sentences can be looked for across the ends of lines.
func Said(pages ...scene.Page) string {
	var all strings.Builder
	all.WriteString(" ")
	for _, text := range Texts(pages...) {
		all.WriteString(text.Content + " ")
	}
	return all.String()
}
