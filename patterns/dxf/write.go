package dxf

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry"
)

// textHeightMm is the height of text: small enough to fit in a hole.
const textHeightMm = 2.5

// Write writes a drawing in the text form of release 12, which every drawing
// program reads: circles, points, closed polylines and texts, in millimetres,
// each on its layer. Coordinates keep all their digits.
func Write(d Drawing) []byte {
	w := &writer{}
	w.head(d)
	w.groups("0 SECTION", "2 ENTITIES")
	for _, p := range d.Paths {
		w.path(p)
	}
	for _, c := range d.Circles {
		w.thing("CIRCLE", c.Layer, c.Centre)
		w.number(40, c.DiameterMm/2)
	}
	for _, p := range d.Points {
		w.thing("POINT", p.Layer, p.At)
	}
	for _, t := range d.Texts {
		w.text(t)
	}
	w.groups("0 ENDSEC", "0 EOF")
	return w.Bytes()
}

type writer struct{ bytes.Buffer }

// groups writes groups, each given as a code, a space and the value.
func (w *writer) groups(all ...string) {
	for _, group := range all {
		code, value, _ := strings.Cut(group, " ")
		fmt.Fprintf(w, "%3s\n%s\n", code, value)
	}
}

// number writes all digits, never with an exponent, which some programs cannot
// read.
func (w *writer) number(code int, v float64) {
	text := strconv.FormatFloat(v, 'f', -1, 64)
	if !strings.Contains(text, ".") {
		text += ".0"
	}
	fmt.Fprintf(w, "%3d\n%s\n", code, text)
}

func (w *writer) at(code int, p geometry.Point) {
	w.number(code, p.X)
	w.number(code+10, p.Y)
	w.number(code+20, 0)
}

func (w *writer) thing(kind, layer string, at geometry.Point) {
	w.groups("0 "+kind, "8 "+LayerName(layer))
	w.at(10, at)
}

func (w *writer) head(d Drawing) {
	box := geometry.Bounds(d.places())
	w.groups("0 SECTION", "2 HEADER", "9 $ACADVER", "1 AC1009", "9 $DWGCODEPAGE", "3 ANSI_1252", "9 $EXTMIN")
	w.at(10, box.Min)
	w.groups("9 $EXTMAX")
	w.at(10, box.Max)
	w.groups("9 $INSUNITS", "70 4", "9 $MEASUREMENT", "70 1", "0 ENDSEC") // millimetres, metric

	layers := d.layers()
	w.groups("0 SECTION", "2 TABLES")
	w.groups("0 TABLE", "2 LTYPE", "70 1", "0 LTYPE", "2 CONTINUOUS", "70 0", "3 Solid line", "72 65", "73 0", "40 0.0", "0 ENDTAB")
	w.groups("0 TABLE", "2 LAYER", fmt.Sprint("70 ", len(layers)))
	for _, name := range layers {
		w.groups("0 LAYER", "2 "+name, "70 0", "62 7", "6 CONTINUOUS") // 7: black on white, white on black
	}
	w.groups("0 ENDTAB")
	w.groups("0 TABLE", "2 STYLE", "70 1", "0 STYLE", "2 STANDARD", "70 0", "40 0.0", "41 1.0", "50 0.0", "71 0")
	w.number(42, textHeightMm)
	w.groups("3 txt", "4 ", "0 ENDTAB", "0 ENDSEC")
}

func (w *writer) path(p Path) {
	w.thing("POLYLINE", p.Layer, geometry.Point{})
	w.groups("66 1", "70 1") // closed
	for _, at := range p.Points {
		w.thing("VERTEX", p.Layer, at)
	}
	w.groups("0 SEQEND", "8 "+LayerName(p.Layer))
}

// text centres the text on its place.
func (w *writer) text(t Text) {
	width := textHeightMm * float64(len([]rune(t.Text))) // approximately
	w.thing("TEXT", t.Layer, t.At.Sub(geometry.Point{X: width / 2, Y: textHeightMm / 2}))
	w.number(40, textHeightMm)
	w.groups("1 "+plain(t.Text), "72 1")
	w.at(11, t.At)
	w.groups("73 2")
}

// plain writes non-ASCII letters as the format's escapes.
func plain(text string) string {
	var b strings.Builder
	for _, c := range text {
		switch {
		case c < ' ' || c == 0x7f:
			b.WriteByte(' ')
		case c < 0x7f:
			b.WriteRune(c)
		case c <= math.MaxUint16:
			fmt.Fprintf(&b, `\U+%04X`, c)
		default:
			b.WriteByte('?')
		}
	}
	return b.String()
}

// LongestLayer is the longest layer name in release 12, in letters.
const LongestLayer = 31

// LayerName makes a name of letters, digits, $, - and _, as release 12
// requires.
func LayerName(text string) string {
	name := strings.Map(func(c rune) rune {
		switch {
		case c >= 'a' && c <= 'z', c >= 'A' && c <= 'Z', c >= '0' && c <= '9', c == '-', c == '_', c == '$':
			return c
		}
		return '_'
	}, text)
	if name == "" {
		return "0"
	}
	return name[:min(len(name), LongestLayer)]
}

// layers lists the names of the layers as written, 0 first.
func (d Drawing) layers() []string {
	var names []string
	d.each(func(layer string, _ ...geometry.Point) { names = append(names, LayerName(layer)) })
	slices.Sort(names)
	names = slices.DeleteFunc(slices.Compact(names), func(name string) bool { return name == "0" })
	return append([]string{"0"}, names...)
}

// places returns points that give the extent of the drawing.
func (d Drawing) places() (all []geometry.Point) {
	d.each(func(_ string, reach ...geometry.Point) { all = append(all, reach...) })
	return all
}

// each passes on all things: their layers, and points that give their extent.
func (d Drawing) each(take func(layer string, reach ...geometry.Point)) {
	for _, p := range d.Paths {
		take(p.Layer, p.Points...)
	}
	for _, c := range d.Circles {
		r := geometry.Point{X: c.DiameterMm / 2, Y: c.DiameterMm / 2}
		take(c.Layer, c.Centre.Sub(r), c.Centre.Add(r))
	}
	for _, p := range d.Points {
		take(p.Layer, p.At)
	}
	for _, t := range d.Texts {
		take(t.Layer, t.At)
	}
}
