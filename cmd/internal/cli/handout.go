package cli

import (
	"fmt"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/job"
	"drawdown/geometry/finding"
	"drawdown/render"
	"drawdown/sequence/exercise"
)

var handoutCommand = command{
	name:  "handout",
	build: buildHandout,
}

// handoutFlags are the flags of the command that are its own.
type handoutFlags struct {
	flags   *pflag.FlagSet
	make    *[]job.HandoutPart
	loosen  *bool
	mark    *string
	layouts *int
	seed    *uint64
}

func addHandoutFlags(flags *pflag.FlagSet) handoutFlags {
	return handoutFlags{
		flags:   flags,
		make:    flag.List(flags, "make", []job.HandoutPart{job.HandoutSheets, job.HandoutKey}, job.HandoutParts, "what to `make`, with commas between: "),
		loosen:  flags.Bool("loosen", false, "ask for the loosening order, and show it"),
		mark:    flags.String("mark", "", "mark the answers of a class in this `table`, CSV, instead"),
		layouts: flags.Int("layouts", 0, fmt.Sprintf("`number` of parts made up, 1 to %d, instead of the file's", exercise.Most)),
		seed:    flags.Uint64("seed", 1, "whole `number` that the made-up parts come from"),
	}
}

// chosen gives what the flags ask for, or what is wrong with them.
func (f handoutFlags) chosen() (ask job.HandoutRequest, err error) {
	if f.flags.Changed("mark") && *f.mark == "" {
		return ask, finding.Failed(TableNotNamed, nil)
	}
	if f.flags.Changed("mark") && f.flags.Changed("make") {
		return ask, finding.Failed(GradeOrMake, nil)
	}
	if f.flags.Changed("layouts") && (*f.layouts < 1 || *f.layouts > exercise.Most) {
		return ask, finding.Failed(exercise.HowMany, finding.Values{"count": *f.layouts, "most": exercise.Most})
	}
	if f.flags.Changed("seed") && *f.layouts == 0 {
		return ask, finding.Failed(SeedAlone, nil)
	}
	ask.Parts, ask.Loosening, ask.Layouts, ask.Seed = *f.make, *f.loosen, *f.layouts, *f.seed
	return ask, nil
}

func buildHandout(flags *pflag.FlagSet) runner {
	own := addHandoutFlags(flags)
	printing := flag.AddPrint(flags, render.PDF)
	return func(p *Program, args []string) Status {
		ask, err := own.chosen()
		if err == nil {
			ask.Printing, err = printing.Chosen()
		}
		if err != nil {
			return p.misuse("handout", "%v", err)
		}
		file, err := oneFile(args)
		if err != nil {
			return p.misuse("handout", "%v", err)
		}
		if file == "-" && *own.mark == "-" {
			return p.misuse("handout", "%v", finding.Failed(OneInputOnly, nil))
		}
		made, status, ok := p.load(file, "", "")
		if !ok {
			return status
		}
		if *own.mark != "" {
			return p.grade(made, ask, *own.mark, printing)
		}
		files, notes, err := job.Handout(made, ask)
		if err != nil {
			return p.fail(Wrong, err)
		}
		return p.deliver(files, p.words.SayAll(notes), printing)
	}
}
