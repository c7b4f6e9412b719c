package scenetest

import "drawdown/render/scene"

// Texts gives the texts of pages, in their order.
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
