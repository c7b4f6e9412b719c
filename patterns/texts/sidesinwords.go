package texts

import (
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

var (
	atSide = list("at on an am auf à au côté en al")
	// frontWords and rearWords name an end of a machine without a label (common practice).
	frontWords = list("front pulley vorn vorne vorderen riemenscheibe avant poulie delante delantero polea")
	rearWords  = list("rear back flywheel hinten hinteren schwungrad arrière volant atrás trasero")
	intakes    = list("intake inlet einlass admission admisión")
	exhausts   = list("exhaust auslass échappement escape")
	articles   = list("the der dem den das la le les el los las l")
	sideWords  = list("side end seite ende bord lado extremo")
)

// towards returns the direction of a side of the part, by its label or by the front.
func (f facts) towards(side string) (direction geometry.Point, known bool) {
	box := geometry.Bounds(f.Joint.Points())
	middle := box.Min.Add(box.Max).Scale(0.5)
	off := func(of []string) (geometry.Point, bool) {
		for _, l := range f.Joint.Labels {
			if slices.ContainsFunc(stemsOf(l.Text), func(w string) bool { return slices.Contains(of, w) }) {
				return mainAxis(l.At.Sub(middle), box), true
			}
		}
		return geometry.Point{}, false
	}
	opposite := func(of []string) (geometry.Point, bool) {
		p, known := off(of)
		return p.Scale(-1), known
	}
	if p, known := off([]string{side}); known {
		return p, p != geometry.Point{}
	}
	front := directions[f.Joint.Front]
	switch {
	case slices.Contains(intakes, side):
		return opposite(exhausts)
	case slices.Contains(exhausts, side):
		return opposite(intakes)
	case slices.Contains(frontWords, side):
		return front, front != geometry.Point{}
	case slices.Contains(rearWords, side):
		return front.Scale(-1), front != geometry.Point{}
	}
	return geometry.Point{}, false
}

var directions = map[geometry.Front]geometry.Point{
	geometry.FrontLeft: {X: -1}, geometry.FrontRight: {X: 1}, geometry.FrontTop: {Y: 1}, geometry.FrontBottom: {Y: -1},
}

// mainAxis returns the direction along the axis on which a place is further out; none
// near the middle.
func mainAxis(off geometry.Point, box geometry.Box) geometry.Point {
	const least = 0.5 // of the way to the edge
	x, y := off.X/max(box.Width()/2, 1), off.Y/max(box.Height()/2, 1)
	sign := func(v float64) float64 {
		if v < 0 {
			return -1
		}
		return 1
	}
	switch {
	case max(x, -x, y, -y) < least:
		return geometry.Point{}
	case max(x, -x) > max(y, -y):
		return geometry.Point{X: sign(x)}
	}
	return geometry.Point{Y: sign(y)}
}

// sidePhrase is a side that a clause names: at the flywheel end.
type sidePhrase struct {
	side    string
	at      int // its first word
	from    bool
	towards geometry.Point
}

func (f facts) sidePhrases(clause []word) (all []sidePhrase) {
	for i, w := range clause {
		from := w.is(list("from von vom ab depuis du de desde"))
		if !from && !w.is(atSide) {
			continue
		}
		k := i + 1
		for k < len(clause) && clause[k].is(articles) {
			k++
		}
		if k == len(clause) || from && !(k+1 < len(clause) && clause[k+1].is(sideWords)) && !clause[k].is(frontWords) && !clause[k].is(rearWords) {
			continue
		}
		if direction, known := f.towards(strings.TrimSuffix(clause[k].low, "s")); known {
			all = append(all, sidePhrase{clause[k].as, i, from, direction})
		}
	}
	return all
}

// atSides finds fasteners or caps that a clause has at a side, and that are at the
// opposite one in the file; and a row that is numbered from the other side.
func (f facts) atSides(text string) (found []finding.Finding) {
	box := geometry.Bounds(f.Joint.Points())
	middle := box.Min.Add(box.Max).Scale(0.5)
	for _, sentence := range sentencesOf(text) {
		for _, clause := range clausesOf(sentence) {
			phrases := f.sidePhrases(clause)
			if len(phrases) != 1 || slices.ContainsFunc(clause, func(w word) bool { return w.is(conditions) || w.is(notWords) }) {
				continue
			}
			p := phrases[0]
			if p.from {
				found = append(found, f.numberedFrom(text, clause, p)...)
				continue
			}
			named := f.meant(clause[:p.at])
			if len(named) == 0 || len(named) > len(f.Joint.Fasteners)/2 && len(named) == len(f.Joint.Fasteners) {
				continue
			}
			var ids []string
			var at []geometry.Point
			for _, i := range f.every(nil) {
				if named[i] {
					ids, at = append(ids, f.Joint.Fasteners[i].ID), append(at, f.Joint.Fasteners[i].At)
				}
			}
			const clearly = 0.2 // of the way to the edge
			reach := max(box.Width()*max(p.towards.X, -p.towards.X), box.Height()*max(p.towards.Y, -p.towards.Y)) / 2
			if geometry.Centroid(at).Sub(middle).Dot(p.towards) < -clearly*reach {
				found = append(found, finding.Warned(TextAtSide, finding.Values{"text": text, "names": ids[:min(len(ids), mostIDs)], "side": p.side}))
			}
		}
	}
	return found
}

// numberedFrom finds a row of caps or cylinders whose last number is at the side from
// which a clause numbers them: caps 1 to 5 from the pulley end.
func (f facts) numberedFrom(text string, clause []word, p sidePhrase) []finding.Finding {
	places := map[string]geometry.Point{}
	for _, c := range f.Joint.Clusters {
		index := f.Joint.Index()
		places[c.Name] = geometry.Centroid(f.Joint.PointsOf(geometry.Mapped(c.Of, func(id string) int { return index[id] })))
	}
	for _, b := range f.Joint.Bores {
		places[b.Label] = b.Centre
	}
	names := f.numbersIn(clause[:p.at])
	if len(names) < fewestOfLetters {
		return nil
	}
	first, known := places[names[0]]
	last, too := places[names[len(names)-1]]
	if !known || !too || first.Sub(last).Dot(p.towards) >= -1 {
		return nil
	}
	return []finding.Finding{finding.Warned(TextFromSide, finding.Values{"text": text, "name": names[len(names)-1], "side": p.side})}
}

// numbersIn returns the names of the file that a clause has as a word and numbers, by
// rising number: caps 1 to 3.
func (f facts) numbersIn(clause []word) (names []string) {
	add := func(called string, n int) {
		for _, of := range f.numberedNames(called, n) {
			if !slices.Contains(names, of) {
				names = append(names, of)
			}
		}
	}
	called, last, to := "", 0, false
	for _, w := range clause {
		n, err := strconv.Atoi(w.low)
		switch {
		case len(f.named[callOf(w.low)]) >= fewestOfLetters:
			called, last, to = callOf(w.low), 0, false
		case err != nil && !w.is(joins):
			to = false
		case err != nil:
			to = w.is(list("to bis à a"))
		case called != "":
			if to && last > 0 {
				for k := last + 1; k < n; k++ {
					add(called, k)
				}
			}
			add(called, n)
			last, to = n, false
		}
	}
	return names
}

// numberedNames returns the names of clusters and bores with this word and number.
func (f facts) numberedNames(called string, n int) (names []string) {
	is := func(name string) bool {
		m := wordAndNumber.FindStringSubmatch(name)
		return m != nil && callOf(m[1]) == called && m[2] == strconv.Itoa(n)
	}
	for _, c := range f.Joint.Clusters {
		if is(c.Name) {
			names = append(names, c.Name)
		}
	}
	for _, b := range f.Joint.Bores {
		if is(b.Label) && !slices.Contains(names, b.Label) {
			names = append(names, b.Label)
		}
	}
	return names
}
