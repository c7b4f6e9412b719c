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
	inner := map[string]scene.Box{} // the mark itself is drawn last, inside its second ring
	for _, it := range items {
		if s, ok := it.(scene.Shape); ok && s.Tag.Role == scene.Mark {
			inner[s.Tag.Name] = s.Path.Bounds()
		}
	}
	out := make([]scene.Item, len(items))
	for k, it := range items {
		switch it := it.(type) {
		case scene.Shape:
			if look, known := looks[it.Tag.Name]; known && it.Tag.Role == scene.Mark && it.Path.Bounds() == inner[it.Tag.Name] {
				it.Fill = look.Fill
			}
			out[k] = it
		case scene.Text:
			if look, known := looks[it.Tag.Name]; known && it.Tag.Role == scene.Number && inner[it.Tag.Name].Holds(it.Box()) {
				it.Ink = look.Ink
			}
			out[k] = it
		}
	}
	return out
}
