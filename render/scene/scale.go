package scene

import "math"

// Scaled gives the page enlarged on a sheet of another size: everything on it
// grows by the same factor.
func Scaled(p Page, width, height, factor float64) Page {
	larger := func(q Point) Point { return Point{q.X * factor, q.Y * factor} }
	q := Page{Name: p.Name, Width: width, Height: height, Margin: p.Margin * factor, Bookmarks: p.Bookmarks}
	for _, it := range p.Items {
		switch it := it.(type) {
		case Shape:
			it.Path, it.Width, it.Dash = it.Path.Mapped(larger), it.Width*factor, it.Dash*factor
			q.Items = append(q.Items, it)
		case Text:
			size := math.Round(it.Size*factor*100) / 100
			it.At, it.Width, it.Size = Point{rounded(it.At.X * factor), rounded(it.At.Y * factor)}, it.Width*size/it.Size, size
			q.Items = append(q.Items, it)
		}
	}
	return q
}
