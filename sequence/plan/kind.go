package plan

import (
	"slices"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
)

// Reuse reports whether a fastener may go back in.
type Reuse string

const (
	ReuseUnknown Reuse = ""
	ReuseOnce    Reuse = "once"    // used once, then thrown away
	ReuseInspect Reuse = "inspect" // measured before it goes back
	ReuseYes     Reuse = "yes"
)

// Kind is one kind of fastener. Zero lengths are unknown.
type Kind struct {
	Name       string
	Implied    bool           // the file names no kinds; the name is not its own
	Thread     *thread.Thread // nil where the file names none
	Class      string         // as written: 10.9, grade 8, A2-70, 830 MPa
	Length     unit.Length
	Threaded   unit.Length // length of the thread
	FullThread bool        // threaded up to the head
	Grip       unit.Length // clamped length
	Into       string      // material of the tapped hole
	Engagement unit.Length
	Lubricant  string
	Friction   *screw.Friction // nil where only a lubricant is known
	HeadForm   head.Form       // empty: hexagon
	HeadAcross unit.Length     // across flats
	NutAcross  unit.Length     // across flats; 0 where there is no nut
	WasherFace unit.Length     // outer diameter of the bearing face
	Washer     head.Washer     // a standard one, that lies under the head
	Hole       unit.Length
	Reuse      Reuse
	ReusedTo   unit.Length // the longest that goes back after it is measured; 0: the manual says
}

// Bolt describes a fastener of the kind to the mechanics, without an aim. What
// the kind leaves open is left open there too, the thread included.
func (k Kind) Bolt() screw.Bolt {
	b := screw.Bolt{
		Class: k.Class, Lubricant: k.Lubricant, Friction: k.Friction,
		HeadForm: k.HeadForm, HeadAcross: k.TurnedAcross(), WasherFace: k.WasherFace, Washer: k.Washer, Hole: k.Hole,
	}
	if k.Thread != nil {
		b.Thread = *k.Thread
	}
	return b
}

// Stud says that the fastener stays in its tapped hole and its nut is turned. A
// nut without a tapped hole is that of a bolt that goes through.
func (k Kind) Stud() bool { return k.NutAcross > 0 && k.Into != "" }

// studWords call a stud in the languages of the sheets.
var studWords = []string{"stud", "studs", "stehbolzen", "stiftschraube", "stiftschrauben", "goujon", "goujons", "espárrago", "espárragos"}

// CalledStud reports whether the name of the kind is that of a stud.
func (k Kind) CalledStud() bool {
	return slices.ContainsFunc(wordsOf(k.Name), func(word string) bool { return slices.Contains(studWords, word) })
}

// Through says that the fastener goes through to a nut, so that no hole is
// tapped for it.
func (k Kind) Through() bool { return k.NutAcross > 0 && k.Into == "" }

// TurnedAcross is the width across flats of what the wrench turns: the nut of a
// stud, else the head; 0 where the file does not state it.
func (k Kind) TurnedAcross() unit.Length {
	if k.Stud() {
		return k.NutAcross
	}
	return k.HeadAcross
}

// Turned is what turns a fastener: the width across flats of a socket, or of a
// hexagon key that goes into the head.
type Turned struct {
	Across   unit.Length // 0 where it is not known
	Standard string      // that the width comes from; empty where the file states it
	Key      bool
}

// Turned is the width that the file states, or that of the standard head for the
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

// ThreadName is the thread as the standard names it; empty where the file names
// none.
func (k Kind) ThreadName() string {
	if k.Thread == nil {
		return ""
	}
	return k.Thread.Name
}

// EqualButSize says whether two kinds have one class, friction and tapped part.
func (k Kind) EqualButSize(other Kind) bool {
	return k.Class != "" && k.Class == other.Class && k.Lubricant == other.Lubricant && k.Into == other.Into &&
		(k.Friction == nil) == (other.Friction == nil) && (k.Friction == nil || *k.Friction == *other.Friction)
}

// EqualButLength says whether all kinds have one thread too, so that one torque is for
// all of them.
func EqualButLength(kinds []Kind) bool {
	return !slices.ContainsFunc(kinds, func(k Kind) bool {
		return k.Thread == nil || k.ThreadName() != kinds[0].ThreadName() || !k.EqualButSize(kinds[0])
	})
}

// MajorMm is the major diameter of the thread; 0 where the file names none.
func (k Kind) MajorMm() float64 {
	if k.Thread == nil {
		return 0
	}
	return k.Thread.MajorMm
}

// clearance is how much wider than its bolt a hole is (ISO 273, medium series:
// 9 mm for M8, 11 mm for M10, 17.5 mm for M16).
const clearance = 1.1

// SizeMm is the major diameter of the thread; where the file names none, that
// of the bolt for which the hole is wide enough; 0 where it states neither.
func (k Kind) SizeMm() float64 {
	if k.Thread == nil {
		return float64(k.Hole) / clearance
	}
	return k.Thread.MajorMm
}

// Labelled prints a length of the kind as drawers and sockets are labelled: in
// inches for inch threads. A length that is not known is empty.
func (k Kind) Labelled(l unit.Length) string {
	switch {
	case l == 0:
		return ""
	case k.Thread != nil && k.Thread.Unified():
		return l.Inches()
	}
	return l.String()
}
