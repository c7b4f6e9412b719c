package cli

import (
	"errors"
	"fmt"
	"io/fs"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/source"
	"drawdown/sequence/tension/wrench"
)

var wrenchCommand = command{
	name:    "wrench",
	operand: nothing,
	build: func(flags *pflag.FlagSet) runner {
		for _, f := range []struct{ name, usage string }{
			{"torque", "`torque` that the fastener is to get"},
			{"length", "`length` of the wrench: middle of the grip to the drive"},
			{"adapter", "`length` of the adapter: drive to fastener"},
			{"adapter-angle", "`angle` of the adapter to the wrench: 0deg is straight out"},
			{"wrenches", "`file` with the shop's own list, or - for standard input"},
		} {
			flags.String(f.name, "", f.usage)
		}
		again := flags.Bool("again", false, "the fastener has been tightened before")
		flag.OfferFiles(flags, "wrenches")
		flag.Language(flags)
		asJSON := flag.JSON(flags)
		return func(p *Program, args []string) Status { return p.wrench(flags, args, *again, *asJSON) }
	},
}

func (p *Program) wrench(flags *pflag.FlagSet, args []string, again, asJSON bool) Status {
	q := &quantities{flags: flags}
	work := q.wrenchWork(args)
	if q.err != nil {
		return p.refuse("wrench", q.err)
	}
	work.Again = again
	if file, set := q.text("wrenches"); set {
		list, status := p.wrenches(file)
		if status != Done {
			return status
		}
		work.Wrenches = list
	}
	answer, err := wrench.Set(work)
	if err != nil {
		return p.fail(Wrong, err)
	}
	if asJSON {
		return p.printJSON(wrenchJSON(p.words, work, answer))
	}
	p.printWrench(work, answer)
	return Done
}

func (q *quantities) wrenchWork(args []string) (work wrench.Work) {
	if len(args) > 0 {
		q.fail(misuse("wrench takes flags only: %q is one too many", args[0]))
	}
	if !q.flags.Changed("torque") {
		q.fail(misuse("which torque? Write for example --torque 80Nm"))
	}
	if !q.flags.Changed("wrenches") {
		q.needs("adapter", "length", "400mm")
	}
	q.needs("adapter-angle", "adapter", "60mm")
	q.text("wrenches")
	given, set := read(q, "torque", unit.ParseTorque)
	if set && !(given.Value > 0) {
		q.fail(fmt.Errorf("--torque %s; allowed: above 0", given))
	}
	work.Torque, work.Unit = given.Nm(), given.Unit
	work.Length = above(q, "length", withUnit)
	work.Adapter = above(q, "adapter", withUnit)
	work.AdapterAngle, _ = read(q, "adapter-angle", unit.ParseAngle)
	return work
}

// wrenches reads the shop's list.
func (p *Program) wrenches(file string) ([]wrench.Wrench, Status) {
	list, problems, err := job.Wrenches(file, p.Stdin)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, p.fail(Wrong, finding.Failed(NoWrenchList, finding.Values{"file": file}))
	case errors.Is(err, source.IsFolder):
		return nil, p.fail(Wrong, fmt.Errorf("--wrenches: %s is a folder; name the file in it", file))
	case err != nil:
		return nil, p.fail(Failed, fmt.Errorf("--wrenches: %s cannot be read: %w", file, reason(err)))
	}
	p.report(problems)
	if problems.Stops() {
		return nil, Wrong
	}
	return list, Done
}

func (p *Program) printWrench(work wrench.Work, a wrench.Result) {
	p.fact("set on the wrench", "%s", bothTorques(a.Setting))
	p.fact("on its scale", "%s (%s)", a.Scale, a.Scale.Other())
	p.fact("fastener gets", "%s N·m; by its tolerance %s to %s N·m", figure(float64(a.Given)), figure(float64(a.Low)), figure(float64(a.High)))
	if work.Adapter > 0 {
		p.fact("adapter", "%s at %s", work.Adapter, work.AdapterAngle)
		p.fact("wrench length", "%s, %s", a.Length, p.words.Term(a.LengthFrom))
	}
	if a.Wrench != nil {
		p.fact("take", "%s", a.Wrench.Name)
	}
	p.fact("usable", "%s", usableWords(a))
	p.printLines("Notes", p.words.SayAll(a.Notes))
	p.printLines("Assumed", p.words.SayAll(a.Assumptions))
	p.printLines("Sources", a.Sources)
}

// usableWords says why a wrench is usable at the setting, or which one is.
func usableWords(a wrench.Result) string {
	least, most := figure(a.Least.In(a.Scale.Unit)), figure(a.Most.In(a.Scale.Unit))
	if a.Wrench == nil {
		return fmt.Sprintf("a wrench whose scale ends between %s and %s %s, so that the setting lies within 20 %% to 100 %% of it", least, most, a.Scale.Unit)
	}
	return fmt.Sprintf("yes: %s keeps its tolerance from %s to %s %s, and is the smallest that does so at this setting", a.Wrench.Name, least, most, a.Scale.Unit)
}
