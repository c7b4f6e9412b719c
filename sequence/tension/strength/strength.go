package strength

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension"
)

// Strength is what the material of a bolt withstands: the least values of its
// standard.
type Class struct {
	Name     string      // as the sheets print it: class 10.9, SAE J429 grade 8
	Standard string      // where the figures stand; empty for a stated proof stress
	Proof    unit.Stress // nominal stress under proof load; 0.85 of Yield where the standard gives none (stainless, B7)
	Yield    unit.Stress // lower yield or 0.2 % proof stress; the proof stress where only that is stated
	Tensile  unit.Stress // 0 where unknown

	Austenitic bool               // stainless steel A2, A4: it galls, friction is higher
	Assumed    tension.Assumption // about the yield stress or the proof load; zero where nothing was
}

// ParseClass reads the property class, grade or stated proof stress of a bolt
// with thread t: "10.9", "class 8.8", "grade 8", "SAE 5", "A2-70", "A193 B7",
// "830 MPa", "120 ksi". The error lists the classes of that thread, or says up
// to which size the class is made.
func ParseClass(text string, t thread.Thread) (Class, error) {
	name := className(text)
	if fitting := gradesNamed(name); len(fitting) > 0 {
		return ofSize(fitting, text, t)
	}
	stress, err := unit.ParseStress(text)
	if err == nil {
		return stated(text, stress)
	}
	return Class{}, fmt.Errorf("class %q is not known; allowed for %s: %s", text, t.Name, AllowedClasses(t))
}

// ofSize picks the row of a grade that holds for the thread.
func ofSize(rows []grade, text string, t thread.Thread) (Class, error) {
	for _, g := range rows {
		if g.holdsFor(t) {
			return g.strength(), nil
		}
	}
	why := fmt.Sprintf("%s is not for inch threads", rows[0].standard)
	switch sized := rowsOf(rows, t.Unified()); {
	case len(sized) > 0:
		why = fmt.Sprintf("%s gives it for %s to %s", sized[0].standard, sized[0].smallest, sized[len(sized)-1].largest)
	case !t.Unified():
		why = fmt.Sprintf("%s is not for metric threads", rows[0].standard)
	}
	return Class{}, fmt.Errorf("class %q does not exist in %s: %s; allowed for %s: %s", text, t.Name, why, t.Name, AllowedClasses(t))
}

// Stated proof stresses outside this span are a slip of the unit (common
// practice, no source: mild steel lies above 150 MPa, the strongest bolts
// below 1500 MPa).
const leastStated, mostStated unit.Stress = 100, 2000

func stated(text string, stress unit.Stress) (Class, error) {
	if stress < leastStated || stress > mostStated {
		return Class{}, fmt.Errorf("class %q: a proof stress of %.4g MPa is not that of a bolt; allowed: %g MPa to %g MPa", text, float64(stress), float64(leastStated), float64(mostStated))
	}
	return Class{
		Name:    "proof stress " + strings.Join(strings.Fields(text), " "),
		Proof:   stress,
		Yield:   stress, // lies above the proof stress, so this is the safe side
		Assumed: tension.Assumption{What: tension.AssumedYield, Stress: stress},
	}, nil
}

// allowedClasses lists what a bolt with thread t can be made to.
func AllowedClasses(t thread.Thread) string {
	var names []string
	for _, g := range grades {
		if g.holdsFor(t) && !slices.Contains(names, g.name) {
			names = append(names, g.name)
		}
	}
	return strings.Join(append(names, "or a proof stress such as 830 MPa or 120 ksi"), ", ")
}

func gradesNamed(name string) []grade {
	return filter(grades, func(g grade) bool { return g.name == name })
}

func rowsOf(rows []grade, unified bool) []grade {
	return filter(rows, func(g grade) bool { return g.unified == unified })
}

func filter(rows []grade, keep func(grade) bool) []grade {
	var kept []grade
	for _, g := range rows {
		if keep(g) {
			kept = append(kept, g)
		}
	}
	return kept
}

var (
	classWords = regexp.MustCompile(`^(?:din |en )*(?:iso ?898(?:-1)?|iso ?3506(?:-1)?|sae(?: j ?429)?|j ?429|astm)? ?(?:property class|strength class|class|cl\.?|grade|gr\.?)? ?`)
	boltGrade  = regexp.MustCompile(`^[1258]$`)
	stainless  = regexp.MustCompile(`^(a[24])[ /-]?(50|70|80)$`)
	chromeMoly = regexp.MustCompile(`^(?:a ?193m?)?[ /-]*(?:grade|gr\.?)? ?b ?7$`)
)

// className brings the many ways to write a class to the name in the table.
func className(text string) string {
	s := strings.Join(strings.Fields(strings.ToLower(strings.ReplaceAll(text, ",", "."))), " ")
	s = classWords.ReplaceAllString(s, "")
	if boltGrade.MatchString(s) {
		return "grade " + s
	}
	if m := stainless.FindStringSubmatch(s); m != nil {
		return strings.ToUpper(m[1]) + "-" + m[2]
	}
	if chromeMoly.MatchString(s) {
		return "A193 B7"
	}
	return s
}
