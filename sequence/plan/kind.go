package plan

import (
	"slices"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
)

// Reuse says whether a fastener may be used again.
type Reuse string

const (
	ReuseUnknown Reuse = ""
	ReuseOnce    Reuse = "once"    // used once, then discarded
	ReuseInspect Reuse = "inspect" // measured before reuse
	ReuseYes     Reuse = "yes"
)

// Kind is one kind of fastener. Zero lengths mean unknown.
type Kind struct {
	Name       string
	Implied    bool           // the file names no kinds; the name is a default
	Thread     *thread.Thread // nil if the file names none
	Class      string         // as written: 10.9, grade 8, A2-70, 830 MPa
	Length     unit.Length
	Threaded   unit.Length         // length of the thread
	FullThread bool                // threaded up to the head
	Shank      unit.Length         // least diameter of the shank
	Sections   []stiffness.Section // of the shank, from the head down
	Grip       unit.Length         // clamped length
	Into       string              // material of the tapped hole
	Engagement unit.Length
	Boss       unit.Length // outer diameter round the tapped hole
	Lubricant  string
	Friction   *screw.Friction // nil if only a lubricant is known
	// NutFactor is K from a test of the lubricant, in place of Friction; the
	// lowest and the highest K differ from it by the spread.
	NutFactor, NutFactorSpread float64
	HeadForm                   head.Form   // "": hexagon
	HeadAcross                 unit.Length // across flats
	NutAcross                  unit.Length // across flats; 0 if there is no nut
	WasherFace                 unit.Length // outer diameter of the bearing face
	Washer                     head.Washer // a standard washer under the head
	Hole                       unit.Length
	Reuse                      Reuse
	ReusedTo                   unit.Length // longest that may be reused after measuring; 0: see the manual
}

// Bolt describes a fastener of the kind for the calculations, without an aim.
// What the kind leaves open stays open, including the thread.
func (k Kind) Bolt() screw.Bolt {
	b := screw.Bolt{
		Class: k.Class, Shank: k.Shank, Lubricant: k.Lubricant, Friction: k.Friction,
		HeadForm: k.HeadForm, HeadAcross: k.TurnedAcross(), WasherFace: k.WasherFace, Washer: k.Washer, Hole: k.Hole,
	}
	if k.NutFactor > 0 { // it replaces what a name says
		b.Lubricant, b.NutFactor, b.NutFactorSpread = "", k.NutFactor, k.NutFactorSpread
	}
	if k.Thread != nil {
		b.Thread = *k.Thread
	}
	return b
}

// Stud reports that the fastener stays in its tapped hole and its nut is
// turned. A nut without a tapped hole belongs to a through bolt.
func (k Kind) Stud() bool { return k.NutAcross > 0 && k.Into != "" }

// studWords are words for a stud in the languages of the sheets.
var studWords = []string{"stud", "studs", "stehbolzen", "stiftschraube", "stiftschrauben", "goujon", "goujons", "espárrago", "espárragos"}

// CalledStud reports whether the name of the kind names a stud.
func (k Kind) CalledStud() bool {
	return slices.ContainsFunc(wordsOf(k.Name), func(word string) bool { return slices.Contains(studWords, word) })
}

// Through reports that the fastener is a through bolt with a nut, so that it
// has no tapped hole.
func (k Kind) Through() bool { return k.NutAcross > 0 && k.Into == "" }

// TurnedAcross is the width across flats of what the wrench turns: the nut of a
// stud, otherwise the head; 0 if the file does not state it.
func (k Kind) TurnedAcross() unit.Length {
	if k.Stud() {
		return k.NutAcross
	}
	return k.HeadAcross
}

// Turned is the size of the tool that turns a fastener: the width across flats
// of a socket, or of a hexagon key that fits into the head.
type Turned struct {
	Across   unit.Length // 0 if unknown
	Standard string      // source of the width; "" if the file states it
	Key      bool
}

// Turned is the width stated by the file, or that of the standard head for the
// thread.
func (k Kind) Turned() Turned {
	t := Turned{Across: k.TurnedAcross(), Key: k.HeadForm == head.Socket}
	switch {
	case t.Across > 0 || k.Thread == nil:
	case t.Key:
		t.Across, t.Standard, _ = head.KeyAcross(*k.Thread)
	case k.HeadForm == "" || k.HeadForm == head.Hexagon:
		t.Across, t.Standard, _ = head.HexagonAcross(*k.Thread)
	}
	return t
}

// ThreadName is the thread designation of the standard; "" if the file names
// none.
func (k Kind) ThreadName() string {
	if k.Thread == nil {
		return ""
	}
	return k.Thread.Name
}

// EqualButSize reports whether two kinds have the same class, shank,
// friction and tapped part.
func (k Kind) EqualButSize(other Kind) bool {
	return k.Class != "" && k.Class == other.Class && k.Shank == other.Shank && k.Lubricant == other.Lubricant && k.NutFactor == other.NutFactor && k.Into == other.Into &&
		(k.Friction == nil) == (other.Friction == nil) && (k.Friction == nil || *k.Friction == *other.Friction)
}

// EqualButLength reports whether all kinds also have the same thread, so that
// one torque suits them all.
func EqualButLength(kinds []Kind) bool {
	return !slices.ContainsFunc(kinds, func(k Kind) bool {
		return k.Thread == nil || k.ThreadName() != kinds[0].ThreadName() || !k.EqualButSize(kinds[0])
	})
}

// MajorMm is the major diameter of the thread; 0 if the file names none.
func (k Kind) MajorMm() float64 {
	if k.Thread == nil {
		return 0
	}
	return k.Thread.MajorMm
}

// clearance is the ratio of a hole to its bolt (ISO 273, medium series: 9 mm
// for M8, 11 mm for M10, 17.5 mm for M16).
const clearance = 1.1

// SizeMm is the major diameter of the thread. If the file names none, it is
// that of the bolt for which the hole is made; 0 if neither is stated.
func (k Kind) SizeMm() float64 {
	if k.Thread == nil {
		return float64(k.Hole) / clearance
	}
	return k.Thread.MajorMm
}

// Labelled formats a length of the kind as on drawers and sockets: in inches
// for inch threads. An unknown length is "".
func (k Kind) Labelled(l unit.Length) string {
	switch {
	case l == 0:
		return ""
	case k.Thread != nil && k.Thread.Unified():
		return l.Inches()
	}
	return l.String()
}
