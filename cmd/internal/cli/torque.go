package cli

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/head"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
	"drawdown/sequence/tension/strength"
)

var torqueCommand = command{
	name: "torque",
	build: func(flags *pflag.FlagSet) runner {
		asJSON := addTorqueFlags(flags)
		return func(p *Program, args []string) Status { return p.torque(flags, args, *asJSON) }
	},
}

func addTorqueFlags(flags *pflag.FlagSet) (asJSON *bool) {
	for _, f := range []struct{ name, usage string }{
		{"kind", "only this `kind` of FILE"},
		{"thread", "`thread`, such as M10, M10x1.25 or 3/8-16 UNC"},
		{"class", "`class` of strength: 10.9, grade 8, A2-70, 830 MPa"},
		{"friction", "`coefficient`: 0.12, 0.10-0.14 or thread=0.10-0.14,head=0.12"},
		{"lubricant", "`words` for the friction: engine oil, dry, wax"},
		{"k", "nut factor `K` instead of friction, such as 0.2"},
		{"yield", "aim: `share` of the yield stress (90% where no aim is set)"},
		{"proof", "aim: `share` of the proof load, such as 75%"},
		{"preload", "aim: `force`, such as 30kN"},
		{"torque", "work backwards from this `torque`, such as 48Nm"},
		{"equation", "`form` of the screw equation: " + choices(screw.Equations)},
		{"head-diameter", "outer `diameter` of the bearing face under the head"},
		{"head", "`form` of the head: " + choices(head.Forms)},
		{"across", "`width` across flats of a hexagon head"},
		{"washer", "`washer` under the head: " + choices(head.Washers)},
		{"hole", "`diameter` of the clearance hole"},
		{"grip", "what is clamped, head first: 95mm, or `layers` such as \"steel 20mm, aluminium 45mm\""},
		{"length", "`length` of the bolt under the head"},
		{"snug", "`torque` before the angle, such as 40Nm"},
		{"angle", "`turn` after the snug torque, such as 90deg or 90+90deg"},
		{"into", "`material` of the tapped part: aluminium, cast iron, steel"},
		{"engagement", "`length` of thread engaged in the tapped part"},
		{"units", "print the key figures in these `units` too: lbf.in,kgf.m,lbf,psi,ksi,in"},
		{"insert", "outer `diameter` of a thread insert in the tapped part"},
	} {
		flags.String(f.name, "", f.usage)
	}
	flag.Offer(flags, "equation", flag.Texts(screw.Equations)...)
	flag.Offer(flags, "head", flag.Texts(head.Forms)...)
	flag.Offer(flags, "washer", flag.Texts(head.Washers)...)
	flag.Offer(flags, "units", "N", "kN", "lbf", "MPa", "psi", "ksi", "mm", "in", "Nm", "lbf.ft", "lbf.in", "kgf.m")
	flag.Language(flags)
	return flag.JSON(flags)
}

func (p *Program) torque(flags *pflag.FlagSet, args []string, asJSON bool) Status {
	q := &quantities{flags: flags}
	q.checkTorqueFlags(len(args) > 0)
	if q.err != nil {
		return p.refuse("torque", q.err)
	}
	units, _ := read(q, "units", askedUnits)
	if q.err != nil {
		return p.refuse("torque", q.err)
	}
	asked := []job.TorqueRequest{{}}
	title := ""
	if len(args) > 0 {
		file, err := oneFile(args)
		if err != nil {
			return p.misuse("torque", "%v", err)
		}
		var status Status
		if title, asked, status = p.kinds(q, file); status != Done {
			return status
		}
	}
	answers, err := p.answers(q, asked)
	switch {
	case err == nil && asJSON && len(args) > 0:
		return p.printJSON(torqueFileJSON(title, answers))
	case err == nil && asJSON:
		return p.printJSON(torqueJSON(answers[0]))
	case err == nil:
		p.printTorque(title, answers, units)
		return Done
	case len(args) == 0 && !flags.Changed("class") && q.err == nil:
		return p.misuse("torque", "%v", err) // the error lists the classes
	}
	return p.refuse("torque", err)
}

// checkTorqueFlags refuses flags that exclude or need each other.
func (q *quantities) checkTorqueFlags(file bool) {
	q.atMostOne("yield", "proof", "preload", "torque")
	q.atMostOne("friction", "lubricant", "k")
	q.atMostOne("torque", "snug")
	q.needs("angle", "snug", "40Nm")
	if file {
		return
	}
	if q.flags.Changed("kind") {
		q.fail(misuse("--kind picks a kind of a pattern file; name the FILE"))
	}
	if !q.flags.Changed("thread") {
		q.fail(misuse("which bolt? Write for example --thread M10 --class 10.9, or name a pattern FILE"))
	}
	q.needs("angle", "grip", "95mm")
	q.needs("snug", "grip", "95mm")
	q.needs("length", "grip", "95mm")
	q.needs("engagement", "into", "aluminium")
	q.needs("insert", "into", "aluminium")
}

