package scenetest

import (
	"bufio"
	"fmt"
	"io"
	"strconv"

	"drawdown/render/scene"
)

// Dump writes the document as plain text, one item per line, for golden files.
func Dump(w io.Writer, d scene.Document) error {
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, "document %q\n", d.Title)
	for _, page := range d.Pages {
		fmt.Fprintf(b, "page %s %s×%s margin %s\n", page.Name, num(page.Width), num(page.Height), num(page.Margin))
		for _, mark := range page.Bookmarks {
			fmt.Fprintf(b, "bookmark %d %q\n", mark.Level, mark.Title)
		}
		for _, it := range page.Items {
			switch it := it.(type) {
			case scene.Shape:
				dumpShape(b, it)
			case scene.Text:
				dumpText(b, it)
			}
		}
	}
	return b.Flush()
}

func dumpShape(b *bufio.Writer, s scene.Shape) {
	fmt.Fprintf(b, "shape fill=%s stroke=%s/%s", s.Fill, s.Stroke, num(s.Width))
	if s.Dash > 0 {
		fmt.Fprintf(b, " dash=%s", num(s.Dash))
	}
	dumpTag(b, s.Tag)
	for _, seg := range s.Path {
		b.WriteString(" " + string("MLCZ"[seg.Verb]))
		for _, q := range seg.Points() {
			b.WriteString(" " + num(q.X) + "," + num(q.Y))
		}
	}
	b.WriteByte('\n')
}

func dumpText(b *bufio.Writer, t scene.Text) {
	fmt.Fprintf(b, "text %s,%s size=%s width=%s", num(t.At.X), num(t.At.Y), num(t.Size), num(t.Width))
	if t.Weight == scene.Bold {
		b.WriteString(" bold")
	}
	if t.Anchor != scene.Start {
		b.WriteString([...]string{"", " middle", " end"}[t.Anchor])
	}
	if t.Upward {
		b.WriteString(" upward")
	}
	fmt.Fprintf(b, " %s", t.Ink)
	dumpTag(b, t.Tag)
	fmt.Fprintf(b, " %q\n", t.Content)
}

func dumpTag(b *bufio.Writer, t scene.Tag) {
	if t == (scene.Tag{}) {
		return
	}
	fmt.Fprintf(b, " [%s %s]", t.Role, t.Name)
}

func num(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
