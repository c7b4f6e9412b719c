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
	return scene.Mapped(items, func(s scene.Shape) scene.Shape {
		if look, known := looks[s.Tag.Name]; known && s.Tag.Core {
			s.Fill = look.Fill
		}
		return s
	}, func(t scene.Text) scene.Text {
		if look, known := looks[t.Tag.Name]; known && t.Tag.Core {
			t.Ink = look.Ink
		}
		return t
	})
}
