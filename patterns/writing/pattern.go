// Package writing writes pattern files from drafts: known values as keys, all
// others as comments to fill in. It may import source, form and the calculating
// half.
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
	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/source"
	"drawdown/sequence/tension/head"
)

// Draft is the input of Pattern.
type Draft struct {
	Title   string
	Machine string
	// Notes are comments at the head of the file: its origin, and things to
	// check.
	Notes []finding.Finding
	Joint geometry.Joint
	// HolesMm holds the diameters of the clearance holes by kind.
	HolesMm map[string]float64
	// Layout, if set, is written instead of the joint's fasteners.
	Layout *Layout
	// Offer is a layout that nearly fits the fasteners. It is written as a
	// comment, ready to replace the list.
	Offer *Layout
	// Cautions are printed on the card.
	Cautions []finding.Finding
}

// Layout is a regular layout in the form of a pattern file.
type Layout struct {
	survey.Regular
	Kind string
	ID   string // the prefix of the numbers
}

// RegularIDs are the default prefixes of the numbers.
var RegularIDs = map[survey.Shape]string{survey.Grid: "M", survey.Row: "C", survey.Circle: "S", survey.Rectangle: "R"}

// Pattern makes a commented pattern file. It reads back to the same joint, to a
// thousandth of a millimetre, and a card can be drawn directly from it. Its
// comments and cautions are in the words that say returns for them.
func Pattern(d Draft, say func(finding.Finding) string) []byte {
	w := &writer{say: say}
	for _, note := range d.Notes {
		w.comment("", say(note))
	}
	w.noted("drawdown: 1", Version)
	w.line("title: %s", scalar(d.Title))
	if d.Machine != "" {
		w.line("machine: %s", scalar(d.Machine))
	} else {
		w.line("# machine: %s", w.said(MachineIs))
	}
	w.line("# revision: 1")
	w.noted("# date: 2026-03-14", DateIs)
	w.line("units: mm")
	w.line("view: from above")
	w.kinds(d)
	w.fasteners(d)
	w.part(d)
	w.work(d)
	return w.marked()
}

type writer struct {
	bytes.Buffer
	say func(finding.Finding) string
}

func (w *writer) said(code finding.Code) string { return w.say(finding.Noted(code, nil)) }

// noted writes a line followed by a comment.
func (w *writer) noted(line string, code finding.Code) { w.beside(line, w.said(code)) }

func (w *writer) beside(line, comment string) { w.line("%-36s # %s", line, comment) }

func (w *writer) line(format string, args ...any) {
	fmt.Fprintf(w, format, args...)
	w.WriteByte('\n')
}

func (w *writer) comment(indent, text string) {
	w.line("%s# %s", indent, strings.Join(strings.Fields(text), " "))
}

// kinds writes what is known of each kind, and the keys for the rest.
func (w *writer) kinds(d Draft) {
	w.line("")
	w.noted("kinds:", KindsAre)
	for _, name := range d.kinds() {
		w.line("  %s:", scalar(name))
		size, across, from := "M8", unit.Length(13), ""
		if hole := d.HolesMm[name]; hole > 0 {
			w.line("    hole: %s mm", Number(hole))
			size, across, from = throughHole(hole)
		}
		if size != "" {
			w.beside("    # thread: "+size, w.say(finding.Noted(ThreadFrom, finding.Values{"from": from})))
		}
		w.line("    # class: \"8.8\"")
		w.line("    # lubricant: engine oil")
		w.line("    # length: 40 mm")
		if across > 0 {
			w.noted("    # head: "+across.String(), AcrossFlats)
		}
	}
}

// throughHole returns the thread for a hole, the width across flats of its
// hexagon head (0 if it has none), and how the thread is known.
func throughHole(holeMm float64) (size string, across unit.Length, from string) {
	size, sure := head.ThreadForHole(unit.Length(holeMm))
	if size == "" {
		return "", 0, ""
	}
	from = "largest"
	if sure {
		from = "hole"
	}
	if t, err := thread.Parse(size); err == nil {
		across, _, _ = head.HexagonAcross(t)
	}
	return size, across, from
}

// kinds lists the kinds in tightening order: by hole, the largest first,
// otherwise in the order of the fasteners.
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

// KindName returns the kind of fasteners that name none.
func KindName(kind string) string { return cmp.Or(kind, form.ImpliedKind) }

// also writes one more key of a map, if it has a value.
func also(key, value string) string {
	if value == "" {
		return ""
	}
	return ", " + key + ": " + scalar(value)
}

func (w *writer) fasteners(d Draft) {
	w.line("")
	w.noted("fasteners:", FastenersAre)
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
		w.comment("  ", w.say(finding.Noted(Offered, finding.Values{"off": unit.Length(d.Offer.OffMm), "layout": d.Offer.Named()})))
		w.line("  # - %s", d.Offer.entry())
	}
	w.clusters(d.Joint.Clusters)
	if d.Joint.UnloadedFirstOff {
		w.line("unloaded: first off                  # caps that no spring presses on")
	}
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

// entry returns the line of a layout in the list of fasteners.
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
		w.line("# outline: %s   # %s", exampleOutline(d.points()), w.said(NoOutline))
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
		w.line("#   - {label: %s, at: [0, -98]}", scalar(w.said(SomeLabel)))
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

// work writes the keys of the order and the stages, which no drawing contains.
func (w *writer) work(d Draft) {
	w.line("")
	w.noted("# tighten:", NoTighten)
	w.line("#   order:")
	kinds := d.kinds()
	for _, name := range kinds {
		w.line("#     - {kind: %s, way: auto}      # spiral, cross, row, star", scalar(name))
	}
	w.noted("#   stages:", StagesAre)
	if len(kinds) == 1 {
		w.line("#     - {torque: 10 N·m}")
		w.line("#     - {torque: 20 N·m}")
	} else {
		for _, name := range kinds {
			w.line("#     - {of: [%s], torque: 10 N·m}", scalar(name))
		}
	}
	w.noted("#   source: "+w.said(SomeManual), SourceIs)
	if len(d.Cautions) > 0 {
		w.line("\ncautions:")
	}
	for _, c := range d.Cautions {
		w.line("  - %s", scalar(w.say(c)))
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

// plainScalar matches text that never needs quotes, whatever YAML may take it
// for.
var plainScalar = regexp.MustCompile(`^[\pL\d](?:[\pL\d _.×/()-]*[\pL\d_.)])?$`)

// scalar writes a text so that it reads back unchanged.
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

// FileName returns the name of the file for a pattern with this title.
func FileName(title string) string { return source.Slug(title) + ".yaml" }
