package report

import (
	"fmt"
	"math"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence/figures"
	"drawdown/sequence/service"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
)

// Torque prints the figures of bolts, and those of their joint in a file.
func (p Report) Torque(title string, answers []figures.Answer, units []unit.Asked, joint service.Joint) {
	if title != "" {
		fmt.Fprintf(p.To, "%s\n\n", title)
	}
	for i, a := range answers {
		if i > 0 {
			fmt.Fprintln(p.To)
		}
		p.printAnswer(a, units)
	}
	p.printService(joint, answers)
}

func (p Report) printAnswer(a figures.Answer, units []unit.Asked) {
	heading := p.Words.Figure(a.Bolt.Bolt.Thread.Name) + ", " + p.Words.What(a.Result.Strength.Named())
	if a.Kind != "" {
		heading = fmt.Sprintf(p.Words.Sheet.Named, a.Kind, heading)
	}
	f := a.Result.Friction.Thread
	if a.Bolt.Bolt.FrictionOpen() {
		fmt.Fprint(p.To, Wrapped("", "  ", p.say(TorqueState, finding.Values{"kind": a.Kind, "low": f.Low, "high": f.High})))
	}
	fmt.Fprintf(p.To, "%s\n%s\n\n", heading, p.Words.Torque.WorkedOut)
	if a.OfStages() {
		fmt.Fprint(p.To, Wrapped("  ", "  ", p.say(TorqueStages, finding.Values{"stages": stagesOf(a)})))
		p.printStages(a)
	}
	p.printAim(a)
	p.printTurned(a)
	p.printByFriction(a)
	p.printJoint(a)
	p.inUnits(a, units)
	p.grounds(a.Notes, a.Assumptions, a.Sources)
}

// fact prints a statement after the name of a figure.
func (p Report) fact(name, said string) {
	fmt.Fprint(p.To, Wrapped(fmt.Sprintf("  %-19s ", name), strings.Repeat(" ", 22), said))
}

func (p Report) printAim(a figures.Answer) {
	r, b, w := a.Result, a.Bolt.Bolt, p.Words.Torque
	if a.Stretched != nil {
		p.fact(w.Tighten, p.say(StageStretch, finding.Values{"stretch": a.Ask.Stretch}))
	} else if a.Turned != nil {
		p.fact(w.Tighten, p.say(TorqueSnug, snug(a)))
	} else if a.Open() {
		l, h := r.Low.FullTorque, r.High.FullTorque
		p.fact(w.Set, p.say(TorqueRange, finding.Values{"least": min(l, h), "most": max(l, h)}))
	} else {
		p.fact(either(a.Torque != 0, w.Given, w.Set), p.say(TorqueBoth, finding.Values{"torque": r.Torque}))
		p.printWarning(r)
	}
	p.fact(w.Aim, p.say(TorqueAim, aim(a)))
	p.fact(w.Equation, p.say(TorqueEquation, finding.Values{"k": b.NutFactor, "equation": string(r.Equation)}))
	p.fact(w.StressArea, p.say(TorqueArea, finding.Values{"area": r.StressAreaMm2, "major": b.Thread.MajorMm, "pitch": b.Thread.PitchMm}))
	p.fact(w.LeastSection, p.say(TorqueSection, finding.Values{"area": r.LeastSectionMm2, "diameter": r.Least, "shank": r.ShankRules()}))
	p.fact(w.YieldStress, p.say(TorqueYieldStress, finding.Values{"yield": r.Strength.Yield, "proof": r.ProofLoad}))
	head := finding.Values{"form": finding.Term(r.HeadForm)}
	if r.OnWasher {
		head["face"] = r.PartFace
	}
	p.fact(w.Head, p.say(TorqueHead, head))
	p.fact(w.BearingRing, p.say(TorqueRing, finding.Values{"face": r.Face, "hole": r.Hole, "effective": r.Effective}))
}

// printWarning prints a warning if the torque takes the bolt past yield.
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
	p.fact(p.Words.Torque.Warning, p.say(TorqueWarning, finding.Values{
		"where": where, "thread": at.Thread, "head": at.Head, "breaks": at.Breaks(), "yield": at.YieldTorque, "break": at.BreakTorque,
	}))
}

