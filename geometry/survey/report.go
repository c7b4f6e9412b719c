package survey

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Way is how a reading was taken, by the words of the survey file.
type Way string

const (
	Centre  Way = "centre"  // centre to centre
	Outside Way = "outside" // over the far edges
	Inside  Way = "inside"  // between the near edges
)

// overCentre is what a reading shows over the distance of the centres, in mm.
func (w Way) overCentre(diameterA, diameterB float64) float64 {
	switch w {
	case Outside:
		return (diameterA + diameterB) / 2
	case Inside:
		return -(diameterA + diameterB) / 2
	}
	return 0
}

// Report says what a solved survey shows, by the ids of its holes.
type Report struct {
	Network
	Solution
	IDs  []string // of the holes
	Ways []Way    // of the readings
}

// Suspects are the readings that do not fit the others, those that were left
// out first.
func (r Report) Suspects() []finding.Finding {
	var all []finding.Finding
	var rivals []int
	for _, i := range r.Suspect {
		if !r.Out[i] {
			rivals = append(rivals, i)
			continue
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

// takenAs guesses that a reading was taken another way than it is written: it
// is off by the diameters of its holes then, or by half of their sum. Empty
// where it was not.
func (r Report) takenAs(reading int) Way {
	at := r.Readings[reading]
	a, b := r.Diameters[at.From], r.Diameters[at.To]
	if a+b == 0 {
		return ""
	}
	written := r.Ways[reading]
	for _, way := range []Way{Centre, Outside, Inside} {
		off := way.overCentre(a, b) - written.overCentre(a, b)
		if way != written && math.Abs(r.Residuals[reading]-off) < 4*r.ScatterMm {
			return way
		}
	}
	return ""
}

// LooseHoles are the holes that are not fixed, each with what to measure.
func (r Report) LooseHoles() []finding.Finding {
	codes := map[Looseness]finding.Code{Free: FreeHole, Weak: WeakHole, TwoPlaces: TwicePlaced}
	var all []finding.Finding
	for _, l := range r.Loose {
		var next []finding.Finding
		for _, pair := range l.Next {
			next = append(next, r.between(pair[0], pair[1]))
		}
		all = append(all, finding.Warned(codes[l.Why], finding.Values{
			"hole": r.IDs[l.Hole], "error": unit.Length(r.ErrorsMm[l.Hole]), "x": unit.Length(l.Other.X), "y": unit.Length(l.Other.Y), "next": next,
		}).About(r.holes(l.Hole)))
	}
	return all
}

// Mirror says that the mirror image of the part fits as well; nil where a named
// hole decides it well.
func (r Report) Mirror() []finding.Finding {
	if !r.Mirrored {
		return nil
	}
	return []finding.Finding{finding.Warned(MirrorFits, nil)}
}

// Shape says that the holes were taken to lie in one line, or else which
// readings no other one checks.
func (r Report) Shape() []finding.Finding {
	switch {
	case r.Straight && len(r.IDs) > 2:
		return []finding.Finding{finding.Noted(OneLine, nil)}
	case !r.Straight && len(r.Solution.Unchecked) > 0:
		return []finding.Finding{finding.Noted(Unchecked, finding.Values{"readings": r.readings(r.Solution.Unchecked)})}
	}
	return nil
}

// Agreement says how well the readings agree, and why one counts for less than
// was stated.
func (r Report) Agreement() finding.Finding {
	values := finding.Values{"rms": unit.Length(r.RMSMm), "reading": unit.Length(r.ScatterMm)}
	if stated := r.accuracy(); r.ScatterMm >= 1.05*stated {
		values["expected"], values["stated"] = unit.Length(stated), "usual"
		if r.AccuracyMm > 0 {
			values["stated"] = "stated"
		}
	}
	return finding.Noted(Agreement, values)
}

// WayRound says in which way the ids run round the part; nil where they do not.
func (r Report) WayRound() []finding.Finding {
	clockwise, ok := r.Round()
	if !ok {
		return nil
	}
	way := "anticlockwise"
	if clockwise {
		way = "clockwise"
	}
	return []finding.Finding{finding.Noted(WayRound, finding.Values{"way": way, "first": r.IDs[0]})}
}

// Side says that the holes named above or below the line may have been taken
// for the wrong side; nil where they decide it well.
func (r Report) Side() []finding.Finding {
	against, of, far, found := r.Lopsided(r.Solution)
	if !found {
		return nil
	}
	side, named := "above", r.Above
	if len(named) == 0 {
		side, named = "below", r.Below
	}
	at := r.holes(named...)
	return []finding.Finding{finding.Warned(LopsidedSide, finding.Values{
		"side": side, "named": at.IDs, "against": against, "holes": of, "far": r.IDs[far],
	}).About(at)}
}

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

func (r Report) readings(numbers []int) []finding.Finding {
	var all []finding.Finding
	for _, i := range numbers {
		all = append(all, r.between(r.Readings[i].From, r.Readings[i].To))
	}
	return all
}
