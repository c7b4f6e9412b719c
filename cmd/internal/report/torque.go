package report

import (
	"fmt"
	"math"
	"strings"

	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/figures"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
)

// precedence stands in every output with a worked-out figure.
const precedence = "worked out by drawdown; the maker's figure goes before it"

func (p Report) Torque(title string, answers []figures.Answer, units []unit.Asked) {
	if title != "" {
		fmt.Fprintf(p.To, "%s\n\n", title)
	}
	for i, a := range answers {
		if i > 0 {
			fmt.Fprintln(p.To)
		}
		p.printAnswer(a, units)
	}
}

func (p Report) printAnswer(a figures.Answer, units []unit.Asked) {
	heading := a.Bolt.Bolt.Thread.Name + ", " + p.Words.What(a.Result.Strength.Named())
	if a.Kind != "" {
		heading = a.Kind + ": " + heading
	}
	fmt.Fprintf(p.To, "%s\n%s\n\n", heading, precedence)
	p.printAim(a)
	p.printTurned(a)
	p.printByFriction(a)
	p.printJoint(a)
	p.inUnits(a, units)
	p.grounds(a.Notes, a.Assumptions, a.Sources)
}

// fact prints a figure behind its name.
func (p Report) fact(name, format string, args ...any) {
	fmt.Fprint(p.To, Wrapped(fmt.Sprintf("  %-19s ", name), strings.Repeat(" ", 22), fmt.Sprintf(format, args...)))
}

func (p Report) printAim(a figures.Answer) {
	r := a.Result
	if a.Turned != nil {
		p.fact("tighten", "%s", snugWords(a))
	} else {
		p.fact(either(a.Torque != 0, "torque given", "torque to set"), "%s", bothTorques(r.Torque))
		p.printWarning(r)
	}
	p.fact("aim", "%s", aimWords(a))
	p.fact("equation", "%s", equationWords(a))
	p.fact("stress area", "%s mm², d %s mm, P %s mm", figure(r.StressAreaMm2), short(a.Bolt.Bolt.Thread.MajorMm), short(a.Bolt.Bolt.Thread.PitchMm))
	p.fact("yield stress", "%.0f MPa; proof load %s kN", r.Strength.Yield, kN(r.ProofLoad))
	head := string(r.HeadForm)
	if r.OnWasher {
		head += fmt.Sprintf(", on a washer that presses %s across on the part", r.PartFace)
	}
	p.fact("head", "%s", head)
	p.fact("bearing ring", "%s outside, hole %s; friction acts at %s", r.Face, r.Hole, r.Effective)
}

// printWarning stands beside the torque, where it takes the bolt past yield.
func (p Report) printWarning(r screw.Result) {
	n := r.Nominal
	if n.Yields() {
		p.warning("nominal", n)
	}
	for _, end := range []struct {
		where string
		screw.AtFriction
	}{{"low", r.Low}, {"high", r.High}} {
		if end.Yields() && !n.Yields() || end.Breaks() && !n.Breaks() {
			p.warning(end.where, end.AtFriction)
		}
	}
}

func (p Report) warning(where string, at screw.AtFriction) {
	does := either(at.Breaks(), "breaks the bolt", "takes the bolt past yield, so that it stretches for good")
	p.fact("warning", "at %s friction (%s in the thread, %s under the head) this torque %s: it yields at about %s N·m, breaks at about %s N·m",
		where, coefficient(at.Thread), coefficient(at.Head), does, figure(at.YieldTorque), figure(at.BreakTorque))
}

// snugWords says how a bolt is tightened on by an angle.
func snugWords(a figures.Answer) string {
	angle := either(a.ByAngle(), a.Angle.String(), "by an angle, of which none is stated")
	return "snug " + bothTorques(a.Snug) + ", then " + angle
}

// bothTorques prints a torque in both units, without the rounding of a scale.
func bothTorques(t unit.Torque) string {
	return fmt.Sprintf("%s N·m (%s lbf·ft)", figure(t), figure(t.In(unit.PoundForceFoot)))
}

