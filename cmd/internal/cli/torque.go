package cli

import (
	"cmp"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/render"
	"drawdown/sequence/figures"
	"drawdown/sequence/plan"
	"drawdown/sequence/service"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/strength"
)

var torqueCommand = command{
	name:    "torque",
	operand: patternFile,
	build: func(flags *pflag.FlagSet) runner {
		printing := addTorqueFlags(flags)
		return func(p *Program, args []string) Status { return p.torque(flags, args, printing) }
	},
}

func addTorqueFlags(flags *pflag.FlagSet) flag.Print {
	addTexts(flags, []textFlag{
		{"kind", "only this `kind` of FILE"},
		{"thread", "`thread`, such as M10, M10x1.25 or 3/8-16 UNC"},
		{"class", "property `class`: 10.9, grade 8, A2-70, 830 MPa"},
		{"friction", "friction `coefficient`: 0.12, 0.10-0.14 or thread=0.10-0.14,head=0.12"},
		{"lubricant", "lubricant in `words`: engine oil, dry, wax"},
		{"k", "nut factor `K` instead of friction, such as 0.2"},
		{"yield", "aim: `share` of the yield stress (90% where no aim is set)"},
		{"proof", "aim: `share` of the proof load, such as 75%"},
		{"preload", "aim: `force`, such as 30kN"},
		{"stretch", "aim: how much `longer` the bolt is measured to become, such as 0.28mm"},
		{"torque", "calculate from this `torque`, such as 48Nm"},
		{"equation", "`form` of the screw equation: " + flag.Choices(screw.Equations)},
		{"head-diameter", "outer `diameter` of the bearing face under the head"},
		{"head", "`form` of the head: " + flag.Choices(head.Forms)},
		{"across", "`width` across flats of a hexagon head"},
		{"washer", "`washer` under the head: " + flag.Choices(head.Washers)},
		{"hole", "`diameter` of the clearance hole"},
		{"grip", "what is clamped, head first: 95mm, or `layers` such as \"steel 20mm, aluminium 45mm\""},
		{"length", "`length` of the bolt under the head"},
		{"shank", "`diameter` of a waisted or reduced shank"},
		{"thread-length", "`length` of the bolt's thread, or full: up to the head"},
		{"snug", "`torque` before the angle, such as 40Nm"},
		{"angle", "`turn` after the snug torque, such as 90deg or 90+90deg"},
		{"into", "`material` of the tapped part: aluminium, cast iron, steel"},
		{"engagement", "`length` of thread engaged in the tapped part"},
		{"units", "print the key figures in these `units` too: lbf.in,kgf.m,lbf,psi,ksi,in"},
		{"boss", "outer `diameter` around the tapped hole"},
		{"insert", "outer `diameter` of a thread insert in the tapped part"},
		{"reuse", "whether the bolt may go `back` in: once, inspect, yes"},
	})
	flag.Offer(flags, "reuse", flag.Texts(reuses)...)
	flag.Offer(flags, "equation", flag.Texts(screw.Equations)...)
	flag.Offer(flags, "head", flag.Texts(head.Forms)...)
	flag.Offer(flags, "washer", flag.Texts(head.Washers)...)
	flag.Offer(flags, "units", "N", "kN", "lbf", "MPa", "psi", "ksi", "mm", "in", "Nm", "lbf.ft", "lbf.in", "kgf.m")
	return flag.AddPrint(flags, render.PDF)
}

func (p *Program) torque(flags *pflag.FlagSet, args []string, printing flag.Print) Status {
	q := newQuantities(flags)
	onPaper, asJSON := flags.Changed("format"), *printing.AsJSON
	sheets, err := printing.ChosenFor(onPaper, flag.ForSheets, "", "format", "paper", "landscape", "dpi", "out")
	if err != nil {
		return p.misuse(err)
	}
	if onPaper && len(args) == 0 {
		return p.misuse(flag.Misused(SheetOfFile, nil))
	}
	q.checkTorqueFlags(len(args) > 0)
	units, _ := flag.Read(q, "units", askedUnits)
	if q.Err != nil {
		return p.refuse(q.Err)
	}
	asked, made := []figures.Ask{{}}, plan.Plan{}
	if len(args) > 0 {
		file, err := oneFile(args)
		if err != nil {
			return p.misuse(err)
		}
		var status Status
		if made, asked, status = p.kinds(q, file); status != Done {
			return status
		}
	}
	answers, err := q.answers(asked)
	var joint service.Joint
	if err == nil {
		answers, joint, err = q.inJoint(made, asked, answers)
	}
	switch {
	case err == nil && onPaper:
		return p.draw(made, sheets, printing, func(made plan.Plan, ask job.Printing) ([]render.File, []string, error) {
			return job.ClampLoad(made, joint, ask)
		})
	case err == nil && asJSON && len(args) > 0:
		return p.printJSON(report.TorqueFileJSON(p.words, made.Title, answers, joint))
	case err == nil && asJSON:
		return p.printJSON(report.TorqueJSON(p.words, answers[0]))
	case err == nil:
		p.reportTo(p.Stdout).Torque(made.Title, answers, units, joint)
		return Done
	case len(args) == 0 && !flags.Changed("class") && q.Err == nil:
		return p.misuse(err) // the error lists the classes
	}
	return p.refuse(err)
}