// snug returns how a bolt is tightened by an angle.
func snug(a figures.Answer) finding.Values {
	v := finding.Values{"snug": a.Snug}
	if a.ByAngle() {
		v["angle"] = a.Angle
	}
	return v
}

// aim returns the figure that is aimed at.
func aim(a figures.Answer) finding.Values {
	b := a.Bolt.Bolt
	switch {
	case a.Stretched != nil:
		s := a.Stretched
		return finding.Values{"stretch": a.Ask.Stretch, "least": float64(s.Low / 1000), "nominal": s.Nominal, "most": s.High}
	case a.Torque != 0:
		return finding.Values{"torque": a.Torque}
	case b.Preload != 0:
		return finding.Values{"preload": b.Preload}
	case b.ProofShare != 0:
		return finding.Values{"proof": b.ProofShare}
	}
	return finding.Values{"yield": a.Result.YieldShare, "single": a.Single()}
}

// printStages prints the bolt after each stage of its file.
func (p Report) printStages(a figures.Answer) {
	for i, figure := range stagesOf(a) {
		s := a.EachStage[i]
		p.fact(fmt.Sprintf(p.Words.Torque.Stage, s.Number), p.say(TorqueStage, finding.Values{
			"figure": figure, "low": float64(s.Low / 1000), "nominal": float64(s.Nominal / 1000), "high": s.High, "used": s.YieldUsed, "stretch": s.Stretch,
			"margin": s.Margin, "further": s.Further, "breaks": s.Breaks,
		}))
	}
	fmt.Fprintln(p.To)
}

// stagesOf returns the stages of a bolt, each with its figure.
func stagesOf(a figures.Answer) []finding.Finding {
	var list []finding.Finding
	var torques []unit.GivenTorque
	for _, s := range a.Stages {
		if s.Do == figures.Tighten {
			torques = append(torques, s.Torque)
		}
	}
	for _, s := range a.Stages {
		switch s.Do {
		case figures.Tighten:
			list = append(list, finding.Noted(StageTorque, finding.Values{"torque": s.Torque, "other": s.Torque.OtherBeside(torques)}))
		case figures.Advance:
			list = append(list, finding.Noted(StageAngle, finding.Values{"angle": s.Angle}))
		case figures.Lengthen:
			list = append(list, finding.Noted(StageStretch, finding.Values{"stretch": s.Stretch}))
		case figures.BackOff:
			list = append(list, finding.Noted(StageSlackens, nil))
		}
	}
	return list
}

