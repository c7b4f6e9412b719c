package diagram

import "drawdown/render/scene"

// Look is how a mark and what stands in it are shown.
type Look struct {
	Fill scene.Ink // of the mark
	Ink  scene.Ink // of its number; where it stands outside the mark it stays black
}

// Relook gives the items of a drawing with the marks of some fasteners, by id,
// shown another way: to tell which are tight, or which to look at again.
func Relook(items []scene.Item, looks map[string]Look) []scene.Item {
	out := make([]scene.Item, len(items))
	for k, it := range items {
		switch it := it.(type) {
		case scene.Shape:
			if look, known := looks[it.Tag.Name]; known && it.Tag.Core {
				it.Fill = look.Fill
			}
			out[k] = it
		case scene.Text:
			if look, known := looks[it.Tag.Name]; known && it.Tag.Core {
				it.Ink = look.Ink
			}
			out[k] = it
		}
	}
	return out
}