func (q *quantities) checkTorqueFlags(file bool) {
	q.AtMostOne("yield", "proof", "preload", "stretch", "torque")
	q.AtMostOne("stretch", "snug")
	q.AtMostOne("friction", "lubricant", "k")
	q.AtMostOne("torque", "snug")
	if text, _ := q.Text("thread-length"); text == "full" {
		q.AtMostOne("shank", "thread-length")
	}
	q.Needs("angle", "snug", "40Nm")
	if file {
		return
	}
	if q.Flags.Changed("kind") {
		q.Fail(flag.Misused(KindOfFile, nil))
	}
	if !q.Flags.Changed("thread") {
		q.Fail(flag.Misused(WhichBolt, nil))
	}
	q.Needs("angle", "grip", "95mm")
	q.Needs("snug", "grip", "95mm")
	q.Needs("stretch", "grip", "95mm")
	q.Needs("length", "grip", "95mm")
	q.Needs("thread-length", "grip", "95mm")
	q.Needs("engagement", "into", "aluminium")
	q.Needs("insert", "into", "aluminium")
	q.Needs("boss", "into", "aluminium")
}

// kinds reads the kinds of a pattern file, or only the one asked for.
func (p *Program) kinds(q *quantities, file string) (made plan.Plan, asked []figures.Ask, status Status) {
	made, asked, problems, err := job.Kinds(file, p.Stdin)
	kind, picked := q.Text("kind")
	if status = p.stopped(file, problems, err); status != Done || !picked {
		return made, asked, status
	}
	var names []string
	for _, a := range asked {
		if a.Kind == kind {
			return made, []figures.Ask{a}, Done
		}
		names = append(names, a.Kind)
	}
	return plan.Plan{}, nil, p.refuse(flag.Unknown("kind", kind, names))
}

// answers calculates every request, with the flags applied to it. One that
// cannot be calculated stops all: half a list could be mistaken for a complete
// one.
func (q *quantities) answers(asked []figures.Ask) ([]figures.Answer, error) {
	var answers []figures.Answer
	for _, ask := range asked {
		q.override(&ask)
		if q.Err != nil {
			return nil, q.Err
		}
		answer, err := figures.Answer{}, complete(ask)
		if err == nil {
			answer, err = figures.WorkOut(ask)
		}
		if err != nil && ask.Kind != "" {
			err = finding.Failed(figures.AtKind, finding.Values{"kind": ask.Kind, "why": err})
		}
		if err != nil {
			return nil, err
		}
		answers = append(answers, answer)
	}
	return answers, nil
}

// inJoint calculates the joint of the answers. Where its gasket bears less than
// the bolts, the torque to set is that of the gasket, unless an aim was asked
// for.
func (q *quantities) inJoint(made plan.Plan, asked []figures.Ask, answers []figures.Answer) ([]figures.Answer, service.Joint, error) {
	joint, limited := service.Of(made, answers...), false
	for i := range asked {
		asked[i].Most = joint.Most(asked[i].Kind)
		limited = limited || asked[i].Most > 0
	}
	if !limited || q.Flags.Changed("yield") || q.Flags.Changed("proof") || q.Flags.Changed("preload") {
		return answers, joint, nil
	}
	answers, err := q.answers(asked)
	return answers, service.Of(made, answers...), err
}

func (q *quantities) override(ask *figures.Ask) {
	b := &ask.Bolt.Bolt
	flag.Over(q, "thread", thread.Parse, &b.Thread)
	flag.Over(q, "class", flag.Word, &b.Class)
	q.friction(b)
	b.YieldShare, _ = flag.Read(q, "yield", screw.ParseShare)
	b.ProofShare, _ = flag.Read(q, "proof", screw.ParseShare)
	b.Preload = flag.Within(q, "preload", unit.Sensible.Force, unit.ParseForce)
	ask.Torque = flag.Within(q, "torque", unit.Sensible.Torque, flag.TorqueNm)
	ask.Stretch = flag.Within(q, "stretch", unit.Sensible.Thickness, flag.WithUnit)
	if e, set := flag.OneOf(q, "equation", screw.Equations); set {
		b.Equation = e
	}
	q.head(b)
	q.sizes(ask)
	ask.Snug = flag.Within(q, "snug", unit.Sensible.Torque, flag.TorqueNm)
	ask.Angle = flag.Within(q, "angle", unit.Sensible.Turn, flag.SumOfAngles)
}

