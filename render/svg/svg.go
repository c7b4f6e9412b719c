// Package svg writes one page of a scene as a self-contained SVG picture in
// millimetres. No font is embedded: each line of text carries its measured
// length, so that it fits in any typeface. It may import scenes and type.
package svg

import (
	"bufio"
	"encoding/base64"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"drawdown/render/font"
	"drawdown/render/scene"
)

// Write writes the page. What belongs to a fastener carries its id as data-id,
// what it is as data-role (mark, number, trail), and data-core where it shows
// the fastener's state: the mark without the ring about it, and a number in it.
func Write(w io.Writer, page scene.Page) error {
	if err := font.Check(page); err != nil {
		return err
	}
	b := bufio.NewWriter(w)
	width, height := num(page.Width), num(page.Height)
	fmt.Fprintf(b, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s" role="img">`+"\n", width, height, width, height)
	if page.Name != "" {
		b.WriteString("<title>")
		escape(b, page.Name)
		b.WriteString("</title>\n")
	}
	if page.Imprint != "" {
		b.WriteString("<metadata>")
		escape(b, page.Imprint)
		b.WriteString("</metadata>\n")
	}
	fmt.Fprintf(b, `<rect width="%s" height="%s" fill="%s"/>`+"\n", width, height, hex(scene.White))
	// Without the Go fonts, faces of about their widths serve: a viewer that leaves
	// textLength out then still keeps the words in their places.
	b.WriteString(`<g fill="none" stroke-linecap="round" stroke-linejoin="round" font-family="Go, Arial, 'Liberation Sans', Helvetica, sans-serif" xml:space="preserve">` + "\n")
	photos(b, page.Photos)
	items(b, page.Items)
	b.WriteString("</g>\n</svg>\n")
	return b.Flush()
}

// WriteInline writes the page as an element of an HTML page that gives it its
// size.
func WriteInline(w io.Writer, page scene.Page, label string) error {
	if err := font.Check(page); err != nil {
		return err
	}
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, `<svg viewBox="0 0 %s %s" role="img" aria-label="`, num(page.Width), num(page.Height))
	escape(b, label)
	b.WriteString(`"><g fill="none" stroke-linecap="round" stroke-linejoin="round" font-family="Go, Arial, 'Liberation Sans', Helvetica, sans-serif">` + "\n")
	photos(b, page.Photos)
	items(b, page.Items)
	b.WriteString("</g></svg>\n")
	return b.Flush()
}

// WriteItems writes items as the elements of a picture that the caller opens and
// closes.
func WriteItems(w io.Writer, list []scene.Item) error {
	b := bufio.NewWriter(w)
	items(b, list)
	return b.Flush()
}

// photos writes pictures into the file itself.
func photos(b *bufio.Writer, list []scene.Photo) {
	for _, photo := range list {
		b.WriteString("<image")
		attribute(b, "x", num(photo.Box.Left))
		attribute(b, "y", num(photo.Box.Top))
		attribute(b, "width", num(photo.Box.Right-photo.Box.Left))
		attribute(b, "height", num(photo.Box.Bottom-photo.Box.Top))
		attribute(b, "preserveAspectRatio", "none")
		attribute(b, "href", "data:image/jpeg;base64,"+base64.StdEncoding.EncodeToString(photo.JPEG))
		b.WriteString("/>\n")
	}
}

func items(b *bufio.Writer, list []scene.Item) {
	for _, it := range list {
		switch it := it.(type) {
		case scene.Shape:
			shape(b, it)
		case scene.Text:
			text(b, it)
		}
	}
}

func tag(b *bufio.Writer, t scene.Tag) {
	if t.Role == scene.Furniture || t.Name == "" {
		return
	}
	attribute(b, "data-role", t.Role.String())
	b.WriteString(` data-id="`)
	escape(b, t.Name)
	b.WriteByte('"')
	if t.Core {
		attribute(b, "data-core", "")
	}
}

func shape(b *bufio.Writer, s scene.Shape) {
	if len(s.Path) == 0 || s.Fill == scene.None && s.Stroke == scene.None {
		return
	}
	b.WriteString(`<path d="` + Path(s.Path) + `"`)
	if s.Fill != scene.None {
		attribute(b, "fill", hex(s.Fill))
	}
	if s.Stroke != scene.None {
		attribute(b, "stroke", hex(s.Stroke))
		attribute(b, "stroke-width", num(s.Width))
		if s.Dash > 0 {
			attribute(b, "stroke-dasharray", num(s.Dash))
		}
	}
	tag(b, s.Tag)
	b.WriteString("/>\n")
}

// Path returns a path as the d of a path element.
func Path(p scene.Path) string {
	var d strings.Builder
	for _, seg := range p {
		d.WriteByte("MLCZ"[seg.Verb])
		for i, q := range seg.Points() {
			if i > 0 {
				d.WriteByte(' ')
			}
			d.WriteString(num(q.X) + "," + num(q.Y))
		}
	}
	return d.String()
}

var anchors = [...]string{scene.Start: "start", scene.Middle: "middle", scene.End: "end"}

func text(b *bufio.Writer, t scene.Text) {
	if t.Ink == scene.None || t.Content == "" {
		return
	}
	x, y := num(t.At.X), num(t.At.Y)
	b.WriteString("<text")
	attribute(b, "x", x)
	attribute(b, "y", y)
	attribute(b, "font-size", num(t.Size))
	if t.Weight == scene.Bold {
		attribute(b, "font-weight", "bold")
	}
	if t.Anchor != scene.Start {
		attribute(b, "text-anchor", anchors[t.Anchor])
	}
	if t.Width > 0 {
		attribute(b, "textLength", num(t.Width))
		attribute(b, "lengthAdjust", "spacingAndGlyphs")
	}
	attribute(b, "fill", hex(t.Ink))
	if t.Upward {
		attribute(b, "transform", "rotate(-90 "+x+" "+y+")")
	}
	tag(b, t.Tag)
	b.WriteByte('>')
	escape(b, t.Content)
	b.WriteString("</text>\n")
}

// attribute writes an attribute whose value needs no escaping.
func attribute(b *bufio.Writer, name, value string) {
	b.WriteString(" " + name + `="` + value + `"`)
}

// escape writes a line as XML text. The writer keeps its error until the end.
func escape(b *bufio.Writer, s string) {
	_ = xml.EscapeText(b, []byte(font.Clean(s)))
}

// num prints a length to 1/1000 mm at most.
func num(v float64) string {
	// Adding zero turns a negative zero into a plain one.
	return strconv.FormatFloat(math.Round(v*1000)/1000+0, 'f', -1, 64)
}

func hex(k scene.Ink) string {
	r, g, b := k.RGB()
	return fmt.Sprintf("#%02x%02x%02x", r, g, b)
}
