package dxf

import (
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

// Unit is the unit of the drawing's lengths.
type Unit string

const (
	Millimetre Unit = "mm"
	Centimetre Unit = "cm"
	Metre      Unit = "m"
	Inch       Unit = "in"
)

// Units lists the units that a user can ask for.
var Units = []Unit{Millimetre, Centimetre, Metre, Inch}

var unitsMm = map[Unit]float64{Millimetre: 1, Centimetre: 10, Metre: 1000, Inch: 25.4}

// insunits lists the values of $INSUNITS that drawings of parts use.
var insunits = map[int]Unit{1: Inch, 4: Millimetre, 5: Centimetre, 6: Metre}

// header holds the variables used here.
type header struct {
	insunits int
	unitLine int
	english  bool
}

// unit returns the drawing's unit and a finding about it: an error if the unit
// is unusable.
func (h header) unit(asked Unit) (Unit, finding.Finding) {
	stated, known := insunits[h.insunits]
	switch {
	case asked != "" && known && stated != asked:
		return asked, finding.Warned(OtherUnit, finding.Values{"stated": string(stated), "asked": string(asked)})
	case asked != "":
		return asked, finding.Finding{}
	case known:
		return stated, finding.Finding{}
	case h.insunits != 0:
		return "", finding.Failed(OddUnit, finding.Values{"unit": h.insunits})
	case h.english:
		return Millimetre, finding.Warned(NoUnitEnglish, nil)
	}
	return Millimetre, finding.Warned(NoUnit, nil)
}

func (r *reader) readHeader() {
	name := ""
	var version, page string
	for ; r.until("ENDSEC"); r.advance() {
		p := r.ahead
		switch {
		case p.code == 9:
			name = strings.ToUpper(p.text)
		case name == "$ACADVER" && p.code == 1:
			version = p.text
		case name == "$DWGCODEPAGE" && p.code == 3:
			page = p.text
		case name == "$INSUNITS" && p.code == 70:
			r.head.insunits, r.head.unitLine = r.whole(p), p.line
		case name == "$MEASUREMENT" && p.code == 70:
			r.head.english = r.whole(p) == 0
		}
	}
	r.letters = newLetters(version, page)
}

// block is a drawing within the drawing, which INSERT places.
type block struct {
	name     string
	base     geometry.Point
	outside  bool // it is in another file
	entities []entity
}

func (r *reader) readBlocks() {
	var b *block
	for r.until("ENDSEC") {
		e := r.entity()
		switch {
		case r.bad != nil:
		case e.kind == "BLOCK":
			b = &block{name: r.letters.read(e.text(2))}
			b.base = geometry.Point{X: r.numberOf(e, 10, 0), Y: r.numberOf(e, 20, 0)}
			b.outside = r.wholeOf(e, 70, 0)&4 != 0
			r.blocks[strings.ToLower(b.name)] = b
		case e.kind == "ENDBLK":
			b = nil
		case b == nil:
		case strings.HasPrefix(strings.ToLower(b.name), "*paper_space"):
			r.leaveOut(PaperSpace, e)
		default:
			b.entities = append(b.entities, e)
		}
	}
}
