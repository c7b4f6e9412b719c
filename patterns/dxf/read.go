// Package dxf reads and writes drawings in the open drawing exchange format,
// as text or binary, of the releases from 12 on. Bytes go in; circles, points
// and paths in millimetres come out, and a count of all that was left out.
// What the lines of a drawing mean for a joint, package patterns decides.
package dxf

import (
	"bytes"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// Options say how a drawing is to be read.
type Options struct {
	Unit   Unit     // of the drawing; empty: as the drawing says
	Layers []string // to be read; empty: all that are shown
}

// Drawing is what was read: all in millimetres, in the plane of the paper.
type Drawing struct {
	Circles []Circle
	Points  []Point
	Paths   []Path
	Texts   []Text
	Unit    Unit // that the drawing was taken in
	Binary  bool // lines are places in bytes then
}

// Circle is a whole circle. Line is where its entity stands in the file.
type Circle struct {
	Centre     geometry.Point
	DiameterMm float64
	Layer      string
	Line       int
}

// Point is a place that is marked.
type Point struct {
	At    geometry.Point
	Layer string
	Line  int
}

// Path is a closed line; curves in it are flattened within FlatMm.
type Path struct {
	Points []geometry.Point
	Layer  string
	Line   int
}

// Text is a line of writing, with the place that it is set at.
type Text struct {
	At    geometry.Point
	Text  string
	Layer string
	Line  int
}

// MostBytes bounds a drawing: a million entities take less.
const MostBytes = 128 << 20

// mostDrawn bounds what blocks unfold to.
const mostDrawn = 2_000_000

// Read reads a drawing. The problems name file and line; warnings tell what was
// left out. Where the problems stop the work the drawing is empty.
func Read(file string, data []byte, ask Options) (Drawing, problem.List) {
	r := &reader{ask: ask, source: newSource(data), layers: map[string]layer{}, blocks: map[string]*block{}, omitted: map[string]*omission{}}
	if len(data) > MostBytes {
		r.stop(&fault{found: finding.Failed(TooLarge, finding.Values{"most": MostBytes >> 20})})
	} else if other := otherForm(data); other != "" {
		r.stop(&fault{found: finding.Failed(other, nil)})
	} else {
		r.read()
		r.checkLayers()
	}
	if r.bad != nil {
		_, binary := r.source.(*bytesSource)
		return Drawing{}, problem.List{r.bad.problem(file, binary)}
	}
	_, r.drawing.Binary = r.source.(*bytesSource)
	r.join()
	return r.drawing, r.list(file)
}

// otherForm says what a file is that is told by its first bytes to be no DXF,
// and what to do with it; empty where it may be one.
func otherForm(data []byte) finding.Code {
	for _, form := range []struct {
		begins string
		says   finding.Code
	}{
		{"\x89PNG", IsPicture}, {"\xff\xd8\xff", IsPicture}, {"II*\x00", IsPicture}, {"MM\x00*", IsPicture}, {"GIF8", IsPicture},
		{"%PDF", IsPDF},
		{"AC10", IsDWG},
	} {
		if bytes.HasPrefix(data, []byte(form.begins)) {
			return form.says
		}
	}
	return ""
}

func newSource(data []byte) source {
	if bytes.HasPrefix(data, sentinel) {
		return newBytesSource(data)
	}
	return &lines{rest: string(bytes.TrimPrefix(data, []byte("\uFEFF")))}
}

func (f *fault) problem(file string, binary bool) problem.Problem {
	p := problem.Of(f.found)
	p.File = file
	switch _, told := f.found.Values["byte"]; {
	case f.line == 0 || binary && told:
	case binary:
		p = problem.Of(finding.Failed(AtByte, finding.Values{"why": f.found, "byte": f.line}))
		p.File = file
	default:
		p.Line, p.Column = f.line, 1
		p.Snippet = firstLetters(strings.ToValidUTF8(strings.TrimSpace(f.text), "?"))
	}
	return p
}

func firstLetters(text string) string {
	if letters := []rune(text); len(letters) > longestShown {
		return string(letters[:longestShown])
	}
	return text
}

// reader collects what a drawing says.
type reader struct {
	ask     Options
	source  source
	ahead   pair // the group that was looked at last
	more    bool // there is one
	kept    []pair
	head    header
	letters letters
	layers  map[string]layer // by name in small letters
	names   []string         // of the layers, as written
	blocks  map[string]*block
	drawn   int
	drawing Drawing
	pieces  []piece
	points  int // of all pieces
	omitted map[string]*omission
	notes   []note
	bad     *fault
}

func (r *reader) stop(f *fault) {
	if r.bad == nil {
		r.bad = f
	}
}

func (r *reader) advance() {
	r.ahead, r.more = r.source.next()
	if f := r.source.fault(); f != nil {
		r.stop(f)
	}
}

// read goes through the sections.
func (r *reader) read() {
	r.letters = newLetters("", "")
	r.advance()
	for r.more && r.ahead.code == 999 { // comments
		r.advance()
	}
	if r.bad == nil && (!r.more || r.ahead.code != 0 || r.ahead.text != "SECTION") {
		r.stop(&fault{max(1, r.ahead.line), finding.Failed(NoDrawing, nil), r.ahead.text})
	}
	seen, ended := map[string]bool{}, false
	for r.bad == nil && r.more {
		if r.ahead.code == 0 && r.ahead.text == "EOF" {
			ended = true
			break
		}
		if r.ahead.code != 0 || r.ahead.text != "SECTION" {
			r.advance() // what stands between sections has no meaning
			continue
		}
		r.advance()
		for r.more && r.ahead.code == 999 {
			r.advance()
		}
		name := r.ahead.text
		if r.bad == nil && (!r.more || r.ahead.code != 2) {
			r.stop(&fault{r.ahead.line, finding.Failed(NamelessSection, nil), r.ahead.text})
			return
		}
		if seen["ENTITIES"] && (name == "HEADER" || name == "TABLES" || name == "BLOCKS" || name == "ENTITIES") {
			r.stop(&fault{r.ahead.line, finding.Failed(SectionOrder, finding.Values{"name": name}), name})
			return
		}
		seen[name] = true
		r.advance()
		r.section(name)
	}
	switch {
	case r.bad != nil:
	case !seen["ENTITIES"]:
		r.stop(&fault{found: finding.Failed(NoEntities, nil)})
	case !ended:
		r.stop(&fault{found: finding.Failed(NoEnd, nil)})
	}
}

func (r *reader) section(name string) {
	switch name {
	case "HEADER":
		r.readHeader()
	case "TABLES":
		r.readTables()
	case "BLOCKS":
		r.readBlocks()
	case "ENTITIES":
		r.settle()
		for r.until("ENDSEC") {
			e := r.entity(false)
			r.draw(e, place{to: scaled(r.drawing.Unit.mm())})
		}
	default:
		for r.until("ENDSEC") {
			r.advance()
		}
	}
}

// until says that the section, or what else ends with the word, goes on.
func (r *reader) until(word string) bool {
	for r.more && r.ahead.code == 999 {
		r.advance()
	}
	if r.bad == nil && !r.more {
		r.stop(&fault{r.ahead.line, finding.Failed(EndsEarly, finding.Values{"word": word}), r.ahead.text})
	}
	return r.bad == nil && !(r.ahead.code == 0 && (r.ahead.text == word || r.ahead.text == "ENDSEC" || r.ahead.text == "EOF"))
}

// settle decides what the head of the drawing leaves open, before anything is
// drawn.
func (r *reader) settle() {
	unit, noted := r.head.unit(r.ask.Unit)
	if noted.Severity == finding.Error {
		r.stop(&fault{r.head.unitLine, noted, strconv.Itoa(r.head.insunits)})
		return
	}
	r.drawing.Unit = unit
	if noted.Code != "" {
		r.notes = append(r.notes, note{r.head.unitLine, noted})
	}
	for _, name := range r.ask.Layers {
		if l := r.layers[strings.ToLower(name)]; l.hidden() {
			r.notes = append(r.notes, note{l.line, finding.Warned(LayerHidden, finding.Values{"name": shown(l.name), "state": l.state()})})
		}
	}
}

// checkLayers refuses layers that were asked for and are not there. Not every
// drawing lists its layers, so that this is known at the end only.
func (r *reader) checkLayers() {
	for _, name := range r.ask.Layers {
		if _, known := r.layers[strings.ToLower(name)]; !known {
			r.stop(&fault{found: finding.Failed(NoSuchLayer, finding.Values{"name": shown(name), "meant": problem.Nearest(name, r.names), "layers": r.names})})
		}
	}
}