func aimWords(a figures.Answer) string {
	b := a.Bolt.Bolt
	switch {
	case a.Torque != 0:
		return "none: what this torque gives"
	case b.Preload != 0:
		return fmt.Sprintf("a preload of %s kN, at nominal friction", kN(b.Preload))
	case b.ProofShare != 0:
		return fmt.Sprintf("%s %% of the proof load, at nominal friction", short(b.ProofShare*100))
	}
	return fmt.Sprintf("at most %s %% of the yield stress, at any friction", short(a.Result.YieldShare*100))
}

func equationWords(a figures.Answer) string {
	if a.Bolt.Bolt.NutFactor != 0 {
		return fmt.Sprintf("nut factor: T = K F d, K = %s", short(a.Bolt.Bolt.NutFactor))
	}
	if a.Result.Equation == screw.Linear {
		return "linear (ISO 16047)"
	}
	return "exact (a screw with its lead angle)"
}

// byFrictionTable heads a table and gives what prints its rows: of three figures
// by friction, or of one where the friction is one.
func byFrictionTable[T any](p Report, single bool, heading string, low, nominal, high T) func(name string, word func(T) string) {
	columns := Columns{-33, 13, 13, 13}
	shown := []T{low, nominal, high}
	if single {
		shown = []T{nominal}
		fmt.Fprintf(p.To, "\n%s, at the one figure of friction\n", heading)
	} else {
		fmt.Fprintf(p.To, "\n%s, by friction\n", heading)
		columns.Row(p.To, "", "low friction", "nominal", "high friction")
	}
	return func(name string, word func(T) string) {
		cells := []string{"  " + name}
		for _, at := range shown {
			cells = append(cells, word(at))
		}
		columns.Row(p.To, cells...)
	}
}

func (p Report) printByFriction(a figures.Answer) {
	heading := either(a.Turned == nil, "With ", "By torque alone, without an angle: ") + figure(a.Result.Torque) + " N·m"
	of := byFrictionTable(p, a.Single(), heading, a.Result.Low, a.Result.Nominal, a.Result.High)
	of("friction in the thread", func(f screw.AtFriction) string { return coefficient(f.Thread) })
	of("friction under the head", func(f screw.AtFriction) string { return coefficient(f.Head) })
	of("nut factor K of T = K F d", func(f screw.AtFriction) string { return coefficient(f.NutFactor) })
	of("preload, kN", preloadWord)
	of("preload, lbf", func(f screw.AtFriction) string { return either(f.Breaks(), none, lbf(f.Borne)) })
	of("of the proof load", func(f screw.AtFriction) string { return either(f.Breaks(), none, percent(f.Borne/a.Result.ProofLoad)) })
	of("yield used, with the torsion", func(f screw.AtFriction) string { return either(f.Yields(), none, percent(f.YieldShare)) })
	of("torque goes to stretch", func(f screw.AtFriction) string { return either(f.Yields(), none, percent(f.Split.Stretch)) })
	of("  to friction in the thread", func(f screw.AtFriction) string { return either(f.Yields(), none, percent(f.Split.Thread)) })
	of("  to friction under the head", func(f screw.AtFriction) string { return either(f.Yields(), none, percent(f.Split.Head)) })
	of("torque at yield, N·m", func(f screw.AtFriction) string { return figure(f.YieldTorque) })
	of("torque at breaking, N·m", func(f screw.AtFriction) string { return figure(f.BreakTorque) })
	of(fmt.Sprintf("torque that uses %s %%, N·m", short(a.Result.YieldShare*100)), func(f screw.AtFriction) string { return figure(f.FullTorque) })
	if safe := a.Torque == 0 && a.Bolt.Bolt.Preload == 0 && a.Bolt.Bolt.ProofShare == 0; safe && a.Least == 0 {
		p.text("The torque is the safe one, limited by the lowest friction. A higher one, set because the friction may be high, would overload a bolt that turns easily.")
	}
	if a.Least > 0 {
		p.text(fmt.Sprintf("The friction is one figure, which no real joint keeps to: a torque wrench may leave as little as %s kN (tightening factor %s, VDI 2230 table A8).", kN(a.Least), short(a.Alpha)))
	}
}

// preloadWord gives a preload, and marks one at which the bolt yields.
func preloadWord(f screw.AtFriction) string {
	switch {
	case f.Breaks():
		return "breaks"
	case f.Yields():
		return "yields, " + kN(f.Borne)
	}
	return kN(f.Borne)
}

// none stands for a figure that there is none of.
const none = "—"

