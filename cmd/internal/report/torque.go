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
	"drawdown/sequence/tension/strength"
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
	p.printLines("Notes", p.Words.SayAll(a.Notes))
	p.printLines("Assumed", p.Words.SayAll(a.Assumptions))
	p.printLines("Sources", a.Sources)
}

// fact prints a figure behind its name.
func (p Report) fact(name, format string, args ...any) {
	fmt.Fprint(p.To, Wrapped(fmt.Sprintf("  %-19s ", name), strings.Repeat(" ", 22), fmt.Sprintf(format, args...)))
}

func (p Report) printAim(a figures.Answer) {
	r := a.Result
	switch {
	case a.Turned != nil:
		p.fact("tighten", "%s", snugWords(a))
	case a.Torque != 0:
		p.fact("torque given", "%s", bothTorques(r.Torque))
	default:
		p.fact("torque to set", "%s", bothTorques(r.Torque))
	}
	if a.Turned == nil {
		p.printWarning(r)
	}
	p.fact("aim", "%s", aimWords(a))
	p.fact("equation", "%s", equationWords(a))
	p.fact("stress area", "%s mm², d %s mm, P %s mm", figure(r.StressAreaMm2), short(a.Bolt.Bolt.Thread.MajorMm), short(a.Bolt.Bolt.Thread.PitchMm))
	p.fact("yield stress", "%.0f MPa; proof load %s kN", float64(r.Strength.Yield), kN(r.ProofLoad))
	p.fact("head", "%s", headWords(r))
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
	does := "takes the bolt past yield, so that it stretches for good"
	if at.Breaks() {
		does = "breaks the bolt"
	}
	p.fact("warning", "at %s friction (%s in the thread, %s under the head) this torque %s: it yields at about %s N·m, breaks at about %s N·m",
		where, coefficient(at.Thread), coefficient(at.Head), does, figure(float64(at.YieldTorque)), figure(float64(at.BreakTorque)))
}

// snugWords says how a bolt is tightened on by an angle.
func snugWords(a figures.Answer) string {
	snug := "snug " + bothTorques(a.Snug)
	if a.ByAngle() {
		return snug + ", then " + a.Angle.String()
	}
	return snug + ", then by an angle, of which none is stated"
}

