package cli

import (
	"errors"
	"io/fs"
	"path/filepath"
	"slices"
	"strings"
	"syscall"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/patterns/meaning"
	"drawdown/patterns/problem"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

// wayFlags are the flags that override a file's order; empty values keep the
// file's own.
type wayFlags struct {
	way  *sequence.Way
	turn *sequence.Turn
}

func addWayFlags(flags *pflag.FlagSet) wayFlags {
	return wayFlags{
		flag.Choice(flags, "way", "", sequence.Ways, "order every group this `way`, instead of the file's: "),
		flag.Choice(flags, "turn", "", sequence.Turns, "go round this `turn`, instead of the file's: "),
	}
}

func oneFile(args []string) (string, error) {
	return oneSource(args, "pattern", "")
}

func oneSource(args []string, sort, example string) (string, error) {
	switch {
	case len(args) > 1:
		return "", finding.Failed(OneAtATime, finding.Values{"sort": sort, "written": args[1]})
	case len(args) == 0 || args[0] == "":
		return "", finding.Failed(Which, finding.Values{"sort": sort, "example": example})
	}
	return args[0], nil
}

// checkFiles checks the file arguments of a command that takes one or several.
// Standard input can be read only once.
func checkFiles(args []string) error {
	if len(args) < 2 {
		_, err := oneFile(args)
		return err
	}
	if slices.Contains(args, "") {
		return finding.Failed(EmptyName, nil)
	}
	if piped := slices.Index(args, "-"); piped >= 0 && slices.Contains(args[piped+1:], "-") {
		return finding.Failed(StdinOnce, nil)
	}
	return nil
}

// looksLikePattern distinguishes a pattern from a misspelt command.
func looksLikePattern(name string) bool {
	extension := strings.ToLower(filepath.Ext(name))
	return extension == ".yaml" || extension == ".yml" || slices.Contains(patterns.Builtin(), name)
}

// load plans a pattern and reports its problems, except warnings with certain
// codes. A status other than Done is final.
func (p *Program) load(name string, way sequence.Way, turn sequence.Turn, but ...finding.Code) (plan.Plan, problem.List, Status) {
	made, problems, err := p.planned(name, way, turn)
	told := slices.DeleteFunc(slices.Clone(problems), func(one problem.Problem) bool {
		return one.Found != nil && slices.Contains(but, one.Found.Code)
	})
	return made, problems, p.stopped(name, told, err)
}

// planned plans a pattern. Its problems are those of the file, and a date in
// the far future.
func (p *Program) planned(name string, way sequence.Way, turn sequence.Turn) (plan.Plan, problem.List, error) {
	made, problems, err := job.Load(name, p.Stdin, way, turn)
	return made, append(job.DatedAhead(name, made.Heading, p.Today), problems...), err
}

// loadPlaces plans a pattern of which only the places are used, so that missing
// figures do not matter.
func (p *Program) loadPlaces(name string, way sequence.Way, turn sequence.Turn) (plan.Plan, Status) {
	made, _, status := p.load(name, way, turn, meaning.NoFigures)
	return made, status
}

// stopped reports the problems of an input. If they stop the work, or the file
// could not be read, the status is not Done.
func (p *Program) stopped(file string, problems problem.List, err error) Status {
	if err != nil {
		return p.unread(file, err)
	}
	p.report(problems.WithoutNotes())
	if problems.Stops() {
		return Wrong
	}
	return Done
}

// unread reports a pattern that could not be read at all. It distinguishes a
// wrong name from a failing machine.
func (p *Program) unread(name string, err error) Status { return p.fail(whyUnread(name, err)) }

// whyUnread returns why a pattern could not be read, and the status for it.
func whyUnread(name string, err error) (Status, error) {
	var inPath *fs.PathError
	if !errors.As(err, &inPath) {
		if errors.Is(err, fs.ErrNotExist) || errors.Is(err, fs.ErrInvalid) {
			return Wrong, err
		}
		return Failed, err
	}
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return Wrong, finding.Failed(files.NoFile, finding.Values{"file": name, "builtin": builtInInstead(name)})
	case errors.Is(err, syscall.ENAMETOOLONG):
		return Misuse, finding.Failed(files.NameTooLong, finding.Values{"name": name})
	case errors.Is(err, syscall.ENOTDIR):
		return Wrong, finding.Failed(files.BehindFile, finding.Values{"file": name, "above": files.OnTheWay(name)})
	}
	return Failed, finding.Failed(files.NotRead, finding.Values{"file": name, "why": inPath.Err})
}

// builtInInstead returns the built-in pattern with the name of a missing file.
func builtInInstead(name string) string {
	base := filepath.Base(name)
	stem := strings.TrimSuffix(base, filepath.Ext(base))
	if slices.Contains(patterns.Builtin(), stem) {
		return stem
	}
	return ""
}

// said returns problems in the language of the call.
func (p *Program) said(problems problem.List) problem.List { return p.reportTo(nil).Said(problems) }

// report prints problems with their source lines.
func (p *Program) report(problems problem.List) { p.reportTo(p.Stderr).Problems(problems) }
