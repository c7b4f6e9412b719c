// Package dxf reads and writes drawings in the drawing exchange format (DXF),
// as text or binary, from release 12 on. It turns bytes into circles, points
// and paths in millimetres, and counts all that it left out. Package patterns
// decides what the lines of a drawing mean for a joint.
package dxf

import (
	"bytes"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
)

// Options control how a drawing is read.
type Options struct {
	Unit   Unit     // of the drawing; empty: the drawing's own
	Layers []string // layers to read; empty: all visible ones
	GapMm  float64  // gaps in closed lines up to this are closed and reported; 0: none
}

// Drawing is the result: all in millimetres, in the plane of the paper.
type Drawing struct {
	Circles []Circle
	Points  []Point
	Paths   []Path
	Texts   []Text
	Unit    Unit         // the unit used for the drawing
	Layers  []LayerCount // those of the drawing, in its order
	Binary  bool         // then lines are offsets in bytes
}

// Circle is a whole circle. Line is the place of its entity in the file.
type Circle struct {
	Centre     geometry.Point
	DiameterMm float64
	Layer      string
	Line       int
}

// Point is a marked place.
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

// Text is a line of text with its place.
type Text struct {
	At    geometry.Point
	Text  string
	Layer string
	Line  int
}

// MostBytes limits a drawing: a million entities take less.
const MostBytes = 128 << 20

// mostDrawn limits the number of entities that blocks expand to.
const mostDrawn = 2_000_000

// Problem returns the problem for a finding; line 0 means the whole drawing.
func (d Drawing) Problem(file string, line int, found finding.Finding) problem.Problem {
	p := problem.Of(found)
	p.File = file
	if line > 0 && !d.Binary {
		p.Line, p.Column = line, 1
	}
	return p
}

// Read reads a drawing. The problems name file and line; warnings list what was
// left out. If the problems prevent work the drawing is empty.
func Read(file string, data []byte, ask Options) (Drawing, problem.List) {
	r := &reader{ask: ask, layers: map[string]layer{}, blocks: map[string]*block{}, omitted: map[omission][]int{}, onLayer: map[string]int{}}
	r.drawing.Binary = bytes.HasPrefix(data, sentinel)
	if len(data) > MostBytes {
		r.stop(&fault{found: finding.Failed(TooLarge, finding.Values{"most": MostBytes >> 20})})
	} else if other := otherForm(data); other != "" {
		r.stop(&fault{found: finding.Failed(other, nil)})
	} else {
		r.read(data)
		r.checkLayers()
	}
	if r.bad != nil {
		return Drawing{}, problem.List{r.problem(file)}
	}
	r.join()
	r.drawing.Layers = r.layerCounts()
	return r.drawing, r.list(file)
}

// otherForm returns a finding about a file whose first bytes show that it is no
// DXF; it is empty if the file may be one.
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

// problem returns the problem that stopped the reader.
func (r *reader) problem(file string) problem.Problem {
	found := r.bad.found
	if _, told := found.Values["byte"]; r.drawing.Binary && !told && r.bad.line > 0 {
		found = finding.Failed(AtByte, finding.Values{"why": found, "byte": r.bad.line})
	}
	p := r.drawing.Problem(file, r.bad.line, found)
	if p.Line > 0 {
		p.Snippet = firstLetters(strings.ToValidUTF8(strings.TrimSpace(r.bad.text), "?"))
	}
	return p
}

func firstLetters(text string) string {
	const longest = 60
	letters := []rune(text)
	return string(letters[:min(len(letters), longest)])
}

// reader collects the contents of a drawing.
type reader struct {
	ask     Options
	source  source
	ahead   pair // the group looked at last
	more    bool // there is one
	head    header
	letters letters
	layers  map[string]layer // by name in lower case
	names   []string         // of the layers, as written
	blocks  map[string]*block
	drawn   int
	drawing Drawing
	pieces  []piece
	points  int                // of all pieces
	gaps    int                // closed
	onLayer map[string]int     // entities, by layer in lower case
	omitted map[omission][]int // the lines
	notes   []note
	bad     *fault
}

func (r *reader) stop(f *fault) {
	if r.bad == nil {
		r.bad = f
	}
}

// advance moves to the next group that is no comment.
func (r *reader) advance() {
	const comment = 999
	for {
		var bad *fault
		if r.ahead, r.more, bad = r.source.next(); bad != nil {
			r.stop(bad)
		}
		if r.ahead.code != comment {
			return
		}
	}
}

// read goes through the sections.
func (r *reader) read(data []byte) {
	r.source = &lines{rest: string(bytes.TrimPrefix(data, []byte("\uFEFF")))}
	if r.drawing.Binary {
		r.source = newBytesSource(data)
	}
	r.letters = newLetters("", "")
	r.advance()
	if !r.ahead.begins("SECTION") {
		r.stop(faultAt(max(1, r.ahead.line), r.ahead.text, NoDrawing, nil))
	}
	seen := map[string]bool{}
	for r.bad == nil && r.more && !r.ahead.begins("EOF") {
		opens := r.ahead.begins("SECTION") // groups between sections have no meaning
		r.advance()
		if opens {
			r.section(seen)
		}
	}
	if !seen["ENTITIES"] {
		r.stop(&fault{found: finding.Failed(NoEntities, nil)})
	} else if !r.more {
		r.stop(&fault{found: finding.Failed(NoEnd, nil)})
	}
}

func (r *reader) section(seen map[string]bool) {
	name := r.ahead.text
	if r.ahead.code != 2 {
		r.stop(faultAt(r.ahead.line, name, NamelessSection, nil))
		return
	}
	if seen["ENTITIES"] && slices.Contains([]string{"HEADER", "TABLES", "BLOCKS", "ENTITIES"}, name) {
		r.stop(faultAt(r.ahead.line, name, SectionOrder, finding.Values{"name": name}))
		return
	}
	seen[name] = true
	r.advance()
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
			r.draw(r.entity(), place{to: scaled(unitsMm[r.drawing.Unit])})
		}
	default:
		for r.until("ENDSEC") {
			r.advance()
		}
	}
}

// until reports whether the section, or other part that ends with the word,
// continues.
func (r *reader) until(word string) bool {
	if !r.more {
		r.stop(&fault{found: finding.Failed(EndsEarly, finding.Values{"word": word})})
	}
	return r.bad == nil && !r.ahead.begins(word) && !r.ahead.begins("ENDSEC") && !r.ahead.begins("EOF")
}

// settle decides what the head of the drawing leaves open, before drawing
// begins.
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
		l := r.layers[strings.ToLower(name)]
		if state := l.state(); state != "" {
			r.notes = append(r.notes, note{l.line, finding.Warned(LayerHidden, finding.Values{"name": shown(l.name), "state": state})})
		}
	}
}
