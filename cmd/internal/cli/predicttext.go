package cli

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/report"
	"drawdown/sequence/interaction/advice"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/interaction/prediction"
	"drawdown/sequence/interaction/procedure"
	"drawdown/sequence/plan"
)

// compensatedCaution stands with every target that makes up for the loss.
const compensatedCaution = "only with measured stretch: these targets are as good as the guess of the gasket's stiffness"

// lowestShown is how many of the fasteners that end low are named.
const lowestShown = 4

func (p *Program) printPrediction(a job.PredictAnswer, compare bool) {
	heading := a.Plan.Title
	if a.Plan.Machine != "" {
		heading += " · " + a.Plan.Machine
	}
	fmt.Fprintf(p.Stdout, "%s\n%s\n\n", heading, precedence)
	doubts := a.Forecast.Doubts
	if len(doubts) > 0 && doubts[0].Kind == advice.PreviewOnly { // first of all
		p.text(doubts[0].String())
		doubts = doubts[1:]
	}
	for _, line := range headline(a) {
		p.text(line)
	}
	p.printLines("Do not trust it here", sentences(doubts))
	p.printPasses(a)
	p.printLowest(a)
	p.printLines("How the joint behaves", append(behaviour(a), a.Notes...))
	p.printCompensated(a)
	p.printScatter(a)
	if compare {
		p.printComparison(a)
	}
	p.printRun("Stated", a.Stated)
	p.printRun("Assumed", assumedInShort(a))
	p.printRun("Not in the model", limitsInShort)
	fmt.Fprintln(p.Stdout)
	p.text(advice.Guidance)
}

// sentences writes values out.
func sentences[T fmt.Stringer](list []T) (lines []string) {
	for _, v := range list {
		lines = append(lines, v.String())
	}
	return lines
}

// printRun prints a list as one run of words, which takes less room than a line
// each.
func (p *Program) printRun(heading string, list []string) {
	if len(list) > 0 {
		fmt.Fprintf(p.Stdout, "\n%s\n", heading)
		p.text(strings.Join(list, "; ") + ".")
	}
}

// assumedInShort leaves out the measures of each kind of bolt, of which there are
// many and which change little, and says that there are.
func assumedInShort(a job.PredictAnswer) (short []string) {
	left := 0
	for _, line := range a.Assumptions {
		if strings.HasPrefix(line, "a torque gives") {
			continue // what 100 % is says it
		}
		ofKind := func(k plan.Kind) bool { return strings.HasPrefix(line, k.Name+": ") }
		if slices.Contains(a.Model.Assumptions, line) && slices.ContainsFunc(a.Plan.Kinds, ofKind) {
			left++
			continue
		}
		short = append(short, strings.TrimSuffix(line, ", assumed"))
	}
	if left > 0 {
		short = append(short, fmt.Sprintf("and %s about the bolts, which --json lists", counted(left, "thing")))
	}
	return short
}

// ofNames explains a bolt's name where the first stands.
const ofNames = " (number on the card: id)"

// headline says whether to change anything, and why: what a lead has to decide.
func headline(a job.PredictAnswer) []string {
	last := a.Forecast.Last()
	ends := fmt.Sprintf("The lowest bolt, %s%s, ends at %s %% of its target.", named(a, last.Lowest), ofNames, span(last.Spread.Min))
	if len(a.Forecast.Lowest) == 0 {
		ends = fmt.Sprintf("The lowest bolt ends at %s %% of its target.", span(last.Spread.Min))
	}
	if falls := a.Forecast.Falls; len(falls) > 0 {
		return []string{procedure.LookFirst(falls), ends}
	}
	lines := []string{ends + " " + sentence(a.Forecast.Class.Advice())}
	if t := a.Forecast.Taken; t != nil && a.Forecast.Class != advice.Negligible {
		lines[0] += fmt.Sprintf(" It loses the most, up to %.0f points, when %s is tightened after it.", t.Points, named(a, t.By))
	}
	if a.Comparison == nil {
		return lines
	}
	lines = append([]string{a.Comparison.Verdict.String()}, lines...)
	if why := a.Comparison.Verdict.WhyNotAgain(); why != "" && a.Forecast.Class != advice.Negligible {
		lines = append(lines, why)
	}
	return lines
}

// sentence begins words with a capital and ends them.
func sentence(words string) string { return strings.ToUpper(words[:1]) + words[1:] + "." }

