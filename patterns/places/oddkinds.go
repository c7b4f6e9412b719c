package places

import (
	"math"
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
)

// OddKind is the one fastener of another kind than all others whose ids have
// the same letters, if that kind has its own letters.
type OddKind struct {
	Index          int
	Letters, Usual string // Usual is the kind of the others
}

var lettersAndNumber = expression.Lazily(`^(.*\D)(\d{1,6})$`)

// OddKinds finds such fasteners: M8 of the kind side, while M1 to M7 are of the
// kind main and S1 to S3 of the kind side.
func OddKinds(joint geometry.Joint) (odd []OddKind) {
	members := map[string][]int{}
	var all []string
	for i, f := range joint.Fasteners {
		m := lettersAndNumber.FindStringSubmatch(f.ID)
		if m == nil {
			continue
		}
		if members[m[1]] == nil {
			all = append(all, m[1])
		}
		members[m[1]] = append(members[m[1]], i)
	}
	lettersOf := map[string]string{} // of a kind
	for _, letters := range all {
		usual, at := usualKind(joint, members[letters])
		if usual == "" {
			continue
		}
		if lettersOf[usual] != "" {
			return nil // the letters do not follow the kinds
		}
		lettersOf[usual] = letters
		if at >= 0 {
			odd = append(odd, OddKind{at, letters, usual})
		}
	}
	for _, o := range odd {
		if own := lettersOf[joint.Fasteners[o.Index].Kind]; own == "" {
			return nil
		}
	}
	if odd == nil {
		return oddInitial(joint)
	}
	return odd
}

// oddInitial finds the one fastener whose id does not begin with the initial of
// its kind, while all others do: L2 of the kind medium, with L1 long, M1
// medium, S1 short.
func oddInitial(joint geometry.Joint) (odd []OddKind) {
	const fewest = 6
	kindOf := map[string]string{} // by its first letter
	for _, f := range joint.Fasteners {
		if f.Kind == "" {
			return nil
		}
		initial := strings.ToUpper(string([]rune(f.Kind)[0]))
		if other := kindOf[initial]; other != "" && other != f.Kind {
			return nil
		}
		kindOf[initial] = f.Kind
	}
	for i, f := range joint.Fasteners {
		m := lettersAndNumber.FindStringSubmatch(f.ID)
		if m == nil || kindOf[strings.ToUpper(m[1])] == "" {
			return nil
		}
		if usual := kindOf[strings.ToUpper(m[1])]; usual != f.Kind {
			odd = append(odd, OddKind{i, m[1], usual})
		}
	}
	if len(kindOf) < 2 || len(joint.Fasteners) < fewest || len(odd) != 1 {
		return nil
	}
	return odd
}

// usualKind returns the kind of all members, or of all but one; it is empty if
// there is no such kind. At is the index of the exception, or -1.
func usualKind(joint geometry.Joint, members []int) (usual string, at int) {
	count := map[string]int{}
	for _, i := range members {
		count[joint.Fasteners[i].Kind]++
	}
	for _, i := range members {
		switch kind := joint.Fasteners[i].Kind; {
		case count[kind] == len(members):
			return kind, -1
		case count[kind] == 1 && len(count) == 2 && len(members) >= fewestOfSeries:
			at = i
		default:
			usual = kind
		}
	}
	if count[usual] < len(members)-1 {
		return "", -1
	}
	return usual, at
}

// innerOuter warns of kinds named inner and outer whose places are the other
// way round.
func (c check) innerOuter() {
	from := func(word string) (kind string, distance float64) {
		n := 0
		middle := geometry.Centroid(c.Joint.Points())
		axis := geometry.LongAxis(c.Joint.Points())
		for _, f := range c.Joint.Fasteners {
			if strings.Contains(strings.ToLower(f.Kind), word) {
				at := f.At.Sub(middle)
				kind, n = f.Kind, n+1
				distance += math.Abs(at.X*axis.Y - at.Y*axis.X)
			}
		}
		return kind, distance / float64(max(n, 1))
	}
	for _, words := range [][2]string{{"inner", "outer"}, {"innen", "außen"}, {"intérieur", "extérieur"}, {"interior", "exterior"}} {
		inner, in := from(words[0])
		outer, out := from(words[1])
		if inner != "" && outer != "" && in > out+2*toleranceMm {
			at := slices.IndexFunc(c.Joint.Fasteners, func(f geometry.Fastener) bool { return f.Kind == inner })
			c.Warn(c.Fasteners[at], InnerOuter, finding.Values{"inner": inner, "outer": outer})
		}
	}
}

func (c check) oddKinds() {
	for _, o := range OddKinds(c.Joint) {
		f := c.Joint.Fasteners[o.Index]
		c.Warn(c.Fasteners[o.Index], KindOdd, finding.Values{"id": f.ID, "kind": f.Kind, "letters": o.Letters, "usual": o.Usual})
	}
}
