package overhaul

import (
	"slices"
	"strconv"

	"drawdown/geometry"
	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/measure"
	"drawdown/sequence/plan"
)

// turn is how the places of one bank become those of the other.
type turn string

const (
	unlike    turn = ""
	same      turn = "same"
	mirroredX turn = "mirror x"
	mirroredY turn = "mirror y"
)

// turnOf compares two joints by the places of equal ids, from the middle of each; where
// a bank has ids of its own, by their order in the files.
func turnOf(a, b geometry.Joint) turn {
	const tolerance = 0.5 // mm
	if len(a.Fasteners) != len(b.Fasteners) || len(a.Fasteners) < 2 {
		return unlike
	}
	at := b.Index()
	ownIDs := slices.ContainsFunc(a.Fasteners, func(f geometry.Fastener) bool {
		_, there := at[f.ID]
		return !there
	})
	middle := func(j geometry.Joint) geometry.Point {
		box := geometry.Bounds(j.Points())
		return box.Min.Add(box.Max).Scale(0.5)
	}
	from, to := middle(a), middle(b)
	for _, way := range []struct {
		turn
		x, y float64
	}{{same, 1, 1}, {mirroredX, -1, 1}, {mirroredY, 1, -1}} {
		fits := true
		for i, f := range a.Fasteners {
			if !ownIDs {
				i = at[f.ID]
			}
			p := f.At.Sub(from)
			fits = fits && (geometry.Point{X: way.x * p.X, Y: way.y * p.Y}).Distance(b.Fasteners[i].At.Sub(to)) <= tolerance
		}
		if fits {
			return way.turn
		}
	}
	return unlike
}

// banksAmiss compares the joints of the two banks.
func (o Overhaul) banksAmiss() (found []finding.Finding) {
	ofMirror := -1 // the first right joint that is a mirror image
	var turns []turn
	pairs := slices.DeleteFunc(o.sisterSteps(), func(p sisters) bool { return o.Tasks[p.left].Joint == nil })
	for _, p := range pairs {
		way := turnOf(o.Tasks[p.left].Joint.Joint, o.Tasks[p.right].Joint.Joint)
		turns = append(turns, way)
		if ofMirror < 0 && (way == mirroredX || way == mirroredY) {
			ofMirror = len(turns) - 1
		}
	}
	for i, p := range pairs {
		left, right := o.Tasks[p.left].Joint, o.Tasks[p.right].Joint
		var differs, unturned, shared *finding.Finding
		if ofMirror >= 0 && turns[i] != unlike && turns[i] != turns[ofMirror] {
			differs = warned(BanksDiffer, finding.Values{
				"title": right.Title, "other": o.Tasks[pairs[ofMirror].right].Joint.Title, "turn": string(turns[ofMirror]),
			})
		}
		if front := left.Joint.Front; front == right.Joint.Front && (turns[i] == mirroredX && (front == geometry.FrontLeft || front == geometry.FrontRight) || turns[i] == mirroredY && (front == geometry.FrontTop || front == geometry.FrontBottom)) {
			unturned = warned(FrontUnturned, finding.Values{"title": right.Title, "sister": left.Title, "front": string(front)})
		}
		if labels := sharedBores(left.Joint, right.Joint); len(labels) > 0 {
			shared = warned(CylindersShared, finding.Values{"title": right.Title, "other": left.Title, "labels": labels})
		}
		found = append(found, about(p.right, differs, unturned, shared, limitsDiffer(left, right))...)
	}
	for i := range o.Tasks {
		found = append(found, about(i, o.cylinderUnknown(i))...)
	}
	return found
}

// limitsDiffer looks for a value that both banks measure, once each, within other limits.
func limitsDiffer(left, right *plan.Plan) *finding.Finding {
	named := func(p *plan.Plan, what string) (all []measure.Value) {
		for _, v := range p.Measures {
			if v.What == what {
				all = append(all, v)
			}
		}
		return all
	}
	same := func(a, b *unit.Decimal) bool {
		return a == nil && b == nil || a != nil && b != nil && a.Millionths == b.Millionths
	}
	for _, v := range right.Measures {
		other := named(left, v.What)
		if len(other) != 1 || len(named(right, v.What)) != 1 || other[0].Unit != v.Unit || same(v.From, other[0].From) && same(v.To, other[0].To) {
			continue
		}
		return warned(LimitsDiffer, finding.Values{"what": v.What, "title": right.Title, "sister": left.Title})
	}
	return nil
}

func sharedBores(a, b geometry.Joint) (labels []string) {
	for _, bore := range b.Bores {
		_, numbered := labelNumber(bore.Label)
		if numbered && slices.ContainsFunc(a.Bores, func(other geometry.Bore) bool { return other.Label == bore.Label }) {
			labels = append(labels, `"`+bore.Label+`"`)
		}
	}
	return labels
}

var numberedLabel = expression.Lazily(`^(.*\D)(\d{1,3})$`)

// labelNumber is the number at the end of a label with letters: cyl 1, in 3.
func labelNumber(label string) (n int, found bool) {
	m := numberedLabel.FindStringSubmatch(label)
	if m == nil {
		return 0, false
	}
	n, _ = strconv.Atoi(m[2])
	return n, true
}

// cylinderUnknown looks for valves of cylinders that no joint of this bank has a bore
// for: stations of two letters each with the same numbers, such as in 5 and ex 5.
func (o Overhaul) cylinderUnknown(task int) *finding.Finding {
	joint := o.Tasks[task].Joint
	if joint == nil {
		return nil
	}
	valves := valvesOf(joint.Joint)
	if len(valves) == 0 {
		return nil
	}
	for _, j := range o.Joints() {
		bores := boresOf(j.Joint)
		if len(bores) != len(valves) || !ofOneSide(j.Title, joint.Title) {
			continue
		}
		var labels []string
		for _, s := range joint.Joint.Stations {
			if n, _ := labelNumber(s.Label); !bores[n] {
				labels = append(labels, `"`+s.Label+`"`)
			}
		}
		if len(labels) == 0 {
			return nil
		}
		return warned(CylinderUnknown, finding.Values{"title": joint.Title, "labels": labels, "other": j.Title})
	}
	return nil
}

// valvesOf lists the cylinders of the stations; empty where these are not two letters
// with the same numbers.
func valvesOf(j geometry.Joint) map[int]bool {
	count, letters := map[int]int{}, map[string]bool{}
	for _, s := range j.Stations {
		m := numberedLabel.FindStringSubmatch(s.Label)
		if m == nil {
			return nil
		}
		n, _ := strconv.Atoi(m[2])
		count[n]++
		letters[m[1]] = true
	}
	numbers := map[int]bool{}
	for n, k := range count {
		if k < 2 || len(letters) != 2 {
			return nil
		}
		numbers[n] = true
	}
	return numbers
}

func boresOf(j geometry.Joint) map[int]bool {
	numbers := map[int]bool{}
	for _, b := range j.Bores {
		if n, numbered := labelNumber(b.Label); numbered {
			numbers[n] = true
		}
	}
	return numbers
}
