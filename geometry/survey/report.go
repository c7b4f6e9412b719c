package survey

import (
	"math"
	"slices"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Way is how a reading was taken, as named in the survey file.
type Way string

const (
	Centre  Way = "centre"  // centre to centre
	Outside Way = "outside" // over the far edges
	Inside  Way = "inside"  // between the near edges
)

// OverCentre is how much a reading exceeds the distance between the centres, in
// mm.
func (w Way) OverCentre(diameterA, diameterB float64) float64 {
	return map[Way]float64{Outside: 1, Inside: -1}[w] * (diameterA + diameterB) / 2
}

// Report describes a solved survey by the ids of its holes.
type Report struct {
	Network
	Solution
	IDs []string // of the holes
}

// Suspects reports the readings that do not fit the others, those left out
// first.
func (r Report) Suspects() []finding.Finding {
	var all []finding.Finding
	var rivals []int
	for _, i := range r.Suspect {
		switch {
		case !r.Out[i]:
			rivals = append(rivals, i)
			continue
		case r.disputes(i):
			continue // reported with its hole
		}
		way := "long"
		if r.Residuals[i] < 0 {
			way = "short"
		}
		at := r.Readings[i]
		all = append(all, finding.Warned(WrongReading, finding.Values{
			"from": r.IDs[at.From], "to": r.IDs[at.To], "off": unit.Length(math.Abs(r.Residuals[i])), "way": way, "taken": string(r.takenAs(i)),
		}).About(r.holes(at.From, at.To)))
	}
	if len(rivals) > 0 {
		all = append(all, finding.Warned(RivalReadings, finding.Values{"readings": r.readings(rivals)}))
	}
	return all
}

// SuspectReadings returns the reading that each of Suspects is about. For
// several that cannot be told apart it returns the first.
func (r Report) SuspectReadings() (numbers []int) {
	rivals := 0
	for _, i := range r.Suspect {
		switch {
		case r.disputes(i):
		case r.Out[i]:
			numbers = append(numbers, i)
		case rivals == 0:
			rivals = i + 1
		}
	}
	if rivals > 0 {
		numbers = append(numbers, rivals-1)
	}
	return numbers
}

// takenAs guesses that a reading was taken in another way than stated: then it
// is off by the diameters of its holes, or by half their sum. It returns "" if
// not.
func (r Report) takenAs(reading int) Way {
	at := r.Readings[reading]
	a, b := r.Diameters[at.From], r.Diameters[at.To]
	if a+b == 0 {
		return ""
	}
	written := Centre
	if r.Ways != nil {
		written = r.Ways[reading]
	}
	for _, way := range []Way{Centre, Outside, Inside} {
		off := way.OverCentre(a, b) - written.OverCentre(a, b)
		if way != written && math.Abs(r.Residuals[reading]-off) < 4*r.ScatterMm {
			return way
		}
	}
	return ""
}

// disputes reports whether a reading that was left out is at a disputed hole.
func (r Report) disputes(reading int) bool {
	at := r.Readings[reading]
	return r.Out[reading] && (r.Disputed[at.From] != nil || r.Disputed[at.To] != nil)
}

// DoubtDiameters reports the stated diameters that do not fit the readings.
func (r Report) DoubtDiameters() (all []finding.Finding) {
	for _, w := range r.WrongDiameters {
		count := 0
		for i := range r.Readings {
			if r.edge(i, w.Hole) != 0 {
				count++
			}
		}
		code := BadDiameter
		if w.OrReading {
			code = DiameterOrReading
		}
		all = append(all, finding.Warned(code, finding.Values{
			"hole": r.IDs[w.Hole], "stated": unit.Length(r.Diameters[w.Hole]), "fits": unit.Length(w.FitsMm), "count": count,
		}).About(r.holes(w.Hole)))
	}
	return all
}

// LooseHoles reports the holes that are not fixed, each with what to measure.
func (r Report) LooseHoles() []finding.Finding {
	var all []finding.Finding
	for _, l := range r.Loose {
		var next []finding.Finding
		for _, pair := range l.Next {
			next = append(next, r.between(pair[0], pair[1]))
		}
		values := finding.Values{
			"hole": r.IDs[l.Hole], "error": unit.Length(r.ErrorsMm[l.Hole]), "x": unit.Length(l.Other.X), "y": unit.Length(l.Other.Y), "next": next,
		}
		if l.Why == Disputed {
			values["readings"] = r.readings(r.Disputed[l.Hole])
		}
		all = append(all, finding.Warned(l.Why, values).About(r.holes(l.Hole)))
	}
	return all
}

// Doubts reports that the mirror image fits equally well, that all holes were
// assumed to be on one line, and which readings no other reading checks.
func (r Report) Doubts() []finding.Finding {
	var all []finding.Finding
	if r.Mirrored {
		all = append(all, finding.Warned(MirrorFits, nil))
	}
	if r.Straight && len(r.IDs) > 2 {
		all = append(all, finding.Noted(OneLine, nil))
	}
	if !r.Straight && len(r.Solution.Unchecked) > 0 {
		all = append(all, finding.Noted(Unchecked, finding.Values{"readings": r.readings(r.Solution.Unchecked)}))
	}
	return all
}

// Agreement reports how well the readings agree, and why one counts for less
// than stated.
func (r Report) Agreement() finding.Finding {
	const fineMm, fineStep, usualStep = 0.01, 0.001, 0.01 // steps of the printed figures
	values := finding.Values{"rms": unit.Length(r.RMSMm), "reading": unit.Length(r.ScatterMm)}
	stated, step := r.stated(), usualStep
	if stated < fineMm {
		values["fine"], step = true, fineStep
	}
	printedAlike := math.Round(r.ScatterMm/step) == math.Round(stated/step)
	if printedAlike || r.ScatterMm < moreThan*stated {
		return finding.Noted(Agreement, values)
	}
	values["expected"], values["stated"] = unit.Length(stated), "usual"
	if r.AccuracyMm > 0 {
		values["stated"] = "stated"
	}
	if r.ScatterMm < moreThan*r.accuracy() {
		values["rounded"] = unit.Length(r.RoundedToMm)
	}
	return finding.Noted(Agreement, values)
}

// moreThan is the ratio above which a difference in scatter is reported.
const moreThan = 1.05

func (r Report) holes(numbers ...int) finding.Place {
	at := finding.Place{}
	for _, n := range numbers {
		at.IDs = append(at.IDs, r.IDs[n])
	}
	return at
}

func (r Report) between(from, to int) finding.Finding {
	return finding.Noted(Between, finding.Values{"from": r.IDs[from], "to": r.IDs[to]}).About(r.holes(from, to))
}

// Reading names a reading by its two holes.
func (r Report) Reading(number int) finding.Finding {
	return r.between(r.Readings[number].From, r.Readings[number].To)
}

func (r Report) readings(numbers []int) []finding.Finding {
	var all []finding.Finding
	for _, i := range numbers {
		all = append(all, r.Reading(i))
	}
	return all
}

// Side reports that the holes named above or below the level line are weak
// evidence: they are near the line, and most of the others are on the other
// side of it. If they were named by eye and wrongly, the part is mirrored. It
// returns nil if the evidence is good.
func (r Report) Side() []finding.Finding {
	const near = 0.2 // share of the distance of the others on the other side
	side, named, way := "above", r.Above, 1.0
	if len(named) == 0 {
		side, named, way = "below", r.Below, -1
	}
	if len(named) == 0 || r.Straight {
		return nil
	}
	height := 0.0
	for _, h := range slices.Concat(r.Above, r.Below) {
		height = math.Max(height, math.Abs(r.Points[h].Y))
	}
	loose := r.WhyLoose()
	var of, against, far int
	furthest := 0.0
	for h, p := range r.Points {
		if loose[h] == Free || h == r.Level[0] || h == r.Level[1] {
			continue
		}
		of++
		if way*p.Y < 0 {
			against++
			if math.Abs(p.Y) > furthest {
				far, furthest = h, math.Abs(p.Y)
			}
		}
	}
	if 2*against <= of || height >= near*furthest {
		return nil
	}
	at := r.holes(named...)
	return []finding.Finding{finding.Warned(LopsidedSide, finding.Values{
		"side": side, "named": at.IDs, "against": against, "holes": of, "far": r.IDs[far],
	}).About(at)}
}

// WayRound reports in which direction the holes run around the part, in the
// order of their ids. It takes the longest start of the list that runs one way:
// more than half of the holes and more than half a turn. It returns nil if
// there is none.
func (r Report) WayRound() []finding.Finding {
	loose := r.WhyLoose()
	var at []geometry.Point
	for h, p := range r.Points {
		if loose[h] != Free {
			at = append(at, p)
		}
	}
	if len(at) < 3 || r.Straight {
		return nil
	}
	middle := geometry.Enclose(at).Centre
	total, run := 0.0, 1
	for k := 1; k < len(at); k++ {
		step := math.Remainder(at[k].AngleFrom(middle)-at[k-1].AngleFrom(middle), 360)
		if total*step < 0 || math.Abs(step) > 179 || math.Abs(total+step) > 361 {
			break
		}
		total, run = total+step, run+1
	}
	if math.Abs(total) <= 180 || 2*run <= len(at) {
		return nil
	}
	way := "anticlockwise"
	if total < 0 {
		way = "clockwise"
	}
	return []finding.Finding{finding.Noted(WayRound, finding.Values{"way": way, "first": r.IDs[0]})}
}

// WhyLoose gives the reason for each hole that is not fixed.
func (s Solution) WhyLoose() map[int]finding.Code {
	why := map[int]finding.Code{}
	for _, l := range s.Loose {
		why[l.Hole] = l.Why
	}
	return why
}