// byFrictionTable prints the heading of a table and returns a function that
// prints its rows: with three figures by friction, or one if the friction is a
// single figure.
func byFrictionTable[T any](p Report, heading finding.Values, single bool, low, nominal, high T) func(name string, word func(T) string) {
	columns, w := Columns{-33, 13, 13, 13}, p.Words.Torque
	heading["single"] = single
	p.line("\n", TorqueTable, heading)
	shown := []T{low, nominal, high}
	if single {
		shown = []T{nominal}
	} else {
		columns.Row(p.To, "", w.Low, w.Nominal, w.High)
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
	type at = screw.AtFriction
	w, value := p.Words.Torque.Rows, p.Words.Value
	of := byFrictionTable(p, finding.Values{"torque": a.Result.Torque, "alone": a.Turned != nil || a.Stretched != nil}, a.Single(), a.Result.Low, a.Result.Nominal, a.Result.High)
	unlessYields := func(figure func(at) float64) func(at) string {
		return func(f at) string { return either(f.Yields(), none, value(figure(f), ".1 %")) }
	}
	of(p.Words.Term("friction in the thread"), func(f at) string { return value(f.Thread, ".3") })
	of(p.Words.Term("friction under the head"), func(f at) string { return value(f.Head, ".3") })
	of(w.NutFactor, func(f at) string { return value(f.NutFactor, ".3") })
	of(w.Preload+", kN", p.preloadWord)
	of(w.Preload+", lbf", func(f at) string { return either(f.Breaks(), none, value(f.Borne/unit.NewtonsPerPound, ".0")) })
	of(w.OfProofLoad, func(f at) string { return either(f.Breaks(), none, value(float64(f.Borne/a.Result.ProofLoad), ".1 %")) })
	of(w.YieldUsed, unlessYields(func(f at) float64 { return f.YieldShare }))
	of(w.ToStretch, unlessYields(func(f at) float64 { return f.Split.Stretch }))
	of("  "+w.ToThread, unlessYields(func(f at) float64 { return f.Split.Thread }))
	of("  "+w.ToHead, unlessYields(func(f at) float64 { return f.Split.Head }))
	of(w.AtYield, func(f at) string { return value(f.YieldTorque, "~") })
	of(w.AtBreaking, func(f at) string { return value(f.BreakTorque, "~") })
	of(fmt.Sprintf(w.Uses, value(a.Result.YieldShare, "6g %")), func(f at) string { return value(f.FullTorque, "~") })
	if safe := a.Torque == 0 && a.Bolt.Bolt.Preload == 0 && a.Bolt.Bolt.ProofShare == 0; safe && a.Least == 0 && !a.Open() {
		p.text(p.say(TorqueSafe, finding.Values{"plain": !a.ShapeStated()}))
	}
	if a.Least > 0 {
		p.text(p.say(TorqueLeast, finding.Values{"least": a.Least, "factor": a.Alpha}))
	}
}

// preloadWord formats a preload, and marks one at which the bolt yields.
func (p Report) preloadWord(f screw.AtFriction) string {
	switch kN := p.Words.Value(f.Borne/1000, "~"); {
	case f.Breaks():
		return p.Words.Torque.Breaks
	case f.Yields():
		return fmt.Sprintf(p.Words.Torque.Yields, kN)
	default:
		return kN
	}
}

// none stands for a missing figure.
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
	type end = stiffness.AfterAngle
	t, w, value := a.Turned, p.Words.Torque.Rows, p.Words.Value
	breaks := p.Words.Torque.Breaks
	of := byFrictionTable(p, snug(a), a.Single(), t.Low, t.Nominal, t.High)
	of(w.AtSnug, func(f end) string { return either(f.BreaksBySnug(), breaks, value(f.Snug/1000, "~")) })
	if a.ByAngle() {
		of(w.AfterAngle, func(f end) string { return either(f.Breaks, breaks, value(f.Preload/1000, "~")) })
		of(w.YieldUsed, func(f end) string { return either(f.Breaks, none, value(f.YieldUsed, ".1 %")) })
		of(w.AtEnd, func(f end) string { return either(f.Breaks, none, value(f.Torque, "~")) })
		of(w.Lasting, func(f end) string { return either(f.Breaks, none, value(f.Lasting, ".3")) })
		of(w.Reusable, func(f end) string { return either(f.Reusable, p.Words.Torque.Yes, p.Words.Torque.No) })
	}
	turn := func(name string, angle func(end) unit.Angle) {
		of(name, func(f end) string { return either(f.BreaksBySnug(), none, value(angle(f), ".0 °")) })
	}
	turn(w.ToAim, func(f end) unit.Angle { return f.AngleToAim })
	turn(w.ToYield, func(f end) unit.Angle { return f.AngleToYield })
	turn(w.ToGreatest, func(f end) unit.Angle { return wholeFives(f.AngleToGreatest) })
	turn(w.ToBreak, func(f end) unit.Angle { return wholeFives(f.AngleToBreak) })
	if !t.Nominal.BreaksBySnug() {
		p.text(p.say(TorqueAngleAim, finding.Values{"aim": t.Aim}))
	}
}

// wholeFives rounds down to 5°, because the curve past yield is not exact.
func wholeFives(angle unit.Angle) unit.Angle { return unit.Angle(math.Floor(float64(angle)/5) * 5) }

// printJoint prints how the joint carries the preload.
func (p Report) printJoint(a figures.Answer) {
	w := p.Words.Torque
	p.line("\n", TorqueJoint, finding.Values{"preload": a.Greatest})
	p.fact(either(a.Result.OnWasher, w.UnderWasher, w.UnderHead), p.say(TorquePressure, finding.Values{
		"pressure": a.Pressure.Pressure, "material": finding.Term(a.Under), "limit": a.Pressure.Limit, "used": a.Pressure.Used,
	}))
	p.printStripping(a)
	j := a.Joint
	if j == nil {
		return
	}
	p.fact(w.Stiffness, p.say(TorqueStiffness, finding.Values{"bolt": j.Bolt, "members": j.Members, "share": j.LoadShare}))
	p.fact(w.Cones, p.say(TorqueCones, finding.Values{"angle": j.ConeAngle, "reach": j.ConeReach}))
	if least, nominal, most := a.Longer[0], a.Longer[1], a.Longer[2]; nominal > 0 {
		p.fact(w.Stretch, p.say(TorqueStretch, finding.Values{"least": least, "nominal": nominal, "most": most, "preload": a.LongerAt}))
	}
	settles := finding.Values{}
	if s := a.Settlement; s != nil {
		settles = finding.Values{"flattens": s.Micrometres, "loss": s.Loss, "share": s.LossShare}
	}
	p.fact(w.Settlement, p.say(TorqueSettles, settles))
}

