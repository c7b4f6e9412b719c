package figures

import (
	"drawdown/geometry/finding"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/strength"
)

// judgeFriction warns of coefficients that no bolt has, and of those that do
// not match the stated lubricant.
func (j *judge) judgeFriction() {
	stated := j.asked.Friction
	if stated == nil {
		return
	}
	for _, f := range []screw.Range{stated.Thread, stated.Head} {
		if f.Nominal < leastFriction || f.Nominal > mostFriction {
			j.warn(0, FrictionOdd, finding.Values{"friction": f.Nominal, "least": leastFriction, "most": mostFriction})
			return
		}
	}
	of, err := screw.FrictionOf(j.asked.Lubricant)
	if f := stated.Thread; err == nil && j.asked.Lubricant != "" && (f.High < of.Thread.Low || f.Low > of.Thread.High) {
		j.warn(0, FrictionOfOther, finding.Values{
			"friction": f.Nominal, "lubricant": j.asked.Lubricant, "low": of.Thread.Low, "high": of.Thread.High,
		})
	}
}

// judgeGalling reports stainless steel on stainless steel without a lubricant,
// which galls. Unless stated otherwise the mating thread is stainless too: the
// nut comes with the bolt.
func (j *judge) judgeGalling() {
	b := j.Bolt.Bolt
	dry := b.FrictionOpen() || screw.NothingOn(b.Lubricant)
	into, err := strength.ParseMaterial(j.Grip.TappedIn)
	if !j.class.Austenitic || !dry || err == nil && into.Name != stainless {
		return
	}
	tell := j.note
	if err == nil || b.Lubricant != "" { // the file says that there is none
		tell = j.warn
	}
	tell(0, TorqueGalls, nil)
}

// stainless is the name of stainless steel among the materials of parts.
const stainless = "stainless steel"

// mixedLubricants warns of bolts that look alike but have different friction:
// if mixed up, the same torque gives another preload. Each kind is compared
// with the first that differs.
func mixedLubricants(bolts []Bolt) []finding.Finding {
	var found []finding.Finding
	for i, late := range bolts {
		for _, early := range bolts[:i] {
			if !alike(early.Bolt, late.Bolt) || !otherFriction(early.Bolt, late.Bolt) {
				continue
			}
			found = append(found, finding.Warned(LubricantDiffers, finding.Values{
				"lubricant": late.Bolt.Lubricant, "other": early.Bolt.Lubricant, "kind": early.Kind, "thread": late.Bolt.Thread.Name, "class": late.Bolt.Class,
			}).About(finding.Place{Kind: late.Kind}))
			break
		}
	}
	return found
}

// alike reports whether two bolts have the same thread and the same class.
func alike(a, b screw.Bolt) bool {
	if a.Thread.Name == "" || a.Thread.Name != b.Thread.Name {
		return false
	}
	classA, errA := strength.ParseClass(a.Class, a.Thread)
	classB, errB := strength.ParseClass(b.Class, b.Thread)
	return errA == nil && errB == nil && classA.Name == classB.Name
}

// otherFriction reports whether the lubricants of two bolts are in different
// friction classes. Stated coefficients are the maker's and are not compared.
func otherFriction(a, b screw.Bolt) bool {
	if a.Friction != nil || b.Friction != nil || a.NutFactor > 0 || b.NutFactor > 0 {
		return false
	}
	spanA, errA := screw.FrictionOf(a.Lubricant)
	spanB, errB := screw.FrictionOf(b.Lubricant)
	return errA == nil && errB == nil && spanA != spanB
}
