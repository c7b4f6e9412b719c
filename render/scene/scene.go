// Package scene is the display list that every backend paints: paths, and text
// that is already measured and broken, in millimetres from the top left of the
// page, y downwards. A scene knows nothing of bolts or file formats; a backend
// measures nothing and lays out nothing. It imports nothing of the project.
package scene

// Document is a sequence of pages that belong together.
type Document struct {
	Title    string
	Subject  string
	Language string // BCP 47 tag of the text
	Imprint  string // metadata about the program: ASCII without quotes, brackets and &; "" for none
	Pages    []Page
}

// Page is one sheet of paper.
type Page struct {
	Name   string // distinguishes the pages of a document in file names
	Width  float64
	Height float64
	Margin float64 // nothing may be drawn closer to the edge than this
	Items  []Item  // painted in this order
	Photos []Photo // painted below the items

	Bookmarks []Bookmark // that lead to the page, if the format has bookmarks
	Imprint   string     // that of the document, if each page is a file
}

// Photo is a picture on a page: a baseline JPEG, stretched to its box. PDF and SVG show
// it; the palette of PNG and GIF has no room for it.
type Photo struct {
	Box  Box
	JPEG []byte
}

// Bookmark leads to a page on screen.
type Bookmark struct {
	Title string
	Level int // 0 for a part of the document, 1 for an entry in it
}

// Item is a Shape or a Text.
type Item interface{ bounds() Box }

func (s Shape) bounds() Box { return s.Path.Bounds() }
func (t Text) bounds() Box  { return t.Box() }

// Point is a position on the page.
type Point struct{ X, Y float64 }

// Tag says what an item is: for the layout check, and for showing a thing in
// another state, on paper or on a page. The zero tag is plain furniture.
type Tag struct {
	// Name connects the items of one thing: a number and its mark may touch, a
	// number and another mark may not.
	Name string
	Role Role
	// Core marks the items that show the state of the thing: its mark, without
	// a ring around it, and the number in it.
	Core bool
}

// Role is how the layout check treats an item.
type Role uint8

const (
	Furniture Role = iota // lines, panels, tints: text may be on them
	Mark                  // a solid thing that no other text may touch
	Number                // a text that must be in its own mark, or connected to it
	Trail                 // a line that text must keep clear of, ends included
	Spot                  // a place with a name
	Label                 // the name of a spot, which must be close to it
	Edge                  // the edge of a part: marks keep clear of it
	Hole                  // the edge of an opening: marks keep clear of it, and only its own text may be inside
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

// Anchor is the part of a text that is at its position.
type Anchor uint8

const (
	Start Anchor = iota
	Middle
	End
)

// Text is one line of type. Its position is on the baseline.
type Text struct {
	At      Point
	Size    float64 // em, in millimetres
	Width   float64 // measured advance, in millimetres
	Weight  Weight
	Anchor  Anchor
	Ink     Ink
	Upward  bool // turned a quarter anticlockwise: reads from bottom to top
	Content string
	Tag     Tag
}
