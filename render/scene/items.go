package scene

// Bounds is the bounding box of items.
func Bounds(items []Item) Box {
	b := NoBox
	for _, it := range items {
		b = b.Union(it.bounds())
	}
	return b
}

// Mapped returns items changed by a function for their kind.
func Mapped(items []Item, shape func(Shape) Shape, text func(Text) Text) []Item {
	var out []Item
	for _, it := range items {
		switch it := it.(type) {
		case Shape:
			out = append(out, shape(it))
		case Text:
			out = append(out, text(it))
		}
	}
	return out
}

// Moved returns items shifted by an offset.
func Moved(items []Item, by Point) []Item {
	return Mapped(items, func(s Shape) Shape {
		s.Path = s.Path.Moved(by)
		return s
	}, func(t Text) Text {
		t.At = Point{t.At.X + by.X, t.At.Y + by.Y}.rounded()
		return t
	})
}

// Renamed returns items whose things have other names, so that the same things
// can be on one page several times.
func Renamed(items []Item, behind string) []Item {
	rename := func(t Tag) Tag {
		if t.Name != "" {
			t.Name += behind
		}
		return t
	}
	return Mapped(items, func(s Shape) Shape {
		s.Tag = rename(s.Tag)
		return s
	}, func(t Text) Text {
		t.Tag = rename(t.Tag)
		return t
	})
}

// Scaled returns the page enlarged on a sheet of another size: everything grows
// by the same factor.
func Scaled(p Page, width, height, factor float64) Page {
	larger := func(q Point) Point { return Point{q.X * factor, q.Y * factor} }
	items := Mapped(p.Items, func(s Shape) Shape {
		s.Path, s.Width, s.Dash = s.Path.Mapped(larger), s.Width*factor, s.Dash*factor
		return s
	}, func(t Text) Text {
		size := Rounded(t.Size * factor)
		t.At, t.Width, t.Size = larger(t.At).rounded(), t.Width*size/t.Size, size
		return t
	})
	var photos []Photo
	for _, photo := range p.Photos {
		b := photo.Box
		photo.Box = Box{b.Left * factor, b.Top * factor, b.Right * factor, b.Bottom * factor}
		photos = append(photos, photo)
	}
	return Page{Name: p.Name, Width: width, Height: height, Margin: p.Margin * factor, Items: items, Photos: photos, Bookmarks: p.Bookmarks}
}

// Moved returns the path shifted by an offset.
func (p Path) Moved(by Point) Path {
	return p.Mapped(func(q Point) Point { return Point{q.X + by.X, q.Y + by.Y} })
}

// Mapped returns the path with each of its points mapped.
func (p Path) Mapped(to func(Point) Point) Path {
	out := make(Path, len(p))
	for i, s := range p {
		for k := range s.P {
			s.P[k] = to(s.P[k]).rounded()
		}
		out[i] = s
	}
	return out
}
