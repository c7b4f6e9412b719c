package cli

import (
	"errors"
	"fmt"
	"path/filepath"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
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
			if len(args) != 1 || args[0] == "" {
				return p.misuse("trace", "%v", oneScan(args))
			}
			if err := checkFolder(*folder); err != nil {
				return p.misuse("trace", "%v", err)
			}
			q := &quantities{flags: flags}
			ask := q.traceRequest()
			if q.err != nil {
				return p.refuse("trace", q.err)
			}
			size, err := sheet.FindPaper(*paper)
			if err != nil {
				return p.misuse("trace", "%v", err)
			}
			return p.trace(args[0], ask, sheet.Request{Paper: size, Words: p.words}, *folder, *asJSON)
		}
	},
}

func oneScan(args []string) error {
	if len(args) > 1 {
		return fmt.Errorf("one scan at a time: %q is one too many", args[1])
	}
	return errors.New("which scan? Name a picture file, a built-in one such as " + scan.Builtin()[0] + ", or - for standard input")
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
	if err := sparesScan(folder, pattern.Name, file); err != nil {
		return p.fail(Wrong, err)
	}
	drawn, err := answer.Proof(proof)
	if err != nil {
		return p.fail(Wrong, err)
	}
	files := []render.File{pattern, drawn}
	if err := answer.Check(); err != nil { // the proof shows why
		files = files[1:]
		if paths, writeErr := writeFiles(folder, files); writeErr != nil {
			return p.fail(Failed, writeErr)
		} else {
			return p.fail(Wrong, fmt.Errorf("%w: %s", err, paths[0]))
		}
	}
	if _, problems := patterns.Read(patterns.FromBytes(pattern.Name, pattern.Data)); problems.Stops() {
		p.report(problems)
		return Wrong
	}
	paths, err := writeFiles(folder, files)
	if err != nil {
		return p.fail(Failed, err)
	}
	if asJSON {
		return p.printJSON(traceJSON(answer, paths))
	}
	p.printTrace(answer)
	for _, path := range paths {
		fmt.Fprintln(p.Stdout, path)
	}
	return Done
}

// sparesScan refuses to write over the picture that was read.
func sparesScan(folder, name, file string) error {
	if err := sparesSource(filepath.Join(folder, name), file); err != nil {
		return fmt.Errorf("%s is the scan itself, and the pattern would take its place; name another folder with --out", file)
	}
	return nil
}