func either(is bool, then, otherwise string) string {
	if is {
		return then
	}
	return otherwise
}

func (p Report) printTurned(a figures.Answer) {
	if a.Turned == nil {
		return
	}
	t := a.Turned
	heading := fmt.Sprintf("After a snug torque of %s N·m", figure(a.Snug))
	if a.ByAngle() {
		heading += " and " + a.Angle.String()
	}
	of := byFrictionTable(p, a.Single(), heading, t.Low, t.Nominal, t.High)
	type end = stiffness.AfterAngle
	of("preload at the snug torque, kN", func(f end) string { return either(f.BreaksBySnug(), "breaks", kN(f.Snug)) })
	if a.ByAngle() {
		of("preload after the angle, kN", func(f end) string { return either(f.Breaks, "breaks", kN(f.Preload)) })
		of("yield used, with the torsion", func(f end) string { return either(f.Breaks, none, percent(f.YieldUsed)) })
		of("torque at the end, N·m", func(f end) string { return either(f.Breaks, none, figure(f.Torque)) })
		of("stays longer by, mm", func(f end) string { return either(f.Breaks, none, fmt.Sprintf("%.3f", f.Lasting)) })
		of("may be used again", func(f end) string { return either(f.Reusable, "yes", "no") })
	}
	of("angle to the aim", func(f end) string { return either(f.BreaksBySnug(), none, degrees(f.AngleToAim)) })
	of("angle to yield", func(f end) string { return either(f.BreaksBySnug(), none, degrees(f.AngleToYield)) })
	of("angle to the greatest preload", func(f end) string { return either(f.BreaksBySnug(), none, fiveDegrees(f.AngleToGreatest)) })
	of("angle to break", func(f end) string { return either(f.BreaksBySnug(), none, fiveDegrees(f.AngleToBreak)) })
	if !t.Nominal.BreaksBySnug() {
		p.text(fmt.Sprintf("The aim of the angle is %s kN at nominal friction; angles count from the snug torque.", kN(t.Aim)))
	}
}

// printJoint prints what the joint does with the preload.
func (p Report) printJoint(a figures.Answer) {
	fmt.Fprintf(p.To, "\nThe joint, at a preload of %s kN (the greatest)\n", kN(a.Greatest))
	p.printPressure(a)
	p.printStripping(a)
	j, s := a.Joint, a.Settlement
	if j == nil {
		return
	}
	p.fact("stiffness", "bolt %s kN/mm, clamped parts %s kN/mm; the bolt takes %s of a working load", figure(j.Bolt/1000), figure(j.Members/1000), percent(j.LoadShare))
	reach := ""
	if j.ConeReach != 0 {
		reach = fmt.Sprintf(", with D′A %.1f mm counted around the bolt", j.ConeReach)
	}
	p.fact("cones", "%.1f° from the axis%s", j.ConeAngle, reach)
	if s == nil {
		p.fact("settlement", "%s, as the bolt breaks", none)
		return
	}
	p.fact("settlement", "%s µm, which takes %s kN (%s of the nominal preload)", short(s.Micrometres), kN(s.Loss), percent(s.LossShare))
}

func (p Report) printPressure(a figures.Answer) {
	where := either(a.Result.OnWasher, "under the washer", "under the head")
	if a.Pressure.Limit == 0 {
		p.fact(where, "%.0f MPa; state the material with --grip to have it judged", a.Pressure.Pressure)
		return
	}
	p.fact(where, "%.0f MPa on %s, which bears %.0f MPa (%s)", a.Pressure.Pressure, a.Under, a.Pressure.Limit, percent(a.Pressure.Used))
}

func (p Report) printStripping(a figures.Answer) {
	s := a.Stripping
	if s == nil {
		return
	}
	if a.Engaged > 0 {
		p.fact("threads", "%s first, at %s times this preload: the bolt breaks at %s kN, its thread strips at %s kN, the tapped one at %s kN",
			p.Words.Term(finding.Term(s.First)), figure(s.Margin), kN(s.BoltBreaks), kN(s.BoltStrips), kN(s.PartStrips))
		p.fact("engagement", "%s, of which %.1f mm carry", a.Engaged, s.Effective)
	}
	p.fact("needed", "%.1f mm holds this preload; from %.1f mm on the bolt breaks before a thread strips", upward(s.ForPreload), upward(s.ForBolt))
	p.fact("factors", "C1 %.3f, C2 %.3f, C3 %.3f; the bolt's thread shears at %.2f Rm", s.Factors.Dilation, s.Factors.BoltBending, s.Factors.PartBending, s.ShearRatio)
}