// kinds reads the kinds of a pattern file, or the one that was asked for.
func (p *Program) kinds(q *quantities, file string) (title string, asked []job.TorqueRequest, status Status) {
	title, asked, problems, err := job.Kinds(file, p.Stdin)
	if err != nil {
		return "", nil, p.unread(file, err)
	}
	p.report(problems)
	if problems.Stops() {
		return "", nil, Wrong
	}
	kind, picked := q.text("kind")
	if !picked {
		return title, asked, Done
	}
	names := make([]string, len(asked))
	for i, a := range asked {
		names[i] = a.Kind
	}
	i := slices.Index(names, kind)
	if i < 0 {
		return "", nil, p.refuse("torque", unknownKind(kind, names))
	}
	return title, asked[i : i+1], Done
}

// answers works out every request, with the flags over it. One that cannot be
// worked out stops all: half a list would pass for a whole one.
func (p *Program) answers(q *quantities, asked []job.TorqueRequest) ([]job.TorqueAnswer, error) {
	var answers []job.TorqueAnswer
	for _, ask := range asked {
		q.override(&ask)
		if q.err != nil {
			return nil, q.err
		}
		if err := q.complete(ask); err != nil {
			return nil, err
		}
		answer, err := job.WorkOutTorque(ask)
		if err != nil {
			return nil, ofKind(ask.Kind, err)
		}
		answers = append(answers, answer)
	}
	return answers, nil
}

// override lays the flags over a request.
func (q *quantities) override(ask *job.TorqueRequest) {
	b := &ask.Bolt
	if t, set := read(q, "thread", thread.Parse); set {
		b.Thread = t
	}
	if class, set := q.text("class"); set {
		b.Class = class
	}
	q.friction(b)
	b.YieldShare, _ = read(q, "yield", screw.ParseShare)
	b.ProofShare, _ = read(q, "proof", screw.ParseShare)
	b.Preload = above(q, "preload", unit.ParseForce)
	ask.Torque = above(q, "torque", torqueNm)
	if e, set := oneOf(q, "equation", screw.Equations); set {
		b.Equation = e
	}
	q.head(b)
	q.sizes(ask)
	ask.Snug = above(q, "snug", torqueNm)
	ask.Angle = above(q, "angle", sumOfAngles)
}

// friction takes one word on the friction in place of all that a file says.
func (q *quantities) friction(b *screw.Bolt) {
	if f, set := read(q, "friction", screw.ParseFriction); set {
		b.Friction, b.Lubricant = &f, ""
	}
	if words, set := q.text("lubricant"); set {
		b.Friction, b.Lubricant = nil, words
	}
	if k, set := read(q, "k", screw.ParseNutFactor); set {
		b.Friction, b.Lubricant, b.NutFactor = nil, "", k
	}
}

// head takes a head or a washer in place of what a file says of the bearing
// face, which belongs to another.
func (q *quantities) head(b *screw.Bolt) {
	if form, set := oneOf(q, "head", head.Forms); set {
		if was := cmp.Or(b.HeadForm, head.Hexagon); form != was {
			b.HeadAcross, b.WasherFace = 0, 0
		}
		b.HeadForm = form
	}
	if across := above(q, "across", withUnit); across > 0 {
		b.HeadAcross, b.WasherFace = across, 0
		if !q.flags.Changed("head") {
			b.HeadForm = head.Hexagon
		}
	}
	if washer, set := oneOf(q, "washer", head.Washers); set {
		b.Washer = washer
		if washer == head.NormalWasher {
			b.WasherFace = 0
		}
	}
}

func (q *quantities) sizes(ask *job.TorqueRequest) {
	for _, size := range []struct {
		flag string
		to   *unit.Length
	}{
		{"head-diameter", &ask.Bolt.WasherFace}, {"hole", &ask.Bolt.Hole},
		{"length", &ask.Grip.BoltLength}, {"engagement", &ask.Grip.Engagement},
	} {
		if l := above(q, size.flag, withUnit); l > 0 {
			*size.to = l
		}
	}
	if layers, set := read(q, "grip", stiffness.ParseLayers); set {
		ask.Grip.Layers = layers
	}
	if material, set := q.text("into"); set {
		ask.Grip.TappedIn = material
	}
	if outer := above(q, "insert", withUnit); outer > 0 {
		ask.Insert = &strength.Insert{Outer: outer}
	}
}

// complete says what a kind of a file lacks, and which flag states it.
func (q *quantities) complete(ask job.TorqueRequest) error {
	lacks := func(what, flag string) error {
		return ofKind(ask.Kind, fmt.Errorf("%s is not stated; add it to the file, write --%s, or pick another kind with --kind", what, flag))
	}
	switch {
	case ask.Kind == "":
		return nil
	case ask.Bolt.Thread.Name == "":
		return lacks("the thread", "thread")
	case strings.TrimSpace(ask.Bolt.Class) == "":
		return lacks("the class", "class")
	case ask.Snug > 0 && len(ask.Grip.Layers) == 0:
		return lacks("the grip", "grip")
	case ask.Insert != nil && ask.Grip.TappedIn == "", ask.Grip.Engagement > 0 && ask.Grip.TappedIn == "":
		return lacks("the material of the tapped part", "into")
	}
	return nil
}
