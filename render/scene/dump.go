package scene

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
)

var inkNames = [Inks]string{"none", "black", "grey", "accent", "shade", "tint", "white"}

// String names the ink as the text dump does.
func (k Ink) String() string { return inkNames[k] }

var roleNames = [...]string{"", "mark", "number", "trail"}

// Dump writes the document as plain text, one item a line, for golden files.
func Dump(w io.Writer, d Document) error {
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, "document %q\n", d.Title)
	for _, page := range d.Pages {
		fmt.Fprintf(b, "page %s %s×%s margin %s\n", page.Name, num(page.Width), num(page.Height), num(page.Margin))
		for _, mark := range page.Bookmarks {
			fmt.Fprintf(b, "bookmark %d %q\n", mark.Level, mark.Title)
		}
		for _, it := range page.Items {
			switch it := it.(type) {
			case Shape:
				dumpShape(b, it)
			case Text:
				dumpText(b, it)
			}
		}
	}
	return b.Flush()
}

func dumpShape(b *bufio.Writer, s Shape) {
	fmt.Fprintf(b, "shape fill=%s stroke=%s/%s", s.Fill, s.Stroke, num(s.Width))
	if s.Dash > 0 {
		fmt.Fprintf(b, " dash=%s", num(s.Dash))
	}
	dumpTag(b, s.Tag)
	for _, seg := range s.Path {
		b.WriteString(" " + string("MLCZ"[seg.Verb]))
		for i := range pointCount[seg.Verb] {
			b.WriteString(" " + num(seg.P[i].X) + "," + num(seg.P[i].Y))
		}
	}
	b.WriteByte('\n')
}

var pointCount = [...]int{Move: 1, Line: 1, Curve: 3, Close: 0}

func dumpText(b *bufio.Writer, t Text) {
	fmt.Fprintf(b, "text %s,%s size=%s width=%s", num(t.At.X), num(t.At.Y), num(t.Size), num(t.Width))
	if t.Weight == Bold {
		b.WriteString(" bold")
	}
	if t.Anchor != Start {
		b.WriteString([...]string{"", " middle", " end"}[t.Anchor])
	}
	if t.Upward {
		b.WriteString(" upward")
	}
	fmt.Fprintf(b, " %s", t.Ink)
	dumpTag(b, t.Tag)
	fmt.Fprintf(b, " %q\n", t.Content)
}

func dumpTag(b *bufio.Writer, t Tag) {
	if t == (Tag{}) {
		return
	}
	fmt.Fprintf(b, " [%s %s]", roleNames[t.Role], t.Name)
}

func num(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
