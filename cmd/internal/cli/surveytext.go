package cli

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"

	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/survey"
)

// printSurvey prints the wrong readings, the places, then what the user should
// look at.
func printSurvey(to io.Writer, a job.SurveyAnswer) {
	say := func(format string, args ...any) { fmt.Fprintf(to, format+"\n", args...) }
	say("%s: %s, %s", a.Title, counted(len(a.IDs), "hole"), counted(len(a.Network.Readings), "reading"))
	printSuspects(to, a)
	columns := report.Columns{-14, 10, 10, 8}
	columns.Row(to, "  hole", "x mm", "y mm", "± mm")
	why := looseness(a)
	for i, id := range a.IDs {
		if why[i] == survey.Free {
			columns.Row(to, "  "+id, "-", "-", "loose")
			continue
		}
		columns.Row(to, "  "+id, hundredth(a.Points[i].X), hundredth(a.Points[i].Y), hundredth(a.ErrorsMm[i]))
	}
	if clockwise, ok := a.Round(); ok {
		say("as drawn, the ids run %s round the part, from %s; where they run the other way on it, up or down is wrong", roundWord(clockwise), a.IDs[0])
	}
	say("readings agree to %.3f mm (root mean square); one reading counts as ± %.2f mm%s", a.RMSMm, a.ScatterMm, whyScatter(a))
	printResiduals(to, a)
	printLoose(to, a)
	if a.Mirrored {
		say("not told apart: the mirror image fits as well; name a hole off the level line with up")
	}
	if a.Straight && len(a.IDs) > 2 {
		say("all holes are taken to lie in one straight line, which the readings fit")
	}
	if n := len(a.Unchecked); n > 0 && !a.Straight {
		say("not checked by any other reading: %s", someReadings(a, a.Unchecked))
	}
	if a.Offer != nil {
		say("all holes lie within %.2f mm of %s", a.Offer.OffMm, a.Offer.Words())
	}
}

func roundWord(clockwise bool) string {
	if clockwise {
		return "clockwise"
	}
	return "anticlockwise"
}

// whyScatter says why a reading counts for less than was stated.
func whyScatter(a job.SurveyAnswer) string {
	stated, word := a.Network.AccuracyMm, "stated"
	if stated == 0 {
		stated, word = survey.UsualAccuracyMm, "usual"
	}
	if a.ScatterMm < 1.05*stated {
		return ""
	}
	return fmt.Sprintf(", not the %s ± %.2f mm, since they differ by more than that from each other", word, stated)
}

// hundredth writes millimetres.
func hundredth(mm float64) string { return fmt.Sprintf("%.2f", tidy(mm)) }

// tidy takes the sign off a zero.
func tidy(v float64) float64 {
	if math.Abs(v) < 0.005 {
		return 0
	}
	return v
}

func looseness(a job.SurveyAnswer) map[int]survey.Looseness {
	why := map[int]survey.Looseness{}
	for _, l := range a.Loose {
		why[l.Hole] = l.Why
	}
	return why
}

// printResiduals prints the readings that are furthest out.
func printResiduals(to io.Writer, a job.SurveyAnswer) {
	const shown = 3
	var order []int
	for i := range a.Residuals {
		if !a.Out[i] && !slices.Contains(a.Unchecked, i) {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(i, k int) int { return cmp.Compare(math.Abs(a.Residuals[k]), math.Abs(a.Residuals[i])) })
	if len(order) > 0 {
		fmt.Fprintln(to, "furthest out, what was read less what fits best:")
	}
	for _, i := range order[:min(len(order), shown)] {
		fmt.Fprintf(to, "  %-12s %+.2f mm\n", readingWords(a, i), a.Residuals[i])
	}
}

func readingWords(a job.SurveyAnswer, i int) string {
	r := a.Network.Readings[i]
	return a.IDs[r.From] + " to " + a.IDs[r.To]
}

// printSuspects names the readings that do not fit the others.
func printSuspects(to io.Writer, a job.SurveyAnswer) {
	var rivals []int
	for _, i := range a.Suspect {
		if !a.Out[i] {
			rivals = append(rivals, i)
			continue
		}
		way := "long"
		if a.Residuals[i] < 0 {
			way = "short"
		}
		fmt.Fprintf(to, "wrong: %s is %.2f mm too %s%s; it is left out, measure it again\n", readingWords(a, i), math.Abs(a.Residuals[i]), way, asIf(a, i))
	}
	if len(rivals) > 0 {
		fmt.Fprintf(to, "one of these is wrong, which the others cannot tell; measure them again: %s\n", someReadings(a, rivals))
	}
}

// asIf guesses that a reading was taken another way than it is written: it is
// off by the diameters of its holes then, or by half of their sum.
func asIf(a job.SurveyAnswer, i int) string {
	r := a.Network.Readings[i]
	half := (a.Network.Diameters[r.From] + a.Network.Diameters[r.To]) / 2
	if half == 0 {
		return ""
	}
	ways := []struct {
		how, words string
		overCentre float64 // what it reads over the distance of the centres
	}{{"centre", "centre to centre", 0}, {"outside", "over the outsides", half}, {"inside", "between the insides", -half}}
	written := 0.0
	for _, w := range ways {
		if w.how == a.How[i] {
			written = w.overCentre
		}
	}
	for _, w := range ways {
		if w.how != a.How[i] && math.Abs(a.Residuals[i]-(w.overCentre-written)) < 4*a.ScatterMm {
			return ", as if taken " + w.words
		}
	}
	return ""
}

func someReadings(a job.SurveyAnswer, numbers []int) string {
	const shown = 8
	text := ""
	for k, i := range numbers {
		if k == shown {
			return fmt.Sprintf("%s and %d more", text, len(numbers)-shown)
		}
		if k > 0 {
			text += ", "
		}
		text += readingWords(a, i)
	}
	return text
}

// printLoose names the holes that are not fixed, and what to measure.
func printLoose(to io.Writer, a job.SurveyAnswer) {
	for _, l := range a.Loose {
		id, reason := a.IDs[l.Hole], "can move and no reading changes"
		switch l.Why {
		case survey.Weak:
			reason = fmt.Sprintf("is fixed to %.1f mm only", a.ErrorsMm[l.Hole])
		case survey.TwoPlaces:
			reason = fmt.Sprintf("may as well lie at %.2f, %.2f", l.Other.X, l.Other.Y)
		}
		fmt.Fprintf(to, "not fixed: %s %s; %s\n", id, reason, nextWords(a, l))
	}
}

func nextWords(a job.SurveyAnswer, l survey.Loose) string {
	if len(l.Next) == 0 {
		return "the readings named at the other holes will fix it"
	}
	return "measure " + a.Pairs(l.Next)
}