// friction replaces everything that a file says about friction by the flag.
func (q *quantities) friction(b *screw.Bolt) {
	if f, set := flag.Read(q, "friction", screw.ParseFriction); set {
		b.Friction, b.Lubricant, b.NutFactor = &f, "", 0
	}
	if words, set := q.Text("lubricant"); set {
		b.Friction, b.Lubricant, b.NutFactor = nil, words, 0
	}
	if k, set := flag.Read(q, "k", screw.ParseNutFactor); set {
		b.Friction, b.Lubricant, b.NutFactor, b.NutFactorSpread = nil, "", k, 0
	}
}

// head replaces what a file says about the bearing face by a head or a washer.
func (q *quantities) head(b *screw.Bolt) {
	if form, set := flag.OneOf(q, "head", head.Forms); set {
		if was := cmp.Or(b.HeadForm, head.Hexagon); form != was {
			b.HeadAcross, b.WasherFace = 0, 0
		}
		b.HeadForm = form
	}
	if across := flag.Within(q, "across", unit.Sensible.Head, flag.WithUnit); across > 0 {
		b.HeadAcross, b.WasherFace = across, 0
		if !q.Flags.Changed("head") {
			b.HeadForm = head.Hexagon
		}
	}
	if washer, set := flag.OneOf(q, "washer", head.Washers); set {
		b.Washer = washer
		if washer == head.NormalWasher {
			b.WasherFace = 0
		}
	}
}

func (q *quantities) sizes(ask *figures.Ask) {
	for _, size := range []struct {
		flag   string
		limits unit.Limits
		to     *unit.Length
	}{
		{"head-diameter", unit.Sensible.BoltFace, &ask.Bolt.Bolt.WasherFace}, {"hole", unit.Sensible.BoltHole, &ask.Bolt.Bolt.Hole},
		{"length", unit.Sensible.BoltLength, &ask.Grip.BoltLength}, {"engagement", unit.Sensible.Engagement, &ask.Grip.Engagement},
	} {
		if l := flag.Within(q, size.flag, size.limits, flag.WithUnit); l > 0 {
			*size.to = l
		}
	}
	q.threadLength(ask)
	if shank := flag.Within(q, "shank", unit.Sensible.BoltFace, flag.WithUnit); shank > 0 {
		ask.Bolt.Bolt.Shank, ask.Grip.Shank, ask.Grip.FullThread = shank, nil, false
	}
	if boss := flag.Within(q, "boss", unit.Sensible.BoltFace, flag.WithUnit); boss > 0 {
		ask.Boss = boss
	}
	if reuse, set := flag.OneOf(q, "reuse", reuses); set {
		ask.Reuse = string(reuse)
	}
	flag.Over(q, "grip", stiffness.ParseLayers, &ask.Grip.Layers)
	flag.Over(q, "into", flag.Word, &ask.Grip.TappedIn)
	if outer := flag.Within(q, "insert", unit.Sensible.Insert, flag.WithUnit); outer > 0 {
		ask.Insert = &strength.Insert{Outer: outer}
	}
}

// reuses lists the possible values of reuse.
var reuses = []plan.Reuse{plan.ReuseOnce, plan.ReuseInspect, plan.ReuseYes}

// threadLength reads the length of the thread, or that it goes up to the head.
func (q *quantities) threadLength(ask *figures.Ask) {
	g := &ask.Grip
	text, set := q.Text("thread-length")
	if !set {
		return
	}
	g.Thread, g.FullThread = 0, text == "full"
	if g.FullThread {
		ask.Bolt.Bolt.Shank, g.Shank = 0, nil
	} else {
		g.Thread = flag.Within(q, "thread-length", unit.Sensible.BoltLength, flag.WithUnit)
	}
}

// complete reports what a kind of a file lacks, and the flag that states it.
func complete(ask figures.Ask) error {
	lacks := func(flag string) error { return finding.Failed(KindLacks, finding.Values{"flag": flag}) }
	switch {
	case ask.Kind == "":
		return nil
	case ask.Bolt.Bolt.Thread.Name == "":
		return lacks("thread")
	case strings.TrimSpace(ask.Bolt.Bolt.Class) == "":
		return lacks("class")
	case (ask.Snug > 0 || ask.Stretch > 0) && len(ask.Grip.Layers) == 0:
		return lacks("grip")
	case (ask.Insert != nil || ask.Boss > 0) && ask.Grip.TappedIn == "", ask.Grip.Engagement > 0 && ask.Grip.TappedIn == "":
		return lacks("into")
	}
	return nil
}

// askedUnits reads the units for the key figures, besides those of the table.
func askedUnits(text string) ([]unit.Asked, error) {
	var units []unit.Asked
	for _, name := range strings.Split(text, ",") {
		u, err := unit.ParseAsked(name)
		if err != nil {
			return nil, err
		}
		units = append(units, u)
	}
	return units, nil
}
