package cli

import (
	"errors"
	"io/fs"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/source"
	"drawdown/sequence/tension/wrench"
)

var wrenchCommand = command{
	name:    "wrench",
	operand: nothing,
	build: func(flags *pflag.FlagSet) runner {
		addTexts(flags, []textFlag{
			{"torque", "`torque` that the fastener needs"},
			{"length", "`length` of the wrench: middle of the grip to the drive"},
			{"adapter", "`length` of the adapter: drive to fastener"},
			{"adapter-angle", "`angle` of the adapter to the wrench: 0deg is straight out"},
			{"wrenches", "`file` with the shop's own list, or - for standard input"},
		})
		again := flags.Bool("again", false, "the fastener is at rest and was tightened before")
		flag.OfferFiles(flags, "wrenches")
		flag.Language(flags)
		asJSON := flag.JSON(flags)
		return func(p *Program, args []string) Status { return p.wrench(flags, args, *again, *asJSON) }
	},
}

func (p *Program) wrench(flags *pflag.FlagSet, args []string, again, asJSON bool) Status {
	q := newQuantities(flags)
	work := q.wrenchWork(args)
	if q.Err != nil {
		return p.refuse(q.Err)
	}
	work.Again = again
	if file, set := q.Text("wrenches"); set {
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
		return p.printJSON(report.WrenchJSON(p.words, work, answer))
	}
	p.reportTo(p.Stdout).Wrench(work, answer)
	return Done
}

func (q *quantities) wrenchWork(args []string) (work wrench.Work) {
	if len(args) > 0 {
		q.Fail(flag.Misused(TakesNoName, finding.Values{"command": "wrench", "written": args[0]}))
	}
	if !q.Flags.Changed("torque") {
		q.Fail(flag.Misused(WhichTorque, nil))
	}
	if !q.Flags.Changed("wrenches") {
		q.Needs("adapter", "length", "400mm")
	}
	q.Needs("adapter-angle", "adapter", "60mm")
	q.Text("wrenches")
	given, _ := flag.Read(q, "torque", unit.ParseSensibleTorque)
	work.Torque, work.Unit = given.Nm(), given.Unit
	work.Length = flag.Within(q, "length", unit.Sensible.WrenchLength, flag.WithUnit)
	work.Adapter = flag.Within(q, "adapter", unit.Sensible.Adapter, flag.WithUnit)
	work.AdapterAngle = flag.Within(q, "adapter-angle", unit.Sensible.Orientation, unit.ParseAngle)
	return work
}

func (p *Program) wrenches(file string) ([]wrench.Wrench, Status) {
	list, problems, err := job.Wrenches(file, p.Stdin, p.Today)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, p.fail(Wrong, finding.Failed(NoWrenchList, finding.Values{"file": file}))
	case errors.Is(err, source.IsFolder):
		return nil, p.fail(Wrong, finding.Failed(ListIsFolder, finding.Values{"file": file}))
	}
	return list, p.stopped(file, problems, err)
}
