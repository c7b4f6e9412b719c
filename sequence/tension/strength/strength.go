package strength

import (
	"regexp"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
)

// Class is the strength of a bolt's material: the least values of its standard.
type Class struct {
	Name     string      // designation: 10.9, SAE J429 grade 8, A2-70, 830 MPa
	Standard string      // source of the figures; "" for a stated proof stress
	Proof    unit.Stress // nominal stress under proof load; 0.85 of Yield if the standard gives none (stainless, B7)
	Yield    unit.Stress // lower yield or 0.2 % proof stress; the proof stress if only that is stated
	Tensile  unit.Stress // 0 if unknown

	Austenitic bool              // stainless steel A2, A4: it galls, and friction is higher
	Assumed    []finding.Finding // about the yield stress or the proof load
	sort       string
}

// ParseClass reads the property class, grade or stated proof stress of a bolt
// with thread t: "10.9", "class 8.8", "grade 8", "SAE 5", "A2-70", "A193 B7",
// "830 MPa", "120 ksi". The error lists the classes for that thread, or says up
// to which size the class is made.
func ParseClass(text string, t thread.Thread) (Class, error) {
	name := className(text)
	if fitting := rowsWhere(grades, func(g grade) bool { return g.name == name }); len(fitting) > 0 {
		return ofSize(fitting, text, t)
	}
	stress, err := unit.ParseStress(text)
	if err == nil {
		return stated(text, stress)
	}
	return Class{}, finding.Failed(NoSuchClass, finding.Values{"written": text, "thread": t.Name, "allowed": allowedClasses(t)})
}

// ofSize picks the row of a grade for the thread.
func ofSize(rows []grade, text string, t thread.Thread) (Class, error) {
	for _, g := range rows {
		if g.holdsFor(t) {
			return g.strength(), nil
		}
	}
	missing := finding.Values{"written": text, "thread": t.Name, "standard": rows[0].standard, "inch": t.Unified(), "allowed": allowedClasses(t)}
	if sized := rowsWhere(rows, func(g grade) bool { return g.unified == t.Unified() }); len(sized) > 0 {
		missing["standard"], missing["smallest"], missing["largest"] = sized[0].standard, sized[0].smallest, sized[len(sized)-1].largest
	}
	return Class{}, finding.Failed(ClassNotInSize, missing)
}

// Stated proof stresses outside this range have a wrong unit (common practice,
// no source: mild steel is above 150 MPa, the strongest bolts below 1500 MPa).
const leastStated, mostStated unit.Stress = 100, 2000

func stated(text string, stress unit.Stress) (Class, error) {
	if stress < leastStated || stress > mostStated {
		return Class{}, finding.Failed(NoBoltsProofStress, finding.Values{"written": text, "stress": stress, "least": leastStated, "most": mostStated})
	}
	return Class{
		Name:    strings.Join(strings.Fields(text), " "),
		Proof:   stress,
		Yield:   stress, // it is above the proof stress, so this is the safe side
		Assumed: []finding.Finding{finding.Noted(YieldAssumed, finding.Values{"yield": stress})},
		sort:    statedStress,
	}, nil
}

// Classes are named in three ways.
const (
	property     = "property"
	statedStress = "stated"
)

// Named returns the name of the class for render/words.
func (s Class) Named() finding.Finding {
	return finding.Noted(ClassNamed, finding.Values{"name": s.Name, "sort": s.sort})
}

// Missing reports that no class is stated, and lists those for the thread.
func Missing(t thread.Thread) error {
	return finding.Failed(NoClass, finding.Values{"thread": t.Name, "allowed": allowedClasses(t)})
}

// allowedClasses lists the classes for a bolt with thread t.
func allowedClasses(t thread.Thread) []string {
	var names []string
	for _, g := range grades {
		if g.holdsFor(t) && !slices.Contains(names, g.name) {
			names = append(names, g.name)
		}
	}
	return names
}

func rowsWhere(rows []grade, keep func(grade) bool) []grade {
	return slices.DeleteFunc(slices.Clone(rows), func(g grade) bool { return !keep(g) })
}

var (
	classWords = regexp.MustCompile(`^(?:din |en )*(?:iso ?898(?:-1)?|iso ?3506(?:-1)?|sae(?: j ?429)?|j ?429|astm)? ?(?:property class|strength class|class|cl\.?|grade|gr\.?)? ?`)
	boltGrade  = regexp.MustCompile(`^[1258]$`)
	stainless  = regexp.MustCompile(`^(a[24])[ /-]?(50|70|80)$`)
	flangeBolt = regexp.MustCompile(`^(?:a ?(?:193|320)m?)?[ /-]*(?:grade|gr\.?)? ?(b|l) ?(7m?|16|8m?)(?:[ ,]*(?:class|cl\.?) ?1)?$`)
	structure  = regexp.MustCompile(`^(?:f ?3125)?[ /-]*(?:grade|gr\.?)? ?a ?(325|490)$`)
)

// className converts the many ways to write a class to the name in the table.
func className(text string) string {
	s := strings.Join(strings.Fields(strings.ToLower(strings.ReplaceAll(text, ",", "."))), " ")
	s = classWords.ReplaceAllString(s, "")
	if boltGrade.MatchString(s) {
		return "grade " + s
	}
	if m := stainless.FindStringSubmatch(s); m != nil {
		return strings.ToUpper(m[1]) + "-" + m[2]
	}
	if m := flangeBolt.FindStringSubmatch(s); m != nil {
		return map[string]string{"b": "A193 B", "l": "A320 L"}[m[1]] + strings.ToUpper(m[2])
	}
	if m := structure.FindStringSubmatch(s); m != nil {
		return "A" + m[1]
	}
	return s
}
