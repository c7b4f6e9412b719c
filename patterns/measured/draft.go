package measured

import (
	"fmt"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/survey"
	"drawdown/patterns/form"
	"drawdown/patterns/writing"
)

// Draft gives the pattern file of a survey: the holes that are fixed, the
// others as comments and as a caution on the card, and a regular layout where
// the holes come near to one.
func (s Survey) Draft(solved survey.Solution) writing.Draft {
	d := writing.Draft{Title: s.Title, Machine: s.Machine, HolesMm: map[string]float64{}, Notes: []string{
		fmt.Sprintf("Worked out by drawdown survey from %d readings between %d holes.", len(s.Network.Readings), len(s.IDs)),
		fmt.Sprintf("The readings agree to %.2f mm (root mean square). Hold the printed card against the part.", solved.RMSMm),
	}}
	for _, i := range solved.Suspect {
		d.Notes = append(d.Notes, fmt.Sprintf("In doubt: the reading from %s to %s. Measure it again.", s.from(i), s.to(i)))
	}
	missing := map[int]bool{}
	for _, l := range solved.Loose {
		switch id := s.IDs[l.Hole]; l.Why {
		case survey.Free:
			missing[l.Hole] = true
			d.Notes = append(d.Notes, fmt.Sprintf("Missing: %s, which the readings do not fix. Measure %s.", id, s.Pairs(l.Next)))
			d.Cautions = append(d.Cautions, fmt.Sprintf("Hole %s is not in this pattern: its place is not measured", id))
		case survey.TwoPlaces:
			d.Notes = append(d.Notes, fmt.Sprintf("Not sure: %s may as well lie at %s.", id, writing.Place(l.Other)))
			d.Cautions = append(d.Cautions, fmt.Sprintf("Hole %s may lie elsewhere: the survey fits two places", id))
		case survey.Weak:
			d.Notes = append(d.Notes, fmt.Sprintf("Not sure: %s, to %.1f mm.", id, solved.ErrorsMm[l.Hole]))
			d.Cautions = append(d.Cautions, fmt.Sprintf("Hole %s is drawn to %.1f mm only: the survey hardly fixes it", id, solved.ErrorsMm[l.Hole]))
		}
	}
	if doubt := s.SideDoubt(solved); doubt != "" {
		d.Notes = append(d.Notes, "Look: "+doubt+".")
	}
	if solved.Mirrored {
		d.Notes = append(d.Notes, "Not sure: the mirror image fits the readings as well. Say with up which hole lies above the level line.")
		d.Cautions = append(d.Cautions, "This may be the mirror image of the part: the survey does not tell the two apart")
	}
	for i, id := range s.IDs {
		if missing[i] {
			continue
		}
		kind := form.ImpliedKind
		if diameter := s.Network.Diameters[i]; diameter > 0 {
			kind = "hole " + writing.Number(diameter)
			d.HolesMm[kind] = diameter
		}
		d.Joint.Fasteners = append(d.Joint.Fasteners, geometry.Fastener{ID: id, Kind: kind, At: solved.Points[i], Mark: markOf(id)})
	}
	d.Offer = s.Offer(solved)
	return d
}

// SideDoubt says that the holes named with up or down may have been taken for
// the wrong side; empty where they decide it well.
func (s Survey) SideDoubt(solved survey.Solution) string {
	against, of, far, found := s.Network.Lopsided(solved)
	if !found {
		return ""
	}
	key, other, named := "up", "below", s.Network.Above
	if len(named) == 0 {
		key, other, named = "down", "above", s.Network.Below
	}
	ids := make([]string, len(named))
	for k, h := range named {
		ids[k] = s.IDs[h]
	}
	return fmt.Sprintf("%s: %s puts %d of %d holes %s the line, and lies near it itself: one taken for the wrong side mirrors the part; name one far from the line, up: %s or down: %s",
		key, strings.Join(ids, ", "), against, of, other, s.IDs[far], s.IDs[far])
}

// markOf gives the mark that stands on the part where the holes were named for
// the work: an id that is short is what was chalked there.
func markOf(id string) string {
	if len([]rune(id)) > form.MostMark {
		return ""
	}
	return id
}

// Offer gives the regular layout that the holes come near to; nil where they
// come near to none, or where a hole is not fixed.
func (s Survey) Offer(solved survey.Solution) *writing.Layout {
	if len(solved.Loose) > 0 {
		return nil
	}
	steps := survey.MillimetreSteps
	if s.Inches {
		steps = survey.InchSteps
	}
	const nearMm = 0.3 // further off a layout says more than was measured
	near := max(nearMm, 5*solved.ScatterMm)
	regular, ok := survey.Recognise(solved.Points, near, solved.ScatterMm, steps)
	if !ok {
		return nil
	}
	layout := &writing.Layout{Regular: regular, ID: writing.RegularIDs[regular.Shape]}
	if diameter := s.Network.Diameters[0]; diameter > 0 {
		layout.Kind = "hole " + writing.Number(diameter)
	}
	for _, diameter := range s.Network.Diameters {
		if diameter != s.Network.Diameters[0] {
			return nil // a layout has one kind
		}
	}
	return layout
}

func (s Survey) from(reading int) string { return s.IDs[s.Network.Readings[reading].From] }

func (s Survey) to(reading int) string { return s.IDs[s.Network.Readings[reading].To] }

// Pairs writes pairs of holes: A to B, A to C.
func (s Survey) Pairs(pairs [][2]int) string {
	words := make([]string, len(pairs))
	for i, p := range pairs {
		words[i] = s.IDs[p[0]] + " to " + s.IDs[p[1]]
	}
	if len(words) == 0 {
		return "it to more holes"
	}
	return strings.Join(words, ", ")
}