// behaviour says how sensitive the joint is, how the part lies on the way, and
// what a repeat and the first stage buy.
func behaviour(a job.PredictAnswer) []string {
	joint := judged(a)
	lines := []string{
		fmt.Sprintf("%s A single pass %s and would leave the lowest at %s %%. %s.", joint.sensitive, meanLoss(a.Forecast.OnePass.Mean), span(a.Forecast.OnePass.Min), joint.cure),
		tiltWords(a),
	}
	if more := repeatWords(a.Forecast); more != "" {
		lines = append(lines, more)
	}
	if a.Comparison != nil && a.Comparison.Snug != nil {
		lines = append(lines, a.Comparison.Snug.String())
	}
	return lines
}

// hardlyUnevenMm is what nobody sees or feels on a part.
const hardlyUnevenMm = 0.03

// tiltWords says where the part lies most uneven, and by how much.
func tiltWords(a job.PredictAnswer) string {
	worst := a.Forecast.Passes[a.Forecast.WorstPass()]
	frame := worst.Frames[worst.WorstFrame]
	if worst.UnevenMm.High < hardlyUnevenMm {
		return fmt.Sprintf("On the way the part stays level within %.2f mm.", max(0.01, worst.UnevenMm.High))
	}
	name := named(a, frame.Fastener)
	if len(a.Forecast.Lowest) == 0 {
		name += ofNames // the heading names none
	}
	return fmt.Sprintf("It lies most uneven in pass %d, after %s: tilted by %s mm over the part and bent by %s mm.",
		worst.Number, name, millimetres(frame.TiltMm), millimetres(frame.WarpMm))
}

func named(a job.PredictAnswer, fastener int) string {
	return fmt.Sprintf("%d:%s", a.Plan.Tighten.Numbers()[fastener], a.Plan.Joint.Fasteners[fastener].ID)
}

// repeatWords says what one more pass buys; empty where nobody can say.
func repeatWords(f prediction.Forecast) string {
	if f.OneMore == nil {
		return ""
	}
	if f.Repeats == 0 && !f.RepeatIsFelt() {
		return "A further repeat would change less than the wrench can feel: none is needed."
	}
	line := fmt.Sprintf("One more pass like the last would leave the lowest at %s %%.", span(f.OneMore.Spread.Min))
	switch {
	case f.Repeats == 0:
		return line + " None is needed."
	case f.Repeats == 1:
		return line + " It is enough at the soft end, too."
	case f.Repeats > 1:
		return line + fmt.Sprintf(" At the soft end it takes %d of them until the joint is even.", f.Repeats)
	}
	return line + " At the soft end no number of passes up to 50 makes the joint even."
}

// judgement is what to say of a joint by what a single pass would leave at the
// soft end: how sensitive it is, and what the order and a further pass do.
type judgement struct{ sensitive, cure string }

func judged(a job.PredictAnswer) judgement {
	switch advice.ClassOf(a.Forecast.OnePass.Min.Low) {
	case advice.Negligible:
		return judgement{"Not sensitive.", "There is little for the order to spread"}
	case advice.Noticeable:
		return judgement{"Sensitive.", "The order only spreads that; a further pass cures it"}
	}
	return judgement{"Very sensitive.", "The order only spreads that; further passes cure it bit by bit"}
}

// meanLoss says what a pass takes from the bolts, or adds.
func meanLoss(mean bounds.Band) string {
	loss := bounds.Band{Low: 100 - mean.High, Nominal: 100 - mean.Nominal, High: 100 - mean.Low}
	low, high := math.Round(loss.Low), math.Round(loss.High)
	switch {
	case low >= -1 && low <= 0 && high >= 0 && high <= 1:
		return "takes hardly anything from the bolts on average"
	case low < 0 && high > 0:
		return fmt.Sprintf("changes the bolts by %+.0f to %+.0f %% on average", -high, -low)
	case high <= 0:
		return fmt.Sprintf("adds %s %% to the bolts on average", span(bounds.Band{Low: -loss.High, Nominal: -loss.Nominal, High: -loss.Low}))
	}
	return fmt.Sprintf("costs the bolts %s %% on average", span(loss))
}