func (p Report) printStripping(a figures.Answer) {
	s, w := a.Stripping, p.Words.Torque
	if s == nil {
		return
	}
	if a.Engaged > 0 {
		p.fact(w.Threads, p.say(TorqueThreads, finding.Values{
			"first": finding.Term(s.First), "margin": s.Margin, "breaks": s.BoltBreaks, "strips": s.BoltStrips, "part": s.PartStrips,
		}))
		p.fact(w.Engagement, p.say(TorqueEngaged, finding.Values{"engaged": a.Engaged, "effective": s.Effective}))
	}
	p.fact(w.Needed, p.say(TorqueNeeds, finding.Values{"preload": upward(s.ForPreload), "bolt": upward(s.ForBolt)}))
	p.fact(w.Factors, p.say(TorqueFactors, finding.Values{"c1": s.Factors.Dilation, "c2": s.Factors.BoltBending, "c3": s.Factors.PartBending, "shear": s.ShearRatio}))
}

// upward rounds a required length up to a tenth of a millimetre.
func upward(l unit.Length) unit.Length { return unit.Length(math.Ceil(float64(l)*10) / 10) }

func (p Report) grounds(notes, assumed []finding.Finding, sources []string) {
	w := p.Words.Torque
	p.list(w.Notes, p.Words.SayAll(notes))
	p.list(w.Assumed, p.Words.SayAll(assumed))
	p.list(w.Sources, sources)
}

// inUnits prints the key figures of an answer again, each in those of the
// requested units that fit it.
func (p Report) inUnits(a figures.Answer, units []unit.Asked) {
	if len(units) == 0 {
		return
	}
	fmt.Fprintf(p.To, "\n%s\n", p.Words.Torque.InUnits)
	for _, f := range keyFigures(a, p.Words.Torque.Figures) {
		var written []string
		for _, u := range units {
			if u.Dimension == f.dimension {
				written = append(written, p.Words.Figure(u.Print(f.inside)))
			}
		}
		if len(written) > 0 {
			p.fact(f.name, strings.Join(written, " · "))
		}
	}
}

// keyFigure is one figure in internal units.
type keyFigure struct {
	name      string
	dimension unit.Dimension
	inside    float64
}

func keyFigures(a figures.Answer, w words.TorqueFigures) []keyFigure {
	r := a.Result
	figures := []keyFigure{
		{w.Torque, unit.TorqueDimension, float64(r.Torque)},
		{w.PreloadLow, unit.ForceDimension, float64(r.Low.Borne)},
		{w.PreloadNominal, unit.ForceDimension, float64(r.Nominal.Borne)},
		{w.PreloadHigh, unit.ForceDimension, float64(r.High.Borne)},
		{w.ProofLoad, unit.ForceDimension, float64(r.ProofLoad)},
		{w.YieldStress, unit.StressDimension, float64(r.Strength.Yield)},
		{w.TensileStrength, unit.StressDimension, float64(r.Strength.Tensile)},
		{w.Diameter, unit.LengthDimension, a.Bolt.Bolt.Thread.MajorMm},
		{w.Pitch, unit.LengthDimension, a.Bolt.Bolt.Thread.PitchMm},
		{w.BearingFace, unit.LengthDimension, float64(r.Face)},
		{w.Hole, unit.LengthDimension, float64(r.Hole)},
	}
	if a.Turned != nil {
		figures = append(figures, keyFigure{w.SnugTorque, unit.TorqueDimension, float64(a.Snug)},
			keyFigure{w.PreloadAfter, unit.ForceDimension, float64(a.Turned.Nominal.Preload)})
	}
	return figures
}
