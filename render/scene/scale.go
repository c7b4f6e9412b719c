package scene

import "math"

// Scaled gives the page enlarged on a sheet of another size: everything on it
// grows by the same factor.
func Scaled(p Page, width, height, factor float64) Page {
	q := Page{Name: p.Name, Width: width, Height: height, Margin: p.Margin * factor, Bookmarks: p.Bookmarks}
	for _, it := range p.Items {
		switch it := it.(type) {
		case Shape:
			q.Items = append(q.Items, scaledShape(it, factor))
		case Text:
			size := math.Round(it.Size*factor*100) / 100
			it.At, it.Width, it.Size = scaledPoint(it.At, factor), it.Width*size/it.Size, size
			q.Items = append(q.Items, it)
		}
	}
	return q
}

func scaledShape(s Shape, factor float64) Shape {
	path := make(Path, len(s.Path))
	for i, seg := range s.Path {
		for k := range seg.P {
			seg.P[k] = scaledPoint(seg.P[k], factor)
		}
		path[i] = seg
	}
	s.Path, s.Width, s.Dash = path, s.Width*factor, s.Dash*factor
	return s
}

func scaledPoint(p Point, factor float64) Point {
	return Point{rounded(p.X * factor), rounded(p.Y * factor)}
}
