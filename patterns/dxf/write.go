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

// textHeightMm is the height of writing: small enough to stand in a hole.
const textHeightMm = 2.5

// Write makes a drawing in the text form of release 12, which every program
// for drawings reads: circles, points, closed polylines and texts, in
// millimetres, each on its layer. Places are written with all their digits.
func Write(d Drawing) []byte {
	w := &writer{}
	w.head(d)
	w.group(0, "SECTION")
	w.group(2, "ENTITIES")
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
	w.group(0, "ENDSEC")
	w.group(0, "EOF")
	return w.Bytes()
}

type writer struct{ bytes.Buffer }

func (w *writer) group(code int, value string) { fmt.Fprintf(w, "%3d\n%s\n", code, value) }

func (w *writer) whole(code, value int) { w.group(code, strconv.Itoa(value)) }

// number writes all digits, and never an exponent, which not all programs read.
func (w *writer) number(code int, v float64) {
	text := strconv.FormatFloat(v, 'f', -1, 64)
	if !strings.Contains(text, ".") {
		text += ".0"
	}
	w.group(code, text)
}

func (w *writer) at(code int, p geometry.Point) {
	w.number(code, p.X)
	w.number(code+10, p.Y)
	w.number(code+20, 0)
}

func (w *writer) thing(kind, layer string, at geometry.Point) {
	w.group(0, kind)
	w.group(8, LayerName(layer))
	w.at(10, at)
}

func (w *writer) head(d Drawing) {
	box := geometry.Bounds(d.places())
	w.group(0, "SECTION")
	w.group(2, "HEADER")
	w.group(9, "$ACADVER")
	w.group(1, "AC1009")
	w.group(9, "$DWGCODEPAGE")
	w.group(3, "ANSI_1252")
	w.group(9, "$EXTMIN")
	w.at(10, box.Min)
	w.group(9, "$EXTMAX")
	w.at(10, box.Max)
	w.group(9, "$INSUNITS")
	w.whole(70, 4) // millimetres
	w.group(9, "$MEASUREMENT")
	w.whole(70, 1) // metric
	w.group(0, "ENDSEC")

	layers := d.layers()
	w.group(0, "SECTION")
	w.group(2, "TABLES")
	w.table("LTYPE", 1)
	w.group(0, "LTYPE")
	w.group(2, "CONTINUOUS")
	w.whole(70, 0)
	w.group(3, "Solid line")
	w.whole(72, 65)
	w.whole(73, 0)
	w.number(40, 0)
	w.group(0, "ENDTAB")
	w.table("LAYER", len(layers))
	for _, name := range layers {
		w.group(0, "LAYER")
		w.group(2, name)
		w.whole(70, 0)
		w.whole(62, 7) // black on white, white on black
		w.group(6, "CONTINUOUS")
	}
	w.group(0, "ENDTAB")
	w.table("STYLE", 1)
	w.group(0, "STYLE")
	w.group(2, "STANDARD")
	w.whole(70, 0)
	w.number(40, 0)
	w.number(41, 1)
	w.number(50, 0)
	w.whole(71, 0)
	w.number(42, textHeightMm)
	w.group(3, "txt")
	w.group(4, "")
	w.group(0, "ENDTAB")
	w.group(0, "ENDSEC")
}

func (w *writer) table(name string, entries int) {
	w.group(0, "TABLE")
	w.group(2, name)
	w.whole(70, entries)
}

func (w *writer) path(p Path) {
	w.thing("POLYLINE", p.Layer, geometry.Point{})
	w.whole(66, 1)
	w.whole(70, 1) // closed
	for _, at := range p.Points {
		w.thing("VERTEX", p.Layer, at)
	}
	w.group(0, "SEQEND")
	w.group(8, LayerName(p.Layer))
}

// text sets the writing with its middle on its place.
func (w *writer) text(t Text) {
	width := textHeightMm * float64(len([]rune(t.Text))) // about
	w.thing("TEXT", t.Layer, t.At.Sub(geometry.Point{X: width / 2, Y: textHeightMm / 2}))
	w.number(40, textHeightMm)
	w.group(1, plain(t.Text))
	w.whole(72, 1)
	w.at(11, t.At)
	w.whole(73, 2)
}

// plain writes what is no ASCII as the format's escape.
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

// LongestLayer is how many letters the name of a layer has in release 12.
const LongestLayer = 31

// LayerName makes a name of letters, digits, $, - and _, as release 12 wants it.
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

// layers lists the names of the layers as they are written, 0 first.
func (d Drawing) layers() []string {
	names := []string{"0"}
	seen := map[string]bool{"0": true}
	add := func(layer string) {
		if name := LayerName(layer); !seen[name] {
			seen[name], names = true, append(names, name)
		}
	}
	for _, p := range d.Paths {
		add(p.Layer)
	}
	for _, c := range d.Circles {
		add(c.Layer)
	}
	for _, p := range d.Points {
		add(p.Layer)
	}
	for _, t := range d.Texts {
		add(t.Layer)
	}
	slices.Sort(names[1:])
	return names
}

// places gives points that show how far the drawing reaches.
func (d Drawing) places() []geometry.Point {
	var all []geometry.Point
	for _, p := range d.Paths {
		all = append(all, p.Points...)
	}
	for _, c := range d.Circles {
		r := geometry.Point{X: c.DiameterMm / 2, Y: c.DiameterMm / 2}
		all = append(all, c.Centre.Sub(r), c.Centre.Add(r))
	}
	for _, p := range d.Points {
		all = append(all, p.At)
	}
	for _, t := range d.Texts {
		all = append(all, t.At)
	}
	return all
}
