// Package writing makes pattern files of drafts: what is known stands in them,
// and the keys for the rest as comments. It may import source, form and the
// calculating half.
package writing

import (
	"bytes"
	"cmp"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"drawdown/geometry"
	"drawdown/geometry/survey"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/source"
	"drawdown/sequence/tension/head"
)

// Draft is what Pattern makes a pattern file from.
type Draft struct {
	Title   string
	Machine string
	// Notes are comments at the head of the file: where it came from, and what
	// is to be looked at.
	Notes []string
	Joint geometry.Joint
	// HolesMm are the diameters of the clearance holes by kind.
	HolesMm map[string]float64
	// Layout, where there is one, is written in place of the joint's fasteners.
	Layout *Layout
	// Offer is a layout that the fasteners come near to. It is written as a
	// comment, ready to take the list's place.
	Offer *Layout
	// Cautions are printed on the card.
	Cautions []string
}

// Layout is a regular layout as a pattern file writes it.
type Layout struct {
	survey.Regular
	Kind string
	ID   string // what stands before the numbers
}

// RegularIDs are what stands before the numbers where nobody says otherwise.
var RegularIDs = map[survey.Shape]string{survey.Grid: "M", survey.Row: "C", survey.Circle: "S", survey.Rectangle: "R"}

// Pattern makes a commented pattern file, which is read back to the same joint,
// to a thousandth of a millimetre, and a card can be drawn straight from it.
func Pattern(d Draft) []byte {
	w := &writer{}
	for _, note := range d.Notes {
		w.comment("", note)
	}
	w.line("drawdown: 1                          # version of this format")
	w.line("title: %s", scalar(d.Title))
	if d.Machine != "" {
		w.line("machine: %s", scalar(d.Machine))
	} else {
		w.line("# machine: the machine that the part belongs to")
	}
	w.line("# revision: 1")
	w.line("# date: 2026-03-14                 # printed on the card")
	w.line("units: mm")
	w.line("view: from above")
	w.kinds(d)
	w.fasteners(d)
	w.part(d)
	w.work(d)
	return w.Bytes()
}

type writer struct{ bytes.Buffer }

func (w *writer) line(format string, args ...any) {
	fmt.Fprintf(w, format, args...)
	w.WriteByte('\n')
}

func (w *writer) comment(indent, text string) {
	w.line("%s# %s", indent, strings.Join(strings.Fields(text), " "))
}

// kinds writes what is known of each kind, and the keys for the rest.
func (w *writer) kinds(d Draft) {
	w.line("\nkinds:                               # what the cards say of the bolts; take the # away and fill in")
	for _, name := range d.kinds() {
		w.line("  %s:", scalar(name))
		size, across, why := "M8", unit.Length(13), ""
		if hole := d.HolesMm[name]; hole > 0 {
			w.line("    hole: %s mm", Number(hole))
			size, across, why = throughHole(hole)
		}
		if size != "" {
			w.line("    # %-30s # %sM8x1, 5/16-18 UNC", "thread: "+size, why)
		}
		w.line("    # class: \"8.8\"")
		w.line("    # lubricant: engine oil")
		w.line("    # length: 40 mm")
		if across > 0 {
			w.line("    # %-30s # across flats", "head: "+across.String())
		}
	}
}

// throughHole gives the thread that a hole is for, the width across flats of its
// hexagon head (0 where it has none), and how the thread is known.
func throughHole(holeMm float64) (size string, across unit.Length, why string) {
	size, sure := head.ThreadForHole(unit.Length(holeMm))
	if size == "" {
		return "", 0, ""
	}
	why = "the largest that goes through; look at the bolt, or "
	if sure {
		why = "by the hole (ISO 273); look at the bolt, or "
	}
	if t, err := thread.Parse(size); err == nil {
		across, _, _ = head.HexagonAcross(t)
	}
	return size, across, why
}