// bothTorques prints a torque in both units, without the rounding of a scale.
func bothTorques(t unit.Torque) string {
	return fmt.Sprintf("%s N·m (%s lbf·ft)", figure(float64(t)), figure(t.In(unit.PoundForceFoot)))
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

func headWords(r screw.Result) string {
	if r.OnWasher {
		return fmt.Sprintf("%s, on a washer that presses %s across on the part", r.HeadForm, r.PartFace)
	}
	return string(r.HeadForm)
}

// row prints three figures by friction, or one where the friction is one.
func (p Report) row(single bool, name string, low, nominal, high string) {
	figures := []string{low, nominal, high}
	if single {
		figures = []string{nominal}
	}
	Columns{-33, 13, 13, 13}.Row(p.To, append([]string{"  " + name}, figures...)...)
}

// byFrictionHeading heads a table of rows.
func (p Report) byFrictionHeading(single bool, what string) {
	if single {
		fmt.Fprintf(p.To, "\n%s, at the one figure of friction\n", what)
		return
	}
	fmt.Fprintf(p.To, "\n%s, by friction\n", what)
	p.row(single, "", "low friction", "nominal", "high friction")
}

func row[T any](p Report, single bool, name string, low, nominal, high T, word func(T) string) {
	p.row(single, name, word(low), word(nominal), word(high))
}

func (p Report) printByFriction(a figures.Answer) {
	l, n, h := a.Result.Low, a.Result.Nominal, a.Result.High
	heading := fmt.Sprintf("With %s N·m", figure(float64(a.Result.Torque)))
	if a.Turned != nil {
		heading = fmt.Sprintf("By torque alone, without an angle: %s N·m", figure(float64(a.Result.Torque)))
	}
	p.byFrictionHeading(a.Single(), heading)
	of := func(name string, word func(screw.AtFriction) string) { row(p, a.Single(), name, l, n, h, word) }
	of("friction in the thread", func(f screw.AtFriction) string { return coefficient(f.Thread) })
	of("friction under the head", func(f screw.AtFriction) string { return coefficient(f.Head) })
	of("nut factor K of T = K F d", func(f screw.AtFriction) string { return coefficient(f.NutFactor) })
	of("preload, kN", preloadWord)
	of("preload, lbf", func(f screw.AtFriction) string { return unlessBreaking(f, lbf(f.Borne)) })
	of("of the proof load", func(f screw.AtFriction) string {
		return unlessBreaking(f, percent(float64(f.Borne/a.Result.ProofLoad)))
	})
	of("yield used, with the torsion", func(f screw.AtFriction) string { return unlessYielding(f, percent(f.YieldShare)) })
	of("torque goes to stretch", func(f screw.AtFriction) string { return unlessYielding(f, percent(f.Split.Stretch)) })
	of("  to friction in the thread", func(f screw.AtFriction) string { return unlessYielding(f, percent(f.Split.Thread)) })
	of("  to friction under the head", func(f screw.AtFriction) string { return unlessYielding(f, percent(f.Split.Head)) })
	of("torque at yield, N·m", func(f screw.AtFriction) string { return figure(float64(f.YieldTorque)) })
	of("torque at breaking, N·m", func(f screw.AtFriction) string { return figure(float64(f.BreakTorque)) })
	of(fmt.Sprintf("torque that uses %s %%, N·m", short(a.Result.YieldShare*100)), func(f screw.AtFriction) string { return figure(float64(f.FullTorque)) })
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

// unlessYielding leaves out what has no meaning past yield.
func unlessYielding(f screw.AtFriction, figure string) string {
	if f.Yields() {
		return none
	}
	return figure
}

func unlessBreaking(f screw.AtFriction, figure string) string {
	if f.Breaks() {
		return none
	}
	return figure
}

func (p Report) printTurned(a figures.Answer) {
	if a.Turned == nil {
		return
	}
	t := a.Turned
	of := func(name string, word func(stiffness.AfterAngle) string) {
		row(p, a.Single(), name, t.Low, t.Nominal, t.High, word)
	}
	heading := fmt.Sprintf("After a snug torque of %s N·m", figure(float64(a.Snug)))
	if a.ByAngle() {
		heading += " and " + a.Angle.String()
	}
	p.byFrictionHeading(a.Single(), heading)
	of("preload at the snug torque, kN", func(f stiffness.AfterAngle) string {
		if f.BreaksBySnug() {
			return "breaks"
		}
		return kN(f.Snug)
	})
	if a.ByAngle() {
		of("preload after the angle, kN", func(f stiffness.AfterAngle) string {
			if f.Breaks {
				return "breaks"
			}
			return kN(f.Preload)
		})
		of("yield used, with the torsion", func(f stiffness.AfterAngle) string { return unlessBroken(f, percent(f.YieldUsed)) })
		of("torque at the end, N·m", func(f stiffness.AfterAngle) string { return unlessBroken(f, figure(float64(f.Torque))) })
		of("stays longer by, mm", func(f stiffness.AfterAngle) string { return unlessBroken(f, fmt.Sprintf("%.3f", float64(f.Lasting))) })
		of("may be used again", reuseWord)
	}
	angle := func(name string, of func(stiffness.AfterAngle) unit.Angle, word func(unit.Angle) string) {
		row(p, a.Single(), name, t.Low, t.Nominal, t.High, func(f stiffness.AfterAngle) string {
			if f.BreaksBySnug() {
				return none
			}
			return word(of(f))
		})
	}
	angle("angle to the aim", func(f stiffness.AfterAngle) unit.Angle { return f.AngleToAim }, degrees)
	angle("angle to yield", func(f stiffness.AfterAngle) unit.Angle { return f.AngleToYield }, degrees)
	angle("angle to the greatest preload", func(f stiffness.AfterAngle) unit.Angle { return f.AngleToGreatest }, fiveDegrees)
	angle("angle to break", func(f stiffness.AfterAngle) unit.Angle { return f.AngleToBreak }, fiveDegrees)
	if t.Nominal.BreaksBySnug() {
		return
	}
	p.text(fmt.Sprintf("The aim of the angle is %s kN at nominal friction; angles count from the snug torque.", kN(t.Aim)))
}

func reuseWord(f stiffness.AfterAngle) string {
	if f.Reusable {
		return "yes"
	}
	return "no"
}

// unlessBroken leaves out what a broken bolt has not.
func unlessBroken(f stiffness.AfterAngle, figure string) string {
	if f.Breaks {
		return none
	}
	return figure
}

// printJoint prints what the joint does with the preload.
func (p Report) printJoint(a figures.Answer) {
	fmt.Fprintf(p.To, "\nThe joint, at a preload of %s kN (the greatest)\n", kN(a.Greatest))
	p.printPressure(a)
	if s := a.Stripping; s != nil {
		p.printStripping(a, *s)
	}
	if j := a.Joint; j != nil {
		p.fact("stiffness", "bolt %s kN/mm, clamped parts %s kN/mm; the bolt takes %s of a working load",
			figure(float64(j.Bolt)/1000), figure(float64(j.Members)/1000), percent(j.LoadShare))
		p.fact("cones", "%s from the axis%s", tenth(j.ConeAngle), reachWords(*j))
		s := a.Settlement
		if s == nil {
			p.fact("settlement", "%s, as the bolt breaks", none)
			return
		}
		p.fact("settlement", "%s µm, which takes %s kN (%s of the nominal preload)", short(s.Micrometres), kN(s.Loss), percent(s.LossShare))
	}
}

// reachWords says how far the parts were taken to reach around the bolt.
func reachWords(j stiffness.Joint) string {
	if j.ConeReach == 0 {
		return ""
	}
	return fmt.Sprintf(", with D′A %.1f mm counted around the bolt", float64(j.ConeReach))
}

func (p Report) printPressure(a figures.Answer) {
	where := "under the head"
	if a.Result.OnWasher {
		where = "under the washer"
	}
	if a.Pressure.Limit == 0 {
		p.fact(where, "%.0f MPa; state the material with --grip to have it judged", float64(a.Pressure.Pressure))
		return
	}
	p.fact(where, "%.0f MPa on %s, which bears %.0f MPa (%s)", float64(a.Pressure.Pressure), a.Under, float64(a.Pressure.Limit), percent(a.Pressure.Used))
}

func (p Report) printStripping(a figures.Answer, s strength.Stripping) {
	if a.Engaged > 0 {
		p.fact("threads", "%s first, at %s times this preload: the bolt breaks at %s kN, its thread strips at %s kN, the tapped one at %s kN",
			p.Words.Term(finding.Term(s.First)), figure(s.Margin), kN(s.BoltBreaks), kN(s.BoltStrips), kN(s.PartStrips))
	}
	if a.Engaged > 0 {
		p.fact("engagement", "%s, of which %.1f mm carry", a.Engaged, float64(s.Effective))
	}
	p.fact("needed", "%.1f mm holds this preload; from %.1f mm on the bolt breaks before a thread strips", upward(s.ForPreload), upward(s.ForBolt))
	p.fact("factors", "C1 %.3f, C2 %.3f, C3 %.3f; the bolt's thread shears at %.2f Rm", s.Factors.Dilation, s.Factors.BoltBending, s.Factors.PartBending, s.ShearRatio)
}

// upward rounds a length that is needed up to a tenth of a millimetre.
func upward(l unit.Length) float64 { return math.Ceil(float64(l)*10) / 10 }

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
func figure(v float64) string {
	switch size := math.Abs(v); {
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

func kN(f unit.Force) string          { return figure(float64(f) / 1000) }
func lbf(f unit.Force) string         { return fmt.Sprintf("%.0f", job.PoundsForce(f)) }
func percent(share float64) string    { return fmt.Sprintf("%.1f %%", share*100) }
func coefficient(mu float64) string   { return fmt.Sprintf("%.3f", mu) }
func degrees(angle unit.Angle) string { return fmt.Sprintf("%.0f°", float64(angle)) }
func tenth(angle unit.Angle) string   { return fmt.Sprintf("%.1f°", float64(angle)) }

// fiveDegrees rounds down what the curve past yield gives no more exactly.
func fiveDegrees(angle unit.Angle) string {
	return degrees(unit.Angle(math.Floor(float64(angle)/5) * 5))
}
