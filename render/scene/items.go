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
			it.At = it.At.moved(by)
			out = append(out, it)
		}
	}
	return out
}

// Moved gives the path at another place.
func (p Path) Moved(by Point) Path {
	out := make(Path, len(p))
	for i, s := range p {
		for k := range s.P {
			s.P[k] = s.P[k].moved(by)
		}
		out[i] = s
	}
	return out
}

func (p Point) moved(by Point) Point { return Point{rounded(p.X + by.X), rounded(p.Y + by.Y)} }
