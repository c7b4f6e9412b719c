package scene

// Bounds is the room that items take.
func Bounds(items []Item) Box {
	b := NoBox
	for _, it := range items {
		switch it := it.(type) {
		case Shape:
			b = b.Union(it.Path.Bounds())
		case Text:
			b = b.Union(it.Box())
		}
	}
	return b
}

// Moved gives items at another place.
func Moved(items []Item, by Point) []Item {
	var out []Item
	for _, it := range items {
		switch it := it.(type) {
		case Shape:
			it.Path = it.Path.Moved(by)
			out = append(out, it)
		case Text:
			it.At = Point{rounded(it.At.X + by.X), rounded(it.At.Y + by.Y)}
			out = append(out, it)
		}
	}
	return out
}

// Moved gives the path at another place.
func (p Path) Moved(by Point) Path {
	return p.Mapped(func(q Point) Point { return Point{q.X + by.X, q.Y + by.Y} })
}

// Mapped gives the path with each of its points brought elsewhere.
func (p Path) Mapped(to func(Point) Point) Path {
	out := make(Path, len(p))
	for i, s := range p {
		for k := range s.P {
			q := to(s.P[k])
			s.P[k] = Point{rounded(q.X), rounded(q.Y)}
		}
		out[i] = s
	}
	return out
}
