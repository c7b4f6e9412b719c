// Package scene is the display list that every backend paints: paths, and text
// that is already measured and broken, in millimetres from the top left of the
// page, y downwards. A scene knows nothing of bolts or file formats; a backend
// measures nothing and lays out nothing. It imports nothing of the project.
package scene

// Document is a run of pages that belong together.
type Document struct {
	Title    string
	Subject  string
	Language string // BCP 47 tag of the text
	Imprint  string // what the file says of itself to programs: ASCII without quotes, brackets and &; empty for nothing
	Pages    []Page
}

// Page is one sheet of paper.
type Page struct {
	Name   string // tells the pages of a document apart in file names
	Width  float64
	Height float64
	Margin float64 // nothing may be drawn nearer to the edge than this
	Items  []Item  // painted in this order

	Bookmarks []Bookmark // that lead to the page, where the format has them
	Imprint   string     // that of the document, where each page is a file
}

// Bookmark leads a reader at a screen to a page.
type Bookmark struct {
	Title string
	Level int // 0 for a part of the document, 1 for what is in it
}

// Item is a Shape or a Text.
type Item interface{ bounds() Box }

func (s Shape) bounds() Box { return s.Path.Bounds() }
func (t Text) bounds() Box  { return t.Box() }

// Point is a place on the page.
type Point struct{ X, Y float64 }

// Tag says what an item is: to the layout check, and to whoever shows a thing in
// another state, on paper or on a page. The zero tag is plain furniture.
type Tag struct {
	// Name joins the items that belong to one thing: a number and its mark may
	// touch, a number and another mark may not.
	Name string
	Role Role
	// Core is set on what shows the state of the thing: its mark, without a
	// ring about it, and the number that stands in it.
	Core bool
}

// Role is how the layout check treats an item.
type Role uint8

const (
	Furniture Role = iota // lines, panels, tints: text may lie on them
	Mark                  // a solid thing that no foreign text may touch
	Number                // a text that must lie in, or be led to, its own mark
	Trail                 // a line that text must keep clear of, ends and all
	Spot                  // a place that has a name
	Label                 // the name of a spot, which must stand with it
	Edge                  // the edge of a part: marks stand off it
	Hole                  // the edge of an opening: so do they, and what stands in it is its own
)

var roleNames = [...]string{Furniture: "", Mark: "mark", Number: "number", Trail: "trail", Spot: "spot", Label: "label", Edge: "edge", Hole: "hole"}

// String names the role; furniture has no name.
func (r Role) String() string { return roleNames[r] }

// Shape is a path, filled, stroked or both. Lines have round caps and joins.
type Shape struct {
	Path   Path
	Fill   Ink
	Stroke Ink
	Width  float64 // of the stroke
	Dash   float64 // length of dashes and gaps; 0 for a solid line
	Tag    Tag
}

// Weight is one of the two weights of the typeface.
type Weight uint8

const (
	Regular Weight = iota
	Bold
)

// Anchor is the part of a text that stands at its place.
type Anchor uint8

const (
	Start Anchor = iota
	Middle
	End
)

// Text is one line of type. Its place is on the baseline.
type Text struct {
	At      Point
	Size    float64 // em, in millimetres
	Width   float64 // measured advance, in millimetres
	Weight  Weight
	Anchor  Anchor
	Ink     Ink
	Upward  bool // turned a quarter anticlockwise: reads from below to above
	Content string
	Tag     Tag
}