// span writes whole numbers from low over nominal to high; one where they are
// the same.
func span(b bounds.Band) string {
	low, nominal, high := math.Round(b.Low)+0, math.Round(b.Nominal)+0, math.Round(b.High)+0
	if low == high {
		return fmt.Sprintf("%.0f", nominal)
	}
	return fmt.Sprintf("%.0f–%.0f–%.0f", low, nominal, high)
}

// printPasses prints the table of passes.
func (p *Program) printPasses(a job.PredictAnswer) {
	fmt.Fprintf(p.Stdout, "\n%s", wrapped("", "  ", bandWords(a)))
	p.passRow("pass", "least", "mean", "most", "SD")
	for n, pass := range a.Forecast.Passes {
		s := pass.Spread
		p.passRow(fmt.Sprintf("%d  %s", n+1, p.passWords(pass)), span(s.Min), span(s.Mean), span(s.Max), span(s.SD))
	}
	fmt.Fprint(p.Stdout, wrapped("  ", "    ", "100 % is "+strings.Join(sentences(a.Forecast.Hundreds), "; ")+"."))
}

func (p *Program) passRow(name string, figures ...string) {
	report.Columns{-27, 11, 11, 11, 8}.Row(p.Stdout, append([]string{"  " + name}, figures...)...)
}

// passWords says what a pass does.
func (p *Program) passWords(pass prediction.ForecastPass) string {
	if pass.Stage == nil && pass.Share == 0 {
		return "to the targets below"
	}
	if pass.Stage == nil {
		return fmt.Sprintf("to %.0f %%", 100*pass.Share)
	}
	words := report.Stage(p.words, pass.Stage)
	if pass.Stage.Do == plan.Tighten {
		words = pass.Stage.Torque.String()
	}
	return words + " " + strings.Join(pass.Stage.Kinds, ", ")
}

// bandWords says what the figures range over.
func bandWords(a job.PredictAnswer) string {
	b, unit := a.Foundation, "MPa/mm"
	if row, is := a.Kernel.(compliance.Row); is && row.PerLength() {
		unit = "N/mm² of the row"
	}
	if b.Low == b.High {
		return fmt.Sprintf("%% of target on %s %s as stated, so without a band", rough(b.Nominal), unit)
	}
	return fmt.Sprintf("%% of target, low–nominal–high; gasket and seat %s–%s–%s %s, soft to stiff", rough(b.Low), rough(b.Nominal), rough(b.High), unit)
}

// rough writes two figures, as no more is known.
func rough(v float64) string {
	if v == 0 {
		return "0"
	}
	step := math.Pow(10, math.Floor(math.Log10(math.Abs(v)))-1)
	return short(math.Round(v/step) * step)
}

// printLowest names the fasteners that end lowest, by their numbers on the card.
func (p *Program) printLowest(a job.PredictAnswer) {
	lowest := a.Forecast.Lowest[:min(lowestShown, len(a.Forecast.Lowest))]
	if len(lowest) == 0 {
		fmt.Fprint(p.Stdout, "\nNo bolt ends more than half a percent below its target.\n")
		return
	}
	fmt.Fprint(p.Stdout, "\nLowest at the end\n")
	for _, i := range lowest {
		fmt.Fprintf(p.Stdout, "  %-12s %s %%\n", named(a, i), span(a.Forecast.Last().Percent[i]))
	}
}

func (p *Program) printCompensated(a job.PredictAnswer) {
	if a.Targets == nil {
		return
	}
	fmt.Fprintf(p.Stdout, "\nTargets of the last pass, capped at %.0f %%\n", math.Floor(100*a.Cap+1e-9))
	numbers := a.Plan.Tighten.Numbers()
	for _, i := range a.Plan.Tighten.Order {
		name := fmt.Sprintf("%d:%s", numbers[i], a.Plan.Joint.Fasteners[i].ID)
		fmt.Fprintf(p.Stdout, "  %-12s %.0f %%, %s kN\n", name, 100*a.Targets[i]/a.Nominal.TargetsN[i], rough(a.Targets[i]/1000))
	}
	p.text(compensatedNotes(a))
}

// compensatedNotes tell what targets of their own ask for.
func compensatedNotes(a job.PredictAnswer) string {
	words := sentence(compensatedCaution)
	if n := a.Capped(); n > 0 {
		words += fmt.Sprintf(" The cap stops %s short of the target that would end even: repeat the pass.", counted(n, "bolt"))
	}
	return words
}