// kinds lists the kinds, the largest holes first, else in the order of the
// fasteners: so they are tightened.
func (d Draft) kinds() []string {
	if d.Layout != nil {
		return []string{KindName(d.Layout.Kind)}
	}
	var names []string
	for _, f := range d.Joint.Fasteners {
		if name := KindName(f.Kind); !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	slices.SortStableFunc(names, func(a, b string) int { return cmp.Compare(d.HolesMm[b], d.HolesMm[a]) })
	return names
}

// KindName gives the kind of fasteners that name none.
func KindName(kind string) string { return cmp.Or(kind, form.ImpliedKind) }

// also writes one more key of a map, where it has a value.
func also(key, value string) string {
	if value == "" {
		return ""
	}
	return ", " + key + ": " + scalar(value)
}

func (w *writer) fasteners(d Draft) {
	w.line("\nfasteners:                           # x to the right, y upwards")
	if d.Layout != nil {
		w.line("  - %s", d.Layout.entry())
		return
	}
	for _, f := range d.Joint.Fasteners {
		onPart := also("mark", f.Mark)
		if f.Cast > 0 {
			onPart = ", cast: " + strconv.Itoa(f.Cast)
		}
		w.line("  - {id: %s, at: %s, kind: %s%s}", scalar(f.ID), Place(f.At), scalar(KindName(f.Kind)), onPart)
	}
	if d.Offer != nil {
		w.comment("  ", fmt.Sprintf("All lie within %.2f mm of %s. To draw it so, put this line in place of the list:",
			d.Offer.OffMm, d.Offer.Words()))
		w.line("  # - %s", d.Offer.entry())
	}
	w.clusters(d.Joint.Clusters)
}

func (w *writer) clusters(clusters []geometry.Cluster) {
	if len(clusters) > 0 {
		w.line("\nclusters:")
	}
	for _, c := range clusters {
		ids := make([]string, len(c.Of))
		for i, id := range c.Of {
			ids[i] = scalar(id)
		}
		loaded := ""
		if c.Unloaded {
			loaded = ", loaded: no"
		}
		w.line("  - {name: %s, of: [%s]%s}", scalar(c.Name), strings.Join(ids, ", "), loaded)
	}
}

// Words says what the layout is: 5 × 2 grid at 95 × 90 mm.
func (l Layout) Words() string {
	switch l.Shape {
	case survey.Grid:
		return fmt.Sprintf("a %d × %d grid at %s × %s mm", l.Columns, l.Rows, Number(l.X), Number(l.Y))
	case survey.Rectangle:
		return fmt.Sprintf("a %s × %s mm rectangle, %d along its top and %d more on each end", Number(l.X), Number(l.Y), l.Columns, l.Rows)
	case survey.Circle:
		return fmt.Sprintf("a circle of %d, %s mm in diameter", l.Count, Number(l.X))
	}
	return fmt.Sprintf("a row of %d at %s mm", l.Count, Number(l.X))
}

// entry is the line of a layout in the list of fasteners.
func (l Layout) entry() string {
	tail := "kind: " + scalar(KindName(l.Kind)) + also("id", l.ID)
	centre := Place(l.Centre)
	switch l.Shape {
	case survey.Grid:
		return fmt.Sprintf("grid: {columns: %d, rows: %d, pitch: [%s, %s], centre: %s, %s}", l.Columns, l.Rows, Number(l.X), Number(l.Y), centre, tail)
	case survey.Rectangle:
		return fmt.Sprintf("rectangle: {columns: %d, rows: %d, size: [%s, %s], centre: %s, %s}", l.Columns, l.Rows, Number(l.X), Number(l.Y), centre, tail)
	case survey.Circle:
		turn := "left"
		if l.Clockwise {
			turn = "right"
		}
		return fmt.Sprintf("circle: {count: %d, diameter: %s, centre: %s, first: %s°, turn: %s, %s}", l.Count, Number(l.X), centre, Number(l.AngleDeg), turn, tail)
	}
	return fmt.Sprintf("row: {count: %d, pitch: %s, from: %s, angle: %s°, %s}", l.Count, Number(l.X), centre, Number(l.AngleDeg), tail)
}

// part writes the outline and the features, or the keys for them.
func (w *writer) part(d Draft) {
	j := d.Joint
	w.line("")
	if len(j.Outline) == 0 {
		w.line("# outline: %s   # without one a line is drawn round the fasteners", exampleOutline(d.points()))
	} else {
		w.line("outline:")
		for _, path := range j.Outline {
			places := make([]string, len(path))
			for i, p := range path {
				places[i] = Place(p)
			}
			w.line("  - [%s]", strings.Join(places, ", "))
		}
	}
	w.features(j, d.points())
	if len(j.Stations) > 0 {
		w.line("stations:")
	}
	for _, s := range j.Stations {
		w.line("  - {id: %s, at: %s%s}", scalar(s.ID), Place(s.At), also("label", s.Label))
	}
}

func (w *writer) features(j geometry.Joint, fasteners []geometry.Point) {
	if len(j.Bores)+len(j.Dowels)+len(j.Labels) == 0 && j.Front == geometry.FrontUnknown {
		w.line("# features:")
		w.line("#   - %s", exampleBore(fasteners))
		w.line("#   - {label: EXHAUST SIDE, at: [0, -98]}")
		w.line("#   - {front: left}")
		return
	}
	w.line("features:")
	for _, b := range j.Bores {
		w.line("  - {bore: %s, diameter: %s%s}", Place(b.Centre), Number(b.Diameter), also("label", b.Label))
	}
	for _, d := range j.Dowels {
		w.line("  - {dowel: %s, diameter: %s}", Place(d.Centre), Number(d.Diameter))
	}
	for _, l := range j.Labels {
		w.line("  - {label: %s, at: %s}", scalar(l.Text), Place(l.At))
	}
	if j.Front != geometry.FrontUnknown {
		w.line("  - {front: %s}", j.Front)
	}
}

// work writes the keys of the order and the stages, which no drawing knows.
func (w *writer) work(d Draft) {
	w.line("\n# tighten:                           # without it the card shows the order, but no figures")
	w.line("#   order:")
	kinds := d.kinds()
	for _, name := range kinds {
		w.line("#     - {kind: %s, way: auto}      # spiral, cross, row, star", scalar(name))
	}
	w.line("#   stages:                          # the figures are examples: take the manual's")
	if len(kinds) == 1 {
		w.line("#     - {torque: 10 N·m}")
		w.line("#     - {torque: 20 N·m}")
	} else {
		for _, name := range kinds {
			w.line("#     - {of: [%s], torque: 10 N·m}", scalar(name))
		}
	}
	w.line("#   source: works manual             # where the figures come from")
	if len(d.Cautions) > 0 {
		w.line("\ncautions:")
	}
	for _, c := range d.Cautions {
		w.line("  - %s", scalar(c))
	}
}

// Place writes [x, y].
func Place(p geometry.Point) string { return "[" + Number(p.X) + ", " + Number(p.Y) + "]" }

// Number writes a number to a thousandth, without trailing zeros.
func Number(v float64) string {
	s := strconv.FormatFloat(math.Round(v*1000)/1000, 'f', -1, 64)
	if s == "-0" {
		return "0"
	}
	return s
}

// plainScalar is what needs no quotes anywhere, whatever YAML may take it for.
var plainScalar = regexp.MustCompile(`^[\pL\d](?:[\pL\d _.×/()-]*[\pL\d_.)])?$`)

// scalar writes a text so that it is read back as it is.
func scalar(text string) string {
	if plainScalar.MatchString(text) {
		if plain, err := yaml.Marshal(text); err == nil && string(plain) == text+"\n" {
			return text
		}
	}
	quoted, err := yaml.Marshal(&yaml.Node{Kind: yaml.ScalarNode, Value: text, Style: yaml.DoubleQuotedStyle})
	if err != nil {
		return strconv.Quote(text)
	}
	return strings.TrimSuffix(string(quoted), "\n")
}

// FileName gives the name of the file for a pattern with this title.
func FileName(title string) string { return source.Slug(title) + ".yaml" }
