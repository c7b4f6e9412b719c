package cli

import (
	"cmp"
	"errors"
	"fmt"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/report"
	"drawdown/patterns"
	"drawdown/patterns/scan"
	"drawdown/render"
	"drawdown/render/sheet"
)

var traceCommand = command{
	name:    "trace",
	operand: scanFile,
	build: func(flags *pflag.FlagSet) runner {
		addTraceFlags(flags)
		folder := flag.Out(flags, "out", flag.OutUsage)
		paper := flag.Paper(flags)
		flag.Language(flags)
		asJSON := flag.JSON(flags)
		return func(p *Program, args []string) Status {
			file, err := oneSource(args, "scan", "a picture file", scan.Builtin()[0])
			size, errPaper := sheet.FindPaper(*paper)
			if err := cmp.Or(err, errPaper, files.CheckFolder(*folder)); err != nil {
				return p.misuse("trace", "%v", err)
			}
			q := &quantities{flags: flags}
			ask := q.traceRequest()
			if q.err != nil {
				return p.refuse("trace", q.err)
			}
			return p.trace(file, ask, sheet.Request{Paper: size, Words: p.words}, *folder, *asJSON)
		}
	},
}

func (p *Program) trace(file string, ask job.TraceRequest, proof sheet.Request, folder string, asJSON bool) Status {
	answer, err := job.Trace(file, p.Stdin, ask)
	if wrong, ok := errors.AsType[*job.ScanError](err); ok {
		return p.fail(Wrong, wrong)
	}
	if err != nil {
		return p.unread(file, err)
	}
	pattern := answer.Pattern()
	if err := sparesSource(folder, pattern, file, "scan"); err != nil {
		return p.fail(Wrong, err)
	}
	drawn, err := answer.Proof(proof)
	if err != nil {
		return p.fail(Wrong, err)
	}
	made, lacks := []render.File{pattern, drawn}, answer.Check()
	if lacks != nil {
		made = made[1:] // the proof shows why
	} else if _, problems := patterns.Read(patterns.FromBytes(pattern.Name, pattern.Data)); problems.Stops() {
		p.report(problems)
		return Wrong
	}
	paths, err := files.Write(folder, made)
	switch {
	case err != nil:
		return p.fail(Failed, err)
	case lacks != nil:
		return p.fail(Wrong, fmt.Errorf("%w: %s", lacks, paths[0]))
	case asJSON:
		return p.printJSON(report.TraceJSON(p.words, answer, paths))
	}
	p.reportTo(p.Stdout).Trace(answer)
	p.printPaths(paths)
	return Done
}