// upward rounds a length that is needed up to a tenth of a millimetre.
func upward(l unit.Length) float64 { return math.Ceil(float64(l)*10) / 10 }

func (p Report) grounds(notes, assumed []finding.Finding, sources []string) {
	p.printLines("Notes", p.Words.SayAll(notes))
	p.printLines("Assumed", p.Words.SayAll(assumed))
	p.printLines("Sources", sources)
}

func (p Report) printLines(heading string, lines []string) {
	if len(lines) == 0 {
		return
	}
	fmt.Fprintf(p.To, "\n%s\n", heading)
	for _, line := range lines {
		fmt.Fprint(p.To, Wrapped("  - ", "    ", line))
	}
}

func (p Report) text(line string) { fmt.Fprint(p.To, Wrapped("  ", "  ", line)) }

// figure prints a number to about three figures, without powers of ten.
func figure[T ~float64](v T) string {
	switch size := math.Abs(float64(v)); {
	case size >= 1000:
		return fmt.Sprintf("%.0f", v)
	case size >= 10:
		return fmt.Sprintf("%.1f", v)
	case size >= 1:
		return fmt.Sprintf("%.2f", v)
	}
	return fmt.Sprintf("%.3f", v)
}

// short prints a number that was stated, without binary dust.
func short(v float64) string { return fmt.Sprintf("%.6g", v) }

func kN(f unit.Force) string             { return figure(f / 1000) }
func lbf(f unit.Force) string            { return fmt.Sprintf("%.0f", job.PoundsForce(f)) }
func percent[T ~float64](share T) string { return fmt.Sprintf("%.1f %%", share*100) }
func coefficient(mu float64) string      { return fmt.Sprintf("%.3f", mu) }
func degrees(angle unit.Angle) string    { return fmt.Sprintf("%.0f°", float64(angle)) }

// fiveDegrees rounds down what the curve past yield gives no more exactly.
func fiveDegrees(angle unit.Angle) string {
	return degrees(unit.Angle(math.Floor(float64(angle)/5) * 5))
}

// inUnits prints the key figures of an answer once more, each in the units
// asked for that fit it.
func (p Report) inUnits(a figures.Answer, units []unit.Asked) {
	if len(units) == 0 {
		return
	}
	fmt.Fprint(p.To, "\nIn the units asked for\n")
	for _, f := range keyFigures(a) {
		var words []string
		for _, u := range units {
			if u.Dimension == f.dimension {
				words = append(words, u.Print(f.inside))
			}
		}
		if len(words) > 0 {
			p.fact(f.name, "%s", strings.Join(words, " · "))
		}
	}
}

// keyFigure is one figure in the unit used inside.
type keyFigure struct {
	name      string
	dimension unit.Dimension
	inside    float64
}

func keyFigures(a figures.Answer) []keyFigure {
	r := a.Result
	figures := []keyFigure{
		{"torque", unit.TorqueDimension, float64(r.Torque)},
		{"preload, low", unit.ForceDimension, float64(r.Low.Borne)},
		{"preload, nominal", unit.ForceDimension, float64(r.Nominal.Borne)},
		{"preload, high", unit.ForceDimension, float64(r.High.Borne)},
		{"proof load", unit.ForceDimension, float64(r.ProofLoad)},
		{"yield stress", unit.StressDimension, float64(r.Strength.Yield)},
		{"tensile strength", unit.StressDimension, float64(r.Strength.Tensile)},
		{"diameter", unit.LengthDimension, a.Bolt.Bolt.Thread.MajorMm},
		{"pitch", unit.LengthDimension, a.Bolt.Bolt.Thread.PitchMm},
		{"bearing face", unit.LengthDimension, float64(r.Face)},
		{"hole", unit.LengthDimension, float64(r.Hole)},
	}
	if a.Turned != nil {
		figures = append(figures, keyFigure{"snug torque", unit.TorqueDimension, float64(a.Snug)},
			keyFigure{"preload after it all", unit.ForceDimension, float64(a.Turned.Nominal.Preload)})
	}
	return figures
}
