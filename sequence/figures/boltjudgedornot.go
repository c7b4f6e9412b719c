package figures

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/strength"
)

// What could be judged about a joint and what not. kinds is empty if it applies
// to all of them.
const (
	Judged          finding.Code = "judged"           // what, kinds
	JudgedLeniently finding.Code = "judged leniently" // what, kinds, lacks, taken: the substitute for each
	NotJudged       finding.Code = "judged not"       // what, kinds, lacks
)

// Subjects that are judged.
const (
	ofYield     finding.Term = "torque against yield and breaking"
	ofAngle     finding.Term = "angle past yield"
	ofStripping finding.Term = "stripping of the thread"
	ofPressure  finding.Term = "pressure under the head"
	ofLength    finding.Term = "length and engagement"
	ofWrench    finding.Term = "wrench"
	ofLubricant finding.Term = "lubricant"
)

// What a bolt may leave open.
const (
	noThread       finding.Term = "thread"
	noClass        finding.Term = "class"
	noFriction     finding.Term = "lubricant or friction"
	noGrip         finding.Term = "grip"
	noLength       finding.Term = "length"
	noThreadLength finding.Term = "thread length"
	noUnder        finding.Term = "material under the head"
	noHead         finding.Term = "head, washer or hole"
	noInto         finding.Term = "into"
	noEngagement   finding.Term = "engagement"
)

// Substitutes for what is open; all are lenient.
const (
	takenStrongest  finding.Term = "class 12.9"
	takenFriction   finding.Term = "all from oiled to dry"
	takenFullThread finding.Term = "thread over the whole grip"
	takenAluminium  finding.Term = "clamped parts of aluminium"
	takenHardest    finding.Term = "the hardest usual part"
)

// coverage says how far one subject could be judged: not at all if a needed
// value is open, leniently if a substitute was used.
type coverage struct {
	what         finding.Term
	needs        []finding.Term // needed and not stated
	lacks, taken []finding.Term
}

func (c coverage) found() finding.Finding {
	switch {
	case len(c.needs) > 0:
		return finding.Noted(NotJudged, finding.Values{"what": c.what, "lacks": c.needs})
	case len(c.lacks) > 0:
		return finding.Noted(JudgedLeniently, finding.Values{"what": c.what, "lacks": c.lacks, "taken": c.taken})
	}
	return finding.Noted(Judged, finding.Values{"what": c.what})
}

// Covered reports, subject by subject, what Judge could judge about the bolts,
// and what it could not, or only leniently, for lack of data.
func Covered(bolts []Bolt) (judged, open []finding.Finding) {
	var all []finding.Finding
	for _, subject := range []func(Bolt) (coverage, bool){coversYield, coversAngle, coversStripping, coversPressure, coversLength, coversWrench, coversLubricant} {
		var ofSubject []finding.Finding
		for _, b := range bolts {
			if c, applies := subject(b); applies {
				ofSubject = alsoFor(b.Kind, c.found(), ofSubject)
			}
		}
		all = append(all, ofSubject...)
	}
	for _, f := range all {
		if len(f.Values["kinds"].([]string)) == len(bolts) {
			f.Values["kinds"] = []string(nil)
		}
		if f.Code == Judged {
			judged = append(judged, f)
		} else {
			open = append(open, f)
		}
	}
	return judged, open
}

// alsoFor adds a kind to the finding that says the same, or adds the finding.
func alsoFor(kind string, found finding.Finding, list []finding.Finding) []finding.Finding {
	same := func(f finding.Finding) bool {
		return f.Code == found.Code && slices.Equal(terms(f, "lacks"), terms(found, "lacks"))
	}
	i := slices.IndexFunc(list, same)
	if i < 0 {
		found.Values["kinds"] = []string{kind}
		return append(list, found)
	}
	list[i].Values["kinds"] = append(list[i].Values["kinds"].([]string), kind)
	return list
}

func terms(f finding.Finding, name string) []finding.Term {
	list, _ := f.Values[name].([]finding.Term)
	return list
}

// need records a needed value that is not stated.
func (c *coverage) need(stated bool, what finding.Term) {
	if !stated {
		c.needs = append(c.needs, what)
	}
}

// lean records a value that is not stated and its substitute.
func (c *coverage) lean(stated bool, what, taken finding.Term) {
	if !stated {
		c.lacks, c.taken = append(c.lacks, what), append(c.taken, taken)
	}
}

func (b Bolt) threadStated() bool { return b.Bolt.Thread.Name != "" }

func (b Bolt) classStated() bool {
	_, err := strength.ParseClass(b.Bolt.Class, b.Bolt.Thread)
	return err == nil
}

func (b Bolt) frictionStated() bool {
	if b.Bolt.Friction != nil || b.Bolt.NutFactor != 0 {
		return true
	}
	_, err := screw.FrictionOf(b.Bolt.Lubricant)
	return err == nil
}

func (b Bolt) does(do Action) bool {
	return slices.ContainsFunc(b.Stages, func(s Stage) bool { return s.Do == do })
}

func coversYield(b Bolt) (coverage, bool) {
	c := coverage{what: ofYield}
	c.need(b.threadStated(), noThread)
	c.lean(b.classStated(), noClass, takenStrongest)
	c.lean(b.frictionStated(), noFriction, takenFriction)
	return c, b.does(Tighten)
}

func coversAngle(b Bolt) (coverage, bool) {
	c := coverage{what: ofAngle}
	c.need(b.threadStated(), noThread)
	c.need(b.classStated(), noClass)
	c.need(len(b.Grip.Layers) > 0, noGrip)
	c.lean(b.frictionStated(), noFriction, takenFriction)
	c.lean(b.Grip.FullThread || b.Grip.Thread > 0 || len(b.Grip.Shank) > 0, noThreadLength, takenFullThread)
	c.lean(b.under() != "", noUnder, takenAluminium)
	return c, b.does(Advance)
}

// through reports that the bolt has a nut and no tapped part.
func (b Bolt) through() bool { return b.NutAcross > 0 && b.Grip.TappedIn == "" }

func coversStripping(b Bolt) (coverage, bool) {
	_, err := strength.ParseMaterial(b.Grip.TappedIn)
	c := coverage{what: ofStripping}
	c.need(b.threadStated(), noThread)
	c.need(b.classStated(), noClass)
	c.need(err == nil, noInto)
	c.need(b.Grip.Engagement > 0, noEngagement)
	return c, len(b.Stages) > 0 && !b.through()
}

func coversPressure(b Bolt) (coverage, bool) {
	m, err := strength.ParseMaterial(b.under())
	c := coverage{what: ofPressure}
	c.need(b.threadStated(), noThread)
	c.need(b.classStated(), noClass)
	c.need(err == nil || b.headStated(), noHead)
	c.lean(err == nil && m.LimitingPressure > 0, noUnder, takenHardest)
	return c, len(b.Stages) > 0
}

func coversLength(b Bolt) (coverage, bool) {
	c := coverage{what: ofLength}
	c.need(b.Grip.BoltLength > 0, noLength)
	c.need(len(b.Grip.Layers) > 0, noGrip)
	c.need(b.Grip.Engagement > 0 || b.through(), noEngagement)
	return c, true
}

func coversWrench(b Bolt) (coverage, bool) { return coverage{what: ofWrench}, b.does(Tighten) }

func coversLubricant(b Bolt) (coverage, bool) {
	c := coverage{what: ofLubricant}
	c.need(b.frictionStated(), noFriction)
	return c, true
}
